use inklatch::checks::SetPiece;
use inklatch::diag::Anchor;
use inklatch::face::Audience;
use inklatch::files::VPath;
use inklatch::ids::{BoxId, LockId, PropId, SpotId};
use inklatch::kit::material::{Need, PrepStep};
use inklatch::kit::{Apart, LockKind, Lying, Place, Prop, PropRole, RawSetup};
use inklatch::party::Party;
use inklatch::print::Fit;
use inklatch::readings::{Reading, Readings, Verdict};
use inklatch::units::{Mm, Pt};

use super::{Case, words};
use crate::common::PRESS;

/// Changes what was computed.
type After = fn(&mut Party, &mut Vec<SetPiece>);

/// The fixtures of one check: changes to the sound kit, and to what was computed from it.
pub struct Row {
    pub name: &'static str,
    pub says: &'static str,
    pub fires: fn(&mut Case),
    pub fires_after: After,
    pub silent: fn(&mut Case),
    pub silent_after: After,
    /// Whether its fixes take the findings away.
    pub mends: bool,
}

pub const fn row(name: &'static str, says: &'static str, fires: fn(&mut Case), silent: fn(&mut Case)) -> Row {
    Row { name, says, fires, fires_after: |_, _| {}, silent, silent_after: |_, _| {}, mends: false }
}

pub const fn computed(name: &'static str, says: &'static str, fires: After, silent: After) -> Row {
    Row { name, says, fires: |_| {}, fires_after: fires, silent: |_| {}, silent_after: silent, mends: false }
}

pub const fn mending(mut row: Row) -> Row {
    row.mends = true;
    row
}

pub fn lock(id: &str) -> LockId {
    LockId::new(id).unwrap()
}

pub fn spot(id: &str) -> Place {
    Place::Spot(SpotId::new(id).unwrap())
}

pub fn inside(id: &str) -> Place {
    Place::Box(BoxId::new(id).unwrap())
}

pub fn setup(case: &mut Case, puzzle: usize, ron: &str) {
    case.kit.puzzles[puzzle].setup = RawSetup::new(ron).unwrap();
}

pub fn prop(id: &str, place: Place, material: &str) -> Prop {
    Prop {
        id: PropId::new(id).unwrap(),
        name: format!("the {id}"),
        role: PropRole::Decoration,
        place,
        material: material.into(),
        about: String::new(),
        printed: None,
    }
}

pub fn read_as(party: &mut Party, answers: &[&str], verdict: Verdict) {
    let list = answers.iter().map(|a| Reading { answer: (*a).into(), why: format!("reads {a}") }).collect();
    party.puzzles[0].readings = Readings { list, ..Readings::default() };
    party.puzzles[0].verdict = Some(verdict);
}

pub fn set(size: f64, overflows: bool, audience: Audience) -> SetPiece {
    let fit = Fit {
        from: Anchor::Kit,
        size: Pt::new(size),
        least: Pt::new(9.0),
        overflows,
        height: Mm::new(5.0),
        words: "Two cards".into(),
        piece: String::new(),
    };
    SetPiece {
        piece: "p".into(),
        audience,
        paper: None,
        fits: vec![fit],
        missing: Vec::new(),
        printed: Vec::new(),
        trouble: None,
    }
}

/// The first puzzle's pieces as they are printed; tampered with, the digits 5 and 8 stand in each other's place.
fn on_paper(party: &Party, tampered: bool) -> Vec<SetPiece> {
    let own = party.pieces.iter().filter(|piece| piece.group == party.puzzles[0].id.as_str());
    let print = |piece: &inklatch::face::Piece| {
        let mut side = PRESS.face(&piece.front).unwrap().printed(piece, false).seen();
        for text in side.texts.iter_mut().filter(|_| tampered) {
            match text.text.as_str() {
                "5" => text.text = "8".into(),
                "8" => text.text = "5".into(),
                _ => {}
            }
        }
        SetPiece { piece: piece.id.clone(), printed: vec![side], fits: Vec::new(), ..set(12.0, false, piece.audience) }
    };
    own.map(print).collect()
}

/// One row for each check.
pub fn rows() -> Vec<Row> {
    let mut rows = readings();
    rows.extend(wiring());
    rows.extend(flow());
    rows.extend(codes());
    rows.extend(words::texts());
    rows.extend(words::safety());
    rows.extend(host());
    rows.extend(words::dress());
    rows
}

