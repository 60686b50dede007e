//! A stitch length is one that hardly any machine sews and no seam wants.
//!
//! ## Why it matters
//! A stitch of a quarter of a millimetre cuts the cloth like a row of holes in paper, and cannot be unpicked; one of
//! 25 mm holds nothing. Most often a comma has slipped.
//!
//! ## Wrong
//! ````md
//! ## Secure the edge {#edge}
//!
//! ```work
//! - topstitch: front.top
//!   stitch: 0.3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Secure the edge {#edge}
//!
//! ```work
//! - topstitch: front.top
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Limits
//! From 1 to 6 mm is usual, up to 10 mm for `baste`, and from 0.3 mm for `applique` and `boxstitch`, whose stitches lie
//! side by side (common practice, no source). What is longer than 12 mm is told by `out-of-range`. A length that stands
//! under a name is told where the name is stated.

use super::cause::cause;
use super::judge::Judge;
use super::words::length_of;
use crate::diag::{Check, Findings, Group};
use crate::measure::Exact;
use crate::model::Verb;
use crate::resolve::Edition;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::edition(&Check::warning("stitch-unusual", Group::Work, include_str!("stitch_unusual.rs")).waivable(), run);

/// Looks at the stitch length of every work fact, each place once.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let mut told: Vec<Span> = Vec::new();
    for work in edition.steps().flat_map(|step| &step.works) {
        let (Some(stitch), Some(formula)) = (work.stitch, &work.work.stitch) else { continue };
        let (least, most) = usual(work.verb);
        let value = stitch.quantity.value;
        let span = cause(edition, formula).span();
        if (least..=most).contains(&value) || told.contains(&span) {
            continue;
        }
        told.push(span);
        let sort = if value < least { "short" } else { "long" };
        let usual = if work.verb == Verb::Baste { "5 mm" } else { "2.5 mm" };
        findings.push(
            CHECK
                .at(
                    span,
                    format!("a stitch of {} is very {sort} for `{}`", length_of(edition, stitch), work.verb.word()),
                )
                .hint(format!("see whether a comma slipped: `{usual}` is usual; if it is meant, waive it and say why"))
                .in_size(edition.size(), ""),
        );
    }
}

/// The shortest and the longest usual stitch, in mm.
fn usual(verb: Verb) -> (Exact, Exact) {
    let whole = Exact::from_integer;
    match verb {
        Verb::Baste => (Exact::ONE, whole(10)),
        Verb::Applique | Verb::Boxstitch => (Exact::of::<3, 10>(), whole(6)),
        _ => (Exact::ONE, whole(6)),
    }
}
