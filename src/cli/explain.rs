//! `explain`: the pages of a word, the words of a chapter, the chapters, or the whole manual.

use super::args::ExplainArgs;
use super::{Outcome, Refusal, output};
use crate::manual::{Chapter, ManualPage, advice, find, pages, reference};

/// The longest line of a list of names.
const WIDE: usize = 96;

pub(super) fn run(args: &ExplainArgs) -> Result<Outcome, Refusal> {
    match &args.name {
        _ if args.all => {
            let chapters: Vec<String> = Chapter::ALL.iter().map(|chapter| reference(*chapter)).collect();
            output::line(chapters.join("\n").trim_end());
        }
        Some(name) => explain(name)?,
        None => overview(),
    }
    Ok(Outcome::Clean)
}

/// All that a word is: its pages, and the chapter of that name.
fn explain(name: &str) -> Result<(), Refusal> {
    let mut found: Vec<String> = find(name).iter().map(ManualPage::whole).collect();
    found.extend(Chapter::ALL.iter().filter(|chapter| chapter.name() == name).map(|chapter| listing(*chapter)));
    if found.is_empty() {
        return Err(Refusal::new(format!("the manual has no page on `{name}`"), advice(name)));
    }
    output::line(found.join("\n").trim_end());
    Ok(())
}

/// The words of a chapter, each with what it is in a line.
fn listing(chapter: Chapter) -> String {
    let intro: Vec<&str> = chapter.intro().split(' ').collect();
    let mut text = format!("{}\n\n{}\n", chapter.title(), wrapped(&intro, "", " ").join("\n"));
    let mut section = None;
    for page in pages().iter().filter(|page| page.chapter == chapter) {
        if section.as_ref() != Some(&page.section) {
            text.push('\n');
            if !page.section.is_empty() {
                text.push_str(&format!("{}\n", page.section));
            }
            section = Some(page.section.clone());
        }
        text.push_str(&format!("  {:<26} {}\n", page.name, page.summary));
    }
    text
}

/// Every word that has a page, chapter by chapter.
fn overview() {
    let pages = pages();
    for chapter in Chapter::ALL {
        output::line(&format!("{} (`notchbook explain {}`)", chapter.title(), chapter.name()));
        let mut words: Vec<&str> = Vec::new();
        for page in pages.iter().filter(|page| page.chapter == *chapter) {
            if !words.contains(&page.name.as_str()) {
                words.push(&page.name);
            }
        }
        for line in wrapped(&words, "  ", "  ") {
            output::line(&line);
        }
        output::line("");
    }
    output::line("`notchbook explain NAME` prints the page of a word, with an example.");
}

/// Words in lines that are not too long: each line begins with `indent`, and `space` stands between words.
fn wrapped(words: &[&str], indent: &str, space: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words {
        match lines.last_mut() {
            Some(line) if line.chars().count() + space.len() + word.chars().count() <= WIDE => {
                line.push_str(space);
                line.push_str(word);
            }
            _ => lines.push(format!("{indent}{word}")),
        }
    }
    lines
}
