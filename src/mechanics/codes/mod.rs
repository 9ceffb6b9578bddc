//! Public codes as pure tables, each with its source.

pub mod braille;
pub mod morse;
pub mod semaphore;
