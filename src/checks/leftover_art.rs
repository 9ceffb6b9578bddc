use super::{Draft, Facts, FixKind, Sink};
use crate::diag::Anchor;
use crate::redress::{keep_picture, old_pictures};

check!(
    /// ## What it does
    /// Flags pictures of the kit's own that were made for the theme before, and marks of locks that the theme now worn
    /// does not draw.
    ///
    /// ## Why it matters at the table
    /// A snowed-in tower on a harbour's card looks like a clue; a lock without its mark cannot be told from its
    /// neighbours.
    ///
    /// ## How to mend
    /// Choose another picture or take it off the text, or say that you want to keep it; give the lock a symbol of the
    /// theme.
    LeftoverArt, "leftover-art", Warns, "a picture of the season before, in a kit that was put into another theme",
    "it shows another season than everything around it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (at, path) in old_pictures(facts.kit) {
        let edits = keep_picture(facts.kit, &at, &path);
        let draft = Draft::new(at, format!("the picture {path} was there before the kit changed its theme"));
        let draft = draft.help("choose another, or take it off the text");
        sink.add(draft.fix("Keep the picture", FixKind::Ask, edits));
    }
    if facts.kit.dressed.from.is_some() {
        for lock in facts.kit.locks.iter().filter(|lock| !lock.mark.is_empty()) {
            if facts.theme.symbol(&lock.mark).is_none() {
                let message = format!("the mark {} of {} is none of this theme's symbols", lock.mark, lock.name);
                sink.add(Draft::new(Anchor::Lock(lock.id.clone()), message).help("give the lock another mark"));
            }
        }
    }
}
