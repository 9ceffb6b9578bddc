//! What is found in a puzzle's setup, shown at the row of the form that it speaks of.
//!
//! A mechanic names a field of its setup in backticks, as it stands in the kit file, and a text that cannot be read by line
//! and column. In the window the author sees rows with names of their own: there a fault stands at its row, in its words.

use eframe::egui::Ui;

use super::form::label;
use crate::app::ctx::Ctx;
use crate::app::widgets::{Mark, UiExt as _, mark_ui};
use crate::diag::{Anchor, Level, PuzzleField, Severity, Trouble};
use crate::ids::PuzzleId;
use crate::kit::ron_text;
use crate::mechanics::form::FormField;
use crate::script::capital;
use eframe::egui::RichText;

/// Something found in a setup.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The row that it speaks of first, by the field's name in the kit file.
    pub row: Option<String>,
    severity: Severity,
    says: String,
    hints: Vec<String>,
}

impl Fault {
    fn new(severity: Severity, message: &str, hints: &[String], names: &[&str]) -> Self {
        let row = std::iter::once(message).chain(hints.iter().map(String::as_str)).find_map(|text| first(text, names));
        let words = |text: &str| in_words(text, names);
        Self { row, severity, says: words(message), hints: hints.iter().map(|hint| words(hint)).collect() }
    }

    /// Shows it.
    pub fn ui(&self, ui: &mut Ui) {
        let mark = Mark::severity(self.severity);
        let (tone, _) = mark.colours(ui.tokens());
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 2.0;
            ui.horizontal_wrapped(|ui| {
                ui.spacing_mut().item_spacing.x = 6.0;
                mark_ui(ui, mark, 12.0);
                ui.label(RichText::new(capital(&self.says)).size(13.5).color(tone));
            });
            for hint in &self.hints {
                ui.quiet(&format!("{}.", capital(hint.trim_end_matches('.'))));
            }
        });
    }
}

/// All that is found in the setup of a puzzle at a level; `ron` is that setup, and the names are those of its fields.
pub fn found(cx: &Ctx<'_>, id: &PuzzleId, level: Level, ron: &str, fields: &[FormField]) -> Vec<Fault> {
    let names: Vec<&str> = fields.iter().map(|field| field.name.as_str()).collect();
    let anchor = Anchor::Puzzle(id.clone(), PuzzleField::Setup);
    let refused = cx.derived.puzzle(level, id).and_then(|laid| laid.laid.as_ref().err());
    let mut faults: Vec<Fault> = refused.map(|trouble| refusal(trouble, ron, &names)).into_iter().collect();
    let here = |of: Option<Level>| of.is_none_or(|of| of == level);
    for finding in cx.findings_at(&anchor).filter(|finding| here(finding.level)) {
        // The check of refused setups passes on what the mechanic said, which is told above.
        if refused.is_none_or(|trouble| !finding.message.starts_with(&trouble.message)) {
            let mut fault = Fault::new(finding.severity, &finding.message, &finding.help, &names);
            fault.row = fault.row.or_else(|| quoting(&finding.message, ron));
            faults.push(fault);
        }
    }
    faults
}

/// What the mechanic says to a setup that it cannot carry.
fn refusal(trouble: &Trouble, ron: &str, names: &[&str]) -> Fault {
    let fault = Fault::new(Severity::Blocks, &trouble.message, &trouble.hints, names);
    let place = trouble.place.as_deref().and_then(|place| place.strip_prefix("setup:")).and_then(line_and_column);
    let Some((line, column)) = place else { return fault };
    let at = offset(ron, line, column);
    let row = ron_text::fields(ron).into_iter().find(|(_, span)| span.contains(&at)).map(|(name, _)| name);
    let row = row.filter(|name| names.contains(&name.as_str())).or(fault.row);
    Fault { row, says: format!("{} (line {line} of the setup as text)", fault.says), ..fault }
}

/// The one field whose value holds what a message quotes.
fn quoting(message: &str, ron: &str) -> Option<String> {
    let fields = ron_text::fields(ron);
    message.split('"').skip(1).step_by(2).filter(|quote| !quote.trim().is_empty()).find_map(|quote| {
        let mut holding =
            fields.iter().filter(|(_, span)| ron.get(span.clone()).is_some_and(|value| value.contains(quote)));
        holding.next().filter(|_| holding.next().is_none()).map(|(name, _)| name.clone())
    })
}

fn line_and_column(place: &str) -> Option<(usize, usize)> {
    let (line, column) = place.split_once(':')?;
    Some((line.parse().ok()?, column.parse().ok()?))
}

/// Where a line and a column stand in a text, in bytes.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let before: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let rest = text.get(before..).unwrap_or_default();
    before + rest.chars().take(column.saturating_sub(1)).map(char::len_utf8).sum::<usize>()
}

/// A part of a text in backticks that begins with the name of a field.
fn named<'n>(quoted: &str, names: &[&'n str]) -> Option<&'n str> {
    names
        .iter()
        .find(|name| quoted.strip_prefix(**name).is_some_and(|rest| rest.is_empty() || rest.starts_with(':')))
        .copied()
}

fn first(text: &str, names: &[&str]) -> Option<String> {
    text.split('`').skip(1).step_by(2).find_map(|quoted| named(quoted, names)).map(str::to_owned)
}

/// A text in which fields are called as the form calls them.
fn in_words(text: &str, names: &[&str]) -> String {
    let mut words = String::new();
    for (at, part) in text.split('`').enumerate() {
        match (at % 2 == 1, named(part, names)) {
            (true, Some(name)) => {
                words.push_str(&format!("\"{}\"", label(name)));
                if let Some(value) = part.strip_prefix(name).and_then(|rest| rest.strip_prefix(':')) {
                    words.push_str(&format!(" as {}", value.trim()));
                }
            }
            (true, None) => words.push_str(&format!("`{part}`")),
            (false, _) => words.push_str(part),
        }
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_stands_at_the_row_that_it_names_in_the_words_of_the_form() {
        let hints = ["write `order_card: true`, or fewer `bands`".to_owned()];
        let fault =
            Fault::new(Severity::Blocks, "a `lid_mm` of `9` is too small", &hints, &["bands", "order_card", "lid_mm"]);
        assert_eq!(fault.row.as_deref(), Some("lid_mm"));
        assert_eq!(fault.says, "a \"Lid\" of `9` is too small");
        assert_eq!(fault.hints, ["write \"Order card\" as true, or fewer \"Bands\""]);
        let hinted = Fault::new(Severity::Blocks, "too many colours", &hints, &["bands"]);
        assert_eq!(hinted.row.as_deref(), Some("bands"));
    }

    #[test]
    fn what_is_quoted_leads_to_the_one_row_that_holds_it() {
        let ron = "(word: \"OWL\", card_text: \"In the snow.\", title: \"Owls in the snow\")";
        assert_eq!(quoting("\"owl\" of the theme midwinter stayed: \"OWL\"", ron).as_deref(), Some("word"));
        assert_eq!(quoting("\"the snow\" stayed", ron), None);
    }

    #[test]
    fn a_text_that_cannot_be_read_leads_to_its_row() {
        let ron = "(\n  word: \"OWL\",\n  size: many,\n)";
        let trouble = Trouble::new("a number belongs here").at("setup:3:9");
        let fault = refusal(&trouble, ron, &["word", "size"]);
        assert_eq!(fault.row.as_deref(), Some("size"));
        assert_eq!(fault.says, "a number belongs here (line 3 of the setup as text)");
    }
}
