//! How many syllables an English word has, counted by rule.
//!
//! Each run of vowels (y among them, but not before a vowel at the start of a word) is one syllable; some pairs of
//! vowels are two (`ia`, `io` and others, by what stands around them); an e at the end, or in -es and -ed, is mostly
//! silent; -thm and -sm are a syllable of their own. No dictionary is asked, so that a word in a hundred is off by one.

/// Syllables of a word; letters only count, and a word of letters has at least one.
#[must_use]
pub fn syllables(word: &str) -> usize {
    let letters: Vec<char> = word.to_lowercase().chars().filter(char::is_ascii_alphabetic).collect();
    if letters.is_empty() {
        return 0;
    }
    let word: String = letters.iter().collect();
    let w = word.as_str();
    let silent = silent_end(w) + usize::from(silent_within(w));
    let own = usize::from(ends(w, &["thm", "thms"])) + usize::from(ends(w, &["ism", "isms", "asm", "asms"]));
    let count = vowel_runs(w) + own;
    count.saturating_sub(silent).max(1)
}

fn is_vowel(letter: u8) -> bool {
    matches!(letter, b'a' | b'e' | b'i' | b'o' | b'u' | b'y')
}

fn ends(word: &str, endings: &[&str]) -> bool {
    endings.iter().any(|ending| word.ends_with(ending))
}

fn starts(word: &str, beginnings: &[&str]) -> bool {
    beginnings.iter().any(|beginning| word.starts_with(beginning))
}

/// Syllables as the vowels stand, silent ones counted.
fn vowel_runs(word: &str) -> usize {
    let bytes = word.as_bytes();
    let (mut count, mut at) = (0, 0);
    while at < bytes.len() {
        if !bytes.get(at).copied().is_some_and(is_vowel) {
            at += 1;
            continue;
        }
        let mut end = at;
        while bytes.get(end).copied().is_some_and(is_vowel) {
            end += 1;
        }
        // A y before the first vowel and the u of qu are consonants.
        let led = (at == 0 && word.starts_with('y')) || (bytes.get(at) == Some(&b'u') && word[..at].ends_with('q'));
        let first = if led && end - at > 1 { at + 1 } else { at };
        count += 1 + (first..end.saturating_sub(1)).filter(|pair| parted(word, *pair)).count();
        at = end;
    }
    count
}

/// Whether the two vowels at `at` belong to two syllables.
fn parted(word: &str, at: usize) -> bool {
    let (before, pair, after) = (&word[..at], &word[at..at + 2], &word[at + 2..]);
    match pair {
        "ia" => {
            let soft = ends(before, &["t", "c"]) && starts(after, &["l", "n"]);
            let sh = ends(before, &["t", "c", "s"]) && (starts(after, &["l", "n"]) || after.is_empty() || after == "t");
            !soft && !sh && !after.starts_with("ge")
        }
        "io" if ends(before, &["n"]) && after.starts_with('n') => !ends(before, &["pin", "nin"]),
        "io" => !(ends(before, &["t", "s", "g", "x", "c", "n"]) && starts(after, &["n", "u"])),
        "iu" | "yi" | "ao" | "ii" => true,
        "eo" => !(after.starts_with("ple") || before.ends_with('g') && starts(after, &["us", "n"])),
        "ua" => !ends(before, &["g", "q", "s"]),
        "uo" => !after.starts_with('y') && !before.ends_with('q'),
        "ue" => starts(after, &["l", "nt", "nc"]) && !ends(before, &["g", "q"]),
        "ui" => starts(after, &["ty", "n", "ti"]) && !ends(before, &["g", "q", "b"]),
        "ie" => {
            let parts = starts(after, &["t", "nc", "nt"]) && !after.starts_with("th");
            (parts && !ends(before, &["c", "fr", "p", "l"]))
                || (after == "r" && !ends(before, &["p", "t"]))
                || (after.starts_with("nc") && !ends(before, &["pat", "c"]))
        }
        "ea" => {
            (starts(after, &["te", "ti"]) && before.ends_with("cr"))
                || (after.starts_with('l') && ends(before, &["id", "r"]))
                || (after.is_empty() && before.ends_with("ar"))
        }
        "oi" | "ei" => after.starts_with("ng"),
        "oe" => starts(after, &["t", "m"]),
        "eu" => after.starts_with('m'),
        _ => false,
    }
}

/// How many of a word's last vowels are silent.
fn silent_end(word: &str) -> usize {
    let bytes = word.as_bytes();
    let letter = |back: usize| bytes.len().checked_sub(back).and_then(|at| bytes.get(at)).copied();
    let consonant = |back: usize| letter(back).is_some_and(|letter| !is_vowel(letter));
    // -le and -re after a consonant are a syllable of their own: table, centre.
    let own = |back: usize| {
        let before = letter(back + 1);
        let l = letter(back) == Some(b'l') && before.is_some_and(|b| !is_vowel(b) && !matches!(b, b'l' | b'r' | b'w'));
        let r = letter(back) == Some(b'r') && before.is_some_and(|b| !is_vowel(b) && !matches!(b, b'l' | b'r'));
        (l, r)
    };
    let runs = vowel_runs(word);
    let mut silent = 0;
    if runs > 1 && word.len() > 4 && ends(word, &["gue", "que", "gues", "ques"]) {
        silent += 1;
    }
    if runs > 1 && word.ends_with('e') && consonant(2) && own(2) == (false, false) {
        silent += 1;
    }
    let hissing = ["ses", "xes", "zes", "ches", "shes", "ces", "ges"];
    if runs > 1 && word.ends_with("es") && consonant(3) && !ends(word, &hissing) && !own(3).0 {
        silent += 1;
    }
    if runs > 1 && word.ends_with("ed") && consonant(3) && !ends(word, &["ted", "ded"]) && !own(3).0 {
        silent += 1;
    }
    silent
}

/// Whether an e before an ending is silent: carefully, sometimes.
fn silent_within(word: &str) -> bool {
    let endings = ["ly", "ment", "ments", "ful", "less", "ness", "some", "where", "thing", "time", "times", "fully"];
    endings.iter().any(|ending| {
        let Some(stem) = word.strip_suffix(ending).and_then(|stem| stem.strip_suffix('e')) else { return false };
        let mut back = stem.bytes().rev();
        let (last, before) = (back.next(), back.next());
        let clear = last == Some(b'l') || (last == Some(b'r') && before.is_some_and(|b| !is_vowel(b)));
        last.is_some_and(|last| !is_vowel(last)) && !(ending.starts_with("ment") && clear)
    })
}
