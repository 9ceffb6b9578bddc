mod leftovers;
mod theme;

use eframe::egui::{Button, Color32, RichText, Sense, Stroke, StrokeKind, TextEdit, Ui, vec2};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::session::Selection;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _, found_ui};
use crate::diag::Anchor;
use crate::kit::edit::Edit;
use crate::kit::{Look, WordForms};
use crate::script::capital;
use crate::theme::colour::Eyes;
use crate::theme::{Colour, LETTERING, Palette, ROLES};

/// The look and the words.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    match cx.session.selection(cx.kit) {
        Selection::Theme => ui.column("theme", |ui| theme::ui(ui, cx, locals)),
        Selection::Leftovers => ui.column("leftovers", |ui| leftovers::ui(ui, cx, locals)),
        Selection::Lettering => ui.column("lettering", |ui| lettering_ui(ui, cx, &mut locals.family)),
        Selection::Words => ui.column("words", |ui| words_ui(ui, cx, &mut locals.new_word)),
        _ => ui.column("palette", |ui| palette_ui(ui, cx)),
    }
}

fn palette_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Palette");
    ui.lede("Seven colours draw everything. A change here holds for this kit only; the theme keeps its own.");
    found_ui(ui, cx, &Anchor::Theme);
    let theme = &cx.doc.theme.theme;
    let Ok(palette) = Palette::new(&theme.palette, &cx.kit.look.palette) else {
        ui.trouble(&crate::diag::Trouble::new("the palette cannot be read").hint("take the theme's colours back"));
        if ui.secondary("Take the theme's colours back").clicked() {
            cx.send(Command::Step(vec![look(cx, |look| look.palette.clear())]));
        }
        return;
    };
    for role in ROLES {
        let now = palette.get(role.name);
        let own = cx.kit.look.palette.contains_key(role.name);
        ui.horizontal(|ui| {
            let mut rgb = [now.r, now.g, now.b];
            let anchor = Anchor::Palette(role.name.to_owned());
            let (button, name) = (ui.color_edit_button_srgb(&mut rgb), format!("Colour of {}", role.name));
            let button = button.accessible_name(name);
            if cx.arrives(&anchor) {
                button.request_focus();
                button.scroll_to_me(None);
            }
            if button.changed() {
                let [r, g, b] = rgb;
                let hex = Colour { r, g, b }.to_string();
                cx.edit(look(cx, |look| {
                    look.palette.insert(role.name.to_owned(), hex);
                }));
            }
            hex_ui(ui, cx, role.name, now);
            ui.vertical(|ui| {
                ui.spacing_mut().item_spacing.y = 0.0;
                ui.set_width(220.0);
                ui.strong_small(role.name);
                ui.quiet(role.about);
            });
            let ratio = RichText::new(format!("{:.1} : 1", now.contrast(palette.get("paper")))).monospace();
            ui.add_sized(vec2(74.0, 20.0), eframe::egui::Label::new(ratio))
                .on_hover_text("Contrast against the paper; text needs 4.5 to 1 or more (WCAG 2.2)");
            for eyes in Eyes::ALL.into_iter().filter(|eyes| *eyes != Eyes::Full) {
                seen_ui(ui, cx, now, eyes);
            }
            ui.add_space(6.0);
            if ui.lesser(own, "Reset", &format!("Reset {}", role.name)).clicked() {
                cx.send(Command::Step(vec![look(cx, |look| {
                    look.palette.remove(role.name);
                })]));
            }
        });
        found_ui(ui, cx, &Anchor::Palette(role.name.to_owned()));
        ui.add_space(6.0);
    }
    if !cx.kit.look.palette.is_empty() && ui.secondary("Take the theme's colours back").clicked() {
        cx.send(Command::Step(vec![look(cx, |look| look.palette.clear())]));
    }
    if !theme.colours.is_empty() {
        ui.section("Telling colours");
        ui.quiet("Colours that guests must name. Each has a twin in shape or word; the theme file keeps them.");
        ui.add_space(4.0);
        ui.horizontal_wrapped(|ui| {
            for (name, hex) in &theme.colours {
                if let Some(colour) = Colour::parse(hex) {
                    swatch_ui(ui, cx, colour, 18.0);
                    ui.label(name);
                    ui.add_space(10.0);
                }
            }
        });
        nearest_ui(ui, &theme.colours);
    }
}

