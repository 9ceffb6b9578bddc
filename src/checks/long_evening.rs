use super::{Draft, Facts, FixKind, Sink};
use crate::diag::{Anchor, Level};
use crate::kit::Kit;
use crate::kit::edit::{Edit, Facts as KitFacts};
use crate::limits;
use crate::rehearse::{advice, fives, minutes, percent};

check!(
    /// ## What it does
    /// Flags a play level at which fewer than 60 of 100 simulated groups reach the end within the minutes that the kit
    /// states. What the minutes of each puzzle rest on stands in the table of `inklatch rehearse`, beside how long the end
    /// waits for it. That 60 of 100 are enough is common practice, no source.
    ///
    /// ## Why it matters at the table
    /// The treat waits, the youngest tire, and the host gives away what was meant to be found.
    ///
    /// ## How to mend
    /// Cut or ease the puzzle that holds the evening up, open a hint of it from the start at this level, or state the time that
    /// it takes.
    LongEvening, "long-evening", Warns, "a level at which many groups will not be done in time",
    "the treat waits, the youngest tire, and the host gives away what was meant to be found", run
);

/// Least share of groups that should be done in time (common practice, no source).
const LEAST: f64 = 0.6;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let Some(rehearsal) = facts.rehearsal.filter(|rehearsal| rehearsal.chance < LEAST) else { return };
    let message = format!(
        "{} of {} simulated evenings at the level {} end within {:.0} minutes; half of the groups need {} minutes, and nine \
         in ten {}",
        percent(rehearsal.chance),
        rehearsal.runs,
        facts.party.level.word(),
        rehearsal.stated,
        minutes(rehearsal.end.median),
        minutes(rehearsal.end.slow)
    );
    let mut draft = Draft::new(Anchor::Kit, message);
    for line in advice(facts.kit, rehearsal) {
        draft = draft.help(facts.party.say(&line));
    }
    let state = fives(rehearsal.end.slow);
    if state <= limits::PLAY_MINUTES {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the bound of minutes")]
        let state = state as u16;
        let (title, edit) = stated(facts.kit, facts.party.level, state);
        draft = draft.fix(title, FixKind::Ask, vec![edit]);
    }
    sink.add(draft);
}

/// The edit that states these minutes of play for a level, and what it is called: the kit's own at the standard level.
pub(super) fn stated(kit: &Kit, level: Level, minutes: u16) -> (String, Edit) {
    if level == Level::Standard {
        let told = KitFacts { minutes, ..KitFacts::of(kit) };
        return (format!("State {minutes} minutes"), Edit::Facts(Box::new(told)));
    }
    let mut levels = kit.levels.clone();
    levels.of_mut(level).minutes = Some(minutes);
    (format!("State {minutes} minutes for {}", level.word()), Edit::Levels(Box::new(levels)))
}
