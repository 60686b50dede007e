//! A step names an edge that the piece does not have.
//!
//! ## Why it matters
//! Which edge is meant, the maker cannot ask. And where an edge has no name, nothing about its
//! length, its notches or its allowance can be checked.
//!
//! ## Wrong
//! ````md
//! ## Finish the edge {#edge}
//!
//! ```work
//! - topstitch: front.tpo
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Finish the edge {#edge}
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
//! A rectangle has `top`, `right`, `bottom` and `left`, and a corner taken out adds one more, such
//! as `bottom_left_corner`; a path has the edges that you named; a zip has `tape_a`, `tape_b`,
//! `start` and `end`. Looks at work and at notches. Each edge is told once.

use crate::construct::{Fault, History};
use crate::diag::did_you_mean;
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NoSuchEdge { name, owner, known } = fault else { continue };
        let edge = name.text.split('.').nth(1).unwrap_or("");
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        findings.push(
            Finding::error("edge-unknown", name.span, format!("`{owner}` has no edge `{edge}`"))
                .hint(did_you_mean(edge, known.iter().copied(), &format!("its edges are: {}", known.join(", "))))
                .in_size(edition.size(), ""),
        );
    }
}
