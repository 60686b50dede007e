//! A step names an edge that the piece does not have.

use crate::diag::did_you_mean;
use crate::construct::{Fault, History};
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
