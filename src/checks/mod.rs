//! Checks: what can be wrong with a kit, one file each, one line each in [`CHECKS`].
//!
//! A check reads [`Facts`] and puts findings into a [`Sink`]. Its doc comment is the help text that `explain` and
//! the window show. Checks know neither each other nor the order in which they run.

mod dress;
mod evenings;
mod finding;
mod fixing;
mod ladder;
mod mend_setup;
mod mending;
mod mends;
mod prove;
mod references;
mod sink;
mod things;
mod trying;

use rayon::prelude::*;

pub use dress::{symbol_findings, theme_findings};
pub use finding::{Finding, Fix, FixKind};
pub use fixing::{Mended, fix_safe};
pub use prove::{LevelProof, Proof, Prover, SetPiece, prove, prove_edition, prove_printed, set_pieces};
pub use sink::{Draft, Sink};

use crate::diag::{Hinted, Severity, Trouble};
use crate::flow::Flow;
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};
use crate::kit::file::nearest;
use crate::kit::{BoxDef, Kit, Lock, Note, Prop, Puzzle, Spot};
use crate::party::Party;
use crate::rehearse::Rehearsal;
use crate::theme::Loaded;

/// What a check reads: one kit at one play level, with everything computed.
#[derive(Clone, Copy, Debug)]
pub struct Facts<'a> {
    /// The kit.
    pub kit: &'a Kit,
    /// Its theme.
    pub theme: &'a Loaded,
    /// The kit in its theme at the level in question.
    pub party: &'a Party,
    /// What guests can reach.
    pub flow: &'a Flow,
    /// What type setting said of each piece; empty when nothing was set.
    pub set: &'a [SetPiece],
    /// Simulated evenings at this level; none where the end cannot be reached or nobody asked for them.
    pub rehearsal: Option<&'a Rehearsal>,
}

macro_rules! lookups {
    ($($name:ident: $id:ty => $item:ty;)*) => {
        impl<'a> Facts<'a> {$(
            #[doc = concat!("As [`Kit::", stringify!($name), "`], and quick in a kit of thousands.")]
            #[must_use]
            pub fn $name(&self, id: &$id) -> Option<&'a $item> {
                self.party.positions.$name(self.kit, id)
            }
        )*}
    };
}

lookups! {
    note: NoteId => Note;
    spot: SpotId => Spot;
    box_def: BoxId => BoxDef;
    lock: LockId => Lock;
    prop: PropId => Prop;
    puzzle: PuzzleId => Puzzle;
}

/// What a check is, in words.
#[derive(Clone, Copy, Debug)]
pub struct Info {
    /// Stable name, after what it flags.
    pub name: &'static str,
    /// How much its findings matter; where it depends, the worst that it says.
    pub severity: Severity,
    /// What it flags, in a line.
    pub flags: &'static str,
    /// Why that matters at the table, in a sentence: every finding says it, unless it has something nearer.
    pub why: &'static str,
    /// The doc comment as it stands in the source; [`Info::help`] is the text of it.
    pub doc: &'static str,
}

impl Info {
    /// The help text: paragraphs and headings (`## …`) parted by empty lines.
    #[must_use]
    pub fn help(&self) -> String {
        let lines: Vec<&str> = self.doc.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)).collect();
        lines.join("\n").trim().to_owned()
    }
}

/// Something that can be wrong with a kit.
pub trait Check: Sync {
    /// What it is.
    fn info(&self) -> &'static Info;
    /// Looks at the facts and says what it finds.
    fn check(&self, facts: &Facts<'_>, sink: &mut Sink);
    /// Whether [`Check::mend`] may find anything.
    fn looks_for_mends(&self) -> bool {
        false
    }
    /// A mend that takes long to find: asked for once, for findings that have none, when all is known.
    fn mend(&self, _: &Facts<'_>, _: &Finding) -> Option<Fix> {
        None
    }
}

/// Makes a check of a doc comment, its facts and a function.
macro_rules! check {
    ($(#[doc = $doc:literal])+ $name:ident, $id:literal, $severity:ident, $flags:literal, $why:literal, $run:path $(, $mend:path)?) => {
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug)]
        pub struct $name;

        impl crate::checks::Check for $name {
            fn info(&self) -> &'static crate::checks::Info {
                const INFO: crate::checks::Info = crate::checks::Info {
                    name: $id,
                    severity: crate::diag::Severity::$severity,
                    flags: $flags,
                    why: $why,
                    doc: concat!($($doc, "\n"),+),
                };
                &INFO
            }
            fn check(&self, facts: &crate::checks::Facts<'_>, sink: &mut crate::checks::Sink) {
                $run(facts, sink);
            }
            $(fn looks_for_mends(&self) -> bool {
                // Named so that this is written for checks with a mend only.
                let _: fn(&crate::checks::Facts<'_>, &crate::checks::Finding) -> Option<crate::checks::Fix> = $mend;
                true
            }
            fn mend(
                &self,
                facts: &crate::checks::Facts<'_>,
                finding: &crate::checks::Finding,
            ) -> Option<crate::checks::Fix> {
                $mend(facts, finding)
            })?
        }
    };
}

/// The family: module, type.
macro_rules! family {
    ($($module:ident::$name:ident),+ $(,)?) => {
        $(mod $module;)+
        /// Every check, in the order in which they are listed.
        pub const CHECKS: &[&dyn Check] = &[$(&$module::$name),+];
    };
}

