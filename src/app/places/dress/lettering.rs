use eframe::egui::{Button, TextEdit, Ui, vec2};

use super::{holds_ui, look};
use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::{Field, UiExt as _};
use crate::script::capital;
use crate::theme::{LETTERING, ThemeEdit};

/// Which fonts letter what.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Lettering");
    ui.lede("Four roles letter everything. The fonts are the bundled ones and those that the theme brings in fonts/.");
    let in_theme = holds_ui(ui, cx, &mut locals.kit_only);
    let families = cx.doc.fonts.families();
    let theirs = |role: &str| cx.doc.theme.theme.lettering.get(role).cloned();
    for (role, about) in LETTERING {
        let own = cx.kit.look.lettering.get(*role).cloned();
        let mut choices: Vec<_> = families.iter().map(|name| (Some(name.clone()), name.clone())).collect();
        let mut chosen = if in_theme { theirs(role) } else { own.clone() };
        if in_theme && *role != "text" {
            choices.insert(0, (None, "as for text".to_owned()));
        } else if !in_theme {
            choices.insert(0, (None, format!("{} (the theme's)", theirs(role).unwrap_or_default())));
        }
        let otherwise = format!("{}, not bundled", chosen.clone().unwrap_or_default());
        if Field::new(&capital(role)).help(about).pick(ui, cx, &mut chosen, &choices, &otherwise) {
            set_family(cx, role, chosen, in_theme);
        }
        ui.horizontal(|ui| {
            let shown = cx.session.specimens.as_deref() == Some(*role);
            let words = if shown { "Back to the pieces" } else { "See the kit's words in each" };
            if ui.lesser(true, words, &format!("{words}: {role}")).clicked() {
                cx.send(Command::Specimens((!shown).then(|| (*role).to_owned())));
            }
            if in_theme && let Some(own) = own {
                ui.quiet(&format!("This kit letters it in {own}."));
                if ui.lesser(true, "Reset", &format!("Reset {role}")).clicked() {
                    set_family(cx, role, None, false);
                }
            }
        });
        ui.add_space(8.0);
    }
    ui.section("A font of this machine");
    ui.quiet("Its family name, as other programs list it. Whoever exports this kit needs the same font.");
    ui.horizontal_wrapped(|ui| {
        let label = ui.strong_small("Family");
        let field = TextEdit::singleline(&mut locals.family).desired_width(200.0).margin(vec2(10.0, 7.0));
        ui.add(field).labelled_by(label.id);
        let family = locals.family.trim();
        for (role, _) in LETTERING {
            if ui.add_enabled(!family.is_empty(), Button::new(format!("Use for {role}"))).clicked() {
                set_family(cx, role, Some(family.to_owned()), in_theme);
            }
        }
    });
    if cx.doc.own_theme() {
        languages_ui(ui, cx);
    }
}

/// The languages whose letters are looked for.
fn languages_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.section("Languages");
    let mut text = cx.doc.theme.theme.languages.join(", ");
    let help = "Codes such as en, de, fr: the fonts are looked through for their letters. English when none is named.";
    if Field::new("Written in").help(help).line(ui, cx, &mut text) {
        cx.send(Command::ThemeEdit(ThemeEdit::Languages(super::words::listed(&text))));
    }
}

/// Letters a role in a family, in the theme or in this kit; with none as the theme has it, or as running text.
fn set_family(cx: &Ctx<'_>, role: &str, family: Option<String>, in_theme: bool) {
    if in_theme {
        cx.send(Command::ThemeStep(vec![ThemeEdit::Family(role.to_owned(), family)]));
        return;
    }
    cx.send(Command::Step(vec![look(cx, |look| {
        match family {
            Some(family) => look.lettering.insert(role.to_owned(), family),
            None => look.lettering.remove(role),
        };
    })]));
}
