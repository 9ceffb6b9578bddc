//! The safe mends, made until there is none left.

use std::collections::BTreeSet;

use super::{FixKind, Proof, prove};
use crate::diag::{Hinted, Level};
use crate::kit::Kit;
use crate::kit::edit::{Edit, Item, apply_all};
use crate::limits;
use crate::print::Press;
use crate::theme::Loaded;

/// A kit with its safe mends made.
#[derive(Debug)]
pub struct Mended {
    /// The kit.
    pub kit: Kit,
    /// What was mended, in order: the check's name and what was done.
    pub done: Vec<(&'static str, String)>,
    /// What is known of the kit now.
    pub proof: Proof,
}

/// Makes every safe mend, proves the kit anew, and goes on until there is none left, at most
/// [`limits::FIX_ROUNDS`] times. Mends that touch the same thing wait for the next round.
///
/// # Errors
/// As [`prove`].
pub fn fix_safe(kit: &Kit, theme: &Loaded, press: Option<&Press>, levels: &[Level]) -> Hinted<Mended> {
    let mut mended = Mended { kit: kit.clone(), done: Vec::new(), proof: prove(kit, theme, press, levels)? };
    for _ in 0..limits::FIX_ROUNDS {
        let mut touched = BTreeSet::new();
        let mut edits = Vec::new();
        for finding in &mended.proof.findings {
            let Some(fix) = finding.fix.as_ref().filter(|fix| fix.kind == FixKind::Safe) else { continue };
            let items: BTreeSet<Touched> = fix.edits.iter().map(Touched::of).collect();
            if touched.is_disjoint(&items) {
                touched.extend(items);
                mended.done.push((finding.name, fix.title.clone()));
                edits.extend(fix.edits.clone());
            }
        }
        if edits.is_empty() || apply_all(&mut mended.kit, edits).is_empty() {
            break;
        }
        mended.proof = prove(&mended.kit, theme, press, levels)?;
    }
    Ok(mended)
}

/// What an edit changes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Touched {
    Item(Item),
    Word(String),
    /// Everything else: letter, facts, look and the like.
    Whole,
}

impl Touched {
    fn of(edit: &Edit) -> Self {
        match edit {
            Edit::Note(item) => Self::Item(Item::Note(item.id.clone())),
            Edit::Spot(item) => Self::Item(Item::Spot(item.id.clone())),
            Edit::Box(item) => Self::Item(Item::Box(item.id.clone())),
            Edit::Lock(item) => Self::Item(Item::Lock(item.id.clone())),
            Edit::Prop(item) => Self::Item(Item::Prop(item.id.clone())),
            Edit::Puzzle(item) => Self::Item(Item::Puzzle(item.id.clone())),
            Edit::Remove(item) | Edit::Id(item, ..) => Self::Item(item.clone()),
            Edit::Insert(_, inner) => Self::of(inner),
            Edit::Word(word, _) => Self::Word(word.clone()),
            Edit::Facts(_)
            | Edit::Letter(_)
            | Edit::Finish(_)
            | Edit::Look(_)
            | Edit::Levels(_)
            | Edit::Making(_)
            | Edit::Plays(_)
            | Edit::Apart(_)
            | Edit::Dressed(_)
            | Edit::Credit(..) => Self::Whole,
        }
    }
}
