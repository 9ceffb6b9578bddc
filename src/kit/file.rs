//! Kit files: RON in, RON out, with errors that say where and what was meant.

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::meant::{Meant, forms, meant, named_before};
use super::ron_read::{offset, options, rest};
use super::{FORMAT, Kit, PLAYS_FORMAT, Plays};
use crate::diag::{Hinted, Trouble};
use crate::limits;

/// Reads RON text into a value. `name` is the file as the author knows it, for the message.
///
/// # Errors
/// Says line, column, what was found, and the nearest known name where a name was wrong.
pub fn from_ron<T: DeserializeOwned>(text: &str, name: &str) -> Hinted<T> {
    if text.len() as u64 > limits::RON_BYTES {
        return Err(Trouble::new(format!(
            "the file has {} bytes, more than the {} allowed",
            text.len(),
            limits::RON_BYTES
        ))
        .at(name)
        .hint("split the kit, or keep pictures in art/ rather than in the file"));
    }
    options().from_str(text).map_err(|error| explain::<T>(&error, text, name))
}

/// RON text of a value, in the layout that kit and theme files have.
///
/// # Errors
/// When the value cannot be written as RON, which no type of this program brings about.
pub fn to_ron<T: Serialize>(value: &T) -> Hinted<String> {
    let layout =
        ron::ser::PrettyConfig::new().depth_limit(limits::RON_DEPTH).escape_strings(false).compact_arrays(false);
    options()
        .to_string_pretty(value, layout)
        .map(|text| text + "\n")
        .map_err(|error| Trouble::new(format!("cannot write this as RON: {error}")))
}

/// Reads a kit file.
///
/// # Errors
/// As [`from_ron`]; when the file is of a newer format; and when the kit has more of anything than a kit can have.
pub fn read_kit(text: &str, name: &str) -> Hinted<Kit> {
    let head: Head = from_ron(text, name)?;
    if head.format > FORMAT {
        return Err(Trouble::new(format!(
            "the kit is of format {}, and this program reads up to {FORMAT}",
            head.format
        ))
        .at(name)
        .hint("open it with a newer Inklatch"));
    }
    if head.format == 0 {
        return Err(Trouble::new("the kit is of format 0, which never was")
            .at(name)
            .hint(format!("write format: {FORMAT}")));
    }
    let kit: Kit = from_ron(text, name)?;
    bounded(&kit).map_err(|trouble| trouble.at(name))?;
    Ok(kit)
}

/// Holds a kit to how many things it can have.
fn bounded(kit: &Kit) -> Hinted<()> {
    let lists = [
        ("puzzles", kit.puzzles.len(), limits::PUZZLES),
        ("notes", kit.notes.len(), limits::THINGS),
        ("spots", kit.spots.len(), limits::THINGS),
        ("boxes", kit.boxes.len(), limits::THINGS),
        ("locks", kit.locks.len(), limits::THINGS),
        ("props", kit.props.len(), limits::THINGS),
    ];
    match lists.into_iter().find(|(_, count, most)| count > most) {
        None => Ok(()),
        Some((list, count, most)) => {
            Err(Trouble::new(format!("`{list}` lists {count}, and a kit can have {most} at most"))
                .hint("make several kits of it, one for each party, or take out what was listed by mistake"))
        }
    }
}

/// Reads a file of plays.
///
/// # Errors
/// As [`from_ron`]; when the file is of a newer format; and when a play is beyond its bounds.
pub fn read_plays(text: &str, name: &str) -> Hinted<Plays> {
    let head: PlaysHead = from_ron(text, name)?;
    if head.format == 0 || head.format > PLAYS_FORMAT {
        return Err(Trouble::new(format!(
            "the plays are of format {}, and this program reads {PLAYS_FORMAT}",
            head.format
        ))
        .at(name)
        .hint("open them with a newer Inklatch, or mend the number"));
    }
    let plays: Plays = from_ron(text, name)?;
    plays.check().map_err(|trouble| trouble.at(name))?;
    Ok(plays)
}

/// The RON text of a kit.
///
/// # Errors
/// As [`to_ron`].
pub fn write_kit(kit: &Kit) -> Hinted<String> {
    to_ron(kit)
}

