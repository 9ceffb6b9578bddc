//! RON text of a changed value in the layout of the text that is there: what did not change keeps its comments, its
//! blanks and its order.
//!
//! Three texts are held side by side: the one that is there, and those that the program would write of the value before
//! and after ([`super::file::to_ron`]). Where before and after say the same, the text that is there stays; else the
//! parts are looked at one by one, and what is new is written as the program writes it. The result is no more than a
//! proposal: whoever takes it reads it back first.

mod parts;

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use super::ron_text::{Token, tokens};
use parts::{Item, Kind, Node, read};

/// The text of the value `after` in the layout of `there`, which says what `before` says; none where it cannot be made
/// out.
#[must_use]
pub fn merged(there: &str, before: &str, after: &str) -> Option<String> {
    let (t, o, n) = (read(there)?, read(before)?, read(after)?);
    let texts = Texts { there, before, after };
    let root = texts.value(&t, Some(&o), &n);
    Some(format!("{}{root}{}", there.get(..t.span.start)?, there.get(t.span.end..)?))
}

/// The comments of a RON text, in order.
#[must_use]
pub fn comments(ron: &str) -> Vec<&str> {
    let found = tokens(ron).filter(|(_, _, token)| *token == Token::Blank);
    let texts = found.filter_map(|(at, length, _)| ron.get(at..at + length));
    texts.filter(|text| text.starts_with('/')).map(str::trim_end).collect()
}

/// Characters on a line that several items may share.
const LINE: usize = 120;

/// The three texts.
struct Texts<'a> {
    there: &'a str,
    before: &'a str,
    after: &'a str,
}

