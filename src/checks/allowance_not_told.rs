//! The words of a seam do not tell its allowance, where those of every other seam do.
//!
//! ## Why it matters
//! A maker who is told the allowance at each seam takes the last one that she read, or the one of her machine, where none
//! is told. A piece that is sewn too wide or too narrow no longer fits the next.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strip: {outline: {rectangle: [5 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: [first, second, third, fourth]}}
//! ```
//! ````md
//! ## Join two strips {#join}
//!
//! ```work
//! - cut: strip
//! - {sew: [first.right, second.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Cut four strips, and sew two of them together with a {allowance} allowance.
//!
//! ## Join the third {#third}
//!
//! ```work
//! - {sew: [second.right, third.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew on the third strip with a {allowance} allowance.
//!
//! ## Join the last {#last}
//!
//! ```work
//! - {sew: [third.right, fourth.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew on the last strip.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strip: {outline: {rectangle: [5 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: [first, second]}}
//! ```
//! ````md
//! ## Join two strips {#join}
//!
//! ```work
//! - cut: strip
//! - {sew: [first.right, second.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Cut two strips, and sew them together with a {allowance} allowance.
//! ````
//!
//! ## Limits
//! Speaks up where three steps that sew, or more, tell their allowance, and one in four or fewer does not. Told is
//! `{allowance}`, or any figure that comes to the same length. A step that points to another one, or says that
//! it is done in the same way (`same_way` in `templates/vocabulary-en.json`), tells it too. Common practice, no source.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of};
use super::printed_words::each_step;
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{Edition, EditionWork, Scope};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("allowance-not-told", Group::Words, include_str!("allowance_not_told.rs")).waivable_in(Home::Words),
    run,
);

/// How many steps tell it, at the least, where one that does not is odd; and how many for each that does not.
const MOST: usize = 3;

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    let mut told: Vec<usize> = vec![0; subject.draft.facts.sizes.len()];
    let mut untold: Vec<Vec<Finding>> = told.iter().map(|_| Vec::new()).collect();
    each_step(subject, &mut |edition, step, passages| {
        let size = edition.size();
        let sewn = step.works.iter().filter(|work| work.verb == Verb::Sew && work.allowance.is_some());
        let sewn: Vec<&EditionWork<'_>> = sewn.collect();
        let Some(first) = sewn.first().filter(|_| !step.body.is_empty()) else { return };
        let body: Vec<&Passage<'_>> =
            passages.iter().filter(|passage| passage.stands == Stands::Body && !passage.ticks).collect();
        if body.iter().any(|passage| passage.tokens.iter().any(|token| tells(edition, token, &sewn))) {
            told[size] += 1;
        } else if !body.iter().any(|passage| leads_away(passage, vocabulary)) && sews(&body, vocabulary) {
            let finding =
                CHECK.at(first.work.verb_span, "the words of this step do not tell the allowance of the seam");
            let hint = "tell it as at the other seams, such as “with a {allowance} allowance”";
            untold[size].push(finding.hint(hint).in_size(size, ""));
        }
    });
    for (told, untold) in told.into_iter().zip(untold) {
        if told >= MOST && untold.len() * MOST <= told {
            findings.extend(untold);
        }
    }
}

/// Whether a figure is the allowance of the work, by its name or by what it comes to.
fn tells(edition: &Edition<'_>, token: &Token<'_>, sewn: &[&EditionWork<'_>]) -> bool {
    let Some((formula, _)) = token.brace else { return false };
    if formula.formula.names().iter().any(|(name, _)| *name == ALLOWANCE) {
        return true;
    }
    let worked = Scope::plain(&edition.values).work_out(formula, &mut Findings::default());
    worked
        .is_some_and(|worked| sewn.iter().filter_map(|work| work.allowance).any(|own| own.quantity == worked.quantity))
}

/// What the work calls it.
const ALLOWANCE: &str = "allowance";

/// Whether it points to another step, or says that it is done as before.
fn leads_away(passage: &Passage<'_>, vocabulary: &Vocabulary) -> bool {
    let as_before = [&vocabulary.same_way, &vocabulary.as_before].into_iter().any(|of| any_of(&passage.tokens, of));
    as_before || Passage::points_away(&passage.tokens)
}

/// Whether the words sew at all: a step may leave that to its picture.
fn sews(body: &[&Passage<'_>], vocabulary: &Vocabulary) -> bool {
    let forms = vocabulary.verbs.get(Verb::Sew.word());
    forms.is_some_and(|forms| body.iter().any(|passage| any_of(&passage.tokens, forms)))
}
