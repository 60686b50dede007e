//! An edge is topstitched before the seam that it belongs to is sewn.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::TopstitchedTooSoon { edge, stitched, sewn } = fault else { continue };
        findings.push(
            Finding::error("topstitched-before-sewn", stitched.verb, format!("`{edge}` is topstitched before it is sewn"))
                .hint(format!("sew first: move this after step {}", sewn.step))
                .note(sewn.verb, format!("sewn only here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