/// The kit's look after a change.
fn look(cx: &Ctx<'_>, change: impl FnOnce(&mut Look)) -> Edit {
    let mut look = cx.kit.look.clone();
    change(&mut look);
    Edit::Look(Box::new(look))
}

/// The colour as six hex digits, to type or paste.
fn hex_ui(ui: &mut Ui, cx: &Ctx<'_>, role: &str, now: Colour) {
    let mut text = now.to_string();
    let id = ui.make_persistent_id(("hex", role));
    // While the field is typed in, its text may be no colour yet: it is kept aside until it is one.
    let kept = ui.data(|data| data.get_temp::<String>(id));
    if let Some(kept) = kept {
        text = kept;
    }
    let field = TextEdit::singleline(&mut text).id(id).desired_width(82.0).margin(vec2(8.0, 6.0)).char_limit(9);
    let response = ui.add(field.font(eframe::egui::TextStyle::Monospace));
    let response = response.accessible_name(format!("{role} in hex"));
    if response.changed()
        && let Some(colour) = Colour::parse(&text)
    {
        cx.edit(look(cx, |look| {
            look.palette.insert(role.to_owned(), colour.to_string());
        }));
    }
    if response.has_focus() {
        ui.data_mut(|data| data.insert_temp(id, text));
    } else {
        ui.data_mut(|data| data.remove::<String>(id));
    }
}

fn swatch_ui(ui: &mut Ui, cx: &Ctx<'_>, colour: Colour, size: f32) {
    let (rect, response) = ui.allocate_exact_size(vec2(size, size), Sense::hover());
    let fill = Color32::from_rgb(colour.r, colour.g, colour.b);
    ui.painter().rect(rect, 4, fill, Stroke::new(1.0, cx.tokens.edge), StrokeKind::Inside);
    response.on_hover_text(colour.to_string());
}

/// The colour as some eyes see it.
fn seen_ui(ui: &mut Ui, cx: &Ctx<'_>, colour: Colour, eyes: Eyes) {
    let (rect, response) = ui.allocate_exact_size(vec2(12.0, 20.0), Sense::hover());
    let Colour { r, g, b } = eyes.see(colour);
    ui.painter().rect(rect, 3, Color32::from_rgb(r, g, b), Stroke::new(1.0, cx.tokens.edge), StrokeKind::Inside);
    response.on_hover_text(format!("As it looks {}", eyes.words()));
}

