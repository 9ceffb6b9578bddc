//! The strings inside RON text, found and replaced without touching the rest: comments and layout stay.

use std::ops::Range;

/// A string in RON text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Literal {
    /// The field that holds it, or that holds the list it stands in; empty at the top.
    pub field: String,
    /// What it says, without quoting.
    pub text: String,
    /// Where it stands in the RON text, quotation marks included.
    pub span: Range<usize>,
}

/// The strings of a RON text, in order. What is not RON answers those that can be made out.
#[must_use]
pub fn literals(ron: &str) -> Vec<Literal> {
    let mut found = Vec::new();
    // The field in force at each depth of brackets.
    let mut fields: Vec<String> = vec![String::new()];
    for (at, length, token) in tokens(ron) {
        let text = ron.get(at..at + length).unwrap_or_default();
        let here = || fields.last().cloned().unwrap_or_default();
        match token {
            Token::Quoted if !text.starts_with('\'') => {
                let says = raw(text).map_or_else(|| ron::from_str(text).unwrap_or_default(), |(text, _)| text);
                found.push(Literal { field: here(), text: says, span: at..at + length });
            }
            Token::Other if matches!(text, "(" | "[" | "{") => fields.push(here()),
            Token::Other if matches!(text, ")" | "]" | "}") && fields.len() > 1 => {
                fields.pop();
            }
            Token::Word if ron.get(at + length..).is_some_and(|rest| rest.trim_start().starts_with(':')) => {
                if let Some(field) = fields.last_mut() {
                    text.clone_into(field);
                }
            }
            _ => {}
        }
    }
    found
}

/// The fields of the outermost brackets of a RON text, each with where its value stands.
#[must_use]
pub fn fields(ron: &str) -> Vec<(String, Range<usize>)> {
    let mut found: Vec<(String, Range<usize>)> = Vec::new();
    let mut depth = 0_usize;
    // The field whose value is being read, and where its last written character ended.
    let mut open: Option<(String, usize, usize)> = None;
    let mut name = None;
    for (at, length, token) in tokens(ron) {
        let text = ron.get(at..at + length).unwrap_or_default();
        match token {
            Token::Blank => {}
            Token::Word if depth == 1 && open.is_none() => name = Some(text.to_owned()),
            Token::Other if text == ":" && depth == 1 && open.is_none() => {
                open = name.take().map(|name| (name, usize::MAX, at + length));
            }
            Token::Other if matches!(text, "," | ")") && depth == 1 => {
                found.extend(open.take().filter(|(_, start, _)| *start != usize::MAX).map(|(n, s, e)| (n, s..e)));
                depth -= usize::from(text == ")");
            }
            _ => {
                if let Some((_, start, end)) = &mut open {
                    *start = at.min(*start);
                    *end = at + length;
                }
                match text {
                    "(" | "[" | "{" => depth += 1,
                    ")" | "]" | "}" => depth = depth.saturating_sub(1),
                    _ => {}
                }
            }
        }
    }
    found
}

/// A RON text with a field of its outermost brackets set to `value`, which is RON as well. All else stays as it was.
#[must_use]
pub fn with_field(ron: &str, name: &str, value: &str) -> String {
    let known = fields(ron);
    if let Some((_, span)) = known.iter().find(|(known, _)| known == name) {
        let (before, after) = (ron.get(..span.start).unwrap_or_default(), ron.get(span.end..).unwrap_or_default());
        return format!("{before}{value}{after}");
    }
    let Some(close) = tokens(ron).filter(|(at, length, _)| ron.get(*at..at + length) == Some(")")).last() else {
        return ron.to_owned();
    };
    let (before, after) = ron.split_at(close.0);
    let Some((_, last)) = known.last() else {
        let open = tokens(ron).find(|(at, length, _)| ron.get(*at..at + length) == Some("("));
        let (open, rest) = before.split_at(open.map_or(0, |(at, length, _)| (at + length).min(before.len())));
        let comma = if rest.trim().is_empty() { "" } else { "," };
        return format!("{open}{name}: {value}{comma}{rest}{after}");
    };
    let comma = if before.get(last.end..).is_some_and(|rest| rest.trim_start().starts_with(',')) { "" } else { "," };
    let (upto, rest) = before.split_at(last.end);
    // On a line of its own where the others have one: as deep as they stand, and the bracket as it was.
    if let Some(indent) = indent(ron, last.start) {
        let tail = rest.trim_end();
        let space = rest.get(tail.len()..).unwrap_or_default();
        return format!("{upto}{comma}{tail}\n{indent}{name}: {value},{space}{after}");
    }
    format!("{upto}{comma}{} {name}: {value}{after}", rest.trim_end())
}

/// What stands before the field on the line of a value, if that is only blanks.
fn indent(ron: &str, value: usize) -> Option<&str> {
    let line = ron.get(..value)?.rsplit('\n').next()?;
    let blanks = line.len() - line.trim_start().len();
    let alone = line.get(blanks..)?.chars().all(|c| c.is_alphanumeric() || c == '_' || c == ':' || c == ' ');
    (alone && ron.get(..value)?.contains('\n')).then(|| line.get(..blanks)).flatten()
}

/// What a token is.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Token {
    /// Space or a comment.
    Blank,
    /// A name, a number's digits among it.
    Word,
    /// A string or a character.
    Quoted,
    /// Any other character, by itself.
    Other,
}

