use super::about::About;

/// The listing as Markdown (CommonMark), to be pasted where it is sold.
pub(super) fn markdown(about: &About) -> String {
    let mut out = format!("# {}\n", plain(&about.title));
    let mut section = |title: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            if !title.is_empty() {
                out.push_str(&format!("\n## {title}\n"));
            }
            out.push('\n');
            out.push_str(&lines.join("\n"));
            out.push('\n');
        }
    };
    let bullets = |lines: &[String]| lines.iter().map(|line| format!("- {}", plain(line))).collect::<Vec<_>>();
    let pairs = |pairs: &[(String, String)]| {
        pairs.iter().map(|(name, says)| format!("- {}: {}", plain(name), plain(says))).collect::<Vec<_>>()
    };
    let said: Vec<String> =
        [&about.by, &about.revision].iter().filter(|line| !line.is_empty()).map(|line| plain(line)).collect();
    section("", if said.is_empty() { Vec::new() } else { vec![said.join(" · ")] });
    section("", about.brief.iter().map(|part| format!("{}\n", plain(part))).collect());
    section("At a glance", pairs(&about.facts));
    section("What is in it", bullets(&about.contents));
    section("Play levels", bullets(&about.levels));
    let mut needs = bullets(&about.needs);
    if !about.cost.is_empty() {
        needs.push(format!("\nWhat it costs, roughly: {}", plain(&about.cost)));
    }
    section("What you must have or buy", needs);
    section("Take care", about.care.iter().map(|part| plain(part)).collect());
    section("What changed since the last revision", bullets(&about.changes));
    section("Terms of use", about.terms.iter().map(|part| format!("{}\n", plain(part))).collect());
    section("Credits and licences", pairs(&about.credits));
    // Paragraphs end in an empty line, and so do sections.
    while out.contains("\n\n\n") {
        out = out.replace("\n\n\n", "\n\n");
    }
    format!("{}\n", out.trim_end())
}

/// Text whose signs mean nothing to Markdown.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for (at, c) in text.char_indices() {
        let mark = matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '&')
            || at == 0 && matches!(c, '#' | '+' | '-' | '=' | '~');
        if mark {
            out.push('\\');
        }
        out.push(if c == '\n' { ' ' } else { c });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_of_markdown_are_only_signs() {
        assert_eq!(plain("# *so* [x](y) <b>"), "\\# \\*so\\* \\[x\\](y) \\<b\\>");
        assert_eq!(plain("a\nb - c"), "a b - c");
    }
}
