//! The demo kits: every puzzle has its one reading, and the parties can be played to their ends.

use std::collections::BTreeSet;

use inklatch::bundle::find_theme;
use inklatch::checks::prove;
use inklatch::diag::{Level, Step};
use inklatch::files::Builtin;
use inklatch::kit::{Kit, LockKind, PropRole};
use inklatch::party::Party;
use inklatch::print::Press;
use inklatch::readings::Verdict;
use inklatch::script::Script;
use inklatch::theme::{self, Lettering, Loaded};

use super::{demo_kit, demo_kits};

fn themed(kit: Kit) -> (Kit, Loaded) {
    let theme = theme::load_builtin(&kit.theme).unwrap_or_else(|trouble| panic!("{trouble}"));
    (kit, theme)
}

/// All demo kits, with their themes.
fn all() -> Vec<(Kit, Loaded)> {
    demo_kits().into_iter().map(themed).collect()
}

#[test]
fn every_slot_is_filled_at_every_level() {
    for (kit, theme) in all() {
        for level in Level::ALL {
            let script = Script::new(&kit, &theme.theme, level);
            let unfilled: Vec<String> =
                script.unfilled.iter().map(|(at, trouble)| format!("{at}: {trouble}")).collect();
            assert!(unfilled.is_empty(), "{unfilled:#?}");
        }
    }
}

#[test]
fn the_letter_is_of_a_length_to_read_aloud() {
    for (kit, theme) in all() {
        let script = Script::new(&kit, &theme.theme, Level::Standard);
        let words = script.letter.body.text().split_whitespace().count();
        assert!((250..=340).contains(&words), "{}: {words} words", kit.id);
    }
}

#[test]
fn every_puzzle_has_its_one_reading_at_every_level() {
    for (kit, theme) in all() {
        let mut faults = Vec::new();
        for level in Level::ALL {
            let party = Party::new(&kit, &theme, level).unwrap();
            for (puzzle, laid) in kit.puzzles.iter().zip(&party.puzzles) {
                if let Err(trouble) = &laid.laid {
                    faults.push(format!("{} {}: {trouble}", level.word(), puzzle.id));
                } else if laid.verdict != Some(Verdict::One) {
                    faults.push(format!("{} {}: {:?} {:?}", level.word(), puzzle.id, laid.verdict, laid.readings));
                }
            }
            faults.extend(party.troubles.iter().map(|(at, trouble)| format!("{} {at}: {trouble}", level.word())));
        }
        assert!(faults.is_empty(), "{}", faults.join("\n"));
    }
}

#[test]
fn the_party_can_be_played_to_its_end() {
    for (kit, theme) in all() {
        for level in Level::ALL {
            let party = Party::new(&kit, &theme, level).unwrap();
            let flow = party.flow(&kit);
            assert!(flow.finish_reachable, "{flow:#?}");
            assert!(flow.loops.is_empty(), "{:?}", flow.loops);
            let needed: BTreeSet<_> = flow.needed.iter().collect();
            assert_eq!(needed.len(), kit.puzzles.len(), "a puzzle that the finish does not need: {needed:?}");
            assert!(flow.open_per_round()[0] >= 3, "few puzzles open at the start: {:?}", flow.open_per_round());
            let last = flow.rounds.last().unwrap();
            assert_eq!(last.opens, vec![kit.finish.opens.clone()]);
        }
    }
}

#[test]
fn no_check_has_anything_to_say() {
    for (kit, theme) in all() {
        let lettering = Lettering::new(&theme.theme.lettering, &kit.look.lettering).unwrap();
        let fonts = find_theme(&Builtin::new(), &kit.theme).unwrap().1;
        let press = Press::new(&fonts, &lettering).unwrap();
        let proof = prove(&kit, &theme, Some(&press), &Level::ALL).unwrap();
        let said: Vec<String> = proof
            .findings
            .iter()
            // That a lid must be printed at its true size is no fault of a kit with a jar.
            .filter(|finding| finding.name != "scale-critical")
            .map(|finding| format!("{} {:?} {}: {}", finding.name, finding.level, finding.anchor, finding.message))
            .collect();
        assert!(said.is_empty(), "{}", said.join("\n"));
    }
}

#[test]
fn the_cups_are_told_in_the_letter_in_the_same_words() {
    let (kit, theme) = themed(demo_kit());
    for level in Level::ALL {
        let script = Script::new(&kit, &theme.theme, level);
        let rule = script.words.fill("{{ cup_rule }}").unwrap();
        assert!(rule.contains("the one with the owl on it"), "{rule}");
        assert!(script.letter.body.text().contains(rule.as_str()));
        assert!(script.puzzles.iter().any(|puzzle| puzzle.setup.contains(rule.as_str())));
    }
}

#[test]
fn every_part_lies_somewhere_and_nothing_else_does() {
    for (kit, theme) in all() {
        for level in Level::ALL {
            let party = Party::new(&kit, &theme, level).unwrap();
            for (puzzle, laid) in kit.puzzles.iter().zip(&party.puzzles) {
                let placed: BTreeSet<&str> = puzzle.parts.keys().map(String::as_str).collect();
                let there: BTreeSet<&str> = laid.parts.iter().copied().collect();
                assert_eq!(placed, there, "{} {}", level.word(), puzzle.id);
            }
        }
    }
}

