//! Play logs: the file, what it teaches, and what cannot be read.

use std::sync::Arc;

use inklatch::bundle::{open_in, save_changed};
use inklatch::diag::Level;
use inklatch::files::{Disk, Files as _, Memory, VPath};
use inklatch::ids::PuzzleId;
use inklatch::kit::edit::{Edit, Item, apply, apply_all};
use inklatch::kit::file::{read_plays, to_ron, write_kit};
use inklatch::kit::{LevelChange, Play, Plays, PuzzlePlay, RawSetup, rename};
use inklatch::rehearse::{Estimate, Habits, PRIOR_PLAYS, Source, compared, rehearse};

use super::stage;
use crate::sound::sound_kit;

fn id(text: &str) -> PuzzleId {
    PuzzleId::new(text).unwrap()
}

/// A play at a level in which one puzzle took so long.
fn play(level: Level, puzzle: &str, minutes: f64, hints: u8) -> Play {
    Play {
        day: None,
        guests: 4,
        ages: Some((14, 50)),
        level,
        minutes: 40.0,
        finished: true,
        puzzles: [(id(puzzle), PuzzlePlay { minutes, hints })].into(),
        note: String::new(),
    }
}

fn plays(list: Vec<Play>) -> Plays {
    Plays { plays: list, ..Plays::default() }
}

#[test]
fn plays_correct_the_estimate_and_after_three_weigh_as_much() {
    let mut kit = sound_kit();
    kit.puzzles[0].minutes = Some(5.0);
    kit.puzzles[0].slow_minutes = Some(9.0);
    let of = |kit: &inklatch::kit::Kit| Estimate::of(kit, &kit.puzzles[0], Level::Standard);
    let guess = of(&kit);
    assert_eq!(guess, Estimate { median: 5.0, slow: 9.0, source: Source::Author });
    let three = usize::try_from(PRIOR_PLAYS as u64).unwrap();
    kit.plays = plays(vec![play(Level::Standard, "cuff", 20.0, 0); three]);
    let after = of(&kit);
    // The middle between 5 and 20 in logarithms.
    assert!((after.median - 10.0).abs() < 1e-9 && after.source == Source::Plays(three), "{after:?}");
    assert!(after.slow > after.median);
    // Many plays that agree leave little of the guess, and narrow the spread.
    kit.plays = plays((0..60).map(|at| play(Level::Standard, "cuff", 19.0 + f64::from(at % 3), 0)).collect());
    let many = of(&kit);
    assert!((many.median - 20.0).abs() < 1.7 && many.slow / many.median < after.slow / after.median, "{many:?}");
    // Other puzzles learn nothing of it.
    assert_eq!(Estimate::of(&kit, &kit.puzzles[1], Level::Standard).source, Source::Mechanic);
}

#[test]
fn real_evenings_stand_beside_the_simulated_ones() {
    let mut kit = sound_kit();
    let rehearsal = rehearse(&stage(&kit, Level::Standard), 200).unwrap();
    assert_eq!(compared(&kit, Level::Standard, &rehearsal), None);
    kit.plays = plays(vec![play(Level::Standard, "cuff", 5.0, 0), play(Level::Stiff, "cuff", 5.0, 0)]);
    let line = compared(&kit, Level::Standard, &rehearsal).unwrap();
    assert!(line.starts_with("The one real play at this level took 40 minutes; eight of ten"), "{line}");
    kit.plays.plays[1].level = Level::Standard;
    kit.plays.plays[1].minutes = 33.0;
    let line = compared(&kit, Level::Standard, &rehearsal).unwrap();
    assert!(line.starts_with("The 2 real plays at this level took 33 to 40 minutes"), "{line}");
    kit.plays.plays.iter_mut().for_each(|play| play.finished = false);
    assert_eq!(compared(&kit, Level::Standard, &rehearsal), None, "a play that was broken off tells no end");
}

