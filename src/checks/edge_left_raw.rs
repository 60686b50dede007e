//! An edge is never sewn, finished or declared raw.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::EdgesRaw { edges } = fault else { continue };
        let pieces = &edition.draft.facts.pieces;
        let Some((first, _)) = edges.first() else { continue };
        let names: Vec<String> = edges.iter().map(|(_, edge)| format!("`{edge}`")).collect();
        let message = match names.as_slice() {
            [one] => format!("{one} stays raw: no step sews or finishes it"),
            names => format!("{} stay raw: no step sews or finishes them", names.join(", ")),
        };
        let mut finding = Finding::error("edge-left-raw", pieces[*first].id.span, message)
            .hint("sew, hem, bind or fold the edge, or add it to the piece's `raw:` if it is meant to stay raw");
        let mut told = vec![*first];
        for (piece, _) in edges {
            if !told.contains(piece) {
                told.push(*piece);
                finding = finding.note(pieces[*piece].id.span, "and of this piece");
            }
        }
        findings.push(finding.in_size(edition.size(), ""));
    }
}
