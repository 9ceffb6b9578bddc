//! What players read on the pieces of a puzzle can be read by the youngest for whom its mechanic says that it is.

use std::collections::BTreeSet;

use inklatch::face::prose;
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::samples;
use inklatch::script::Readability;

use crate::common::Stage;

/// As `reading-age` has it: Flesch-Kincaid grade (Kincaid and others, 1975), with a year of slack; a rule of fewer than
/// twenty words may be off by another, because one long word shifts it by that; those under six are read to.
fn most(least_age: u8, words: usize) -> f64 {
    f64::from(least_age.max(6)) + if words < 20 { 2.0 } else { 1.0 }
}

/// A text in one line, with plain apostrophes and quotation marks, as a setup may write it.
fn squeezed(text: &str) -> String {
    let plain = text.replace(['’', '‘'], "'").replace(['“', '”'], "\"");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn printed_rules_fit_and_can_be_read_by_the_youngest_that_a_mechanic_is_for() {
    let (mut hard, mut ruled) = (Vec::new(), BTreeSet::new());
    for stage in Stage::all() {
        let mut set = BTreeSet::new();
        for mechanic in MECHANICS {
            let meta = mechanic.meta();
            for (setup, sample) in samples(*mechanic, &stage.theme, &stage.palette).unwrap() {
                let said: Vec<String> = prose(&sample.pieces).into_values().flatten().collect();
                if !set.insert((meta.id, said.clone())) {
                    continue;
                }
                for piece in &sample.pieces {
                    let fits = stage.press.fits(&piece.front).unwrap();
                    if !fits.into_iter().all(|fits| fits) {
                        hard.push(format!("{} overflows in {}: {setup}", piece.id, stage.theme.theme.id));
                    }
                }
                let written = squeezed(&setup).replace('*', "");
                // What the setup says itself is the author's, who is told by the check.
                let own = |text: &String| !written.contains(&squeezed(text));
                let rules: Vec<String> = said.into_iter().filter(own).collect();
                let read =
                    rules.iter().map(|text| Readability::of(text)).fold(Readability::default(), Readability::and);
                let Some(age) = read.age() else { continue };
                ruled.insert(meta.id);
                if age > most(meta.least_age, read.words) {
                    hard.push(format!("{} for {}, age {age:.1}: {}", meta.id, meta.least_age, rules.join(" // ")));
                }
            }
        }
    }
    hard.sort();
    hard.dedup();
    assert!(hard.is_empty(), "{}", hard.join("\n"));
    // Most mechanics print rules; the rest say them in the author's words, or need none.
    assert!(ruled.len() * 10 > MECHANICS.len() * 8, "{ruled:?}");
}
