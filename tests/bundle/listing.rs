//! What a kit is sold by: said from the kit's own facts, and telling nothing.

use inklatch::bundle::{self, Go, Opened, Options};
use inklatch::diag::{Level, Step};
use inklatch::kit::Day;
use inklatch::sheet::Paper;

use super::{DEMO, opened, read_all, standard};

/// The description of a kit.
fn description(kit: &Opened) -> String {
    let out = tempfile::tempdir().unwrap();
    let options = Options { papers: vec![Paper::A4], ..standard(out.path()) };
    let exported = bundle::export(kit, &options, &|_| Go::On).unwrap();
    String::from_utf8(read_all(&exported.folder).remove("listing/description.md").unwrap()).unwrap()
}

#[test]
fn the_description_says_the_kit_s_facts() {
    let files = read_all(&DEMO.exported.folder);
    let text = std::str::from_utf8(&files["listing/description.md"]).unwrap();
    let facts = [
        "# The Stopped Clock",
        "By The Inklatch makers · Revision 1, 2026-11-25",
        "- Guests: 3 to 6",
        "- Ages: from 10",
        "- Play: about 1 h",
        "- Colour: not needed",
        "- 7 puzzles, for 7 locks.",
        "- 21 hint tokens",
        "- 4 × padlock with three digit wheels",
        "## Terms of use",
        "Lettering Alegreya: Copyright 2011 The Alegreya Project Authors",
        "SIL Open Font License 1.1",
    ];
    for fact in facts {
        assert!(text.contains(fact), "no \"{fact}\" in:\n{text}");
    }
    assert!(!text.contains("What changed") && !text.contains("costs"), "what the kit does not say is left out");
    for paper in Paper::ALL {
        let manifest = &DEMO.exported.files;
        let pages = |folder: &str, word: &str| -> usize {
            let mine = manifest.iter().filter(|file| file.paper == Some(paper) && file.path.starts_with(folder));
            mine.filter(|file| file.path.contains(word) && !file.path.contains("everything"))
                .filter_map(|file| file.pages)
                .sum()
        };
        let (room, guide) = (pages("players/", ""), pages("host/", "-guide-"));
        let name = if paper == Paper::A4 { "A4" } else { "US Letter" };
        let line = text.lines().find(|line| line.starts_with(&format!("- Pages, {name}: "))).unwrap();
        assert!(
            line.contains(&format!("{room} for the room")) && line.contains(&format!("{guide} of host guide")),
            "{line}"
        );
    }
}

#[test]
fn the_description_tells_no_answer_and_no_hint() {
    let files = read_all(&DEMO.exported.folder);
    let squeeze = |text: &str| text.to_lowercase().split(|c: char| !c.is_alphanumeric()).collect::<Vec<_>>().join(" ");
    let text = squeeze(std::str::from_utf8(&files["listing/description.md"]).unwrap());
    let text = format!(" {text} ");
    for puzzle in &DEMO.opened.kit.puzzles {
        assert!(!text.contains(&format!(" {} ", squeeze(&puzzle.answer))), "tells {}", puzzle.answer);
        for step in Step::ALL {
            let hint = squeeze(puzzle.hints.step(step));
            assert!(hint.trim().is_empty() || !text.contains(hint.trim()), "tells the hint {hint}");
        }
    }
}

#[test]
fn what_the_author_gives_is_said_and_what_tells_is_not() {
    let plain = description(&opened(|kit| {
        kit.terms.clear();
        kit.author.clear();
        kit.brief.clear();
    }));
    for title in ["Terms of use", "What changed", "costs, roughly", "By ", "Revision"] {
        assert!(!plain.contains(title), "\"{title}\" is invented:\n{plain}");
    }
    let full = opened(|kit| {
        let code = kit.puzzles[0].answer.clone();
        kit.terms = "For one household.".into();
        kit.cost = "about 20 crowns".into();
        kit.brief = format!("A story.\n\nThe code is {code}, by the way.");
        kit.revision.name = "2".into();
        kit.revision.day = Some(Day::parse("2027-01-31").unwrap());
        kit.revision.changes = vec!["A clearer sign".into(), format!("the lock now opens with {code}")];
    });
    let text = description(&full);
    for says in ["For one household.", "About 20 crowns.", "A story.", "Revision 2, 2027-01-31", "- A clearer sign."] {
        assert!(text.contains(says), "no \"{says}\" in:\n{text}");
    }
    assert!(!text.contains(&full.kit.puzzles[0].answer), "the code stands in:\n{text}");
}

#[test]
fn a_listing_can_be_left_out() {
    let out = tempfile::tempdir().unwrap();
    let kit = opened(|_| {});
    let options = Options { papers: vec![Paper::A4], listing: false, ..standard(out.path()) };
    let exported = bundle::export(&kit, &options, &|_| Go::On).unwrap();
    assert!(exported.files.iter().all(|file| !file.path.starts_with("listing/")));
}

#[test]
fn steps_are_counted_to_the_end() {
    let out = tempfile::tempdir().unwrap();
    let kit = opened(|_| {});
    let options = Options { one_pdf: true, levels: Level::ALL.to_vec(), ..standard(out.path()) };
    let last = std::sync::Mutex::new((0, 0));
    bundle::export(&kit, &options, &|step| {
        let mut last = last.lock().unwrap();
        *last = (last.0.max(step.done), step.of);
        Go::On
    })
    .unwrap();
    let (done, of) = *last.lock().unwrap();
    assert_eq!(done, of);
}

#[test]
fn an_export_stopped_at_any_step_leaves_nothing() {
    let kit = opened(|_| {});
    let out = tempfile::tempdir().unwrap();
    let options = Options { papers: vec![Paper::A4], one_pdf: true, zip: true, ..standard(out.path()) };
    let all = std::sync::atomic::AtomicUsize::new(0);
    let whole = tempfile::tempdir().unwrap();
    bundle::export(&kit, &Options { out: whole.path().to_owned(), ..options.clone() }, &|step| {
        all.store(step.of, std::sync::atomic::Ordering::Relaxed);
        Go::On
    })
    .unwrap();
    let all = all.into_inner();
    let stop = |place: &std::path::Path, most: usize| {
        let options = Options { out: place.to_owned(), ..options.clone() };
        let stopped = bundle::export(&kit, &options, &|step| if step.done > most { Go::Stop } else { Go::On });
        assert!(stopped.unwrap_err().message.contains("stopped"), "at {most} of {all}");
        assert_eq!(out.path().read_dir().unwrap().count(), 0, "at {most} of {all}");
    };
    for most in [1, all / 2, all - 2, all - 1] {
        stop(out.path(), most);
    }
    // Nor a folder that was made for it.
    stop(&out.path().join("new"), all - 1);
}
