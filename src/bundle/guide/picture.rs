use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::Value;

use super::Source;
use crate::diag::{Hinted, Trouble};
use crate::flow::drawing::{
    Drawing, Extent, Kind, NODE_GAP, NODE_HEIGHT, NODE_WIDTH, Rect, Tie, draw, outline, strokes,
};

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
/// A shape in the list of what is what: a node, this much smaller than [`MM`] makes it.
const SAMPLE: f64 = 0.3;

/// The flow as the template draws it; all lengths in millimetres.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Picture {
    width: f64,
    height: f64,
    /// Size of the names, in points.
    size: f64,
    /// Whether it needs a page turned.
    turned: bool,
    /// Top and foot of each row of nodes, from above.
    rows: Vec<(f64, f64)>,
    /// What it shows, for those who do not see it.
    alt: String,
    note: String,
    nodes: Vec<NodeText>,
    edges: Vec<EdgeText>,
    rounds: Vec<(f64, String)>,
    legend: Vec<(String, Shape)>,
}

#[derive(Clone, Debug, Serialize)]
struct NodeText {
    rect: Rect,
    kind: Kind,
    name: String,
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

/// What the drawn flow shows: in the guide what guests solve and open, as a file of its own everything.
pub(super) fn picture(source: &Source<'_>, extent: Extent) -> Picture {
    let drawing = draw(&source.party.spoken(&source.opened.kit), source.flow, extent);
    let upright = ROOM.0 / drawing.width.max(1.0);
    let (across, turned) = match extent {
        Extent::Solving if MM.min(upright) * NODE_WIDTH < NARROW => (MM.min(ROOM.1 / drawing.width.max(1.0)), true),
        Extent::Solving => (MM.min(upright), false),
        Extent::All => (MM, false),
    };
    scaled(&drawing, across, turned)
}

fn scaled(drawing: &Drawing, across: f64, turned: bool) -> Picture {
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
    let mut kinds: Vec<Kind> = drawing.nodes.iter().map(|node| node.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    Picture {
        width: drawing.width * across,
        height: drawing.height * down,
        size: NAMES,
        turned,
        rows,
        alt: "The flow as a picture. The rounds of the host guide say the same in words.".into(),
        note: "Each arrow leads from what is needed to what it is needed for. A dashed arrow says where a thing lies."
            .into(),
        nodes: drawing
            .nodes
            .iter()
            .map(|node| {
                let rect = roomy(node.rect);
                NodeText {
                    rect: Rect { x: rect.x * across, y: rect.y * down, w: rect.w * across, h: rect.h * down },
                    kind: node.kind,
                    name: node.name.clone(),
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
        legend: kinds
            .into_iter()
            .map(|kind| {
                let sample = Rect { x: 0.0, y: 0.0, w: NODE_WIDTH, h: NODE_HEIGHT };
                let small = MM * SAMPLE;
                let points =
                    |points: Vec<(f64, f64)>| points.into_iter().map(|(x, y)| (x * small, y * small)).collect();
                let shape = Shape {
                    outline: points(outline(kind, sample)),
                    strokes: strokes(kind, sample).into_iter().map(points).collect(),
                };
                (kind.word().to_owned(), shape)
            })
            .collect(),
    }
}

/// What a page of the drawn flow alone is made from, everything in it.
#[derive(Serialize)]
struct Page {
    colours: BTreeMap<&'static str, String>,
    title: String,
    flow: Picture,
}

/// The data of a page that shows the whole flow and nothing else.
///
/// # Errors
/// When it cannot be written as data, which no kit brings about.
pub(in crate::bundle) fn page(source: &Source<'_>) -> Hinted<Value> {
    let page = Page {
        colours: source.party.palette.iter().map(|(role, colour)| (role, colour.to_string())).collect(),
        title: format!("{} · flow · {}", source.party.script.title, source.party.level.word()),
        flow: picture(source, Extent::All),
    };
    serde_json::to_value(&page).map_err(|error| Trouble::new(format!("cannot write the drawn flow: {error}")))
}
