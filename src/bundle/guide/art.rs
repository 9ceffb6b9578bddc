//! What the theme draws on the guide's first page: the head of its letter with the title in it, and the foot.

use serde::Serialize;

use super::Source;
use crate::diag::Hinted;
use crate::face::Frame;
use crate::units::Rect;

/// The drawings of the first page.
#[derive(Clone, Debug, Serialize)]
pub(super) struct FirstPage {
    head: Option<Drawn>,
    foot: Option<Drawn>,
}

/// A frame of the theme, in millimetres.
#[derive(Clone, Debug, Serialize)]
struct Drawn {
    svg: String,
    w: f64,
    h: f64,
    /// Where its title goes, from the left and the top, and how wide and high that is; none of a foot.
    title: Option<Rect>,
}

/// The theme's head and foot of a letter, where it has them.
///
/// # Errors
/// When a frame cannot be read.
pub(super) fn first_page(source: &Source<'_>) -> Hinted<FirstPage> {
    let drawn = |name: &str| -> Hinted<Option<Drawn>> {
        let Some(svg) = source.opened.theme.frame(name) else { return Ok(None) };
        let frame = Frame::read(svg, &source.party.palette).map_err(|trouble| trouble.at(format!("frame {name}")))?;
        let title = frame.slot("title");
        Ok(Some(Drawn { svg: frame.svg.to_string(), w: frame.size.w.get(), h: frame.size.h.get(), title }))
    };
    // A head without a place for a title has none for ours.
    let head = drawn("letterhead")?.filter(|head| head.title.is_some());
    Ok(FirstPage { head, foot: drawn("letterfoot")? })
}
