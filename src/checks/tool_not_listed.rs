//! A step uses a tool that is not in the list of tools.
//!
//! ## Why it matters
//! The maker lays out what the list names, and stands without a bodkin in the middle of the work.
//!
//! ## Wrong
//! ````md
//! ## Push out the corners {#corners}
//!
//! Draw the cord through with a bodkin.
//! ````
//!
//! ## Right
//! ```yaml
//! tools: [Sewing machine, Iron, Scissors, Pins, Bodkin]
//! ```
//! ````md
//! ## Push out the corners {#corners}
//!
//! Draw the cord through with a bodkin.
//! ````
//!
//! ## Limits
//! Looks for the tools named in `templates/vocabulary-en.json` under `tools` in the words of steps. Told once
//! for each tool. Silent where the booklet lists no tools, and where the sentence leaves the tool to the maker
//! ("or", "if", "without").

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Stands, any_of, length, of_blocks, of_text, one_of, passages, place};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("tool-not-listed", Group::Words, include_str!("tool_not_listed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the words of every step.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    if facts.tools.is_empty() {
        return;
    }
    let mut listed: Vec<_> = facts.tools.iter().map(|tool| of_text(&tool.name)).collect();
    listed.extend(facts.notions.iter().map(|notion| of_text(&notion.name)));
    let mut told = BTreeSet::new();
    let draft = subject.draft;
    let intros = draft.parts.iter().flat_map(|part| of_blocks(&part.intro, None));
    let steps = draft.steps().flat_map(|(_, step)| passages(step, None));
    let help = draft.help.iter().flat_map(|question| of_blocks(&question.answer, None));
    for passage in intros.chain(steps).chain(help).filter(|passage| passage.stands == Stands::Body) {
        for sentence in passage.sentences() {
            if any_of(sentence, &subject.vocabulary.alternatives) {
                continue;
            }
            for (tool, names) in &subject.vocabulary.tools {
                let hit = (0..sentence.len()).find_map(|at| Some((at, one_of(sentence, at, names)?)));
                let known = listed.iter().any(|entry| any_of(&entry.tokens, names));
                let Some((at, name)) = hit.filter(|_| !known && !told.contains(tool)) else { continue };
                if let Some(span) = place(&sentence[at..at + length(name)]) {
                    told.insert(tool);
                    findings.push(
                        CHECK
                            .at(span, format!("“{name}” is not in the list of tools"))
                            .hint("add it to `tools:`, or name the tool that is listed"),
                    );
                }
            }
        }
    }
}
