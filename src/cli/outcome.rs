use std::io::{self, Write};

use crate::diag::Trouble;

/// Nothing blocks.
pub const CLEAN: u8 = 0;
/// Findings block.
pub const BLOCKED: u8 = 1;
/// The command failed.
pub const FAILED: u8 = 2;

/// Why a command stopped.
pub(super) enum Fail {
    /// Something is wrong that the author can mend.
    Trouble(Trouble),
    /// The output cannot be written.
    Output(io::Error),
}

/// An exit code, or why there is none.
pub(super) type Outcome = Result<u8, Fail>;

impl From<Trouble> for Fail {
    fn from(trouble: Trouble) -> Self {
        Self::Trouble(trouble)
    }
}

impl From<io::Error> for Fail {
    fn from(error: io::Error) -> Self {
        Self::Output(error)
    }
}

/// Says what went wrong and answers the exit code.
pub(super) fn report(fail: &Fail, err: &mut dyn Write) -> u8 {
    let trouble = match fail {
        // `inklatch explain kit | head` is a reader who has seen enough.
        Fail::Output(error) if error.kind() == io::ErrorKind::BrokenPipe => return CLEAN,
        Fail::Output(error) => Trouble::new(format!("cannot write the output: {error}")),
        Fail::Trouble(trouble) => trouble.clone(),
    };
    // Where not even the error can be written, the exit code has to say it.
    let _ = write_trouble(&trouble, err);
    FAILED
}

fn write_trouble(trouble: &Trouble, err: &mut dyn Write) -> io::Result<()> {
    writeln!(err, "error: {}", trouble.message)?;
    if let Some(place) = &trouble.place {
        writeln!(err, "  at: {place}")?;
    }
    for hint in &trouble.hints {
        writeln!(err, "  hint: {hint}")?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_closed_pipe_is_no_error() {
        let mut err = Vec::new();
        assert_eq!(report(&Fail::from(io::Error::from(io::ErrorKind::BrokenPipe)), &mut err), CLEAN);
        assert!(err.is_empty());
        assert_eq!(report(&Fail::from(io::Error::from(io::ErrorKind::StorageFull)), &mut err), FAILED);
        assert!(!err.is_empty());
    }
}
