//! All tests in one program: the engine is linked once.

mod app;
mod bundle;
mod checks;
mod cli;
mod common;
mod flow;
mod kit;
mod layers;
mod mechanics;
mod outside;
mod party;
mod print;
mod readings;
mod script;
mod sheet;
mod theme;
