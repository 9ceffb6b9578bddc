use std::collections::BTreeMap;

use super::{Draft, Facts, Fix, FixKind, Sink};
use crate::diag::Anchor;
use crate::kit::edit::Edit;
use crate::theme::{Colour, Palette};

check!(
    /// ## What it does
    /// Flags a text whose colour stands out too little from the paper: a ratio below 4.5, or below 3 for text of 18
    /// points and more (WCAG 2.2, success criterion 1.4.3).
    ///
    /// ## Why it matters at the table
    /// It is read by lamplight and by tired eyes, and a grey printer makes it fainter still.
    ///
    /// ## How to mend
    /// Choose a darker colour for the role, or a lighter paper.
    LowContrast, "low-contrast", Warns, "a text that stands out too little from the paper",
    "it is read by lamplight, and a grey printer makes it fainter still", run
);

/// Least ratios (WCAG 2.2, 1.4.3): of text, and of large text.
const LEAST: (f64, f64) = (4.5, 3.0);
/// Large text, in points (WCAG 2.2, definition of large scale).
const LARGE: f64 = 18.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let paper = facts.party.palette.get("paper");
    let mut least: BTreeMap<Colour, f64> = BTreeMap::new();
    // The letter has no piece here; it is set in this colour.
    least.insert(facts.party.palette.get("ink"), LEAST.0);
    for piece in &facts.party.pieces {
        for run in piece.front.runs().chain(piece.back.iter().flat_map(|face| face.runs())) {
            let wanted = if run.least.get() >= LARGE { LEAST.1 } else { LEAST.0 };
            let known = least.entry(run.ink).or_insert(wanted);
            *known = known.max(wanted);
        }
    }
    for (ink, least) in least {
        let ratio = ink.contrast(paper);
        if ratio < least {
            let role = facts.party.palette.iter().find(|(_, colour)| *colour == ink).map_or("ink", |(role, _)| role);
            let message = format!("{role} {ink} on paper {paper} has a ratio of {ratio:.2}, below {least}");
            let draft = Draft::new(Anchor::Palette(role.to_owned()), message);
            let draft = draft.help("choose a darker colour, or a lighter paper");
            sink.add(match theme_colours(facts, role, least) {
                Some(fix) => draft.with(fix),
                None => draft,
            });
        }
    }
}

/// The theme's own ink and paper in place of the kit's, where those stand out enough.
fn theme_colours(facts: &Facts<'_>, role: &str, least: f64) -> Option<Fix> {
    let mut look = facts.kit.look.clone();
    let own = look.palette.remove(role).is_some();
    let own = look.palette.remove("paper").is_some() || own;
    let palette = Palette::new(&facts.theme.theme.palette, &look.palette).ok().filter(|_| own)?;
    let title = "Take the theme's own colours".to_owned();
    (palette.get(role).contrast(palette.get("paper")) >= least)
        .then(|| Fix { title, kind: FixKind::Ask, edits: vec![Edit::Look(Box::new(look))] })
}
