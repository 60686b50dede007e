//! An allowance is narrower or wider than any seam has.
//!
//! ## Why it matters
//! A seam of 1.5 mm frays out in the first wash, and one of 15 cm eats the piece. Most often a unit or a comma is wrong,
//! and every piece that follows it is cut wrong.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   seam: 1 mm (1/32 in)
//!   width: [15 cm (5 7/8 in), 20 cm (7 7/8 in)]
//!   height: [12 cm (4 3/4 in), 15 cm (5 7/8 in)]
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [15 cm (5 7/8 in), 20 cm (7 7/8 in)]
//!   height: [12 cm (4 3/4 in), 15 cm (5 7/8 in)]
//! ```
//!
//! ## Limits
//! Looks at seams, and at what pieces state for their edges. From 3 to 40 mm is usual for a seam (common practice, no
//! source); the allowances of hems and of folded edges may be wider, and an edge may have none at all. An allowance that
//! stands under a name is told where the name is stated.

use super::cause::cause;
use super::judge::Judge;
use super::words::length_of;
use crate::diag::{Check, Findings, Group};
use crate::measure::{Dimension, Exact};
use crate::model::{Expression, is_for};
use crate::resolve::{Edition, Worked};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("allowance-unusual", Group::Facts, include_str!("allowance_unusual.rs")).waivable(),
    run,
);

/// Looks at the seams and the pieces of one size, each place once.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let mut told: Vec<Span> = Vec::new();
    let mut look = |formula: &Expression, worked: Option<Worked>, widest: Option<Exact>| {
        let Some(worked) = worked.filter(|worked| worked.quantity.dimension == Dimension::Length) else { return };
        let value = worked.quantity.value;
        let narrow = value.is_positive() && value < NARROWEST;
        let wide = widest.is_some_and(|widest| value > widest);
        let span = formula.span();
        if !(narrow || wide) || told.contains(&span) {
            return;
        }
        told.push(span);
        let sort = if narrow { "narrow" } else { "wide" };
        findings.push(
            CHECK
                .at(span, format!("an allowance of {} is very {sort}", length_of(edition, worked)))
                .hint("see whether the unit is right: `1 cm (3/8 in)` is usual; if it is meant, waive it and say why")
                .in_size(edition.size(), ""),
        );
    };
    for work in edition.steps().flat_map(|step| &step.works).filter(|work| work.verb.joins_at_allowance()) {
        work.work.allowance.iter().for_each(|formula| look(cause(edition, formula), work.allowance, Some(WIDEST)));
    }
    let pieces = edition.draft.facts.pieces.iter().filter(|piece| is_for(piece.sizes.as_ref(), edition.size()));
    for (_, formula) in pieces.flat_map(|piece| &piece.allowance) {
        look(cause(edition, formula), edition.values.quiet(formula), None);
    }
}

/// In mm.
const NARROWEST: Exact = Exact::from_integer(3);

/// In mm.
const WIDEST: Exact = Exact::from_integer(40);
