//! The guide's fixed words. Cautions are not among them: they are data on materials, with their source.

use serde::Serialize;

use crate::kit::{Kit, LockKind};
use crate::script::capital;
use crate::sheet::Paper;

/// Headings and column heads, by the key that the template asks for.
pub(super) const LABELS: &[(&str, &str)] = &[
    ("page", "Page"),
    ("pages", "pages"),
    ("of", "of"),
    ("mark", "Mark"),
    ("forced", "Not proven: do not hand this out yet"),
    ("forced_text", "This bundle was exported although these findings block it:"),
    ("minute", "If you have only one minute"),
    ("contents", "What to print"),
    ("inside", "In this guide"),
    ("used_up", "used up"),
    ("chart", "What to do when: filled bars are work, open bars are waiting."),
    ("sheets", "sheets, with this guide"),
    ("hours", "h"),
    ("quiet_after", "Quiet for"),
    ("quiet_give", "Give"),
    ("quiet_why", "What it tells"),
    ("clock", "By the clock (an estimate)"),
    ("clock_half", "Half by"),
    ("clock_slow", "Nine in ten by"),
    ("clock_open", "What is open"),
    ("order", "Order"),
    ("on_page", "page"),
    ("hangs", "Where it hangs"),
    ("token", "For"),
    ("every_token", "What every token says"),
    ("cost", "What it costs, roughly:"),
    ("wrong", "If they have"),
    ("debrief", "When it is over"),
    ("needs", "What you need"),
    ("item", "Item"),
    ("amount", "How much"),
    ("size", "Size that matters"),
    ("stand_in", "What will do instead"),
    ("at_home", "perhaps at home"),
    ("bought_for", "for"),
    ("lying", "What lies on which sheet"),
    ("sheet", "Sheet"),
    ("pieces", "What lies on it"),
    ("paper", "Paper"),
    ("prep", "Getting ready"),
    ("start", "Start"),
    ("task", "What to do"),
    ("hands", "Hands"),
    ("wait", "Wait"),
    ("locks", "The locks"),
    ("lock", "Lock"),
    ("kind", "Kind"),
    ("code", "Opens with"),
    ("set", "How to set it"),
    ("test", "Twice"),
    ("setup", "Setting up"),
    ("say", "What to say at the start"),
    ("rounds", "How the evening runs"),
    ("flow", "The evening as a picture"),
    ("flow_on", "It is higher than this page: it goes on in the next column, or on the next page."),
    ("tokens", "The hint tokens"),
    ("answers", "The answers, and why"),
    ("mishaps", "If something goes wrong"),
    ("reset", "For the next group"),
    ("cautions", "Take care"),
    ("source", "Source"),
    ("unsourced", "(Common practice, no source.)"),
];

/// What holds for every sheet; before it stands how many sides are printed on.
pub(super) const PRINTING: &str = "Each sheet goes on the paper that its head names: plain paper or card paper, as much of \
    each as the shopping list says. Sheets with a check bar carry \
    pieces whose size matters: measure the bar before you cut. The letter has no line to cut along: trim the small print at \
    its head away. Keep the host’s pages and the tokens apart from what the guests find. The folder “pieces” has every \
    piece once more as a picture, should you want to show one on a screen; the evening does not need it.";

/// How the table of the sheets is read.
pub(super) const SHEETS: &str = "Sheets are called as their heads say: the guests’, the tokens’ and the host’s own are \
    each counted from 1. Every piece is called as below it; the caption goes when it is cut out, and what stands in quotes \
    here is the title that stays on it. Plain paper has 80 to 100 g/m², card paper 160 to 250 g/m².";

/// Whom the shopping list is for.
pub(super) fn needs(groups: u16) -> String {
    if groups <= 1 {
        "Everything for one group. Tick what you have. What is used up is had anew for each group after it; “For the next \
         group” says how much of it."
            .into()
    } else {
        format!(
            "Everything for {groups} groups that play at once; your own tools serve for all of them. Tick what you \
             have. What is used up must be bought anew for the next round."
        )
    }
}

/// What to ask when it is over (common practice, no source): guests who tell it keep it.
pub(super) const DEBRIEF: &[&str] = &[
    "Let them tell it before you do: which lock was the first, which nearly beat you, who saw it?",
    "Show what nobody found, and how it was meant. Nobody likes to go home without that answer.",
    "Ask one question for yourself: where did you sit idle? Write it down, with the tokens that went, for the next \
     group.",
    "Count tools, keys and small parts in before anyone leaves.",
];

