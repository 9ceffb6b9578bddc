//! Small kits made in code, for tests that change one thing and look.

use inklatch::ids::{BoxId, KitId, LockId, NoteId, PuzzleId, SpotId, ThemeId};
use inklatch::kit::file::read_kit;
use inklatch::kit::{FORMAT, Finish, HintLadder, Kit, Letter, Levels, Look, Making, Puzzle, RawSetup, Revision, Spot};

/// A small kit in which no check finds anything: a tin with the torch, and a chest under two padlocks.
pub fn sound_kit() -> Kit {
    read_kit(SOUND, "sound.ron").expect("the sound kit reads")
}

const SOUND: &str = r#"(
    format: 1,
    id: "sound",
    title: "A Sound Kit",
    author: "A maker",
    theme: "plain",
    players: (2, 6),
    ages: (14, 99),
    minutes: 20,
    seed: 7,
    brief: "The winder has gone out and left the chest shut.",
    letter: (
        heading: "From the tower",
        salutation: "Dear friends,",
        body: "The clock has stopped, and the chest is shut. Begin with the tin.",
        closing: "In haste,",
        signature: "The winder",
        place: Spot("table"),
    ),
    notes: [
        (id: "well-done", kind: Closing, title: "It ticks", text: "The supper is hidden:", place: Box("chest")),
    ],
    spots: [
        (id: "table", name: "the table", about: "where everybody can sit down"),
        (id: "shelf", name: "the shelf", about: "at the height of the youngest guest's eyes"),
    ],
    boxes: [
        (id: "tin", name: "the tin", place: Spot("shelf"), locks: ["bell-lock"]),
        (id: "chest", name: "the chest", place: Spot("table"), locks: ["star-lock", "moon-lock"], hasp: true, label: Some((95, 58))),
    ],
    locks: [
        (id: "bell-lock", name: "the bell padlock", kind: Digits(3), mark: "bell"),
        (id: "star-lock", name: "the star padlock", kind: Digits(4), mark: "star"),
        (id: "moon-lock", name: "the moon padlock", kind: Digits(3), mark: "moon"),
    ],
    props: [
        (id: "torch", name: "the night lamp", role: Tool, place: Box("tin"), material: "uv-torch"),
        (id: "supper", name: "the supper", role: Treat, place: Spot("shelf")),
    ],
    puzzles: [
        (
            id: "cuff",
            title: "The cuff",
            mechanic: "letter-key",
            answer: "582",
            opens: "bell-lock",
            setup: (word: "OWL"),
            parts: {"key-card": Spot("table"), "word-card": Spot("shelf")},
            hints: (
                nudge: "Two cards wear the bell.",
                method: "Look up each letter of the name.",
                giveaway: "Write the letters in a row and below each what the list gives for it.",
            ),
        ),
        (
            id: "log",
            title: "The log",
            mechanic: "glow-ink",
            answer: "9306",
            opens: "star-lock",
            setup: (),
            parts: {"book": Spot("shelf"), "note": Spot("table")},
            tools: ["torch"],
            hints: (
                nudge: "Daylight is too loud for the book.",
                method: "Shine the night lamp on the pages that the note names.",
                giveaway: "Open the book at each page of the note, one after another, and read what glows.",
            ),
        ),
        (
            id: "collar",
            title: "The collar",
            mechanic: "letter-key",
            answer: "617",
            opens: "moon-lock",
            setup: (word: "FIR"),
            parts: {"key-card": Spot("shelf"), "word-card": Spot("table")},
            hints: (
                nudge: "A collar and a list wear the moon.",
                method: "Turn the letters on the collar into digits.",
                giveaway: "Find each letter of the collar on the list, and set what stands beside it.",
            ),
        ),
    ],
    finish: (opens: "chest", card: "well-done", treat: "soup and bread"),
)"#;

/// A kit with one spot, the table, and nothing else. Its finish leads nowhere.
pub fn kit_of(id: &str) -> Kit {
    Kit {
        format: FORMAT,
        id: KitId::new(id).unwrap(),
        title: "A kit".into(),
        author: "A maker".into(),
        terms: String::new(),
        theme: ThemeId::new("midwinter").unwrap(),
        players: (2, 6),
        ages: (14, 99),
        minutes: 45,
        prep_minutes: None,
        opening: Vec::new(),
        preparation: Vec::new(),
        seed: 1,
        brief: String::new(),
        letter: Letter::default(),
        notes: Vec::new(),
        spots: vec![Spot {
            id: SpotId::new("table").unwrap(),
            name: "the table".into(),
            about: String::new(),
            person: false,
        }],
        boxes: Vec::new(),
        locks: Vec::new(),
        props: Vec::new(),
        puzzles: Vec::new(),
        apart: Vec::new(),
        finish: Finish {
            cue: String::new(),
            opens: BoxId::new("end").unwrap(),
            card: NoteId::new("end").unwrap(),
            treat: String::new(),
            amount: Default::default(),
        },
        words: std::collections::BTreeMap::new(),
        credits: std::collections::BTreeMap::new(),
        look: Look::default(),
        levels: Levels::default(),
        making: Making::default(),
        cost: String::new(),
        revision: Revision::default(),
        dressed: Default::default(),
        plays: Default::default(),
    }
}

/// A puzzle with no parts and no setup of its own.
pub fn puzzle_of(id: &str, opens: &str) -> Puzzle {
    Puzzle {
        id: PuzzleId::new(id).unwrap(),
        title: format!("Puzzle {id}"),
        mechanic: "letter-key".into(),
        answer: "582".into(),
        opens: LockId::new(opens).unwrap(),
        setup: RawSetup::new("()").unwrap(),
        parts: std::collections::BTreeMap::new(),
        tools: Vec::new(),
        preparation: Vec::new(),
        hints: HintLadder::default(),
        minutes: None,
        slow_minutes: None,
        names: std::collections::BTreeMap::new(),
        gentle: None,
        stiff: None,
        arrangement: 0,
    }
}
