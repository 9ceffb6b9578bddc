use std::collections::BTreeMap;

use eframe::egui::{DragValue, Ui, vec2};

use super::table_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::places::puzzle_title;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::{Hinted, Level, Trouble};
use crate::ids::PuzzleId;
use crate::kit::edit::Edit;
use crate::kit::{Day, Kit, Play, Plays, PuzzlePlay};
use crate::limits;
use crate::rehearse::{Estimate, PRIOR_PLAYS, minutes};
use crate::script::capital;

/// A play being written down.
#[derive(Clone, Debug)]
pub struct PlayDraft {
    day: String,
    guests: u8,
    ages: (u8, u8),
    level: Level,
    minutes: f64,
    finished: bool,
    /// Minutes and hints of each puzzle; no minutes are none known.
    puzzles: BTreeMap<PuzzleId, (f64, u8)>,
    note: String,
}

impl Default for PlayDraft {
    fn default() -> Self {
        Self {
            day: String::new(),
            guests: 4,
            ages: (0, 0),
            level: Level::Standard,
            minutes: 0.0,
            finished: true,
            puzzles: BTreeMap::new(),
            note: String::new(),
        }
    }
}

impl PlayDraft {
    /// The play as it would be written down.
    fn play(&self) -> Hinted<Play> {
        let day = match self.day.trim() {
            "" => None,
            text => Some(Day::parse(text).map_err(Trouble::new)?),
        };
        let known = self.puzzles.iter().filter(|(_, (minutes, _))| *minutes > 0.0);
        let play = Play {
            day,
            guests: self.guests,
            ages: (self.ages != (0, 0)).then_some(self.ages),
            level: self.level,
            minutes: self.minutes,
            finished: self.finished,
            puzzles: known
                .map(|(id, (minutes, hints))| (id.clone(), PuzzlePlay { minutes: *minutes, hints: *hints }))
                .collect(),
            note: self.note.trim().to_owned(),
        };
        play.check()?;
        Ok(play)
    }
}

/// The plays of a kit with one more.
fn with(kit: &Kit, play: Play) -> Plays {
    let mut plays = kit.plays.clone();
    plays.plays.push(play);
    plays
}

/// The plays, one more to be written down, and what they make of the estimates.
pub(super) fn ui(ui: &mut Ui, cx: &Ctx<'_>, draft: &mut PlayDraft) {
    ui.title("Plays");
    ui.lede(
        "Evenings with real guests. They are kept in plays.ron beside the kit when it is saved, and never go into a bundle. No \
         names are needed.",
    );
    list_ui(ui, cx);
    ui.section("Write a play down");
    form_ui(ui, cx, draft);
    let play = draft.play();
    // Nothing is wrong yet with a form that nobody has filled in.
    match &play {
        Err(trouble) if draft.minutes > 0.0 => ui.trouble(trouble),
        _ => {}
    }
    ui.add_space(6.0);
    let full = cx.kit.plays.plays.len() >= limits::PLAYS;
    let ready = play.is_ok() && !full;
    if full {
        ui.quiet(&format!("There are {} plays, which is all that is read: remove an old one first.", limits::PLAYS));
    }
    let add = ui.add_enabled_ui(ready, |ui| ui.primary("Add this play")).inner;
    if add.on_hover_text("One step of undo takes it back").clicked()
        && let Ok(play) = &play
    {
        cx.send(Command::Step(vec![Edit::Plays(Box::new(with(cx.kit, play.clone())))]));
        *draft = PlayDraft { guests: draft.guests, level: draft.level, ..PlayDraft::default() };
        return;
    }
    ui.section("What they make of the estimates");
    estimates_ui(ui, cx, draft.level, play.ok());
}

/// The plays there are.
fn list_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let plays = &cx.kit.plays.plays;
    if plays.is_empty() {
        ui.quiet("None is written down yet.");
        return;
    }
    for (at, play) in plays.iter().enumerate().rev() {
        let day = play.day.map_or_else(|| format!("Play {}", at + 1), |day| day.to_string());
        let ages = play.ages.map_or_else(String::new, |(least, most)| format!(", aged {least} to {most}"));
        let end = if play.finished { "done after" } else { "not done after" };
        let words = format!(
            "{day}: {} guests{ages}, {}, {end} {} minutes; {} of {} puzzles timed",
            play.guests,
            play.level.word(),
            minutes(play.minutes),
            play.puzzles.keys().filter(|id| cx.kit.puzzle(id).is_some()).count(),
            cx.kit.puzzles.len()
        );
        ui.group_card(|ui| {
            ui.label(words);
            if !play.note.is_empty() {
                ui.quiet(&play.note);
            }
            if ui.lesser(true, "Remove", &format!("Remove the play {day}")).clicked() {
                let mut left = cx.kit.plays.clone();
                left.plays.remove(at);
                cx.send(Command::Step(vec![Edit::Plays(Box::new(left))]));
            }
        });
        ui.add_space(4.0);
    }
}

