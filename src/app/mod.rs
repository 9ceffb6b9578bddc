//! The desktop program.
