//! Tests of `propose`: what is proposed is sound, the same every time, and refused with a reason where there is none.

use std::collections::{BTreeMap, BTreeSet};

use inklatch::bundle;
use inklatch::checks::{Finding, prove};
use inklatch::diag::{Level, Severity};
use inklatch::ids::ThemeId;
use inklatch::kit::edit::apply_all;
use inklatch::kit::{HintLadder, Kit, LockKind, RawSetup};
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::sample;
use inklatch::party::Party;
use inklatch::propose::{Wish, propose};
use inklatch::readings::Verdict;
use inklatch::theme::{Loaded, Palette};

use crate::common::{THEME, plain_theme};
use crate::sound::sound_kit;

/// The findings about codes and readings of a kit at every level.
fn found(kit: &Kit, theme: &Loaded) -> Vec<Finding> {
    prove(kit, theme, None, &Level::ALL).unwrap().findings
}

fn about_codes(finding: &&Finding) -> bool {
    finding.severity == Severity::Blocks
        || matches!(
            finding.name,
            "near-code"
                | "guessable-code"
                | "code-in-plain-sight"
                | "hint-says-it"
                | "hint-for-another"
                | "unproven-reading"
        )
}

fn lines(findings: &[Finding]) -> String {
    findings.iter().filter(about_codes).map(|f| format!("{}: {}: {}\n", f.name, f.anchor, f.message)).collect()
}

#[test]
fn a_sound_kit_gets_other_sound_codes() {
    let kit = sound_kit();
    for seed in 0..5 {
        let wish = Wish { seed, ..Wish::default() };
        let proposal = propose(&kit, &THEME, &wish).unwrap();
        assert_eq!(proposal, propose(&kit, &THEME, &wish).unwrap(), "the same wish gives the same codes");
        assert!(proposal.kept.is_empty());
        let mut fresh = kit.clone();
        let back = apply_all(&mut fresh, proposal.edits(&kit, &THEME));
        assert!(kit.puzzles.iter().zip(&fresh.puzzles).all(|(old, new)| old.answer != new.answer));
        assert_eq!(lines(&found(&fresh, &THEME)), "");
        apply_all(&mut fresh, back);
        assert_eq!(fresh, kit);
    }
}

#[test]
fn the_demo_kits_get_codes_and_say_what_they_keep() {
    let opened = bundle::open(None).unwrap();
    let proposal = propose(&opened.kit, &opened.theme, &Wish::default()).unwrap();
    let mut fresh = opened.kit.clone();
    apply_all(&mut fresh, proposal.edits(&opened.kit, &opened.theme));
    assert_eq!(lines(&found(&fresh, &opened.theme)), "");
    assert_eq!(proposal.changes.len() + proposal.kept.len(), opened.kit.puzzles.len());
    assert!(proposal.changes.len() >= 5, "{proposal:?}");
    assert!(proposal.kept.iter().all(|kept| !kept.why.is_empty()));
    assert!(proposal.kept.iter().any(|kept| kept.why.contains("opens with a key")), "{:?}", proposal.kept);
}

/// A giveaway that names a price, or who has which boat, is false once other codes arrange the puzzle anew.
#[test]
fn a_hint_that_is_the_mechanics_draft_follows_the_codes_and_the_theme() {
    let drafted = |kit: &Kit, theme: &Loaded, level| {
        let party = Party::new(kit, theme, level).unwrap();
        party.puzzles.into_iter().map(|laid| (laid.id.clone(), laid)).collect::<BTreeMap<_, _>>()
    };
    let mut opened = bundle::open(None).unwrap();
    let standard = drafted(&opened.kit, &opened.theme, Level::Standard);
    let own = "In my own words.";
    for puzzle in &mut opened.kit.puzzles {
        puzzle.hints = HintLadder { method: own.into(), ..standard[&puzzle.id].drafted.clone() };
        (puzzle.gentle, puzzle.stiff) = (None, None);
    }
    let theme = ThemeId::new("orchard").unwrap();
    let redone = bundle::redone(&opened, &theme, false, &BTreeMap::new()).unwrap().opened;
    let mut fresh = redone.kit.clone();
    let proposal = propose(&fresh, &redone.theme, &Wish::default()).unwrap();
    apply_all(&mut fresh, proposal.edits(&redone.kit, &redone.theme));
    let mut changed = 0;
    for level in Level::ALL {
        for (id, laid) in drafted(&fresh, &redone.theme, level) {
            assert_eq!(laid.hints.giveaway.trim(), laid.drafted.giveaway.trim(), "{id} at {level:?}");
            assert_eq!(laid.hints.method, own);
            changed += usize::from(laid.hints.giveaway != standard[&id].drafted.giveaway);
        }
    }
    assert!(changed > 3, "only {changed} giveaways name anything of the puzzle");
}

