//! The program: parse, run, exit code.

#![forbid(unsafe_code)]

use std::io::{stderr, stdout};
use std::process::ExitCode;

use clap::Parser as _;
use inklatch::cli::{Args, run};

fn main() -> ExitCode {
    let args = Args::parse();
    // Not locked: the window's threads must be able to speak while it is open.
    ExitCode::from(run(&args, &mut stdout(), &mut stderr(), &inklatch::app::run))
}
