//! Mends of what a kit can suffer from: each takes its finding away, brings none, and is taken back in one step.

use inklatch::checks::{Finding, Fix};
use inklatch::ids::{BoxId, NoteId, PropId};
use inklatch::kit::{Apart, Form, Lock, LockKind, Lying, Printed, Prop, PropRole, WordForms};

use super::rows::{inside, lock, prop, spot};
use super::words::old_word;
use super::{Case, lines, look, mended};

/// A way to break the sound kit, the check that finds it, and what its mend says.
type Break = (&'static str, &'static str, fn(&mut Case));

/// The first box as an envelope of this name, and an envelope of that name beside it.
fn envelope(case: &mut Case, named: &str, called: &str) {
    let place = case.kit.boxes[0].place.clone();
    case.kit.boxes[0].printed = PropId::new(named);
    let printed = Some(Printed { text: "Not yet".into(), ..Printed::fresh(Form::Envelope) });
    case.kit.props.push(Prop { role: PropRole::Decoration, printed, ..prop(called, place, "") });
}

const BREAKS: &[Break] = &[
    ("unknown-reference", "Use shelf instead", |case| case.kit.props[1].place = spot("shelfe")),
    ("unknown-reference", "Use tin instead", |case| case.kit.props[0].place = inside("tni")),
    ("unknown-reference", "Let the host read it aloud", |case| case.kit.letter.place = Some(spot("wine-cellar"))),
    ("unknown-reference", "Use bell-lock instead", |case| case.kit.puzzles[0].opens = lock("bell-lok")),
    ("unknown-reference", "Use letter-key instead", |case| case.kit.puzzles[0].mechanic = "leter-key".into()),
    ("unknown-reference", "Take it off the tools", |case| {
        case.kit.puzzles[0].tools.push(PropId::new("crowbar").unwrap());
    }),
    ("unknown-reference", "Take no-such-lock off it", |case| case.kit.boxes[0].locks.push(lock("no-such-lock"))),
    ("unknown-reference", "Use tin-envelope instead", |case| envelope(case, "tin-envelop", "tin-envelope")),
    ("unknown-reference", "Lay it where the ", |case| {
        envelope(case, "tin-envelope", "tin-envelope");
        case.kit.props.last_mut().unwrap().place = inside("chest");
    }),
    ("unknown-reference", "bought or found at home", |case| {
        envelope(case, "tin-envelope", "tin-envelope");
        case.kit.props.last_mut().unwrap().printed.as_mut().unwrap().form = Form::Label;
    }),
    ("unknown-reference", "Use bell instead", |case| case.kit.locks[0].mark = "bel".into()),
    ("unknown-reference", "Name no material", |case| case.kit.props[1].material = "unobtainium-of-the-moon".into()),
    ("unknown-reference", "be the last box", |case| case.kit.finish.opens = BoxId::new("chst").unwrap()),
    ("unknown-reference", "be the closing card", |case| case.kit.finish.card = NoteId::new("wel-done").unwrap()),
    ("unknown-reference", "Take the pair off the list", |case| {
        let other = Lying::Prop(PropId::new("crowbar").unwrap());
        case.kit.apart.push(Apart { one: Lying::Letter, other, why: String::new(), together: false });
    }),
    ("unknown-reference", "Use moon-lock instead", |case| {
        let key = PropRole::Key(lock("moon-lokc"));
        case.kit.props.push(Prop { role: key, ..prop("moon-lock-key", inside("chest"), "") });
    }),
    ("id-twice", "Call the second", |case| {
        let mut twin = case.kit.spots[0].clone();
        twin.name = "another spot".into();
        case.kit.spots.push(twin);
    }),
    ("piece-in-no-place", "Lay the key card of", |case| drop(case.kit.puzzles[0].parts.remove("key-card"))),
    // Five padlocks with keys that lie open: any of them may hang on the tin as well.
    ("over-hasp", "Hang ", |case| {
        for n in 0..5 {
            let id = lock(&format!("more-{n}"));
            let name = format!("the padlock number {n}");
            let more = Lock { id: id.clone(), name, kind: LockKind::Key, ..case.kit.locks[0].clone() };
            case.kit.locks.push(more);
            case.kit.boxes[1].locks.push(id.clone());
            let key = prop(&format!("key-{n}"), spot("table"), "");
            case.kit.props.push(Prop { role: PropRole::Key(id), ..key });
        }
    }),
    ("finish-without-it", "Lay the note \"", |case| {
        let card = case.kit.finish.card.clone();
        if let Some(note) = case.kit.note_mut(&card) {
            note.place = spot("table");
        }
    }),
];

#[test]
fn whatever_breaks_a_kit_is_mended_in_a_click() {
    for (name, title, broken) in BREAKS {
        let mut case = Case::sound();
        broken(&mut case);
        let found = look(&case, |_, _| {});
        let mine: Vec<&Finding> = found.iter().filter(|finding| finding.name == *name).collect();
        let titles: Vec<&str> =
            mine.iter().filter_map(|finding| finding.fix.as_ref()).map(|Fix { title, .. }| title.as_str()).collect();
        assert!(
            titles.iter().any(|own| own.contains(title)),
            "{name}: no \"{title}\" in {titles:?}:\n{}",
            lines(&found)
        );
        mended(case, &mine, name);
    }
}

/// A word in a setup becomes a slot only where the puzzle can still be arranged with the new word.
#[test]
fn a_leftover_in_a_setup_is_mended_only_where_the_puzzle_stays_one() {
    for (bird, mended) in [("emu", true), ("jackdaw", false)] {
        let mut case = Case::sound();
        case.theme.theme.words.insert("bird".into(), WordForms { one: bird.into(), ..WordForms::default() });
        case.kit.dressed.old_words.push(old_word("owl", "bird"));
        let found = look(&case, |_, _| {});
        let setup =
            |finding: &&Finding| finding.name == "leftover-word" && finding.anchor.to_string().contains("setup");
        let finding = found.iter().find(setup).unwrap_or_else(|| panic!("no leftover:\n{}", lines(&found)));
        assert_eq!(finding.fix.is_some(), mended, "{bird}:\n{}", lines(&found));
    }
}
