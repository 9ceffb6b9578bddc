//! Symbols that take one another's place.

use super::*;

#[test]
fn a_symbols_name_is_exchanged_only_where_it_means_the_picture() {
    let regatta = inklatch::bundle::open_demo("the-harbour-regatta").unwrap();
    let home = &regatta.theme.theme;
    let mut kit = regatta.kit.clone();
    let bay = kit.puzzles.iter_mut().find(|puzzle| puzzle.id.as_str() == "bay").unwrap();
    bay.hints.nudge = "Sail round the whale watch, wave, and count the sails. Two whales sail by.".into();
    for away in others(&home.id) {
        let dressed = redress(&kit, home, &away).kit;
        let (done, places) = mend_all(&dressed, &away);
        let new = |old: &str| dressed.dressed.symbols.get(old).cloned().unwrap_or_else(|| old.to_owned());
        let many = |old: &str| inklatch::script::many(&WordForms { one: new(old), ..WordForms::default() });
        let at = |place: &str| -> Vec<String> {
            said(&done).into_iter().filter(|(at, _)| at == place).map(|(_, text)| text).collect()
        };
        // What stands in no puzzle that prints the picture stays, to be asked about.
        let letter = |kit: &Kit| said(kit).into_iter().filter(|(at, _)| at == "letter").collect::<Vec<_>>();
        assert_eq!(letter(&done), letter(&kit), "{}", away.id);
        assert!(at("note shell-note").iter().any(|text| text.contains("Crabs like to move house")), "{}", away.id);
        assert!(at("lock map-lock").contains(&format!("the padlock with the {}", new("map"))));
        assert!(at("lock wheel-lock").iter().any(|text| text.contains("If your wheels lack a letter")));
        // A lock is named after the mark that it wears.
        assert_eq!(at("lock starfish-lock")[0], format!("the padlock with the {}", new("starfish")));
        // In a puzzle that prints it, a word of the puzzle's own rules keeps its sense.
        let method = at("puzzle bay, standard method");
        assert!(method[0].ends_with("Pass over those in a drawn circle."), "{}: {method:?}", away.id);
        let giveaway = at("puzzle bay, standard giveaway");
        assert!(giveaway[0].contains("with no circle: they are three."), "{}: {giveaway:?}", away.id);
        assert!(giveaway[0].starts_with(&format!("Count only the {}", many("rowboat"))), "{}: {giveaway:?}", away.id);
        // A verb is no picture, nor is half of another word.
        let nudge = at("puzzle bay, standard nudge");
        let expected = format!("Sail round the whale watch, wave, and count the {}. Two whales sail by.", many("sail"));
        assert_eq!(nudge, [expected], "{}", away.id);
        // The new name of a picture goes before the word of a slot that said the same.
        let island = at("puzzle island, standard method");
        let start = format!("Put a finger on the {} of the map.", new("lighthouse"));
        assert!(island[0].starts_with(&start), "{}: {island:?}", away.id);
        assert!(!places.is_empty() && places.iter().all(|place| !place.is.is_empty() && !place.was.is_empty()));
        // What was left is found, and can be kept everywhere in one step.
        let left = leftovers(&done);
        if let Some(crab) = left.iter().find(|leftover| leftover.word.one == "crab") {
            let (edits, places) = keep_everywhere(&done, &crab.word);
            let mut kept = done.clone();
            apply_all(&mut kept, edits);
            assert!(places > 1 && leftovers(&kept).iter().all(|leftover| leftover.word.one != "crab"));
        }
    }
}

#[test]
fn a_theme_with_too_few_symbols_says_so_in_one_sentence() {
    let regatta = inklatch::bundle::open_demo("the-harbour-regatta").unwrap();
    let mut small = theme("hive");
    while small.symbols.len() > 18 {
        small.symbols.pop_last();
    }
    let fresh = redress(&regatta.kit, &regatta.theme.theme, &small);
    assert_eq!(fresh.troubles.len(), 1);
    assert_eq!(fresh.troubles[0].message, "this kit uses 29 symbols, the theme Hive has 18: draw 11 more");
}

#[test]
fn the_author_may_choose_which_symbol_takes_whose_place() {
    let regatta = inklatch::bundle::open_demo("the-harbour-regatta").unwrap();
    let (home, hive) = (&regatta.theme.theme, theme("hive"));
    let choose = |from: &str, to: &str| redress_as(&regatta.kit, home, &hive, &[(from.into(), to.into())].into());
    let fresh = choose("crab", "ladybird").unwrap();
    assert!(fresh.troubles.is_empty());
    assert_eq!(fresh.kit.dressed.symbols["crab"], "ladybird");
    let taken: std::collections::BTreeSet<&String> = fresh.kit.dressed.symbols.values().collect();
    assert_eq!(taken.len(), fresh.kit.dressed.symbols.len(), "two symbols became one");
    for (from, to, says) in [
        ("owl", "bee", "the kit uses no symbol `owl`"),
        ("crab", "owl", "the theme Hive has no symbol `owl`"),
        ("crab", "moon", "`moon` keeps its own name"),
    ] {
        assert!(choose(from, to).unwrap_err().message.contains(says), "{from} {to}");
    }
    let twice = [("crab".to_owned(), "bee".to_owned()), ("net".to_owned(), "bee".to_owned())].into();
    assert!(redress_as(&regatta.kit, home, &hive, &twice).unwrap_err().message.contains("chosen twice"));
    let mut back = redress(&fresh.kit, &hive, home).kit;
    back.dressed = Dressed::default();
    assert_eq!(back, regatta.kit);
}
