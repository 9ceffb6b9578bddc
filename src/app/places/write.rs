mod sources;

use eframe::egui::Ui;

use crate::app::ctx::{Command, Ctx};
use crate::app::places::item::{place_choices, remove_ui};
use crate::app::session::Selection;
use crate::app::switches::level_ui;
use crate::app::tokens::GAP_M;
use crate::app::widgets::{Field, UiExt as _, found_ui};
use crate::diag::{Anchor, Level, PuzzleField, Step};
use crate::ids::{NoteId, PuzzleId};
use crate::kit::edit::{Edit, Facts};
use crate::kit::{HintLadder, LevelChange, Levels, Note, NoteKind, Puzzle};
use crate::limits;
use crate::script::{Readability, capital, parse};

/// The letter, the smaller texts, the hints.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    match cx.session.selection(cx.kit) {
        Selection::Facts => ui.column("facts", |ui| facts_ui(ui, cx)),
        Selection::Note(id) => ui.column("note", |ui| note_ui(ui, cx, &id)),
        Selection::Hints(id) => ui.column("hints", |ui| hints_ui(ui, cx, &id)),
        Selection::Levels => ui.column("levels", |ui| levels_ui(ui, cx)),
        _ => ui.column("letter", |ui| letter_ui(ui, cx)),
    }
}

fn letter_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("The letter");
    ui.lede(
        "It opens the evening: who speaks, what is shut away, why the guests are needed, what is in play. \
         An empty line parts paragraphs; *slanted*, **strong**; {{ word }} is filled from the words.",
    );
    let mut letter = cx.kit.letter.clone();
    let mut changed = Field::new("Heading").help("Set in the letterhead; may be empty.").slots(Anchor::Letter).line(
        ui,
        cx,
        &mut letter.heading,
    );
    changed |= Field::new("Salutation").slots(Anchor::Letter).line(ui, cx, &mut letter.salutation);
    changed |= Field::new("Story").at(Anchor::Letter).text(ui, cx, 16, &mut letter.body);
    ui.quiet(&readability(&Readability::of_rich(&parse(&cx.say(&letter.body)))));
    ui.columns(2, |columns| {
        if let [left, right] = columns {
            changed |= Field::new("Closing").slots(Anchor::Letter).line(left, cx, &mut letter.closing);
            changed |= Field::new("Signature").slots(Anchor::Letter).line(right, cx, &mut letter.signature);
        }
    });
    let mut choices = vec![(None, "The host reads it aloud".to_owned())];
    choices.extend(place_choices(cx).into_iter().map(|(place, words)| (Some(place), words)));
    changed |= Field::new("Where it lies").pick(ui, cx, &mut letter.place, &choices, "a place that is not in the kit");
    if changed {
        cx.edit(Edit::Letter(Box::new(letter)));
    }
}

/// What was counted in a text, in a line.
fn readability(read: &Readability) -> String {
    let (Some(ease), Some(grade)) = (read.ease(), read.grade()) else { return "No words yet.".into() };
    let minutes = read.minutes_aloud();
    format!(
        "{} words, {minutes:.1} min read aloud. Flesch reading ease {ease:.0}, Flesch-Kincaid grade {grade:.1}.",
        read.words
    )
}

fn facts_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Title and guests");
    ui.lede("What stands on the first page, and for whom the kit is made.");
    let mut facts = Facts::of(cx.kit);
    let mut changed = Field::new("Title").goes(Anchor::Kit).slots(Anchor::Kit).line(ui, cx, &mut facts.title);
    found_ui(ui, cx, &Anchor::Kit);
    changed |= Field::new("Author").line(ui, cx, &mut facts.author);
    changed |= Field::new("Terms").help("What the buyer may do with it, in a sentence.").line(ui, cx, &mut facts.terms);
    changed |= Field::new("The story in brief").help("Two or three sentences for the host, with no answers.").text(
        ui,
        cx,
        4,
        &mut facts.brief,
    );
    ui.section("Guests and time");
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = GAP_M;
        let (least, most) = (&mut facts.players.0, &mut facts.players.1);
        changed |= narrow(ui, |ui| Field::new("Fewest guests").number(ui, cx, least, 1..=60, ""));
        changed |= narrow(ui, |ui| Field::new("Most guests").number(ui, cx, most, 1..=60, ""));
        let (young, old) = (&mut facts.ages.0, &mut facts.ages.1);
        changed |= narrow(ui, |ui| Field::new("Youngest").number(ui, cx, young, 3..=99, "years"));
        changed |= narrow(ui, |ui| Field::new("Oldest").number(ui, cx, old, 3..=99, "years"));
    });
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = GAP_M;
        changed |= narrow(ui, |ui| {
            Field::new("Play time").goes(Anchor::PlayTime).number(ui, cx, &mut facts.minutes, 5..=600, "min")
        });
        changed |= narrow(ui, |ui| Field::new("Seed").number(ui, cx, &mut facts.seed, 0..=u64::MAX, ""));
    });
    found_ui(ui, cx, &Anchor::PlayTime);
    ui.quiet("Another seed arranges anew everything that chance arranges.");
    changed |= sources::preparing_ui(ui, cx, &mut facts);
    changed |= sources::hosting_ui(ui, cx, &mut facts);
    changed |= sources::handing_over_ui(ui, cx, &mut facts);
    if changed {
        facts.players.1 = facts.players.1.max(facts.players.0);
        facts.ages.1 = facts.ages.1.max(facts.ages.0);
        cx.edit(Edit::Facts(Box::new(facts)));
    }
    sources::sources_ui(ui, cx);
}

