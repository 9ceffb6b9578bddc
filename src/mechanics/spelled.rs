//! Names and words that guests spell letter by letter.

/// The letters A to Z of a name, in capitals.
#[must_use]
pub fn letters(text: &str) -> Vec<char> {
    text.to_uppercase().chars().filter(char::is_ascii_uppercase).collect()
}

/// What a guest would spell of a name: what to call it, and the letters. The whole, its parts, and, where it is longer
/// than `wheels` letters, what is left when either end is cut.
#[must_use]
pub fn tries(word: &str, wheels: Option<usize>) -> Vec<(String, Vec<char>)> {
    let whole = letters(word);
    let mut tries = vec![(word.to_owned(), whole.clone())];
    let parts: Vec<&str> = word.split(|c: char| c.is_whitespace() || c == '-').filter(|p| !p.is_empty()).collect();
    if parts.len() > 1 {
        tries.extend(parts.iter().map(|part| (format!("{part} of {word}"), letters(part))));
    }
    if let Some(wheels) = wheels
        && whole.len() > wheels
    {
        let first = whole.iter().take(wheels).copied().collect();
        let last = whole.iter().skip(whole.len() - wheels).copied().collect();
        tries.push((format!("the first letters of {word}"), first));
        tries.push((format!("the last letters of {word}"), last));
    }
    tries
}
