use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};

use super::rich::{Paragraph, Rich, Span};

/// Parses inline CommonMark: paragraphs, `*emphasis*`, `**strong**` and line breaks.
///
/// Everything else that CommonMark knows (headings, lists, code, HTML, links) is kept as the plain words in it:
/// a card has no use for it, and nothing an author writes may vanish.
#[must_use]
pub fn parse(text: &str) -> Rich {
    let (mut emph, mut strong) = (0_u32, 0_u32);
    let mut rich = Rich::default();
    let mut open = Paragraph::default();
    let style =
        |text: String, emph: u32, strong: u32| Span { text, emph: emph > 0, strong: strong > 0, end_of_line: false };
    for event in Parser::new_ext(text, Options::empty()) {
        match event {
            Event::Start(Tag::Emphasis) => emph += 1,
            Event::End(TagEnd::Emphasis) => emph = emph.saturating_sub(1),
            Event::Start(Tag::Strong) => strong += 1,
            Event::End(TagEnd::Strong) => strong = strong.saturating_sub(1),
            Event::Start(tag) => {
                if let Tag::List(_) | Tag::Item = tag {
                    close(&mut rich, &mut open);
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
    fn digits_at_the_start_are_not_lost() {
        // "3." opens a list in CommonMark; the author may have meant a number: the words stay in any case.
        assert!(parse("# heading\n\n- a\n- b").text().contains("heading"));
    }
}
