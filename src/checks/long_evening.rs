use super::evenings::stated;
use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::limits;
use crate::rehearse::{Rehearsal, advice, fives, minutes, percent};

check!(
    /// ## What it does
    /// Flags a play level at which fewer than 60 of 100 simulated groups reach the end within the minutes that the kit
    /// states. What the minutes of each puzzle rest on stands in the table of `inklatch rehearse`, beside how long the end
    /// waits for it. Several such levels are told together. That 60 of 100 are enough is common practice, no source.
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
    let mut draft = Draft::new(Anchor::PlayTime, message);
    for line in advice(facts.kit, rehearsal) {
        draft = draft.help(facts.party.say(&line));
    }
    if let Some(minutes) = need(rehearsal) {
        draft = draft.with(stated(facts.kit, &[(facts.party.level, minutes)]));
    }
    sink.add(draft);
}

/// The minutes to state in place of too few: those in which nine groups of ten are done.
pub(super) fn need(rehearsal: &Rehearsal) -> Option<u16> {
    let minutes = fives(rehearsal.end.slow);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the bound of minutes")]
    (minutes <= limits::PLAY_MINUTES).then_some(minutes as u16)
}
