//! The words tell another allowance, stitch or gap than the step states.
//!
//! ## Why it matters
//! Two figures for one seam, a finger's breadth apart: whichever the maker follows, the facts and the words
//! cannot both be right.
//!
//! ## Wrong
//! ````md
//! ## Topstitch the top {#topstitch-top}
//!
//! ```work
//! - topstitch: [front.top, back.top]
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edges with a stitch of {2 mm}.
//! ````
//!
//! ## Right
//! ````md
//! ## Topstitch the top {#topstitch-top}
//!
//! ```work
//! - topstitch: [front.top, back.top]
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edges with a stitch of {stitch}.
//! ````
//!
//! ## Limits
//! Looks for "{…} allowance", "allowance of {…}", "{…} stitch", "stitch of {…}", "{…} open" and "gap of {…}" in
//! the words of a step that states such a figure; right is every figure that one of its work facts states.
//! Sentences that point to another step are passed over.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, length, one_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Vocabulary, Words};
use crate::resolve::{Edition, EditionStep, EditionWork, Scope, Worked};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("allowance-contradicts", Group::Words, include_str!("allowance_contradicts.rs"))
        .waivable_in(Home::Words),
    run,
);

/// What a figure may be of.
struct Fact<'v> {
    name: &'static str,
    words: &'v Words,
    of: fn(&EditionWork<'_>) -> Option<Worked>,
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    let facts = facts(vocabulary);
    each_step(subject, &mut |edition, step, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            look(edition, step, passage, &facts, findings);
        }
    });
}

fn facts(vocabulary: &Vocabulary) -> [Fact<'_>; 3] {
    [
        Fact { name: "allowance", words: &vocabulary.allowance, of: |work| work.allowance },
        Fact { name: "stitch", words: &vocabulary.stitch, of: |work| work.stitch },
        Fact { name: "leave", words: &vocabulary.gap, of: |work| work.leave },
    ]
}

fn look(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &Passage<'_>,
    facts: &[Fact<'_>],
    findings: &mut Findings,
) {
    for sentence in passage.sentences() {
        if Passage::points_away(sentence) {
            continue;
        }
        for (at, token) in sentence.iter().enumerate() {
            let Some((formula, _)) = token.brace else { continue };
            let Some(fact) = facts.iter().find(|fact| is_of(sentence, at, fact.words)) else { continue };
            let stated: Vec<Worked> = step.works.iter().filter_map(fact.of).collect();
            // The step's own words for it, and what a shared part was handed, are right by themselves.
            let Some(worked) = Scope::plain(&edition.values).work_out(formula, &mut Findings::default()) else {
                continue;
            };
            if stated.is_empty() || stated.iter().any(|own| own.quantity == worked.quantity) {
                continue;
            }
            let figures: Vec<String> = stated.iter().map(|own| edition.figures(own).first.to_string()).collect();
            let shown = edition.figures(&worked).first.to_string();
            findings.push(
                CHECK
                    .at(
                        token.span,
                        format!("the words say {shown}, and the work of the step {}", distinct(figures).join(" or ")),
                    )
                    .hint(format!("write `{{{}}}`, which follows the work, or mend the work", fact.name))
                    .in_size(edition.size(), ""),
            );
        }
    }
}

fn distinct(mut figures: Vec<String>) -> Vec<String> {
    figures.dedup();
    figures
}

/// Whether the figure at `at` is said of such a thing: "{…} seam allowance", "an allowance of {…}".
fn is_of(sentence: &[Token<'_>], at: usize, words: &Words) -> bool {
    let near = |token: &Token<'_>| token.gap.chars().all(|letter| letter.is_whitespace() || letter == '-');
    let behind = (at + 1..sentence.len().min(at + 3))
        .take_while(|next| near(&sentence[*next]) && sentence[*next].brace.is_none());
    let mut behind = behind.filter(|next| one_of(sentence, *next, words).is_some());
    let ends_here = |from: usize| one_of(sentence, from, words).is_some_and(|phrase| from + length(phrase) + 1 == at);
    let before = at >= 2
        && sentence[at - 1].word == "of"
        && near(&sentence[at])
        && (at.saturating_sub(3)..at - 1).any(ends_here);
    behind.next().is_some() || before
}
