//! A diagram has no words for those who cannot see it.
//!
//! ## Why it matters
//! Those who have the booklet read aloud to them sew by the words alone. A diagram without any is a
//! gap in their instructions.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![](figures/sew.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![Two pieces, right sides together, sewn on three sides](figures/sew.svg)
//! ````
//!
//! ## Limits
//! Also looks for `cover_alt:` beside `cover:`. Whether the words say what the diagram shows, only
//! a reader can judge. Text alternatives for pictures are asked for by WCAG 2.2, success criterion
//! 1.1.1.

use super::Subject;
use crate::diag::{Finding, Findings};
use crate::model::{Block, Figure, Inline};

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
                Finding::error("alt-missing", figure.span, "this diagram has no words for those who cannot see it")
                    .hint("say what it shows between the square brackets: `![Zip face down on the front](…)`"),
            );
        }
    };
    for part in &subject.draft.parts {
        let blocks = part.intro.iter().chain(part.steps.iter().flat_map(|step| &step.body));
        blocks.for_each(|block: &Block| block.each_figure(&mut see));
    }
}
