//! Something is turned while its zip is shut.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::ZipShut { notion, turned } = fault else { continue };
        let zip = &edition.draft.facts.notions[*notion].id.text;
        findings.push(
            Finding::error("closed-zip-before-turning", turned.verb, format!("this is turned while `{zip}` is shut"))
                .hint(format!("open it before the last seam closes round it: `- open: {zip}`"))
                .in_size(edition.size(), ""),
        );
    }
}
