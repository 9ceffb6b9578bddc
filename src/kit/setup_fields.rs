use std::ops::Range;

use super::RawSetup;

/// The fields of a setup, as they stand in its text: name, and where the value is.
///
/// Only the outermost brackets are looked into, so that a field can be changed while all else, comments too, stays as
/// the author wrote it.
fn fields(ron: &str) -> Vec<(String, Range<usize>)> {
    let mut found = Vec::new();
    let mut scan = Scan { ron, at: 0 };
    if scan.next_sign().map(|(_, sign)| sign) != Some('(') {
        return found;
    }
    while let Some(name) = scan.name() {
        let Some((_, ':')) = scan.next_sign() else { break };
        let Some(value) = scan.value() else { break };
        found.push((name, value));
    }
    found
}

impl RawSetup {
    /// The value of a field, as it is written; none when it is left out.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&str> {
        let (_, range) = fields(self.ron()).into_iter().find(|(field, _)| field == name)?;
        self.ron().get(range).map(str::trim)
    }

    /// The names of the fields that are written.
    #[must_use]
    pub fn field_names(&self) -> Vec<String> {
        fields(self.ron()).into_iter().map(|(name, _)| name).collect()
    }

    /// The same setup with another value of a field, in RON; none when that makes no RON.
    #[must_use]
    pub fn with_field(&self, name: &str, value: &str) -> Option<Self> {
        let ron = self.ron();
        let text = match fields(ron).into_iter().find(|(field, _)| field == name) {
            Some((_, range)) => format!("{}{value}{}", ron.get(..range.start)?, ron.get(range.end..)?),
            None => {
                let rest = ron.strip_prefix('(')?;
                let comma = if rest.trim_start().starts_with(')') { "" } else { ", " };
                format!("({name}: {value}{comma}{rest}")
            }
        };
        Self::new(&text).ok()
    }

    /// The same setup with another name for a field; none when it is not there.
    #[must_use]
    pub fn renamed(&self, name: &str, new: &str) -> Option<Self> {
        let key = self.key(name)?;
        Self::new(&format!("{}{new}{}", self.ron().get(..key.start)?, self.ron().get(key.end..)?)).ok()
    }

    /// The same setup without a field; none when it is not there.
    #[must_use]
    pub fn without_field(&self, name: &str) -> Option<Self> {
        let ron = self.ron();
        let start = self.key(name)?.start;
        let (_, value) = fields(ron).into_iter().find(|(field, _)| field == name)?;
        let rest = ron.get(value.end..)?;
        let rest = rest.trim_start().strip_prefix(',').unwrap_or(rest);
        Self::new(&format!("{}{rest}", ron.get(..start)?)).ok()
    }

    /// Where the name of a field stands: the last time before its value.
    fn key(&self, name: &str) -> Option<Range<usize>> {
        let (_, value) = fields(self.ron()).into_iter().find(|(field, _)| field == name)?;
        let start = self.ron().get(..value.start)?.rfind(name)?;
        Some(start..start + name.len())
    }
}

/// A place in RON text.
struct Scan<'a> {
    ron: &'a str,
    at: usize,
}

impl Scan<'_> {
    fn rest(&self) -> &str {
        self.ron.get(self.at..).unwrap_or_default()
    }

    /// Steps over air and comments.
    fn skip(&mut self) {
        loop {
            let rest = self.rest();
            let air = rest.len() - rest.trim_start().len();
            let rest = rest.trim_start();
            let comment = if rest.starts_with("//") {
                rest.find('\n').unwrap_or(rest.len())
            } else if rest.starts_with("/*") {
                rest.find("*/").map_or(rest.len(), |end| end + 2)
            } else {
                0
            };
            self.at += air + comment;
            if air + comment == 0 {
                return;
            }
        }
    }

    /// The next sign and where it stands; it is stepped over.
    fn next_sign(&mut self) -> Option<(usize, char)> {
        self.skip();
        let sign = self.rest().chars().next()?;
        let at = self.at;
        self.at += sign.len_utf8();
        Some((at, sign))
    }

    /// The name of a field, after a comma or the opening bracket.
    fn name(&mut self) -> Option<String> {
        self.skip();
        if self.rest().starts_with(',') {
            self.at += 1;
            self.skip();
        }
        let name: String = self.rest().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
        self.at += name.len();
        (!name.is_empty()).then_some(name)
    }

    /// The value up to the comma or bracket that ends it.
    fn value(&mut self) -> Option<Range<usize>> {
        self.skip();
        let start = self.at;
        let mut end = start;
        let mut depth = 0_usize;
        loop {
            self.skip();
            let rest = self.rest();
            let quoted = quoted(rest);
            if quoted > 0 {
                self.at += quoted;
                end = self.at;
                continue;
            }
            match rest.chars().next()? {
                '(' | '[' | '{' => depth += 1,
                ')' | ']' | '}' if depth == 0 => return Some(start..end),
                ')' | ']' | '}' => depth -= 1,
                ',' if depth == 0 => return Some(start..end),
                _ => {}
            }
            self.at += rest.chars().next()?.len_utf8();
            end = self.at;
        }
    }
}

/// The length of the string or character with which a text begins; 0 when it begins with neither.
fn quoted(text: &str) -> usize {
    let hashes = text.strip_prefix('r').map_or(0, |raw| raw.len() - raw.trim_start_matches('#').len());
    if let Some(raw) = text.strip_prefix('r').and_then(|raw| raw.get(hashes..)?.strip_prefix('"')) {
        let close = format!("\"{}", "#".repeat(hashes));
        return raw.find(&close).map_or(text.len(), |end| 2 + hashes + end + close.len());
    }
    let Some(quote) = text.chars().next().filter(|c| matches!(c, '"' | '\'')) else { return 0 };
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            c if c == quote => return at + 1,
            _ => {}
        }
    }
    text.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_field_is_changed_and_nothing_else() {
        let text = "(\n    word: \"a, (b: ) \\\" c\", // not: this\n    list: [(name: \"x\", page: 4), (name: r#\"y\"#)],\n    flag: false,\n)";
        let setup = RawSetup::new(text).unwrap();
        assert_eq!(setup.field_names(), ["word", "list", "flag"]);
        assert_eq!(setup.field("flag"), Some("false"));
        assert_eq!(setup.field("list"), Some("[(name: \"x\", page: 4), (name: r#\"y\"#)]"));
        assert_eq!(setup.field("name"), None);
        let changed = setup.with_field("flag", "true").unwrap();
        assert_eq!(changed.ron(), text.replace("flag: false", "flag: true"));
        let added = setup.with_field("more", "Two").unwrap();
        assert_eq!(added.field("more"), Some("Two"));
        assert_eq!(added.field("word"), setup.field("word"));
        let empty = RawSetup::new("()").unwrap();
        assert_eq!(empty.with_field("flag", "true").unwrap().ron(), "(flag: true)");
        assert_eq!(RawSetup::new("[1, 2]").unwrap().field_names(), [""; 0]);
    }
}