/// Width of a field for a number.
const NUMBER: f32 = 124.0;

/// A field no wider than a number needs.
fn narrow<R>(ui: &mut Ui, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.make_room(NUMBER);
    ui.vertical(|ui| {
        ui.set_max_width(NUMBER);
        add(ui)
    })
    .inner
}

fn note_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &NoteId) {
    let Some(note) = cx.kit.note(id) else { return };
    let mut note = note.clone();
    ui.title(&if note.title.is_empty() { id.to_string() } else { cx.say(&note.title) });
    ui.lede("A smaller text on a piece of its own.");
    let kinds = [
        (NoteKind::Note, "A note on a card".to_owned()),
        (NoteKind::Sign, "A sign to stand or hang".to_owned()),
        (NoteKind::Closing, "The closing card, with a line to write on".to_owned()),
    ];
    let at = Anchor::Note(id.clone());
    let mut changed = Field::new("Kind").salt(id).pick(ui, cx, &mut note.kind, &kinds, "");
    changed |= Field::new("Title").salt(id).slots(Anchor::Note(id.clone())).line(ui, cx, &mut note.title);
    changed |= Field::new("Text").at(at).text(ui, cx, 7, &mut note.text);
    changed |= picture_ui(ui, cx, &mut note);
    changed |= Field::new("Where it lies").salt(id).pick(
        ui,
        cx,
        &mut note.place,
        &place_choices(cx),
        "a place that is not in the kit",
    );
    if changed {
        cx.edit(Edit::Note(Box::new(note)));
    }
    remove_ui(ui, cx, &Selection::Note(id.clone()), "Remove this text");
}

/// The picture beside the text, one of those that the kit brings.
fn picture_ui(ui: &mut Ui, cx: &Ctx<'_>, note: &mut Note) -> bool {
    let mut choices = vec![(None, "No picture".to_owned())];
    choices.extend(cx.doc.own_pictures().iter().map(|path| (Some(path.clone()), path.to_string())));
    let otherwise = note.picture.as_ref().map_or_else(String::new, |path| format!("{path}, which is not there"));
    Field::new("Picture").help("SVG, PNG or JPEG from the art folder beside the kit file.").salt(&note.id).pick(
        ui,
        cx,
        &mut note.picture,
        &choices,
        &otherwise,
    )
}

