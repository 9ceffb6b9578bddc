use eframe::egui::{ScrollArea, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::build::Drawn;
use crate::app::session::Selection;
use crate::app::tokens::COLUMN;
use crate::app::widgets::UiExt as _;
use crate::diag::Anchor;
use crate::flow::Flow;
use crate::flow::facts::{Fact, facts};

/// The flow in sentences, then round by round: the same as the drawing, for those who read or hear.
pub(super) fn ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn, flow: &Flow) {
    ScrollArea::vertical().id_salt("flow in words").auto_shrink([false, false]).show(ui, |ui| {
        ui.set_max_width(COLUMN);
        facts_ui(ui, cx, flow);
        for (at, round) in flow.rounds.iter().enumerate() {
            ui.section(&format!("Round {}", at + 1));
            for id in &round.solves {
                let Some(puzzle) = cx.kit.puzzle(id) else { continue };
                let lock =
                    cx.kit.lock(&puzzle.opens).map_or_else(|| puzzle.opens.to_string(), |lock| cx.say(&lock.name));
                let tools: Vec<String> =
                    puzzle.tools.iter().filter_map(|tool| cx.kit.prop(tool)).map(|prop| cx.say(&prop.name)).collect();
                let with = if tools.is_empty() { String::new() } else { format!(" with {}", tools.join(" and ")) };
                let words = format!("{} opens {lock}{with}", cx.say(&puzzle.title));
                if ui.link(words).clicked() {
                    cx.send(Command::Select(Selection::Puzzle(id.clone())));
                }
            }
            for id in &round.opens {
                let name = cx.kit.box_def(id).map_or_else(|| id.to_string(), |item| cx.say(&item.name));
                if ui.link(format!("Then {name} opens")).clicked() {
                    cx.send(Command::Select(Selection::Box(id.clone())));
                }
            }
        }
        never_ui(ui, cx, flow);
        super::apart::ui(ui, cx, local);
        ui.add_space(24.0);
    });
}

/// The facts, each with links to what it is about.
pub fn facts_ui(ui: &mut Ui, cx: &Ctx<'_>, flow: &Flow) {
    for Fact { words, anchors } in facts(cx.kit, flow) {
        let words = cx.say(&words);
        match anchors.as_slice() {
            [] => {
                ui.label(words);
            }
            [first, ..] => {
                if ui.link(words).clicked() {
                    cx.send(Command::Go(Anchor::clone(first), None));
                }
            }
        }
    }
}

/// What guests never reach, as links.
pub fn never_ui(ui: &mut Ui, cx: &Ctx<'_>, flow: &Flow) {
    let puzzles = cx.kit.puzzles.iter().filter(|puzzle| !flow.puzzles.contains_key(&puzzle.id));
    let puzzles = puzzles.map(|puzzle| (&puzzle.title, Selection::Puzzle(puzzle.id.clone())));
    let boxes = cx.kit.boxes.iter().filter(|item| !flow.boxes.contains_key(&item.id));
    let boxes = boxes.map(|item| (&item.name, Selection::Box(item.id.clone())));
    let props = cx.kit.props.iter().filter(|prop| !flow.props.contains_key(&prop.id));
    let props = props.map(|prop| (&prop.name, Selection::Prop(prop.id.clone())));
    let never: Vec<_> = puzzles.chain(boxes).chain(props).collect();
    if never.is_empty() {
        return;
    }
    ui.section("Never reached");
    for (name, to) in never {
        if ui.link(cx.say(name)).clicked() {
            cx.send(Command::Select(to));
        }
    }
}