fn readings() -> Vec<Row> {
    vec![
        computed(
            "several-readings",
            "can be read as 258, 582",
            |party, _| read_as(party, &["258", "582"], Verdict::Several),
            |party, _| read_as(party, &["582"], Verdict::One),
        ),
        computed(
            "other-reading",
            "reads as 258, not as 582",
            |party, _| read_as(party, &["258"], Verdict::Other),
            |party, _| read_as(party, &["258", "582"], Verdict::Several),
        ),
        computed(
            "no-reading",
            "nothing that its lock (3 digit wheels) can show",
            |party, _| read_as(party, &[], Verdict::None),
            |party, _| read_as(party, &["258"], Verdict::Other),
        ),
        computed(
            "unproven-reading",
            "too large",
            |party, _| read_as(party, &["582"], Verdict::Unproven),
            |party, _| read_as(party, &["582"], Verdict::One),
        ),
        computed(
            "print-differs",
            "what is printed of \"The cuff\" reads as 852, not as 582",
            |party, set| *set = on_paper(party, true),
            |party, set| *set = on_paper(party, false),
        ),
        computed(
            "reading-remark",
            "two letters share a digit",
            |party, _| party.puzzles[0].readings.remarks.push("two letters share a digit".into()),
            |_, _| {},
        ),
        row(
            "setup-refused",
            "there is no `wrod` here",
            |case| setup(case, 0, "(wrod: \"OWL\")"),
            // A mechanic that does not exist is another finding.
            |case| case.kit.puzzles[0].mechanic = "letter-kez".into(),
        ),
        row(
            "piece-unmade",
            "the theme draws no `token`",
            |case| drop(case.theme.theme.frames.remove("token")),
            |case| drop(case.theme.theme.frames.remove("tag")),
        ),
    ]
}

fn wiring() -> Vec<Row> {
    vec![
        row(
            "unknown-reference",
            "there is no spot `tabel`",
            |case| case.kit.letter.place = Some(spot("tabel")),
            |case| case.kit.letter.place = None,
        ),
        row(
            "id-twice",
            "lock bell-lock is in the kit 2 times",
            |case| case.kit.locks.push(case.kit.locks[0].clone()),
            // A lock and a box may share a name.
            |case| case.kit.locks[0].id = lock("tin"),
        ),
        mending(row(
            "answer-off-lock",
            "the answer \"58\" has 2 symbols",
            |case| case.kit.puzzles[0].answer = "58".into(),
            |case| case.kit.puzzles[0].answer = " 582 ".into(),
        )),
        row(
            "lock-without-puzzle",
            "nothing opens the moon padlock, which shuts the chest",
            |case| drop(case.kit.puzzles.pop()),
            |case| {
                case.kit.puzzles.pop();
                let key = PropRole::Key(lock("moon-lock"));
                case.kit.props.push(Prop { role: key, ..prop("key", spot("shelf"), "") });
            },
        ),
        row(
            "puzzle-without-lock",
            "\"The collar\" opens the moon padlock, which hangs on no box",
            |case| drop(case.kit.boxes[1].locks.pop()),
            |case| case.kit.puzzles[2].opens = lock("no-lock"),
        ),
        row(
            "two-puzzles-one-lock",
            "\"The cuff\" and \"The collar\" all open the bell padlock",
            |case| case.kit.puzzles[2].opens = lock("bell-lock"),
            |_| {},
        ),
        mending(row(
            "tool-unnamed",
            "needs a small UV torch",
            |case| case.kit.puzzles[1].tools.clear(),
            |case| case.kit.puzzles[1].tools.push(PropId::new("supper").unwrap()),
        )),
        mending(row(
            "piece-in-no-place",
            "\"The cuff\" has no part `kei-card`, but a place for it",
            |case| drop(case.kit.puzzles[0].parts.insert("kei-card".into(), spot("table"))),
            |case| setup(case, 0, "(word: \"OWL\", card: portrait)"),
        )),
        row(
            "piece-feeds-two",
            "\"The cuff\" and \"The collar\" print the same piece",
            |case| {
                for puzzle in [0, 2] {
                    case.kit.puzzles[puzzle].mechanic = "morse-strip".into();
                    setup(case, puzzle, "()");
                }
            },
            |case| {
                case.kit.puzzles[0].mechanic = "morse-strip".into();
                setup(case, 0, "()");
            },
        ),
        mending(row(
            "lock-unmarked",
            "the bell padlock, the moon padlock with 3 digit wheels cannot be told apart: up to 4 tries",
            |case| case.kit.locks[2].mark = "bell".into(),
            // The only lock of its kind needs no mark.
            |case| case.kit.locks[1].mark.clear(),
        )),
        row(
            "over-hasp",
            "the chest has 7 padlocks on one hasp",
            |case| case.kit.boxes[1].locks.extend((0..5).map(|n| lock(&format!("more-{n}")))),
            |case| case.kit.boxes[1].locks.extend((0..4).map(|n| lock(&format!("more-{n}")))),
        ),
    ]
}

