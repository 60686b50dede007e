//! One page of the manual.

use super::chapter::Chapter;

/// What the manual says of one word. A word that is two things has two pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ManualPage {
    /// The word as it is written in a booklet, or in brackets in a finding.
    pub name: String,
    /// What it is: "a key of a piece".
    pub sort: String,
    /// The chapter that it stands in.
    pub chapter: Chapter,
    /// Its heading within the chapter; empty where the chapter has none.
    pub section: String,
    /// Its first paragraph, on one line.
    pub summary: String,
    /// All that is said, in Markdown, without a heading of its own.
    pub text: String,
}

impl ManualPage {
    /// The page with its heading, as `explain` prints it.
    pub fn whole(&self) -> String {
        format!("# {}\n\n*{}*\n\n{}\n", self.name, self.sort, self.text.trim_end())
    }
}
