use eframe::egui::{Checkbox, Ui};

use super::fresh;
use super::names;
use super::preparing::own_steps_ui;
use super::setup::{self, SetupDraft};
use crate::app::ctx::{Command, Ctx};
use crate::app::places::item::{place_choices, remove_ui};
use crate::app::session::Selection;
use crate::app::switches::level_ui;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, Mark, UiExt as _, found_ui};
use crate::diag::{Anchor, Level, PuzzleField};
use crate::ids::PuzzleId;
use crate::kit::edit::Edit;
use crate::kit::material::material;
use crate::kit::{LevelChange, Place, PropRole, Puzzle, RawSetup};
use crate::mechanics::{MECHANICS, Meta, find};
use crate::rehearse::{Estimate, Source, minutes};
use crate::script::capital;

/// A puzzle: what it is, what it opens, where its parts lie.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PuzzleId, draft: &mut Option<SetupDraft>) {
    let Some(old) = cx.kit.puzzle(id) else { return };
    let mut puzzle = old.clone();
    let meta = find(&puzzle.mechanic).ok().map(crate::mechanics::AnyMechanic::meta);
    ui.title(&cx.say(&puzzle.title));
    ui.horizontal_wrapped(|ui| {
        verdict_ui(ui, cx, id);
        ui.add_space(8.0);
        level_ui(ui, cx);
    });
    if let Some(work) = cx.derived.puzzle(cx.session.level, id).and_then(|laid| laid.work.as_ref()) {
        ui.quiet(&format!("Work {}: {}", work.count, work.says));
    }
    ui.add_space(8.0);
    found_ui(ui, cx, &at(id, PuzzleField::Whole));
    let mut changed = Field::new("Title")
        .help("For the host and the tokens; it must not give the answer away.")
        .at(at(id, PuzzleField::Title))
        .line(ui, cx, &mut puzzle.title);
    changed |= mechanic_ui(ui, cx, &mut puzzle);
    if let Some(meta) = meta {
        ui.quiet(&format!("{}.", capital(meta.guests)));
        ui.add_space(8.0);
    }
    ui.columns(2, |columns| {
        if let [left, right] = columns {
            changed |= Field::new("Answer").at(at(id, PuzzleField::Answer)).line(left, cx, &mut puzzle.answer);
            let locks: Vec<_> = cx
                .kit
                .locks
                .iter()
                .map(|lock| (lock.id.clone(), format!("{} ({})", cx.say(&lock.name), lock.kind.describe())))
                .collect();
            let otherwise = format!("{}, which is not in the kit", puzzle.opens);
            changed |= Field::new("Opens").at(at(id, PuzzleField::Opens)).pick(
                right,
                cx,
                &mut puzzle.opens,
                &locks,
                &otherwise,
            );
        }
    });
    ui.section("Setup");
    arrangement_ui(ui, cx, &puzzle);
    changed |= setup::ui(ui, cx, &mut puzzle, draft);
    if let Some(meta) = meta {
        help_ui(ui, meta);
        changed |= names::ui(ui, cx, &mut puzzle, meta);
        ui.section("Where its parts lie");
        changed |= parts_ui(ui, cx, &mut puzzle, meta);
    }
    ui.section("Tools that guests need");
    changed |= tools_ui(ui, cx, &mut puzzle, meta);
    ui.section("What the host prepares besides");
    changed |= own_steps_ui(ui, cx, puzzle.id.clone().as_str(), &mut puzzle.preparation);
    ui.section("Time");
    changed |= minutes_ui(ui, cx, &mut puzzle, meta);
    if changed {
        cx.edit(Edit::Puzzle(Box::new(puzzle)));
    }
    remove_ui(ui, cx, &Selection::Puzzle(id.clone()), "Remove this puzzle");
}

fn at(id: &PuzzleId, field: PuzzleField) -> Anchor {
    Anchor::Puzzle(id.clone(), field)
}

/// What the independent reading of the puzzle says; a click shows all readings.
fn verdict_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PuzzleId) {
    let Some(laid) = cx.derived.puzzle(cx.session.level, id) else {
        ui.chip(Mark::Waiting, "being read");
        return;
    };
    let words = laid.verdict.map_or("cannot be laid out", crate::readings::Verdict::word);
    ui.chip(Mark::verdict(laid.verdict), words);
    if ui.link("See the readings").clicked() {
        cx.send(Command::Select(Selection::Readings(id.clone())));
    }
    if ui.link("Write its hints").clicked() {
        cx.send(Command::Select(Selection::Hints(id.clone())));
    }
}

