use super::evenings::stated;
use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, Level};
use crate::limits;
use crate::rehearse::{Rehearsal, fives, minutes, percent};

check!(
    /// ## What it does
    /// Notes a play level at which more than 98 of 100 simulated groups reach the end within the minutes that the kit states.
    /// An estimate that is too low makes an evening look short as well: a real play in `plays.ron` tells, even if only its
    /// whole minutes were written down. Where the minutes stated are the fewest, in fives, in which nine groups of ten are done,
    /// nothing is said. Several such levels are told together. The bound is our choice: beyond it the time that is stated says little.
    ///
    /// ## Why it matters at the table
    /// The evening that was promised is over early, and the treat is not ready.
    ///
    /// ## How to mend
    /// State fewer minutes, for a level under `levels`. Or give the puzzles more to do at this level (each has a setup and minutes of its own under `gentle` and `stiff`), or lay fewer hints open there.
    ShortEvening, "short-evening", Notes, "a level at which nearly all groups are done early",
    "the evening that was promised is over early, and the treat is not ready", run
);

/// Greatest share of groups that should be done in time: with more, the time stated says little (common practice, no
/// source).
const MOST: f64 = 0.98;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let Some(rehearsal) = facts.rehearsal.filter(|rehearsal| rehearsal.chance > MOST) else { return };
    let Some(state) = need(rehearsal) else { return };
    let message = format!(
        "{} of {} simulated evenings at the level {} end within {:.0} minutes; half of the groups are done after {}, and \
         nine in ten after {}",
        percent(rehearsal.chance),
        rehearsal.runs,
        facts.party.level.word(),
        rehearsal.stated,
        minutes(rehearsal.end.median),
        minutes(rehearsal.end.slow)
    );
    let own = facts.party.level != Level::Standard;
    let place =
        if own { format!("under `levels`, `{}`, write `minutes: {state}`", facts.party.level.word()) } else { format!("state {state} minutes") };
    let else_where = if own { "" } else { "; what other levels need more they state under `levels`" };
    let told = format!("{place}, in which nine groups of ten are done{else_where}");
    let level = match facts.party.level {
        Level::Standard => "give the puzzles setups with more to do, lay fewer hints open, or add a puzzle".to_owned(),
        level => format!(
            "keep the minutes, and under `{0}` of the puzzles give a setup with more to do; if they take longer than is \
             written, set their `minutes` there; or lay fewer hints open (`levels`, `{0}`)",
            level.word()
        ),
    };
    let draft = Draft::new(Anchor::PlayTime, message).help(told).help(level);
    sink.add(draft.with(stated(facts.kit, &[(facts.party.level, state)])));
}

/// The minutes to state in place of too many: those in which nine groups of ten are done. None where the time stated is the
/// least in fives already.
pub(super) fn need(rehearsal: &Rehearsal) -> Option<u16> {
    let minutes = (rehearsal.end.slow <= rehearsal.stated - 5.0).then(|| fives(rehearsal.end.slow))?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the bound of minutes")]
    (1.0..=limits::PLAY_MINUTES).contains(&minutes).then_some(minutes as u16)
}
