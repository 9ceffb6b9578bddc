//! Reads the doc comments of this program's own types, so that `explain` and the code cannot part.

/// A type of a file format: its words and its fields or forms.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct TypeDoc {
    pub(super) name: String,
    pub(super) doc: String,
    pub(super) entries: Vec<EntryDoc>,
}

/// A field of a struct or a form of an enum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct EntryDoc {
    /// As written: `title: String`, `Digits(u8)`.
    pub(super) head: String,
    pub(super) doc: String,
    /// Whether it may be left out.
    pub(super) optional: bool,
}

/// The public structs and enums of a source text that are read from a file, in their order: with their entries, or, where
/// those are not the author's business, with their words alone.
pub(super) fn types(source: &str) -> Vec<TypeDoc> {
    let mut found: Vec<TypeDoc> = Vec::new();
    let mut doc = Vec::new();
    let mut attributes = String::new();
    let mut open: Option<TypeDoc> = None;
    let mut all_optional = false;
    for line in source.lines() {
        let text = line.trim();
        if let Some(words) = text.strip_prefix("///") {
            doc.push(words.strip_prefix(' ').unwrap_or(words));
            continue;
        }
        // Reasons for whoever works on the code.
        if text.starts_with("//") {
            continue;
        }
        if text.starts_with("#[") {
            attributes.push_str(text);
            continue;
        }
        match &mut open {
            Some(_) if line == "}" => {
                found.extend(open.take().filter(|item| !item.entries.is_empty() || !item.doc.is_empty()))
            }
            Some(item) => {
                // What a file never holds is no part of its format.
                if let Some(head) = entry_head(text).filter(|_| !attributes.contains("serde(skip)")) {
                    let optional = all_optional || attributes.contains("default");
                    item.entries.push(EntryDoc { head, doc: doc.join(" "), optional });
                }
            }
            None => {
                let name = text.strip_prefix("pub struct ").or_else(|| text.strip_prefix("pub enum "));
                // Only what is read from a file belongs to a format.
                let name = name.filter(|_| attributes.contains("Deserialize"));
                if let Some((name, _)) = name.and_then(|name| name.split_once('(')).filter(|_| text.ends_with(");")) {
                    found.push(TypeDoc { name: name.to_owned(), doc: doc.join(" "), entries: Vec::new() });
                } else if let Some(name) = name.filter(|name| name.ends_with(" {")) {
                    all_optional = attributes.contains("deny_unknown_fields, default");
                    let name = name.trim_end_matches(" {").to_owned();
                    open = Some(TypeDoc { name, doc: doc.join(" "), entries: Vec::new() });
                }
            }
        }
        if !text.is_empty() || open.is_none() {
            doc.clear();
            attributes.clear();
        }
    }
    found
}

/// A field or form as it is shown, of a line inside a type.
fn entry_head(line: &str) -> Option<String> {
    let line = line.strip_suffix(',')?;
    if let Some(field) = line.strip_prefix("pub ") {
        return Some(field.to_owned());
    }
    line.starts_with(|c: char| c.is_ascii_uppercase()).then(|| line.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_and_forms_are_found() {
        let source = "/// A thing.\n#[derive(Deserialize)]\npub struct Thing {\n    /// Its name\n    /// in full.\n    pub name: String,\n    /// Size.\n    #[serde(default)]\n    pub size: u8,\n}\n\n/// Not in a file.\npub struct Other {\n    /// X.\n    pub x: u8,\n}\n\n/// Kinds.\n#[derive(Deserialize)]\npub enum Kind {\n    /// One.\n    One(u8),\n}\n";
        let types = types(source);
        let names: Vec<&str> = types.iter().map(|item| item.name.as_str()).collect();
        assert_eq!(names, ["Thing", "Kind"]);
        assert_eq!(types[0].entries[0].doc, "Its name in full.");
        assert!(!types[0].entries[0].optional && types[0].entries[1].optional);
        assert_eq!(types[1].entries[0].head, "One(u8)");
        let own = super::types("/// Words.\n#[derive(Deserialize)]\npub struct Raw(Box<str>);\n");
        assert_eq!((own[0].name.as_str(), own[0].doc.as_str()), ("Raw", "Words."));
    }
}
