//! A seam is topstitched without having been pressed.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NotPressed { edge, stitched, sewn } = fault else { continue };
        findings.push(
            Finding::warning("not-pressed", stitched.verb, format!("the seam at `{edge}` is topstitched without having been pressed"))
                .hint("press the seam first: `- press: [front, away from the zip]`")
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
