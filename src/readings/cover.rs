//! Exact cover: choose options so that every item is held by exactly one of them.
//!
//! Algorithm X on dancing links (Knuth, The Art of Computer Programming 7.2.2.1). Our own, because it must count
//! the steps of a [`Budget`] and meet the options in the order given, on which a seeded generator rests.

use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// The links of one node or header: left, right (headers only), up, down, and the header that it stands under.
#[derive(Clone, Copy, Debug, Default)]
struct Node {
    left: usize,
    right: usize,
    up: usize,
    down: usize,
    head: usize,
    option: usize,
}

struct Links {
    nodes: Vec<Node>,
    /// How many options stand under each header.
    counts: Vec<usize>,
    /// First node and number of nodes of each option; the nodes of an option stand side by side.
    spans: Vec<(usize, usize)>,
}

/// Calls `found` with every exact cover, as the places of its options in the list; it says whether to go on.
/// Options that name an item twice, or one that there is not, are never chosen.
///
/// # Errors
/// When the budget was spent first.
pub fn each_cover(
    items: usize,
    options: &[Vec<usize>],
    budget: &mut Budget,
    found: &mut dyn FnMut(&[usize]) -> bool,
) -> Result<(), Spent> {
    let mut links = Links::new(items, options);
    let mut chosen = Vec::new();
    links.walk(&mut chosen, budget, found)?;
    Ok(())
}

impl Links {
    /// Node 0 is the root; node `i + 1` is the header of item `i`.
    fn new(items: usize, options: &[Vec<usize>]) -> Self {
        let mut nodes: Vec<Node> = (0..=items)
            .map(|i| Node {
                left: if i == 0 { items } else { i - 1 },
                right: if i == items { 0 } else { i + 1 },
                up: i,
                down: i,
                head: i,
                option: 0,
            })
            .collect();
        let mut counts = vec![0; items + 1];
        let mut spans = Vec::new();
        for (option, held) in options.iter().enumerate() {
            let first = nodes.len();
            let sound = !held.is_empty()
                && held.iter().enumerate().all(|(at, item)| *item < items && !held[..at].contains(item));
            if sound {
                for item in held {
                    let head = item + 1;
                    let (node, last) = (nodes.len(), nodes[head].up);
                    nodes.push(Node { left: 0, right: 0, up: last, down: head, head, option });
                    nodes[last].down = node;
                    nodes[head].up = node;
                    counts[head] += 1;
                }
            }
            spans.push((first, nodes.len() - first));
        }
        Self { nodes, counts, spans }
    }

    /// Takes a header out of the row of headers, and its options out of all other columns.
    fn hide(&mut self, head: usize) {
        let Node { left, right, .. } = self.nodes[head];
        self.nodes[left].right = right;
        self.nodes[right].left = left;
        let mut at = self.nodes[head].down;
        while at != head {
            for other in self.beside(at) {
                let Node { up, down, head, .. } = self.nodes[other];
                self.nodes[up].down = down;
                self.nodes[down].up = up;
                self.counts[head] -= 1;
            }
            at = self.nodes[at].down;
        }
    }

    /// Undoes [`Links::hide`]; the exact reverse, else the links are lost.
    fn show(&mut self, head: usize) {
        let mut at = self.nodes[head].up;
        while at != head {
            for other in self.beside(at).rev() {
                let Node { up, down, head, .. } = self.nodes[other];
                self.nodes[up].down = other;
                self.nodes[down].up = other;
                self.counts[head] += 1;
            }
            at = self.nodes[at].up;
        }
        let Node { left, right, .. } = self.nodes[head];
        self.nodes[left].right = head;
        self.nodes[right].left = head;
    }

    /// The other nodes of a node's option.
    fn beside(&self, node: usize) -> impl DoubleEndedIterator<Item = usize> + use<> {
        let (first, count) = self.spans[self.nodes[node].option];
        (first..first + count).filter(move |other| *other != node)
    }

    /// The open item with the fewest options, the first of equals.
    fn narrowest(&self) -> Option<usize> {
        let mut best = None;
        let mut head = self.nodes[0].right;
        while head != 0 {
            if best.is_none_or(|so_far: usize| self.counts[head] < self.counts[so_far]) {
                best = Some(head);
            }
            head = self.nodes[head].right;
        }
        best
    }

    fn walk(
        &mut self,
        chosen: &mut Vec<usize>,
        budget: &mut Budget,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> Result<bool, Spent> {
        let Some(head) = self.narrowest() else {
            return Ok(found(chosen));
        };
        self.hide(head);
        let mut at = self.nodes[head].down;
        let mut go_on = Ok(true);
        while at != head && matches!(go_on, Ok(true)) {
            if !budget.step() {
                go_on = Err(Spent);
                break;
            }
            chosen.push(self.nodes[at].option);
            let heads: Vec<usize> = self.beside(at).map(|other| self.nodes[other].head).collect();
            heads.iter().for_each(|head| self.hide(*head));
            go_on = self.walk(chosen, budget, found);
            heads.iter().rev().for_each(|head| self.show(*head));
            chosen.pop();
            at = self.nodes[at].down;
        }
        self.show(head);
        go_on
    }
}
