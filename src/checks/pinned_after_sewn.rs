//! Edges are pinned after they have been sewn.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::PinnedTooLate { edges, pinned, sewn } = fault else { continue };
        // A step that pins several edges too late is one fault.
        if told.contains(&(pinned.step, sewn.step)) {
            continue;
        }
        told.push((pinned.step, sewn.step));
        findings.push(
            Finding::error("pinned-after-sewn", pinned.verb, format!("`{}` and `{}` are pinned after they are sewn", edges.0, edges.1))
                .hint(format!("pin first: move this before step {}", sewn.step))
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
