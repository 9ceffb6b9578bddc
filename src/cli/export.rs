use std::io::{self, Write};
use std::path::Path;
use std::sync::Mutex;
use std::sync::mpsc;

use super::check::{blocks, summary, write_findings};
use super::outcome::{BLOCKED, CLEAN, Outcome};
use crate::bundle::{self, Exported, Go, Options, Progress};
use crate::checks::Finding;
use crate::diag::{Hinted, Severity};

/// Proves a kit and makes its bundle, with a line of progress for each document.
pub(super) fn run(kit: Option<&Path>, options: &Options, out: &mut dyn Write) -> Outcome {
    let out: &mut dyn Write = &mut Heedless(out);
    let opened = bundle::open(kit)?;
    let press = bundle::press_of(&opened)?;
    writeln!(out, "proving \"{}\" …", opened.kit.title)?;
    out.flush()?;
    let proofs = bundle::prove_editions(&opened, &press, &options.levels, &options.editions)?;
    for proof in &proofs {
        let edition = if proofs.len() > 1 { format!("{}: ", proof.edition.word()) } else { String::new() };
        writeln!(out, "{edition}{}", summary(proof))?;
    }
    let blocking: Vec<Finding> =
        bundle::findings_of(&proofs).into_iter().filter(|finding| finding.severity == Severity::Blocks).collect();
    if !blocking.is_empty() {
        writeln!(out)?;
        write_findings(&bundle::located(&opened, blocking), out)?;
    }
    if proofs.iter().any(blocks) && !options.force {
        writeln!(out, "nothing was exported: mend what blocks, or use --force (the host guide will say so)")?;
        return Ok(BLOCKED);
    }
    let exported = with_progress(out, |tell| bundle::export_proven(&opened, &press, &proofs, options, tell))?;
    let bytes: u64 = exported.files.iter().map(|file| file.bytes).sum();
    let pages: usize = exported.files.iter().filter_map(|file| file.pages).sum();
    writeln!(out, "{} files, {pages} pages, {}", exported.files.len(), size(bytes))?;
    if let Some(zip) = &exported.zip {
        writeln!(out, "all in one: {}", zip.display())?;
    }
    let folder = exported.folder.display();
    writeln!(out, "look in {folder}: players/ to cut out, hints/ and host/ for the host, pieces/ as pictures")?;
    writeln!(out, "to change the kit in the window: {}", window(kit))?;
    Ok(CLEAN)
}

/// Goes on when nobody reads any more: the bundle is what was asked for, the lines are only news of it.
struct Heedless<'a>(&'a mut dyn Write);

impl Write for Heedless<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self.0.write(bytes) {
            Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(bytes.len()),
            other => other,
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self.0.flush() {
            Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
            other => other,
        }
    }
}

fn window(kit: Option<&Path>) -> String {
    match kit {
        Some(kit) => format!("inklatch {}", kit.display()),
        None => "cargo run --release  (or: inklatch)".to_owned(),
    }
}

/// Runs an export on a thread of its own and writes its progress from this one: where that cannot be written, it
/// stops.
fn with_progress(
    out: &mut dyn Write,
    export: impl FnOnce(&(dyn Fn(Progress) -> Go + Sync)) -> Hinted<Exported> + Send,
) -> Result<Exported, super::outcome::Fail> {
    let (send, receive) = mpsc::channel::<Progress>();
    std::thread::scope(|scope| {
        let worker = scope.spawn(move || {
            let send = Mutex::new(send);
            export(&|progress| {
                let send = send.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
                if send.send(progress).is_ok() { Go::On } else { Go::Stop }
            })
        });
        let mut told = Ok(());
        for progress in receive {
            // Pictures are many and quick, and a document that is not made is none; a document is news.
            if progress.what.starts_with("picture") || progress.what == bundle::NOTHING {
                continue;
            }
            let percent = progress.done * 100 / progress.of.max(1);
            told = writeln!(out, "[{percent:>3} %] {}", progress.what).and_then(|()| out.flush());
            if told.is_err() {
                break;
            }
        }
        let exported = worker.join().unwrap_or_else(|_| Err(crate::diag::Trouble::new("the export broke off")));
        told?;
        Ok(exported?)
    })
}

/// A count of bytes for a person.
fn size(bytes: u64) -> String {
    const KB: u64 = 1_000;
    const MB: u64 = 1_000_000;
    if bytes >= MB {
        format!("{}.{} MB", bytes / MB, bytes % MB / (MB / 10))
    } else {
        format!("{} kB", bytes.div_ceil(KB))
    }
}

#[cfg(test)]
mod tests {
    use super::size;

    #[test]
    fn sizes_read_well() {
        assert_eq!(size(1), "1 kB");
        assert_eq!(size(2_540_000), "2.5 MB");
    }
}