fn hints_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PuzzleId) {
    let Some(puzzle) = cx.kit.puzzle(id) else { return };
    ui.title(&cx.say(&puzzle.title));
    ui.lede("Three hints, each telling a little more. The answer itself stands in the host guide only.");
    ui.horizontal_wrapped(|ui| {
        level_ui(ui, cx);
        ui.add_space(GAP_M);
        if ui.link("Go to the puzzle").clicked() {
            cx.send(Command::Select(Selection::Puzzle(id.clone())));
        }
    });
    let level = cx.session.level;
    if level != Level::Standard {
        ui.quiet("An empty step keeps the text of the standard level.");
    }
    ui.add_space(8.0);
    for step in Step::ALL {
        step_ui(ui, cx, puzzle, level, step);
        ui.add_space(6.0);
    }
    let drafted =
        cx.derived.puzzle(level, id).map(|laid| &laid.drafted).filter(|draft| **draft != HintLadder::default());
    let Some(drafted) = drafted else { return };
    ui.section("Drafts of the mechanic");
    ui.quiet("Made from the puzzle as it is laid out at this level, in the theme's words.");
    ui.add_space(4.0);
    ui.group_card(|ui| {
        for step in Step::ALL {
            ui.strong_small(step.word());
            ui.label(drafted.step(step));
            let button = ui.secondary(&format!("Take the draft of the {}", step.word()));
            if button.clicked() {
                let mut fresh = puzzle.clone();
                drafted.step(step).clone_into(fresh.hints_mut(level).step_mut(step));
                cx.send(Command::Step(vec![Edit::Puzzle(Box::new(fresh))]));
            }
            ui.add_space(8.0);
        }
        if ui.primary("Take the draft of all three").clicked() {
            let mut fresh = puzzle.clone();
            *fresh.hints_mut(level) = drafted.clone();
            cx.send(Command::Step(vec![Edit::Puzzle(Box::new(fresh))]));
        }
    });
}

fn step_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &Puzzle, level: Level, step: Step) {
    let (name, help) = match step {
        Step::Nudge => ("Nudge", "Where to look."),
        Step::Method => ("Method", "What to do."),
        Step::Giveaway => ("Giveaway", "All but the last step."),
    };
    let mut text = match level {
        Level::Standard => puzzle.hints.step(step).to_owned(),
        other => puzzle
            .change(other)
            .and_then(|change| change.hints.as_ref())
            .map_or_else(String::new, |hints| hints.step(step).to_owned()),
    };
    let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(level, step));
    if Field::new(name).help(help).at(at).text(ui, cx, 3, &mut text) {
        let mut fresh = puzzle.clone();
        *fresh.hints_mut(level).step_mut(step) = text;
        drop_empty(&mut fresh);
        cx.edit(Edit::Puzzle(Box::new(fresh)));
    }
    if level != Level::Standard && puzzle.hints_at(level).step(step) == puzzle.hints.step(step) {
        ui.quiet(&format!("Standard: {}", puzzle.hints.step(step)));
    }
}

/// Takes away hints of a level that say nothing, so that the file does not keep an empty shell.
fn drop_empty(puzzle: &mut Puzzle) {
    for change in [&mut puzzle.gentle, &mut puzzle.stiff] {
        if let Some(inner) = change {
            if inner.hints.as_ref().is_some_and(|hints| *hints == HintLadder::default()) {
                inner.hints = None;
            }
            if *inner == LevelChange::default() {
                *change = None;
            }
        }
    }
}

fn levels_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.title("Play levels");
    ui.lede("What lies open from the start, and when the host offers the next token.");
    let mut levels: Levels = cx.kit.levels.clone();
    found_ui(ui, cx, &Anchor::Levels);
    let mut changed = false;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a bound of some hundred minutes")]
    let most = limits::PLAY_MINUTES as u16;
    for level in Level::ALL {
        ui.section(&capital(level.word()));
        let rules = levels.of_mut(level);
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = GAP_M;
            ui.vertical(|ui| {
                ui.set_max_width(230.0);
                let field = Field::new("Hint steps open from the start").salt(level);
                // What is found of the levels is told above; who follows it comes to the level that it speaks of.
                let field = if level == cx.session.level { field.goes(Anchor::Levels) } else { field };
                changed |= field.number(ui, cx, &mut rules.open_steps, 0..=3, "");
            });
            ui.make_room(300.0);
            ui.vertical(|ui| {
                ui.set_max_width(300.0);
                changed |= Field::new("Quiet minutes before the next token").salt(level).number(
                    ui,
                    cx,
                    &mut rules.quiet_minutes,
                    0..=60,
                    "min",
                );
            });
            ui.make_room(300.0);
            ui.vertical(|ui| {
                ui.set_max_width(300.0);
                // 0 stands for the kit's own figure.
                let mut own = rules.minutes.unwrap_or(0);
                if Field::new("Minutes of play").help("0 where they are those of the kit.").salt(level).number(
                    ui,
                    cx,
                    &mut own,
                    0..=most,
                    "min",
                ) {
                    rules.minutes = (own > 0).then_some(own);
                    changed = true;
                }
            });
        });
        changed |= Field::new("For the host").salt(level).line(ui, cx, &mut rules.about);
    }
    if changed {
        cx.edit(Edit::Levels(Box::new(levels)));
    }
}
