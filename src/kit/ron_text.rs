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
    let mut at = 0;
    while let Some(c) = ron.get(at..).and_then(|rest| rest.chars().next()) {
        let rest = ron.get(at..).unwrap_or_default();
        let here = || fields.last().cloned().unwrap_or_default();
        if rest.starts_with("//") {
            at += rest.find('\n').unwrap_or(rest.len());
        } else if let Some(inner) = rest.strip_prefix("/*") {
            at += 2 + inner.find("*/").map_or(inner.len(), |end| end + 2);
        } else if let Some((text, length)) = raw(rest) {
            found.push(Literal { field: here(), text, span: at..at + length });
            at += length;
        } else if c == '"' {
            let length = quoted(rest);
            let text = ron::from_str(rest.get(..length).unwrap_or_default()).unwrap_or_default();
            found.push(Literal { field: here(), text, span: at..at + length });
            at += length;
        } else if c == '\'' {
            // A character such as '"' must not open a string.
            at += rest.char_indices().skip(1).find(|(_, c)| *c == '\'').map_or(1, |(end, _)| end + 1);
        } else if matches!(c, '(' | '[' | '{') {
            fields.push(here());
            at += 1;
        } else if matches!(c, ')' | ']' | '}') {
            if fields.len() > 1 {
                fields.pop();
            }
            at += 1;
        } else if c.is_alphabetic() || c == '_' {
            let length = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
            let named = rest.get(length..).is_some_and(|rest| rest.trim_start().starts_with(':'));
            if named && let Some(field) = fields.last_mut() {
                rest.get(..length).unwrap_or_default().clone_into(field);
            }
            at += length;
        } else {
            at += c.len_utf8();
        }
    }
    found
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
    fn broken_text_ends() {
        for text in ["(a: \"open", "r#\"open", "((([", "'", "/* open", "(a: '\"', b: \"x\")", "\u{e9}: \"\u{e9}"] {
            let _ = literals(text);
        }
    }
}
