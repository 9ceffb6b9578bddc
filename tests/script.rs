//! Tests of `script`: slots, forms of words, markup, how hard a text is to read.

#[path = "script/readability.rs"]
mod readability;

use inklatch::diag::{Anchor, Level, PuzzleField, Step};
use inklatch::kit::file::read_kit;
use inklatch::kit::{HintLadder, Kit, LevelChange, RawSetup, WordForms};
use inklatch::script::{Script, Words, article, parse};
use inklatch::theme::Theme;
use proptest::prelude::{any, proptest};

/// A kit with words and one puzzle, and a theme with words.
fn kit() -> Kit {
    read_kit(
        r#"(
            format: 1, id: "k", title: "Under the {{ roof }}", author: "A", theme: "t",
            players: (2, 4), ages: (10, 99), minutes: 30,
            letter: (salutation: "Dear {{ guest | plural }},", body: "Look for {{ fox | a }}.", closing: "", signature: "{{ who }}"),
            finish: (opens: "box", card: "end"),
            puzzles: [(
                id: "p", title: "T", mechanic: "letter-key", answer: "12", opens: "l",
                setup: (word: "{{ who }}"),
                hints: (nudge: "Near {{ fox | the }}.", method: "m", giveaway: "g"),
            )],
            words: {
                "fox": (one: "fox"), "who": (one: "Ann"), "roof": (one: "roof"), "guest": (one: "guest"),
                "hour": (one: "hour", article: "an"), "mouse": (one: "mouse", many: "mice"),
                "owl": (one: "owl"), "berry": (one: "berry"), "day": (one: "day"), "torch": (one: "torch"),
                "said": (one: "she said \"no\" \\ left"),
            },
        )"#,
        "kit.ron",
    )
    .unwrap_or_else(|trouble| panic!("{trouble}"))
}

fn theme() -> Theme {
    inklatch::kit::file::from_ron(
        r#"(
            format: 1, id: "t", name: "T", credit: "", palette: {}, lettering: {}, frames: {}, symbols: {},
            words: {"fox": (one: "badger"), "lamp": (one: "lamp")},
        )"#,
        "theme.ron",
    )
    .unwrap_or_else(|trouble| panic!("{trouble}"))
}

fn fill(text: &str) -> String {
    Words::new(&theme(), &kit()).fill(text).unwrap_or_else(|trouble| panic!("{text}: {trouble}"))
}

#[test]
fn slots_take_the_form_that_they_ask_for() {
    for (text, filled) in [
        ("{{ owl }}", "owl"),
        ("{{ owl | a }}", "an owl"),
        ("{{ fox | a }}", "a fox"),
        ("{{ hour | a }}", "an hour"),
        ("{{ fox | the }}", "the fox"),
        ("{{ fox | cap }}", "Fox"),
        ("{{ fox | caps }}", "FOX"),
        ("{{ fox | plural }}", "foxes"),
        ("{{ torch | plural }}", "torches"),
        ("{{ berry | plural }}", "berries"),
        ("{{ day | plural }}", "days"),
        ("{{ mouse | plural }}", "mice"),
        ("{{ mouse | plural | cap }}", "Mice"),
        ("{{owl}}, {{  owl  }}", "owl, owl"),
        ("no slot { at } all }}", "no slot { at } all }}"),
    ] {
        assert_eq!(fill(text), filled, "{text}");
    }
    assert_eq!(article(&WordForms { one: "Ice".into(), ..WordForms::default() }), "an");
}

#[test]
fn the_kits_word_stands_in_place_of_the_themes() {
    assert_eq!(fill("{{ fox }} {{ lamp }}"), "fox lamp");
}

#[test]
fn a_slot_without_a_word_names_the_nearest() {
    let words = Words::new(&theme(), &kit());
    let trouble = words.fill("See {{ lmap }}.").unwrap_err();
    assert!(trouble.message.contains("lmap"), "{trouble}");
    assert!(trouble.hints.iter().any(|hint| hint == "did you mean `lamp`?"), "{trouble}");
    let trouble = words.fill("See {{ lmap | plural | cap }}.").unwrap_err();
    assert!(trouble.message.contains("lmap"), "{trouble}");
    assert!(trouble.hints.iter().any(|hint| hint == "did you mean `lamp`?"), "{trouble}");
    let trouble = words.fill("{{ lamp | plurale }}").unwrap_err();
    assert!(trouble.hints.iter().any(|hint| hint.contains("plural")), "{trouble}");
}

#[test]
fn only_slots_can_stand_in_a_text() {
    let words = Words::new(&theme(), &kit());
    for bad in [
        "{% for i in range(9) %}x{% endfor %}",
        "{{ range(100000000) }}",
        "{{ lamp.one }}",
        "{{ lamp",
        "{{ }}",
        "{{ lamp | upper }}",
        "{{ debug() }}",
    ] {
        assert!(words.fill(bad).is_err(), "{bad} was taken");
    }
}

