//! Tests of `redress`: a kit goes into another theme and comes back as it was; what stays behind is found and mended.

use inklatch::bundle::{open_in, press_of, redone};
use inklatch::checks::prove;
use inklatch::diag::{Anchor, Level, Severity};
use inklatch::files::{Builtin, Files as _, VPath};
use inklatch::ids::ThemeId;
use inklatch::kit::edit::{apply_all, between};
use inklatch::kit::{Dressed, Kit, OldWord, WordForms};
use inklatch::readings::Verdict;
use inklatch::redress::{Mend, keep_everywhere, leftovers, make_slot, mend, mend_all, redress, redress_as, standing};
use inklatch::script::{Words, same_word};
use inklatch::theme::{Theme, builtin_ids, load_builtin};

use crate::sound::sound_kit;

mod symbols;

/// The kits that the program carries, opened.
fn kits() -> Vec<inklatch::bundle::Opened> {
    let all = Builtin::new().list(&VPath::new("assets/kits").unwrap()).unwrap();
    let folders = all.iter().filter_map(|path| path.as_str().strip_suffix("/kit.ron"));
    let kits: Vec<_> = folders
        .map(|folder| {
            let files = Builtin::below(VPath::new(folder).unwrap());
            open_in(std::sync::Arc::new(files), VPath::new("kit.ron").unwrap()).unwrap()
        })
        .collect();
    assert!(kits.len() >= 2);
    kits
}

fn theme(id: &str) -> Theme {
    load_builtin(&ThemeId::new(id).unwrap()).unwrap().theme
}

fn others(id: &ThemeId) -> Vec<Theme> {
    builtin_ids().iter().filter(|other| *other != id).map(|other| load_builtin(other).unwrap().theme).collect()
}

#[test]
fn there_and_back_the_kit_is_as_it_was() {
    for opened in kits() {
        let mut kit = opened.kit.clone();
        kit.look.palette.insert("ink".into(), "#101820".into());
        let home = &opened.theme.theme;
        for away in others(&home.id) {
            let there = redress(&kit, home, &away).kit;
            assert_eq!(there.theme, away.id);
            assert!(there.look.palette.is_empty(), "a colour of the old season stayed");
            assert_eq!((&there.letter, &there.notes, &there.words), (&kit.letter, &kit.notes, &kit.words));
            let mut back = redress(&there, &away, home).kit;
            assert_eq!(back.dressed.from.as_ref(), Some(&away.id));
            back.dressed = Dressed::default();
            assert_eq!(back, kit, "{} by way of {}", kit.id, away.id);
        }
    }
}

#[test]
fn one_step_of_edits_makes_the_new_kit_and_takes_it_back() {
    for opened in kits() {
        let away = theme("plain");
        let fresh = redress(&opened.kit, &opened.theme.theme, &away).kit;
        let mut kit = opened.kit.clone();
        let back = apply_all(&mut kit, between(&opened.kit, &fresh));
        assert_eq!(kit, fresh);
        apply_all(&mut kit, back);
        assert_eq!(kit, opened.kit);
    }
}

/// What blocks a kit in a theme, and every text that does not fit.
fn faults(opened: &inklatch::bundle::Opened) -> Vec<String> {
    let press = press_of(opened).unwrap();
    let proof = prove(&opened.kit, &opened.theme, Some(&press), &Level::ALL).unwrap();
    let mut faults: Vec<String> = proof
        .findings
        .iter()
        .filter(|found| found.severity == Severity::Blocks || found.name == "text-overflows")
        .map(|found| format!("{}: {}: {}", found.name, found.anchor, found.message))
        .collect();
    for level in &proof.levels {
        for laid in &level.party.puzzles {
            if laid.verdict != Some(Verdict::One) {
                faults.push(format!("{} {}: {:?}", level.party.level.word(), laid.id, laid.verdict));
            }
        }
    }
    faults
}

