//! A chapter of the manual as one reference page.

use super::chapter::Chapter;
use super::markdown::deeper;
use super::shelf::pages;

const EXAMPLES: &str = "The examples are for the small booklet that `notchbook new` makes: facts take the place of its \
                        facts, `work` is a step of its own before the sewing, or, with a name behind it, the work of \
                        the step that has this name.";

/// The reference page of a chapter, in Markdown.
pub fn reference(chapter: Chapter) -> String {
    let mut text = format!(
        "# {}\n\n{}\n\n{EXAMPLES}\n\nMade from the pages that `notchbook explain NAME` prints one by one.\n",
        chapter.title(),
        chapter.intro()
    );
    let mut section = String::new();
    for page in pages().into_iter().filter(|page| page.chapter == chapter) {
        if page.section != section {
            text.push_str(&format!("\n## {}\n", page.section));
            section.clone_from(&page.section);
        }
        // A chapter without sections has its pages one level higher.
        let level = if page.section.is_empty() { "#" } else { "##" };
        text.push_str(&format!("\n{level}# {}\n\n{}\n", page.name, deeper(page.text.trim_end(), level)));
    }
    text
}