fn form_ui(ui: &mut Ui, cx: &Ctx<'_>, draft: &mut PlayDraft) {
    let most = limits::PLAY_MINUTES;
    ui.columns(3, |columns| {
        if let [left, middle, right] = columns {
            Field::new("Guests").number(left, cx, &mut draft.guests, 1..=99, "");
            Field::new("Minutes in all").number(middle, cx, &mut draft.minutes, 0.0..=most, "min");
            let levels = Level::ALL.map(|level| (level, capital(level.word())));
            Field::new("Play level").pick(right, cx, &mut draft.level, &levels, "");
            Field::new("Youngest").help("0 if not known").number(left, cx, &mut draft.ages.0, 0..=120, "");
            Field::new("Oldest").help("0 if not known").number(middle, cx, &mut draft.ages.1, 0..=120, "");
            Field::new("Day").help("As 2027-01-31, or empty").line(right, cx, &mut draft.day);
        }
    });
    ui.checkbox(&mut draft.finished, "The last box was opened");
    ui.add_space(8.0);
    table_ui(ui, "a play's puzzles", &["Puzzle", "Minutes", "Hints taken"], |ui| {
        for puzzle in &cx.kit.puzzles {
            let title = puzzle_title(cx, &puzzle.id);
            ui.label(&title);
            let (time, hints) = draft.puzzles.entry(puzzle.id.clone()).or_default();
            let size = vec2(78.0, 28.0);
            let field = DragValue::new(time).range(0.0..=most).speed(0.1).custom_formatter(|minutes, _| shown(minutes));
            let field = field.custom_parser(|text| text.trim().trim_end_matches("min").trim().parse().ok());
            ui.add_sized(size, field).accessible_name(format!("Minutes for {title}"));
            let field = DragValue::new(hints).range(0..=3).speed(0.05);
            ui.add_sized(size, field).accessible_name(format!("Hints for {title}"));
            ui.end_row();
        }
    });
    ui.quiet("Minutes from the first look at it, with all its pieces there, to its open lock; 0 where nobody looked at the clock.");
    Field::new("Note").help("Who sat idle? What was read otherwise than meant?").text(ui, cx, 2, &mut draft.note);
}

/// Minutes in their field; none known are no number.
fn shown(time: f64) -> String {
    if time > 0.0 { format!("{} min", (time * 10.0).round() / 10.0) } else { "–".to_owned() }
}

/// Before and after: the guess, what the plays make of it, and what this one would.
fn estimates_ui(ui: &mut Ui, cx: &Ctx<'_>, level: Level, play: Option<Play>) {
    ui.quiet(&format!(
        "Minutes at the level {} that half of the groups need, and nine in ten, with no hint. An estimate counts as much as \
         {PRIOR_PLAYS:.0} plays; minutes with hints count as what they would have been without.",
        level.word()
    ));
    // Only what estimates depend on: texts and pictures of the kit are not copied in every frame.
    let more = play.filter(|play| !play.puzzles.is_empty()).map(|play| {
        let plays = with(cx.kit, play);
        Kit { plays, notes: Vec::new(), ..cx.kit.clone() }
    });
    let cell = |estimate: Estimate| format!("{} ({})", minutes(estimate.median), minutes(estimate.slow));
    table_ui(ui, "estimates", &["Puzzle", "Estimate", "With the plays", "With this one"], |ui| {
        for puzzle in &cx.kit.puzzles {
            ui.label(puzzle_title(cx, &puzzle.id));
            let (guess, now) = (Estimate::guessed(puzzle, level), Estimate::of(cx.kit, puzzle, level));
            ui.label(cell(guess)).on_hover_text(guess.source.words());
            ui.label(if now == guess { "–".to_owned() } else { cell(now) }).on_hover_text(now.source.words());
            let then = more.as_ref().map(|kit| Estimate::of(kit, puzzle, level)).filter(|then| *then != now);
            ui.label(then.map_or_else(|| "–".to_owned(), cell));
            ui.end_row();
        }
    });
}
