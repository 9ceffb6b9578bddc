//! Sentences that hide one number word each.

use rand::seq::SliceRandom as _;

use super::read;
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::Rng;

/// For each digit from 0, sentences in which its word, and no other, runs across a gap.
const SENTENCES: [[&str; 2]; 10] = [
    ["The night froze roads and ponds alike.", "A cold breeze rolled down from the hill."],
    ["We lit a lantern at dusk, and it burned on every sill.", "A thin cat sat upon each wall."],
    ["The old door would not work at all.", "Nobody had sent word since autumn."],
    ["A path lined with reeds led down to the mill.", "She weaves baskets with reed and straw."],
    ["The roof of our hut creaked.", "A half ouroboros was carved in the beam."],
    ["The handle was a leaf I very much admired.", "Our cat Fifi vetoed the plan."],
    ["Old Ossi x-rayed the parcel by candle light, or so he said.", "Massi Xaver tuned the piano."],
    ["Through these vents came the smell of bread.", "He has a nose venison cannot fool."],
    ["We heard the pony neigh twice.", "I had to weigh the flour again."],
    ["A mini necklace lay in the snow.", "Toni never came back for her cap."],
];

/// A text that hides the digits in this order.
pub(super) fn text(answer: &[char], rng: &mut Rng) -> Hinted<String> {
    for _ in 0..limits::GRID_STARTS {
        let mut left: Vec<Vec<&str>> = SENTENCES.iter().map(|own| own.to_vec()).collect();
        left.iter_mut().for_each(|own| own.shuffle(rng));
        let mut lines = Vec::new();
        for digit in answer {
            let own = digit.to_digit(10).and_then(|digit| usize::try_from(digit).ok()).and_then(|at| left.get_mut(at));
            let Some(line) = own.and_then(Vec::pop) else {
                return Err(Trouble::new(format!("the digit {digit} stands in the answer more than twice"))
                    .hint("two sentences are at hand for each digit: write the whole text yourself, into `text`"));
            };
            lines.push(line);
        }
        let text = lines.join(" ");
        // Where two sentences meet, a further word may come about.
        let found = read::find(&text);
        if found.iter().all(|found| found.across) && found.iter().map(|found| found.digit).eq(answer.iter().copied()) {
            return Ok(text);
        }
    }
    Err(Trouble::new("no choice of sentences hides this answer and nothing else")
        .hint("take another answer, or write the text yourself, into `text`"))
}
