//! A check's page, out of the comment that opens its file.

/// A page in Markdown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// The first sentence: what the check finds.
    pub summary: String,
    /// The whole text.
    pub text: String,
}

impl Page {
    /// Reads a page of Markdown, or the `//!` lines at the top of a source file.
    pub(super) fn of(source: &str) -> Page {
        let in_code = source.starts_with("//!");
        let lines: Vec<&str> = source
            .lines()
            .take_while(|line| !in_code || line.starts_with("//!"))
            .map(|line| line.strip_prefix("//!").map_or(line, |line| line.strip_prefix(' ').unwrap_or(line)))
            .collect();
        let summary = lines.iter().take_while(|line| !line.is_empty()).copied().collect::<Vec<_>>().join(" ");
        Page { summary, text: lines.join("\n") }
    }
}
