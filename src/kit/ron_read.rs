//! How RON is read here, and where in a text its errors lie.

use ron::extensions::Extensions;

use crate::limits;

/// The dialect of kit files, themes and setups.
pub(super) fn options() -> ron::Options {
    ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME | Extensions::UNWRAP_NEWTYPES)
        .with_recursion_limit(limits::RON_DEPTH)
}

/// The byte at which a position of a text lies.
pub(super) fn offset(text: &str, at: ron::error::Position) -> usize {
    text.len() - rest(text, at).len()
}

/// What follows a position of a text.
pub(super) fn rest(text: &str, at: ron::error::Position) -> &str {
    let lines: usize = text.split_inclusive('\n').take(at.line.saturating_sub(1)).map(str::len).sum();
    let text = text.get(lines..).unwrap_or_default();
    let column = text.char_indices().nth(at.col.saturating_sub(1)).map_or(text.len(), |(byte, _)| byte);
    text.get(column..).unwrap_or_default()
}
