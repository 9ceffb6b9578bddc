use super::phrase::{Form, Hit, hits};
use super::sense::Sense;
use crate::diag::Anchor;
use crate::files::VPath;
use crate::kit::{Kit, OldWord, visit_texts};

/// An old word that stayed at a place, however often.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Leftover {
    /// Where.
    pub anchor: Anchor,
    /// The old word.
    pub word: OldWord,
    /// As it stands there the first time.
    pub said: String,
    /// A few words around it.
    pub around: String,
    /// How often it stands there.
    pub count: usize,
    /// Whether a slot can take its place: there is one for it, and every form there is one that slots have.
    pub slot: bool,
    /// Whether another word can take its place, if the author says so.
    pub replace: bool,
    /// Whether at least once it can be mended without asking: its slot says the same, or it means a picture or a colour
    /// that has another name now.
    pub by_rule: bool,
    /// Whether it stands in a puzzle that prints something else under its name.
    pub printed: bool,
    /// Whether it is a part of a file name rather than of a text.
    pub file_name: bool,
}

/// Bytes of text shown on each side of a leftover.
const AROUND: usize = 28;

/// The old words in the texts, setups, titles, names and file names of a kit, by place; those that the author keeps are
/// left out.
#[must_use]
pub fn leftovers(kit: &Kit) -> Vec<Leftover> {
    let old = &kit.dressed.old_words;
    let mut found: Vec<Leftover> = Vec::new();
    if old.is_empty() {
        return found;
    }
    // Reading needs no copy of its own; the visitor is made for changing, too.
    let mut copy = kit.clone();
    let sense = Sense::of(kit);
    visit_texts(&mut copy, &mut |at, text| {
        for hit in hits(text, old) {
            take(&mut found, (kit, &sense), at, text, &hit, false);
        }
    });
    let id = kit.id.as_str().replace('-', " ");
    for hit in hits(&id, old) {
        take(&mut found, (kit, &sense), &Anchor::Kit, &id, &hit, true);
    }
    for note in &kit.notes {
        let Some(path) = &note.picture else { continue };
        let name = path.file_name().replace(['-', '_', '.'], " ");
        for hit in hits(&name, old) {
            take(&mut found, (kit, &sense), &Anchor::Note(note.id.clone()), &name, &hit, true);
        }
    }
    found
}

fn take(found: &mut Vec<Leftover>, (kit, sense): (&Kit, &Sense), at: &Anchor, text: &str, hit: &Hit, file_name: bool) {
    let Some(word) = kit.dressed.old_words.get(hit.word) else { return };
    if kit.dressed.keeps(&at.to_string(), &word.one) || sense.names_what_is_printed(at, word) {
        return;
    }
    let formed = hit.form != Form::Other;
    // What a puzzle prints has the name of the new picture there, whatever the slot says.
    let printed = sense.printed(at, word);
    let meant = !file_name && sense.means(at, text, hit, word);
    // A word cannot hold itself, and a file name holds no slot.
    let itself = *at == Anchor::Word(word.slot.clone());
    let slot = formed && !word.slot.is_empty() && !file_name && !itself && !printed && !meant;
    let own_name = !file_name || *at == Anchor::Kit;
    let replace = formed && own_name && (!word.slot.is_empty() || !word.now.is_empty());
    let by_rule = slot || meant || (replace && !word.slot.is_empty() && !printed);
    let same = |known: &&mut Leftover| known.anchor == *at && known.word == *word && known.file_name == file_name;
    if let Some(known) = found.iter_mut().find(same) {
        known.count += 1;
        known.slot &= slot;
        known.replace &= replace;
        known.by_rule |= by_rule;
        return;
    }
    found.push(Leftover {
        anchor: at.clone(),
        word: word.clone(),
        said: text.get(hit.span.clone()).unwrap_or_default().to_owned(),
        around: around(text, hit),
        count: 1,
        slot,
        replace,
        by_rule,
        printed,
        file_name,
    });
}

/// The words around a hit, cut at spaces.
pub(super) fn around(text: &str, hit: &Hit) -> String {
    let from = text.get(..hit.span.start).unwrap_or_default();
    let start = from
        .char_indices()
        .rev()
        .take_while(|(at, _)| hit.span.start - at <= AROUND)
        .last()
        .map_or(hit.span.start, |(at, _)| at);
    let after = text.get(hit.span.end..).unwrap_or_default();
    let end = after.char_indices().map(|(at, c)| at + c.len_utf8()).take_while(|at| *at <= AROUND).last().unwrap_or(0);
    let mut shown = text.get(start..hit.span.end + end).unwrap_or_default().trim();
    if start > 0 {
        shown = shown.split_once(char::is_whitespace).map_or(shown, |(_, rest)| rest);
    }
    if end < after.len() {
        shown = shown.rsplit_once(char::is_whitespace).map_or(shown, |(rest, _)| rest);
    }
    shown.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The kit's own pictures that were made for a theme before, and that the author has not said to keep; each with its
/// place.
#[must_use]
pub fn old_pictures(kit: &Kit) -> Vec<(Anchor, VPath)> {
    let notes = kit.notes.iter().filter_map(|note| Some((Anchor::Note(note.id.clone()), note.picture.clone()?)));
    notes
        .filter(|(at, path)| {
            kit.dressed.old_pictures.contains(path) && !kit.dressed.keeps(&at.to_string(), path.as_str())
        })
        .collect()
}
