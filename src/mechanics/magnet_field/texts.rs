//! What it says: help, preparation, hints, and how guests get to the answer.

use super::{Rule, Shape, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
A board of numbered shapes hangs or lies in the room. Flat steel washers are taped behind a few of them; a magnet on a \
stick, moved slowly over the board, is pulled there and nowhere else. Only the stick holds a magnet: steel has no side that \
pushes away, and nobody can swallow two magnets. A rule card states the order in which the numbers count. A template for the \
host is printed: the board from behind, with the washers' places. The answer must be digits, on at least two shapes.

## Setup
- `shapes`: how many shapes stand on the board, 12 to 160; about 60 is good.
- `digits`: digits on each shape: 1, 2 or 3. The answer is cut up from the left; the last number may be shorter.
- `order`: `Kinds`: the rule card lists outlines (circle, star, drop ...), drawn and named; no outline hides two washers, \
and some hide none. `Rows`: from the top to the bottom. `Sizes`: from the smallest to the largest, up to four washers. \
It is never left open.
- `shape_size`: breadth of a shape in millimetres, of the smallest when they differ: at least 12 for one digit, 16 for \
two, 20 for three.

## Example
(
    shapes: 60,
    digits: 1,
    order: Rows,
)

## Traps
- Two washers that the rule does not put in order: same outline, same height, nearly the same size.
- Numbers of unlike length with no order: 4 and 17 make 417 or 174.
- Another shape whose middle is within 17 mm of a washer's: its number may be read instead. With washers of 18 mm and a \
magnet of 15 mm the pull there is a twentieth at most of what it is at the middle (computed).
- Washers within 40 mm of each other, and shapes too small to write on, get a remark.
- A number that stands twice: with one digit that is usual and harmless, since guests read the place that pulls. A longer \
number behind a washer that stands elsewhere too gets a remark, since people call shapes by it.";

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    let (board, wand) = (cx.name("board", "the board"), cx.name("wand", "the magnet"));
    let washers = view.pulling().len();
    #[expect(clippy::cast_precision_loss, reason = "a handful of washers")]
    let amount = washers as f64;
    vec![
        PrepStep {
            key: "glue",
            what: format!(
                "Glue {board}, cut out along the line round its frame like every piece, flat onto corrugated card of 4 mm at \
                 most. Cut the card off along the print’s edge, and let it dry under books."
            ),
            needs: vec![
                Need { material: "plain-paper", amount: 1.0 },
                Need { material: "corrugated-card", amount: 1.0 },
                Need { material: "glue", amount: 1.0 },
                Need { material: "scissors", amount: 1.0 },
            ],
            hands: 10.0,
            wait: 60.0,
            after: vec![],
        },
        PrepStep {
            key: "tape",
            what: format!(
                "Lay the template on the back of {board}, prick through the middle of each thick ring with a pin (thin ones show the other shapes), and tape a steel washer \
                 over each of the {washers} pricks, its hole over the prick. Either side of a washer may lie up. Write down how \
                 many you used."
            ),
            needs: vec![
                Need { material: "steel-washers", amount },
                Need { material: "pin", amount: 1.0 },
                Need { material: "tape", amount: 1.0 },
            ],
            hands: 8.0,
            wait: 0.0,
            after: vec!["glue"],
        },
        PrepStep {
            key: "try",
            what: format!(
                "Move {wand} slowly over the front, touching it: it must be held at the middle of the right shapes and be loose \
                 at the middle of every other. If it is hardly held, the card is too thick or the washers are not of plain \
                 steel; if it is held beside them, the magnet is too broad."
            ),
            needs: vec![Need { material: "magnet-wand", amount: 1.0 }],
            hands: 4.0,
            wait: 0.0,
            after: vec!["tape"],
        },
        PrepStep {
            key: "cut",
            what: "Put the template away, where no guest sees it.".into(),
            needs: vec![Need { material: "card-paper", amount: 1.0 }],
            hands: 1.0,
            wait: 0.0,
            after: vec!["tape"],
        },
    ]
}

/// "the star with 5": outline and number, since a place in words fits several shapes.
fn called(shape: &Shape, cx: &Dressing<'_>) -> String {
    format!("the {} with {}", shape.kind.name(cx), shape.number)
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let places: Vec<String> = view.pulling().iter().map(|shape| called(shape, cx)).collect();
    let rule = match &view.rule {
        Some(Rule::Kinds(_)) => "in the order in which the card lists the outlines",
        Some(Rule::Rows) => "from the top of the board to the bottom, as the card says",
        Some(Rule::Sizes) => "from the smallest to the largest, as the card says",
        None => "in an order that nothing states",
    };
    format!(
        "Moved over {}, {} is held at {}. Their numbers, {rule}, are the code.",
        cx.name("board", "the board"),
        cx.name("wand", "the magnet"),
        listed(&places),
    )
}

pub(super) fn reset(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Count the washers behind {}: there must be {}. Put {} and {} back.",
        cx.name("board", "the board"),
        view.pulling().len(),
        cx.name("wand", "the magnet"),
        cx.name("card", "the rule card"),
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (board, card, wand) =
        (cx.name("board", "the board"), cx.name("card", "the rule card"), cx.name("wand", "the magnet"));
    let rule = match &view.rule {
        Some(Rule::Kinds(_)) => format!("{} shows which shape comes before which.", capital(card)),
        Some(Rule::Rows) => "Begin at the top and end at the bottom.".into(),
        Some(Rule::Sizes) => "Begin with the smallest shape and end with the largest.".into(),
        None => String::new(),
    };
    // By name, and never as they count: to put them in order is the last step.
    let counted: Vec<String> = view.pulling().iter().map(|shape| called(shape, cx)).collect();
    let mut places = counted.clone();
    places.sort();
    if places == counted {
        places.reverse();
    }
    HintLadder {
        nudge: format!("Eyes are no help with {board}. What else do you have that can feel what lies behind it?"),
        method: format!("Move {wand} slowly over {board} and mark each shape that pulls. {rule}").trim().to_owned(),
        giveaway: format!(
            "{} is held at {}. {} tells in which order to read them.",
            capital(wand),
            listed(&places),
            capital(card)
        ),
    }
}
