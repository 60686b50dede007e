//! A gap that was left in a seam is never closed.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::GapOpen { edges, sewn, leave } = fault else { continue };
        findings.push(
            Finding::error("gap-not-closed", *leave, "this gap is never closed")
                .hint(format!("add a step that closes it: `- close: [{}]` with `by: hand`", edges.join(", ")))
                .note(sewn.heading, "left in this step")
                .in_size(edition.size(), ""),
        );
    }
}
