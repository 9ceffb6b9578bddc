use super::Kind;
use super::graph::{Bare, Graph};
use crate::limits;

/// Layers in which one round stands: what opens, what comes to hand, what is solved, and the locks.
const BAND: usize = 4;

/// Nodes and bends in layers: every link joins a vertex of one layer with one of the next.
#[derive(Clone, Debug, Default)]
pub(super) struct Layered {
    /// The layer of each vertex. The first vertices are the graph's nodes, the others are bends.
    pub layer: Vec<usize>,
    /// How many vertices are nodes.
    pub nodes: usize,
    /// Links downwards, from one layer to the next.
    pub links: Vec<(usize, usize)>,
    /// For each tie of the graph the vertices along it from top to bottom, and whether it was turned.
    pub ways: Vec<(Vec<usize>, bool)>,
    /// How many layers there are.
    pub layers: usize,
}

impl Layered {
    pub fn new(graph: &Graph) -> Self {
        let count = graph.nodes.len();
        let turned = back(count, &graph.ties.iter().map(|tie| (tie.0, tie.1)).collect::<Vec<_>>());
        let down: Vec<(usize, usize)> = graph
            .ties
            .iter()
            .zip(&turned)
            .map(|(tie, back)| if *back { (tie.1, tie.0) } else { (tie.0, tie.1) })
            .collect();
        let (layer, layers) = dense(&levels(&graph.nodes, &down));
        let mut made = Self { layer, nodes: count, links: Vec::new(), ways: Vec::new(), layers };
        let mut left = limits::DRAWN_BENDS;
        for ((from, to), back) in down.into_iter().zip(turned) {
            let (first, last) = (made.layer[from], made.layer[to]);
            let bends = last.saturating_sub(first + 1);
            let mut way = vec![from];
            // With no bends left an edge runs straight; nothing that a person can take in has so many.
            if bends <= left {
                left -= bends;
                for layer in first + 1..last {
                    made.layer.push(layer);
                    way.push(made.layer.len() - 1);
                }
                way.push(to);
                made.links.extend(way.windows(2).filter_map(|w| Some((*w.first()?, *w.get(1)?))));
            } else {
                way.push(to);
            }
            made.ways.push((way, back));
        }
        made.links.sort_unstable();
        made.links.dedup();
        made
    }
}

/// Which ties must be turned round so that no loop is left: those that lead back to a node whose search is not
/// finished, in a search from the first node on.
fn back(count: usize, ties: &[(usize, usize)]) -> Vec<bool> {
    let mut out: Vec<Vec<usize>> = vec![Vec::new(); count];
    for (at, (from, _)) in ties.iter().enumerate() {
        out[*from].push(at);
    }
    let mut turned = vec![false; ties.len()];
    // 0: not seen, 1: on the way here, 2: done.
    let mut state = vec![0_u8; count];
    for start in 0..count {
        if state[start] != 0 {
            continue;
        }
        state[start] = 1;
        let mut path = vec![(start, 0)];
        while let Some((node, next)) = path.last_mut() {
            let Some(tie) = out[*node].get(*next) else {
                state[*node] = 2;
                path.pop();
                continue;
            };
            *next += 1;
            let to = ties[*tie].1;
            match state[to] {
                0 => {
                    state[to] = 1;
                    path.push((to, 0));
                }
                1 => turned[*tie] = true,
                _ => {}
            }
        }
    }
    turned
}

/// The layer of each node: below all that it follows, and not above its round.
fn levels(nodes: &[Bare], down: &[(usize, usize)]) -> Vec<usize> {
    let mut level: Vec<usize> = nodes.iter().map(floor).collect();
    let mut out: Vec<Vec<usize>> = vec![Vec::new(); nodes.len()];
    let mut before = vec![0_usize; nodes.len()];
    for (from, to) in down {
        out[*from].push(*to);
        before[*to] += 1;
    }
    let mut ready: Vec<usize> = (0..nodes.len()).rev().filter(|node| before[*node] == 0).collect();
    let mut sorted = Vec::new();
    while let Some(node) = ready.pop() {
        sorted.push(node);
        for to in &out[node] {
            level[*to] = level[*to].max(level[node] + 1);
            before[*to] -= 1;
            if before[*to] == 0 {
                ready.push(*to);
            }
        }
    }
    // What lies about comes down to where it is first needed, so that edges are short.
    for node in sorted.into_iter().rev() {
        let loose = matches!(nodes[node].kind, Kind::Spot | Kind::Tool | Kind::Key | Kind::Thing);
        if let (true, Some(first)) = (loose, out[node].iter().map(|to| level[*to]).min()) {
            level[node] = level[node].max(first.saturating_sub(1));
        }
    }
    level
}

/// The least layer of a node by its round.
fn floor(node: &Bare) -> usize {
    let Some(round) = node.round else { return 0 };
    let band = BAND * round;
    match node.kind {
        Kind::Spot => 0,
        Kind::Box => band,
        Kind::Tool | Kind::Key | Kind::Thing | Kind::Finish => band + 1,
        Kind::Puzzle => (band + 2).saturating_sub(BAND),
        Kind::Lock => (band + 3).saturating_sub(BAND),
    }
}

/// The same layers, numbered without gaps, and how many there are.
fn dense(levels: &[usize]) -> (Vec<usize>, usize) {
    let mut used = levels.to_vec();
    used.sort_unstable();
    used.dedup();
    let layer = levels.iter().map(|level| used.binary_search(level).unwrap_or(0)).collect();
    (layer, used.len())
}
