use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde_json::Value;

use super::Source;
use super::parts::{Part, parts};
use crate::diag::{Anchor, Hinted, Trouble};
use crate::flow::drawing::{
    Drawing, Extent, Kind, NODE_GAP, NODE_HEIGHT, NODE_WIDTH, Rect, Tie, draw, outline, strokes,
};
use crate::kit::Kit;
use crate::limits;

/// Millimetres to one unit of the drawing where there is room: a node is then 40 mm wide.
const MM: f64 = 0.27;
/// Size of the names, in points. The template makes each row as high as its longest name asks for.
const NAMES: f64 = 12.0;
/// Widest picture in the host guide, on A4 or Letter with the guide's margins: upright, and on a page turned.
const ROOM: (f64, f64) = (170.0, 234.0);
/// Least width of a node, in millimetres, that holds nearly every word at [`NAMES`]. A picture with narrower ones
/// goes onto a page turned.
const NARROW: f64 = 23.5;
/// Least gap between neighbours of a row, in millimetres: what the drawing leaves beyond it widens the nodes.
const GAP: f64 = 2.4;
/// Between pictures that stand side by side on a page, as the template sets them.
const COLUMNS_APART: f64 = 8.0;
/// Height of a row with the arrows below it, about; the template makes it as high as its names ask for.
const ROW: f64 = 22.0;
/// How arrows are read.
const ARROWS: &str =
    "Each arrow leads from what is needed to what it is needed for. A dashed arrow says where a thing lies.";
/// A shape in the list of what is what: a node, this much smaller than [`MM`] makes it.
const SAMPLE: f64 = 0.3;

/// The flow as the template draws it; all lengths in millimetres.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Pictures {
    /// Whether it needs a page turned.
    turned: bool,
    /// What it shows, for those who do not see it.
    alt: String,
    note: String,
    legend: Vec<(String, Shape)>,
    /// The whole, or where that is wider than a page one for each box; none where even these are too many.
    parts: Vec<Picture>,
    /// What stands in the place of pictures, in words.
    told: Vec<String>,
}

/// One picture.
#[derive(Clone, Debug, Serialize)]
struct Picture {
    /// What it is of; empty for the whole.
    title: String,
    width: f64,
    height: f64,
    /// Size of the names, in points.
    size: f64,
    /// Top and foot of each row of nodes, from above.
    rows: Vec<(f64, f64)>,
    nodes: Vec<NodeText>,
    edges: Vec<EdgeText>,
    rounds: Vec<(f64, String)>,
}

#[derive(Clone, Debug, Serialize)]
struct NodeText {
    rect: Rect,
    kind: Kind,
    name: String,
    /// The mark of a lock; empty where it has none.
    mark: String,
    shape: Shape,
}

/// An outline and what is drawn within it.
#[derive(Clone, Debug, Serialize)]
struct Shape {
    outline: Vec<(f64, f64)>,
    strokes: Vec<Vec<(f64, f64)>>,
}

#[derive(Clone, Debug, Serialize)]
struct EdgeText {
    points: Vec<(f64, f64)>,
    /// Where a thing lies is dashed; what must be done is drawn through.
    dashed: bool,
    back: bool,
}

/// The flow in the guide: what guests solve and open. Names keep their size whatever the kit is: what is too wide for
/// a page goes onto a page turned, then into one picture for each box; what would fill too many pages is told in words.
pub(super) fn pictures(source: &Source<'_>) -> Pictures {
    let kit = source.party.spoken(&source.opened.kit);
    let whole = draw(&kit, source.flow, Extent::Solving);
    let fits = |room: f64| room / whole.width.max(1.0) * NODE_WIDTH >= NARROW;
    let turned = !fits(ROOM.0) && fits(ROOM.1);
    let (drawn, told) = if turned || fits(ROOM.0) {
        (vec![Part { title: String::new(), drawing: whole }], Vec::new())
    } else {
        parts(&kit, source.flow, |drawing| ROOM.0 / drawing.width.max(1.0) * NODE_WIDTH >= NARROW)
    };
    if drawn.iter().map(|part| pages(&part.drawing)).sum::<f64>() > limits::GUIDE_FLOW_PAGES {
        let left_out = format!(
            "A picture of all {} puzzles would fill more pages than it helps, so it is left out here. The rounds above say \
             the same in words, and the drawn flow beside this guide (the file with “flow” in its name) shows it whole, to \
             be looked at on a screen.",
            kit.puzzles.len()
        );
        return Pictures { told: vec![left_out], ..joined(Vec::new(), false) };
    }
    let mut note = ARROWS.to_owned();
    if drawn.len() > 1 {
        note.push_str(
            " All in one picture would be wider than a page, so each box has one of its own: what opens it, and where that \
             comes from.",
        );
    }
    let room = if turned { ROOM.1 } else { ROOM.0 };
    let made = |part: &Part| {
        let across = MM.min(room / part.drawing.width.max(1.0));
        Picture { title: part.title.clone(), ..scaled(&kit, &part.drawing, across) }
    };
    let kinds = drawn.iter().flat_map(|part| &part.drawing.nodes).map(|node| node.kind).collect();
    Pictures { note, legend: legend(&kinds), told, ..joined(drawn.iter().map(made).collect(), turned) }
}

