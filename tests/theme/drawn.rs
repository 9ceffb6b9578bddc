//! What an author's own drawings are told: slots, proportions, classes, and a reason for each.

use inklatch::checks::theme_findings;
use inklatch::diag::Severity;
use inklatch::face::{Frame, usual_frames};
use inklatch::files::{FontBook, Memory, VPath};
use inklatch::theme::{Loaded, Palette, builtin_ids, load_builtin, unknown_roles};

use super::found;

fn redrawn(loaded: &mut Loaded, frame: &str, from: &str, to: &str) {
    let path = loaded.theme.frames[frame].clone();
    let art = loaded.art[&path].replacen(from, to, 1);
    assert_ne!(art, *loaded.art[&path], "{frame} does not hold {from}");
    loaded.art.insert(path, art.into());
}

/// The slot's element as the picture writes it.
fn slot(loaded: &Loaded, frame: &str, name: &str) -> String {
    let art = &loaded.art[&loaded.theme.frames[frame]];
    let id = art.find(&format!("id=\"slot-{name}\"")).unwrap();
    let start = art[..id].rfind('<').unwrap();
    art[start..=start + art[start..].find('>').unwrap()].to_owned()
}

fn rect(name: &str, x: f64, y: f64, w: f64, h: f64) -> String {
    format!("<rect id=\"slot-{name}\" x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"none\"/>")
}

fn says(change: impl FnOnce(&mut Loaded), line: &str) -> Vec<String> {
    let lines = found(change, &Memory::new());
    assert!(lines.iter().any(|found| found.contains(line)), "\"{line}\" is not said: {lines:#?}");
    lines
}

#[test]
fn a_slot_that_leaves_the_picture_is_told_as_that() {
    let lines = says(
        |loaded| {
            let old = slot(loaded, "note", "body");
            redrawn(loaded, "note", &old, &rect("body", 60.0, 21.2, 87.0, 36.4));
        },
        "blocks theme-incomplete: the slot `body` of the frame `note` leaves the picture: it stands 60 from the left and 21.2 \
         from the top, 87 × 36.4 mm, and the picture is 105 × 75 mm",
    );
    assert!(!lines.iter().any(|line| line.contains("low-contrast")), "{lines:#?}");
}

#[test]
fn slots_that_overlap_are_small_or_mean_nothing_are_told() {
    says(
        |loaded| {
            let old = slot(loaded, "portrait", "title");
            redrawn(loaded, "portrait", &old, &rect("title", 16.0, 16.0, 43.0, 9.0));
        },
        "warns theme-incomplete: the slots `title` and `body` of the frame `portrait` overlap by 43 × ",
    );
    says(
        |loaded| {
            let old = slot(loaded, "landscape", "body");
            redrawn(loaded, "landscape", &old, &rect("body", 30.0, 22.0, 40.0, 30.0));
        },
        "warns theme-incomplete: the slot `body` of the frame `landscape` is 40 × 30 mm; 90 × 36 mm is the least",
    );
    says(
        |loaded| {
            let old = slot(loaded, "tag", "hole");
            redrawn(loaded, "tag", &old, &old.replace("slot-hole", "slot-hoel"));
        },
        "warns theme-incomplete: the frame `tag` has a slot `hoel`, which nothing is set in",
    );
}

#[test]
fn a_frame_of_other_proportions_is_told() {
    says(
        |loaded| redrawn(loaded, "flag", "width=\"96mm\" height=\"76mm\"", "width=\"76mm\" height=\"96mm\""),
        "warns theme-incomplete: the frame `flag` is 76 × 96 mm, and it is for a flag of a banner, about 5 wide to 4 high",
    );
    let wrong = |loaded: &mut Loaded| {
        let flag = loaded.theme.frames.remove("flag").unwrap();
        loaded.theme.frames.insert("flagg".into(), flag);
    };
    says(wrong, "warns theme-incomplete: there is no frame `flagg`");
}

#[test]
fn a_class_that_names_no_role_is_told() {
    says(
        |loaded| redrawn(loaded, "sign", "s-ink", "s-inc"),
        "warns theme-incomplete: the class `s-inc` names no colour role (plain/art/",
    );
    let of = |inside: &str| unknown_roles(&format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{inside}</svg>"));
    assert_eq!(of("<g class=\"st0 f-accnt x f-ink\"/>").into_iter().collect::<Vec<_>>(), ["f-accnt"]);
    // A class of the drawing program's own means something.
    assert!(of("<style>.f-hand{fill:red}</style><g class=\"f-hand\"/>").is_empty());
    assert!(unknown_roles("<svg").is_empty());
}

#[test]
fn a_faint_accent_is_told_without_a_kit() {
    let lines = says(
        |loaded| drop(loaded.theme.palette.insert("accent".into(), "#E8A0A0".into())),
        "warns low-contrast: accent #E8A0A0 on paper ",
    );
    assert_eq!(lines.iter().filter(|line| line.contains("low-contrast")).count(), 1, "{lines:#?}");
}

#[test]
fn each_finding_of_a_theme_says_why_it_matters() {
    let mut loaded = load_builtin(&inklatch::ids::ThemeId::new("plain").unwrap()).unwrap();
    loaded.theme.frames.remove("sign");
    loaded.theme.palette.remove("glow");
    loaded.theme.dressings.remove("glow-ink");
    loaded.theme.words.remove("bird");
    loaded.theme.symbols.retain(|name, _| name < &"c".to_owned());
    redrawn(&mut loaded, "board", "s-ink", "s-inc");
    loaded.theme.frames.insert("tag".into(), VPath::new("art/none.svg").unwrap());
    let findings = theme_findings(&loaded, &FontBook::bundled().unwrap(), &Memory::new(), Some("other"));
    let incomplete: Vec<_> = findings.iter().filter(|found| found.name == "theme-incomplete").collect();
    let whys: std::collections::BTreeSet<&str> = incomplete.iter().map(|found| found.why.as_str()).collect();
    assert!(incomplete.len() >= 7 && whys.len() >= 7, "{incomplete:#?}");
    assert!(findings.iter().any(|found| found.severity == Severity::Blocks && found.why.contains("explain frames")));
}

#[test]
fn the_usual_slots_are_the_least_of_the_built_in_ones() {
    for (name, usual) in usual_frames() {
        for (slot, known) in &usual.slots {
            let measured = builtin_ids().into_iter().filter_map(|id| {
                let loaded = load_builtin(&id).unwrap();
                let palette = Palette::new(&loaded.theme.palette, &Default::default()).unwrap();
                Frame::read(loaded.frame(name)?, &palette).unwrap().slot(slot)
            });
            let least = measured.map(|rect| rect.w.get()).fold(f64::INFINITY, f64::min);
            assert!((known.least.w.get() - least).abs() < 0.001, "{name} {slot}");
        }
    }
    assert_eq!(usual_frames().len(), 19);
}
