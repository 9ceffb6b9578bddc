//! Inklatch: write, build, hint, dress, prove and print themed puzzle-party kits.

#![forbid(unsafe_code)]

pub mod diag;
pub mod face;
pub mod files;
pub mod flow;
pub mod ids;
pub mod kit;
pub mod limits;
pub mod mechanics;
pub mod party;
pub mod readings;
pub mod script;
pub mod sheet;
pub mod theme;
pub mod units;
