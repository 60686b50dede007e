//! The words advise what hurts: to cut towards the hand, to sew over pins.
//!
//! ## Why it matters
//! One word turned round, and a caution sends the blade into the hand that holds the cloth.
//!
//! ## Wrong
//! ````md
//! ## Trim the threads {#threads}
//!
//! Cut towards yourself, thread by thread.
//! ````
//!
//! ## Right
//! ````md
//! ## Trim the threads {#threads}
//!
//! Cut away from yourself, thread by thread.
//! ````
//!
//! ## Limits
//! Looks for the phrases under `dangers` in `templates/vocabulary-en.json` in sentences that neither forbid nor
//! warn (common practice, no source). What else may hurt is yours to see: no check says that work is safe.

use super::judge::{Judge, Subject};
use super::passage::{any_of, length, one_of, place};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("danger-advised", Group::Words, include_str!("danger_advised.rs")).waivable(), run);

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_passage(subject, &mut |passage| {
        for sentence in passage.sentences().into_iter().filter(|sentence| !any_of(sentence, &vocabulary.forbids)) {
            for at in 0..sentence.len() {
                let Some(phrase) = one_of(sentence, at, &vocabulary.dangers) else { continue };
                if let Some(span) = place(&sentence[at..at + length(phrase)]) {
                    findings.push(
                        CHECK
                            .at(span, format!("“{phrase}” sends the maker into harm"))
                            .hint("say what keeps the hands safe, or forbid it: “never …”"),
                    );
                }
            }
        }
    });
}
