//! A heading leaves a level out, or words stand where no heading opens them.

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
            findings.push(
                Finding::error("heading-skips", *span, format!("a heading of level {level} follows one of level {last}"))
                    .hint(format!("write it with `{right}`; a step is `##`, a heading inside a step `###`")),
            );
        }
        last = *level;
    }
}
