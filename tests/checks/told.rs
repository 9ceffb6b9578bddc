//! What findings say, and which of them are left unsaid because another says it.

use inklatch::checks::Finding;
use inklatch::diag::{Level, Severity};
use inklatch::kit::edit::apply_all;
use inklatch::kit::file::{read_kit, write_kit};
use inklatch::kit::{Apart, LevelChange, LockKind, Lying, Place, RawSetup};
use inklatch::mechanics::MECHANICS;
use inklatch::mechanics::sample::sample;
use inklatch::theme::Palette;

use super::rows::{prop, spot};
use super::{Case, lines, look};

fn found(change: fn(&mut Case)) -> Vec<Finding> {
    let mut case = Case::sound();
    change(&mut case);
    look(&case, |_, _| {})
}

fn of<'a>(findings: &'a [Finding], name: &str) -> Vec<&'a Finding> {
    findings.iter().filter(|finding| finding.name == name).collect()
}

#[test]
fn a_mark_that_two_kinds_of_locks_wear_is_told() {
    let findings = found(|case| {
        case.kit.locks[0].kind = LockKind::Spoken;
        case.kit.locks[0].mark = case.kit.locks[1].mark.clone();
    });
    let told = of(&findings, "lock-unmarked");
    assert!(told.iter().any(|f| f.message.contains("wear one mark, `")), "{}", lines(&findings));
}

#[test]
fn every_number_that_no_party_can_have_blocks() {
    type Change = (fn(&mut Case), &'static str);
    let changes: [Change; 15] = [
        (|case| case.kit.players = (0, 0), "there are no 0 guests"),
        (|case| case.kit.players = (1, 255), "255 guests are more"),
        (|case| case.kit.ages = (12, 9), "the least is more than the most"),
        (|case| case.kit.ages = (9, 200), "200 years are more"),
        (|case| case.kit.minutes = 0, "the play is to take 0 minutes"),
        (|case| case.kit.minutes = 5_000, "the play is to take 5000 minutes"),
        (|case| case.kit.prep_minutes = Some(0), "the host has 0 minutes"),
        (|case| case.kit.puzzles[0].minutes = Some(-3.0), "`minutes` of \"The cuff\" is -3"),
        (|case| case.kit.puzzles[0].minutes = Some(f64::NAN), "`minutes` of \"The cuff\" is NaN"),
        (|case| case.kit.puzzles[0].slow_minutes = Some(0.0), "`slow_minutes` of \"The cuff\" is 0"),
        (
            |case| (case.kit.puzzles[0].minutes, case.kit.puzzles[0].slow_minutes) = (Some(9.0), Some(4.0)),
            "need 9 minutes for \"The cuff\", and nine of ten are to have it within 4",
        ),
        (|case| case.kit.locks[0].kind = LockKind::Digits(0), "has 0 digit wheels"),
        (|case| case.kit.locks[0].kind = LockKind::Letters(vec!["A".into(); 3]), "carries 1 letters"),
        (|case| case.kit.locks[0].hole = 9, "hangs in hole 9"),
        (|case| case.kit.levels.standard.open_steps = 4, "4 hint steps lie open"),
    ];
    for (change, says) in changes {
        let findings = found(change);
        let told = of(&findings, "impossible-number");
        assert!(
            told.iter().any(|f| f.message.contains(says) && f.severity == Severity::Blocks),
            "{says}: {}",
            lines(&findings)
        );
        assert!(told.iter().all(|f| !f.help.is_empty()));
    }
    // A level's own minutes count at that level alone.
    let findings = found(|case| {
        case.kit.puzzles[0].gentle = Some(LevelChange { minutes: Some(-1.0), ..LevelChange::default() });
    });
    assert!(of(&findings, "impossible-number").is_empty());
}

#[test]
fn a_part_under_a_wrong_name_is_told_once_and_before_what_follows() {
    let findings = found(|case| {
        let place = case.kit.puzzles[0].parts.remove("key-card").unwrap();
        case.kit.puzzles[0].parts.insert("frame".into(), place);
    });
    let first = &findings[0];
    assert_eq!((first.name, first.severity), ("piece-in-no-place", Severity::Blocks), "{}", lines(&findings));
    assert!(first.message.contains("no part `frame`") && first.message.contains("(`key-card`) lies nowhere"));
    assert_eq!(of(&findings, "piece-in-no-place").len(), 1);
    let follow = of(&findings, "never-reached");
    assert_eq!(follow.len(), 1, "{}", lines(&findings));
    assert!(follow[0].help.iter().any(|help| help.contains("the part `key-card` of \"The cuff\" lies nowhere")));
}

#[test]
fn a_wrong_answer_blocks_once_and_the_wheel_says_what_it_carries() {
    let findings = found(|case| {
        case.kit.locks[0].kind = LockKind::Letters(vec!["ABC".into(), "DEF".into(), "GHI".into()]);
        case.kit.puzzles[0].answer = "AXG".into();
    });
    assert!(of(&findings, "setup-refused").is_empty(), "{}", lines(&findings));
    let told = of(&findings, "answer-off-lock");
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].help[0], "wheel 2 carries DEF");
}

