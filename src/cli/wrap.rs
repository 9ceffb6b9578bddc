//! Text in lines.

/// The words of a text in lines of fewer than `width` characters, where no word is longer.
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.is_empty() || line.chars().count() + word.chars().count() < width => {
                if !line.is_empty() {
                    line.push(' ');
                }
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines.retain(|line| !line.is_empty());
    lines
}
