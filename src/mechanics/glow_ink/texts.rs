use super::{BOOK, NOTE, Told, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::readings::tokens::turns;
use crate::script::capital;

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    let need = |material, amount| Need { material, amount };
    let book = book_name(cx);
    let lines: Vec<String> = view
        .writings
        .iter()
        .map(|writing| {
            let text: String = writing.symbols.iter().collect();
            let line = if view.baseline && turns(&text) { ", with a line beneath" } else { "" };
            format!("{}: {text}{line}", writing.place.words())
        })
        .collect();
    let mut steps = vec![
        PrepStep {
            key: "try",
            what: format!(
                "The old book is {book}. Try the UV pen on a corner of a page: by daylight nothing may show, and under the torch the paper \
                 itself must stay dark. White printer paper glows; take off-white or old paper."
            ),
            needs: vec![need("uv-pen", 1.0), need("uv-torch", 1.0), need("book", 1.0)],
            hands: 3.0,
            wait: 0.0,
            after: Vec::new(),
        },
        PrepStep {
            key: "write",
            what: format!(
                "Write in UV ink, large and plain, in {book}. {}. Let it dry open.",
                capital(&lines.join("; "))
            ),
            needs: vec![need("uv-pen", 1.0)],
            hands: 4.0,
            wait: 5.0,
            after: vec!["try"],
        },
    ];
    if view.jacket || view.has_note() {
        let needs = vec![need("card-paper", 2.0), need("scissors", 1.0), need("tape", 1.0)];
        steps.push(if view.jacket {
            let what = format!("Tape the printed jacket to the front of {book}.");
            PrepStep { key: "jacket", what, needs, hands: 2.0, wait: 0.0, after: vec!["write"] }
        } else {
            PrepStep::printed(needs)
        });
    }
    steps
}

/// What the book must be, for the shopping list: it has the pages that the note names, and its paper does not glow.
pub(super) fn kinds(view: &View) -> Vec<(&'static str, String)> {
    let last = view.writings.iter().map(|writing| writing.place.page).max().unwrap_or_default();
    let pages = if last > 0 { format!("page numbers printed up to {last} at least; ") } else { String::new() };
    vec![("book", format!("{pages}paper that stays dark under the UV torch"))]
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let lines: Vec<String> = view
        .writings
        .iter()
        .map(|writing| format!("{} at {}", writing.symbols.iter().collect::<String>(), writing.place.words()))
        .collect();
    let rule = view.rule();
    let told = if rule.is_empty() { String::new() } else { format!(" {} says: {rule}", capital(note_name(cx))) };
    format!("Under the torch {} shows {}.{told}", book_name(cx), listed(&lines))
}

pub(super) fn reset(cx: &Dressing<'_>) -> String {
    format!(
        "Close {}, take the torch back and lock it away; the ink stays, so try it once more under the torch before \
         the next group.",
        book_name(cx)
    )
}

pub(super) fn hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (book, note) = (book_name(cx), note_name(cx));
    let last = match (view.writings.len(), view.order) {
        (0 | 1, _) => format!("Shine the torch into {book}. {}", view.rule()),
        (_, Told::Listed) => format!("Shine the torch on every place that {note} names. {}", view.rule()),
        (_, Told::Pages | Told::Open) => {
            format!("Shine the torch on each of these: {}. {}", listed(&names(view)), view.rule())
        }
    };
    HintLadder {
        nudge: format!("{} says more in the dark than by day.", capital(book)),
        method: format!(
            "Some light shows what daylight hides. Shine it into {book}{}.",
            if view.has_note() { format!(", where {note} sends you") } else { String::new() }
        ),
        giveaway: format!("{} Set what glows on {}.", last.trim_end(), cx.lock_name),
    }
}

fn names(view: &View) -> Vec<String> {
    view.writings.iter().map(|writing| writing.place.name.clone()).collect()
}

pub(super) fn book_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(BOOK, "the book")
}

pub(super) fn note_name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(NOTE, "the note")
}