impl<'a> Texts<'a> {
    fn t(&self, span: &Range<usize>) -> &'a str {
        self.there.get(span.clone()).unwrap_or_default()
    }

    fn o(&self, span: &Range<usize>) -> &'a str {
        self.before.get(span.clone()).unwrap_or_default()
    }

    fn n(&self, span: &Range<usize>) -> &'a str {
        self.after.get(span.clone()).unwrap_or_default()
    }

    /// The text of a value.
    fn value(&self, t: &Node, o: Option<&Node>, n: &Node) -> String {
        let Some(o) = o else { return self.fresh(n, indent(self.there, t.span.start)) };
        if self.o(&o.span) == self.n(&n.span) {
            return self.t(&t.span).to_owned();
        }
        let heads = self.t(&t.head) == self.o(&o.head) && self.o(&o.head) == self.n(&n.head);
        if self.t(&t.span) == self.o(&o.span) {
            // Written by the program, or a setup, which it writes as it was.
            return self.n(&n.span).to_owned();
        }
        let parts = match (t.kind, o.kind, n.kind) {
            _ if !heads || t.items.is_empty() || n.items.is_empty() => None,
            (Kind::Named, Kind::Named, Kind::Named) => Some(self.named(t, o, n)),
            // A key that is quoted in another way would be taken for another.
            (Kind::Map, Kind::Map, Kind::Map) if self.keys_known(t, o) => Some(self.named(t, o, n)),
            (Kind::List, Kind::List, Kind::List) if t.items.len() == o.items.len() => Some(self.listed(t, o, n)),
            (Kind::Tuple, Kind::Tuple, Kind::Tuple)
                if t.items.len() == o.items.len() && o.items.len() == n.items.len() =>
            {
                let each = t.items.iter().zip(&o.items).zip(&n.items);
                Some(each.map(|((t, o), n)| (Some(t), self.value(&t.value, Some(&o.value), &n.value))).collect())
            }
            _ => None,
        };
        parts.map_or_else(|| self.fresh(n, indent(self.there, t.span.start)), |parts| self.joined(t, &parts))
    }

    /// Whether every key of a map that is there is written as the program writes it.
    fn keys_known(&self, t: &Node, o: &Node) -> bool {
        let known: BTreeSet<&str> = o.items.iter().map(|item| self.o(&item.name)).collect();
        t.items.iter().all(|item| known.contains(self.t(&item.name)))
    }

    /// The parts of brackets whose items have names, in the order that is there; new ones after the one that they follow.
    fn named<'n>(&self, t: &'n Node, o: &Node, n: &Node) -> Vec<(Option<&'n Item>, String)> {
        let old: BTreeMap<&str, &Item> = o.items.iter().map(|item| (self.o(&item.name), item)).collect();
        let new: BTreeMap<&str, &Item> = n.items.iter().map(|item| (self.n(&item.name), item)).collect();
        let mut parts: Vec<(Option<&Item>, String)> = Vec::new();
        let mut at: BTreeMap<&str, usize> = BTreeMap::new();
        for item in &t.items {
            let name = self.t(&item.name);
            let text = match (old.get(name), new.get(name)) {
                // A field that says what is meant where it is left out.
                (None, None) => self.t(&item.value.span).to_owned(),
                (Some(_), None) => continue,
                (known, Some(new)) => self.value(&item.value, known.map(|known| &known.value), &new.value),
            };
            at.insert(name, parts.len());
            parts.push((Some(item), text));
        }
        let deep = t.items.first().map_or("", |item| indent(self.there, item.whole.start.max(item.name.start)));
        let mut follows: Option<&str> = None;
        for item in &n.items {
            let name = self.n(&item.name);
            let said = old.get(name).is_some_and(|old| self.o(&old.value.span) == self.n(&item.value.span));
            if !at.contains_key(name) && !said {
                let place = follows.and_then(|name| at.get(name)).map_or(0, |place| place + 1);
                let text = format!("{name}: {}", self.fresh(&item.value, deep));
                at.values_mut().filter(|known| **known >= place).for_each(|known| *known += 1);
                parts.insert(place, (None, text));
                at.insert(name, place);
            }
            if at.contains_key(name) {
                follows = Some(name);
            }
        }
        parts
    }

    /// The parts of a list in their new order: each old one where it went, by what it says, by its id, or by its place.
    fn listed<'n>(&self, t: &'n Node, o: &Node, n: &Node) -> Vec<(Option<&'n Item>, String)> {
        let mut same: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
        let mut ids: BTreeMap<&str, usize> = BTreeMap::new();
        for (at, item) in o.items.iter().enumerate().rev() {
            same.entry(self.o(&item.value.span)).or_default().push(at);
            if let Some(id) = item.value.id() {
                ids.insert(self.o(id), at);
            }
        }
        let mut from: Vec<Option<usize>> = vec![None; n.items.len()];
        let mut free = vec![true; o.items.len()];
        for (item, from) in n.items.iter().zip(&mut from) {
            *from = same.get_mut(self.n(&item.value.span)).and_then(Vec::pop);
            from.iter().for_each(|at| free[*at] = false);
        }
        for (item, from) in n.items.iter().zip(&mut from).filter(|(_, from)| from.is_none()) {
            let known = item.value.id().and_then(|id| ids.get(self.n(id)).copied());
            *from = known.filter(|at| free[*at]);
            from.iter().for_each(|at| free[*at] = false);
        }
        let level = n.items.len() == o.items.len();
        let deep = t.items.first().map_or("", |item| indent(self.there, item.value.span.start));
        let parts = n.items.iter().zip(from).enumerate().map(|(place, (item, from))| {
            let nameless = item.value.id().is_none();
            let from = from.or_else(|| (level && nameless && free.get(place) == Some(&true)).then_some(place));
            match from.and_then(|at| Some((t.items.get(at)?, o.items.get(at)?))) {
                Some((t, o)) => (Some(t), self.value(&t.value, Some(&o.value), &item.value)),
                None => (None, self.fresh(&item.value, deep)),
            }
        });
        parts.collect()
    }

    /// Brackets with these parts: those that were there with the blanks and comments around them.
    fn joined(&self, t: &Node, parts: &[(Option<&Item>, String)]) -> String {
        let (Some(first), Some(last)) = (t.items.first(), t.items.last()) else { return self.t(&t.span).to_owned() };
        let mut out = self.there.get(t.span.start..first.whole.start).unwrap_or_default().to_owned();
        let tail = self.there.get(last.whole.end..t.span.end).unwrap_or_default();
        let mut begin_lines = t.items.iter().filter(|item| self.t(&item.before).contains('\n'));
        let line = begin_lines.next().map(|item| format!("\n{}", indent(self.there, item.name.start)));
        let lines = line.is_some();
        let lead = line.unwrap_or_else(|| String::from(" "));
        // The closing bracket on a line of its own follows a comma. One that ends the last line of the items follows none,
        // and where others share
        // a line, it may be shared.
        let alone = tail.trim_start_matches([' ', '\t', '\r']).starts_with('\n');
        let last_comma = alone && lines || last.comma;
        let crowded = t.items.iter().skip(1).any(|item| !self.t(&item.before).contains('\n'));
        let shares = |out: &str, text: &str| {
            let held = out.rsplit('\n').next().unwrap_or_default();
            let ahead = if out.contains('\n') { 0 } else { column(self.there, t.span.start) };
            crowded
                && !alone
                && !text.contains('\n')
                && !held.contains("//")
                && ahead + held.chars().count() + text.chars().count() < LINE
        };
        for (at, (item, text)) in parts.iter().enumerate() {
            let ends = at + 1 == parts.len();
            match item {
                Some(item) => {
                    // What stood first on its line begins a line, wherever it goes.
                    let before = self.t(&item.before);
                    let first_now = at == 0 && !lines && item.whole.start != first.whole.start;
                    let before = if first_now { before.trim_start() } else { before };
                    let moved = at > 0 && item.whole.start == first.whole.start;
                    let gap = if shares(&out, text) { " " } else { lead.as_str() };
                    let gap = if moved && before.is_empty() { gap } else { "" };
                    let named = self.there.get(item.name.start..item.value.span.start).unwrap_or_default();
                    let was_last = item.whole.end == last.whole.end;
                    let last_comma = last_comma || self.t(&item.trail).contains("//");
                    let comma = if !ends || item.comma && was_last || !was_last && last_comma { "," } else { "" };
                    line_ends(&mut out, if gap.is_empty() { before } else { gap });
                    let parts = [gap, before, named, text, self.t(&item.after), comma, self.t(&item.trail)];
                    parts.iter().for_each(|part| out.push_str(part));
                }
                None => {
                    let opens = at == 0 && !(lines && alone);
                    let lead = if opens {
                        ""
                    } else if shares(&out, text) {
                        " "
                    } else {
                        &lead
                    };
                    line_ends(&mut out, lead);
                    out.push_str(lead);
                    out.push_str(text);
                    out.push_str(if !ends || last_comma { "," } else { "" });
                }
            }
        }
        line_ends(&mut out, tail);
        out.push_str(tail);
        out
    }

    /// A value as the program writes it, set in to `deep`.
    fn fresh(&self, n: &Node, deep: &str) -> String {
        let (own, text) = (indent(self.after, n.span.start), self.n(&n.span));
        if own == deep {
            return text.to_owned();
        }
        let mut out = String::new();
        let mut skip = 0;
        for (at, length, token) in tokens(text) {
            let part = text.get(at..at + length).unwrap_or_default();
            if token == Token::Blank && part == "\n" {
                out.push('\n');
                out.push_str(deep);
                skip = own.len();
            } else if skip > 0 && part == " " {
                skip -= 1;
            } else {
                skip = 0;
                out.push_str(part);
            }
        }
        out
    }
}

/// Ends the line where it ends in a comment and what follows would go on in it.
fn line_ends(out: &mut String, next: &str) {
    let line = out.rsplit('\n').next().unwrap_or_default();
    // A text with two slashes in it ends a line too early, which does no harm.
    if line.contains("//") && !next.trim_start_matches([' ', '\t', '\r']).starts_with('\n') {
        out.push('\n');
    }
}

/// The characters before a place on its line.
fn column(text: &str, at: usize) -> usize {
    text.get(..at).unwrap_or_default().rsplit('\n').next().unwrap_or_default().chars().count()
}

/// The blanks at the beginning of the line in which a place stands.
fn indent(text: &str, at: usize) -> &str {
    let line = text.get(..at).unwrap_or_default().rsplit('\n').next().unwrap_or_default();
    line.get(..line.len() - line.trim_start_matches([' ', '\t']).len()).unwrap_or_default()
}