#[test]
fn every_theme_carries_every_kit_at_every_level() {
    for opened in kits() {
        for id in builtin_ids() {
            for mend in [false, true] {
                let dressed = redone(&opened, &id, mend, &Default::default()).unwrap();
                let at = format!("{} in {id}{}", opened.kit.id, if mend { ", mended" } else { "" });
                assert!(dressed.troubles.is_empty(), "{at}: {:?}", dressed.troubles);
                let faults = faults(&dressed.opened);
                assert!(faults.is_empty(), "{at}:\n{}", faults.join("\n"));
            }
        }
    }
}

/// The sound kit with an old word, and with a text for its letter.
fn kit_saying(text: &str, one: &str, many: &str) -> (Kit, Theme) {
    let mut kit = sound_kit();
    kit.letter.body = text.into();
    kit.dressed.old_words =
        vec![OldWord { one: one.into(), many: many.into(), slot: "bird".into(), ..OldWord::default() }];
    let mut theme = theme("harbour");
    theme.words.insert("bird".into(), WordForms { one: "eider".into(), ..WordForms::default() });
    (kit, theme)
}

/// The letter after a mend of its only leftover.
fn mended(text: &str, one: &str, many: &str, how: Mend) -> String {
    let (mut kit, theme) = kit_saying(text, one, many);
    let found = leftovers(&kit);
    let in_letter: Vec<_> = found.iter().filter(|leftover| leftover.anchor == Anchor::Letter).collect();
    assert_eq!(in_letter.len(), 1, "{text}: {found:?}");
    let edits = mend(&kit, &theme, in_letter[0], how);
    apply_all(&mut kit, edits);
    kit.letter.body
}

#[test]
fn old_words_are_found_by_stem_and_mended_in_form() {
    let slot = |text: &str| mended(text, "owl", "", Mend::Slot);
    assert_eq!(
        slot("An owl saw owls; the Owl's hat. OWLS!"),
        "{{ bird | a | cap }} saw {{ bird | plural }}; the {{ bird | title }}'s hat. {{ bird | plural | caps }}!"
    );
    assert_eq!(slot("with an owl-shaped hat"), "with {{ bird | a }}-shaped hat");
    let word = |text: &str| mended(text, "crow", "", Mend::Replace);
    assert_eq!(word("A crow saw a crow; two crows, CROWS, Crow."), "An eider saw an eider; two eiders, EIDERS, Eider.");
    assert_eq!(mended("Mice, mice.", "mouse", "mice", Mend::Replace), "Eiders, eiders.");
    // One of what the old word names several of has no form of its own: it is found and left.
    let (kit, _) = kit_saying("An oar lay there.", "oars", "");
    let found = leftovers(&kit);
    assert_eq!((found.len(), found[0].slot, found[0].replace), (1, false, false));
    // What is in a slot already, or only begins alike, is no leftover.
    let (kit, _) = kit_saying("{{ crow }} crown crowd", "crow", "");
    assert_eq!(leftovers(&kit), []);
}

/// How often an old word is found in a text.
fn times(text: &str, one: &str) -> usize {
    let (kit, _) = kit_saying(text, one, "");
    leftovers(&kit).iter().filter(|leftover| leftover.anchor == Anchor::Letter).map(|leftover| leftover.count).sum()
}

