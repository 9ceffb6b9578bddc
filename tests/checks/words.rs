use inklatch::diag::{Anchor, Level, Trouble};
use inklatch::face::Audience;
use inklatch::files::VPath;
use inklatch::ids::ThemeId;
use inklatch::kit::{Kept, LevelChange, LockKind, Note, NoteKind, OldWord, RawSetup, WordForms};
use inklatch::print::MissingGlyph;

use super::Case;
use super::rows::{Row, computed, lock, mending, prop, row, set, setup, spot};
use crate::sound::puzzle_of;

pub fn texts() -> Vec<Row> {
    vec![
        mending(row(
            "hint-missing",
            "\"The cuff\" has no method",
            |case| case.kit.puzzles[0].hints.method.clear(),
            // The level's own empty step falls back on the puzzle's.
            |case| {
                case.level = Level::Stiff;
                let hints = inklatch::kit::HintLadder::default();
                case.kit.puzzles[0].stiff = Some(LevelChange { hints: Some(hints), ..Default::default() });
            },
        )),
        mending(row(
            "hint-says-it",
            "the nudge of \"The cuff\" gives the answer backwards",
            |case| case.kit.puzzles[0].hints.nudge = "Two eight five, but the other way.".into(),
            |case| case.kit.puzzles[0].hints.nudge = "Five cards, and two wear the bell.".into(),
        )),
        row(
            "hint-steps-alike",
            "the nudge and the method of \"The cuff\" say nearly the same",
            |case| case.kit.puzzles[0].hints.method = "Two cards wear the bells.".into(),
            |_| {},
        ),
        mending(row(
            "hint-for-another",
            "the method of \"The cuff\" holds the code of \"The collar\"",
            |case| case.kit.puzzles[0].hints.method = "It is not 617.".into(),
            |case| case.kit.puzzles[0].hints.method = "It is none of 6175.".into(),
        )),
        mending(row(
            "hint-from-before",
            "the method of \"The cuff\" says \"word\", where the mechanic's draft now says \"name\"",
            |case| case.kit.puzzles[0].hints.method = drafted_method("the card with the word"),
            |case| case.kit.puzzles[0].hints.method = drafted_method("the little card with the name"),
        )),
        mending(row(
            "hint-out-of-order",
            "the nudge of \"The cuff\" tells more than the giveaway: 100 codes left against 1000",
            |case| case.kit.puzzles[0].hints.nudge = "The first digit is a five.".into(),
            |case| case.kit.puzzles[0].hints.giveaway = "The first digit is a five.".into(),
        )),
        row(
            "token-order-tells",
            "the titles are numbered in the order of solving: \"Step 1\", \"Step 2\", \"Step 3\"",
            |case| titles(case, ["Step 1", "Step 3", "Step 2"]),
            // The log is solved last.
            |case| titles(case, ["Step 2", "Step 1", "Step 3"]),
        ),
        row(
            "host-text-on-player-page",
            "the label of \"Note: 617\" holds the code of the moon padlock",
            |case| case.kit.notes.push(note("617", "A number.")),
            |case| case.kit.notes.push(note("6170", "Where everybody can sit.")),
        ),
        mending(row(
            "unfilled-slot",
            "the slot `keper` has no word",
            |case| case.kit.letter.body.push_str(" {{ keper }}"),
            |case| {
                case.kit.words.insert("keeper".into(), WordForms { one: "Odo".into(), ..Default::default() });
                case.kit.letter.body.push_str(" {{ keeper }}");
            },
        )),
        row("reading-age", "the letter has grade", |case| hard_letter(case, 9), |case| hard_letter(case, 30)),
        row(
            "letter-too-long",
            "takes 4.9 minutes to read aloud, at 130 words a minute",
            |case| case.kit.letter.body = "The cat sat on the mat. ".repeat(105),
            |case| case.kit.letter.body = "The cat sat on the mat. ".repeat(80),
        ),
        computed(
            "text-overflows",
            "\"Two cards\" does not fit on p at 9 pt",
            |_, pieces| pieces.push(set(9.0, true, Audience::Players)),
            |_, pieces| pieces.push(set(9.0, false, Audience::Players)),
        ),
        computed(
            "text-too-small",
            "\"Two cards\" on p is set at 8.5 pt, below 9",
            |_, pieces| pieces.push(set(8.5, false, Audience::Players)),
            |_, pieces| pieces.push(set(8.5, false, Audience::Host)),
        ),
        computed(
            "glyph-missing",
            "Alegreya has no \"\u{2603}\" (U+2603)",
            |_, pieces| {
                let mut piece = set(9.0, false, Audience::Players);
                piece.missing.push(MissingGlyph {
                    family: "Alegreya".into(),
                    text: '\u{2603}',
                    from: Anchor::Letter,
                    words: "Snow".into(),
                    piece: String::new(),
                });
                pieces.push(piece);
            },
            |_, pieces| {
                let mut piece = set(9.0, false, Audience::Players);
                piece.trouble = Some(Trouble::new("cannot be set"));
                pieces.push(piece);
            },
        ),
        mending(row(
            "low-contrast",
            "below 4.5",
            // WCAG: #777777 on white has 4.478 and fails.
            |case| {
                case.kit.look.palette.insert("paper".into(), "#FFFFFF".into());
                case.kit.look.palette.insert("ink".into(), "#777777".into());
            },
            |case| {
                case.kit.look.palette.insert("paper".into(), "#FFFFFF".into());
                case.kit.look.palette.insert("ink".into(), "#767676".into());
            },
        )),
        mending(row(
            "level-adds-nothing",
            "the level stiff plays like standard",
            |case| {
                case.level = Level::Stiff;
                case.kit.levels.stiff = case.kit.levels.standard.clone();
            },
            |case| case.kit.levels.stiff = case.kit.levels.standard.clone(),
        )),
        mending(row(
            "level-leaves-out",
            "its setup for gentle leaves out `card_title`, which the standard setup gives",
            |case| {
                case.level = Level::Gentle;
                setup(case, 0, "(word: \"OWL\", card_title: \"The attic list\")");
                case.kit.puzzles[0].gentle = level_setup("(word: \"OWL\")");
            },
            // What the standard setup leaves out as well, and what the mechanic has anyway, is nothing lost.
            |case| {
                case.level = Level::Gentle;
                setup(case, 0, "(word: \"OWL\", card: note)");
                case.kit.puzzles[0].gentle = level_setup("(word: \"OWL\")");
            },
        )),
    ]
}

