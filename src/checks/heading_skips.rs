//! Where `heading-skips` is met by the checks themselves; its page stands in `src/faults/heading_skips.rs`.

use super::judge::{Judge, Subject};
use crate::diag::Findings;
use crate::faults::HEADING_SKIPS;
use crate::model::Block;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(&HEADING_SKIPS, run);

/// Looks at the headings below steps and in introductions.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for part in &subject.draft.parts {
        levels(&part.intro, 1, STEP, findings);
        part.steps.iter().for_each(|step| levels(&step.body, 2, STEP, findings));
    }
    subject.draft.help.iter().for_each(|question| levels(&question.answer, 2, QUESTION, findings));
}

/// What the levels of headings are, below a step and below a question.
const STEP: &str = "a step is `##`, a heading inside a step `###`";
const QUESTION: &str = "a question is `##`, a heading inside its answer `###`";

fn levels(blocks: &[Block], above: u8, right_levels: &str, findings: &mut Findings) {
    let mut last = above;
    for block in blocks {
        let Block::Heading(level, _, span) = block else { continue };
        if *level > last + 1 {
            let right = "#".repeat(usize::from(last) + 1);
            let hint = match last {
                1 => "begin a step with `##`, or make these words a paragraph: an introduction has no headings"
                    .to_owned(),
                _ => format!("write it with `{right}`; {right_levels}"),
            };
            findings.push(
                HEADING_SKIPS.at(*span, format!("a heading of level {level} follows one of level {last}")).hint(hint),
            );
        }
        last = *level;
    }
}
