//! A heading leaves a level out, or words stand where no heading opens them.
//!
//! ## Why it matters
//! Parts and steps are what a maker finds her place by, with eyes or ears. A level that is skipped
//! sounds like a step that was lost.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Every seam should be caught at both ends.
//!
//! #### If one is not
//!
//! Sew over it again.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Every seam should be caught at both ends.
//!
//! ### If one is not
//!
//! Sew over it again.
//! ````
//!
//! ## Limits
//! A file begins with the heading of its part, `#`; steps are `##`; headings inside a step begin at
//! `###`, and an introduction has none. Words or a step before the first `#`, and a file without
//! any heading, are told here too.

use super::Subject;
use crate::diag::{Finding, Findings};
use crate::model::Block;

/// Looks at the headings below steps and in introductions.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for part in &subject.draft.parts {
        levels(&part.intro, 1, findings);
        part.steps.iter().for_each(|step| levels(&step.body, 2, findings));
    }
}

fn levels(blocks: &[Block], above: u8, findings: &mut Findings) {
    let mut last = above;
    for block in blocks {
        let Block::Heading(level, _, span) = block else { continue };
        if *level > last + 1 {
            let right = "#".repeat(usize::from(last) + 1);
            let hint = match last {
                1 => "begin a step with `##`, or make these words a paragraph: an introduction has no headings"
                    .to_owned(),
                _ => format!("write it with `{right}`; a step is `##`, a heading inside a step `###`"),
            };
            findings.push(
                Finding::error(
                    "heading-skips",
                    *span,
                    format!("a heading of level {level} follows one of level {last}"),
                )
                .hint(hint),
            );
        }
        last = *level;
    }
}
