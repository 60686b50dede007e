//! A row of basting, or what an allowance is trimmed to, reaches over the seam that is sewn there.
//!
//! ## Why it matters
//! Basting farther in than the seam shows on the right side for good, and an allowance of 6 mm cannot be trimmed to 8.
//!
//! ## Wrong
//! ````md
//! ## Sew the pouch anew {#anew}
//!
//! ```work
//! - {baste: [front.top, back.top], allowance: 2 * seam, stitch: 4 mm}
//! - {sew: [front.top, back.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Baste the top edges and sew them.
//! ````
//!
//! ## Right
//! ````md
//! ## Sew the pouch anew {#anew}
//!
//! ```work
//! - {baste: [front.top, back.top], allowance: seam / 2, stitch: 4 mm}
//! - {sew: [front.top, back.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Baste the top edges and sew them.
//! ````
//!
//! ## Limits
//! Compares the `allowance` of `baste` with that of the next `sew` over one of its edges, and the `allowance` of `trim` with
//! the seams that its edges are in. A measurement of which two such works are made is told itself, where it is stated.
//! What is only held for a while, such as a zip's seam basted shut, says no allowance.

use std::collections::{BTreeMap, BTreeSet};

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group};
use crate::model::Verb;
use crate::resolve::{Edition, EditionWork, Touched, Worked};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::warning("row-too-deep", Group::Work, include_str!("row_too_deep.rs")).waivable(), run);

/// Looks at all work of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for edition in subject.editions {
        let works: Vec<&EditionWork<'_>> = edition.steps().flat_map(|step| &step.works).collect();
        let deep: Vec<(&EditionWork<'_>, Worked, &EditionWork<'_>)> = works
            .iter()
            .enumerate()
            .filter_map(|(at, work)| {
                let (before, after) = (&works[..at], &works[at + 1..]);
                let own = work.allowance?;
                let seam = match work.verb {
                    Verb::Baste => seam_over(work, after.iter()),
                    Verb::Trim => seam_over(work, before.iter().rev()),
                    _ => None,
                }?;
                let over = own.quantity.value.cmp(&seam.allowance?.quantity.value);
                let too_deep = if work.verb == Verb::Trim { over.is_ge() } else { over.is_gt() };
                too_deep.then_some((*work, own, seam))
            })
            .collect();
        tell(subject, edition, &deep, findings);
    }
}

/// The next seam over an edge of some work.
fn seam_over<'w, 'e: 'w>(
    work: &EditionWork<'_>,
    mut others: impl Iterator<Item = &'w &'w EditionWork<'e>>,
) -> Option<&'w EditionWork<'e>> {
    let edges: BTreeSet<Touched> = work.touched().filter(|touched| matches!(touched, Touched::Edge(..))).collect();
    let over = |other: &&&EditionWork<'_>| {
        other.verb == Verb::Sew && other.allowance.is_some() && other.touched().any(|touched| edges.contains(&touched))
    };
    others.find(over).copied()
}

/// The formula of an allowance, as written.
fn name_of<'e>(work: &EditionWork<'e>) -> &'e str {
    work.work.allowance.as_ref().map_or("", |formula| formula.source.text.trim())
}

fn tell(
    subject: &Subject<'_>,
    edition: &Edition<'_>,
    deep: &[(&EditionWork<'_>, Worked, &EditionWork<'_>)],
    findings: &mut Findings,
) {
    // One measurement that many works name is what slipped.
    let mut by_name: BTreeMap<&str, usize> = BTreeMap::new();
    deep.iter().for_each(|(work, ..)| *by_name.entry(name_of(work)).or_default() += 1);
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for (work, own, seam) in deep {
        let Some(of_seam) = &seam.allowance else { continue };
        let figure = |worked: &Worked| edition.figures(worked).first.to_string();
        let name = name_of(work);
        let stated = subject.draft.facts.measurements.iter().find(|one| one.name.text == name);
        let what = if work.verb == Verb::Trim { "trimmed to" } else { "basted at" };
        let message = format!("what is {what} {} is sewn at {}", figure(own), figure(of_seam));
        let here = work.work.allowance.as_ref().map_or(work.work.verb_span, |formula| formula.span());
        let place: Option<Span> = match stated {
            Some(one) if by_name.get(name).is_some_and(|count| *count > 1) => {
                told.insert(name).then(|| one.value.get(edition.size()).map_or(one.name.span, |value| value.span()))
            }
            _ => Some(here),
        };
        let Some(place) = place else { continue };
        findings.push(
            CHECK
                .at(place, message)
                .hint("make it narrower than the allowance of the seam")
                .note(seam.work.verb_span, "the seam")
                .in_size(edition.size(), ""),
        );
    }
}
