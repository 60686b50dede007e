//! The words point back to a step that comes later.
//!
//! ## Why it matters
//! "Trim as you did in step 12" in step 9 sends the maker to what she has not done.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press it as you did in [](#press-again).
//!
//! ## Press again {#press-again}
//!
//! Press the pouch again.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the pouch.
//!
//! ## Press again {#press-again}
//!
//! Press it as you did in [](#press-pouch).
//! ````
//!
//! ## Limits
//! Looks for the phrases under `as_before` in `templates/vocabulary-en.json` right before a reference to a step
//! or a part.

use super::judge::{Judge, Subject};
use super::passage::{Stands, length, one_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::ReferenceKind;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("refers-ahead", Group::Words, include_str!("refers_ahead.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let back = &subject.vocabulary.as_before;
    each_step(subject, &mut |edition, step, passages| {
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            for at in 0..passage.tokens.len() {
                let Some(phrase) = one_of(&passage.tokens, at, back) else { continue };
                let behind = passage.tokens.iter().skip(at + length(phrase)).take(1);
                let leads =
                    behind.filter_map(|token| token.leads).find(|reference| reference.kind == ReferenceKind::Step);
                let Some(reference) = leads else { continue };
                if let Some(number) = number_of(edition, &reference.target).filter(|number| *number >= step.number) {
                    let later = if number == step.number {
                        "this very step".to_owned()
                    } else {
                        format!("step {number}, which comes later")
                    };
                    findings.push(
                        CHECK
                            .at(reference.span, format!("“{phrase}” points to {later}"))
                            .hint("say here what is done, and point back from the later step")
                            .in_size(edition.size(), ""),
                    );
                }
            }
        }
    });
}

/// The number of a step by its id, or of the first step of a part.
fn number_of(edition: &Edition<'_>, id: &str) -> Option<usize> {
    let is = |name: &Option<crate::model::Name>| name.as_ref().is_some_and(|name| name.text == id);
    let step = edition.steps().find(|step| is(&step.step.id));
    let part = || edition.parts.iter().find(|part| is(&part.part.id)).and_then(|part| part.steps.first());
    step.or_else(part).map(|step| step.number)
}
