//! A corner is boxed before the seams beside it are sewn.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::BoxedTooSoon { corner, edge, boxed, sewn } = fault else { continue };
        if told.contains(&(boxed.step, sewn.step)) {
            continue;
        }
        told.push((boxed.step, sewn.step));
        findings.push(
            Finding::error("boxed-before-sewn", boxed.verb, format!("`{corner}` is boxed before `{edge}` is sewn"))
                .hint(format!("sew the seams beside the corner first: move this after step {}", sewn.step))
                .note(sewn.verb, format!("sewn only here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
