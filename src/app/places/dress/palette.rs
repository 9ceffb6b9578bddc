use std::collections::BTreeMap;

use eframe::egui::{Color32, Label, RichText, Sense, Stroke, StrokeKind, TextEdit, Ui, vec2};

use super::{holds_ui, look};
use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::{UiExt as _, colour_button, found_ui};
use crate::diag::{Anchor, Trouble};
use crate::theme::colour::Eyes;
use crate::theme::{Colour, Palette, ROLES, ThemeEdit};

/// Width of a role's name and what it is for.
const NAMES: f32 = 178.0;
/// Width of the button that shows a colour, with the gap beside it.
const BUTTON: f32 = 44.0;
/// Least width at which the read-outs stand beside the names.
const ABREAST: f32 = 590.0;
/// Size of a colour as some eyes see it.
const SEEN: [f32; 2] = [17.0, 22.0];
/// Contrast that text needs (WCAG 2.2, success criterion 1.4.3).
const LEAST: f64 = 4.5;

/// The colours, with what contrast and colour vision make of them.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Palette");
    ui.lede("Seven colours draw everything.");
    let in_theme = holds_ui(ui, cx, &mut locals.kit_only);
    found_ui(ui, cx, &Anchor::Theme);
    let theme = &cx.doc.theme.theme;
    let none = BTreeMap::new();
    let Ok(palette) = Palette::new(&theme.palette, if in_theme { &none } else { &cx.kit.look.palette }) else {
        ui.trouble(&Trouble::new("the palette cannot be read").hint("take the theme's colours back"));
        take_back_ui(ui, cx);
        return;
    };
    heads_ui(ui);
    for role in ROLES {
        role_ui(ui, cx, role.name, role.about, &palette, in_theme);
    }
    if !cx.kit.look.palette.is_empty() {
        take_back_ui(ui, cx);
    }
    telling_ui(ui, cx, &mut locals.new_colour);
}

fn take_back_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    if ui.secondary("Take the theme's colours back").clicked() {
        cx.send(Command::Step(vec![look(cx, |look| look.palette.clear())]));
    }
}

/// Whether there is no room for the read-outs beside the names.
fn narrow(ui: &Ui) -> bool {
    ui.available_width() < ABREAST
}

/// The heads of the read-outs, above their columns.
fn heads_ui(ui: &mut Ui) {
    ui.horizontal(|ui| {
        ui.add_space(if narrow(ui) { BUTTON } else { BUTTON + 106.0 + NAMES });
        ui.add_sized(vec2(70.0, 16.0), Label::new(RichText::new("on paper").size(12.5).color(ui.tokens().quiet)))
            .on_hover_text("Contrast against the paper; text needs 4.5 to 1 or more (WCAG 2.2)");
        ui.spacing_mut().item_spacing.x = 4.0;
        for (eyes, letter) in [(Eyes::Protan, "P"), (Eyes::Deutan, "D"), (Eyes::Tritan, "T"), (Eyes::Grey, "G")] {
            let letter = RichText::new(letter).size(12.5).color(ui.tokens().quiet);
            ui.add_sized(vec2(SEEN[0], 16.0), Label::new(letter))
                .on_hover_text(format!("As it looks {}", eyes.words()));
        }
    });
}

fn role_ui(ui: &mut Ui, cx: &Ctx<'_>, role: &str, about: &str, palette: &Palette, in_theme: bool) {
    let now = palette.get(role);
    let anchor = Anchor::Palette(role.to_owned());
    let set = |colour: Colour| {
        if in_theme {
            cx.send(Command::ThemeEdit(ThemeEdit::Role(role.to_owned(), Some(colour.to_string()))));
        } else {
            cx.edit(look(cx, |look| {
                look.palette.insert(role.to_owned(), colour.to_string());
            }));
        }
    };
    let narrow = narrow(ui);
    ui.horizontal(|ui| {
        if let Some(fresh) = colour_ui(ui, cx, role, now, Some(&anchor)) {
            set(fresh);
        }
        name_ui(ui, role, about);
        if !narrow {
            read_outs_ui(ui, cx, role, palette);
        }
    });
    if narrow {
        ui.horizontal(|ui| {
            ui.add_space(BUTTON);
            read_outs_ui(ui, cx, role, palette);
        });
    }
    found_ui(ui, cx, &anchor);
    ui.add_space(6.0);
}