pub(super) const LOCKS: &str = "Set each lock with the shackle open, by its maker’s sheet. Then test it twice while \
    it is still open: turn the wheels away and back to the code, push the shackle in, and see that it comes out again. Only \
    then shut it.";

/// How a lock-out hasp goes on (common practice, no source).
pub(super) const LOCKS_HASP: &str = "The lock-out hasp: put its jaw through the staple of the box (the ring over which the \
    box’s own hasp closes), close the jaw, and hang the padlocks through its holes. Hole 1 is the hole next to its hinge. \
    It opens when the last padlock is off.";

/// Where a word has to be heard: by whoever keeps the box, and by the host.
pub(super) const LOCKS_SPOKEN: &str = "A word that is said needs no lock.";
pub(super) const LOCKS_TOLD: &str =
    "Tell it to whoever keeps the box, and give them their slip from the host’s sheets.";
pub(super) const LOCKS_BOTH: &str =
    "Where no helper has the box, it is you who waits for the word; keep its slip by you.";
pub(super) const LOCKS_HEARD: &str = "You wait for the word yourself; keep its slip by you.";

pub(super) const LOCKS_KEEP: &str =
    "Keep this table, and any spare key, within your reach and out of the guests’ sight.";

/// How a room is set up, and where it stands what leads to what. Its names would not be readable in large print in the
/// picture of the flow: there the rounds tell it.
pub(super) fn setup(nests: bool, large: bool) -> Pointed {
    let order = if nests { "Work from the innermost box outwards" } else { "Fill the boxes first" };
    let (what, see) = if large { ("The rounds of the evening show", "rounds") } else { ("A picture shows", "flow") };
    let text = format!("{order}, and shut a box only when all in it is ticked. {what} what leads to what");
    pointed(text, see)
}

pub(super) const ROUNDS: &str = "The fastest way through: all that is open at once, then what that opens. Guests \
    will take their own way; what stands in one round can be done in any order.";

/// What the minutes of the rounds count.
pub(super) const MINUTES: &str = "Two times stand after each puzzle. The author’s is for two guests with all parts before \
    them and no hint. The simulated one adds wrong tries, tokens and the hands that are busy elsewhere. Then follows the \
    minute, from the start, by which half of the groups have it.";

pub(super) const ANSWERS: &str = "For you alone. If a group has an answer and the lock stays shut, dial it yourself \
    once: the lock may be set wrongly.";

/// What stands before the mishaps.
pub(super) const MISHAPS: &str = "Say what is so, mend it, and let the clock run on.";

pub(super) const CAUTIONS: &str = "Only what this kit needs.";

/// A line that may point to a section of the guide, by its label in the template; empty where it does not.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(super) struct Pointed {
    pub(super) text: String,
    pub(super) see: &'static str,
}

/// A line with the section that tells more.
pub(super) fn pointed(text: impl Into<String>, see: &'static str) -> Pointed {
    Pointed { text: text.into(), see }
}

/// What the host says before the clock starts (common practice, no source); `{token}` is the theme's word for a token,
/// `{marked}` says how many pieces wear a mark.
pub(super) const SAY: &[&str] = &[
    "“Nothing needs force. If a lock or a lid does not give, the answer is not right yet.”",
    "“Nobody has to climb, move furniture, or look into sockets, lamps or machines.”",
    "“Nothing is eaten or tasted until the treat is found, and only what I offer you.”",
    "“Anyone may stop and go out at any time. No door is locked.”",
    "“{marked} the mark of the lock that it belongs to. Lay together what wears the same mark.”",
    "“If you are stuck, ask me for {token}. Asking is part of the game.”",
];

/// What guests are told of a lock that is pushed (common practice, no source; the maker's sheet decides).
pub(super) const CLEAR: &str = "squeeze its shackle in twice before each try, to clear it. Then push, and pull.";

/// How the evening begins; the guide's tables count minutes from here.
pub(super) const CLOCK: &str = "When it has been read, note the time: all minutes in this guide count from now.";

/// What guests are told of tokens that lie open; `{tokens}` and `{box}` are what they are called and where they lie.
pub(super) const OPEN: &str = "“Beside {box} lie {tokens} with a few words each: read one when you want to.”";

/// What guests are told of closed tags that hang on locks.
pub(super) const CLOSED: &str = "“A closed tag that hangs on a lock stays closed until that lock is open.”";