#[test]
fn only_plays_of_the_same_setup_count() {
    let mut kit = sound_kit();
    kit.plays = plays(vec![play(Level::Stiff, "cuff", 12.0, 0)]);
    let source = |kit: &inklatch::kit::Kit| Estimate::of(kit, &kit.puzzles[0], Level::Standard).source;
    assert_eq!(source(&kit), Source::Plays(1));
    kit.puzzles[0].stiff =
        Some(LevelChange { setup: Some(RawSetup::new("(word: \"OAK\")").unwrap()), ..LevelChange::default() });
    assert_eq!(source(&kit), Source::Mechanic);
}

#[test]
fn minutes_with_hints_count_as_without() {
    let habits = Habits::default();
    assert_eq!(habits.without_hints(8.0, 0, 0), 8.0);
    // One nudge, thought of as taken half way: 4 minutes before it, and 4 that would have been 4 / 0.75.
    assert!((habits.without_hints(8.0, 0, 1) - (4.0 + 4.0 / 0.75)).abs() < 1e-12);
    // A nudge that lay open all the time.
    assert!((habits.without_hints(6.0, 1, 0) - 8.0).abs() < 1e-12);
    let all: Vec<f64> = (0..=5).map(|steps| habits.without_hints(10.0, 0, steps)).collect();
    assert!(all.is_sorted() && all[3] == all[5]);
}

#[test]
fn levels_and_slow_tenths_have_their_own_estimates() {
    let mut kit = sound_kit();
    let of = |kit: &inklatch::kit::Kit, level| Estimate::of(kit, &kit.puzzles[0], level);
    // The letter key takes 2 to 5 minutes as a rule.
    let usual = of(&kit, Level::Standard);
    assert!((usual.median - 10.0_f64.sqrt()).abs() < 1e-12 && (usual.slow - 5.0).abs() < 1e-12, "{usual:?}");
    kit.puzzles[0].minutes = Some(4.0);
    kit.puzzles[0].slow_minutes = Some(10.0);
    kit.puzzles[0].gentle = Some(LevelChange { minutes: Some(2.0), ..LevelChange::default() });
    assert_eq!(of(&kit, Level::Gentle), Estimate { median: 2.0, slow: 5.0, source: Source::Author });
    // A slow tenth that is quicker than half is no such thing.
    kit.puzzles[0].slow_minutes = Some(3.0);
    assert!(of(&kit, Level::Standard).slow > 4.0);
}

#[test]
fn the_file_is_read_as_it_was_written_and_faults_say_where() {
    let mut all = plays(vec![play(Level::Gentle, "cuff", 6.5, 2), play(Level::Standard, "log", 3.0, 0)]);
    all.plays[0].day = Some(inklatch::kit::Day::parse("2027-01-31").unwrap());
    all.plays[1].finished = false;
    let text = to_ron(&all).unwrap();
    assert_eq!(read_plays(&text, "plays.ron").unwrap(), all);
    let least = read_plays("(format: 1, plays: [(guests: 3, minutes: 50)])", "plays.ron").unwrap();
    assert!(least.plays[0].finished && least.plays[0].level == Level::Standard);
    for (bad, says) in [
        ("(format: 2)", "format 2"),
        ("(format: 0)", "format 0"),
        ("(format: 1, plays: [(guests: 0, minutes: 5)])", "play 1: nobody played"),
        ("(format: 1, plays: [(guests: 4, minutes: 0)])", "play 1: the play took 0 minutes"),
        ("(format: 1, plays: [(guests: 4, minutes: inf)])", "play 1: the play took inf minutes"),
        ("(format: 1, plays: [(guests: 4, minutes: 5, ages: (9, 7))])", "the youngest is 9 and the oldest 7"),
        (
            "(format: 1, plays: [(guests: 4, minutes: 5, puzzles: {\"cuff\": (minutes: -1)})])",
            "play 1: the puzzle cuff took -1 minutes",
        ),
        (
            "(format: 1, plays: [(guests: 4, minutes: 5, puzzles: {\"cuff\": (minutes: 1, hints: 4)})])",
            "the puzzle cuff has 4 hints",
        ),
        ("(format: 1, plays: [(guests: 4, minute: 5)])", "there is no `minute` here"),
        ("(format: 1, plays: [(guests: 4, minutes: 5, day: \"31 May\")])", "is no day"),
        ("(format: 1, plays: [(guests: 4", "the file ends or breaks off here"),
    ] {
        let trouble = read_plays(bad, "plays.ron").expect_err(bad);
        let place = trouble.place.clone().unwrap_or_default();
        assert!(trouble.message.contains(says) && place.starts_with("plays.ron"), "{bad}: {trouble}");
    }
    let many = plays(vec![play(Level::Standard, "cuff", 5.0, 0); 501]);
    assert!(read_plays(&to_ron(&many).unwrap(), "plays.ron").unwrap_err().message.contains("at most 500"));
}

