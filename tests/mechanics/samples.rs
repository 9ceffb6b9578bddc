//! The samples of lists and galleries, in every theme.

use std::collections::BTreeMap;

use inklatch::kit::LockKind;
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::{carried, sample};
use inklatch::readings::{Budget, Verdict};
use inklatch::theme::{Palette, builtin_ids, load_builtin};
use rand::SeedableRng as _;

#[test]
fn every_mechanic_has_a_sample_in_every_theme_that_reads_one_way() {
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap();
        let palette = Palette::new(&theme.theme.palette, &BTreeMap::new()).unwrap();
        for mechanic in MECHANICS {
            let meta = mechanic.meta();
            let made =
                sample(*mechanic, &theme, &palette).unwrap_or_else(|trouble| panic!("{id}, {}: {trouble}", meta.id));
            let found = made.view.readings(&made.lock, &mut Budget::default());
            assert_eq!(found.verdict(&made.answer), Verdict::One, "{id}, {}: {found:?}", meta.id);
            assert!(!made.pieces.is_empty(), "{id}, {}", meta.id);
            let again = sample(*mechanic, &theme, &palette).unwrap();
            assert_eq!(
                (&again.answer, again.view.json(), &again.pieces),
                (&made.answer, made.view.json(), &made.pieces)
            );
            let facts = made.facts;
            assert_eq!(facts.tools.len(), meta.tools.len());
            assert!(!facts.paper_only || (facts.things.is_empty() && !facts.film), "{}: {facts:?}", meta.id);
            if facts.paper_only {
                assert!(meta.parts.iter().all(|part| part.printed || part.optional), "{} has parts to make", meta.id);
            }
        }
    }
}

#[test]
fn refused_answers_are_passed_over_and_none_is_given_for_a_lock_that_does_not_suit() {
    let theme = load_builtin(&builtin_ids()[0]).unwrap();
    let mechanic = inklatch::mechanics::find("fold-strip").unwrap();
    let setup = mechanic.default_setup().unwrap();
    let mut rng = inklatch::mechanics::Rng::seed_from_u64(4);
    let one = LockKind::Digits(1);
    let (answer, _) = carried(mechanic, &setup, &one, &theme, &|answer| answer != "7", &mut rng).unwrap();
    assert_eq!(answer, "7");
    assert!(carried(mechanic, &setup, &one, &theme, &|_| true, &mut rng).is_none());
    assert!(carried(mechanic, &setup, &LockKind::Directions(4), &theme, &|_| false, &mut rng).is_none());
}

#[test]
fn every_theme_has_words_of_its_own_for_every_mechanic() {
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap();
        for mechanic in MECHANICS {
            let meta = mechanic.meta();
            let Some(words) = theme.theme.dressings.get(meta.id) else { panic!("{id} has no words for {}", meta.id) };
            let named = meta.parts.iter().any(|part| words.contains_key(part.key));
            assert!(named, "{id} names no part of {}: {words:?}", meta.id);
            assert!(words.values().all(|text| text.trim() == text.as_str()), "{id}, {}: {words:?}", meta.id);
        }
    }
}
