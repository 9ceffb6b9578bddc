use super::graph::Graph;
use super::layers::Layered;
use super::{Drawing, Edge, Kind, NODE_GAP, NODE_HEIGHT, NODE_WIDTH, Node, Rect, RoundLine};

/// Room that a passing edge takes in a row.
const BEND: f64 = 10.0;
/// Gap between rows, in which the edges run.
const RISE: f64 = 44.0;
/// Room around the whole.
const MARGIN: f64 = 14.0;
/// Greatest distance between the ends of edges at one node.
const PORT: f64 = 16.0;
/// Share of a node's width on which edges end.
const PORTS: f64 = 0.72;
/// Sweeps that settle the rows; they are settled long before.
const SWEEPS: usize = 24;
/// How hard a link pulls its ends into line, by how many of them are bends: long edges first.
const PULL: [f64; 3] = [1.0, 2.0, 8.0];

/// Gives every node its rectangle and every edge its bends.
pub(super) fn drawing(graph: Graph, layered: &Layered, rows: &[Vec<usize>]) -> Drawing {
    let x = settled(layered, rows);
    let left = rows.iter().flatten().map(|vertex| x[*vertex] - half(layered, *vertex)).fold(f64::INFINITY, f64::min);
    let left = if left.is_finite() { left - MARGIN } else { 0.0 };
    let top = |vertex: usize| MARGIN + count(layered.layer[vertex]) * (NODE_HEIGHT + RISE);
    let nodes: Vec<Node> = graph
        .nodes
        .into_iter()
        .enumerate()
        .map(|(at, bare)| Node {
            rect: Rect { x: x[at] - NODE_WIDTH / 2.0 - left, y: top(at), w: NODE_WIDTH, h: NODE_HEIGHT },
            at: bare.at,
            kind: bare.kind,
            name: bare.name,
            round: bare.round,
        })
        .collect();
    let (heads, feet) = ports(layered, &x);
    let edges = graph
        .ties
        .iter()
        .zip(&layered.ways)
        .enumerate()
        .map(|(at, (tie, (way, back)))| {
            let mut points = Vec::new();
            for (step, vertex) in way.iter().enumerate() {
                let (upper, lower) = (top(*vertex), top(*vertex) + NODE_HEIGHT);
                let here = x[*vertex] - left;
                if step == 0 {
                    points.push((here + feet[at], lower));
                } else if step + 1 == way.len() {
                    points.push((here + heads[at], upper));
                } else {
                    // Upright through the row, so that no node beside it is touched.
                    points.extend([(here, upper), (here, lower)]);
                }
            }
            if *back {
                points.reverse();
            }
            Edge { from: tie.0, to: tie.1, tie: tie.2, back: *back, points }
        })
        .collect();
    let right = nodes.iter().map(|node| node.rect.x + node.rect.w);
    let bends = rows.iter().flatten().map(|vertex| x[*vertex] - left + BEND / 2.0);
    Drawing {
        width: right.chain(bends).fold(0.0, f64::max) + MARGIN,
        height: nodes.iter().map(|node| node.rect.y + node.rect.h).fold(0.0, f64::max) + MARGIN,
        rounds: rounds(&nodes),
        nodes,
        edges,
    }
}

/// Half the width of a node or bend.
const fn half(layered: &Layered, vertex: usize) -> f64 {
    if vertex < layered.nodes { NODE_WIDTH / 2.0 } else { BEND / 2.0 }
}

