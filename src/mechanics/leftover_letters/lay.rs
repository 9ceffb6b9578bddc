use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{NO_LETTER, Setup, View, read, work};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::symbols;
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::Budget;
use crate::readings::occurrences::{DIRECTIONS, cells_from};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let message = read::spelled(&answer).ok_or_else(|| {
        Trouble::new("the answer is neither all digits nor all letters A to Z")
            .hint("write an answer that letters can spell")
    })?;
    let words = words(setup)?;
    if let Some(word) = words.iter().find(|word| word.contains(&message)) {
        return Err(Trouble::new(format!("the word {word} of the list holds what the letters left over shall spell"))
            .hint("leave it out, or write another answer"));
    }
    arranged(setup.work, rng, &mut |rng| square(setup, &words, &message, job, rng), &work::work)
}

/// A square in which each word stands in one place and the rest spells the message.
fn square(setup: &Setup, words: &[String], message: &str, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let letters = message.len() + words.iter().map(String::len).sum::<usize>();
    let longest = words.iter().map(String::len).max().unwrap_or(0);
    // The smallest square that takes all letters, and up to three more rows and columns where that is too tight.
    let mut least = longest;
    while least * least < letters {
        least += 1;
    }
    for start in 0..limits::GRID_STARTS {
        let side = least + start * 4 / limits::GRID_STARTS;
        if side > limits::SEARCH_SIDE {
            break;
        }
        if let Some(rows) = strew(setup, words, message, side, rng) {
            let mut listed = words.to_vec();
            listed.sort_unstable();
            let view = View { rows, words: listed };
            let found = read::readings(&view, job.lock, &mut Budget::new(limits::GRID_STEPS));
            let alone = found.list.len() == 1 && found.remarks.is_empty() && !found.unproven;
            if alone {
                return Ok(view);
            }
        }
    }
    Err(Trouble::new("the words could not be hidden so that each stands in one place and the rest spells the answer")
        .hint("take fewer, shorter or other `words`, or allow `aslant` and `backwards`"))
}

/// The words in capitals, when they can be hidden.
fn words(setup: &Setup) -> Hinted<Vec<String>> {
    let mut words: Vec<String> =
        setup.words.iter().map(|word| word.to_uppercase().chars().filter(|c| !c.is_whitespace()).collect()).collect();
    if !(1..=limits::SEARCH_WORDS).contains(&words.len()) {
        return Err(Trouble::new(format!("{} words make no word search", words.len()))
            .hint(format!("list 1 to {} `words`", limits::SEARCH_WORDS)));
    }
    if let Some(word) = words.iter().find(|word| {
        !(3..=limits::SEARCH_SIDE).contains(&word.len()) || !word.chars().all(|letter| letter.is_ascii_uppercase())
    }) {
        return Err(Trouble::new(format!("the word \"{word}\" cannot be hidden"))
            .hint(format!("take words of 3 to {} letters A to Z", limits::SEARCH_SIDE)));
    }
    if let Some((word, other)) = words.iter().enumerate().find_map(|(at, word)| {
        let backwards: String = word.chars().rev().collect();
        let holds = |other: &&String| other.contains(word.as_str()) || other.contains(&backwards);
        let other = words.iter().enumerate().find(|(place, other)| *place != at && holds(other))?;
        Some((word, other.1))
    }) {
        return Err(Trouble::new(format!("the word {word} stands in the word {other}, so guests would find it twice"))
            .hint("leave one of them out"));
    }
    // The longest first, while there is room.
    words.sort_by(|a, b| b.len().cmp(&a.len()).then_with(|| a.cmp(b)));
    Ok(words)
}

/// Hides the words and writes the message into what is left; the cells beyond it stay without a letter.
fn strew(setup: &Setup, words: &[String], message: &str, side: usize, rng: &mut Rng) -> Option<Vec<Vec<Option<char>>>> {
    let mut grid = vec![vec![NO_LETTER; side]; side];
    for word in words {
        place(setup, word, &mut grid, rng)?;
    }
    let open: Vec<(usize, usize)> = (0..side)
        .flat_map(|row| (0..side).map(move |col| (row, col)))
        .filter(|(row, col)| grid[*row][*col] == NO_LETTER)
        .collect();
    let mut places: Vec<usize> = (0..open.len()).collect();
    places.shuffle(rng);
    places.truncate(message.len());
    places.sort_unstable();
    if places.len() < message.len() {
        return None;
    }
    for (place, letter) in places.into_iter().zip(message.chars()) {
        let (row, col) = open[place];
        grid[row][col] = letter;
    }
    let cell = |letter: &char| (*letter != NO_LETTER).then_some(*letter);
    Some(grid.iter().map(|row| row.iter().map(cell).collect()).collect())
}

/// Puts a word where it fits; it may cross others at equal letters.
fn place(setup: &Setup, word: &str, grid: &mut [Vec<char>], rng: &mut Rng) -> Option<()> {
    let side = grid.len();
    let letters: Vec<char> = word.chars().collect();
    for _ in 0..limits::SEARCH_TRIES {
        let direction = rng.random_range(0..DIRECTIONS.len());
        // Forwards is to the right, or straight down; the others run backwards.
        let (down, right) = DIRECTIONS[direction];
        let aslant = down != 0 && right != 0;
        let backwards = right < 0 || (right == 0 && down < 0);
        let plain = setup.work == Effort::Light;
        if (aslant && (plain || !setup.aslant)) || (backwards && (plain || !setup.backwards)) {
            continue;
        }
        let start = (rng.random_range(0..side), rng.random_range(0..side));
        let Some(cells) = cells_from(start, direction, letters.len(), side, side) else { continue };
        let fits = cells
            .iter()
            .zip(&letters)
            .all(|((row, col), letter)| grid[*row][*col] == NO_LETTER || grid[*row][*col] == *letter);
        if fits {
            for ((row, col), letter) in cells.into_iter().zip(letters) {
                grid[row][col] = letter;
            }
            return Some(());
        }
    }
    None
}