#[test]
fn a_name_that_leads_nowhere_is_told_with_those_that_lead_somewhere() {
    let findings = found(|case| case.kit.locks[0].mark = "zzz".into());
    let told = of(&findings, "unknown-reference");
    assert!(told[0].help.iter().any(|help| help.starts_with("the symbols of the theme are ")), "{}", lines(&findings));
    let findings = found(|case| case.kit.props.push(prop("hat", spot("table"), "felt")));
    let told = of(&findings, "unknown-reference");
    assert!(told[0].help.iter().any(|help| help.contains("scissors, ruler")), "{:?}", told[0].help);
}

#[test]
fn a_preparation_with_nothing_to_dry_speaks_of_no_ink() {
    let findings = found(|case| {
        case.kit.prep_minutes = Some(1);
        // What is written with ink is put in the place of what dries.
        for puzzle in &mut case.kit.puzzles {
            puzzle.mechanic = "letter-key".into();
            puzzle.setup = RawSetup::new("()").unwrap();
        }
    });
    let told = of(&findings, "dry-time-late");
    assert!(told[0].message.contains("of work alone") && !told[0].why.contains("wet"), "{}", lines(&findings));
    assert!(told[0].help.len() > 3, "{:?}", told[0].help);
}

/// The host is told to keep parts apart by those mechanics, and by those alone, whose parts the check knows to lie apart.
#[test]
fn what_the_host_keeps_apart_is_known_to_the_check() {
    let theme = super::plain_theme();
    let palette = Palette::new(&theme.theme.palette, &std::collections::BTreeMap::new()).unwrap();
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        let made = sample(*mechanic, &theme, &palette).unwrap();
        let pairs = made.view.apart();
        let parts = made.view.parts();
        for (one, other) in &pairs {
            assert!(one != other && parts.contains(one) && parts.contains(other), "{}: {pairs:?}", meta.id);
        }
        let says = ["lays them apart", "lays the card elsewhere"].iter().any(|words| meta.host.contains(words));
        assert!(!says || !pairs.is_empty(), "{} lays its parts apart, and no check looks", meta.id);
    }
}

#[test]
fn a_wheel_beside_its_message_is_too_close_without_a_word_of_the_kit() {
    let findings = found(|case| {
        let puzzle = &mut case.kit.puzzles[0];
        puzzle.mechanic = "shift-wheel".into();
        puzzle.setup = RawSetup::new("()").unwrap();
        puzzle.parts = [("wheel".to_owned(), spot("table")), ("message".to_owned(), spot("table"))].into();
    });
    let told = of(&findings, "too-close");
    assert_eq!(told.len(), 1, "{}", lines(&findings));
    assert!(told[0].message.contains("were to lie apart"), "{}", told[0].message);
    let findings = found(|case| {
        let puzzle = &mut case.kit.puzzles[0];
        puzzle.mechanic = "shift-wheel".into();
        puzzle.setup = RawSetup::new("()").unwrap();
        puzzle.parts = [("wheel".to_owned(), spot("table")), ("message".to_owned(), spot("table"))].into();
        let part = |part: &str| Lying::Part(puzzle.id.clone(), part.into());
        case.kit.apart =
            vec![Apart { one: part("message"), other: part("wheel"), why: "half of the fun".into(), together: false }];
    });
    let told = of(&findings, "too-close");
    assert_eq!((told.len(), told[0].why.as_str()), (1, "half of the fun"), "{}", lines(&findings));
}

#[test]
fn a_code_in_the_themes_own_words_is_told_as_theirs() {
    let change = |case: &mut Case| {
        case.theme = inklatch::theme::load_builtin(&inklatch::ids::ThemeId::new("hive").unwrap()).unwrap();
        let puzzle = &mut case.kit.puzzles[0];
        puzzle.mechanic = "overlay-sheets".into();
        puzzle.setup = RawSetup::new("()").unwrap();
        puzzle.parts = [("paper-sheet".to_owned(), spot("table")), ("clear-sheet".to_owned(), spot("shelf"))].into();
        let lock = case.kit.puzzles[2].opens.clone();
        case.kit.lock_mut(&lock).unwrap().kind = LockKind::Spoken;
        case.kit.puzzles[2].answer = "POLLEN".into();
    };
    let mut case = Case::sound();
    change(&mut case);
    let findings = look(&case, |_, _| {});
    let told = of(&findings, "code-in-plain-sight");
    assert!(
        told.iter().any(|f| f.message.contains("as the theme Hive calls it") && f.help[0].contains("\"sheets-title\"")),
        "{}",
        lines(&findings)
    );
    case.kit.puzzles[0].names.insert("sheets-title".into(), "On the pane".into());
    let findings = look(&case, |_, _| {});
    assert!(of(&findings, "code-in-plain-sight").is_empty(), "{}", lines(&findings));
}