/// Where the middle of each vertex is: as near to those that it is linked with as its neighbours allow.
fn settled(layered: &Layered, rows: &[Vec<usize>]) -> Vec<f64> {
    let mut x = vec![0.0; layered.layer.len()];
    let gaps: Vec<Vec<f64>> = rows
        .iter()
        .map(|row| {
            let apart = |pair: &[usize]| pair.iter().map(|vertex| half(layered, *vertex)).sum::<f64>() + NODE_GAP;
            std::iter::once(0.0).chain(row.windows(2).map(apart)).collect()
        })
        .collect();
    for (row, gaps) in rows.iter().zip(&gaps) {
        let width: f64 = gaps.iter().sum();
        let mut at = -width / 2.0;
        for (vertex, gap) in row.iter().zip(gaps) {
            at += gap;
            x[*vertex] = at;
        }
    }
    let mut near: Vec<Vec<(usize, f64)>> = vec![Vec::new(); x.len()];
    for (from, to) in &layered.links {
        let bends = usize::from(*from >= layered.nodes) + usize::from(*to >= layered.nodes);
        let pull = PULL.get(bends).copied().unwrap_or(1.0);
        near[*from].push((*to, pull));
        near[*to].push((*from, pull));
    }
    for sweep in 0..SWEEPS {
        for at in 0..rows.len() {
            let at = if sweep % 2 == 0 { at } else { rows.len() - 1 - at };
            let (row, gaps) = (&rows[at], &gaps[at]);
            let wanted: Vec<(f64, f64)> = row
                .iter()
                .map(|vertex| {
                    let weight: f64 = near[*vertex].iter().map(|(_, pull)| pull).sum();
                    // What hangs on nothing stays about where it is.
                    if weight == 0.0 {
                        return (x[*vertex], 0.01);
                    }
                    let sum: f64 = near[*vertex].iter().map(|(other, pull)| x[*other] * pull).sum();
                    (sum / weight, weight)
                })
                .collect();
            for (vertex, place) in row.iter().zip(spaced(&wanted, gaps)) {
                x[*vertex] = place;
            }
        }
    }
    x
}

/// The places nearest to those wanted (value, weight) that keep the `gaps` between neighbours: isotonic regression
/// by pooling adjacent violators (Ayer and others 1955) of the values less their gaps.
fn spaced(wanted: &[(f64, f64)], gaps: &[f64]) -> Vec<f64> {
    // Pools: mean, weight, how many.
    let mut pools: Vec<(f64, f64, usize)> = Vec::new();
    let mut offset = 0.0;
    for ((value, weight), gap) in wanted.iter().zip(gaps) {
        offset += gap;
        let mut pool = (value - offset, *weight, 1);
        while let Some(last) = pools.pop_if(|last| last.0 > pool.0) {
            let weight = last.1 + pool.1;
            pool = ((last.0 * last.1 + pool.0 * pool.1) / weight, weight, last.2 + pool.2);
        }
        pools.push(pool);
    }
    let means = pools.into_iter().flat_map(|(mean, _, many)| std::iter::repeat_n(mean, many));
    let mut offset = 0.0;
    means
        .zip(gaps)
        .map(|(mean, gap)| {
            offset += gap;
            mean + offset
        })
        .collect()
}

/// How far from the middle of its upper and of its lower node each edge ends: side by side in the order in which
/// the edges go on, so that none cross at the node.
fn ports(layered: &Layered, x: &[f64]) -> (Vec<f64>, Vec<f64>) {
    let mut at_head: Vec<Vec<(f64, usize)>> = vec![Vec::new(); layered.nodes];
    let mut at_foot = at_head.clone();
    for (edge, (way, _)) in layered.ways.iter().enumerate() {
        if let [first, second, ..] = way[..] {
            at_foot[first].push((x[second], edge));
        }
        if let [.., before, last] = way[..] {
            at_head[last].push((x[before], edge));
        }
    }
    let spread = |mut lists: Vec<Vec<(f64, usize)>>| {
        let mut off = vec![0.0; layered.ways.len()];
        for list in &mut lists {
            list.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            let step = PORT.min(NODE_WIDTH * PORTS / count(list.len().max(1)));
            let middle = (count(list.len()) - 1.0) / 2.0;
            for (at, (_, edge)) in list.iter().enumerate() {
                off[*edge] = (count(at) - middle) * step;
            }
        }
        off
    };
    (spread(at_head), spread(at_foot))
}

/// Each round begins above its first puzzle or lock.
fn rounds(nodes: &[Node]) -> Vec<RoundLine> {
    let mut lines: Vec<RoundLine> = Vec::new();
    for node in nodes.iter().filter(|node| matches!(node.kind, Kind::Puzzle | Kind::Lock)) {
        let Some(round) = node.round.filter(|round| *round > 0) else { continue };
        let y = node.rect.y - RISE / 2.0;
        match lines.iter_mut().find(|line| line.round == round) {
            Some(line) => line.y = line.y.min(y),
            None => lines.push(RoundLine { round, y }),
        }
    }
    lines.sort_by_key(|line| line.round);
    lines
}

#[expect(clippy::cast_precision_loss, reason = "a drawing has far fewer than 2^52 of anything")]
const fn count(n: usize) -> f64 {
    n as f64
}
