//! What the host does with the props that the kit prints, and what that takes.

use super::count;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{Form, Printed, Prop};
use crate::limits::PROP_PAGE;
use crate::script::capital;

/// Part of a sheet that pieces of mixed sizes fill.
const FILLED: f64 = 0.75;
/// Minutes for folding a piece, gluing a tab, punching and threading a hole, taping a piece on (estimates; common practice,
/// no source). All pieces are cut out together.
const FOLD: f64 = 0.5;
const GLUE: f64 = 2.0;
const THREAD: f64 = 1.0;
const TAPE: f64 = 0.5;
/// Minutes that glued paper lies under a book (estimate; the maker's label decides).
const DRY: f64 = 15.0;
/// Metres of string beyond the flags of a banner, and for one tag.
const ENDS: f64 = 1.0;
const TIE: f64 = 0.3;

/// The step that makes this prop; none when the kit does not print it.
#[must_use]
pub fn step(prop: &Prop) -> Option<PrepStep> {
    let spec = prop.printed.as_ref()?;
    let size = Sizes::new(spec);
    let name = capital(prop.name.trim());
    let copies = usize::from(spec.copies);
    let pieces = count(size.pieces * copies);
    let need = |material, amount| Need { material, amount };
    let paper = if spec.form.is_thin() { "plain-paper" } else { "card-paper" };
    let sheets = (size.area * count(copies) / (PROP_PAGE.0 * PROP_PAGE.1 * FILLED)).ceil().max(1.0);
    let mut needs = vec![need(paper, sheets), need("scissors", 1.0)];
    let (mut hands, mut wait) = (0.0, 0.0);
    let tabs = size.tabs * copies;
    if tabs > 0 {
        needs.push(need("glue", 1.0));
        hands += count(tabs) * GLUE;
        wait = DRY;
    }
    if size.holes {
        let string = if spec.form == Form::Banner {
            (spec.size.0 * pieces / 1000.0 + ENDS).ceil()
        } else {
            ((pieces * TIE) * 10.0).ceil() / 10.0
        };
        needs.extend([need("hole-punch", 1.0), need("string", string)]);
        hands += pieces * THREAD;
    } else if matches!(spec.form, Form::Banner | Form::Label | Form::Disc | Form::Strip) {
        needs.push(need("tape", 1.0));
        hands += pieces * TAPE;
    }
    if matches!(spec.form, Form::Tent | Form::Envelope | Form::Cover) {
        hands += pieces * FOLD;
    }
    if size.blank {
        needs.push(need("pencil", 1.0));
    }
    let what = format!("{name}: {}", say(spec, &size));
    let hands = hands.max(1.0);
    Some(PrepStep { key: "print", what, needs, hands, wait, after: Vec::new() })
}

/// How many pieces of this prop are cut out; none when the kit does not print it.
#[must_use]
pub fn pieces(prop: &Prop) -> usize {
    prop.printed.as_ref().map_or(0, |spec| Sizes::new(spec).pieces * usize::from(spec.copies))
}

/// What of a printed prop the host handles.
struct Sizes {
    /// Pieces to cut out, for one copy.
    pieces: usize,
    /// Tabs to glue, for one copy.
    tabs: usize,
    /// Square millimetres of all pieces, for one copy.
    area: f64,
    /// Whether there are holes to punch.
    holes: bool,
    /// Whether something is left to be written on.
    blank: bool,
}

impl Sizes {
    fn new(spec: &Printed) -> Self {
        let (w, h) = spec.size;
        let texts = spec.texts().count();
        // As many pages as the length takes beside a tab; the drawing may take one more to keep letters whole.
        let pages = |length: f64| {
            let room = (PROP_PAGE.1 - spec.tab_width()).max(1.0);
            (1..).take(crate::limits::PROP_PARTS).find(|n| count(*n) * room >= length)
        };
        let (pieces, tabs, area) = match spec.form {
            Form::Banner => {
                let letters = spec.text.chars().count().max(1);
                (letters, 0, w * h * count(letters))
            }
            Form::Strip => {
                let parts = if w <= PROP_PAGE.1 { 1 } else { pages(w).unwrap_or(1) };
                (parts, parts - 1, w * h)
            }
            Form::Band => {
                let parts = pages(w).unwrap_or(1);
                (parts, parts, w * h)
            }
            Form::Tent => (texts, 0, w * h * 2.0 * count(texts)),
            Form::Envelope => (1, 2, w * h * 2.6),
            Form::Cover => {
                let whole = w * 2.0 + spec.spine + spec.flaps * 2.0;
                let parts = if whole <= PROP_PAGE.1 { 1 } else { 2 };
                (parts, parts - 1, whole * h)
            }
            Form::Tag | Form::Label | Form::Disc => (texts, 0, w * h * count(texts)),
        };
        let blank =
            matches!(spec.form, Form::Tent | Form::Tag | Form::Label) && spec.texts().any(|t| t.trim().is_empty());
        Self { pieces, tabs, area, holes: spec.holes().is_some(), blank }
    }
}

/// The step in words.
fn say(spec: &Printed, size: &Sizes) -> String {
    let several = size.pieces * usize::from(spec.copies) > 1;
    let them = if several { "them" } else { "it" };
    // Where all are blank there are none to be told apart.
    let ones = if spec.texts().all(|text| text.trim().is_empty()) { them } else { "the blank ones" };
    let write = if size.blank { format!(" and write on {ones}") } else { String::new() };
    // Parts after the second are joined alike.
    let on = if size.pieces > 2 { ", and so on" } else { "" };
    match spec.form {
        Form::Banner if size.holes => "punch both holes of each flag, and thread them on the string in the \
            order of their numbers. Hang it low enough to reach without climbing."
            .to_owned(),
        Form::Banner => "tape the flags in a row in the order of their numbers.".to_owned(),
        Form::Strip if size.tabs > 0 => format!(
            "glue part 2 over the tab of part 1, up to the line, so that the marks on both sides meet{on}. When it is dry, \
             tape it up where “Setting up” says."
        ),
        Form::Strip => "tape it up where “Setting up” says.".to_owned(),
        Form::Tent => {
            format!(
                "fold {them} back on the dashed line so that {} stand{}{write}.",
                if several { "they" } else { "it" },
                if several { "" } else { "s" }
            )
        }
        Form::Envelope => {
            let each = if several { "of each " } else { "" };
            format!(
                "fold both tabs {each}back on the dashed lines and put glue on them; \
                fold the lower half up behind, onto the tabs. When it is filled, fold the flap over and close it."
            )
        }
        Form::Band => {
            let join = if size.pieces > 1 {
                format!("glue part 2 over the tab of part 1, up to the line{on}; then ")
            } else {
                String::new()
            };
            format!("{join}lay it round, the words in front, and glue its end over the last tab.")
        }
        Form::Tag => format!("punch the hole{}, tie a piece of string through{write}.", if several { "s" } else { "" }),
        Form::Label if size.blank => format!("write on {ones} and tape {them} on."),
        // What comes once for each guest is fixed when it is handed out.
        Form::Disc if spec.copies > 1 => format!("lay tape beside {them}, to fix {them} with."),
        Form::Label | Form::Disc => format!("tape {them} on, where “Setting up” says."),
        Form::Cover => {
            let join = if size.tabs > 0 { "glue the back over the tab, up to the line; then " } else { "" };
            let flaps = if spec.flaps > 0.0 { ", the flaps inside the boards" } else { "" };
            format!("{join}fold it on the dashed lines round the book{flaps}.")
        }
    }
}