/// What a level changes that has a setup of its own.
fn level_setup(ron: &str) -> Option<LevelChange> {
    Some(LevelChange { setup: Some(RawSetup::new(ron).unwrap()), ..LevelChange::default() })
}

/// The method that a letter key drafts, with another name for the card.
fn drafted_method(card: &str) -> String {
    format!("Every letter on the key card stands beside a digit. Spell with them what {card} says.")
}

fn titles(case: &mut Case, titles: [&str; 3]) {
    for (puzzle, title) in case.kit.puzzles.iter_mut().zip(titles) {
        puzzle.title = title.into();
    }
}

fn note(title: &str, text: &str) -> Note {
    let ron = format!("(id: \"slip\", kind: Note, title: {title:?}, text: {text:?}, place: Spot(\"table\"))");
    let note: Note = inklatch::kit::file::from_ron(&ron, "note").unwrap();
    assert_eq!(note.kind, NoteKind::Note);
    note
}

/// A letter for learned readers, and the age of the youngest guest.
fn hard_letter(case: &mut Case, youngest: u8) {
    case.kit.ages = (youngest, 99);
    case.kit.letter.body = "Unfortunately the municipal horological apparatus, whose extraordinarily intricate \
        mechanism had previously operated without interruption for approximately a century, has ceased to function, and \
        consequently the committee respectfully requests your immediate assistance in recovering the indispensable \
        winding handle, which has been deposited inside the reinforced container beneath the observatory."
        .into();
}

pub fn safety() -> Vec<Row> {
    vec![
        row(
            "people-locked-in",
            "the cellar door is locked",
            |case| case.kit.boxes[0].name = "the cellar door".into(),
            |case| case.kit.boxes[0].name = "the box with the door".into(),
        ),
        row(
            "magnets-with-children",
            "the kit is for guests from 9 and uses flat ferrite magnets",
            |case| {
                case.kit.ages.0 = 9;
                case.kit.props.push(prop("field", spot("table"), "magnets"));
            },
            |case| case.kit.props.push(prop("field", spot("table"), "magnets")),
        ),
        row(
            "glass-with-children",
            "the kit is for guests from 7",
            |case| {
                case.kit.ages.0 = 7;
                case.kit.props.push(prop("pickles", spot("table"), "jar"));
            },
            |case| case.kit.props.push(prop("pickles", spot("table"), "jar")),
        ),
        row(
            "key-in-food",
            "\"Sweet\" hides its key inside food",
            |case| hiding_place(case, "InFood"),
            |case| hiding_place(case, "Behind"),
        ),
        mending(row(
            "caution-owed",
            "the kit is for guests from 6, and a small UV torch",
            |case| case.kit.ages.0 = 6,
            |case| case.kit.ages.0 = 10,
        )),
    ]
}