/// The tokens of a RON text: where each begins, its length in bytes, its kind. What is no RON is read as it comes.
pub(super) fn tokens(ron: &str) -> impl Iterator<Item = (usize, usize, Token)> {
    let mut at = 0;
    std::iter::from_fn(move || {
        let rest = ron.get(at..)?;
        let c = rest.chars().next()?;
        let (length, token) = if rest.starts_with("//") {
            (rest.find('\n').unwrap_or(rest.len()), Token::Blank)
        } else if let Some(inner) = rest.strip_prefix("/*") {
            (2 + inner.find("*/").map_or(inner.len(), |end| end + 2), Token::Blank)
        } else if let Some((_, length)) = raw(rest) {
            (length, Token::Quoted)
        } else if c == '"' {
            (quoted(rest), Token::Quoted)
        } else if c == '\'' {
            (character(rest), Token::Quoted)
        } else if c.is_alphanumeric() || c == '_' {
            (rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len()), Token::Word)
        } else if c.is_whitespace() {
            (c.len_utf8(), Token::Blank)
        } else {
            (c.len_utf8(), Token::Other)
        };
        let start = at;
        at += length;
        Some((start, length, token))
    })
}

/// The length of a character in quotes at the start of a text, such as `'"'` or `'\\''`.
fn character(rest: &str) -> usize {
    let after = if rest.starts_with("'\\") { 3 } else { 1 };
    rest.char_indices().find(|(at, c)| *at >= after && *c == '\'').map_or(1, |(end, _)| end + 1)
}

/// A raw string at the start of a text: what it says, and its length.
fn raw(rest: &str) -> Option<(String, usize)> {
    let after = rest.strip_prefix('r')?;
    let hashes = after.len() - after.trim_start_matches('#').len();
    let inner = after.get(hashes..)?.strip_prefix('"')?;
    let close = format!("\"{}", "#".repeat(hashes));
    let end = inner.find(&close)?;
    Some((inner.get(..end)?.to_owned(), 1 + hashes + 1 + end + close.len()))
}

/// The length of a quoted string at the start of a text.
fn quoted(rest: &str) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    rest.len()
}

/// RON text with some of its strings replaced, in the order in which they stand.
#[must_use]
pub fn splice(ron: &str, changed: &[(Literal, String)]) -> String {
    let mut out = String::new();
    let mut from = 0;
    for (literal, text) in changed {
        out.push_str(ron.get(from..literal.span.start).unwrap_or_default());
        out.push('"');
        out.push_str(&text.replace('\\', "\\\\").replace('"', "\\\"").replace('\n', "\\n"));
        out.push('"');
        from = literal.span.end;
    }
    out.push_str(ron.get(from..).unwrap_or_default());
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strings_are_found_with_their_fields() {
        let ron = r##"(a: "x", // "no"
            list: ["one \"two\"", r#"three "four""#], things: [(name: "n", sign: "owl"), (sign: 'c', n: 3)], /* "no" */ last: "z")"##;
        let found: Vec<(String, String)> = literals(ron).into_iter().map(|l| (l.field, l.text)).collect();
        let want = [
            ("a", "x"),
            ("list", "one \"two\""),
            ("list", "three \"four\""),
            ("name", "n"),
            ("sign", "owl"),
            ("last", "z"),
        ];
        assert_eq!(found, want.map(|(a, b)| (a.to_owned(), b.to_owned())));
    }

    #[test]
    fn a_replaced_string_leaves_the_rest_as_it_was() {
        let ron = "(a: \"owl\", /* owl */ b: 2, c: \"owl\")";
        let changed: Vec<(Literal, String)> =
            literals(ron).into_iter().filter(|l| l.field == "c").map(|l| (l, "a \"gull\"".to_owned())).collect();
        assert_eq!(splice(ron, &changed), "(a: \"owl\", /* owl */ b: 2, c: \"a \\\"gull\\\"\")");
        assert_eq!(splice(ron, &[]), ron);
    }

    #[test]
    fn a_field_is_set_and_the_rest_stays() {
        let lines = "(\n    a: \"x\", // first\n    list: [1, 2],\n    c: ')', // \")\"\n)";
        let names: Vec<(String, &str)> = fields(lines).into_iter().map(|(n, span)| (n, &lines[span])).collect();
        assert_eq!(names, [("a".into(), "\"x\""), ("list".into(), "[1, 2]"), ("c".into(), "')'")]);
        assert_eq!(with_field(lines, "list", "[]"), lines.replace("[1, 2]", "[]"));
        assert_eq!(
            with_field(lines, "d", "some(3)"),
            "(\n    a: \"x\", // first\n    list: [1, 2],\n    c: ')', // \")\"\n    d: some(3),\n)"
        );
        assert_eq!(with_field("(\n    a: 1\n)", "b", "2"), "(\n    a: 1,\n    b: 2,\n)");
        assert_eq!(with_field("(a: 1)", "b", "(x: 2)"), "(a: 1, b: (x: 2))");
        assert_eq!(with_field("(a: 1, )", "b", "2"), "(a: 1, b: 2)");
        assert_eq!(with_field("()", "b", "2"), "(b: 2)");
        assert_eq!(with_field("(a: (b: 1), c: 2)", "b", "3"), "(a: (b: 1), c: 2, b: 3)");
        assert_eq!(with_field("(a: -1.5)", "a", "2"), "(a: 2)");
    }

    #[test]
    fn broken_text_ends() {
        for text in ["(a: \"open", "r#\"open", "((([", "'", "/* open", "(a: '\"', b: \"x\")", "\u{e9}: \"\u{e9}"] {
            let _ = literals(text);
            let _ = with_field(text, "a", "1");
            let _ = with_field(text, "z", "1");
        }
    }
}
