use super::{Draft, Facts, Finding, Fix, Sink, ladder, trying};
use crate::diag::Anchor;
use crate::kit::edit::{Edit, between};
use crate::kit::file::nearest;
use crate::kit::{WordForms, visit_texts};

check!(
    /// ## What it does
    /// Flags a slot such as `{{ keeper }}` that no word of the theme or the kit fills.
    ///
    /// ## Why it matters at the table
    /// The brackets are printed.
    ///
    /// ## How to mend
    /// Add the word to the kit, or correct the slot.
    UnfilledSlot, "unfilled-slot", Blocks, "a slot without a word", "the brackets would be printed", run,
    mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (anchor, trouble) in &facts.party.script.unfilled {
        let draft = Draft::of(ladder::settled(facts, anchor), trouble);
        // The kit as a whole has many texts; the line says which.
        let told = if *anchor == Anchor::Kit { lost(&trouble.message).and_then(|lost| begins(facts, lost)) } else { None };
        sink.add(match told {
            Some(text) => draft.help(format!("it stands in the text \"{text} …\"")),
            None => draft,
        });
    }
}

/// The slot's name in the line that says that it has no word.
fn lost(message: &str) -> Option<&str> {
    message.strip_prefix("the slot `")?.strip_suffix("` has no word")
}

/// How the first text begins that has this slot, without its own slots.
fn begins(facts: &Facts<'_>, lost: &str) -> Option<String> {
    let mut found = None;
    visit_texts(&mut facts.kit.clone(), &mut |_, text| {
        if found.is_none() && with_slot(text, lost, "") != *text {
            let plain = text.replace("{{", "").replace("}}", "");
            found = Some(plain.split_whitespace().take(WORDS).collect::<Vec<_>>().join(" "));
        }
    });
    found
}

/// Words of a text that are shown to tell which it is.
const WORDS: usize = 7;

/// The nearest word wherever the kit has the one that is missing; else the missing word added to the kit, to be written.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let lost = lost(&finding.message)?;
    let known: Vec<&str> = facts.party.script.words.forms().keys().map(String::as_str).collect();
    let mut mends = Vec::new();
    if let Some(near) = nearest(lost, &known) {
        let mut kit = facts.kit.clone();
        visit_texts(&mut kit, &mut |_, text| *text = with_slot(text, lost, near));
        mends.push(trying::ask(format!("Write {{{{ {near} }}}} for {{{{ {lost} }}}}"), between(facts.kit, &kit)));
    }
    let forms = WordForms { one: lost.replace(['_', '-'], " "), ..WordForms::default() };
    mends.push(trying::ask(
        format!("Add the word {lost} to the kit"),
        vec![Edit::Word(lost.to_owned(), Some(forms))],
    ));
    trying::sound(facts, finding, mends)
}

/// A text with another name in the slots that have this one.
fn with_slot(text: &str, old: &str, new: &str) -> String {
    let mut parts = text.split("{{");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        out.push_str("{{");
        let inner = part.trim_start();
        let after = inner.strip_prefix(old).filter(|rest| !rest.starts_with(|c: char| c.is_alphanumeric() || c == '_'));
        match after {
            Some(rest) => {
                out.push_str(&part[..part.len() - inner.len()]);
                out.push_str(new);
                out.push_str(rest);
            }
            None => out.push_str(part),
        }
    }
    out
}
