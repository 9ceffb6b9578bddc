use serde::Serialize;

/// Text with emphasis, as paragraphs.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize)]
#[serde(transparent)]
pub struct Rich {
    /// The paragraphs.
    pub paragraphs: Vec<Paragraph>,
}

/// A paragraph: spans in a row.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize)]
#[serde(transparent)]
pub struct Paragraph {
    /// The spans.
    pub spans: Vec<Span>,
}

/// A stretch of text in one style.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize)]
pub struct Span {
    /// The text; empty for a line break.
    pub text: String,
    /// Set in italics.
    pub emph: bool,
    /// Set in bold.
    pub strong: bool,
    /// A line break after the text.
    pub end_of_line: bool,
}

impl Rich {
    /// Plain text, one paragraph, exactly as it stands.
    #[must_use]
    pub fn plain(text: impl Into<String>) -> Self {
        let text = text.into();
        if text.is_empty() {
            return Self::default();
        }
        let spans = vec![Span { text, ..Span::default() }];
        Self { paragraphs: vec![Paragraph { spans }] }
    }

    /// The words without styles; paragraphs parted by an empty line.
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = String::new();
        for (at, paragraph) in self.paragraphs.iter().enumerate() {
            if at > 0 {
                text.push_str("\n\n");
            }
            for span in &paragraph.spans {
                text.push_str(&span.text);
                if span.end_of_line {
                    text.push('\n');
                }
            }
        }
        text
    }

    /// Whether there is nothing to print.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.paragraphs.iter().all(|paragraph| paragraph.spans.iter().all(|span| span.text.trim().is_empty()))
    }
}
