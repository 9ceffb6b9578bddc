use eframe::egui::{Button, CollapsingHeader, RichText, TextEdit, Ui, vec2};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::{Field, Mark, UiExt as _, mark_ui};
use crate::bundle::{ThemeSource, find_theme};
use crate::checks::Finding;
use crate::diag::{Anchor, Severity, Trouble};
use crate::ids::ThemeId;
use crate::redress::{redress_as, symbols_used, too_few_symbols};
use crate::script::capital;
use crate::theme::ThemeEdit;

/// Which theme, what is wrong with it, and how to put the kit into another.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    let theme = &cx.doc.theme.theme;
    ui.title("Theme");
    ui.lede("The look and the words of a season. The puzzles stay; another theme dresses them anew.");
    for trouble in [&cx.doc.theme_trouble, &cx.doc.theme_behind].into_iter().flatten() {
        ui.trouble(trouble);
    }
    if cx.doc.theme_edited()
        && cx.doc.theme_behind.is_some()
        && ui.secondary("Take the file's version").on_hover_text("Gives up what was changed here").clicked()
    {
        cx.send(Command::TakeThemeFile);
    }
    ui.group_card(|ui| {
        ui.strong_small(&theme.name);
        ui.label(&theme.about);
        ui.quiet(&theme.credit);
        ui.quiet(&format!(
            "{}: {} frames, {} symbols, {} words",
            capital(cx.doc.source().words()),
            theme.frames.len(),
            theme.symbols.len(),
            theme.words.len()
        ));
    });
    author_ui(ui, cx);
    findings_ui(ui, cx);
    redress_ui(ui, cx, locals);
    own_ui(ui, cx, locals);
}

/// Where a theme of the author's folder lies, and the way to take it into the kit.
fn author_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let Some(folder) = cx.doc.theme_folder().filter(|_| cx.doc.source() == ThemeSource::Author) else { return };
    ui.quiet(&format!(
        "It lies in your own theme folder, {}; all your kits may wear it. What you change there shows here at once.",
        folder.display()
    ));
    if cx.doc.has_place() {
        let button = ui.secondary("Take a copy into the kit").on_hover_text("So that the kit opens elsewhere as well");
        if button.clicked() {
            cx.send(Command::BringTheme);
        }
    }
}

/// What is wrong with the theme by itself.
fn findings_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let shown: Vec<&Finding> =
        cx.derived.theme_findings().iter().filter(|found| found.severity != Severity::Notes).collect();
    if shown.is_empty() {
        return;
    }
    ui.section("What is wrong with it");
    for finding in shown {
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            let mark = Mark::severity(finding.severity);
            mark_ui(ui, mark, 12.0);
            let (tone, _) = mark.colours(cx.tokens);
            ui.label(RichText::new(&finding.message).size(13.5).color(tone)).on_hover_text(&finding.why);
        });
        for help in &finding.help {
            ui.quiet(help);
        }
    }
}

/// Another theme: chosen, looked at side by side, then put on in one step.
fn redress_ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    let theme = &cx.doc.theme.theme;
    ui.section("Another theme");
    let mut choices = vec![(None, format!("{} (as it is)", theme.name))];
    for known in cx.doc.themes().iter().filter(|known| known.id != cx.kit.theme) {
        let name = cx.doc.theme_name(&known.id);
        choices.push((
            Some(known.id.clone()),
            match known.source {
                ThemeSource::Builtin => name,
                source => format!("{name} ({})", source.words()),
            },
        ));
    }
    let mut target = cx.session.target.clone();
    if Field::new("Theme").at(Anchor::Theme).pick(ui, cx, &mut target, &choices, "") {
        cx.send(Command::Target(target.clone()));
    }
    let Some(target) = target.filter(|target| *target != cx.kit.theme) else {
        ui.quiet("Choose one to see each piece before and after, side by side.");
        return;
    };
    let name = cx.doc.theme_name(&target);
    ui.quiet(
        "Slots fill with its words; marks, pictures and colours that puzzles name are exchanged. What you wrote stays as \
         it is, and what still speaks of the old season is listed afterwards. Changes to palette and lettering that this \
         kit made for the old theme are put away, and come back when it returns.",
    );
    exchange_ui(ui, cx, locals, &target);
    ui.checkbox(&mut locals.keep_codes, "Keep the codes of the locks");
    if cx.session.redressing {
        ui.horizontal(|ui| {
            mark_ui(ui, Mark::Waiting, 14.0);
            ui.quiet("changing clothes, finding codes");
        });
    } else if ui.primary(&format!("Put the kit into {name}")).clicked() {
        cx.send(Command::Redress(target, !locals.keep_codes));
    }
}