#[test]
fn only_whole_words_are_found_and_little_words_only_as_names_of_things() {
    for (one, text, count) in [
        ("garden", "The gardener digs; gardening, gardened.", 0),
        ("garden", "The gardener's garden; gardens, the garden's gate, GARDEN.", 4),
        ("crow", "It was crowed, crowing all day.", 0),
        ("clock tower", "The clock-tower, a clock  tower, clock towers, clocks tower.", 3),
        ("can", "You can see what they can do; all can, that can, Can you?", 0),
        ("can", "A can, the can's lid, your can, two cans. They can.", 4),
        ("can", "Can", 1),
        ("well", "Well done! All is well, as well.", 0),
        ("well", "By the well you do well.", 1),
        ("watering can", "The watering can can leak.", 1),
    ] {
        assert_eq!(times(text, one), count, "{one}: {text}");
    }
    // Of two old words of one stem each finds its own.
    let (mut kit, _) = kit_saying("The gardener in the garden.", "garden", "");
    kit.dressed.old_words.push(OldWord { one: "gardener".into(), ..OldWord::default() });
    let said: Vec<String> = leftovers(&kit).into_iter().map(|leftover| leftover.said).collect();
    assert_eq!(said, ["gardener", "garden"]);
}

#[test]
fn the_longer_of_two_old_words_is_meant() {
    let (mut kit, _) = kit_saying("The clock tower, the towers, and the clock.", "clock tower", "");
    kit.dressed.old_words.push(OldWord { one: "clock".into(), ..OldWord::default() });
    kit.letter.heading.clear();
    let said: Vec<(String, usize)> = leftovers(&kit)
        .into_iter()
        .filter(|leftover| leftover.anchor == Anchor::Letter)
        .map(|leftover| (leftover.word.one, leftover.count))
        .collect();
    assert_eq!(said, [("clock tower".to_owned(), 1), ("clock".to_owned(), 1)]);
}

#[test]
fn leftovers_are_found_wherever_an_author_writes() {
    let mut kit = sound_kit();
    kit.dressed.old_words = vec![OldWord { one: "owl".into(), ..OldWord::default() }];
    let before: Vec<_> = leftovers(&kit).into_iter().map(|leftover| leftover.anchor.to_string()).collect();
    // The word of a puzzle's setup.
    assert_eq!(before, ["puzzle cuff, setup"]);
    kit.title = "Owls".into();
    kit.props[0].name = "the owl".into();
    kit.locks[0].name = "the owl padlock".into();
    kit.spots[0].about = "under the owl".into();
    kit.puzzles[1].hints.method = "Ask the owl.".into();
    kit.puzzles[1].title = "The owl".into();
    kit.words.insert("rule".into(), WordForms { one: "the owl's cup".into(), ..WordForms::default() });
    kit.notes[0].picture = Some(VPath::new("art/old-owl.svg").unwrap());
    kit.id = inklatch::ids::KitId::new("night-of-owls").unwrap();
    let found = leftovers(&kit);
    let at: Vec<String> = found.iter().map(|leftover| leftover.anchor.to_string()).collect();
    for place in [
        "kit",
        "prop torch",
        "lock bell-lock",
        "spot table",
        "puzzle log, standard method",
        "puzzle log, title",
        "word rule",
        "note well-done",
    ] {
        assert!(at.contains(&place.to_owned()), "{place} is not found: {at:?}");
    }
    assert_eq!(found.iter().filter(|leftover| leftover.file_name).count(), 2);
    // Each can be kept, and is then said no more.
    let theme = theme("harbour");
    for leftover in found {
        let edits = mend(&kit, &theme, &leftover, Mend::Keep);
        apply_all(&mut kit, edits);
    }
    assert_eq!(leftovers(&kit), []);
}

#[test]
fn mending_all_leaves_only_what_no_rule_can_mend() {
    for opened in kits() {
        let home = &opened.theme.theme;
        for away in others(&home.id) {
            let fresh = redress(&opened.kit, home, &away).kit;
            let first = leftovers(&fresh).len();
            let (done, places) = mend_all(&fresh, &away);
            assert_eq!(standing(&done, &places), places);
            assert!(places.is_empty() || standing(&fresh, &places).len() < places.len());
            let left = leftovers(&done);
            assert!(left.len() <= first);
            for leftover in &left {
                assert!(!leftover.slot && !leftover.by_rule, "{} in {}: {leftover:?}", opened.kit.id, away.id);
            }
        }
    }
}

