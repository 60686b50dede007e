//! A step sews at another allowance than the piece was cut with.

use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::AllowanceDiffers { edge, own, sewn, stated } = fault else { continue };
        let piece = edge.split('.').next().and_then(|copy| edition.catalogue.get(copy)).and_then(|kind| kind.piece());
        let mut finding = Finding::error("allowance-differs", *stated, format!("`{edge}` is sewn at another allowance than it was cut with"))
            .hint("sew at the piece's own allowance, or change `allowance:` of the piece")
            .note(sewn.heading, "in this step")
            .in_size(edition.size(), format!("the piece has {} here", length(edition, *own)));
        if let Some(piece) = piece {
            finding = finding.note(edition.draft.facts.pieces[piece].id.span, "the piece");
        }
        findings.push(finding);
    }
}
