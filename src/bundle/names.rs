use std::collections::BTreeMap;

use crate::face::Piece;
use crate::ids::slug;
use crate::kit::{Kit, LockKind};

/// Answers shorter than this stand in names by accident too often to be told from chance.
const LEAST_ANSWER: usize = 3;

/// File names of pieces by their ids: the puzzle with what the piece is called everywhere, else the id; or a number where
/// that would tell an answer.
pub(super) fn piece_names<'a>(kit: &Kit, pieces: impl Iterator<Item = &'a Piece>) -> BTreeMap<String, String> {
    let answers: Vec<String> = answers(kit);
    let known: BTreeMap<&str, &Piece> = pieces.map(|piece| (piece.id.as_str(), piece)).collect();
    let called: BTreeMap<&str, String> = called(kit, &known);
    let mut taken: std::collections::BTreeSet<String> = called.values().cloned().collect();
    let mut names = BTreeMap::new();
    let mut used = std::collections::BTreeSet::new();
    for (index, (id, plain)) in called.into_iter().enumerate() {
        let telling = tells(&plain, &answers);
        let name = if telling || !used.insert(plain.clone()) {
            let mut number = index + 1;
            // A kit may call a piece "piece-7" itself.
            while !taken.insert(format!("piece-{number}")) {
                number += 1;
            }
            format!("piece-{number}")
        } else {
            plain
        };
        names.insert(id.to_owned(), name);
    }
    names
}

/// What each piece's file is called. Those of one name are told apart by the number at the end of their ids, else by what
/// their labels say of each.
fn called<'a>(kit: &Kit, pieces: &BTreeMap<&'a str, &Piece>) -> BTreeMap<&'a str, String> {
    let name = |piece: &Piece| {
        let of_puzzle = kit.puzzles.iter().any(|puzzle| puzzle.id.as_str() == piece.group);
        let name = piece.label.split(':').next().unwrap_or_default();
        if of_puzzle && !piece.part.is_empty() { slug(&format!("{} {name}", piece.group)) } else { slug(&piece.id) }
    };
    let plain: BTreeMap<&str, String> = pieces.iter().map(|(id, piece)| (*id, name(piece))).collect();
    let apart = pieces.iter().zip(plain.values()).map(|((id, piece), name)| {
        if plain.values().filter(|other| *other == name).count() < 2 {
            return (*id, name.clone());
        }
        let number = id.rsplit('-').next().filter(|end| end.chars().all(|c| c.is_ascii_digit()));
        let of = number.or_else(|| Some(piece.label.split_once(':')?.1)).unwrap_or(id);
        (*id, slug(&format!("{name} {of}")))
    });
    apart.collect()
}

/// What must not stand in a name for guests: each answer as it would look in one.
fn answers(kit: &Kit) -> Vec<String> {
    let mut found: Vec<String> = kit
        .puzzles
        .iter()
        // The answer to a key lock is a place of the room, which pieces may be named after.
        .filter(|puzzle| kit.lock(&puzzle.opens).is_none_or(|lock| lock.kind != LockKind::Key))
        .map(|puzzle| squeeze(&puzzle.answer))
        .filter(|answer| answer.chars().count() >= LEAST_ANSWER)
        .collect();
    found.sort();
    found.dedup();
    found
}

/// Whether a name holds an answer, hyphens or not.
fn tells(name: &str, answers: &[String]) -> bool {
    let name = squeeze(name);
    answers.iter().any(|answer| name.contains(answer.as_str()))
}

fn squeeze(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_in_a_name_is_seen() {
        let answers = vec!["417".to_owned(), "bell".to_owned()];
        assert!(tells("shelf-4-1-7-card", &answers));
        assert!(tells("the-bell-card", &answers));
        assert!(!tells("the-lamp-card-14", &answers));
    }
}
