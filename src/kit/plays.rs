use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Day;
use crate::diag::{Hinted, Level, Trouble};
use crate::ids::PuzzleId;
use crate::limits;

/// The newest format of `plays.ron` that this program writes.
pub const PLAYS_FORMAT: u32 = 1;

/// Real plays of a kit. They correct the author's estimates.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plays {
    /// Format number of the file, so that later programs can read it.
    pub format: u32,
    /// The plays, the oldest first.
    #[serde(default)]
    pub plays: Vec<Play>,
}

/// One evening with real guests.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Play {
    /// The day of it, as "2027-01-31".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub day: Option<Day>,
    /// How many guests played.
    pub guests: u8,
    /// Age of the youngest and of the oldest.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ages: Option<(u8, u8)>,
    /// The play level: `gentle`, `standard` or `stiff`.
    #[serde(default)]
    pub level: Level,
    /// Minutes in all, from the start to the open last box, or to the end of the play where it stayed shut. They are held
    /// beside the rehearsed evenings. Where the last box was opened and some puzzles were not timed, they correct the
    /// estimates of those in the rehearsal of this level: what the evening was off by is split over them by how long the
    /// end waits for each, and by how uncertain each estimate is.
    pub minutes: f64,
    /// Whether the last box was opened.
    #[serde(default = "yes", skip_serializing_if = "is_yes")]
    pub finished: bool,
    /// What was written down of each puzzle, by its id; puzzles of which nothing is known are left out.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub puzzles: BTreeMap<PuzzleId, PuzzlePlay>,
    /// What else there is to remember: who sat idle, what was read otherwise than meant. No names are needed.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What was written down of one puzzle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PuzzlePlay {
    /// Minutes from the first look at it, with all its pieces there, to its open lock.
    pub minutes: f64,
    /// How many of its hints were taken: 1 is the nudge alone, 3 are all; those that lay open are not counted.
    #[serde(default, skip_serializing_if = "is_none")]
    pub hints: u8,
}

const fn yes() -> bool {
    true
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "the shape that serde asks for")]
const fn is_yes(value: &bool) -> bool {
    *value
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "the shape that serde asks for")]
const fn is_none(hints: &u8) -> bool {
    *hints == 0
}

impl Default for Plays {
    fn default() -> Self {
        Self { format: PLAYS_FORMAT, plays: Vec::new() }
    }
}

impl Plays {
    /// Holds the plays to their bounds.
    ///
    /// # Errors
    /// Says which play, which puzzle, and what can stand there.
    pub fn check(&self) -> Hinted<()> {
        if self.plays.len() > limits::PLAYS {
            return Err(Trouble::new(format!(
                "there are {} plays, and at most {} are read",
                self.plays.len(),
                limits::PLAYS
            ))
            .hint("take the oldest out: the newest tell most of the kit as it is now"));
        }
        for (at, play) in self.plays.iter().enumerate() {
            play.check().map_err(|trouble| {
                let number = at + 1;
                Trouble { message: format!("play {number}: {}", trouble.message), ..trouble }
            })?;
        }
        Ok(())
    }
}

impl Play {
    /// Holds a play to its bounds.
    ///
    /// # Errors
    /// As [`Plays::check`].
    pub fn check(&self) -> Hinted<()> {
        if self.guests == 0 {
            return Err(Trouble::new("nobody played").hint("`guests` is how many played, from 1"));
        }
        if let Some((youngest, oldest)) = self.ages.filter(|(youngest, oldest)| youngest > oldest) {
            return Err(Trouble::new(format!("the youngest is {youngest} and the oldest {oldest}"))
                .hint("write the youngest first: ages: (9, 41)"));
        }
        time(self.minutes, "the play")?;
        if self.puzzles.len() > limits::PUZZLES {
            return Err(Trouble::new(format!("it has {} puzzles, more than any kit", self.puzzles.len())));
        }
        if self.note.chars().count() > limits::TEXT_CHARS {
            return Err(Trouble::new(format!("its note is longer than {} characters", limits::TEXT_CHARS))
                .hint("keep long reports in a file of their own"));
        }
        for (id, puzzle) in &self.puzzles {
            time(puzzle.minutes, &format!("the puzzle {id}"))?;
            if usize::from(puzzle.hints) > crate::diag::Step::ALL.len() {
                return Err(Trouble::new(format!("the puzzle {id} has {} hints", puzzle.hints))
                    .hint("there are three: nudge, method and giveaway"));
            }
        }
        Ok(())
    }
}

/// Holds minutes to what a play can take.
fn time(minutes: f64, of: &str) -> Hinted<()> {
    if minutes.is_finite() && minutes > 0.0 && minutes <= limits::PLAY_MINUTES {
        return Ok(());
    }
    Err(Trouble::new(format!("{of} took {minutes} minutes, which is no time for it"))
        .hint(format!("write minutes above 0 and up to {:.0}", limits::PLAY_MINUTES)))
}
