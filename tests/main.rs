//! All tests in one program: the engine is linked once.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod app;
mod bent;
mod bundle;
mod checks;
mod cli;
mod codes;
mod common;
mod editions;
mod flow;
mod kit;
mod layers;
mod making;
mod mechanics;
mod outside;
mod party;
mod play;
mod prepared;
mod print;
mod propose;
mod props;
mod readings;
mod redress;
mod rehearse;
mod script;
mod second;
mod shaped;
mod sheet;
mod sound;
mod theme;