#[test]
fn codes_to_avoid_and_puzzles_to_keep_are_respected() {
    let kit = sound_kit();
    let first = propose(&kit, &THEME, &Wish::default()).unwrap();
    let avoid: Vec<String> = first.changes.iter().map(|change| change.new.clone()).collect();
    let keep = BTreeSet::from([kit.puzzles[1].id.clone()]);
    let second = propose(&kit, &THEME, &Wish { seed: 0, avoid: avoid.clone(), keep }).unwrap();
    assert_eq!(second.changes.len(), 2);
    assert!(second.changes.iter().all(|change| !avoid.contains(&change.new)), "{second:?}");
    assert_eq!(second.kept[0].puzzle, kit.puzzles[1].id);
}

#[test]
fn words_come_from_the_kit_or_stay() {
    let mut kit = sound_kit();
    kit.locks[1].kind = LockKind::Letters(vec!["BOG".into(), "EWI".into(), "LNX".into()]);
    kit.puzzles[1].answer = "BEL".into();
    kit.puzzles[1].setup = RawSetup::new("(places: [(name: \"the first page\", page: 4)])").unwrap();
    let none = propose(&kit, &THEME, &Wish::default()).unwrap();
    assert!(none.kept.iter().any(|kept| kept.why.contains("can spell no other word of the theme")), "{none:?}");
    let word = inklatch::kit::WordForms { one: "gin".into(), ..Default::default() };
    kit.words.insert("spirit".into(), word);
    let some = propose(&kit, &THEME, &Wish::default()).unwrap();
    assert!(some.changes.iter().any(|change| change.new == "GIN"), "{some:?}");
}

#[test]
fn a_lock_too_small_is_told_why() {
    let mut kit = sound_kit();
    let theme = plain_theme();
    // Three locks with two pushes: two codes that differ on one wheel only are too like, so four letters give four
    // codes at most, and fewer without those that are each other backwards.
    for (at, push) in ["UU", "DD", "LR"].iter().enumerate() {
        kit.locks[at].kind = LockKind::Directions(2);
        kit.puzzles[at].answer = (*push).into();
        kit.puzzles[at].mechanic = "glow-ink".into();
        kit.puzzles[at].setup = RawSetup::new("(places: [(name: \"the first page\", page: 4)])").unwrap();
    }
    match propose(&kit, &theme, &Wish::default()) {
        Ok(proposal) => {
            for kept in &proposal.kept {
                assert!(
                    (kept.why.contains("can show no") || kept.why.contains("none will do")) && !kept.help.is_empty(),
                    "{kept:?}"
                );
            }
        }
        Err(trouble) => assert!(trouble.to_string().contains("hint:"), "{trouble}"),
    }
    // With every other code to be avoided there is nothing to propose.
    let avoid = (0..1000)
        .map(|number| format!("{number:03}"))
        .chain((0..10_000).map(|number| format!("{number:04}")))
        .collect();
    let proposal = propose(&sound_kit(), &theme, &Wish { avoid, ..Wish::default() }).unwrap();
    assert!(proposal.changes.is_empty());
    assert!(
        proposal.kept.iter().all(|kept| kept.why.contains("no other code than those to be avoided")),
        "{proposal:?}"
    );
}