#[test]
fn what_is_printed_on_pieces_is_held_to_the_age_of_the_youngest() {
    let hard = "Underneath the uppermost undergarment, notwithstanding appearances to the contrary, an industrious \
                seamstress has embroidered an exceptionally inconspicuous inscription:";
    let with = |youngest: u8, text: &str| {
        let mut case = Case::sound();
        case.kit.ages.0 = youngest;
        case.kit.puzzles[0].setup = RawSetup::new(&format!("(word: \"OWL\", card_text: \"{text}\")")).unwrap();
        let findings = look(&case, |_, _| {});
        of(&findings, "reading-age").iter().map(|f| format!("{}: {}", f.anchor, f.message)).collect::<Vec<_>>()
    };
    let told = with(9, hard);
    assert!(matches!(told.as_slice(), [one] if one.contains("on the pieces of \"The cuff\" has grade")), "{told:?}");
    // The rule that the mechanic prints is for six and older, and they are read to who are younger.
    for youngest in [4, 6, 9] {
        assert_eq!(with(youngest, "There is a name on the cuff:"), Vec::<String>::new(), "{youngest}");
    }
}

#[test]
fn parts_that_a_mechanic_keeps_apart_may_lie_together_where_the_author_says_so() {
    let mut case = Case::sound();
    let puzzle = &mut case.kit.puzzles[0];
    puzzle.mechanic = "shift-wheel".into();
    puzzle.setup = RawSetup::new("()").unwrap();
    puzzle.parts = [("wheel".to_owned(), spot("table")), ("message".to_owned(), spot("table"))].into();
    // With one spot, and boxes that this puzzle opens, there is no other place for either.
    case.kit.spots.truncate(1);
    let places = case.kit.boxes.iter_mut().map(|item| &mut item.place);
    let places = places.chain(case.kit.props.iter_mut().map(|prop| &mut prop.place));
    let places = places.chain(case.kit.puzzles.iter_mut().flat_map(|puzzle| puzzle.parts.values_mut()));
    places.filter(|place| matches!(place, Place::Spot(_))).for_each(|place| *place = spot("table"));
    let wheel = |findings: &[Finding]| -> Vec<Finding> {
        of(findings, "too-close").into_iter().filter(|f| f.message.contains("wheel")).cloned().collect()
    };
    let told = wheel(&look(&case, |_, _| {}));
    assert_eq!(told.len(), 1);
    assert!(told[0].help.iter().any(|help| help.contains("together: true")), "{:?}", told[0].help);
    let fix = told[0].fix.clone().unwrap();
    assert_eq!(fix.title, "Let them lie together");
    let back = apply_all(&mut case.kit, fix.edits);
    assert!(case.kit.apart[0].together);
    assert_eq!(wheel(&look(&case, |_, _| {})), []);
    let text = write_kit(&case.kit).unwrap();
    assert_eq!(read_kit(&text, "kit.ron").unwrap().apart, case.kit.apart);
    apply_all(&mut case.kit, back);
    assert_eq!(wheel(&look(&case, |_, _| {})), told);
}

#[test]
fn padlocks_hang_in_holes_of_their_own_on_a_hasp() {
    let findings = found(|case| {
        case.kit.locks[1].hole = 2;
        case.kit.locks[2].hole = 2;
        case.kit.locks[0].hole = 1;
    });
    let told = of(&findings, "over-hasp");
    assert_eq!(told.len(), 2, "{}", lines(&findings));
    assert!(told.iter().any(|one| one.message.contains("the bell padlock hangs in hole 1, and the tin has no hasp")));
    assert!(told.iter().any(|one| one.message.contains("the star padlock and the moon padlock both hang in hole 2")));
    let fixed = |one: &&Finding| one.fix.as_ref().is_some_and(|fix| fix.title == "Hang it in hole 1");
    assert!(told.iter().any(fixed), "{told:?}");
}

#[test]
fn a_level_states_minutes_of_its_own() {
    let mut kit = crate::sound::sound_kit();
    kit.levels.gentle.minutes = Some(35);
    let stated = Level::ALL.map(|level| kit.minutes_at(level));
    assert_eq!(stated, [35, 20, 20]);
    let findings = found(|case| case.kit.levels.stiff.minutes = Some(0));
    assert!(of(&findings, "impossible-number")[0].message.contains("`levels`, `stiff`"), "{}", lines(&findings));
}