fn flow() -> Vec<Row> {
    vec![
        row(
            "locked-behind-itself",
            "the chest needs the star padlock open; the star padlock opens by \"The log\", which needs the night lamp; \
             the night lamp lies in the chest",
            |case| case.kit.props[0].place = inside("chest"),
            |case| case.kit.props[0].place = spot("shelf"),
        ),
        row(
            "finish-out-of-reach",
            "the chest can never be opened",
            |case| drop(case.kit.puzzles[2].parts.remove("key-card")),
            // Without its note the log could not be read, but the cuff and the collar can.
            |case| case.kit.finish.opens = BoxId::new("tin").unwrap(),
        ),
        row(
            "never-reached",
            "the tin never opens, and one thing lies in it: the bell padlock stays locked",
            |case| drop(case.kit.puzzles[0].parts.remove("key-card")),
            // What is locked behind itself is told elsewhere.
            |case| case.kit.props[0].place = inside("chest"),
        ),
        row(
            "finish-without-it",
            "the last box opens without \"The cuff\"",
            |case| case.kit.props[0].place = spot("shelf"),
            |_| {},
        ),
        row(
            "single-file",
            "3 rounds in a row have one open puzzle",
            |case| {
                for part in case.kit.puzzles[2].parts.values_mut() {
                    *part = inside("drawer");
                }
                let mut drawer = case.kit.boxes[0].clone();
                drawer.id = BoxId::new("drawer").unwrap();
                drawer.locks = vec![lock("star-lock")];
                case.kit.boxes.push(drawer);
                case.kit.boxes[1].locks = vec![lock("moon-lock")];
            },
            |case| case.kit.puzzles[2].parts.values_mut().for_each(|part| *part = inside("tin")),
        ),
        mending(row(
            "tool-too-early",
            "the cloth is to hand 3 rounds before \"The end\" needs it",
            |case| {
                late_puzzle(case);
                case.kit.props.push(prop("cloth", spot("table"), ""));
            },
            |case| {
                late_puzzle(case);
                case.kit.props.push(prop("cloth", inside("tin"), ""));
            },
        )),
        row(
            "too-close",
            "the key card of \"The cuff\" and the word card of \"The cuff\" were to lie apart, and both lie at the table",
            |case| drop(case.kit.puzzles[0].parts.insert("word-card".into(), spot("table"))),
            // In a box that stands at the table is not at the table; and the kit's own pair lies apart.
            |case| {
                case.kit.puzzles[2].parts.insert("word-card".into(), inside("tin"));
                let one = Lying::Prop(PropId::new("supper").unwrap());
                case.kit.apart.push(Apart { one, other: Lying::Letter, why: "it smells".into() });
            },
        ),
        row(
            "too-close",
            "the supper and the tin were to lie apart, and both lie at the shelf",
            |case| {
                let one = Lying::Prop(PropId::new("supper").unwrap());
                let other = Lying::Box(BoxId::new("tin").unwrap());
                case.kit.apart.push(Apart { one, other, why: "the tin is found by its smell".into() });
            },
            |_| {},
        ),
    ]
}

/// Adds boxes one within another, and a puzzle in the last of them that needs the cloth.
fn late_puzzle(case: &mut Case) {
    let kit = &mut case.kit;
    let mut place = inside("chest");
    for (name, code) in [("first", "408"), ("last", "295")] {
        let mut item = kit.boxes[0].clone();
        item.id = BoxId::new(name).unwrap();
        item.place = place.clone();
        item.locks = vec![lock(name)];
        let mut shut = kit.locks[0].clone();
        shut.id = lock(name);
        shut.mark = if name == "first" { "owl".into() } else { "gear".into() };
        kit.boxes.push(item);
        kit.locks.push(shut);
        let mut puzzle = kit.puzzles[0].clone();
        puzzle.id = inklatch::ids::PuzzleId::new(name).unwrap();
        puzzle.answer = code.into();
        puzzle.opens = lock(name);
        puzzle.parts.values_mut().for_each(|part| *part = place.clone());
        if name == "last" {
            puzzle.title = "The end".into();
            puzzle.tools.push(PropId::new("cloth").unwrap());
        }
        kit.puzzles.push(puzzle);
        place = inside(name);
    }
}

/// The collar opens to a word said to the host.
fn spoken(case: &mut Case, answer: &str) {
    case.kit.locks[2].kind = LockKind::Spoken;
    case.kit.puzzles[2].answer = answer.into();
}

/// The collar opens a lock with these letters and digits on its first wheel.
fn wheels(case: &mut Case, wheel: &str, answer: &str) {
    case.kit.locks[2].kind = LockKind::Letters(vec![wheel.into(), "AEI".into(), "RST".into()]);
    case.kit.puzzles[2].answer = answer.into();
}

