//! One piece, one name: what preparation, reasons and resetting call a part stands on its caption, word for word.

use std::collections::BTreeMap;

use inklatch::mechanics::words::bare;
use inklatch::mechanics::{Dressing, MECHANICS};

use crate::common::dressed;

#[test]
fn what_the_host_is_told_of_a_part_stands_on_its_caption() {
    let mut compared = 0;
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        for (lock, _, view) in super::laid(*mechanic, 5) {
            let told = |names: &BTreeMap<String, String>| {
                dressed(meta.id, &lock, |cx| {
                    let cx = Dressing { names, ..*cx };
                    let mut said: Vec<String> = view.prep(&cx).into_iter().map(|step| step.what).collect();
                    said.extend([view.reason(&cx), view.reset(&cx)]);
                    (said.join("\n"), view.pieces(&cx).unwrap())
                })
            };
            let (plain, pieces) = told(&BTreeMap::new());
            for part in meta.parts {
                // A word that nothing else says shows where the part's name is used.
                let (said, renamed) = told(&BTreeMap::from([(part.key.to_owned(), "the zzz".to_owned())]));
                let mut names: Vec<String> = Vec::new();
                for (before, after) in pieces.iter().zip(&renamed).filter(|(piece, _)| piece.part == part.key) {
                    let of = after.label.strip_prefix("Zzz").unwrap_or_else(|| panic!("{}: {}", meta.id, after.label));
                    assert!(of.is_empty() || of.starts_with(": "), "{}: {}", meta.id, after.label);
                    names.push(before.label.strip_suffix(of).unwrap().to_lowercase());
                }
                names.dedup();
                assert!(names.len() < 2, "{}, {}: {names:?}", meta.id, part.key);
                let name = names.pop().unwrap_or_else(|| bare(part.name).to_lowercase());
                compared += said.matches("zzz").count();
                let back = said.to_lowercase().replace("zzz", &name);
                assert_eq!(back, plain.to_lowercase(), "{}, {}", meta.id, part.key);
            }
        }
    }
    assert!(compared > 200, "{compared} names were compared");
}
