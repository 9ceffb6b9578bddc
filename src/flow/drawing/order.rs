use rust_sugiyama::configure::{Config, RankingType};
use rust_sugiyama::from_vertices_and_edges;

use super::layers::Layered;
use crate::limits;

/// The vertices of each layer from left to right.
pub(super) fn rows(layered: &Layered) -> Vec<Vec<usize>> {
    let mut rows = vec![Vec::new(); layered.layers];
    for (vertex, layer) in layered.layer.iter().enumerate() {
        rows[*layer].push(vertex);
    }
    if layered.layer.len() > limits::DRAWN_VERTICES {
        return rows;
    }
    let rank = ranks(layered);
    for row in &mut rows {
        row.sort_by_key(|vertex| (rank[*vertex], *vertex));
    }
    swapped(layered, rows)
}

/// A number for each vertex by which its layer is in order: the library reduces crossings by sweeps of barycentres
/// and by swaps, after Gansner and others 1993.
fn ranks(layered: &Layered) -> Vec<usize> {
    let count = layered.layer.len();
    // A vertex with nothing above it hangs on a tail of its own from the first layer, so that the library's layers
    // are ours. Vertices are given layer by layer, because it ranks them in the order given.
    let mut above = vec![false; count];
    for (_, to) in &layered.links {
        above[*to] = true;
    }
    let mut vertices: Vec<(usize, usize)> = layered.layer.iter().copied().zip(0..count).collect();
    let mut links = layered.links.clone();
    for (vertex, above) in above.into_iter().enumerate() {
        if above || vertices.len() > 2 * limits::DRAWN_VERTICES {
            continue;
        }
        let mut below = vertex;
        for layer in (0..layered.layer[vertex]).rev() {
            let tail = vertices.len();
            vertices.push((layer, tail));
            links.push((tail, below));
            below = tail;
        }
    }
    vertices.sort_unstable();
    // The library numbers vertices in the order given, so links are told in these numbers, and so is its answer.
    let order: Vec<usize> = vertices.into_iter().map(|(_, vertex)| vertex).collect();
    let mut given = vec![0; order.len()];
    for (at, vertex) in order.iter().enumerate() {
        given[*vertex] = at;
    }
    let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let vertices: Vec<(u32, (f64, f64))> = (0..order.len()).map(|at| (number(at), (1.0, 1.0))).collect();
    let links: Vec<(u32, u32)> = links.iter().map(|(from, to)| (number(given[*from]), number(given[*to]))).collect();
    let config = Config { ranking_type: RankingType::Up, vertex_spacing: 1.0, ..Config::default() };
    // Parts that hang together stand side by side, in the order of their first node.
    let mut placed: Vec<(usize, f64, usize)> = Vec::new();
    for (part, _, _) in from_vertices_and_edges(&vertices, &links, &config) {
        let own = |at: usize| order.get(at).copied().filter(|vertex| *vertex < count);
        let part: Vec<(usize, f64)> = part.into_iter().filter_map(|(at, (x, _))| Some((own(at)?, x))).collect();
        let first = part.iter().map(|(vertex, _)| *vertex).min().unwrap_or(0);
        placed.extend(part.into_iter().map(|(vertex, x)| (first, x, vertex)));
    }
    placed.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.cmp(&b.2)));
    let mut rank = vec![0; count];
    for (at, (_, _, vertex)) in placed.into_iter().enumerate() {
        rank[vertex] = at;
    }
    rank
}

/// Swaps neighbours in a row as long as that takes crossings away. The library counts its tails, we do not.
fn swapped(layered: &Layered, mut rows: Vec<Vec<usize>>) -> Vec<Vec<usize>> {
    let count = layered.layer.len();
    let (mut up, mut down) = (vec![Vec::new(); count], vec![Vec::new(); count]);
    for (from, to) in &layered.links {
        down[*from].push(*to);
        up[*to].push(*from);
    }
    let mut place = vec![0; count];
    for row in &rows {
        row.iter().enumerate().for_each(|(at, vertex)| place[*vertex] = at);
    }
    for _ in 0..limits::DRAWN_SWEEPS {
        let mut better = false;
        for row in &mut rows {
            for at in 1..row.len() {
                let (left, right) = (row[at - 1], row[at]);
                let now = crossings(&up, &place, left, right) + crossings(&down, &place, left, right);
                let then = crossings(&up, &place, right, left) + crossings(&down, &place, right, left);
                if then < now {
                    row.swap(at - 1, at);
                    (place[left], place[right]) = (at, at - 1);
                    better = true;
                }
            }
        }
        if !better {
            break;
        }
    }
    rows
}

/// How often the links of two neighbours cross when the first stands to the left.
fn crossings(links: &[Vec<usize>], place: &[usize], left: usize, right: usize) -> usize {
    let over = |from: &usize| links[right].iter().filter(|other| place[**other] < place[*from]).count();
    links[left].iter().map(over).sum()
}