#[derive(serde::Deserialize)]
struct Two {
    text: String,
    more: String,
}

#[test]
fn a_word_cannot_end_the_string_it_stands_in() {
    let words = Words::new(&theme(), &kit());
    let filled = words.fill_ron(r#"(text: "{{ said }}", more: "{{ said | cap }}")"#).unwrap();
    let two: Two = inklatch::kit::file::from_ron(&filled, "setup").unwrap_or_else(|trouble| panic!("{trouble}"));
    assert_eq!(two.text, "she said \"no\" \\ left");
    assert_eq!(two.more, "She said \"no\" \\ left");
}

#[test]
fn every_text_of_the_kit_is_filled() {
    let script = Script::new(&kit(), &theme(), Level::Standard);
    assert!(script.unfilled.is_empty(), "{:?}", script.unfilled);
    assert_eq!(script.title, "Under the roof");
    assert_eq!(script.letter.salutation.text(), "Dear guests,");
    assert_eq!(script.letter.body.text(), "Look for a fox.");
    assert_eq!(script.puzzles[0].setup, "(word: \"Ann\")");
    assert_eq!(script.puzzles[0].hints.nudge, "Near the fox.");
}

#[test]
fn what_cannot_be_filled_is_kept_as_written_and_listed() {
    let mut kit = kit();
    kit.words.remove("who");
    kit.letter.closing = "By {{ nobody }}".into();
    let script = Script::new(&kit, &theme(), Level::Stiff);
    assert_eq!(script.letter.closing.text(), "By {{ nobody }}");
    let places: Vec<&Anchor> = script.unfilled.iter().map(|(at, _)| at).collect();
    assert_eq!(places.iter().filter(|at| ***at == Anchor::Letter).count(), 2, "{places:?}");
    assert!(places.contains(&&Anchor::Puzzle(kit.puzzles[0].id.clone(), PuzzleField::Setup)), "{places:?}");
}

#[test]
fn a_level_changes_only_what_it_names() {
    let mut kit = kit();
    kit.puzzles[0].stiff = Some(LevelChange {
        setup: Some(RawSetup::new("(word: \"BEA\")").unwrap()),
        hints: Some(HintLadder { method: "think".into(), ..HintLadder::default() }),
        ..Default::default()
    });
    let of = |level| Script::new(&kit, &theme(), level).puzzles.remove(0);
    let (standard, stiff) = (of(Level::Standard), of(Level::Stiff));
    assert_eq!(stiff.setup, "(word: \"BEA\")");
    assert_eq!(stiff.hints.method, "think");
    assert_eq!(stiff.hints.nudge, standard.hints.nudge);
    assert_eq!(of(Level::Gentle).hints, standard.hints);
    for step in Step::ALL {
        assert!(!stiff.hints.step(step).is_empty());
    }
}

#[test]
fn markup_is_emphasis_breaks_and_paragraphs() {
    let rich = parse("A *thin* and a **strong** word\\\nbelow\n\nNext");
    assert_eq!(rich.paragraphs.len(), 2);
    assert_eq!(rich.text(), "A thin and a strong word\nbelow\n\nNext");
    let spans = &rich.paragraphs[0].spans;
    assert!(spans.iter().any(|span| span.text == "thin" && span.emph && !span.strong));
    assert!(spans.iter().any(|span| span.text == "strong" && span.strong && !span.emph));
    assert!(parse("").is_empty() && parse("  \n\n ").is_empty());
}

#[test]
fn nothing_that_an_author_writes_vanishes() {
    for text in [
        "3. April was cold",
        "7) bells",
        "- a dash first",
        "# no heading here",
        "> quoted",
        "<b>not bold</b>",
        "[the tower]: is old",
        "a [link](somewhere) stays",
        "![the bell](bell.png)",
        "`code` and ~~struck~~",
        "    four spaces first",
        "fish & chips &amp; peas",
        "***",
        "---",
        "1 * 2 * 3",
        "C:\\bells",
    ] {
        let shown = parse(text).text();
        let plain = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>();
        // `&amp;` is CommonMark's way to write `&`.
        assert_eq!(plain(&shown), plain(&text.replace("&amp;", "&")), "{text:?} shows {shown:?}");
    }
}

proptest! {
    #[test]
    fn letters_and_digits_survive_any_text(text in "[a-z0-9 .,:!?'*_#>()\\[\\]`\n-]{0,80}") {
        let plain = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>();
        assert_eq!(plain(&parse(&text).text()), plain(&text));
    }

    #[test]
    fn no_text_brings_it_down(text in any::<String>()) {
        let _ = parse(&text).text();
        let _ = Words::new(&theme(), &kit()).fill(&text);
        let _ = Words::new(&theme(), &kit()).fill_ron(&text);
    }
}