/// The paper's name in a sentence.
pub(super) const fn paper(paper: Paper) -> &'static str {
    match paper {
        Paper::Letter => "US Letter",
        Paper::A4 => "A4",
    }
}

/// Who made it and what may be done with it.
pub(super) fn by(kit: &Kit) -> String {
    let terms = kit.terms.trim();
    match (kit.author.trim(), terms) {
        ("", terms) => terms.to_owned(),
        (author, "") => format!("By {author}"),
        (author, terms) => format!("By {author}. {terms}"),
    }
}

/// A text parted at its empty lines.
pub(in crate::bundle) fn paragraphs(text: &str) -> Vec<String> {
    text.split("\n\n").map(str::trim).filter(|part| !part.is_empty()).map(str::to_owned).collect()
}

/// A full stop, where a sentence lacks its end.
pub(in crate::bundle) fn sentence(text: &str) -> String {
    let text = capital(text.trim());
    if text.is_empty() || text.ends_with(['.', '!', '?', '…', '”', '"']) { text } else { format!("{text}.") }
}

/// Words in a row: "a, b and c".
pub(in crate::bundle) fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Minutes as a host reads them: "25 min", "2 h 10 min".
pub(in crate::bundle) fn minutes(minutes: f64) -> String {
    let whole = minutes.round().max(0.0);
    let (hours, rest) = ((whole / 60.0).floor(), whole % 60.0);
    match (hours > 0.0, rest > 0.0) {
        (false, _) => format!("{whole} min"),
        (true, false) => format!("{hours} h"),
        (true, true) => format!("{hours} h {rest} min"),
    }
}

/// An amount without needless decimals.
pub(in crate::bundle) fn amount(value: f64) -> String {
    if (value - value.round()).abs() < 0.005 { format!("{}", value.round()) } else { format!("{value:.1}") }
}

/// A unit in the number that the amount asks for.
pub(in crate::bundle) fn unit(unit: &str, amount: f64) -> String {
    let plain = unit.chars().all(|c| c.is_ascii_alphabetic());
    if amount > 1.0 && plain && !unit.is_empty() && !unit.ends_with('s') { format!("{unit}s") } else { unit.to_owned() }
}

/// Whether an answer is told as a sentence is, such as where a key lies; a code or a single word is set apart.
pub(super) fn is_told(kind: &LockKind, answer: &str) -> bool {
    match kind {
        LockKind::Key => true,
        LockKind::Spoken => answer.trim().contains(char::is_whitespace),
        LockKind::Digits(_) | LockKind::Letters(_) | LockKind::Directions(_) => false,
    }
}

/// An answer as it is dialled, in words: "right, down, left"; none where it is read off as it stands.
pub(super) fn pushes(kind: &LockKind, answer: &str) -> Option<String> {
    let side = |c: char| match c.to_ascii_uppercase() {
        'U' => "up",
        'D' => "down",
        'L' => "left",
        _ => "right",
    };
    let sides: Vec<&str> = answer.trim().chars().map(side).collect();
    matches!(kind, LockKind::Directions(_)).then(|| sides.join(", "))
}

/// The digits that stand for pushes on a lock with wheels: up 1, right 2, down 3, left 4, clockwise from the top.
pub(super) fn as_digits(answer: &str) -> String {
    let digit = |c: char| match c.to_ascii_uppercase() {
        'U' => '1',
        'R' => '2',
        'D' => '3',
        _ => '4',
    };
    answer.trim().chars().map(digit).collect()
}

/// An answer as it is dialled.
pub(super) fn shown(kind: &LockKind, answer: &str) -> String {
    match kind {
        LockKind::Letters(_) | LockKind::Directions(_) => answer.trim().to_uppercase(),
        LockKind::Digits(_) | LockKind::Key | LockKind::Spoken => answer.trim().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_and_lists_read_well() {
        assert_eq!(minutes(59.6), "1 h");
        assert_eq!(minutes(130.0), "2 h 10 min");
        assert_eq!(minutes(5.0), "5 min");
        assert_eq!(list(&["a".into(), "b".into(), "c".into()]), "a, b and c");
        assert_eq!(sentence("put it back"), "Put it back.");
        assert_eq!(amount(2.0), "2");
        assert_eq!(pushes(&LockKind::Directions(4), "rdlu").unwrap(), "right, down, left, up");
        assert_eq!(as_digits("RDLU"), "2341");
        assert!(pushes(&LockKind::Digits(3), "123").is_none());
    }
}
