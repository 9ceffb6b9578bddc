//! What tells locks and boxes apart in the room: the tags of padlocks, the labels of boxes.

use super::count;
use crate::kit::Kit;
use crate::kit::material::{Need, PrepStep};
use crate::script::capital;

/// Minutes for folding, taping, punching and tying one tag, and for taping one label on (estimates; common practice, no
/// source).
const TAG: f64 = 1.5;
const LABEL: f64 = 0.5;
/// The group of the padlocks' tags.
pub(super) const TAGS: &str = "lock-tags";
/// Metres of string that tie one tag.
const TIE: f64 = 0.25;

/// The steps that mark locks and boxes, each with the group of its pieces; their keys are what a shopping list calls them.
pub(super) fn steps(kit: &Kit) -> Vec<(PrepStep, &'static str)> {
    let need = |material, amount| Need { material, amount };
    let (tags, labels) = (kit.tagged().count(), kit.boxes.iter().filter(|item| item.label.is_some()).count());
    let mut steps = Vec::new();
    if tags > 0 {
        let (one, tie) = match tags {
            1 => ("Tag of the padlock", "Tie it with a short piece of string to the shackle of the padlock"),
            _ => (
                "Tags of the padlocks",
                "Tie each with a short piece of string to the shackle of its own padlock: the table of locks shows the mark \
                 of each",
            ),
        };
        let what = format!(
            "{one}: fold at the dashed line, marks outside, tape the halves together, punch the hole through both. {tie}."
        );
        let string = (count(tags) * TIE * 10.0).ceil() / 10.0;
        let needs = vec![need("tape", 1.0), need("hole-punch", 1.0), need("string", string)];
        let step = PrepStep {
            key: "the tags of the padlocks",
            what,
            needs,
            hands: count(tags) * TAG,
            wait: 0.0,
            after: Vec::new(),
        };
        steps.push((step, TAGS));
    }
    if labels > 0 {
        let names: Vec<String> =
            kit.boxes.iter().filter(|item| item.label.is_some()).map(|item| capital(item.name.trim())).collect();
        let what = match names.as_slice() {
            [only] => format!("Label of a box: tape it on the outside of its box: {only}."),
            names => format!("Labels of the boxes: tape each on the outside of its box: {}.", names.join("; ")),
        };
        let needs = vec![need("tape", 1.0)];
        let step = PrepStep {
            key: "the labels of the boxes",
            what,
            needs,
            hands: count(labels) * LABEL,
            wait: 0.0,
            after: Vec::new(),
        };
        steps.push((step, "labels"));
    }
    steps
}
