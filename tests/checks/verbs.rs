//! The page of every verb: its sections, and an example that checks clean.

use notchbook::construct::VERBS;

use crate::support::booklet::run;
use crate::{examples, section, settle};

#[test]
fn every_verb_has_its_sections_and_an_example_that_checks_clean() {
    let mut wrong = Vec::new();
    for entry in VERBS {
        let page = entry.page();
        let mut say = |fault: &str| wrong.push(format!("{}: {fault}", entry.verb.word()));
        if !page.summary.ends_with('.') || page.summary.len() > 120 {
            say("the page does not open with one short sentence");
        }
        for heading in ["What it needs", "What it changes"] {
            if section(&page.text, heading).is_empty() {
                say(&format!("nothing under “{heading}”"));
            }
        }
        let blocks = examples(&section(&page.text, "How to write it"));
        let word = entry.verb.word();
        let written = blocks
            .iter()
            .flat_map(|block| &block.text)
            .any(|line| line.contains(&format!("{word}: ")));
        if !written {
            say("no example under “How to write it” uses it");
        }
        for found in run(&blocks.iter().collect::<Vec<_>>()).found {
            say(&format!("its example: {}", found.mark.join("\n    ")));
        }
    }
    settle(&wrong);
}
