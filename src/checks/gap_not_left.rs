//! Something is turned right side out, and nothing is open to turn it through.

use crate::construct::{Fault, History};
use crate::diag::{Finding, Findings};
use crate::resolve::Edition;

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NothingOpen { turned, closed } = fault else { continue };
        let finding = match closed {
            Some(closed) => Finding::error("gap-not-left", turned.verb, "the gap to turn through is closed already")
                .hint(format!("turn first: move this before step {}", closed.step))
                .note(closed.verb, format!("closed here, in step {}", closed.step)),
            None => Finding::error("gap-not-left", turned.verb, "nothing is open to turn this through")
                .hint("leave a gap in a seam that is sewn before: `leave: 12 cm`, and close it afterwards"),
        };
        findings.push(finding.note(turned.heading, "in this step").in_size(edition.size(), ""));
    }
}
