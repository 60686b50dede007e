//! A finished measurement is not what the sewing gives.

use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SewnDiffers { row, stated, sewn } = fault else { continue };
        let row = &edition.draft.facts.finished[*row];
        let span = row.value.get(edition.size()).map_or(row.name.span, |value| value.span());
        findings.push(
            Finding::error("finished-size-differs", span, format!("“{}” is not what the sewing gives", row.name.text))
                .hint("mend the measurement, the piece or the allowance: they must come to the same")
                .in_size(edition.size(), format!("stated as {}, sewn to {}", length(edition, *stated), length(edition, *sewn))),
        );
    }
}