#[test]
fn a_slot_says_in_the_old_theme_what_the_author_wrote() {
    for opened in kits() {
        let home = &opened.theme.theme;
        for away in others(&home.id) {
            let mut kit = redress(&opened.kit, home, &away).kit;
            for leftover in leftovers(&kit).iter().filter(|leftover| leftover.slot) {
                let edits = mend(&kit, &away, leftover, Mend::Slot);
                apply_all(&mut kit, edits);
            }
            let words = Words::new(home, &opened.kit);
            let pairs = [
                (&kit.letter.body, &opened.kit.letter.body),
                (&kit.title, &opened.kit.title),
                (&kit.brief, &opened.kit.brief),
            ];
            for (new, old) in pairs {
                assert_eq!(words.fill(new).unwrap(), words.fill(old).unwrap(), "{} in {}", opened.kit.id, away.id);
            }
        }
    }
}

#[test]
fn a_picked_word_becomes_a_slot_everywhere_in_one_step() {
    let mut kit = sound_kit();
    let before = kit.clone();
    kit.letter.body = "The chest is shut. Two chests!".into();
    let start = kit.clone();
    let (edits, places) = make_slot(&kit, "chest", "trunk", None, None);
    assert!(places >= 2, "{places}");
    let back = apply_all(&mut kit, edits);
    assert_eq!(kit.letter.body, "The {{ trunk }} is shut. Two {{ trunk | plural }}!");
    assert_eq!(kit.words["trunk"].one, "chest");
    assert!(kit.boxes.iter().any(|item| item.name == "the {{ trunk }}"));
    apply_all(&mut kit, back);
    assert_eq!(kit, start);
    let (edits, places) = make_slot(&kit, "chest", "trunk", None, Some(&Anchor::Letter));
    apply_all(&mut kit, edits);
    assert_eq!(places, 2);
    assert_eq!(kit.boxes, before.boxes);
}

#[test]
fn stems_are_those_of_snowball_english() {
    // From the vocabulary of the Snowball project's English (Porter2) stemmer: pairs of one stem, pairs of two.
    for (a, b) in [
        ("consign", "consigned"),
        ("knock", "knocks"),
        ("winter", "winters"),
        ("candle", "candles"),
        ("lily", "lilies"),
    ] {
        assert!(same_word(a, b), "{a} {b}");
    }
    for (a, b) in [("news", "new"), ("bell", "belt"), ("organ", "organisation"), ("key", "kite")] {
        assert!(!same_word(a, b), "{a} {b}");
    }
}

/// What a kit says at each place of its texts, by the place in words.
fn said(kit: &Kit) -> Vec<(String, String)> {
    let mut said = Vec::new();
    inklatch::kit::visit_texts(&mut kit.clone(), &mut |at, text| said.push((at.to_string(), text.clone())));
    said
}

#[test]
fn in_a_puzzle_that_prints_it_a_word_of_the_season_before_last_is_no_leftover() {
    let regatta = inklatch::bundle::open_demo("the-harbour-regatta").unwrap();
    let (home, hive, orchard) = (&regatta.theme.theme, theme("hive"), theme("orchard"));
    let there = redress(&regatta.kit, home, &hive).kit;
    let further = redress(&there, &hive, &orchard).kit;
    // Each old word of the first step knows the picture that is printed now.
    for (old, between) in &there.dressed.symbols {
        let now = further.dressed.symbols.get(between).unwrap_or(between);
        let known = further.dressed.old_words.iter().find(|word| word.one == *old).unwrap();
        assert_eq!(known.now, *now, "{old}");
    }
    let (done, _) = mend_all(&further, &orchard);
    let method = said(&done).into_iter().find(|(at, _)| at == "puzzle island, standard method").unwrap().1;
    let lighthouse = &further.dressed.symbols[&there.dressed.symbols["lighthouse"]];
    assert!(method.contains(&format!("on the {lighthouse} of the map")), "{method}");
}