/// Which symbol takes whose place, to be chosen before the kit goes into the theme.
fn exchange_ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals, target: &ThemeId) {
    if locals.target.as_ref().is_none_or(|(id, _)| id != target) {
        let found = find_theme(cx.doc.opened().files.as_ref(), target);
        locals.target = Some((target.clone(), found.map(|(loaded, _)| loaded.theme)));
    }
    let new = match &locals.target {
        Some((_, Ok(new))) => new,
        Some((_, Err(trouble))) => return ui.trouble(trouble),
        None => return,
    };
    let old = &cx.doc.theme.theme;
    let used = symbols_used(cx.kit, old);
    if used.len() > new.symbols.len() {
        ui.trouble(&Trouble::new(too_few_symbols(new, used.len())).hint("or use fewer symbols in this kit"));
    }
    let Ok(fresh) = redress_as(cx.kit, old, new, &cx.session.symbols) else { return };
    let pairs = fresh.kit.dressed.symbols;
    if pairs.is_empty() {
        return;
    }
    let free: Vec<(String, String)> =
        new.symbols.keys().filter(|name| !used.contains(*name)).map(|name| (name.clone(), name.clone())).collect();
    let head = format!("Symbols: {} give way to others", pairs.len());
    CollapsingHeader::new(head).id_salt("exchange").show(ui, |ui| {
        ui.quiet("One that you choose stays so; the others are paired off by their names.");
        ui.columns(2, |columns| {
            for (at, (from, to)) in pairs.iter().enumerate() {
                let Some(ui) = columns.get_mut(at % 2) else { continue };
                let mut chosen = to.clone();
                if Field::new(from).salt("exchange").pick(ui, cx, &mut chosen, &free, "") {
                    let mut symbols = cx.session.symbols.clone();
                    symbols.retain(|_, known| *known != chosen);
                    symbols.insert(from.clone(), chosen);
                    cx.send(Command::Symbols(symbols));
                }
            }
        });
    });
}

/// The facts of a theme of the kit's own.
fn about_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let theme = &cx.doc.theme.theme;
    ui.quiet(&format!(
        "This is one: it lies in themes/{}/ beside the kit file. What you change under Palette, Lettering, Pictures, Words \
         and Dressings goes into it when you save. What another program changes there shows at once; a file that cannot be \
         read leaves the last good one in its place.",
        cx.kit.theme
    ));
    ui.add_space(8.0);
    let send = |edit| cx.send(Command::ThemeEdit(edit));
    let mut name = theme.name.clone();
    if Field::new("Name of the theme").line(ui, cx, &mut name) {
        send(ThemeEdit::Name(name));
    }
    let mut about = theme.about.clone();
    if Field::new("Season and mood").text(ui, cx, 2, &mut about) {
        send(ThemeEdit::About(about));
    }
    let mut credit = theme.credit.clone();
    let help = "Who drew and wrote it, and under what licence.";
    if Field::new("Credit").help(help).line(ui, cx, &mut credit) {
        send(ThemeEdit::Credit(credit));
    }
}

/// A theme of the kit's own, begun from the one it wears.
fn own_ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.section("A theme of your own");
    if cx.doc.own_theme() {
        about_ui(ui, cx);
        return;
    }
    if !cx.doc.has_place() {
        ui.quiet("Save the kit in a folder first: its own themes lie beside it, in themes/.");
        return;
    }
    ui.quiet(&format!("It begins as a copy of {}, in the kit's own folder.", cx.doc.theme.theme.name));
    ui.horizontal(|ui| {
        let label = ui.strong_small("Name");
        ui.add(TextEdit::singleline(&mut locals.theme_name).desired_width(220.0).margin(vec2(10.0, 7.0)))
            .labelled_by(label.id);
        let named = !locals.theme_name.trim().is_empty();
        if ui.add_enabled(named, Button::new("Begin it")).clicked() {
            cx.send(Command::StartTheme(locals.theme_name.trim().to_owned()));
            locals.theme_name.clear();
        }
    });
}
