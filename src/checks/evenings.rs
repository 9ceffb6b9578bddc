//! Evenings that are too long, or too short, at several levels: one finding that names them, with one mend.

use super::{Finding, Fix, FixKind, LevelProof, long_evening, short_evening};
use crate::diag::{Anchor, Level};
use crate::kit::Kit;
use crate::kit::edit::{Edit, Facts as KitFacts};
use crate::rehearse::{Rehearsal, percent};

/// What is said of the minutes that would be right.
const ENOUGH: &str = "in which nine groups of ten are done";

/// A check whose findings at several levels have one cause: the minutes that the kit states.
struct Timely {
    check: &'static str,
    /// What its findings say together, before the levels.
    lead: &'static str,
    /// The minutes that would be right for a level; none where none are better than those stated.
    need: fn(&Rehearsal) -> Option<u16>,
}

const TIMELY: [Timely; 2] = [
    Timely { check: "long-evening", lead: "too few simulated evenings end in time", need: long_evening::need },
    Timely { check: "short-evening", lead: "nearly all simulated evenings end early", need: short_evening::need },
];

/// Puts one finding in the place of several that say the same of different levels.
pub(super) fn together(kit: &Kit, proofs: &[LevelProof], found: &mut [Vec<Finding>]) {
    for timely in &TIMELY {
        let told = |finding: &&Finding| finding.name == timely.check;
        let levels: Vec<(Finding, Level, &Rehearsal)> = found
            .iter()
            .zip(proofs)
            .filter_map(|(found, proof)| {
                Some((found.iter().find(told)?.clone(), proof.party.level, proof.rehearsal.as_deref()?))
            })
            .collect();
        if levels.len() < 2 {
            continue;
        }
        found.iter_mut().for_each(|found| found.retain(|finding| finding.name != timely.check));
        let one = timely.one(kit, &levels);
        if let (Some(one), Some(first)) = (one, found.first_mut()) {
            first.push(one);
        }
    }
}

impl Timely {
    /// What the findings of several levels say together; the ways to mend are those of the level with the longest evening.
    fn one(&self, kit: &Kit, levels: &[(Finding, Level, &Rehearsal)]) -> Option<Finding> {
        let (worst, _, worst_of) = levels.iter().max_by(|a, b| a.2.end.slow.total_cmp(&b.2.end.slow))?;
        let within = |rehearsal: &Rehearsal| format!(" within {:.0} minutes", rehearsal.stated);
        let same = levels.iter().all(|(_, _, rehearsal)| within(rehearsal) == within(worst_of));
        let shares = levels.iter().map(|(_, level, rehearsal)| {
            let own = if same { String::new() } else { within(rehearsal) };
            format!("{} at {}{own}", percent(rehearsal.chance), level.word())
        });
        let all = if same { within(worst_of) } else { String::new() };
        let message = format!("{}: {}{all}", self.lead, listed(&shares.collect::<Vec<_>>()));
        let needs: Vec<(Level, u16)> =
            levels.iter().filter_map(|(_, level, rehearsal)| Some((*level, (self.need)(rehearsal)?))).collect();
        let other = |help: &&String| !help.contains(ENOUGH);
        let mut help: Vec<String> = worst.help.iter().filter(other).cloned().collect();
        let fix = (!needs.is_empty()).then(|| stated(kit, &needs));
        if let Some(fix) = &fix {
            help.push(format!("or {}, {ENOUGH}", uncapital(&fix.title)));
        }
        Some(Finding { level: None, anchor: Anchor::PlayTime, message, help, fix, ..worst.clone() })
    }
}

/// The mend that states these minutes of play: the kit's own at the standard level, else those of the level.
pub(super) fn stated(kit: &Kit, needs: &[(Level, u16)]) -> Fix {
    let own = needs.iter().find(|(level, _)| *level == Level::Standard).map(|(_, minutes)| *minutes);
    let told = KitFacts { minutes: own.unwrap_or(kit.minutes), ..KitFacts::of(kit) };
    let mut levels = kit.levels.clone();
    let mut words = Vec::new();
    words.extend(own.map(|minutes| format!("{minutes} minutes")));
    for (level, minutes) in needs.iter().filter(|(level, _)| *level != Level::Standard) {
        let rules = levels.of_mut(*level);
        // Where a level states none of its own, the kit's own serve.
        if rules.minutes.is_none() && *minutes == told.minutes {
            continue;
        }
        rules.minutes = Some(*minutes);
        let unit = if words.is_empty() { " minutes" } else { "" };
        words.push(format!("{minutes}{unit} for {}", level.word()));
    }
    let mut edits = Vec::new();
    edits.extend(own.map(|_| Edit::Facts(Box::new(told))));
    if levels != kit.levels {
        edits.push(Edit::Levels(Box::new(levels)));
    }
    Fix { title: format!("State {}", listed(&words)), kind: FixKind::Ask, edits }
}

/// Words as a list in a sentence.
fn listed(words: &[String]) -> String {
    match words {
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        all => all.concat(),
    }
}

/// A title as it goes on in a sentence.
fn uncapital(words: &str) -> String {
    let mut rest = words.chars();
    rest.next().map_or_else(String::new, |first| first.to_lowercase().chain(rest).collect())
}
