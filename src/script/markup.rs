use pulldown_cmark::{CodeBlockKind, Event, Options, Parser, Tag, TagEnd};

use super::rich::{Paragraph, Rich, Span};

/// Parses inline CommonMark: paragraphs, `*emphasis*`, `**strong**` and line breaks.
///
/// Everything else that CommonMark knows (headings, lists, code, HTML) is kept as the plain words in it, and
/// brackets never make a link: a card has no use for it, and nothing an author writes may vanish.
/// Straight quotation marks, `--`, `---` and `...` become typographic ones; between backquotes they stay.
#[must_use]
pub fn parse(text: &str) -> Rich {
    let text = &without_links(text);
    let (mut emph, mut strong) = (0_u32, 0_u32);
    let mut rich = Rich::default();
    let mut open = Paragraph::default();
    let style =
        |text: String, emph: u32, strong: u32| Span { text, emph: emph > 0, strong: strong > 0, end_of_line: false };
    for (event, range) in Parser::new_ext(text, Options::ENABLE_SMART_PUNCTUATION).into_offset_iter() {
        match event {
            Event::Start(Tag::Emphasis) => emph += 1,
            Event::End(TagEnd::Emphasis) => emph = emph.saturating_sub(1),
            Event::Start(Tag::Strong) => strong += 1,
            Event::End(TagEnd::Strong) => strong = strong.saturating_sub(1),
            Event::Start(tag) => {
                if let Tag::List(_) | Tag::Item = tag {
                    close(&mut rich, &mut open);
                }
                let kept = match tag {
                    Tag::Item => number(text.get(range).unwrap_or_default()),
                    Tag::CodeBlock(CodeBlockKind::Fenced(info)) => info.to_string(),
                    _ => String::new(),
                };
                if !kept.is_empty() {
                    open.spans.push(style(kept + " ", emph, strong));
                }
            }
            Event::End(
                TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::Item | TagEnd::CodeBlock | TagEnd::HtmlBlock,
            ) => {
                close(&mut rich, &mut open);
            }
            Event::End(_) | Event::TaskListMarker(_) => {}
            Event::Text(text) | Event::Code(text) | Event::Html(text) | Event::InlineHtml(text) => {
                open.spans.push(style(text.to_string(), emph, strong));
            }
            Event::InlineMath(text) | Event::DisplayMath(text) | Event::FootnoteReference(text) => {
                open.spans.push(style(text.to_string(), emph, strong));
            }
            Event::SoftBreak => open.spans.push(style(" ".into(), emph, strong)),
            Event::HardBreak | Event::Rule => {
                open.spans.push(Span { end_of_line: true, ..Span::default() });
            }
        }
    }
    close(&mut rich, &mut open);
    rich
}

/// The number of a list's item as the author wrote it: "3." of "3. April"; empty for a bullet.
fn number(item: &str) -> String {
    let digits = item.chars().take_while(char::is_ascii_digit).count();
    let end = if digits == 0 { 0 } else { digits + 1 };
    item.chars().take(end).collect()
}

/// The text with every opening bracket made an ordinary character: CommonMark would drop the address of a link
/// and the whole of a line such as `[note]: below`.
fn without_links(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut escaped = false;
    for c in text.chars() {
        if c == '[' && !escaped {
            out.push('\\');
        }
        escaped = c == '\\' && !escaped;
        out.push(c);
    }
    out
}

fn close(rich: &mut Rich, open: &mut Paragraph) {
    let paragraph = std::mem::take(open);
    if !paragraph.spans.is_empty() {
        rich.paragraphs.push(paragraph);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn emphasis_paragraphs_and_breaks() {
        let rich = parse("One *two* **three**\\\nfour\n\nfive <b>six</b>");
        assert_eq!(rich.text(), "One two three\nfour\n\nfive <b>six</b>");
        assert!(rich.paragraphs[0].spans.iter().any(|span| span.text == "two" && span.emph));
        assert!(rich.paragraphs[0].spans.iter().any(|span| span.text == "three" && span.strong));
    }

    #[test]
    fn typographic_marks() {
        assert_eq!(parse("the \"winder's\" key -- 5--7 ---").text(), "the “winder’s” key – 5–7 —");
        assert_eq!(parse("`--- \"`").text(), "--- \"");
    }

    #[test]
    fn nothing_vanishes() {
        assert_eq!(parse("3. April was cold").text(), "3. April was cold");
        assert_eq!(parse("[note]: below").text(), "[note]: below");
        assert_eq!(parse("\\[a] \\\\[b](c)").text(), "[a] \\[b](c)");
        assert_eq!(parse("```bells\nring\n```").text().trim(), "bells ring");
        assert!(parse("# heading\n\n- a\n- b").text().contains("heading"));
    }
}
