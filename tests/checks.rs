//! Tests of `checks`: each fires on its fixture with the right words, and stays silent on a near miss.

#[path = "checks/mends.rs"]
mod mends;
#[path = "checks/prover.rs"]
mod prover;
#[path = "checks/rows.rs"]
mod rows;
#[path = "checks/told.rs"]
mod told;
#[path = "checks/words.rs"]
mod words;

use std::collections::BTreeSet;

use inklatch::checks::{CHECKS, Facts, Finding, FixKind, SetPiece, blocks, find, prove, run, run_one};
use inklatch::diag::{Level, Severity};
use inklatch::kit::Kit;
use inklatch::kit::edit::apply_all;
use inklatch::party::Party;
use inklatch::rehearse::Rehearsals;
use inklatch::theme::Loaded;

use crate::common::plain_theme;
use crate::sound::sound_kit;
use rows::{Row, rows};

/// A kit about to be checked.
pub struct Case {
    pub kit: Kit,
    pub theme: Loaded,
    pub level: Level,
}

impl Case {
    fn sound() -> Self {
        Self { kit: sound_kit(), theme: plain_theme(), level: Level::Standard }
    }
}

/// What all checks say of a case; `after` changes what was computed before they look.
fn look(case: &Case, after: fn(&mut Party, &mut Vec<SetPiece>)) -> Vec<Finding> {
    let mut party = Party::new(&case.kit, &case.theme, case.level).unwrap();
    let mut set = Vec::new();
    after(&mut party, &mut set);
    let flow = party.flow(&case.kit);
    let (kit, theme) = (&case.kit, &case.theme);
    let rehearsal = Rehearsals::default().of(kit, &party.parts(kit), case.level).ok();
    run(&Facts { kit, theme, party: &party, flow: &flow, set: &set, rehearsal: rehearsal.as_deref() })
}

fn lines(findings: &[Finding]) -> String {
    findings.iter().map(|f| format!("{} {}: {}: {}\n", f.severity.word(), f.name, f.anchor, f.message)).collect()
}

#[test]
fn the_sound_kit_is_sound_at_every_level() {
    let case = Case::sound();
    let proof = prove(&case.kit, &case.theme, None, &Level::ALL).unwrap();
    assert_eq!(lines(&proof.findings), "");
    assert_eq!(proof.levels.len(), 3);
    for proof in &proof.levels {
        assert!(proof.flow.finish_reachable);
        assert_eq!(proof.flow.open_per_round(), [2, 1]);
    }
}

#[test]
fn the_demo_kits_are_printed_as_they_are_proven() {
    for name in ["the-stopped-clock", "the-harbour-regatta"] {
        let opened = inklatch::bundle::open(Some(std::path::Path::new(name))).unwrap();
        let press = inklatch::bundle::press_of(&opened).unwrap();
        let proof = inklatch::bundle::prove(&opened, &press, &Level::ALL).unwrap();
        for level in &proof.levels {
            for puzzle in &opened.kit.puzzles {
                let of = |set: &&SetPiece| !set.printed.is_empty() && set.piece.starts_with(puzzle.id.as_str());
                assert!(level.set.iter().any(|set| of(&set)), "{name}: nothing of {} was read", puzzle.id);
            }
        }
        assert!(proof.findings.iter().all(|f| f.name != "print-differs"), "{name}:\n{}", lines(&proof.findings));
    }
}

#[test]
fn every_check_has_a_fixture_that_fires_and_one_that_is_silent() {
    let rows = rows();
    let named: BTreeSet<&str> = rows.iter().map(|row| row.name).collect();
    let known: BTreeSet<&str> = CHECKS.iter().map(|check| check.info().name).collect();
    assert_eq!(named, known);
    for Row { name, says, fires, fires_after, silent, silent_after, mends } in rows {
        let mut case = Case::sound();
        fires(&mut case);
        let found = look(&case, fires_after);
        let mine: Vec<&Finding> = found.iter().filter(|finding| finding.name == name).collect();
        assert!(!mine.is_empty(), "{name} does not fire; found:\n{}", lines(&found));
        assert!(mine.iter().any(|f| f.message.contains(says)), "{name} does not say \"{says}\":\n{}", lines(&found));
        for finding in &mine {
            assert!(!finding.why.is_empty() && !finding.message.ends_with('.'), "{name}: {}", finding.message);
        }
        if mends {
            mended(case, &mine, name);
        }
        let mut case = Case::sound();
        silent(&mut case);
        let found = look(&case, silent_after);
        assert!(found.iter().all(|finding| finding.name != name), "{name} is not silent:\n{}", lines(&found));
    }
}