/// Everything in one picture, as wide as it comes: for a file of its own.
fn everything(source: &Source<'_>) -> Pictures {
    let kit = source.party.spoken(&source.opened.kit);
    let drawing = draw(&kit, source.flow, Extent::All);
    let kinds = drawing.nodes.iter().map(|node| node.kind).collect();
    Pictures { legend: legend(&kinds), ..joined(vec![scaled(&kit, &drawing, MM)], false) }
}

fn joined(parts: Vec<Picture>, turned: bool) -> Pictures {
    Pictures {
        turned,
        alt: "The flow as a picture. The rounds of the host guide say the same in words.".into(),
        note: ARROWS.into(),
        legend: Vec::new(),
        parts,
        told: Vec::new(),
    }
}

/// How many pages a picture takes, about: narrow ones stand in columns.
fn pages(drawing: &Drawing) -> f64 {
    let mut tops: Vec<f64> = drawing.nodes.iter().map(|node| node.rect.y).collect();
    tops.sort_by(f64::total_cmp);
    tops.dedup();
    let columns = ((ROOM.0 + COLUMNS_APART) / (drawing.width * MM + COLUMNS_APART)).floor().max(1.0);
    #[expect(clippy::cast_precision_loss, reason = "a drawing has far fewer rows than 2^52")]
    let rows = tops.len() as f64;
    rows * ROW / columns / ROOM.1
}

fn scaled(kit: &Kit, drawing: &Drawing, across: f64) -> Picture {
    let mark = |at: &Anchor| match at {
        Anchor::Lock(id) => kit.lock(id).map(|lock| lock.mark.clone()).unwrap_or_default(),
        _ => String::new(),
    };
    let down = MM;
    let wider = ((NODE_GAP * across - GAP) / across).max(0.0);
    let roomy = |rect: Rect| Rect { x: rect.x - wider / 2.0, w: rect.w + wider, ..rect };
    let line = |points: Vec<(f64, f64)>| points.into_iter().map(|(x, y)| (x * across, y * down)).collect::<Vec<_>>();
    let shape = |kind: Kind, rect: Rect| Shape {
        outline: line(outline(kind, rect)),
        strokes: strokes(kind, rect).into_iter().map(line).collect(),
    };
    let mut rows: Vec<(f64, f64)> =
        drawing.nodes.iter().map(|node| (node.rect.y * down, (node.rect.y + node.rect.h) * down)).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    rows.dedup();
    Picture {
        title: String::new(),
        width: drawing.width * across,
        height: drawing.height * down,
        size: NAMES,
        rows,
        nodes: drawing
            .nodes
            .iter()
            .map(|node| {
                let rect = roomy(node.rect);
                NodeText {
                    rect: Rect { x: rect.x * across, y: rect.y * down, w: rect.w * across, h: rect.h * down },
                    kind: node.kind,
                    name: node.name.clone(),
                    mark: mark(&node.at),
                    shape: shape(node.kind, rect),
                }
            })
            .collect(),
        edges: drawing
            .edges
            .iter()
            .map(|edge| EdgeText { points: line(edge.points.clone()), dashed: edge.tie == Tie::Holds, back: edge.back })
            .collect(),
        rounds: drawing.rounds.iter().map(|round| (round.y * down, format!("Round {}", round.round))).collect(),
    }
}

/// What is what: each kind with its shape.
fn legend(kinds: &BTreeSet<Kind>) -> Vec<(String, Shape)> {
    let sample = Rect { x: 0.0, y: 0.0, w: NODE_WIDTH, h: NODE_HEIGHT };
    let small = MM * SAMPLE;
    let points = |points: Vec<(f64, f64)>| points.into_iter().map(|(x, y)| (x * small, y * small)).collect();
    let shape = |kind: Kind| Shape {
        outline: points(outline(kind, sample)),
        strokes: strokes(kind, sample).into_iter().map(points).collect(),
    };
    kinds.iter().map(|kind| (kind.word().to_owned(), shape(*kind))).collect()
}

/// What a page of the drawn flow alone is made from, everything in it.
#[derive(Serialize)]
struct Page {
    colours: BTreeMap<&'static str, String>,
    title: String,
    flow: Pictures,
}

/// The data of a page that shows the whole flow and nothing else.
///
/// # Errors
/// When it cannot be written as data, which no kit brings about.
pub(in crate::bundle) fn page(source: &Source<'_>) -> Hinted<Value> {
    let page = Page {
        colours: source.party.palette.iter().map(|(role, colour)| (role, colour.to_string())).collect(),
        title: format!("{} · flow · {}", source.party.script.title, source.party.level.word()),
        flow: everything(source),
    };
    serde_json::to_value(&page).map_err(|error| Trouble::new(format!("cannot write the drawn flow: {error}")))
}