/// What a colour is called and what it is for, in a column.
fn name_ui(ui: &mut Ui, name: &str, about: &str) {
    ui.vertical(|ui| {
        ui.spacing_mut().item_spacing.y = 0.0;
        ui.set_width(NAMES.min(ui.available_width()));
        ui.strong_small(name);
        ui.quiet(about);
    });
}

/// What contrast and colour vision make of a role, and the way back to the theme's colour.
fn read_outs_ui(ui: &mut Ui, cx: &Ctx<'_>, role: &str, palette: &Palette) {
    let (now, own) = (palette.get(role), cx.kit.look.palette.get(role));
    let ratio = now.contrast(palette.get("paper"));
    let faint = role == "ink" && ratio < LEAST;
    let tone = if faint { cx.tokens.blocks } else { cx.tokens.ink };
    let words = RichText::new(format!("{ratio:.1} : 1")).monospace().color(tone);
    ui.add_sized(vec2(70.0, 20.0), Label::new(words))
        .on_hover_text("Contrast against the paper; text needs 4.5 to 1 or more (WCAG 2.2)");
    ui.spacing_mut().item_spacing.x = 4.0;
    for eyes in Eyes::ALL.into_iter().filter(|eyes| *eyes != Eyes::Full) {
        seen_ui(ui, cx, now, eyes);
    }
    ui.add_space(4.0);
    let reset = ui.lesser(own.is_some(), "Reset", &format!("Reset {role}"));
    let reset = match own {
        Some(own) => reset.on_hover_text(format!("This kit has {own} of its own; take the theme's back")),
        None => reset,
    };
    if reset.clicked() {
        cx.send(Command::Step(vec![look(cx, |look| {
            look.palette.remove(role);
        })]));
    }
}