family! {
    several_readings::SeveralReadings,
    other_reading::OtherReading,
    no_reading::NoReading,
    unproven_reading::UnprovenReading,
    print_differs::PrintDiffers,
    reading_remark::ReadingRemark,
    setup_refused::SetupRefused,
    piece_unmade::PieceUnmade,
    unknown_reference::UnknownReference,
    id_twice::IdTwice,
    impossible_number::ImpossibleNumber,
    answer_off_lock::AnswerOffLock,
    lock_without_puzzle::LockWithoutPuzzle,
    puzzle_without_lock::PuzzleWithoutLock,
    two_puzzles_one_lock::TwoPuzzlesOneLock,
    tool_unnamed::ToolUnnamed,
    locked_behind_itself::LockedBehindItself,
    finish_out_of_reach::FinishOutOfReach,
    never_reached::NeverReached,
    finish_without_it::FinishWithoutIt,
    single_file::SingleFile,
    tool_too_early::ToolTooEarly,
    too_close::TooClose,
    piece_in_no_place::PieceInNoPlace,
    piece_feeds_two::PieceFeedsTwo,
    lock_unmarked::LockUnmarked,
    mark_among_pictures::MarkAmongPictures,
    over_hasp::OverHasp,
    larger_than_envelope::LargerThanEnvelope,
    same_code::SameCode,
    near_code::NearCode,
    guessable_code::GuessableCode,
    look_alike_symbol::LookAlikeSymbol,
    six_or_nine::SixOrNine,
    code_in_plain_sight::CodeInPlainSight,
    idle_spinning::IdleSpinning,
    hint_missing::HintMissing,
    hint_says_it::HintSaysIt,
    hint_steps_alike::HintStepsAlike,
    hint_out_of_order::HintOutOfOrder,
    hint_for_another::HintForAnother,
    hint_from_before::HintFromBefore,
    token_order_tells::TokenOrderTells,
    host_text_on_player_page::HostTextOnPlayerPage,
    unfilled_slot::UnfilledSlot,
    text_overflows::TextOverflows,
    text_too_small::TextTooSmall,
    glyph_missing::GlyphMissing,
    art_too_coarse::ArtTooCoarse,
    piece_off_sheet::PieceOffSheet,
    thin_margin::ThinMargin,
    scale_critical::ScaleCritical,
    much_ink::MuchInk,
    low_contrast::LowContrast,
    reading_age::ReadingAge,
    letter_too_long::LetterTooLong,
    theme_incomplete::ThemeIncomplete,
    colours_alike::ColoursAlike,
    pictures_alike::PicturesAlike,
    licence_missing::LicenceMissing,
    leftover_word::LeftoverWord,
    leftover_art::LeftoverArt,
    people_locked_in::PeopleLockedIn,
    magnets_with_children::MagnetsWithChildren,
    glass_with_children::GlassWithChildren,
    key_in_food::KeyInFood,
    caution_owed::CautionOwed,
    supply_missing::SupplyMissing,
    dry_time_late::DryTimeLate,
    level_adds_nothing::LevelAddsNothing,
    level_leaves_out::LevelLeavesOut,
    long_evening::LongEvening,
    short_evening::ShortEvening,
}

/// Runs every check. The findings are sorted (what blocks first, then by place, then by name; what
/// only follows from other findings after them) and no two are
/// equal.
#[must_use]
pub fn run(facts: &Facts<'_>) -> Vec<Finding> {
    let mut found = run_unmended(facts);
    mending::mend(facts, &mut found, &|| false);
    found
}

/// As [`run`], without the mends that take long to find.
fn run_unmended(facts: &Facts<'_>) -> Vec<Finding> {
    let found: Vec<Vec<Finding>> = CHECKS.par_iter().map(|check| run_one(*check, facts)).collect();
    finding::sorted(found.into_iter().flatten().collect())
}

/// Runs one check.
#[must_use]
pub fn run_one(check: &dyn Check, facts: &Facts<'_>) -> Vec<Finding> {
    let mut sink = Sink::new(check.info(), facts.party.level);
    check.check(facts, &mut sink);
    let mut findings = sink.into_findings();
    for finding in &mut findings {
        // Checks name things as the kit does; what is read has its slots filled.
        finding.message = facts.party.say(&finding.message);
        finding.help.iter_mut().for_each(|help| *help = facts.party.say(help));
    }
    findings
}

/// Whether any finding stops an export unless forced.
#[must_use]
pub fn blocks(findings: &[Finding]) -> bool {
    findings.iter().any(|finding| finding.severity == Severity::Blocks)
}

/// The check with this name.
///
/// # Errors
/// When there is none; the hint names the nearest.
pub fn find(name: &str) -> Hinted<&'static dyn Check> {
    CHECKS.iter().copied().find(|check| check.info().name == name).ok_or_else(|| {
        let known: Vec<&str> = CHECKS.iter().map(|check| check.info().name).collect();
        let trouble = Trouble::new(format!("there is no check `{name}`"));
        match nearest(name, &known) {
            Some(near) => trouble.hint(format!("did you mean `{near}`?")),
            None => trouble.hint(format!("the checks are {}", known.join(", "))),
        }
    })
}
