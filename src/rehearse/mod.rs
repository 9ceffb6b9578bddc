//! Rehearsal: simulated evenings of one kit at one play level, and what real plays have taught.
//!
//! A group is split into pairs, with a single guest left over. They look for what lies about, sit down to open puzzles,
//! help at others', try answers, go wrong, and take tokens when the table has gone quiet or a lock has been tried in
//! vain. What is reachable, and when, follows the flow. Puzzle times are log-normal around the author's estimates,
//! and groups differ by a factor that all puzzles of an evening share.
//!
//! All of it is estimates ([`Habits`] names them); a play that was written down ([`crate::kit::Plays`]) corrects those
//! of its puzzles ([`Belief`]), and where those were not timed, its whole minutes do ([`Total`]).

mod belief;
mod chance;
mod estimate;
mod evening;
mod gather;
mod habits;
mod kept;
mod run;
mod stage;
mod totals;
mod words;

pub use belief::{Belief, PRIOR_PLAYS, Predictive};
pub use chance::{LogNormal, Z90, normal_quantile, t_quantile};
pub use estimate::{Estimate, Source};
pub use gather::{Bar, OfPuzzle, OfSize, Opens, Past, Rehearsal, Spread};
pub use habits::Habits;
pub use kept::Rehearsals;
pub use run::rehearse;
pub use stage::{Stage, Task, Total};
pub use words::{advice, compared, fives, in_fives, minutes, outline, percent};
