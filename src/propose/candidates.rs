use std::collections::{BTreeMap, BTreeSet};

use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::scene::{No, Scene};
use super::{Kept, Wish, set_answer};
use crate::codes::{guess, likeness, reads_turned};
use crate::ids::PuzzleId;
use crate::kit::{Kit, LockKind, Puzzle};
use crate::limits;
use crate::mechanics::Rng;
use crate::party::rng_of;

/// The codes that one puzzle could have, those with no symbol twice first, else in an order by chance. Each is
/// looked at when the search comes to it, and once.
pub(super) struct Pool<'a> {
    pub puzzle: &'a Puzzle,
    kind: &'a LockKind,
    codes: Vec<(String, Seen)>,
    tries: usize,
    /// Codes that must not be used, or not while another puzzle has a code.
    bars: Vec<(String, Option<(PuzzleId, String)>)>,
    /// How many codes fell to what.
    fallen: BTreeMap<No, usize>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Seen {
    Not,
    Good,
    Bad,
}

impl<'a> Pool<'a> {
    /// The codes of the lock of `puzzle`; none when it has no lock.
    pub fn new(scene: &Scene<'_>, kit: &'a Kit, puzzle: &'a Puzzle, wish: &Wish) -> Option<Self> {
        let kind = &kit.lock(&puzzle.opens)?.kind;
        let mut rng = rng_of(wish.seed, &puzzle.id);
        let mut codes = match kind {
            LockKind::Letters(_) => words(scene, kind),
            _ => drawn(kind, &mut rng),
        };
        codes.shuffle(&mut rng);
        // A code whose symbols all differ leaves most to try for guests who know them without their order.
        codes.sort_by_key(|code| code.chars().collect::<BTreeSet<char>>().len() < code.chars().count());
        let now = set_answer(scene, kind, puzzle);
        let mut pool = Self { puzzle, kind, codes: Vec::new(), tries: 0, bars: Vec::new(), fallen: BTreeMap::new() };
        let held = scene.held(puzzle);
        for code in codes {
            let avoided = || wish.avoid.iter().any(|avoid| crate::readings::same_answer(avoid, &code));
            let no = if code == now || avoided() {
                Some(No::Avoided)
            } else if guess(kind, &code).is_some() {
                Some(No::Guessable)
            } else if matches!(kind, LockKind::Digits(_)) && code.len() > 1 && reads_turned(&code).is_some() {
                Some(No::Turnable)
            } else if !held(&code) {
                Some(No::NotHeld)
            } else {
                None
            };
            match no {
                Some(no) => *pool.fallen.entry(no).or_default() += 1,
                None => pool.codes.push((code, Seen::Not)),
            }
        }
        Some(pool)
    }

    /// How many codes are left to look at.
    pub const fn len(&self) -> usize {
        self.codes.len()
    }

    /// The code at a place of the list.
    pub fn code(&self, at: usize) -> Option<&str> {
        self.codes.get(at).map(|(code, _)| code.as_str())
    }

    /// Whether the code at a place can be used as far as this puzzle alone is concerned.
    pub fn good(&mut self, at: usize, scene: &Scene<'_>) -> bool {
        let Self { puzzle, kind, codes, tries, fallen, .. } = self;
        let Some((code, seen)) = codes.get_mut(at) else { return false };
        if *seen == Seen::Not {
            let mut no = scene.told(puzzle, kind, code);
            if no.is_none() {
                if *tries >= limits::PROPOSED_TRIES {
                    return false;
                }
                *tries += 1;
                no = scene.carried(puzzle, code);
            }
            *seen = if no.is_none() { Seen::Good } else { Seen::Bad };
            if let Some(no) = no {
                *fallen.entry(no).or_default() += 1;
            }
        }
        *seen == Seen::Good
    }

    /// Finds the first good code.
    ///
    /// # Errors
    /// Says why there is none, and what the author can do.
    pub fn first(&mut self, scene: &Scene<'_>) -> Result<(), (String, String)> {
        let found = (0..self.codes.len()).any(|at| self.good(at, scene));
        if found { Ok(()) } else { Err((self.why(), self.help())) }
    }