/// The way to another arrangement of the same setup: one step, which undo takes back.
fn arrangement_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &Puzzle) {
    ui.horizontal_wrapped(|ui| {
        if ui.secondary("Try another arrangement").on_hover_text("What chance arranges is arranged anew").clicked() {
            let arrangement = puzzle.arrangement.wrapping_add(1);
            cx.send(Command::Step(vec![Edit::Puzzle(Box::new(Puzzle { arrangement, ..puzzle.clone() }))]));
        }
        if puzzle.arrangement > 0 {
            ui.quiet(&format!("Arrangement {}", u64::from(puzzle.arrangement) + 1));
        }
    });
    ui.add_space(8.0);
}

fn mechanic_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle) -> bool {
    let choices: Vec<(String, String)> =
        MECHANICS.iter().map(|mechanic| (mechanic.meta().id.to_owned(), mechanic.meta().name.to_owned())).collect();
    let otherwise = format!("{}, which is not known", puzzle.mechanic);
    let field = Field::new("Mechanic").at(at(&puzzle.id, PuzzleField::Mechanic));
    let changed = field.pick(ui, cx, &mut puzzle.mechanic, &choices, &otherwise);
    if changed && let Ok(mechanic) = find(&puzzle.mechanic) {
        // Another mechanic reads another setup and has other parts: it starts from its own sample.
        if let Some(setup) = mechanic.default_setup().ok().and_then(|ron| RawSetup::new(&ron).ok()) {
            puzzle.setup = setup;
        }
        for change in [&mut puzzle.gentle, &mut puzzle.stiff].into_iter().flatten() {
            change.setup = None;
        }
        let parts = mechanic.meta().parts;
        puzzle.parts.retain(|key, _| parts.iter().any(|part| part.key == key));
    }
    changed
}

/// The mechanic's own help text, folded away until it is wanted.
fn help_ui(ui: &mut Ui, meta: &Meta) {
    ui.collapsing(format!("How {} is set up", meta.name), |ui| {
        ui.group_card(|ui| {
            ui.strong_small("What fixes the order");
            ui.label(meta.order);
            ui.strong_small("What is printed");
            ui.label(meta.prints);
            ui.strong_small("What the host prepares");
            ui.label(meta.host);
            ui.add_space(6.0);
            ui.add(eframe::egui::Label::new(eframe::egui::RichText::new(meta.help).monospace()).wrap());
        });
    });
}

fn parts_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, meta: &Meta) -> bool {
    let mut changed = false;
    let mut choices: Vec<(Option<Place>, String)> = vec![(None, "Nowhere".to_owned())];
    choices.extend(place_choices(cx).into_iter().map(|(place, words)| (Some(place), words)));
    for part in meta.parts {
        let mut place = puzzle.parts.get(part.key).cloned();
        let kind = match (part.printed, part.optional) {
            (true, false) => "Printed.",
            (false, false) => "Made by the host.",
            (true, true) => "Printed, if the setup has it.",
            (false, true) => "Made by the host, if the setup has it.",
        };
        let name = capital(part.name);
        let field = Field::new(&name).help(kind).at(at(&puzzle.id, PuzzleField::Part(part.key.to_owned())));
        if field.pick(ui, cx, &mut place, &choices, "a place that is not in the kit") {
            changed = true;
            match place {
                Some(place) => puzzle.parts.insert(part.key.to_owned(), place),
                None => puzzle.parts.remove(part.key),
            };
        }
    }
    let strays: Vec<String> =
        puzzle.parts.keys().filter(|key| meta.parts.iter().all(|part| part.key != key.as_str())).cloned().collect();
    for key in strays {
        ui.horizontal(|ui| {
            ui.label(format!("\"{key}\" is no part of {}", meta.name));
            if ui.button(format!("Remove {key}")).clicked() {
                puzzle.parts.remove(&key);
                changed = true;
            }
        });
        found_ui(ui, cx, &at(&puzzle.id, PuzzleField::Part(key)));
    }
    changed
}

