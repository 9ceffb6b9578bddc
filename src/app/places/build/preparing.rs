use eframe::egui::Ui;

use crate::app::ctx::Ctx;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _};
use crate::kit::{HowMany, OwnStep};
use crate::limits;

/// Most minutes of one step: a week of drying.
const MINUTES: f64 = 7.0 * 24.0 * 60.0;
/// Most of a thing that a step or a guest takes.
const MOST: f64 = 1000.0;

/// The author's own steps of the preparation; whether they changed. `salt` tells several such lists apart.
pub fn own_steps_ui(ui: &mut Ui, cx: &Ctx<'_>, salt: &str, steps: &mut Vec<OwnStep>) -> bool {
    let (mut changed, mut gone) = (false, None);
    for (at, step) in steps.iter_mut().enumerate() {
        let named = (salt, at);
        let title = format!("Step {}", at + 1);
        changed |= Field::new(&title).salt((named, "what")).text(ui, cx, 2, &mut step.what);
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = GAP_M;
            for (name, value) in [("Hands", &mut step.minutes), ("Then waiting", &mut step.wait)] {
                changed |= Field::new(name).narrow().salt((named, name)).number(ui, cx, value, 0.0..=MINUTES, "min");
            }
        });
        let mut takes = takes_text(step);
        let help = "One to a line, with how much of it: \"string 0.5\", \"large button 2\".";
        if Field::new("What it takes").help(help).salt((named, "takes")).text(ui, cx, 2, &mut takes) {
            step.takes = takes_of(&takes);
            changed = true;
        }
        if ui.button(format!("Remove step {}", at + 1)).clicked() {
            gone = Some(at);
        }
    }
    if let Some(at) = gone {
        steps.remove(at);
        changed = true;
    }
    if steps.len() < limits::OWN_STEPS && ui.secondary("Add a step").clicked() {
        steps.push(OwnStep { what: "What the host does".into(), minutes: 5.0, ..OwnStep::default() });
        changed = true;
    }
    changed
}

fn takes_text(step: &OwnStep) -> String {
    let lines: Vec<String> = step.takes.iter().map(|(name, amount)| format!("{name} {amount}")).collect();
    lines.join("\n")
}

/// Names with their amounts, one to a line; a line without a number is one piece.
fn takes_of(text: &str) -> std::collections::BTreeMap<String, f64> {
    let line = |line: &str| {
        let line = line.trim();
        let (name, amount) = match line.rsplit_once(' ').map(|(name, amount)| (name, amount.parse::<f64>())) {
            Some((name, Ok(amount))) if amount.is_finite() => (name.trim(), amount),
            _ => (line, 1.0),
        };
        (!name.is_empty()).then(|| (name.to_owned(), amount))
    };
    text.lines().filter_map(line).collect()
}

/// How much of a thing a group needs; whether it changed.
pub fn amount_ui(ui: &mut Ui, cx: &Ctx<'_>, salt: &str, amount: &mut HowMany, usual: &str) -> bool {
    let value = match *amount {
        HowMany::Usual => 1.0,
        HowMany::Each(value) | HowMany::All(value) => value,
    };
    let choices = [
        (HowMany::Usual, usual.to_owned()),
        (HowMany::Each(value), "so much for each guest".to_owned()),
        (HowMany::All(value), "so much for the whole group".to_owned()),
    ];
    let mut changed = Field::new("How much of it").salt((salt, "amount")).pick(ui, cx, amount, &choices, usual);
    if let HowMany::Each(value) | HowMany::All(value) = amount {
        changed |= Field::new("Amount").narrow().salt((salt, "value")).number(ui, cx, value, 0.1..=MOST, "");
    }
    changed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_step_takes_is_written_in_lines() {
        let takes = takes_of("string 0.5\n large button 2 \n\nmoss");
        let found: Vec<(&str, f64)> = takes.iter().map(|(name, amount)| (name.as_str(), *amount)).collect();
        assert_eq!(found, [("large button", 2.0), ("moss", 1.0), ("string", 0.5)]);
    }
}
