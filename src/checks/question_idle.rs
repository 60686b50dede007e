//! A question of makers has no answer, or is asked a second time.
//!
//! ## Why it matters
//! Who looks a question up is stuck at the machine. One without an answer sends her away with nothing, and of two with the
//! same words she reads one, and never learns what the other says.
//!
//! ## Wrong
//! ```yaml
//! help: help.md
//! ```
//!
//! ```md help.md
//! ## Why does the top edge wave? {#sew}
//!
//! ## May I wash the pouch?
//!
//! Yes, by hand.
//! ```
//!
//! ## Right
//! ```yaml
//! help: help.md
//! ```
//!
//! ```md help.md
//! ## Why does the top edge wave? {#sew}
//!
//! It was stretched while you sewed. Press it flat under a damp cloth.
//!
//! ## May I wash the pouch?
//!
//! Yes, by hand.
//! ```
//!
//! ## Limits
//! Two questions are the same where their words are, whatever their capitals, signs and spaces; those of two steps, and those
//! that no size has together, may be. Whether an answer is a good one cannot be known.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Question, is_for};
use crate::syntax::plain_inline;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("question-idle", Group::Words, include_str!("question_idle.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every question.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let all = &subject.draft.help;
    for (at, question) in all.iter().enumerate() {
        if question.answer.is_empty() {
            findings.push(
                CHECK
                    .at(question.span, "this question has no answer")
                    .hint("write the answer below the heading, or take the question out"),
            );
        }
        if let Some(first) = all[..at].iter().find(|other| asked_twice(other, question)) {
            findings.push(
                CHECK
                    .at(question.span, "this question is asked a second time")
                    .hint("put both answers below one heading, or ask more closely")
                    .note(first.span, "the first one"),
            );
        }
    }
}

/// Whether a maker meets two questions with the same words at one place.
fn asked_twice(one: &Question, other: &Question) -> bool {
    let step = |question: &Question| question.step.as_ref().map(|step| step.text.clone());
    let meet = match (&one.sizes, &other.sizes) {
        (Some(own), sizes) | (sizes, Some(own)) => own.iter().any(|size| is_for(sizes.as_ref(), *size)),
        (None, None) => true,
    };
    meet && step(one) == step(other) && words(one) == words(other)
}

fn words(question: &Question) -> Vec<String> {
    let title = plain_inline(&question.title).to_lowercase();
    let words = title.split(|letter: char| !letter.is_alphanumeric());
    words.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}
