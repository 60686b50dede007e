//! The piece lies right side up where the work folds its edge over to the wrong side.
//!
//! ## Why it matters
//! What is folded over towards the maker goes to the side that faces her. With the right side up the hem ends up on the
//! outside, and the next step hides it under nothing.
//!
//! ## Wrong
//! ````md
//! ## Hem the pouch {#hem-pouch}
//!
//! ```work
//! - fold: [front.top, twice to the wrong side]
//! - {hem: front.top, allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! With the right side up, fold the top edge over twice, and hem it.
//! ````
//!
//! ## Right
//! ````md
//! ## Hem the pouch {#hem-pouch}
//!
//! ```work
//! - fold: [front.top, twice to the wrong side]
//! - {hem: front.top, allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! With the wrong side up, fold the top edge over twice, and hem it.
//! ````
//!
//! ## Limits
//! Looks at steps whose folds all go "to the wrong side", and whose words have something folded over and say "right side
//! up" and never "wrong side up", "to the wrong side" or "under". The words stand in `templates/vocabulary-en.json`. The
//! same the other way round, for what is folded to the right side.

use super::judge::{Judge, Subject};
use super::passage::{Stands, any_of, length, of_text, one_of, place};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("fold-contradicts", Group::Words, include_str!("fold_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        let folds = || step.works.iter().filter(|work| work.verb == Verb::Fold);
        for (way, [side_up, others]) in vocabulary
            .folded_to
            .iter()
            .zip([[&vocabulary.lies_up[1], &vocabulary.lies_up[0]], [&vocabulary.lies_up[0], &vocabulary.lies_up[1]]])
        {
            let goes = |work: &&crate::resolve::EditionWork<'_>| {
                work.work.words.iter().any(|text| any_of(&of_text(text).tokens, way))
            };
            let body = || passages.iter().filter(|passage| passage.stands == Stands::Body);
            let says = |words: &[String]| body().any(|passage| any_of(&passage.tokens, words));
            let silent = says(others) || says(way) || says(&vocabulary.folded_under) || !says(&vocabulary.folded_over);
            if folds().next().is_none() || !folds().all(|work| goes(&work)) || silent {
                continue;
            }
            for passage in body() {
                for at in 0..passage.tokens.len() {
                    let Some(phrase) = one_of(&passage.tokens, at, side_up) else { continue };
                    let Some(span) = place(&passage.tokens[at..at + length(phrase)]) else { continue };
                    let (right, to) =
                        (others.first().map_or("", String::as_str), way.first().map_or("", String::as_str));
                    findings.push(
                        CHECK
                            .at(
                                span,
                                format!("“{phrase}”, but the work folds {to}: over, it would go to the other side"),
                            )
                            .hint(format!("write “{right}”, or “under” for what is folded to the side below"))
                            .in_size(edition.size(), ""),
                    );
                }
            }
        }
    });
}
