//! Inklatch: write, build, hint, dress, prove and print themed puzzle-party kits.
//!
//! # Phases
//!
//! ```text
//! kit.ron + theme.ron ─load─▶ Kit, Theme ─fill words─▶ Script ─lay out─▶ views ─pieces─▶ faces
//!                                                              └─readings─▶ verdicts
//! faces ─impose─▶ sheets ─print─▶ PDF, SVG, pictures ─▶ bundle
//! kit, verdicts, flow, what was set ─checks─▶ findings ─▶ window, command line, guide
//! ```
//!
//! Finished values stand between the phases. Modules import downwards only; `tests/layers.rs` holds the tree
//! to that table.

#![forbid(unsafe_code)]

pub mod app;
pub mod bundle;
pub mod checks;
pub mod cli;
pub mod codes;
pub mod diag;
pub mod face;
pub mod files;
pub mod flow;
pub mod ids;
pub mod kit;
pub mod limits;
pub mod mechanics;
pub mod party;
pub mod prep;
pub mod print;
pub mod propose;
pub mod readings;
pub mod redress;
pub mod rehearse;
pub mod script;
pub mod sheet;
pub mod theme;
pub mod units;
