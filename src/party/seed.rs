use rand::SeedableRng as _;
use sha2::{Digest as _, Sha256};

use crate::ids::PuzzleId;
use crate::mechanics::Rng;

/// The source of chance of one puzzle: ChaCha8 (Bernstein 2008, eight rounds), seeded with SHA-256 (FIPS 180-4)
/// over a fixed tag, the kit's seed as eight bytes, least first, and the puzzle's id.
///
/// Neither the level nor any other puzzle goes into it: a change in one puzzle disturbs no other, and a level
/// that keeps the setup keeps the arrangement.
#[must_use]
pub fn rng_of(seed: u64, puzzle: &PuzzleId) -> Rng {
    rng_at(seed, puzzle, 0)
}

/// The source of chance of one of a puzzle's arrangements; the first, 0, is [`rng_of`]. The number of any other, as
/// four bytes, least first, goes into the hash behind the id, parted by a zero byte, which no id holds.
#[must_use]
pub fn rng_at(seed: u64, puzzle: &PuzzleId, arrangement: u32) -> Rng {
    let mut hash = Sha256::new();
    hash.update(b"inklatch puzzle 1\0");
    hash.update(seed.to_le_bytes());
    hash.update(puzzle.as_str().as_bytes());
    if arrangement > 0 {
        hash.update(b"\0");
        hash.update(arrangement.to_le_bytes());
    }
    Rng::from_seed(hash.finalize().into())
}
