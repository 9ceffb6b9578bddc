//! The fields of a setup, as they stand in its text: each can be changed while all else stays as the author wrote it.

use std::ops::Range;

use super::RawSetup;
use super::ron_text::{fields, with_field};

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
        let has_fields = ron.starts_with('(') || !fields(ron).is_empty();
        has_fields.then(|| Self::new(&with_field(ron, name, value)).ok())?
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