/// The colours that guests must name, and which of them are nearest to each other.
fn telling_ui(ui: &mut Ui, cx: &Ctx<'_>, new: &mut String) {
    let colours = &cx.doc.theme.theme.colours;
    if colours.is_empty() && !cx.doc.own_theme() {
        return;
    }
    ui.section("Telling colours");
    ui.quiet("Colours that guests must name. Each has a twin in shape or word. Lightness tells more than hue.");
    ui.add_space(4.0);
    if cx.doc.own_theme() {
        for (name, hex) in colours {
            let now = Colour::parse(hex).unwrap_or(Colour::BLACK);
            let seen = |ui: &mut Ui| {
                ui.add_space(70.0);
                ui.spacing_mut().item_spacing.x = 4.0;
                for eyes in Eyes::ALL.into_iter().filter(|eyes| *eyes != Eyes::Full) {
                    seen_ui(ui, cx, now, eyes);
                }
                ui.add_space(4.0);
                if ui.lesser(true, "Remove", &format!("Remove the colour {name}")).clicked() {
                    cx.send(Command::ThemeStep(vec![ThemeEdit::Colour(name.clone(), None)]));
                }
            };
            let narrow = narrow(ui);
            ui.horizontal(|ui| {
                if let Some(fresh) = colour_ui(ui, cx, name, now, None) {
                    cx.send(Command::ThemeEdit(ThemeEdit::Colour(name.clone(), Some(fresh.to_string()))));
                }
                name_ui(ui, name, &neighbour(colours, name, now));
                if !narrow {
                    seen(ui);
                }
            });
            if narrow {
                ui.horizontal(|ui| {
                    ui.add_space(BUTTON);
                    seen(ui);
                });
            }
            ui.add_space(6.0);
        }
        ui.horizontal(|ui| {
            let label = ui.strong_small("New colour");
            ui.add(TextEdit::singleline(new).desired_width(150.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
            let name = new.trim().to_lowercase();
            let ready = !name.is_empty() && !colours.contains_key(&name);
            if ui.lesser(ready, "Add it", "Add the colour").clicked() {
                cx.send(Command::ThemeStep(vec![ThemeEdit::Colour(name, Some("#808080".into()))]));
                new.clear();
            }
        });
    } else {
        ui.horizontal_wrapped(|ui| {
            for (name, hex) in colours {
                if let Some(colour) = Colour::parse(hex) {
                    swatch_ui(ui, cx, colour, 18.0);
                    ui.label(name);
                    ui.add_space(10.0);
                }
            }
        });
    }
    nearest_ui(ui, colours);
}

/// A colour to be changed: by dragging, or as six hex digits. Answers the new one.
fn colour_ui(ui: &mut Ui, cx: &Ctx<'_>, name: &str, now: Colour, anchor: Option<&Anchor>) -> Option<Colour> {
    let mut rgb = [now.r, now.g, now.b];
    let button = colour_button(ui, name, &mut rgb);
    if anchor.is_some_and(|anchor| cx.arrives(anchor)) {
        button.request_focus();
        button.scroll_to_me(None);
    }
    let dragged = button.changed().then(|| {
        let [r, g, b] = rgb;
        Colour { r, g, b }
    });
    dragged.or(hex_ui(ui, name, now))
}

/// The colour as six hex digits, to type or paste. Answers the new one.
fn hex_ui(ui: &mut Ui, name: &str, now: Colour) -> Option<Colour> {
    let id = ui.make_persistent_id(("hex", name));
    // While the field is typed in, its text may be no colour yet: it is kept aside until it is one.
    let mut text = ui.data(|data| data.get_temp::<String>(id)).unwrap_or_else(|| now.to_string());
    let field = TextEdit::singleline(&mut text).id(id).desired_width(82.0).margin(vec2(8.0, 6.0)).char_limit(9);
    let response = ui.add(field.font(eframe::egui::TextStyle::Monospace));
    let response = response.accessible_name(format!("{name} in hex"));
    let fresh = response.changed().then(|| Colour::parse(&text)).flatten();
    if response.has_focus() {
        ui.data_mut(|data| data.insert_temp(id, text));
    } else {
        ui.data_mut(|data| data.remove::<String>(id));
    }
    fresh
}

fn swatch_ui(ui: &mut Ui, cx: &Ctx<'_>, colour: Colour, size: f32) {
    let (rect, response) = ui.allocate_exact_size(vec2(size, size), Sense::hover());
    let fill = Color32::from_rgb(colour.r, colour.g, colour.b);
    ui.painter().rect(rect, 4, fill, Stroke::new(1.0, cx.tokens.edge), StrokeKind::Inside);
    response.on_hover_text(colour.to_string());
}

/// The colour as some eyes see it.
fn seen_ui(ui: &mut Ui, cx: &Ctx<'_>, colour: Colour, eyes: Eyes) {
    let (rect, response) = ui.allocate_exact_size(vec2(SEEN[0], SEEN[1]), Sense::hover());
    let Colour { r, g, b } = eyes.see(colour);
    ui.painter().rect(rect, 3, Color32::from_rgb(r, g, b), Stroke::new(1.0, cx.tokens.edge), StrokeKind::Inside);
    response.on_hover_text(format!("As it looks {}", eyes.words()));
}

/// The telling colour that is nearest to this one, to those eyes to which it is.
fn neighbour(colours: &BTreeMap<String, String>, name: &str, colour: Colour) -> String {
    let others = colours.iter().filter(|(other, _)| *other != name);
    let parsed = others.filter_map(|(other, hex)| Some((other, Colour::parse(hex)?)));
    let all = parsed.flat_map(|(other, seen)| Eyes::ALL.map(|eyes| (eyes.difference(colour, seen), other)));
    let nearest = all.min_by(|a, b| a.0.total_cmp(&b.0));
    nearest.map_or_else(String::new, |(apart, other)| format!("{apart:.0} from {other}"))
}

/// The telling colours that are nearest to each other, and to whose eyes.
fn nearest_ui(ui: &mut Ui, colours: &BTreeMap<String, String>) {
    let parsed: Vec<(&String, Colour)> =
        colours.iter().filter_map(|(name, hex)| Some((name, Colour::parse(hex)?))).collect();
    let pairs =
        parsed.iter().enumerate().flat_map(|(at, one)| parsed.iter().skip(at + 1).map(move |other| (one, other)));
    let all =
        pairs.flat_map(|(one, other)| Eyes::ALL.map(|eyes| (eyes.difference(one.1, other.1), one.0, other.0, eyes)));
    if let Some((apart, a, b, eyes)) = all.min_by(|a, b| a.0.total_cmp(&b.0)) {
        ui.quiet(&format!("Nearest to each other: {a} and {b}, {apart:.0} apart {} (CIEDE2000)", eyes.words()));
    }
}
