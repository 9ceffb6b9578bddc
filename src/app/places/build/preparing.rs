use eframe::egui::{Align, Layout, Ui};

use crate::app::ctx::Ctx;
use crate::app::tokens::{GAP_M, GAP_S};
use crate::app::widgets::{Field, UiExt as _};
use crate::kit::material::material;
use crate::kit::{HowMany, OwnStep};
use crate::limits;

/// Most minutes of one step: a week of drying.
const MINUTES: f64 = 7.0 * 24.0 * 60.0;
/// Most of a thing that a step or a guest takes.
const MOST: f64 = 1000.0;

/// The author's own steps of the preparation; whether they changed. `salt` tells several such lists apart.
pub fn own_steps_ui(ui: &mut Ui, cx: &Ctx<'_>, salt: &str, steps: &mut Vec<OwnStep>) -> bool {
    let (mut changed, mut moved) = (false, None);
    let count = steps.len();
    for (at, step) in steps.iter_mut().enumerate() {
        ui.group_card(|ui| {
            if let Some(to) = step_head_ui(ui, at, count) {
                moved = Some((at, to));
            }
            changed |= step_ui(ui, cx, (salt, at), step);
        });
        ui.add_space(GAP_S);
    }
    match moved {
        Some((at, Move::Away)) => {
            steps.remove(at);
        }
        Some((at, Move::Up)) => steps.swap(at, at.saturating_sub(1)),
        Some((at, Move::Down)) if at + 1 < count => steps.swap(at, at + 1),
        _ => {}
    }
    changed |= moved.is_some();
    if steps.len() < limits::OWN_STEPS && ui.secondary("Add a step").clicked() {
        steps.push(OwnStep { minutes: 5.0, ..OwnStep::default() });
        changed = true;
    }
    changed
}

/// Where a step goes.
#[derive(Clone, Copy)]
enum Move {
    Up,
    Down,
    Away,
}

/// The number of a step, and the buttons that move it or take it away.
fn step_head_ui(ui: &mut Ui, at: usize, count: usize) -> Option<Move> {
    let number = at + 1;
    let mut to = None;
    ui.horizontal(|ui| {
        ui.strong_small(&format!("Step {number} of {count}"));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let moves = [
                (true, "Remove", format!("Remove step {number}"), Move::Away),
                (number < count, "Later", format!("Step {number} later"), Move::Down),
                (at > 0, "Earlier", format!("Step {number} earlier"), Move::Up),
            ];
            for (able, words, name, way) in moves {
                if ui.lesser(able, words, &name).clicked() {
                    to = Some(way);
                }
            }
        });
    });
    to
}

fn step_ui(ui: &mut Ui, cx: &Ctx<'_>, named: (&str, usize), step: &mut OwnStep) -> bool {
    let mut changed = Field::new("What the host does").salt((named, "what")).text(ui, cx, 2, &mut step.what);
    if step.what.trim().is_empty() {
        ui.quiet("Until it says something, the guide leaves this step out.");
    }
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = GAP_M;
        for (name, value) in [("Hands", &mut step.minutes), ("Then waiting", &mut step.wait)] {
            changed |= Field::new(name).narrow().salt((named, name)).number(ui, cx, value, 0.0..=MINUTES, "min");
        }
    });
    // What is typed stays as it is typed, as long as it says what the kit holds: the kit sorts the names, and knows no
    // number that is only begun.
    let kept = ui.make_persistent_id((named, "takes as typed"));
    let typed = ui.data(|data| data.get_temp::<String>(kept)).filter(|text| takes_of(text) == step.takes);
    let mut takes = typed.unwrap_or_else(|| takes_text(step));
    let help = "One to a line, with how much of it: \"string 0.5\", \"large button 2\". May be empty.";
    if Field::new("What it takes").help(help).salt((named, "takes")).text(ui, cx, 2, &mut takes) {
        step.takes = takes_of(&takes);
        ui.data_mut(|data| data.insert_temp(kept, takes));
        changed = true;
    }
    if !step.takes.is_empty() {
        ui.quiet(&format!("On the shopping list: {}.", told(step)));
    }
    changed
}

/// An amount with its unit in the number that it asks for.
fn counted(amount: f64, unit: &str) -> String {
    let many = if amount > 1.0 && !unit.ends_with('s') { "s" } else { "" };
    format!("{amount} {unit}{many}")
}

/// What a step takes, as the shopping list says it.
fn told(step: &OwnStep) -> String {
    let one = |(name, amount): (&String, &f64)| {
        let (unit, name) = material(name).map_or(("piece", name.as_str()), |known| (known.unit, known.name));
        format!("{name} ({})", counted(*amount, unit))
    };
    step.takes.iter().map(one).collect::<Vec<_>>().join(", ")
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

/// How much of a thing a group needs, in this unit; whether it changed.
pub fn amount_ui(ui: &mut Ui, cx: &Ctx<'_>, salt: &str, amount: &mut HowMany, usual: &str, unit: &str) -> bool {
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
        changed |= Field::new("Amount").narrow().salt((salt, "value")).number(ui, cx, value, 0.1..=MOST, unit);
    }
    if let HowMany::Each(value) = *amount {
        let guests = cx.kit.players.1;
        let all = counted((value * f64::from(guests) * 10.0).round() / 10.0, unit);
        ui.quiet(&format!("For the most guests, {guests}: {all} in all."));
        ui.add_space(GAP_S);
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