/// The RON text of a changed value in the layout of the text that is there, where `there` says `before`: what did not change
/// keeps its comments, blanks and order. Answers the plain text where the layout cannot be kept.
///
/// # Errors
/// As [`to_ron`].
pub fn rewrite<T: Serialize + DeserializeOwned + PartialEq>(there: &str, before: &T, after: &T) -> Hinted<String> {
    let (old, new) = (to_ron(before)?, to_ron(after)?);
    let kept = super::ron_merge::merged(there, &old, &new);
    // Read back, so that no mistake of the layout can become one of the value.
    let same = |text: &String| from_ron::<T>(text, "").is_ok_and(|read| to_ron(&read).is_ok_and(|text| text == new));
    Ok(kept.filter(same).unwrap_or(new))
}

/// The one field that says how to read the others.
#[derive(serde::Deserialize)]
struct Head {
    format: u32,
}

/// The same of a file of plays; the plays are passed over.
#[derive(serde::Deserialize)]
struct PlaysHead {
    format: u32,
}

/// Turns a RON error into a [`Trouble`] with line, column and, where a name was wrong, the nearest known one.
fn explain<T: DeserializeOwned>(error: &ron::error::SpannedError, text: &str, name: &str) -> Trouble {
    use ron::Error as E;
    let at = error.span.start;
    let place = format!("{name}:{}:{}", at.line, at.col);
    if text.trim().is_empty() {
        return Trouble::new("the file is empty")
            .at(place)
            .hint("take it from a backup, or begin anew: `inklatch new FOLDER`");
    }
    let mut trouble = Trouble::new(plain(&error.code)).at(place);
    match &error.code {
        E::NoSuchStructField { expected, found, .. } | E::NoSuchEnumVariant { expected, found, .. } => {
            trouble.message = format!("there is no `{found}` here");
            if let Some(near) = nearest(found, expected) {
                trouble = trouble.hint(format!("did you mean `{near}`?"));
            }
            let forms = match &error.code {
                E::NoSuchEnumVariant { .. } => forms::<T>(text, offset(text, at), expected),
                _ => None,
            };
            let all = forms.map_or_else(|| expected.join(", "), |forms| forms.join(", "));
            trouble = trouble.hint(format!("what can stand here: {all}"));
        }
        E::MissingStructField { field, .. } => {
            trouble.message = format!("the field `{field}` is missing");
            trouble = trouble.hint(format!("add `{field}: …` inside the brackets that end here"));
        }
        E::ExpectedIdentifier | E::SuggestRawIdentifier(_) if !rest(text, at).trim().is_empty() => {
            trouble = misplaced(trouble, meant::<T>(text, offset(text, at)), rest(text, at));
        }
        E::ExpectedStructLike | E::ExpectedNamedStructLike(_) | E::ExpectedComma
            if let Some((word, forms)) = named_before::<T>(text, offset(text, at)) =>
        {
            trouble.message = format!("`{word}` is not written like this");
            trouble = trouble.hint(format!("write {}", forms.join(" or ")));
        }
        code => {
            let open = matches!(
                code,
                E::Eof | E::ExpectedStringEnd | E::ExpectedArrayEnd | E::ExpectedMapEnd | E::ExpectedStructLikeEnd
            );
            // A file that is cut short inside a name or a number fails in many ways, all of them at its very end.
            if open || rest(text, error.span.end).trim().is_empty() {
                trouble.message = format!("the file ends or breaks off here: {}", plain(code));
                trouble = trouble.hint("look for a bracket or a quotation mark that is never closed; if the file was cut short, take it from a backup");
            }
            if let Some(hint) = wanted(code) {
                trouble = trouble.hint(hint);
            }
        }
    }
    if trouble.hints.is_empty() {
        trouble = trouble
            .hint(format!("`inklatch explain {}` says what each field holds and how it is written", about(name)));
    }
    trouble
}

/// A value that cannot stand where it does.
fn misplaced(mut trouble: Trouble, meant: Option<Meant>, found: &str) -> Trouble {
    // A text in quotation marks whole, anything else up to the next comma or bracket.
    let end = match found.strip_prefix('"').and_then(|inner| inner.find('"')) {
        Some(end) => end + 2,
        None => found.char_indices().skip(1).find(|(_, c)| ",()[]{}\n".contains(*c)).map_or(found.len(), |(at, _)| at),
    };
    let found: String = found.get(..end).unwrap_or_default().chars().take(FOUND).collect();
    match meant {
        Some(Meant::Values(values)) => {
            trouble.message = format!("this is no value that can stand here: {}", found.trim_end());
            trouble.hint(format!("write {}", values.join(" or ")))
        }
        Some(Meant::Fields(fields)) => {
            trouble.message = "a field belongs here: its name, a colon, its value".into();
            if found.starts_with('(') {
                trouble = trouble.hint("there is one bracket too many: take it out, and the one that closes it");
            }
            trouble.hint(format!("what can stand here: {}", fields.join(", ")))
        }
        None => {
            trouble.message = format!("a name belongs here, without quotation marks, and not {}", found.trim_end());
            trouble
        }
    }
}

