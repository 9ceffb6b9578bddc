use inklatch::script::{ALOUD, Readability, parse, syllables};
use serde_json::Value;

/// Source: textstat 0.7.13 with CMUdict, recounted independently (tests/refs/02_readability.json, which says how).
/// Words and sentences are exact. Syllables are counted by rule here and by dictionary there: reading ease within 8,
/// grade within 1.2, as the file asks.
const PASSAGES: &str = include_str!("../refs/02_readability.json");
/// Source: the CMU Pronouncing Dictionary (tests/refs/02_syllables_cmudict.json). A rule is no dictionary: at least 95
/// of 100 words exact, and every word within one syllable.
const WORDS: &str = include_str!("../refs/02_syllables_cmudict.json");

fn cases(json: &str) -> Vec<Value> {
    let file: Value = serde_json::from_str(json).unwrap();
    file["cases"].as_array().unwrap().clone()
}

#[test]
fn syllables_agree_with_a_dictionary_but_for_a_few() {
    let (mut wrong, mut far) = (Vec::new(), Vec::new());
    let cases = cases(WORDS);
    for case in &cases {
        let word = case["w"].as_str().unwrap();
        let count = i64::try_from(syllables(word)).unwrap();
        let off = case["accept"].as_array().unwrap().iter().map(|known| (known.as_i64().unwrap() - count).abs()).min();
        match off {
            Some(0) => {}
            Some(1) => wrong.push(format!("{word} {count}")),
            _ => far.push(format!("{word} {count}")),
        }
    }
    println!("{} of {} words off by one: {}", wrong.len(), cases.len(), wrong.join(", "));
    assert!(far.is_empty(), "off by more than one: {far:?}");
    assert!(wrong.len() * 20 <= cases.len(), "off by one: {wrong:?}");
}

#[test]
fn plain_passages_score_as_a_library_says() {
    let mut seen = 0;
    for case in cases(PASSAGES).iter().filter(|case| case["kind"] == "plain") {
        let id = case["id"].as_str().unwrap();
        let read = Readability::of(case["text"].as_str().unwrap());
        let count = |name: &str| usize::try_from(case["counts"][name].as_u64().unwrap()).unwrap();
        assert_eq!((read.words, read.sentences), (count("words"), count("sentences")), "{id}");
        let (ease, grade) = (read.ease().unwrap(), read.grade().unwrap());
        let (known_ease, known_grade) = (case["fre"].as_f64().unwrap(), case["fk_grade"].as_f64().unwrap());
        println!("{id}: ease {ease:.1} for {known_ease:.1}, grade {grade:.2} for {known_grade:.2}");
        assert!((ease - known_ease).abs() <= 8.0 && (grade - known_grade).abs() <= 1.2, "{id}: {read:?}");
        // The formulas themselves, on the file's own counts, to its last digit.
        let own = Readability { syllables: count("syllables"), ..read };
        assert!((own.ease().unwrap() - known_ease).abs() < 1e-3, "{id}");
        assert!((own.grade().unwrap() - known_grade).abs() < 1e-3, "{id}");
        seen += 1;
    }
    assert!(seen >= 6);
}

#[test]
fn abbreviations_times_and_lists_end_no_sentence() {
    let mut seen = 0;
    for case in cases(PASSAGES).iter().filter(|case| case["kind"] != "plain") {
        let read = Readability::of(case["text"].as_str().unwrap());
        let range = &case["human_sentences"];
        let sentences = read.sentences as u64;
        assert!(range[0].as_u64().unwrap() <= sentences && sentences <= range[1].as_u64().unwrap(), "{read:?} {case}");
        let words = case["whitespace_words"].as_u64().unwrap() as f64;
        assert!((read.words as f64 - words).abs() <= 3.0, "{read:?} {case}");
        seen += 1;
    }
    assert!(seen >= 2);
}

#[test]
fn nothing_is_no_text_and_markup_is_not_counted() {
    let nothing = Readability::of(" – … \n\n 'x' ");
    assert_eq!((nothing.words, nothing.sentences, nothing.syllables), (1, 1, 1));
    assert_eq!((Readability::of("").ease(), Readability::of("").grade()), (None, None));
    let read = Readability::of_rich(&parse("A *very* **small** owl\n\nsat still. \"Why?\" she said.\\\nTwo o'clock."));
    assert_eq!((read.words, read.sentences), (11, 5));
    assert!((Readability { words: 260, ..read }.minutes_aloud() - 260.0 / ALOUD).abs() < 1e-9);
    // Any input is counted, none stops the program.
    for odd in ["é", "ÅÄÖ...", "qu", "y", "gue", "'''", "3.5.", "\u{2009}", "e", "ee", "sm", "queue", "b\u{300}e"] {
        let read = Readability::of(odd);
        assert!(read.syllables <= 6, "{odd}: {read:?}");
    }
}
