//! The program: parse, run, exit code.

#![forbid(unsafe_code)]

use std::io::{stderr, stdout};
use std::process::ExitCode;

use inklatch::cli::{parse, run};

/// Type setting makes and drops many small things on every core at once; the system's allocator spends a fifth of an
/// export on that.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    let args = parse();
    // Not locked: the window's threads must be able to speak while it is open.
    ExitCode::from(run(&args, &mut stdout(), &mut stderr(), &inklatch::app::run))
}