/// Making the fixes takes the findings away, and taking the edits back restores the kit.
fn mended(case: Case, found: &[&Finding], name: &str) {
    let Case { mut kit, theme, level } = case;
    let before = kit.clone();
    let known: BTreeSet<(&str, String)> = look(&Case { kit: kit.clone(), theme: theme.clone(), level }, |_, _| {})
        .into_iter()
        .map(|f| (f.name, f.anchor.to_string()))
        .collect();
    let mut back = Vec::new();
    for finding in found {
        let fix = finding.fix.clone().unwrap_or_else(|| panic!("{name} offers no fix"));
        assert_ne!(fix.kind, FixKind::ShowOnly);
        back.insert(0, apply_all(&mut kit, fix.edits));
    }
    let left = look(&Case { kit: kit.clone(), theme, level }, |_, _| {});
    assert!(left.iter().all(|finding| finding.name != name), "{name} is not mended:\n{}", lines(&left));
    // No mend makes a new finding of its own.
    let fresh: Vec<&Finding> = left.iter().filter(|f| !known.contains(&(f.name, f.anchor.to_string()))).collect();
    assert!(fresh.is_empty(), "{name}: its mend makes {}: {}", fresh[0].name, fresh[0].message);
    for edits in back {
        apply_all(&mut kit, edits);
    }
    assert_eq!(kit, before);
}

#[test]
fn every_check_is_described() {
    let mut names = BTreeSet::new();
    for check in CHECKS {
        let info = check.info();
        assert!(inklatch::ids::is_id(info.name) && names.insert(info.name), "{}", info.name);
        let help = info.help();
        for heading in ["## What it does", "## Why it matters at the table", "## How to mend"] {
            assert!(help.contains(heading), "{} lacks \"{heading}\"", info.name);
        }
        assert!(!info.flags.is_empty() && !info.flags.ends_with('.') && !info.why.is_empty(), "{}", info.name);
        assert_eq!(find(info.name).unwrap().info().name, info.name);
    }
    let Err(trouble) = find("same-cod") else { panic!("there is no such check") };
    assert!(trouble.to_string().contains("did you mean `same-code`?"));
}

#[test]
fn findings_are_sorted_and_told_once() {
    let mut case = Case::sound();
    case.kit.puzzles[1].hints.method.clear();
    case.kit.puzzles[2].answer = "582".into();
    let found = look(&case, |_, _| {});
    assert!(blocks(&found));
    assert!(found.windows(2).all(|pair| pair[0].severity <= pair[1].severity));
    let proof = prove(&case.kit, &case.theme, None, &Level::ALL).unwrap();
    // The missing hint is the same field at all three levels.
    let missing: Vec<&Finding> = proof.findings.iter().filter(|finding| finding.name == "hint-missing").collect();
    assert_eq!(missing.len(), 1);
    assert_eq!(missing[0].level, None);
}

#[test]
fn a_finding_of_one_level_names_it() {
    let mut case = Case::sound();
    case.kit.puzzles[0].stiff = Some(inklatch::kit::LevelChange {
        setup: Some(inklatch::kit::RawSetup::new("(word: \"OWLS\")").unwrap()),
        ..Default::default()
    });
    let proof = prove(&case.kit, &case.theme, None, &Level::ALL).unwrap();
    assert!(blocks(&proof.findings));
    assert!(proof.findings.iter().all(|finding| finding.level == Some(Level::Stiff)), "{}", lines(&proof.findings));
}

#[test]
fn a_check_says_nothing_of_a_kit_of_nothing() {
    let kit = crate::sound::kit_of("bare");
    let theme = plain_theme();
    let party = Party::new(&kit, &theme, Level::Standard).unwrap();
    let flow = party.flow(&kit);
    let facts = Facts { kit: &kit, theme: &theme, party: &party, flow: &flow, set: &[], rehearsal: None };
    for check in CHECKS {
        let found = run_one(*check, &facts);
        let expected = check.info().name == "unknown-reference";
        assert_eq!(!found.is_empty(), expected, "{}", lines(&found));
        assert!(found.iter().all(|finding| finding.severity == Severity::Blocks));
    }
}

/// The kit that the program carries must be worth showing: it is proven with everything set in type.
#[test]
fn the_demo_kit_blocks_nothing() {
    let opened = inklatch::bundle::open(None).unwrap();
    let lettering = inklatch::theme::Lettering::new(&opened.theme.theme.lettering, &opened.kit.look.lettering).unwrap();
    let press = inklatch::print::Press::new(&opened.fonts, &lettering).unwrap();
    let proof = prove(&opened.kit, &opened.theme, Some(&press), &Level::ALL).unwrap();
    assert!(!blocks(&proof.findings), "{}", lines(&proof.findings));
    assert!(proof.levels.iter().all(|level| level.set.len() >= level.party.pieces.len()));
}
