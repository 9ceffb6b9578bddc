//! Forms of English words: articles, plurals, capitals.

use crate::kit::WordForms;

/// "a" or "an" for a word: the author's choice, or by the first letter.
#[must_use]
pub fn article(forms: &WordForms) -> &str {
    if !forms.article.is_empty() {
        return &forms.article;
    }
    let vowel = forms.one.chars().next().is_some_and(|c| "aeiouAEIOU".contains(c));
    if vowel { "an" } else { "a" }
}

/// Things that are several already, by the last word of their name.
const SEVERAL: &[&str] = &[
    "oars",
    "spectacles",
    "glasses",
    "scissors",
    "shears",
    "tongs",
    "pliers",
    "bellows",
    "trousers",
    "goggles",
    "scales",
    "binoculars",
    "stairs",
    "skis",
];

/// Plurals that follow no ending: the end of the word, and what stands there for several.
const UNEVEN: &[(&str, &str)] = &[
    ("leaf", "leaves"),
    ("loaf", "loaves"),
    ("scarf", "scarves"),
    ("wolf", "wolves"),
    ("calf", "calves"),
    ("half", "halves"),
    ("shelf", "shelves"),
    ("knife", "knives"),
    ("thief", "thieves"),
    ("mouse", "mice"),
    ("tooth", "teeth"),
    ("foot", "feet"),
    ("woman", "women"),
    ("snowman", "snowmen"),
    ("fisherman", "fishermen"),
    ("ferryman", "ferrymen"),
    ("child", "children"),
    ("fish", "fish"),
    ("sheep", "sheep"),
];

/// Plurals of whole words whose letters end other words as well.
const WHOLE: &[(&str, &str)] = &[("die", "dice"), ("goose", "geese"), ("man", "men"), ("ox", "oxen"), ("elf", "elves")];

/// Whether a name is that of several things already: "oars", "a pair" of which is one.
#[must_use]
pub fn several_already(name: &str) -> bool {
    let last = name.rsplit([' ', '-']).next().unwrap_or_default().to_lowercase();
    SEVERAL.contains(&last.as_str())
}

/// The plural: the author's, or by the common endings of English spelling.
#[must_use]
pub fn plural(forms: &WordForms) -> String {
    if !forms.many.is_empty() {
        return forms.many.clone();
    }
    let one = &forms.one;
    if several_already(one) {
        return one.clone();
    }
    let last = one.rsplit([' ', '-']).next().unwrap_or_default();
    let whole = WHOLE.iter().find(|(end, _)| last == *end);
    if let Some((end, many)) = whole.or_else(|| UNEVEN.iter().find(|(end, _)| last.ends_with(end))) {
        return format!("{}{many}", one.strip_suffix(end).unwrap_or_default());
    }
    let hissing = ["s", "x", "z", "ch", "sh"].iter().any(|end| one.ends_with(end));
    match one.strip_suffix('y') {
        Some(stem) if !stem.ends_with(['a', 'e', 'i', 'o', 'u']) => format!("{stem}ies"),
        _ if hissing => format!("{one}es"),
        _ => format!("{one}s"),
    }
}

/// The text with its first letter as a capital: a name at the start of a sentence.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map(|first| first.to_uppercase().chain(chars).collect()).unwrap_or_default()
}

/// Words that stay small inside a title.
const SMALL: &[&str] = &["a", "an", "and", "at", "by", "for", "from", "in", "of", "on", "or", "the", "to", "with"];

/// The text with a capital for each word, as in titles and names: "Hour Drum", "Bird of the Bay".
#[must_use]
pub fn title_case(text: &str) -> String {
    let words = text.split(' ').enumerate();
    let cased = words.map(|(at, word)| if at > 0 && SMALL.contains(&word) { word.to_owned() } else { capital(word) });
    cased.collect::<Vec<_>>().join(" ")
}

/// Straight quotation marks and apostrophes as they are printed. After a digit they stay: there they are inches
/// and feet.
#[must_use]
pub fn typographic(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        let before = out.chars().next_back();
        let opens = before.is_none_or(|b| b.is_whitespace() || matches!(b, '(' | '[' | '“' | '‘' | '–' | '—'));
        let digit = before.is_some_and(|b| b.is_ascii_digit());
        out.push(match c {
            '"' | '\'' if digit => c,
            '"' if opens => '“',
            '"' => '”',
            '\'' if opens => '‘',
            '\'' => '’',
            c => c,
        });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plurals_are_those_of_a_dictionary() {
        // From the entries of common English dictionaries, from memory.
        let pairs = [
            ("falling leaf", "falling leaves"),
            ("starfish", "starfish"),
            ("die", "dice"),
            ("pie", "pies"),
            ("oars", "oars"),
            ("scissors", "scissors"),
            ("compass", "compasses"),
            ("brush", "brushes"),
            ("cherry", "cherries"),
            ("key", "keys"),
            ("snowman", "snowmen"),
            ("bookshelf", "bookshelves"),
            ("reef", "reefs"),
        ];
        for (one, many) in pairs {
            assert_eq!(plural(&WordForms { one: one.into(), ..WordForms::default() }), many);
        }
    }

    #[test]
    fn titles_have_capitals_but_for_small_words() {
        assert_eq!(title_case("hour drum"), "Hour Drum");
        assert_eq!(title_case("the bird of the bay"), "The Bird of the Bay");
        assert_eq!(title_case(""), "");
    }

    #[test]
    fn quotation_marks_are_typographic() {
        assert_eq!(typographic("the \"odd\" winder's 3/4\" bolt"), "the “odd” winder’s 3/4\" bolt");
    }
}