/// The mechanics that need things from a shop; the demo kit shows each of them, and no other.
const WITH_THINGS: [&str; 7] = [
    "banded-counters",
    "glow-ink",
    "lasting-ink",
    "letter-key",
    "magnet-field",
    "marked-hiding-place",
    "marked-letters",
];

#[test]
fn every_mechanic_with_things_is_shown_once() {
    let mut shown: Vec<String> = demo_kit().puzzles.iter().map(|puzzle| puzzle.mechanic.clone()).collect();
    shown.sort();
    assert_eq!(shown, WITH_THINGS);
}

#[test]
fn no_code_is_like_another() {
    for kit in demo_kits() {
        let codes: Vec<&str> = kit.puzzles.iter().map(|puzzle| puzzle.answer.as_str()).collect();
        let sorted = |code: &str| {
            let mut symbols: Vec<char> = code.chars().collect();
            symbols.sort_unstable();
            symbols
        };
        for (index, a) in codes.iter().enumerate() {
            for b in &codes[index + 1..] {
                assert_ne!(sorted(a), sorted(b), "{a} and {b} have the same symbols");
                let same_length = a.chars().count() == b.chars().count();
                let apart = a.chars().zip(b.chars()).filter(|(x, y)| x != y).count();
                assert!(!same_length || apart > 1, "{a} and {b} are a wheel apart");
            }
        }
    }
}

#[test]
fn every_lock_has_a_mark_of_its_own() {
    for (kit, theme) in all() {
        let marks: BTreeSet<&str> = kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
        assert_eq!(marks.len(), kit.locks.len());
        for mark in marks {
            assert!(theme.symbol(mark).is_some(), "the theme has no symbol {mark}");
        }
        for puzzle in &kit.puzzles {
            let lock = kit.lock(&puzzle.opens).unwrap();
            assert!(lock.kind == LockKind::Key || lock.kind.spells(&puzzle.answer), "{}", puzzle.id);
        }
    }
}

#[test]
fn the_tools_come_out_of_boxes_that_open_first() {
    for kit in demo_kits() {
        for puzzle in &kit.puzzles {
            for tool in &puzzle.tools {
                let prop = kit.prop(tool).unwrap_or_else(|| panic!("{tool}"));
                assert_eq!(prop.role, PropRole::Tool, "{tool}");
            }
        }
    }
}

#[test]
fn no_hint_says_the_answer_and_no_ladder_lacks_a_step() {
    const WORDS: [&str; 10] = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
    for (kit, theme) in all() {
        for level in Level::ALL {
            let script = Script::new(&kit, &theme.theme, level);
            for (puzzle, text) in kit.puzzles.iter().zip(&script.puzzles) {
                for step in Step::ALL {
                    let hint = text.hints.step(step);
                    let at = format!("{} {} {}", level.word(), puzzle.id, step.word());
                    assert!(!hint.trim().is_empty(), "{at} is missing");
                    assert!(!hint.to_lowercase().contains(&puzzle.answer.to_lowercase()), "{at}");
                    let lower = hint.to_lowercase();
                    let words: Vec<&str> = lower.split(|c: char| !c.is_alphanumeric()).collect();
                    let digits = puzzle.answer.chars().filter_map(|c| c.to_digit(10));
                    let told: Vec<u32> = digits
                        .filter(|d| words.contains(&WORDS[*d as usize]) || words.contains(&&*d.to_string()))
                        .collect();
                    // Shapes that pull are named with their numbers, in another order than the card's.
                    if puzzle.mechanic == "magnet-field" && step == Step::Giveaway {
                        let said: String = hint.chars().filter(char::is_ascii_digit).collect();
                        assert!(told.len() == puzzle.answer.len() && said != puzzle.answer, "{at} says {hint}");
                        continue;
                    }
                    // A giveaway may tell one digit of several: where it stands is left to find.
                    let most = usize::from(step == Step::Giveaway);
                    assert!(told.len() <= most, "{at} says {hint}");
                }
            }
        }
    }
}

#[test]
fn the_regatta_is_all_paper() {
    let (kit, theme) = themed(demo_kits().remove(1));
    let shown: BTreeSet<&str> = kit.puzzles.iter().map(|puzzle| puzzle.mechanic.as_str()).collect();
    assert!(shown.len() >= 8, "{shown:?}");
    let kinds: BTreeSet<String> = kit.locks.iter().map(|lock| lock.kind.describe()).collect();
    assert!((6..=8).contains(&kit.locks.len()) && kinds.len() >= 4, "{} locks", kit.locks.len());
    assert!(kit.puzzles.iter().all(|puzzle| puzzle.tools.is_empty()));
    for level in Level::ALL {
        let party = Party::new(&kit, &theme, level).unwrap();
        assert!(party.flow(&kit).rounds.len() >= 3, "the party has stages");
        for (puzzle, laid) in kit.puzzles.iter().zip(&party.puzzles) {
            let own = party.pieces.iter().filter(|piece| piece.group == puzzle.id.as_str());
            let printed: BTreeSet<&str> = own.map(|piece| piece.part.as_str()).collect();
            for part in &laid.parts {
                assert!(printed.contains(part), "{}: {part} is not printed", puzzle.id);
            }
        }
    }
}
