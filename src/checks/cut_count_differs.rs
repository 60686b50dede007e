//! Fewer copies of a piece are cut than the steps use.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CutTooFew { missing, piece, cut, used } = fault else { continue };
        let piece = &edition.draft.facts.pieces[*piece].id.text;
        let missing = missing.join(", ");
        findings.push(
            Finding::error("cut-count-differs", cut.verb, format!("`{piece}` is cut too few times: no step cuts `{missing}`"))
                .hint(format!("add it here: `- cut: [{missing}, …]`, or name the whole piece, `{piece}`"))
                .note(used.verb, format!("used here, in step {}", used.step))
                .in_size(edition.size(), ""),
        );
    }
}
