//! What may have been meant where a file holds a value that cannot stand there. The reader itself is asked: it is given
//! a name that nobody has, and says which names there are.

use ron::Error as E;
use serde::de::DeserializeOwned;

use super::ron_read::{offset, options};
use super::ron_text::{Token, tokens};

/// A name that nothing has.
const NOBODY: &str = "zzz_nobody";
/// Names that are tried; of more, none is shown with what it holds.
const TRIED: usize = 16;

/// What belongs in a place of a file.
pub(super) enum Meant {
    /// One of these values, each as it is written, with what was found made part of it where it can be.
    Values(Vec<String>),
    /// A field of this list, with its name before it.
    Fields(Vec<&'static str>),
}

/// What belongs at byte `at` of a text that is read as a `T`; none where the reader does not say.
pub(super) fn meant<T: DeserializeOwned>(text: &str, at: usize) -> Option<Meant> {
    let (before, token, after) = parted(text, at)?;
    match error_of::<T>(&format!("{before}{NOBODY}{after}")) {
        Some(E::NoSuchEnumVariant { expected, .. }) => return Some(Meant::Values(forms::<T>(text, at, expected)?)),
        Some(E::NoSuchStructField { expected, .. }) => return Some(Meant::Fields(expected.to_vec())),
        _ => {}
    }
    match error_of::<T>(&format!("{before}{NOBODY}: {token}{after}")) {
        Some(E::NoSuchStructField { expected, .. }) => Some(Meant::Fields(expected.to_vec())),
        _ => None,
    }
}

/// The names that can stand in the place of the token at byte `at`, each with what it holds, as it is written; none where
/// what follows belongs to the token.
pub(super) fn forms<T: DeserializeOwned>(text: &str, at: usize, names: &[&str]) -> Option<Vec<String>> {
    let (before, token, after) = parted(text, at)?;
    if after.trim_start().starts_with('(') || names.len() > TRIED {
        return None;
    }
    let quoted = if token.starts_with('"') { token.to_owned() } else { format!("\"{token}\"") };
    let taken = |form: &str| {
        let whole = format!("{before}{form}{after}");
        match options().from_str::<T>(&whole) {
            Ok(_) => true,
            Err(error) => offset(&whole, error.span.start) > at + form.len(),
        }
    };
    let form = |name: &&str| {
        let inside = [quoted.as_str(), "3", "[\"ABDHLMPSTW\"]", "\"name\", \"part\""];
        let forms = inside.iter().map(|inside| format!("{name}({inside})"));
        std::iter::once((*name).to_owned())
            .chain(forms)
            .find(|form| taken(form))
            .unwrap_or_else(|| format!("{name}(…)"))
    };
    Some(names.iter().map(form).collect())
}

/// The value's name right before byte `at`, with what it holds or without, as each such value is written; none where no
/// such name stands there: `Directions` that lacks its number, `Spoken(4)` that takes none.
pub(super) fn named_before<T: DeserializeOwned>(text: &str, at: usize) -> Option<(&str, Vec<String>)> {
    let (start, length, kind) = tokens(text).take_while(|(start, length, _)| start + length <= at).last()?;
    let word = text.get(start..start + length).filter(|_| kind == Token::Word)?;
    // What follows in brackets is left out, so that the forms can be tried in its place.
    let after = text.get(at..)?;
    let without = match after.strip_prefix('(').and_then(|inner| inner.split_once(')')) {
        Some((_, after)) => format!("{}{word}{after}", text.get(..start)?),
        None => text.to_owned(),
    };
    match meant::<T>(&without, start)? {
        Meant::Values(forms) if forms.iter().any(|form| form.split('(').next() == Some(word)) => {
            let own = forms.into_iter().filter(|form| form.split('(').next() == Some(word));
            Some((word, own.collect()))
        }
        Meant::Values(_) | Meant::Fields(_) => None,
    }
}

/// A text, parted before and behind the token at byte `at`.
fn parted(text: &str, at: usize) -> Option<(&str, &str, &str)> {
    let (_, length, kind) = tokens(text).find(|(start, _, _)| *start == at)?;
    (kind != Token::Blank).then_some(())?;
    Some((text.get(..at)?, text.get(at..at + length)?, text.get(at + length..)?))
}

fn error_of<T: DeserializeOwned>(text: &str) -> Option<E> {
    options().from_str::<T>(text).err().map(|error| error.code)
}
