//! A length is told in one system alone, where the booklet tells others in both.
//!
//! ## Why it matters
//! A maker works in centimetres or in inches, never in both. At the one figure that her system lacks she has to reckon, and
//! rounds as she likes.
//!
//! ## Wrong
//! ````md
//! ## Trim the corners {#trim}
//!
//! Trim the corners {seam | cm} from the tip.
//! ````
//!
//! ## Right
//! ````md
//! ## Trim the corners {#trim}
//!
//! Trim the corners {seam} from the tip.
//! ````
//!
//! ## Limits
//! Looks in steps at figures in one unit (`| cm`, `| in`), where the same formula stands in no unit of the other system in
//! that paragraph. `| first` and `| second` are a matter of the page, and passed over. Silent where the booklet shows one
//! system (`show: {second: none}`).

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, passages};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Unit;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("one-system-alone", Group::Words, include_str!("one_system_alone.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the words of every step.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if subject.draft.facts.show.second.is_none() {
        return;
    }
    for (_, step) in subject.draft.steps() {
        for passage in passages(step, None).iter().filter(|passage| passage.stands == Stands::Body) {
            look(passage, findings);
        }
    }
}

fn look(passage: &Passage<'_>, findings: &mut Findings) {
    let in_units: Vec<(&str, Unit, Span)> = passage
        .tokens
        .iter()
        .filter_map(|token| {
            let (formula, filter) = token.brace?;
            Some((formula.source.text.trim(), Unit::parse(&filter?.name)?, token.span))
        })
        .filter(|(_, unit, _)| unit.system().is_some())
        .collect();
    for (formula, unit, span) in &in_units {
        let twin = |(other, also, _): &(&str, Unit, Span)| other == formula && also.system() != unit.system();
        if !in_units.iter().any(twin) {
            findings.push(
                CHECK
                    .at(*span, "this length is told in one system alone")
                    .hint(format!("write `{{{formula}}}`, which prints both, or the other unit beside it")),
            );
        }
    }
}