    /// Why codes fell, the most first.
    pub fn why(&self) -> String {
        if self.codes.is_empty() && self.fallen.keys().all(|no| *no == No::Avoided) {
            return match self.kind {
                LockKind::Letters(_) => {
                    "the wheels of its lock can spell no other word of the theme or of the kit".into()
                }
                _ => "its lock can show no other code than those to be avoided".into(),
            };
        }
        let mut rows: Vec<(&No, &usize)> = self.fallen.iter().collect();
        rows.sort_by_key(|(_, count)| std::cmp::Reverse(**count));
        let told: Vec<String> = rows
            .into_iter()
            .map(|(no, count)| {
                let (is, stands) = if *count == 1 { ("is", "stands") } else { ("are", "stand") };
                match no {
                    No::Avoided => format!("{count} {is} to be avoided"),
                    No::Guessable => format!("{count} {is} easy to guess"),
                    No::Turnable => format!("{count} can be read upside down as another"),
                    No::NotHeld => format!("{count} {is} of symbols that the puzzle does not hold"),
                    No::OnView => format!("{count} {stands} in a text that guests can read"),
                    No::Hinted => format!("{count} {is} told by a hint"),
                    No::Refused(why) => format!("{count} cannot be carried by the puzzle ({why})"),
                    No::Read(what) => format!("with {count} the puzzle would have {what}"),
                }
            })
            .collect();
        let looked = if self.tries >= limits::PROPOSED_TRIES { "; the rest was not tried" } else { "" };
        let what = if matches!(self.kind, LockKind::Letters(_)) { "words" } else { "codes" };
        format!("of the other {what} that its lock can show none will do: {}{looked}", told.join(", "))
    }

    /// What the author can do about the reason for which most codes fell.
    pub fn help(&self) -> String {
        let most = self.fallen.iter().max_by_key(|(_, count)| **count).map(|(no, _)| no);
        let letters = matches!(self.kind, LockKind::Letters(_));
        match most {
            _ if letters && self.codes.is_empty() && self.fallen.keys().all(|no| *no == No::Avoided) => {
                "write another answer by hand, or add words that the wheels can spell to the kit's own `words`"
            }
            Some(No::OnView) if letters => {
                "write another answer by hand, or take the word out of the text in which it stands"
            }
            Some(No::OnView) => "take the code out of the text in which it stands, or give the lock another wheel",
            Some(No::Hinted) => "write the hints without it",
            Some(No::Refused(_) | No::Read(_) | No::NotHeld) => {
                "change the setup of the puzzle, or the lock that it opens"
            }
            Some(No::Avoided) => "avoid fewer codes, or give the lock another wheel",
            _ => "give the lock another wheel",
        }
        .to_owned()
    }

    /// Drops codes that are like one that a kept puzzle has.
    pub fn avoid_kept(&mut self, kit: &Kit, kept: &[Kept], scene: &Scene<'_>) {
        for kept in kept {
            let Some(puzzle) = kit.puzzle(&kept.puzzle) else { continue };
            let Some(lock) = kit.lock(&puzzle.opens).filter(|lock| lock.kind.wheels().is_some()) else { continue };
            let code = set_answer(scene, &lock.kind, puzzle);
            self.codes.retain(|(own, _)| likeness(own, &code).is_none());
        }
    }

    /// Bars a code: for good, or while another puzzle has a code.
    pub fn bar(&mut self, code: String, by: Option<(PuzzleId, String)>) {
        self.bars.push((code, by));
    }

    /// Whether `code` may stand beside the codes that other puzzles have.
    pub fn goes_with(&self, code: &str, chosen: &[(PuzzleId, String)]) -> bool {
        let barred = self.bars.iter().any(|(own, by)| own == code && by.as_ref().is_none_or(|by| chosen.contains(by)));
        !barred && chosen.iter().all(|(_, other)| likeness(code, other).is_none())
    }

    /// The bars that `code` of another puzzle, were it chosen, would put on what is chosen already.
    pub fn barred_by(&self, puzzle: &PuzzleId, code: &str, own: &str) -> bool {
        self.bars
            .iter()
            .any(|(barred, by)| barred == own && by.as_ref().is_some_and(|(id, other)| id == puzzle && other == code))
    }
}

/// All codes of a lock, or as many as are looked at, drawn by chance.
fn drawn(kind: &LockKind, rng: &mut Rng) -> Vec<String> {
    let (Some(wheels), Some(all)) = (kind.wheels(), kind.codes()) else { return Vec::new() };
    let most = limits::PROPOSED_CODES as u64;
    let numbers: Vec<u64> = if all <= most {
        (0..all).collect()
    } else {
        (0..most).map(|_| rng.random_range(0..all)).collect::<BTreeSet<u64>>().into_iter().collect()
    };
    numbers.into_iter().map(|number| written(kind, wheels, number)).collect()
}

/// The code with this number, the last wheel turning fastest.
fn written(kind: &LockKind, wheels: usize, mut number: u64) -> String {
    let symbols: &[u8] = if matches!(kind, LockKind::Directions(_)) { b"UDLR" } else { b"0123456789" };
    let base = symbols.len() as u64;
    let mut code = vec!['0'; wheels];
    for place in code.iter_mut().rev() {
        let at = usize::try_from(number % base).unwrap_or_default();
        *place = symbols.get(at).map_or('0', |symbol| char::from(*symbol));
        number /= base;
    }
    code.into_iter().collect()
}

/// The words of the theme and of the kit that the lock can show.
fn words(scene: &Scene<'_>, kind: &LockKind) -> Vec<String> {
    let words: BTreeSet<String> =
        scene.words().iter().map(|word| word.to_uppercase()).filter(|word| kind.spells(word)).collect();
    words.into_iter().collect()
}
