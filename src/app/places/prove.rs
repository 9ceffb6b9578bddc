use eframe::egui::{RichText, Ui};

use crate::app::ctx::{Command, Ctx};
use crate::app::findings::{counts_ui, list_ui, named};
use crate::app::places::build::{facts_ui, never_ui};
use crate::app::places::{Locals, codes, puzzle_title, rehearsal};
use crate::app::session::Selection;
use crate::app::switches::level_ui;
use crate::app::widgets::{Mark, UiExt as _, found_ui};
use crate::diag::{Anchor, PuzzleField};
use crate::flow::Round;
use crate::ids::PuzzleId;
use crate::readings::Verdict;
use crate::script::capital;

/// What is proven, and what is not.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    match cx.session.selection(cx.kit) {
        Selection::Codes => ui.column("codes", |ui| codes::ui(ui, cx, locals)),
        Selection::Rehearsal => ui.column("rehearsal", |ui| rehearsal::ui(ui, cx)),
        Selection::Plays => ui.column("plays", |ui| rehearsal::plays_ui(ui, cx, locals)),
        Selection::Flow => ui.column("flow", |ui| flow_ui(ui, cx)),
        Selection::Readings(id) => ui.column("readings", |ui| readings_ui(ui, cx, &id)),
        _ => ui.column("all findings", |ui| findings_ui(ui, cx, locals)),
    }
}

fn findings_ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Findings");
    ui.lede("Everything that is wrong or worth knowing, at all play levels. What blocks stops an export.");
    ui.horizontal_wrapped(|ui| {
        counts_ui(ui, cx);
        ui.add_space(10.0);
        ui.checkbox(&mut locals.hide_notes, "Leave out notes");
    });
    ui.add_space(10.0);
    list_ui(ui, cx, true, locals.hide_notes);
}

fn readings_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PuzzleId) {
    let Some(puzzle) = cx.kit.puzzle(id) else { return };
    ui.title(&cx.say(&puzzle.title));
    ui.lede("Every answer that a careful guest could defend, found from the printed pieces alone.");
    level_ui(ui, cx);
    ui.add_space(10.0);
    let Some(laid) = cx.derived.puzzle(cx.session.level, id) else {
        ui.chip(Mark::Waiting, "being read");
        return;
    };
    if let Err(trouble) = &laid.laid {
        ui.trouble(trouble);
        return;
    }
    let (head, tells) = verdict_words(laid.verdict);
    ui.group_card(|ui| {
        ui.chip(Mark::verdict(laid.verdict), head);
        ui.label(tells);
        ui.horizontal_wrapped(|ui| {
            ui.quiet("Your answer:");
            ui.label(RichText::new(&laid.answer).monospace());
        });
    });
    ui.section("Readings");
    for reading in &laid.readings.list {
        ui.horizontal_top(|ui| {
            let same = crate::readings::same_answer(&reading.answer, &laid.answer);
            crate::app::widgets::mark_ui(ui, if same { Mark::Good } else { Mark::Warns }, 14.0);
            ui.vertical(|ui| {
                ui.spacing_mut().item_spacing.y = 2.0;
                ui.label(RichText::new(&reading.answer).monospace().size(16.0));
                ui.label(capital(&reading.why));
            });
        });
    }
    if laid.readings.list.is_empty() {
        ui.quiet("None that the lock can show.");
    }
    if laid.readings.more {
        ui.quiet("There are more; these are enough to see why.");
    }
    for remark in &laid.readings.remarks {
        ui.horizontal_top(|ui| {
            crate::app::widgets::mark_ui(ui, Mark::Notes, 14.0);
            ui.add(eframe::egui::Label::new(remark).wrap());
        });
    }
    ui.section("How guests get there");
    ui.label(&laid.reason);
    found_ui(ui, cx, &Anchor::Puzzle(id.clone(), PuzzleField::Whole));
    ui.add_space(10.0);
    if ui.link("Go to the puzzle").clicked() {
        cx.send(Command::Select(Selection::Puzzle(id.clone())));
    }
}

const fn verdict_words(verdict: Option<Verdict>) -> (&'static str, &'static str) {
    match verdict {
        Some(Verdict::One) => ("one reading", "The pieces allow your answer and no other."),
        Some(Verdict::Several) => {
            ("several readings", "The pieces allow more than one answer: guests can be right and the lock stays shut.")
        }
        Some(Verdict::Other) => ("another reading", "The pieces allow one answer, and it is not yours."),
        Some(Verdict::None) => ("no reading", "The pieces allow no answer that the lock can show."),
        Some(Verdict::Unproven) => {
            ("unproven", "There were too many ways to try them all; make the puzzle smaller to have it proven.")
        }
        None => ("not laid out", "The puzzle cannot be laid out."),
    }
}

fn flow_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Flow");
    ui.lede("The fastest evening: in each round, everything that can be solved and opened is.");
    level_ui(ui, cx);
    ui.add_space(10.0);
    let Some(flow) = cx.derived.flow(cx.session.level) else {
        ui.chip(Mark::Waiting, "being looked at");
        return;
    };
    if flow.finish_reachable {
        ui.chip(Mark::Good, "the end can be reached");
    } else {
        ui.chip(Mark::Blocks, "the end cannot be reached");
    }
    ui.add_space(6.0);
    facts_ui(ui, cx, flow);
    if ui.link("Look at the drawing").clicked() {
        cx.send(Command::Select(Selection::Drawn));
    }
    for knot in &flow.loops {
        ui.add_space(8.0);
        ui.trouble(&crate::diag::Trouble::new(knot.words.clone()));
        for anchor in knot.anchors.iter().take(3) {
            if ui.link(format!("Go to {}", named(cx, anchor))).clicked() {
                cx.send(Command::Go(anchor.clone(), None));
            }
        }
    }
    for (at, round) in flow.rounds.iter().enumerate() {
        round_ui(ui, cx, at, round);
    }
    never_ui(ui, cx, flow);
}

fn round_ui(ui: &mut Ui, cx: &Ctx<'_>, at: usize, round: &Round) {
    ui.section(&format!("Round {}", at + 1));
    if !round.solves.is_empty() {
        let many = round.solves.len();
        ui.quiet(&if many == 1 {
            "One puzzle is open:".to_owned()
        } else {
            format!("{many} puzzles are open at once:")
        });
        for id in &round.solves {
            ui.horizontal_wrapped(|ui| {
                ui.add_space(14.0);
                if ui.link(puzzle_title(cx, id)).clicked() {
                    cx.send(Command::Select(Selection::Readings(id.clone())));
                }
                if let Some(lock) = cx.kit.puzzle(id).and_then(|puzzle| cx.kit.lock(&puzzle.opens)) {
                    ui.quiet(&format!("opens {}", cx.say(&lock.name)));
                }
            });
        }
    }
    for id in &round.opens {
        ui.horizontal(|ui| {
            crate::app::widgets::mark_ui(ui, Mark::Good, 13.0);
            let name = cx.kit.box_def(id).map_or_else(|| id.to_string(), |item| cx.say(&item.name));
            if ui.link(format!("{name} opens")).clicked() {
                cx.send(Command::Select(Selection::Box(id.clone())));
            }
        });
    }
}
