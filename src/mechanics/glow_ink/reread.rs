use super::{LISTED, NEXT, NOTE, Paper, Spot, Told, View, Writing};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Printed, TOLD};
use crate::mechanics::{Dressing, front, told};
use crate::readings::tokens::turns;

/// The note from paper, and what the host is told to write.
pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let mut view = View {
        writings: Vec::new(),
        order: Told::Open,
        listed: Vec::new(),
        // Neither is printed; neither changes what is read where the ink shows and the sheets keep their way up.
        paper: Paper::Tinted,
        loose: false,
        baseline: true,
        jacket: printed.iter().any(|side| side.part == super::BOOK),
        jacket_title: String::new(),
        jacket_text: String::new(),
        note_title: String::new(),
        note_text: String::new(),
    };
    if printed.iter().any(|side| side.part == NOTE) {
        let note = front(printed, NOTE)?;
        let body: Vec<String> = note.blocks_in(cx.slot_on(note, "note", "body")?).iter().map(Block::text).collect();
        rule(&body.join(" "), &mut view);
    }
    let write = told(printed).into_iter().find_map(written);
    let write = write.ok_or_else(|| Trouble::new(format!("the {TOLD} does not say what is written where")))?;
    for (place, symbols, line) in write {
        view.baseline &= line || !turns(&symbols);
        // The guide begins a sentence with the first place; the note knows how it is written.
        let same = |name: &&String| name.to_lowercase() == place.to_lowercase();
        let place = view.listed.iter().find(same).cloned().unwrap_or(place);
        view.writings.push(Writing { place: spot(&place), symbols: symbols.chars().collect() });
    }
    Ok(view)
}

/// The order rule at the end of the note's words.
fn rule(words: &str, view: &mut View) {
    if let Some((text, list)) = words.rsplit_once(LISTED) {
        view.order = Told::Listed;
        view.listed = list.trim_end_matches('.').split(NEXT).map(str::to_owned).collect();
        text.trim().clone_into(&mut view.note_text);
    } else if words.contains("Read from the lowest page number to the highest.") {
        view.order = Told::Pages;
    }
}

/// Each place with what is written there, and whether with a line beneath; none in another sentence.
fn written(step: &str) -> Option<Vec<(String, String, bool)>> {
    let (_, list) = step.split_once("Write in UV ink, large and plain, in ")?;
    let list = list.strip_suffix(". Let it dry open.")?;
    let (_, list) = list.split_once(". ")?;
    let mut found = Vec::new();
    let mut open = String::new();
    for part in list.split("; ") {
        // A place's own name may hold the sign that parts places.
        open = if open.is_empty() { part.to_owned() } else { format!("{open}; {part}") };
        let (text, line) = match open.strip_suffix(", with a line beneath") {
            Some(text) => (text, true),
            None => (open.as_str(), false),
        };
        if let Some((place, symbols)) = text.rsplit_once(": ")
            && !symbols.is_empty()
            && symbols.chars().all(char::is_alphanumeric)
        {
            found.push((place.to_owned(), symbols.to_owned(), line));
            open.clear();
        }
    }
    open.is_empty().then_some(found)
}

/// "the last page (page 84)" as name and page.
fn spot(words: &str) -> Spot {
    let paged = words.strip_suffix(')').and_then(|rest| rest.rsplit_once(" (page "));
    match paged.and_then(|(name, page)| Some((name, page.parse().ok()?))) {
        Some((name, page)) => Spot { name: name.to_owned(), page },
        None => Spot { name: words.to_owned(), page: 0 },
    }
}
