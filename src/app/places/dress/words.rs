use eframe::egui::{Align, Button, Label, Layout, RichText, TextEdit, Ui, vec2};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::Anchor;
use crate::kit::WordForms;
use crate::kit::edit::Edit;
use crate::script::{article as a_or_an, many as several};
use crate::theme::ThemeEdit;

/// Width of the button beside a word of the theme, with its gaps.
const CHANGE: f32 = 134.0;

/// The words that fill slots: the kit's own, and the theme's.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Words");
    ui.lede(
        "Words fill the slots of all texts: {{ keeper }}, {{ treat | plural }}, {{ chest | a }}, \
         {{ keeper | title }}; the forms are plural, a, the, cap, title and caps. The kit's own come before the theme's.",
    );
    ui.section("The kit's own");
    for (name, forms) in &cx.kit.words {
        if let Some(change) = word_ui(ui, cx, name, forms, true) {
            cx.send(match change {
                Some(fresh) => Command::Edit(Edit::Word(name.clone(), Some(fresh))),
                None => Command::Step(vec![Edit::Word(name.clone(), None)]),
            });
        }
    }
    new_ui(ui, "New word", &mut locals.new_word, &|name| cx.kit.words.contains_key(name), &|name, forms| {
        cx.send(Command::Step(vec![Edit::Word(name, Some(forms))]));
    });
    let theirs = &cx.doc.theme.theme.words;
    if cx.doc.own_theme() {
        ui.section("The theme's");
        for (name, forms) in theirs {
            if let Some(change) = word_ui(ui, cx, name, forms, false) {
                cx.send(match change {
                    Some(fresh) => Command::ThemeEdit(ThemeEdit::Word(name.clone(), Some(fresh))),
                    None => Command::ThemeStep(vec![ThemeEdit::Word(name.clone(), None)]),
                });
            }
        }
        let taken = |name: &str| theirs.contains_key(name);
        new_ui(ui, "New word of the theme", &mut locals.new_theme_word, &taken, &|name, forms| {
            cx.send(Command::ThemeStep(vec![ThemeEdit::Word(name, Some(forms))]));
        });
        season_ui(ui, cx);
        return;
    }
    let inherited: Vec<_> = theirs.iter().filter(|(name, _)| !cx.kit.words.contains_key(*name)).collect();
    if inherited.is_empty() {
        return;
    }
    ui.section("The theme's");
    for (name, forms) in inherited {
        ui.horizontal(|ui| {
            // What is left beside the button, shared between the name and the word.
            let room = (ui.available_width() - CHANGE).clamp(120.0, 420.0);
            for (words, share) in [(RichText::new(name).monospace(), 0.4), (RichText::new(&forms.one), 0.6)] {
                let size = vec2(room * share, 22.0);
                ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
                    ui.set_min_width(size.x);
                    ui.add(Label::new(words).truncate());
                });
            }
            if ui.lesser(true, "Change it here", &format!("Change {name} here")).clicked() {
                cx.send(Command::Step(vec![Edit::Word(name.clone(), Some(forms.clone()))]));
            }
        });
    }
}

/// The words by which the theme's season is known, so that they are found when a kit leaves it.
fn season_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.section("The season's");
    let mut text = cx.doc.theme.theme.season_words.join(", ");
    let help =
        "Further words that only this season says, parted by commas. They are found when a kit leaves the theme.";
    if Field::new("Season words").help(help).text(ui, cx, 3, &mut text) {
        cx.send(Command::ThemeEdit(ThemeEdit::SeasonWords(listed(&text))));
    }
}

/// What stands between commas. A comma at the end stays, so that it can be typed.
pub fn listed(text: &str) -> Vec<String> {
    let mut list: Vec<String> = text.split(',').map(|part| part.trim_start().to_owned()).collect();
    if list.iter().all(|part| part.trim().is_empty()) {
        list.clear();
    }
    list
}

/// A field for a new word.
fn new_ui(ui: &mut Ui, label: &str, new: &mut String, taken: &dyn Fn(&str) -> bool, add: &dyn Fn(String, WordForms)) {
    ui.horizontal_wrapped(|ui| {
        let said = ui.strong_small(label);
        ui.add(TextEdit::singleline(new).desired_width(180.0).margin(vec2(10.0, 7.0))).labelled_by(said.id);
        let sign = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '_' };
        let name: String = new.trim().chars().map(sign).collect();
        let ready = !name.is_empty() && !taken(&name);
        let button = ui.add_enabled(ready, Button::new("Add it")).accessible_name(format!("Add it: {label}"));
        if button.clicked() {
            add(name, WordForms { one: new.trim().to_owned(), ..WordForms::default() });
            new.clear();
        }
    });
}

/// A word with its forms. Answers what became of it: other forms, or none when it is to be removed.
fn word_ui(ui: &mut Ui, cx: &Ctx<'_>, name: &str, forms: &WordForms, of_kit: bool) -> Option<Option<WordForms>> {
    let mut fresh = forms.clone();
    let (mut changed, mut removed) = (false, false);
    ui.group_card(|ui| {
        ui.horizontal(|ui| {
            ui.label(RichText::new(format!("{{{{ {name} }}}}")).monospace().color(cx.tokens.accent));
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                let whose = if of_kit { "" } else { " of the theme" };
                removed = ui.lesser(true, "Remove", &format!("Remove the word {name}{whose}")).clicked();
            });
        });
        ui.spacing_mut().item_spacing.x = GAP_M;
        let (plain, by_rule) = (fresh.one.clone(), WordForms { one: fresh.one.clone(), ..WordForms::default() });
        // What is left empty follows a rule: that form is shown faintly.
        let (usual_many, usual_article) = match plain.is_empty() {
            true => (String::new(), ""),
            false => (several(&by_rule), a_or_an(&by_rule)),
        };
        ui.columns(2, |columns| {
            let [left, right] = columns else { return };
            let salt = (name, of_kit);
            let field = Field::new("One").salt(salt);
            let field = if of_kit { field.at(Anchor::Word(name.to_owned())) } else { field };
            changed |= field.line(left, cx, &mut fresh.one);
            right.columns(2, |columns| {
                let [many, article] = columns else { return };
                changed |= Field::new("Several").salt(salt).hint(&usual_many).line(many, cx, &mut fresh.many);
                changed |= Field::new("Article").salt(salt).hint(usual_article).line(article, cx, &mut fresh.article);
            });
        });
    });
    ui.add_space(4.0);
    if removed {
        return Some(None);
    }
    changed.then_some(Some(fresh))
}