/// Adds a box under a key padlock whose key is hidden.
fn hiding_place(case: &mut Case, place: &str) {
    let mut puzzle = puzzle_of("sweet", "key-lock");
    puzzle.title = "Sweet".into();
    puzzle.mechanic = "marked-hiding-place".into();
    puzzle.answer = "the flat parcel".into();
    let things = "things: [(name: \"the flat parcel\", sign: \"owl\"), (name: \"the long parcel\", sign: \"gear\")]";
    puzzle.setup = RawSetup::new(&format!("({things}, place: {place})")).unwrap();
    case.kit.puzzles.push(puzzle);
    let mut shut = case.kit.locks[0].clone();
    shut.id = lock("key-lock");
    shut.kind = LockKind::Key;
    shut.mark = "key".into();
    case.kit.locks.push(shut);
    case.kit.boxes[1].locks.push(lock("key-lock"));
}

/// Draws one symbol of the theme as another.
fn draw_as(case: &mut Case, symbol: &str, like: &str) {
    let (to, from) = (case.theme.theme.symbols[symbol].clone(), case.theme.theme.symbols[like].clone());
    let art = case.theme.art[&from].clone();
    case.theme.art.insert(to, art);
}

pub fn old_word(one: &str, slot: &str) -> OldWord {
    OldWord { one: one.into(), slot: slot.into(), theme: ThemeId::new("midwinter"), ..OldWord::default() }
}

pub fn dress() -> Vec<Row> {
    vec![
        row(
            "theme-incomplete",
            "the file is missing (plain/art/bell.svg)",
            |case| case.theme.missing.push(Trouble::new("the file is missing").at("plain/art/bell.svg")),
            |_| {},
        ),
        row(
            "colours-alike",
            "amber and gold are",
            |case| {
                case.kit.puzzles[0].mechanic = "banded-counters".into();
                case.theme.theme.colours.insert("amber".into(), "#DAA622".into());
            },
            // No puzzle asks for a colour.
            |case| {
                case.theme.theme.colours.insert("amber".into(), "#DAA622".into());
            },
        ),
        mending(row(
            "pictures-alike",
            "the symbols bell and moon look alike",
            |case| draw_as(case, "bell", "moon"),
            // No lock wears the weight.
            |case| draw_as(case, "weight", "moon"),
        )),
        mending(row(
            "leftover-word",
            "\"tower\" of the theme midwinter stayed: \"From the tower\"",
            |case| {
                let forms = |one: &str| WordForms { one: one.into(), ..WordForms::default() };
                case.theme.theme.words.insert("landmark".into(), forms("lighthouse"));
                case.kit.dressed.old_words.push(old_word("tower", "landmark"));
            },
            |case| {
                case.theme
                    .theme
                    .words
                    .insert("landmark".into(), WordForms { one: "lighthouse".into(), ..WordForms::default() });
                case.kit.dressed.old_words.push(old_word("tower", "landmark"));
                // A slot is no leftover, nor is what the author keeps.
                case.kit.letter.heading = "From the {{ landmark }}".into();
                case.kit.letter.body.push_str(" Towers!");
                case.kit.dressed.kept.push(Kept { at: "letter".into(), what: "tower".into() });
            },
        )),
        mending(row(
            "leftover-art",
            "the picture art/tower.svg was there before",
            |case| {
                case.kit.notes[0].picture = Some(VPath::new("art/tower.svg").unwrap());
                case.kit.dressed.old_pictures.push(VPath::new("art/tower.svg").unwrap());
            },
            |case| {
                case.kit.notes[0].picture = Some(VPath::new("art/pier.svg").unwrap());
                case.kit.dressed.old_pictures.push(VPath::new("art/tower.svg").unwrap());
            },
        )),
    ]
}
