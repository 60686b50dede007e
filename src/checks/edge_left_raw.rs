//! An edge is never sewn, finished or declared raw.
//!
//! ## Why it matters
//! A raw edge frays from the first wash on. Most often a seam was forgotten; if it is meant, as on
//! a bound strip, the booklet should say so.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [right, bottom, left], cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [right, bottom, left], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at every copy that is sewn, hemmed, bound or folded at all, when the last step is done.
//! Seams, hems and binding settle an edge, and a fold once it is topstitched afterwards; so do
//! `raw:` with its name, or `all`, and the edge that lies on the fold. A zip of which one tape is sewn counts too. All raw edges of a size are one finding.

use super::judge::Judge;
use crate::construct::{Fault, History, RawOf};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Facts;
use crate::resolve::Edition;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("edge-left-raw", Group::Work, include_str!("edge_left_raw.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::EdgesRaw { edges, twice, early } = fault else { continue };
        let facts = &edition.draft.facts;
        let Some((first, _)) = edges.first() else { continue };
        let names: Vec<String> = edges.iter().map(|(_, edge)| format!("`{edge}`")).collect();
        let message = match names.as_slice() {
            [one] => format!("{one} stays raw: no step sews or finishes it"),
            names => format!("{} stay raw: no step sews or finishes them", names.join(", ")),
        };
        let mut finding = CHECK.at( place(*first, facts), message)
            .hint("sew, hem or bind the edge, fold and topstitch it, or add it to the piece's `raw:` if it is meant to stay raw");
        let mut told = vec![*first];
        for (of, _) in edges {
            if let RawOf::Piece(piece) = of
                && !told.contains(of)
            {
                told.push(*of);
                finding = finding.note(facts.pieces[*piece].id.span, "and of this piece");
            }
        }
        for (edge, stitched) in early {
            let words = format!("`{edge}` is topstitched here, before it is folded: topstitch it after the fold");
            finding = finding.note(stitched.verb, words);
        }
        for (edge, later) in twice {
            finding =
                finding.note(later.verb, format!("`{edge}` is sewn for the second time here: is another edge meant?"));
        }
        findings.push(finding.in_size(edition.size(), ""));
    }
}

/// Where a raw edge is told: at its piece or its zip.
fn place(of: RawOf, facts: &Facts) -> Span {
    match of {
        RawOf::Piece(piece) => facts.pieces[piece].id.span,
        RawOf::Zip(zip) => facts.notions[zip].id.span,
    }
}
