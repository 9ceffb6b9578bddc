use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::Anchor;
use crate::face::Piece;
use crate::ids::PuzzleId;
use crate::kit::edit::Edit;
use crate::kit::{BoxDef, OwnStep, Place, Printed, Prop};
use crate::party::{folded, goes_into};

check!(
    /// ## What it does
    /// Flags what lies in an envelope that the kit prints and is larger than it: a piece as it is folded at its own lines, and
    /// the letter. How thick it is, is left out; so is what a step of the kit's own preparation folds.
    ///
    /// ## Why it matters at the table
    /// The host finds out when the envelope is glued and the guests are on their way.
    ///
    /// ## How to mend
    /// Print a larger envelope (`size` is what it takes), lay the piece elsewhere, let the box be bought, or write a step under
    /// `preparation` that says how the piece is folded.
    LargerThanEnvelope, "larger-than-envelope", Warns, "a piece that is larger than the printed envelope in which it lies",
    "the host finds out when the envelope is glued", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for item in facts.kit.boxes.iter().filter(|item| item.printed.is_some()) {
        let Some((_, spec)) = envelope(facts, item) else { continue };
        let name = facts.party.say(&item.name);
        let (w, h) = spec.size;
        let help = "print a larger envelope, lay it elsewhere, or write a step under `preparation` that folds it";
        for piece in lying(facts, item).into_iter().filter(|piece| !goes_into(folded(piece), spec)) {
            let size = folded(piece);
            let message = format!(
                "\"{}\" is {:.0} × {:.0} mm as it lies in {name}, which takes {w:.0} × {h:.0} mm",
                piece.label,
                size.w.get(),
                size.h.get()
            );
            sink.add(Draft::new(Anchor::Box(item.id.clone()), message).help(help));
        }
        let letter = facts.kit.letter.place.as_ref() == Some(&Place::Box(item.id.clone()));
        if letter && !folds(&facts.kit.preparation, "letter") {
            let message = format!("the letter is a whole sheet and lies in {name}, which takes {w:.0} × {h:.0} mm");
            sink.add(Draft::new(Anchor::Box(item.id.clone()), message).help(help));
        }
    }
}

/// The envelope that a box is, if the kit prints it.
fn envelope<'a>(facts: &Facts<'a>, item: &BoxDef) -> Option<(&'a Prop, &'a Printed)> {
    let prop = facts.kit.printed_as(item)?;
    Some((prop, prop.printed.as_ref()?))
}

/// What lies in a box, but for what the author has folded.
fn lying<'a>(facts: &Facts<'a>, item: &BoxDef) -> Vec<&'a Piece> {
    let here = Place::Box(item.id.clone());
    let by_author = |piece: &&Piece| {
        let puzzle = PuzzleId::new(&piece.group).and_then(|id| facts.puzzle(&id));
        let name = piece.title().unwrap_or_else(|| piece.label.clone());
        puzzle.is_some_and(|puzzle| folds(&puzzle.preparation, "")) || folds(&facts.kit.preparation, &name)
    };
    facts.party.lying(facts.kit, &here).filter(|piece| !by_author(piece)).collect()
}

/// Whether one of these steps folds a thing.
fn folds(steps: &[OwnStep], thing: &str) -> bool {
    let says = |what: &str| what.contains("fold") && what.contains(&thing.to_lowercase());
    steps.iter().any(|step| says(&step.what.to_lowercase()))
}

/// An envelope that takes all that lies in it, upright or lying; else a box that is bought.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Box(id) = &finding.anchor else { return None };
    let item = facts.box_def(id)?;
    let (prop, spec) = envelope(facts, item)?;
    let up = |mm: f64| mm.ceil();
    let (mut long, mut short) = (0.0_f64, 0.0_f64);
    for size in lying(facts, item).into_iter().map(folded) {
        let (w, h) = (size.w.get(), size.h.get());
        (long, short) = (long.max(w.max(h)), short.max(w.min(h)));
    }
    let name = facts.party.say(&item.name);
    let larger = [(short, long), (long, short)].map(|(w, h)| {
        let size = (up(w.max(spec.size.0)), up(h.max(spec.size.1)));
        let printed = Some(Printed { size, ..spec.clone() });
        let title = format!("Let {name} take {:.0} × {:.0} mm", size.0, size.1);
        trying::ask(title, vec![Edit::Prop(Box::new(Prop { printed, ..prop.clone() }))])
    });
    let bought = BoxDef { printed: None, ..item.clone() };
    let bought = trying::ask(format!("Let {name} be bought"), vec![Edit::Box(Box::new(bought))]);
    trying::sound(facts, finding, larger.into_iter().chain([bought]))
}