fn tools_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, meta: Option<&Meta>) -> bool {
    let mut changed = false;
    let tools: Vec<_> = cx.kit.props.iter().filter(|prop| prop.role == PropRole::Tool).collect();
    let wanted: Vec<_> = meta.iter().flat_map(|meta| meta.tools).filter_map(|id| material(id)).collect();
    let missing = wanted.iter().filter(|wanted| tools.iter().all(|tool| tool.material != wanted.id));
    for material in missing {
        let words = format!("Add the {}", material.name);
        if ui.secondary(&words).on_hover_text("As a prop of the kit that this puzzle needs").clicked() {
            let prop = fresh::tool(cx.kit, material);
            let mut needs = puzzle.clone();
            needs.tools.push(prop.id.clone());
            cx.send(Command::Step(vec![Edit::Prop(Box::new(prop)), Edit::Puzzle(Box::new(needs))]));
        }
    }
    if tools.is_empty() && wanted.is_empty() {
        ui.quiet("None. A prop that is a tool can be chosen here: add one under Props.");
    }
    for prop in tools {
        let mut needed = puzzle.tools.contains(&prop.id);
        let response = ui.add(Checkbox::new(&mut needed, cx.say(&prop.name)));
        let anchor = at(&puzzle.id, PuzzleField::Tool(prop.id.clone()));
        if cx.arrives(&anchor) {
            response.request_focus();
            response.scroll_to_me(Some(eframe::egui::Align::Center));
        }
        found_ui(ui, cx, &anchor);
        if response.changed() {
            changed = true;
            if needed {
                puzzle.tools.push(prop.id.clone());
            } else {
                puzzle.tools.retain(|tool| *tool != prop.id);
            }
        }
    }
    let strays: Vec<_> = puzzle.tools.iter().filter(|tool| cx.kit.prop(tool).is_none()).cloned().collect();
    for tool in strays {
        ui.horizontal(|ui| {
            ui.label(format!("\"{tool}\" is no prop of the kit"));
            if ui.button(format!("Remove {tool}")).clicked() {
                puzzle.tools.retain(|other| *other != tool);
                changed = true;
            }
        });
    }
    changed
}

fn minutes_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, meta: Option<&Meta>) -> bool {
    let mut changed = false;
    let level = cx.session.level;
    let guess = Estimate::guessed(puzzle, level);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = GAP_M;
        let mut own = puzzle.minutes.is_some();
        if ui.checkbox(&mut own, "My own estimate").changed() {
            puzzle.minutes = own.then(|| guess.median.round().max(1.0));
            puzzle.slow_minutes = None;
            changed = true;
        }
        match &mut puzzle.minutes {
            Some(minutes) => {
                ui.make_room(124.0);
                changed |= Field::new("Half of the groups").narrow().number(ui, cx, minutes, 1.0..=120.0, "min");
                let mut slow = puzzle.slow_minutes.unwrap_or_else(|| (guess.slow * 2.0).round() / 2.0);
                let range = *minutes..=240.0;
                ui.make_room(124.0);
                if Field::new("Nine in ten").narrow().number(ui, cx, &mut slow, range, "min") {
                    puzzle.slow_minutes = Some(slow);
                    changed = true;
                }
            }
            None => {
                if let Some(meta) = meta {
                    let (least, most) = meta.minutes;
                    ui.quiet(&format!("{least} to {most} min are usual for {} (an estimate)", meta.name));
                }
            }
        }
    });
    if level != Level::Standard && puzzle.minutes.is_some() {
        let mut change = puzzle.change(level).cloned().unwrap_or_default();
        let mut own = change.minutes.is_some();
        let mut touched = false;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = GAP_M;
            if ui.checkbox(&mut own, format!("Other minutes at {}", level.word())).changed() {
                change.minutes = own.then_some(guess.median);
                touched = true;
            }
            if let Some(minutes) = &mut change.minutes {
                ui.make_room(180.0);
                let name = format!("Half of the groups, {}", level.word());
                touched |= Field::new(&name).narrow().number(ui, cx, minutes, 1.0..=120.0, "min");
            }
        });
        if touched {
            let kept = (change != LevelChange::default()).then_some(change);
            match level {
                Level::Gentle => puzzle.gentle = kept,
                Level::Stiff => puzzle.stiff = kept,
                Level::Standard => {}
            }
            changed = true;
        }
    }
    played_ui(ui, cx, puzzle);
    changed
}

/// What the plays that were written down say of the puzzle's minutes, where they say something: those in which it was
/// timed, and what the whole minutes of evenings tell of it, which only a rehearsal can part among the puzzles.
fn played_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &Puzzle) {
    let level = cx.session.level;
    let rehearsed = cx.derived.rehearsal(level).and_then(|rehearsal| {
        let found = rehearsal.puzzles.iter().find(|of| of.puzzle == puzzle.id)?;
        Some(found.estimate)
    });
    let timed = Estimate::of(cx.kit, puzzle, level);
    let now = rehearsed.filter(|known| matches!(known.source, Source::Totals(..))).unwrap_or(timed);
    if let Source::Plays(_) | Source::Totals(..) = now.source {
        ui.quiet(&format!(
            "With the plays: half need {} min, nine in ten {} ({}). The rehearsal goes by these.",
            minutes(now.median),
            minutes(now.slow),
            now.source.words()
        ));
    }
}
