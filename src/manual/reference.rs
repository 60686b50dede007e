//! A chapter of the manual as one reference page.

use super::chapter::Chapter;
use super::markdown::deeper;
use super::shelf::pages;

/// The reference page of a chapter, in Markdown.
pub fn reference(chapter: Chapter) -> String {
    let mut text = format!(
        "# {}\n\n{}\n\nMade from the pages that `notchbook explain NAME` prints one by one.\n",
        chapter.title(),
        chapter.intro()
    );
    let mut section = String::new();
    for page in pages().into_iter().filter(|page| page.chapter == chapter) {
        if page.section != section {
            text.push_str(&format!("\n## {}\n", page.section));
            section = page.section;
        }
        text.push_str(&format!("\n### {}\n\n{}\n", page.name, deeper(page.text.trim_end())));
    }
    text
}