/// Hints in an author's own words that named what stood there before are noted once other codes arrange the puzzle anew,
/// until they are written anew; those of the demo kits hold whatever the codes are.
#[test]
fn own_hints_that_name_what_is_gone_are_noted() {
    let opened = bundle::open(Some("the-harbour-regatta".as_ref())).unwrap();
    let theme = &opened.theme;
    let changed = |kit: &Kit, seed| {
        let mut fresh = kit.clone();
        let proposal = propose(kit, theme, &Wish { seed, ..Wish::default() }).unwrap();
        apply_all(&mut fresh, proposal.edits(kit, theme));
        fresh
    };
    let noted = |kit: &Kit| -> Vec<String> {
        let findings = found(kit, theme);
        findings.into_iter().filter(|found| found.name == "hint-from-before").map(|found| found.message).collect()
    };
    for seed in 1..3 {
        let fresh = changed(&opened.kit, seed);
        assert!(fresh.dressed.old_hints.is_empty(), "{:?}", fresh.dressed.old_hints);
    }
    let id = opened.kit.puzzles.iter().find(|puzzle| puzzle.mechanic == "price-list").map(|p| p.id.clone()).unwrap();
    let shown = |kit: &Kit| -> String {
        let party = Party::new(kit, theme, Level::Standard).unwrap();
        party.puzzle(&id).unwrap().laid.as_ref().unwrap().json().to_string()
    };
    // A price of today, which another code will change.
    let (today, then) = (shown(&opened.kit), shown(&changed(&opened.kit, 5)));
    let holds =
        |text: &str, price: u32| text.split(|c: char| !c.is_ascii_digit()).any(|part| part == price.to_string());
    let price = (10..100).find(|price| holds(&today, *price) && !holds(&then, *price)).unwrap();
    let mut kit = opened.kit.clone();
    let puzzle = kit.puzzle_mut(&id).unwrap();
    puzzle.hints.giveaway = format!("Begin with what costs {price}, and go on from there.");
    assert!(noted(&kit).is_empty());
    let mut fresh = changed(&kit, 5);
    let said = noted(&fresh);
    assert!(said.len() == 1 && said[0].contains(&format!("says \"{price}\", as the puzzle showed before")), "{said:?}");
    // Read back from its file it is noted as before.
    let text = inklatch::kit::file::write_kit(&fresh).unwrap();
    assert_eq!(inklatch::kit::file::read_kit(&text, "kit.ron").unwrap(), fresh);
    // With the code of before the puzzle shows it again.
    let mut back = fresh.clone();
    back.puzzle_mut(&id).unwrap().answer.clone_from(&kit.puzzle(&id).unwrap().answer);
    inklatch::party::follow_drafts((&fresh, theme), &mut back, theme);
    assert!(back.dressed.old_hints.is_empty(), "{:?}", back.dressed.old_hints);
    // Written anew, it is forgotten.
    fresh.puzzle_mut(&id).unwrap().hints.giveaway = "Begin with the dearest thing.".into();
    assert!(noted(&fresh).is_empty());
}

/// A code is made of what the puzzle holds by itself: no 7, 8 or 0 for a grid of 1 to 6.
#[test]
fn what_is_proposed_for_a_mechanic_builds_and_is_of_its_own_symbols() {
    let palette = Palette::new(&THEME.theme.palette, &BTreeMap::new()).unwrap();
    let mut changed = BTreeSet::new();
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let made = sample(*mechanic, &THEME, &palette).unwrap();
        let setup = mechanic.default_setup().unwrap();
        let mut kit = sound_kit();
        kit.locks[0].kind = made.lock.clone();
        let puzzle = &mut kit.puzzles[0];
        puzzle.mechanic = id.into();
        puzzle.answer = made.answer.clone();
        puzzle.setup = RawSetup::new(&setup).unwrap();
        puzzle.hints = HintLadder::default();
        let puzzle = puzzle.clone();
        for seed in 0..3 {
            let wish = Wish { seed, ..Wish::only(&kit, &puzzle.id) };
            let proposal = propose(&kit, &THEME, &wish).unwrap();
            let Some(change) = proposal.changes.iter().find(|change| change.puzzle == puzzle.id) else {
                assert!(proposal.kept.iter().any(|kept| kept.puzzle == puzzle.id && !kept.why.is_empty()), "{id}");
                continue;
            };
            if let Some(held) = mechanic.symbols(&setup, &made.lock) {
                assert!(change.new.chars().all(|symbol| held.contains(&symbol)), "{id}: {change:?}");
            }
            let mut fresh = kit.clone();
            apply_all(&mut fresh, proposal.edits(&kit, &THEME));
            let party = Party::new(&fresh, &THEME, Level::Standard).unwrap();
            let laid = party.puzzle(&puzzle.id).unwrap();
            assert!(laid.laid.is_ok(), "{id}: {change:?}: {:?}", laid.laid);
            assert_eq!(laid.verdict, Some(Verdict::One), "{id}: {change:?}");
            changed.insert(id);
        }
    }
    // The rest opens a key, is a word that is said, or hangs on locks that this kit does not have.
    assert!(changed.contains("number-place") && changed.len() * 10 > MECHANICS.len() * 8, "{changed:?}");
}

#[test]
fn a_grid_with_symbols_of_its_own_gets_codes_of_those() {
    let mut kit = sound_kit();
    kit.puzzles[0].mechanic = "number-place".into();
    kit.puzzles[0].answer = "407".into();
    kit.puzzles[0].hints = HintLadder::default();
    for (setup, held) in [("(symbols: \"047895\")", "047895"), ("(size: 9)", "123456789"), ("(size: 4)", "1234")] {
        kit.puzzles[0].setup = RawSetup::new(setup).unwrap();
        for seed in 0..4 {
            let wish = Wish { seed, ..Wish::only(&kit, &kit.puzzles[0].id) };
            let proposal = propose(&kit, &THEME, &wish).unwrap();
            let new = &proposal.changes[0].new;
            assert!(new.chars().all(|symbol| held.contains(symbol)), "{setup}: {new}");
        }
    }
}
