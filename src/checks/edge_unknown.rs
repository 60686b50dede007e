//! Where `edge-unknown` is met by the checks themselves; its page stands in `src/faults/edge_unknown.rs`.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::Findings;
use crate::diag::did_you_mean;
use crate::faults::EDGE_UNKNOWN;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(&EDGE_UNKNOWN, run);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NoSuchEdge { name, owner, edge, known } = fault else { continue };
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        findings.push(
            EDGE_UNKNOWN
                .at(name.span, format!("`{owner}` has no edge `{edge}`"))
                .hint(did_you_mean(edge, known.iter().copied(), &format!("its edges are: {}", known.join(", "))))
                .in_size(edition.size(), ""),
        );
    }
}
