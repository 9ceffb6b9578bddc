use super::{Draft, Facts, Fix, FixKind, Sink};
use crate::diag::Anchor;
use crate::kit::edit::{Edit, apply};
use crate::kit::{Place, Prop};

check!(
    /// ## What it does
    /// Notes a tool that guests have long before the first puzzle that needs it.
    ///
    /// ## Why it matters at the table
    /// A tool on view asks to be used: guests try it on everything and are led astray.
    ///
    /// ## How to mend
    /// Lay the tool into a box that opens shortly before its puzzle.
    ToolTooEarly, "tool-too-early", Notes, "a tool on view long before its puzzle",
    "a tool on view asks to be used: guests try it on everything", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for early in &facts.flow.early {
        let (Some(prop), Some(puzzle)) = (facts.prop(&early.prop), facts.puzzle(&early.puzzle)) else { continue };
        let message = format!("{} is to hand {} rounds before \"{}\" needs it", prop.name, early.wait, puzzle.title);
        let draft = Draft::new(Anchor::Prop(prop.id.clone()), message);
        let draft = draft.help("lay it into a box that opens shortly before");
        let until = facts.flow.puzzles.get(&puzzle.id).map_or(0, |used| used.saturating_sub(1));
        sink.add(match later_box(facts, prop, until) {
            Some(fix) => draft.with(fix),
            None => draft,
        });
    }
}

/// The box that opens last before the tool is needed, with the evening as it was but for that.
fn later_box(facts: &Facts<'_>, prop: &Prop, until: usize) -> Option<Fix> {
    let kit = facts.kit;
    let boxes = kit.boxes.iter().filter_map(|item| Some((*facts.flow.boxes.get(&item.id)?, item)));
    let mut boxes: Vec<_> = boxes.filter(|(opens, item)| !item.locks.is_empty() && *opens <= until && *opens > 0).collect();
    boxes.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.id.cmp(&b.1.id)));
    boxes.into_iter().find_map(|(_, item)| {
        let moved = Edit::Prop(Box::new(Prop { place: Place::Box(item.id.clone()), ..prop.clone() }));
        let mut tried = kit.clone();
        apply(&mut tried, moved.clone());
        let flow = facts.party.flow(&tried);
        let same = flow.puzzles == facts.flow.puzzles && flow.boxes == facts.flow.boxes && flow.loops == facts.flow.loops;
        let title = format!("Lay it into {}", facts.party.say(&item.name));
        same.then(|| Fix { title, kind: FixKind::Ask, edits: vec![moved] })
    })
}