/// The log's digits stand on two loose slips.
fn slips(case: &mut Case, baseline: &str) {
    case.kit.puzzles[1].answer = "1634".into();
    let places = "places: [(name: \"the first slip\"), (name: \"the second slip\")]";
    setup(case, 1, &format!("({places}, order: listed, loose: true, {baseline})"));
}

fn codes() -> Vec<Row> {
    vec![
        mending(row(
            "same-code",
            "the bell padlock and the moon padlock both open with 582",
            |case| case.kit.puzzles[2].answer = "582".into(),
            |case| case.kit.puzzles[2].answer = "285".into(),
        )),
        mending(row(
            "near-code",
            "582 of the bell padlock and 285 of the moon padlock are each other backwards",
            |case| case.kit.puzzles[2].answer = "285".into(),
            // Two wheels apart.
            |case| case.kit.puzzles[2].answer = "597".into(),
        )),
        mending(row(
            "guessable-code",
            "321 of the moon padlock is a run",
            |case| case.kit.puzzles[2].answer = "321".into(),
            |case| case.kit.puzzles[2].answer = "324".into(),
        )),
        row(
            "look-alike-symbol",
            "O in the answer of \"The collar\" can be taken for 0",
            |case| spoken(case, "OWL 7"),
            |case| spoken(case, "OWL"),
        ),
        row(
            "look-alike-symbol",
            "S in the answer of \"The collar\" can be taken for 5",
            |case| wheels(case, "S5A", "SAS"),
            |case| wheels(case, "STA", "SAS"),
        ),
        row(
            "six-or-nine",
            "16 lies loose in \"The log\" and reads as 91 upside down",
            |case| slips(case, "baseline: false"),
            |case| slips(case, "baseline: true"),
        ),
        row(
            "idle-spinning",
            "all 100 codes of the bell padlock are tried in 5 minutes",
            |case| {
                case.kit.locks[0].kind = LockKind::Digits(2);
                case.kit.puzzles[0].answer = "58".into();
                case.kit.puzzles[0].minutes = Some(8.0);
                setup(case, 0, "(word: \"OW\")");
            },
            |case| case.kit.puzzles[0].minutes = Some(8.0),
        ),
        mending(row(
            "code-in-plain-sight",
            "the code of the moon padlock stands in the letter",
            |case| case.kit.letter.body.push_str(" It was six, one, seven when it stopped."),
            |case| case.kit.letter.body.push_str(" It has hung there since 1617."),
        )),
    ]
}

fn host() -> Vec<Row> {
    vec![
        computed(
            "supply-missing",
            "a step of \"The cuff\" names \"glue\", and no list has white glue",
            |party, _| party.puzzles[0].prep.push(step_of("Fix both with glue.", None)),
            // A word within a word is another word, and what another step takes is on the list.
            |party, _| {
                party.puzzles[0].prep.push(step_of("Fix both with glue; no taped edge.", None));
                party.puzzles[1].prep.push(step_of("Paste it.", Some("glue")));
            },
        ),
        computed(
            "supply-missing",
            "a step of \"The cuff\" takes `moon-dust`, which is on no list",
            |party, _| party.puzzles[0].prep.push(step_of("Strew it.", Some("moon-dust"))),
            |_, _| {},
        ),
        row(
            "dry-time-late",
            "and the host has 20 minutes",
            |case| case.kit.prep_minutes = Some(20),
            |case| case.kit.prep_minutes = Some(7 * 24 * 60),
        ),
        row(
            "licence-missing",
            "does not say who drew it",
            |case| case.theme.theme.credit = "  ".into(),
            // The font is bundled, with its licence.
            |case| drop(case.kit.look.lettering.insert("hand".into(), "Alegreya".into())),
        ),
        row(
            "licence-missing",
            "the font Somebody Sans (hand) has no source and no licence",
            |case| drop(case.kit.look.lettering.insert("hand".into(), "Somebody Sans".into())),
            |case| {
                case.kit.look.lettering.insert("hand".into(), "Somebody Sans".into());
                case.kit.credits.insert("Somebody Sans".into(), "A. Maker, OFL 1.1".into());
            },
        ),
        row(
            "licence-missing",
            "the picture art/owl.svg has no source and no licence",
            |case| case.kit.notes[0].picture = Some(VPath::new("art/owl.svg").unwrap()),
            |case| {
                case.kit.notes[0].picture = Some(VPath::new("art/owl.svg").unwrap());
                case.kit.credits.insert("art/owl.svg".into(), "my own".into());
            },
        ),
    ]
}

/// A step of a host's preparation that takes one material at most.
fn step_of(what: &str, material: Option<&'static str>) -> PrepStep {
    let needs = material.map(|material| Need { material, amount: 1.0 }).into_iter().collect();
    PrepStep { key: "more", what: what.into(), needs, hands: 1.0, wait: 0.0, after: Vec::new() }
}
