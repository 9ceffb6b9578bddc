use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::Value;

use super::Source;
use crate::diag::{Hinted, Trouble};
use crate::flow::drawing::{Drawing, Extent, Kind, Rect, Tie, draw, outline, strokes};

/// Millimetres to one unit of the drawing, across and down, where there is room: a node is then 40 mm wide and holds
/// three lines of 12 pt.
const MM: (f64, f64) = (0.27, 0.39);
/// Size of the names, in points; one that does not fit its node is cut between words.
const NAMES: f64 = 12.0;
/// Widest and highest picture in the host guide, upright on A4 or Letter with the guide's margins and its heading.
const ROOM: (f64, f64) = (170.0, 200.0);
/// Size of a shape in the list of what is what, in units of the drawing.
const SAMPLE: Rect = Rect { x: 0.0, y: 0.0, w: 38.0, h: 14.5 };

/// The flow as the template draws it; all lengths in millimetres.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Picture {
    width: f64,
    height: f64,
    /// Size of the names, in points.
    size: f64,
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
    let fit = match extent {
        Extent::Solving => (MM.0.min(ROOM.0 / drawing.width.max(1.0)), MM.1.min(ROOM.1 / drawing.height.max(1.0))),
        Extent::All => MM,
    };
    scaled(&drawing, fit)
}

fn scaled(drawing: &Drawing, (across, down): (f64, f64)) -> Picture {
    let line = |points: Vec<(f64, f64)>| points.into_iter().map(|(x, y)| (x * across, y * down)).collect::<Vec<_>>();
    let shape = |kind: Kind, rect: Rect| Shape {
        outline: line(outline(kind, rect)),
        strokes: strokes(kind, rect).into_iter().map(line).collect(),
    };
    let mut kinds: Vec<Kind> = drawing.nodes.iter().map(|node| node.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    Picture {
        width: drawing.width * across,
        height: drawing.height * down,
        size: NAMES,
        alt: "The flow as a picture. The rounds of the host guide say the same in words.".into(),
        note: "Each arrow leads from what is needed to what it is needed for. A dashed arrow says where a thing lies."
            .into(),
        nodes: drawing
            .nodes
            .iter()
            .map(|node| NodeText {
                rect: Rect {
                    x: node.rect.x * across,
                    y: node.rect.y * down,
                    w: node.rect.w * across,
                    h: node.rect.h * down,
                },
                kind: node.kind,
                name: node.name.clone(),
                shape: shape(node.kind, node.rect),
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
                let points = |points: Vec<(f64, f64)>| points.into_iter().map(|(x, y)| (x * MM.0, y * MM.1)).collect();
                let shape = Shape {
                    outline: points(outline(kind, SAMPLE)),
                    strokes: strokes(kind, SAMPLE).into_iter().map(points).collect(),
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
