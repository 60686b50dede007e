//! Where `alt-missing` is met by the checks themselves; its page stands in `src/faults/alt_missing.rs`.

use super::judge::{Judge, Subject};
use crate::diag::Findings;
use crate::faults::ALT_MISSING;
use crate::model::{Block, Figure, Inline};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(&ALT_MISSING, run);

/// Looks at every diagram.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut see = |figure: &Figure| {
        let mut words = 0;
        Inline::walk(&figure.alt, &mut |inline| match inline {
            Inline::Text(text) if !text.text.trim().is_empty() => words += 1,
            Inline::Brace(_) | Inline::Reference(_) => words += 1,
            _ => {}
        });
        if words == 0 {
            findings.push(
                ALT_MISSING
                    .at(figure.span, "this diagram has no words for those who cannot see it")
                    .hint("say what it shows between the square brackets: `![Zip face down on the front](…)`"),
            );
        }
    };
    for part in &subject.draft.parts {
        let blocks = part.intro.iter().chain(part.steps.iter().flat_map(|step| &step.body));
        blocks.for_each(|block: &Block| block.each_figure(&mut see));
    }
}
