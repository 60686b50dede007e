//! A zip is the same in every size, while the seam that it is let into grows.
//!
//! ## Why it matters
//! In the smallest size it fills the seam, in the largest nothing passes through it.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [12 cm (4 3/4 in), 20 cm (7 7/8 in)]
//! notions:
//!   zip: {kind: zip, name: Zip, length: 8 cm, count: 1}
//! pieces:
//!   case: {outline: {rectangle: [width, 10 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: [case_front, case_back]}}
//! ```
//! ````md
//! ## Sew the case {#case}
//!
//! ```work
//! - cut: case
//! - {sew: [case_front.top, case_back.top], allowance: seam, stitch: 2.5 mm, leave: {length: zip.length, for: zip}}
//! - {topstitch: [zip, case_front], stitch: 2.5 mm}
//! ```
//!
//! Sew the top, leave the opening for the [](notion:zip) and sew it in.
//! ````
//!
//! ## Right
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   width: [12 cm (4 3/4 in), 20 cm (7 7/8 in)]
//! notions:
//!   zip: {kind: zip, name: Zip, length: [8 cm, 15 cm], count: 1}
//! pieces:
//!   case: {outline: {rectangle: [width, 10 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: [case_front, case_back]}}
//! ```
//! ````md
//! ## Sew the case {#case}
//!
//! ```work
//! - cut: case
//! - {sew: [case_front.top, case_back.top], allowance: seam, stitch: 2.5 mm, leave: {length: zip.length, for: zip}}
//! - {topstitch: [zip, case_front], stitch: 2.5 mm}
//! ```
//!
//! Sew the top, leave the opening for the [](notion:zip) and sew it in.
//! ````
//!
//! ## Limits
//! Looks at openings that are left for a zip, in the sizes of one thing. A seam that grows by less than a quarter may
//! keep its zip (common practice, no source).

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Exact;
use crate::model::{Kind, NotionFigure, by_view};
use crate::resolve::{Edition, Filler, NotionId, Touched};

/// How much a seam may grow, as a share of the shortest, before its zip should (common practice, no source).
const GROWTH: f64 = 1.25;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("zip-not-graded", Group::Facts, include_str!("zip_not_graded.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every zip, in the sizes of each thing.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for (id, notion) in NotionId::each(&facts.notions).filter(|(_, notion)| notion.kind == Kind::Zip) {
        for view in by_view(&facts.sizes) {
            let own: Vec<(usize, Exact, f64)> =
                view.iter().filter_map(|size| measured(subject.editions.get(*size)?, id)).collect();
            let shortest = own.iter().min_by(|one, other| one.2.total_cmp(&other.2));
            let longest = own.iter().max_by(|one, other| one.2.total_cmp(&other.2));
            let (Some(shortest), Some(longest)) = (shortest, longest) else { continue };
            if longest.2 <= shortest.2 * GROWTH || own.iter().any(|one| one.1 != shortest.1) {
                continue;
            }
            let long = |(size, _, seam): &(usize, Exact, f64)| super::words::length(&subject.editions[*size], *seam);
            findings.push(
                CHECK
                    .at(
                        notion.id.span,
                        format!(
                            "`{}` is the same in every size, while its seam grows from {} to {}",
                            notion.id.text,
                            long(shortest),
                            long(longest)
                        ),
                    )
                    .hint(
                        "give it a length for each size, such as `length: [15 cm, 20 cm]`, or waive this and say why",
                    ),
            );
        }
    }
}

/// The size, the length of its zip and of the longest edge in which an opening is left for it, in mm.
fn measured(edition: &Edition<'_>, zip: NotionId) -> Option<(usize, Exact, f64)> {
    let row = edition.notions.iter().find(|row| row.notion == zip)?;
    let length = row.figures.get(&NotionFigure::Length)?.exact.value;
    let works = edition.steps().flat_map(|step| &step.works);
    let seams = works.filter(|work| work.leave_for == Some(Filler::Notion(zip))).flat_map(|work| work.touched());
    let long = |one: Touched| match one {
        Touched::Edge(copy, edge) => Some(edition.edge(copy, edge)?.seam_length),
        _ => None,
    };
    let longest = seams.filter_map(long).fold(0.0, f64::max);
    (longest > 0.0).then_some((edition.size(), length, longest))
}
