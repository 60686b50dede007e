//! Lines to sew along are marked after they are sewn.
//!
//! ## Why it matters
//! What is quilted or stitched along chalk lines needs them first. Drawn afterwards they are of no use, and the rows
//! run askew.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   flap: {outline: {rectangle: [15 cm, 15 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Stitch the rows {#rows}
//!
//! ```work
//! - cut: flap
//! - {topstitch: flap, stitch: 3 mm}
//! ```
//!
//! Cut the flap, and stitch along the chalk lines.
//!
//! ## Mark the rows {#mark-rows}
//!
//! ```work
//! - mark: flap
//! ```
//!
//! Chalk lines from side to side.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   flap: {outline: {rectangle: [15 cm, 15 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Mark the rows {#mark-rows}
//!
//! ```work
//! - cut: flap
//! - mark: flap
//! ```
//!
//! Cut the flap, and chalk lines from side to side.
//!
//! ## Stitch the rows {#rows}
//!
//! ```work
//! - {topstitch: flap, stitch: 3 mm}
//! ```
//!
//! Stitch along the chalk lines.
//! ````
//!
//! ## Limits
//! Looks at steps that mark a whole piece which no step marked before. The lines are those of an earlier step that stitches
//! it where that step's words sew along them (`marked_lines` in `templates/vocabulary-en.json`), or where the heading of the
//! step that marks names that work: “Mark the quilting lines”.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, any_of, length, one_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{CopyId, EditionStep, EditionWork, Touched};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("lines-marked-late", Group::Words, include_str!("lines_marked_late.rs")).waivable_in(Home::Words),
    run,
);

/// What was stitched in the steps so far of one size, and what was marked.
#[derive(Default)]
struct Before {
    size: usize,
    marked: BTreeSet<CopyId>,
    /// What was stitched before it was marked: by which verb, where, in which step, whether along lines.
    stitched: Vec<(CopyId, Verb, Span, usize, bool)>,
}

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    let mut before = Before::default();
    each_step(subject, &mut |edition, step, passages| {
        if before.size != edition.size() {
            before = Before { size: edition.size(), ..Before::default() };
        }
        let along = passages
            .iter()
            .filter(|passage| passage.stands == Stands::Body)
            .any(|passage| any_of(&passage.tokens, &vocabulary.marked_lines));
        let title = passages.iter().find(|passage| passage.stands == Stands::Title);
        let title = title.map_or(&[][..], |passage| passage.tokens.as_slice());
        for work in &step.works {
            if work.verb == Verb::Mark {
                let late = before.stitched.iter().find(|(copy, verb, .., along)| {
                    let lines_of_it = || names_lines(title, *verb, vocabulary);
                    whole(work).any(|own| own == *copy) && !before.marked.contains(copy) && (*along || lines_of_it())
                });
                if let Some((_, _, at, number, _)) = late {
                    findings.push(
                        CHECK
                            .at(work.work.verb_span, "these lines are marked after the step that sews along them")
                            .hint(format!("move this step before step {number}"))
                            .note(*at, "sewn here")
                            .in_size(edition.size(), ""),
                    );
                }
                before.marked.extend(work.touched().filter_map(|touched| touched.copy()));
            }
        }
        before.take(step, along);
    });
}

impl Before {
    fn take(&mut self, step: &EditionStep<'_>, along: bool) {
        for work in step.works.iter().filter(|work| work.verb.stitches()) {
            for copy in work.touched().filter_map(|touched| touched.copy()) {
                if !self.marked.contains(&copy) {
                    self.stitched.push((copy, work.verb, work.work.verb_span, step.number, along));
                }
            }
        }
    }
}

/// The copies that a fact names as a whole.
fn whole<'a>(work: &'a EditionWork<'_>) -> impl Iterator<Item = CopyId> + 'a {
    work.touched().filter_map(|touched| match touched {
        Touched::Copy(copy) => Some(copy),
        _ => None,
    })
}

/// Whether a heading names the lines of a verb: "quilting lines".
fn names_lines(title: &[Token<'_>], verb: Verb, vocabulary: &Vocabulary) -> bool {
    let Some(forms) = vocabulary.verbs.get(verb.word()) else { return false };
    (0..title.len()).any(|at| {
        let behind = one_of(title, at, forms).map(|phrase| at + length(phrase));
        behind.is_some_and(|behind| one_of(title, behind, &vocabulary.lines).is_some())
    })
}
