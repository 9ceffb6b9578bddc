//! RON text taken apart: brackets, their items, and the blanks and comments around each.

use std::iter::Peekable;
use std::ops::Range;

use crate::kit::ron_text::{Token, tokens};
use crate::limits;

/// A value of RON text.
#[derive(Debug)]
pub(super) struct Node {
    /// All of it.
    pub span: Range<usize>,
    /// The name before its brackets, such as `Some`; empty for none.
    pub head: Range<usize>,
    pub kind: Kind,
    /// What stands in its brackets.
    pub items: Vec<Item>,
    /// Where among the items its field `id` is.
    id: Option<usize>,
}

/// What a value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// `(a: 1)`.
    Named,
    /// `(1, 2)`.
    Tuple,
    /// `[1, 2]`.
    List,
    /// `{"a": 1}`.
    Map,
    /// A number, a text, a name.
    Plain,
}

/// One item in brackets.
#[derive(Debug)]
pub(super) struct Item {
    /// From the end of the item before to the end of this one.
    pub whole: Range<usize>,
    /// Blanks and comments before it, from the end of the line of the item before.
    pub before: Range<usize>,
    /// Its name or key; empty where it has none.
    pub name: Range<usize>,
    pub value: Node,
    /// Blanks and comments between it and its comma.
    pub after: Range<usize>,
    /// Whether a comma follows.
    pub comma: bool,
    /// Blanks and comments on the line of its comma, or of its end.
    pub trail: Range<usize>,
}

impl Node {
    /// Where its field `id` says which one it is.
    pub fn id(&self) -> Option<&Range<usize>> {
        Some(&self.items.get(self.id?)?.value.span)
    }
}

/// Reads RON text that holds one value; none where it is none, or nests too deeply.
pub(super) fn read(text: &str) -> Option<Node> {
    let mut reader = Reader { text, tokens: tokens(text).peekable(), end: 0 };
    reader.blanks();
    while reader.sees("#") {
        // `#![enable(...)]`
        while !reader.next()?.2 {}
        reader.blanks();
    }
    let node = reader.value(0)?;
    reader.blanks();
    reader.tokens.next().is_none().then_some(node)
}

struct Reader<'a, I: Iterator<Item = (usize, usize, Token)>> {
    text: &'a str,
    tokens: Peekable<I>,
    /// Where the last token ended.
    end: usize,
}

impl<I: Iterator<Item = (usize, usize, Token)>> Reader<'_, I> {
    /// The next token: its beginning, its end, and whether it closes an attribute.
    fn next(&mut self) -> Option<(usize, usize, bool)> {
        let (at, length, _) = self.tokens.next()?;
        self.end = at + length;
        Some((at, self.end, self.text.get(at..self.end) == Some("]")))
    }

    fn sees(&mut self, what: &str) -> bool {
        let text = self.text;
        self.tokens
            .peek()
            .is_some_and(|(at, length, token)| *token == Token::Other && text.get(*at..at + length) == Some(what))
    }

    fn blanks(&mut self) {
        while self.tokens.next_if(|(_, _, token)| *token == Token::Blank).is_some_and(|(at, length, _)| {
            self.end = at + length;
            true
        }) {}
    }

    /// Where blanks and comments on the line of a place end; that place where something else follows on it.
    fn line(&self, from: usize) -> usize {
        let mut end = from;
        for (at, length, token) in tokens(self.text.get(from..).unwrap_or_default()) {
            let part = self.text.get(from + at..from + at + length).unwrap_or_default();
            if part == "\n" || part == "\r" {
                return end;
            }
            if token != Token::Blank || part.contains('\n') {
                return from;
            }
            end = from + at + length;
        }
        from
    }

    fn value(&mut self, depth: usize) -> Option<Node> {
        if depth > limits::RON_DEPTH {
            return None;
        }
        let (start, token) = self.tokens.peek().map(|(at, _, token)| (*at, *token))?;
        let mut head = start..start;
        if token == Token::Word {
            head = start..self.next()?.1;
        }
        let open = ["(", "[", "{"].into_iter().find(|open| self.sees(open));
        let Some(open) = open.filter(|open| *open == "(" || head.is_empty()) else {
            return self.plain(start, token);
        };
        self.next()?;
        let close = match open {
            "(" => ")",
            "[" => "]",
            _ => "}",
        };
        let mut items = Vec::new();
        let mut from = self.line(self.end);
        loop {
            let before = from;
            self.blanks();
            if self.sees(close) {
                break;
            }
            let item = self.item(before, open, depth)?;
            from = item.whole.end;
            let more = item.comma;
            items.push(item);
            if !more {
                self.blanks();
                break;
            }
        }
        if !self.sees(close) {
            return None;
        }
        let span = start..self.next()?.1;
        let kind = match open {
            "[" => Kind::List,
            "{" => Kind::Map,
            _ if items.iter().all(|item| !item.name.is_empty()) => Kind::Named,
            _ => Kind::Tuple,
        };
        let id = items.iter().position(|item| self.text.get(item.name.clone()) == Some("id"));
        Some(Node { span, head, kind, items, id })
    }

    /// One item, from the end of the one before.
    fn item(&mut self, from: usize, open: &str, depth: usize) -> Option<Item> {
        let before = from..self.end.max(from);
        let mut value = self.value(depth + 1)?;
        let mut name = value.span.start..value.span.start;
        let end = value.span.end;
        let mut stop = end;
        self.blanks();
        if open != "[" && self.sees(":") {
            self.next()?;
            self.blanks();
            name = value.span;
            value = self.value(depth + 1)?;
            stop = value.span.end;
            self.blanks();
        }
        let comma = self.sees(",");
        let (after, trail) = if comma {
            let (at, end, _) = self.next()?;
            (stop..at, end..self.line(end))
        } else {
            (stop..stop, stop..self.line(stop))
        };
        Some(Item { whole: from..trail.end, before, name, value, after, comma, trail })
    }

    /// A number, a text, a name: all up to what ends an item.
    fn plain(&mut self, start: usize, token: Token) -> Option<Node> {
        let mut end = self.end.max(start);
        if token != Token::Word {
            end = self.next()?.1;
        }
        while let Some((at, length, token)) = self.tokens.peek().copied() {
            let part = self.text.get(at..at + length).unwrap_or_default();
            if token == Token::Blank
                || (token == Token::Other && matches!(part, "," | ")" | "]" | "}" | ":" | "(" | "[" | "{"))
            {
                break;
            }
            end = self.next()?.1;
        }
        Some(Node { span: start..end, head: start..start, kind: Kind::Plain, items: Vec::new(), id: None })
    }
}
