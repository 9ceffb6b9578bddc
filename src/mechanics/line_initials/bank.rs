//! Lines that begin with a wanted letter; in whatever order, they read as entries of a night book.

use rand::seq::SliceRandom as _;

use super::By;
use crate::diag::{Hinted, Trouble};
use crate::mechanics::Rng;
use crate::mechanics::fixed::Fixed;

/// Lines at hand; a letter that number words use often has many.
const LINES: &[&str] = &[
    "All quiet on the stairs.",
    "A moth sat on the almanac until late.",
    "At last the kettle gave in.",
    "Bread was found, and eaten.",
    "By then the fire wanted wood.",
    "Candles were counted, then borrowed.",
    "Could not find the other slipper.",
    "Doors shut softly, as they should.",
    "Down in the yard a bucket rolled.",
    "Draughts in the hall again.",
    "Every window was tried and found shut.",
    "Early in the night it smelled of toast.",
    "Even the cat would not say why.",
    "Empty cup on the sill, still warm.",
    "Echoes from the cellar, but no steps.",
    "Evening post: none, as usual.",
    "Ended the round where I began it.",
    "Ears cold, feet warm, spirits fair.",
    "Exactly the same dog barked as before.",
    "Earlier than planned, I lit the lamp.",
    "Fog in the lane, thick as porridge.",
    "Found my spectacles on my nose.",
    "Fed the fire and told it a story.",
    "Faint music, then the rain again.",
    "Footprints by the pump: large, with claws.",
    "Gate oiled at long last.",
    "Grandfather's chair creaked, with nobody in it.",
    "Gave the hinges a good talking-to.",
    "Heard music from the empty hall.",
    "Half a pie has gone from the pantry.",
    "Hung the lantern on its proper hook.",
    "Hats on the stand: more than heads.",
    "Hinges in the east wing complained.",
    "I wound the clock and wished it well.",
    "In the attic something rolled, and stopped.",
    "It rained on the north side only.",
    "Ink ran out in the middle of a word.",
    "Ivy taps at the glass; let it tap.",
    "Inside the drum: a nest, and its mouse.",
    "Jam on the banister. Asked no questions.",
    "Just a little wind in the flue.",
    "Keys counted, and all of them hang.",
    "Kept an eye on the weathervane.",
    "Lamp trimmed, wick turned low.",
    "Left the back door to the cat.",
    "Long shadows by the woodshed.",
    "Mice held their usual meeting.",
    "My tea went cold while I listened.",
    "Much ado over a lost button.",
    "Nobody on the road, nor near it.",
    "Nothing stirred but the curtain.",
    "Not a star to be seen tonight.",
    "Next door they sang until late.",
    "Noise in the pipes, then none.",
    "Nearly tripped over the umbrella stand.",
    "Neither the barrel nor its lid was moved.",
    "New string on the bell pull.",
    "Now the owls have begun, both of them.",
    "No more sugar. This will be noticed.",
    "Owls in the elm, in good voice.",
    "On the mat lay a glove, left hand.",
    "Only the tap dripped, in no hurry.",
    "Old boards, old noises.",
    "Our neighbour's goose called out.",
    "Off went the alarm, for nobody.",
    "Patched the hole that the draught came by.",
    "Plates stacked, crumbs swept.",
    "Put the ladder back where it lives.",
    "Quiet enough to hear the dust settle.",
    "Rats, or rain, or the roof: hard to say.",
    "Rang for supper; supper did not answer.",
    "Rugs beaten, dust offended.",
    "Read the same page over and over.",
    "Raindrops on the skylight, none on the step.",
    "Rope coiled and hung up to dry.",
    "Someone has moved the ladder.",
    "Stars out; went out to look at them.",
    "Soup on the stove, lid rattling.",
    "Shutters closed on the weather side.",
    "Slept for a minute. Perhaps longer.",
    "Spoke to the portrait. It kept its counsel.",
    "The top stair still squeaks.",
    "Tried the cellar door: locked, good.",
    "To bed went all but me.",
    "There was a light in the loft.",
    "Towards morning the wind lay down.",
    "Tall tales were told by the stove.",
    "Toast burned, windows opened.",
    "Under the bench I found a spoon.",
    "Up the ladder and down again.",
    "Usual round, usual draughts.",
    "Umbrella returned, by persons unknown.",
    "Up late, and glad of company.",
    "Very little to report.",
    "Voices by the well; only the pump.",
    "Velvet curtains drawn, moths informed.",
    "Visited the pantry, on business.",
    "Vane points west, smoke points east.",
    "Wind from the hill, and a smell of apples.",
    "Warmed my hands on the lamp.",
    "When it struck, I was already awake.",
    "Went round once more, for luck.",
    "Watered the fern in the dark.",
    "X marks on the calendar: mine, I think.",
    "Xylophone in the attic; played itself.",
    "Xaver's bicycle is back in the hall.",
    "X on the cellar door, in chalk.",
    "X again, on the pantry shelf.",
    "Yawned, and the dog yawned back.",
    "Yard gate swinging. Went to see.",
    "Zigzag of water across the floor.",
    "Zinc bath moved; nobody admits it.",
    "Zither left out in the hall.",
    "Zip of the coat stuck once more.",
    "Zest of lemon in the air, oddly.",
];

/// Second lines of paragraphs.
const MORE: &[&str] = &[
    "I made a note of it and went on.",
    "The dog was of the same opinion.",
    "Perhaps it will be clearer by day.",
    "That is all that can be said of it.",
    "I looked again later: no change.",
    "We shall hear more of this.",
    "Such things happen in old houses.",
    "I told no one, and nobody asked.",
    "The kettle had boiled by then.",
    "I put it down to the weather.",
    "The others slept through it.",
    "My candle was half gone by that time.",
    "A second look told me no more.",
    "It is best not to mention it at breakfast.",
    "The clock struck, and I lost count.",
    "I have written it down as it was.",
    "The key was where it always is.",
    "Then all was as before.",
];

/// A text whose lines, or paragraphs, begin with these letters.
pub(super) fn text(letters: &[char], by: By, rng: &mut Rng) -> Hinted<Fixed> {
    let mut left: Vec<&str> = LINES.to_vec();
    left.shuffle(rng);
    let mut more: Vec<&str> = MORE.to_vec();
    more.shuffle(rng);
    let mut more = more.into_iter().cycle();
    let mut lines = Vec::new();
    for letter in letters {
        let Some(at) = left.iter().position(|line| line.starts_with(*letter)) else {
            return Err(Trouble::new(format!("too few lines that begin with {letter} are at hand"))
                .hint("take an answer that repeats less, or write the text yourself, into `text`"));
        };
        lines.push(left.swap_remove(at));
    }
    let paragraphs = match by {
        By::Lines => vec![lines.into_iter().map(str::to_owned).collect()],
        By::Paragraphs => lines
            .into_iter()
            .map(|line| std::iter::once(line).chain(more.next()).map(str::to_owned).collect())
            .collect(),
    };
    Fixed { paragraphs }.on_a_sheet()
}
