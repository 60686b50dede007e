//! Cloth that is quilted first is too small for what is cut from it.
//!
//! ## Why it matters
//! Quilting takes hours and draws the cloth in; a panel that is too small by a finger's width is made again.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   plain: {name: Plain cotton, widths: [110 cm]}
//!   quilted: {name: Quilted cotton, from: panel}
//! pieces:
//!   panel: {sheet: no, outline: {rectangle: [20 cm, 20 cm]}, raw: all, cut: {plain: [panel_top, panel_back]}}
//!   pad: {outline: {rectangle: [20 cm, 20 cm]}, raw: all, grain: vertical, cut: {quilted: 1}}
//! ```
//! ````md
//! ## Quilt the panel {#panel}
//!
//! ```work
//! - cut: panel
//! - {quilt: [panel_top, panel_back], stitch: 3 mm}
//! - cut: pad
//! - {topstitch: [pad, front, in the middle], stitch: 3 mm}
//! ```
//!
//! Quilt the panel and cut the pad from it.
//! ````
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   plain: {name: Plain cotton, widths: [110 cm]}
//!   quilted: {name: Quilted cotton, from: panel}
//! pieces:
//!   panel: {sheet: no, outline: {rectangle: [22 cm, 22 cm]}, raw: all, cut: {plain: [panel_top, panel_back]}}
//!   pad: {outline: {rectangle: [20 cm, 20 cm]}, raw: all, grain: vertical, cut: {quilted: 1}}
//! ```
//! ````md
//! ## Quilt the panel {#panel}
//!
//! ```work
//! - cut: panel
//! - {quilt: [panel_top, panel_back], stitch: 3 mm}
//! - cut: pad
//! - {topstitch: [pad, front, in the middle], stitch: 3 mm}
//! ```
//!
//! Quilt the panel and cut the pad from it.
//! ````
//!
//! ## Limits
//! Lays the pieces on one panel, a rectangle, as cloth is laid. What quilting takes is the `shrinkage:` of the quilted
//! cloth; without it 3 % of the length and of the width are reckoned (common practice, no source). Of several panels only
//! whether each piece fits on one of them is looked at.
//! It is told at the measurement of the side that is too short, or at its formula.

use super::judge::Judge;
use super::words::length;
use crate::cloth::{Quilted, quilted};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{BySize, Outline};
use crate::resolve::Edition;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("quilted-too-small", Group::Print, include_str!("quilted_too_small.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every cloth of one size that is quilted first.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let facts = &edition.draft.facts;
    for panel in quilted(edition).into_iter().filter(|panel| panel.needed > panel.room + 0.5) {
        let (piece, fabric) = (&facts.pieces[panel.piece].id, &facts.fabrics[panel.fabric].id);
        let way = if panel.across { "across" } else { "along it" };
        findings.push(
            CHECK
                .at(
                    side(edition, &panel).unwrap_or(piece.span),
                    format!("`{}` is too small, once it is quilted, for what is cut from it", piece.text),
                )
                .hint(format!(
                    "cut `{}` larger; what quilting takes may be stated as `shrinkage:` of `{}`",
                    piece.text, fabric.text
                ))
                .note(fabric.span, "the cloth that is made of it")
                .in_size(
                    edition.size(),
                    format!(
                        "the pieces take {} {way}, and {} are left of it",
                        length(edition, panel.needed),
                        length(edition, panel.room)
                    ),
                ),
        );
    }
}

/// Where the side of a panel is stated that is too short: at the measurement that it bears the name of, or at its formula.
fn side(edition: &Edition<'_>, panel: &Quilted) -> Option<Span> {
    let facts = &edition.draft.facts;
    let piece = &facts.pieces[panel.piece];
    let Some(Outline::Rectangle { width, height, .. }) = &piece.outline else { return None };
    let turned = piece.grain.as_ref().is_some_and(|grain| grain.text == "horizontal");
    let stated: &BySize = if panel.across == turned { height } else { width };
    let mut formula = stated.get(edition.size())?;
    // A measurement that is another by its bare name is followed; so many at the most as there are.
    for _ in &facts.measurements {
        let name = formula.formula.text.trim();
        let named = facts.measurements.iter().find(|one| one.name.text == name);
        let Some(next) = named.and_then(|one| one.value.get(edition.size())) else { break };
        formula = next;
    }
    Some(formula.span())
}