/// The telling colours that are nearest to each other, and to whose eyes.
fn nearest_ui(ui: &mut Ui, colours: &std::collections::BTreeMap<String, String>) {
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

fn lettering_ui(ui: &mut Ui, cx: &Ctx<'_>, family: &mut String) {
    ui.title("Lettering");
    ui.lede("Four roles letter everything. The fonts are the bundled ones and those that the theme brings.");
    let families = cx.doc.fonts.families();
    for (role, about) in LETTERING {
        let theirs = cx.doc.theme.theme.lettering.get(*role).cloned().unwrap_or_default();
        let mut chosen = cx.kit.look.lettering.get(*role).cloned();
        let mut choices = vec![(None, format!("{theirs} (the theme's)"))];
        choices.extend(families.iter().map(|name| (Some(name.clone()), name.clone())));
        let otherwise = format!("{}, not bundled", chosen.clone().unwrap_or_default());
        if Field::new(&capital(role)).help(about).pick(ui, cx, &mut chosen, &choices, &otherwise) {
            set_family(cx, role, chosen);
        }
    }
    ui.section("A font of this machine");
    ui.quiet("Its family name, as other programs list it. Whoever exports this kit needs the same font.");
    ui.horizontal(|ui| {
        let label = ui.strong_small("Family");
        ui.add(TextEdit::singleline(family).desired_width(220.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
        for (role, _) in LETTERING {
            let named = !family.trim().is_empty();
            if ui.add_enabled(named, Button::new(format!("Use for {role}"))).clicked() {
                set_family(cx, role, Some(family.trim().to_owned()));
            }
        }
    });
}

/// Letters a role in a family of the kit's own choice, or as the theme has it.
fn set_family(cx: &Ctx<'_>, role: &str, family: Option<String>) {
    cx.send(Command::Step(vec![look(cx, |look| {
        match family {
            Some(family) => look.lettering.insert(role.to_owned(), family),
            None => look.lettering.remove(role),
        };
    })]));
}

fn words_ui(ui: &mut Ui, cx: &Ctx<'_>, new: &mut String) {
    ui.title("Words");
    ui.lede(
        "Words fill the slots of all texts: {{ keeper }}, {{ treat | plural }}, {{ chest | a }}. \
         The kit's own come before the theme's.",
    );
    ui.section("The kit's own");
    for (name, forms) in &cx.kit.words {
        word_ui(ui, cx, name, forms);
    }
    ui.horizontal(|ui| {
        let label = ui.strong_small("New word");
        ui.add(TextEdit::singleline(new).desired_width(180.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
        let name: String =
            new.trim().chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '_' }).collect();
        let ready = !name.is_empty() && !cx.kit.words.contains_key(&name);
        if ui.add_enabled(ready, Button::new("Add it")).clicked() {
            let forms = WordForms { one: new.trim().to_owned(), ..WordForms::default() };
            cx.send(Command::Step(vec![Edit::Word(name, Some(forms))]));
            new.clear();
        }
    });
    let theirs = &cx.doc.theme.theme.words;
    let inherited: Vec<_> = theirs.iter().filter(|(name, _)| !cx.kit.words.contains_key(*name)).collect();
    if inherited.is_empty() {
        return;
    }
    ui.section("The theme's");
    for (name, forms) in inherited {
        ui.horizontal(|ui| {
            ui.add_sized(
                vec2(150.0, 22.0),
                eframe::egui::Label::new(RichText::new(name).monospace()).halign(eframe::egui::Align::Min),
            );
            ui.add_sized(
                vec2(260.0, 22.0),
                eframe::egui::Label::new(&forms.one).truncate().halign(eframe::egui::Align::Min),
            );
            if ui.lesser(true, "Change it here", &format!("Change {name} here")).clicked() {
                cx.send(Command::Step(vec![Edit::Word(name.clone(), Some(forms.clone()))]));
            }
        });
    }
}

fn word_ui(ui: &mut Ui, cx: &Ctx<'_>, name: &str, forms: &WordForms) {
    let mut fresh = forms.clone();
    let mut changed = false;
    ui.group_card(|ui| {
        ui.horizontal(|ui| {
            ui.label(RichText::new(format!("{{{{ {name} }}}}")).monospace().color(cx.tokens.accent));
            ui.with_layout(eframe::egui::Layout::right_to_left(eframe::egui::Align::Center), |ui| {
                if ui.lesser(true, "Remove", &format!("Remove the word {name}")).clicked() {
                    cx.send(Command::Step(vec![Edit::Word(name.to_owned(), None)]));
                }
            });
        });
        ui.spacing_mut().item_spacing.x = GAP_M;
        ui.columns(3, |columns| {
            if let [one, many, article] = columns {
                changed |= Field::new("One").salt(name).at(Anchor::Word(name.to_owned())).line(one, cx, &mut fresh.one);
                changed |= Field::new("Several").salt(name).line(many, cx, &mut fresh.many);
                changed |= Field::new("Article").salt(name).line(article, cx, &mut fresh.article);
            }
        });
    });
    ui.add_space(4.0);
    if changed {
        cx.edit(Edit::Word(name.to_owned(), Some(fresh)));
    }
}
