//! Tests of `kit`: files are read, written and refused; the demo kit is sound.

#[path = "kit/bad_files.rs"]
mod bad_files;
#[path = "kit/comments.rs"]
mod comments;
#[path = "kit/demo.rs"]
mod demo;
#[path = "kit/edits.rs"]
mod edits;

use inklatch::bundle::DEMO_KITS;
use inklatch::files::{Builtin, Files as _, VPath};
use inklatch::kit::Kit;
use inklatch::kit::file::{read_kit, write_kit};
use inklatch::limits;

/// The demo kit's text as the program carries it.
fn demo_text() -> String {
    let path = VPath::new("assets/kits/the-stopped-clock/kit.ron").unwrap();
    Builtin::new().read_text(&path, limits::RON_BYTES).unwrap()
}

/// All demo kits that the program carries.
fn demo_kits() -> Vec<Kit> {
    let read = |name: &&str| {
        let path = VPath::new(&format!("assets/kits/{name}/kit.ron")).unwrap();
        let text = Builtin::new().read_text(&path, limits::RON_BYTES).unwrap();
        read_kit(&text, "kit.ron").unwrap_or_else(|trouble| panic!("{trouble}"))
    };
    DEMO_KITS.iter().map(read).collect()
}

fn demo_kit() -> Kit {
    read_kit(&demo_text(), "kit.ron").unwrap_or_else(|trouble| panic!("{trouble}"))
}

#[test]
fn what_is_written_reads_back_the_same() {
    let kit = demo_kit();
    let text = write_kit(&kit).unwrap();
    let again = read_kit(&text, "kit.ron").unwrap_or_else(|trouble| panic!("{trouble}\n{text}"));
    assert_eq!(again, kit);
    assert_eq!(write_kit(&again).unwrap(), text, "writing it twice gives other bytes");
}

#[test]
fn odd_texts_survive_the_file() {
    let mut kit = demo_kit();
    for text in
        ["\"#", "a \\ b", "\"quoted\" and {{ slot }}", "tabs\tand\nlines\r\n", "snow \u{2603} \u{1F56F}", "\u{0}"]
    {
        kit.letter.body = text.to_owned();
        let file = write_kit(&kit).unwrap();
        let again = read_kit(&file, "kit.ron").unwrap_or_else(|trouble| panic!("{text:?}: {trouble}"));
        assert_eq!(again.letter.body, text);
    }
}
