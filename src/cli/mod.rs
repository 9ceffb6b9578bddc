//! The command line: one file per command.
//!
//! Results go to standard output, progress and errors to the other. A reader that closes the pipe early is
//! no error.

mod lists;
mod new;
mod outcome;

use std::io::Write;
use std::path::PathBuf;

use clap::{Parser, Subcommand};

pub use outcome::{BLOCKED, CLEAN, FAILED};
use outcome::{Fail, report};

/// Write, prove and print themed puzzle-party kits.
#[derive(Clone, Debug, Parser)]
#[command(name = "inklatch", version)]
#[command(after_help = "Exit codes: 0 clean, 1 findings that block, 2 failure.")]
pub struct Args {
    #[command(subcommand)]
    command: Command,
}

#[derive(Clone, Debug, Subcommand)]
enum Command {
    /// Make a fresh kit: small, sound, ready to be changed
    New {
        /// The folder to make it in; empty or not there yet
        folder: PathBuf,
        /// The kit's title
        #[arg(long)]
        title: Option<String>,
    },
    /// List the mechanics
    Mechanics,
    /// List the themes
    Themes,
}

/// Runs the command and answers the exit code: [`CLEAN`], [`BLOCKED`] or [`FAILED`].
pub fn run(args: &Args, out: &mut dyn Write, err: &mut dyn Write) -> u8 {
    let result = match &args.command {
        Command::New { folder, title } => new::run(folder, title.as_deref(), out),
        Command::Mechanics => lists::mechanics(out),
        Command::Themes => lists::themes(out),
    };
    let result = result.and_then(|code| out.flush().map(|()| code).map_err(Fail::from));
    match result {
        Ok(code) => code,
        Err(fail) => report(&fail, err),
    }
}
