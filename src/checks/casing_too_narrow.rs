//! Elastic or tape is as wide as its casing, or wider.
//!
//! ## Why it matters
//! It does not pass through, or it curls up inside.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 25 mm (1 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! - insert: [elastic, strap.top]
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 15 mm (5/8 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! - insert: [elastic, strap.top]
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
//! ````
//!
//! ## Limits
//! Looks at elastic and tape that state their `width:`. A hemmed edge is as wide inside as the hem's
//! `allowance`, or less; a strip as its narrower side, or less. What is turned under a second time is not known.

use super::apart::Told;
use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::to_f64;
use crate::model::{Kind, NotionFigure, Verb};
use crate::resolve::{CopyId, EdgeId, Edition, EditionWork, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("casing-too-narrow", Group::Work, include_str!("casing_too_narrow.rs")).waivable_in(Home::Words),
    run,
);

/// What no hand can tell apart, in mm.
const HAIR: f64 = 0.5;

/// Holds what is inserted against its casing.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for work in edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Insert) {
        let inside = work.touched().filter_map(|target| inside(edition, &target));
        let Some(inside) = inside.reduce(f64::min) else { continue };
        for row in edition.notions.iter().filter(|row| work.targets.iter().any(|one| one.notion() == Some(row.notion)))
        {
            let notion = &edition.draft.facts.notions[row.notion];
            let passes = matches!(notion.kind, Kind::Elastic | Kind::Tape);
            let Some(width) = row.figures.get(&NotionFigure::Width).filter(|_| passes) else { continue };
            let wide = to_f64(width.exact.value);
            if wide + HAIR <= inside {
                continue;
            }
            let told = Told::lengths(edition, wide, inside);
            findings.push(
                CHECK
                    .at(work.work.verb_span, format!("`{}` does not pass through its casing", notion.id.text))
                    .hint("make the casing wider than what passes through it, or take it narrower")
                    .in_size(edition.size(), format!("{} wide, and the casing {}{}", told.one, told.other, told.apart)),
            );
        }
    }
}

/// How wide a casing is inside at the most, in mm; `None` where that is not known.
fn inside(edition: &Edition<'_>, target: &Touched) -> Option<f64> {
    match target {
        Touched::Edge(copy, edge) => {
            let works = edition.steps().flat_map(|step| &step.works);
            let hem = works.filter(|work| hems(work, *copy, *edge)).last()?;
            Some(to_f64(hem.allowance?.quantity.value))
        }
        Touched::Copy(copy) => {
            let (width, height) = edition.values.shape(edition.cast[*copy].piece)?.box_size();
            Some(width.min(height))
        }
        _ => None,
    }
}

fn hems(work: &EditionWork<'_>, copy: CopyId, edge: EdgeId) -> bool {
    work.verb == Verb::Hem && work.touched().any(|touched| touched == Touched::Edge(copy, edge))
}