#[test]
fn plays_lie_beside_the_kit_and_are_saved_without_touching_it() {
    let folder = tempfile::tempdir().unwrap();
    let disk = Disk::new(folder.path());
    let path = |text: &str| VPath::new(text).unwrap();
    let with_comment = inklatch::bundle::scaffold("Played").unwrap();
    disk.write(&path("kit.ron"), with_comment.as_bytes()).unwrap();
    let opened = inklatch::bundle::open(Some(folder.path())).unwrap();
    assert!(opened.kit.plays.plays.is_empty());
    let mut kit = opened.kit.clone();
    let back = apply_all(&mut kit, vec![Edit::Plays(Box::new(plays(vec![play(Level::Standard, "name", 4.0, 0)])))]);
    assert!(!write_kit(&kit).unwrap().contains("plays"));
    save_changed(&opened, &kit).unwrap();
    assert_eq!(disk.read_text(&path("kit.ron"), 1 << 20).unwrap(), with_comment, "the kit file keeps its comments");
    assert!(!disk.exists(&path("kit-with-comments.ron")));
    let again = inklatch::bundle::open(Some(folder.path())).unwrap();
    assert_eq!(again.kit, kit);
    // Somebody else has written a play down meanwhile: theirs is not lost.
    let trouble = save_changed(&opened, &kit).unwrap_err();
    assert!(trouble.message.contains("changed by another program"), "{trouble}");
    apply_all(&mut kit, back);
    assert_eq!(kit, opened.kit);
    // A file that cannot be read is told when the kit is opened, and not written over.
    disk.write(&path("plays.ron"), b"(format: 1, plays: [(guests: 300)])").unwrap();
    let trouble = inklatch::bundle::open(Some(folder.path())).err().unwrap();
    assert!(trouble.place.as_deref().is_some_and(|place| place.contains("plays.ron:1:")), "{trouble}");
}

#[test]
fn a_puzzle_that_gets_another_id_keeps_its_plays() {
    let mut kit = sound_kit();
    kit.plays = plays(vec![play(Level::Standard, "cuff", 6.0, 1)]);
    let edits = rename(&kit, &Item::Puzzle(id("cuff")), "sleeve").unwrap();
    let before = kit.clone();
    let back = apply_all(&mut kit, edits);
    assert!(kit.plays.plays[0].puzzles.contains_key(&id("sleeve")));
    for edit in back {
        apply(&mut kit, edit);
    }
    assert_eq!(kit, before);
    // A kit in memory brings its plays as well.
    let files = Memory::with([
        (VPath::new("kit.ron").unwrap(), inklatch::bundle::scaffold("X").unwrap().into_bytes()),
        (VPath::new("plays.ron").unwrap(), to_ron(&kit.plays).unwrap().into_bytes()),
    ]);
    let opened = open_in(Arc::new(files), VPath::new("kit.ron").unwrap()).unwrap();
    assert_eq!(opened.kit.plays, kit.plays);
}
