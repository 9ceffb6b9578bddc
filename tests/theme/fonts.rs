//! The carried fonts: their licences, and their characters for a second reader.

use inklatch::files::{Builtin, Files as _, FontBook, VPath};
use inklatch::theme::{Lettering, builtin_ids};

#[test]
fn each_font_has_its_licence_beside_it() {
    let files = Builtin::new();
    let all = files.list(&VPath::root()).unwrap();
    let fonts: Vec<&VPath> = all.iter().filter(|path| path.extension() == "ttf").collect();
    assert!(fonts.len() > 10);
    for font in fonts {
        let stem = font.as_str().rsplit_once('/').unwrap().1.split(['-', '.']).next().unwrap();
        let folder = font.as_str().rsplit_once('/').unwrap().0;
        let licence = VPath::new(&format!("{folder}/{stem}-LICENCE.txt")).unwrap();
        let text = files.read_text(&licence, 1 << 20).unwrap_or_else(|trouble| panic!("{font}: {trouble}"));
        assert!(text.contains("SIL OPEN FONT LICENSE") && text.contains("Copyright"), "{licence}");
    }
}

/// What our own reader finds in every font that the program carries, for a second one to hold against the files.
#[test]
#[ignore = "tests/fonts.sh runs it, with the file to write in COVERAGE"]
fn coverage_for_a_second_reader() {
    let out = std::path::PathBuf::from(std::env::var("COVERAGE").expect("the file in COVERAGE"));
    let files = Builtin::new();
    let mut folders = vec![(VPath::new("assets/fonts").unwrap(), FontBook::bundled().unwrap())];
    for id in builtin_ids() {
        let below = VPath::new("themes").unwrap().join(id.as_str()).unwrap();
        let fonts = FontBook::bundled()
            .unwrap()
            .with_folder(&Builtin::below(below.clone()), &VPath::new("fonts").unwrap())
            .unwrap();
        folders.push((below.join("fonts").unwrap(), fonts));
    }
    let every: String = ('!'..='\u{FFFD}').collect();
    let mut rows = Vec::new();
    for (folder, fonts) in folders {
        let held = files.list(&folder).unwrap();
        for family in fonts.families() {
            let squeezed = family.replace(' ', "");
            let own = |path: &&VPath| {
                path.extension() == "ttf" && path.file_name().split('-').next() == Some(squeezed.as_str())
            };
            let faces: Vec<String> = held.iter().filter(own).map(ToString::to_string).collect();
            if faces.is_empty() {
                continue;
            }
            let lettering = Lettering::new(&[("text".to_owned(), family.clone())].into(), &Default::default()).unwrap();
            let press = inklatch::print::Press::new(&fonts, &lettering).unwrap();
            let lacks: std::collections::BTreeSet<char> =
                press.lacks(inklatch::face::Role::Text, &every).into_iter().collect();
            let has: String = every.chars().filter(|c| !lacks.contains(c)).collect();
            rows.push(serde_json::json!({ "family": family, "files": faces, "has": has }));
        }
    }
    assert!(rows.len() > 5);
    let folder = out.parent().unwrap();
    let name = VPath::new(out.file_name().unwrap().to_str().unwrap()).unwrap();
    inklatch::files::Disk::new(folder).write(&name, serde_json::to_vec(&rows).unwrap().as_slice()).unwrap();
}
