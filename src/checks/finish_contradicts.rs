//! The words finish the edges in another way than the work says.
//!
//! ## Why it matters
//! "Pink the edges" beside `by: zigzag`: the one needs a pair of shears, the other thread and the machine.
//!
//! ## Wrong
//! ````md
//! ## Finish the top {#finish-top}
//!
//! ```work
//! - {finish: [front.top, back.top], by: zigzag}
//! ```
//!
//! Pink the top edges.
//! ````
//!
//! ## Right
//! ````md
//! ## Finish the top {#finish-top}
//!
//! ```work
//! - {finish: [front.top, back.top], by: zigzag}
//! ```
//!
//! Zigzag the top edges.
//! ````
//!
//! ## Limits
//! Looks for the words under `finishes` in `templates/vocabulary-en.json`; silent where the words of the step
//! also tell the way that the work says, and where the step binds.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, any_of, one_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::EditionStep;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("finish-contradicts", Group::Words, include_str!("finish_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, step, passages| {
        let ways = ways(step);
        let body: Vec<&Passage<'_>> = passages.iter().filter(|passage| passage.stands == Stands::Body).collect();
        let says = |way: &str| {
            let words = subject.vocabulary.finishes.get(way);
            words.is_none_or(|words| body.iter().any(|passage| any_of(&passage.tokens, words)))
        };
        // Of two ways, the one that the words never tell has become the other.
        let untold: Vec<&str> = ways.iter().copied().filter(|way| !says(way)).collect();
        let [way] = untold.as_slice() else { return };
        let mut told = false;
        for passage in body {
            look(passage, way, subject.vocabulary, &mut |at, word| {
                if told && ways.len() > 1 {
                    return;
                }
                told = true;
                findings.push(
                    CHECK
                        .at(passage.tokens[at].span, format!("“{word}”, but the work of the step says `by: {way}`"))
                        .hint("mend the one or the other: the maker reads both")
                        .in_size(edition.size(), ""),
                );
            });
        }
    });
}

/// The ways in which a step finishes edges; none where it binds too, of which the words may speak.
fn ways(step: &EditionStep<'_>) -> BTreeSet<&'static str> {
    if step.works.iter().any(|work| work.verb == Verb::Bind) {
        return BTreeSet::new();
    }
    step.works.iter().filter_map(|work| work.work.finish).map(|finish| finish.word()).collect()
}

fn look(passage: &Passage<'_>, way: &str, vocabulary: &Vocabulary, tell: &mut dyn FnMut(usize, &str)) {
    for at in 0..passage.tokens.len() {
        let others = vocabulary.finishes.iter().filter(|(other, _)| *other != way);
        if let Some(word) = others.filter_map(|(_, words)| one_of(&passage.tokens, at, words)).next() {
            tell(at, word);
        }
    }
}
