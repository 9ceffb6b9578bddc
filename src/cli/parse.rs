use std::io::stderr;

use clap::{CommandFactory as _, Parser as _};

use super::Args;
use super::outcome::{Fail, report};
use crate::diag::Trouble;
use crate::kit::file::nearest;

/// The command line of this process. What cannot be understood is said, and the process ends with the code of a failure.
#[must_use]
pub fn parse() -> Args {
    match Args::try_parse() {
        Ok(args) => args,
        Err(error) => {
            let first = std::env::args().nth(1).unwrap_or_default();
            match misspelt(&first).filter(|_| error.use_stderr()) {
                Some(trouble) => std::process::exit(i32::from(report(&Fail::from(trouble), &mut stderr()))),
                None => error.exit(),
            }
        }
    }
}

/// That a word is no command, where it is neither one nor something on disk but near enough to one to be meant.
pub(super) fn misspelt(word: &str) -> Option<Trouble> {
    let command = Args::command();
    let known: Vec<&str> = command.get_subcommands().map(clap::Command::get_name).collect();
    if word.is_empty() || word.starts_with('-') || known.contains(&word) || std::path::Path::new(word).exists() {
        return None;
    }
    let near = nearest(word, &known)?;
    let trouble = Trouble::new(format!("there is no command `{word}`, and no kit of this name"));
    Some(trouble.hint(format!("did you mean `{near}`?")).hint("`inklatch --help` lists the commands"))
}
