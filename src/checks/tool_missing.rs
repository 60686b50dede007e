//! A step needs a tool that the list of tools does not name.
//!
//! ## Why it matters
//! The maker lays out what the list says, and begins. In the middle of a step she finds that she needs an iron.
//!
//! ## Wrong
//! ```yaml
//! tools: [Sewing machine, Scissors, Pins]
//! ```
//!
//! ## Right
//! ```yaml
//! tools: [Sewing machine, Iron, Scissors, Pins]
//! ```
//!
//! ## Limits
//! Looks at the work of the steps where there is a list of tools: an iron for `press` and `fuse`, a machine for what it
//! stitches, a needle for `by: hand`, scissors or a cutter for `cut`, `trim`, `clip`, `grade` and `slash`, something to
//! `mark` with, pins or clips for `pin`, and what `finish` says it is done by. The words by which each is known stand in
//! `templates/needs-en.json`; “the usual sewing kit” is all of them. A fact that says how it does without, such as
//! `press: [front, with the fingers]`, needs none. English booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{List, says};
use super::said::sentences;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{EdgeFinish, Verb, Work};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("tool-missing", Group::Work, include_str!("tool_missing.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at all work, each tool once.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let (Some(first), true) = (facts.tools.first(), is_english(&facts.language.text)) else { return };
    let names = facts.tools.iter().map(|tool| tool.name.text.as_str());
    let notions = facts.notions.iter().map(|notion| notion.name.text.as_str());
    let list = List::of(names.chain(notions), subject.needs);
    let mut told: Vec<&str> = Vec::new();
    for (_, step) in subject.draft.steps() {
        for work in &step.works {
            for wanted in wanted(work) {
                let Some(need) = subject.needs.tools.get(wanted).filter(|need| !list.names(need)) else { continue };
                if told.contains(&wanted) || says(&said(work), &need.without) {
                    continue;
                }
                told.push(wanted);
                let message = match wanted {
                    "marker" => format!("the tools name {}, and a step has something marked", need.called),
                    _ => format!("the tools do not name {}, and a step needs it", need.called),
                };
                findings.push(
                    CHECK
                        .at(facts.lists_at[1].unwrap_or(first.name.span), message)
                        .hint(format!("add it to `tools:`, such as `{}`", need.write))
                        .note(work.verb_span, "needed here"),
                );
            }
        }
    }
}

/// What a work fact cannot be done without, by its name in the file of needs.
fn wanted(work: &Work) -> Vec<&'static str> {
    let stitched = if work.by_hand { "hand_needle" } else { "machine" };
    match work.verb {
        Verb::Press | Verb::Fuse => vec!["iron"],
        Verb::Cut | Verb::Trim | Verb::Clip | Verb::Grade | Verb::Slash => vec!["cutter"],
        Verb::Mark => vec!["marker"],
        Verb::Pin => vec!["pins"],
        Verb::Finish => match work.finish {
            Some(EdgeFinish::Overlock) => vec!["overlock"],
            Some(EdgeFinish::Pinking) => vec!["pinking"],
            Some(EdgeFinish::Hand) => vec!["hand_needle"],
            Some(EdgeFinish::Zigzag | EdgeFinish::Binding) | None => vec![stitched],
        },
        // A zip is closed, and a snap is set, without a stitch.
        Verb::Close | Verb::Attach | Verb::Button | Verb::Fasten | Verb::Buttonhole if !work.by_hand => Vec::new(),
        verb if verb.stitches() || work.by_hand => vec![stitched],
        _ => Vec::new(),
    }
}

/// The plain words of a fact.
fn said(work: &Work) -> String {
    let own = work.words.iter().map(|text| text.text.clone());
    let note = sentences(&work.note, None).into_iter().map(|sentence| sentence.text);
    own.chain(note).collect::<Vec<_>>().join(" ")
}