/// Characters of a wrong value that are shown.
const FOUND: usize = 40;

/// Letters from which on a wrong name is looked for as a part of the right one: more than so many.
const PART: usize = 3;

/// What `explain` calls the file of this name; a setup is explained with its mechanic.
fn about(name: &str) -> &str {
    match name.rsplit(['/', '\\']).next().unwrap_or(name) {
        "theme.ron" => "theme",
        "plays.ron" => "plays",
        "setup" => "MECHANIC (for MECHANIC its own name, as under `mechanic:`)",
        _ => "kit",
    }
}

/// What a RON error says, without the names that types have in this program.
fn plain(code: &ron::Error) -> String {
    use ron::Error as E;
    match code {
        E::ExpectedNamedStructLike(_) | E::ExpectedStructLike => "fields in round brackets are expected".to_owned(),
        E::ExpectedDifferentStructName { found, .. } => {
            format!("fields in round brackets are expected, and `{found}` was found")
        }
        code => code.to_string(),
    }
}

/// What belongs in the place where something else was found.
const fn wanted(code: &ron::Error) -> Option<&'static str> {
    use ron::Error as E;
    Some(match code {
        E::ExpectedComma => "put a comma between this entry and the one before it",
        E::ExpectedInteger => "a whole number belongs here, without quotation marks: 60",
        E::ExpectedFloat => "a number belongs here, without quotation marks: 62.5",
        E::ExpectedBoolean => "write true or false, without quotation marks",
        E::ExpectedString => "a text belongs here, in quotation marks: \"like this\"",
        E::ExpectedArray => "a list belongs here, in square brackets: [a, b, c]",
        E::ExpectedMap => "a list of names and values belongs here, in braces: { \"name\": value }",
        E::ExpectedStructLike | E::ExpectedNamedStructLike(_) => "fields belong here, in round brackets: (name: value)",
        E::ExpectedMapColon => "put a colon between the name and its value",
        E::ExpectedStructLikeEnd => "a comma and the next field, or the bracket `)` that ends them, belongs here",
        E::ExpectedArrayEnd => "a comma and the next entry, or the bracket `]` that ends the list, belongs here",
        E::ExpectedMapEnd => "a comma and the next entry, or the brace `}` that ends them, belongs here",
        E::IntegerOutOfBounds => "the number is too large for this field, or below 0",
        E::InvalidEscape(_) => "write \\\\ for a backslash, or put the text between r#\" and \"#",
        E::ExpectedUnit => "write the name alone, without brackets after it",
        E::ExpectedRawValue => "a setup belongs here, in round brackets: (field: value)",
        E::UnclosedBlockComment => "close the comment by */",
        E::TrailingCharacters => {
            "the file goes on after its last bracket: take out a bracket that closes too early, or what follows"
        }
        E::ExpectedOption => "write the value itself, or leave the field out",
        _ => return None,
    })
}

/// The known name nearest to a wrong one, if any is near enough to be meant.
#[must_use]
pub fn nearest<'a>(found: &str, known: &[&'a str]) -> Option<&'a str> {
    // A name of which the wrong one is a whole part, such as `chest-place` for `chest`, unless one is a slip away.
    let part = |name: &&&str| found.chars().count() > PART && name.split('-').any(|part| part == found);
    let slip = known.iter().any(|name| strsim::damerau_levenshtein(found, name) == 1);
    if let Some(name) = known.iter().find(part).filter(|_| !slip) {
        return Some(name);
    }
    known
        .iter()
        .map(|name| (strsim::damerau_levenshtein(&found.to_lowercase(), &name.to_lowercase()), *name))
        .filter(|(distance, name)| *distance <= name.len().max(3) / 3 + 1)
        .min()
        .map(|(_, name)| name)
}
