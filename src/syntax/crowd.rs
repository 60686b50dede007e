//! Whether there is more of something than any booklet needs: looked at as soon as it is read, before anything is
//! reckoned with it.

use crate::diag::Findings;
use crate::faults::OVER_LIMIT;
use crate::limits::{
    BRACES, COLUMNS, COPIES, LAYERS, LETTERS, Limit, NOTCHES, PICTURES, PIECES, QUESTIONS, SIZES, STEPS, WAIVERS, WORKS,
};
use crate::model::{Block, CutCopies, Draft, Facts, Inline, Part, Question, Step};
use crate::source::Span;

/// Tells that there is too much of something.
pub(super) fn tell(limit: Limit, span: Span, findings: &mut Findings) {
    findings.push(OVER_LIMIT.at(span, limit.fact()).hint(limit.act));
}

/// Whether the facts keep within the limits; what does not is told.
pub(super) fn facts(facts: &Facts, findings: &mut Findings) -> bool {
    let mut crowd = Crowd { findings, whole: true };
    crowd.list(SIZES, facts.sizes.iter().map(|size| size.id.span));
    crowd.list(PIECES, facts.pieces.iter().map(|piece| piece.id.span));
    for piece in &facts.pieces {
        crowd.list(NOTCHES, piece.notches.iter().map(|_| piece.id.span));
        for cut in &piece.cut {
            // What a formula comes to is bounded where it is worked out.
            let count = match &cut.copies {
                CutCopies::Named(names) => names.len(),
                CutCopies::Count(count) => *count as usize,
                CutCopies::Reckoned(_) => 0,
            };
            crowd.count(COPIES, count, cut.fabric.span);
        }
    }
    crowd.whole
}

/// Whether the parts keep within the limits; what does not is told.
pub(super) fn draft(draft: &Draft, findings: &mut Findings) -> bool {
    let mut crowd = Crowd { findings, whole: true };
    crowd.list(WAIVERS, draft.waivers.iter().map(|waiver| waiver.span));
    crowd.list(STEPS, draft.steps().map(|(_, step)| step.span));
    crowd.list(QUESTIONS, draft.help.iter().map(|question| question.span));
    draft.help.iter().for_each(|question| crowd.question(question));
    draft.parts.iter().for_each(|part| crowd.part(part));
    draft.steps().for_each(|(_, step)| crowd.step(step));
    crowd.whole
}

struct Crowd<'a> {
    findings: &'a mut Findings,
    whole: bool,
}

impl Crowd<'_> {
    fn count(&mut self, limit: Limit, count: usize, span: Span) {
        if count > limit.most {
            tell(limit, span, self.findings);
            self.whole = false;
        }
    }

    /// Told at the first that is too many.
    fn list(&mut self, limit: Limit, mut spans: impl Iterator<Item = Span>) {
        if let Some(span) = spans.nth(limit.most) {
            tell(limit, span, self.findings);
            self.whole = false;
        }
    }

    fn question(&mut self, question: &Question) {
        self.count(BRACES, braces(&question.answer), question.span);
        self.columns(&question.answer, question.span);
    }

    fn columns(&mut self, blocks: &[Block], span: Span) {
        for block in blocks {
            if let Block::Table(table) = block {
                self.count(COLUMNS, table.columns.len(), span);
            }
        }
    }

    /// What a part comes to when each of its braces prints the longest that is handed to it.
    fn part(&mut self, part: &Part) {
        let braces = part.intro.iter().chain(part.steps.iter().flat_map(|step| &step.body));
        let braces = self::braces(braces);
        self.count(BRACES, braces, part.span);
        let longest = part.params.each().max_by_key(|param| param.text.text.len());
        if let Some(longest) = longest {
            self.count(LETTERS, braces.saturating_mul(longest.text.text.len()), longest.text.span);
        }
    }

    fn step(&mut self, step: &Step) {
        self.list(WORKS, step.works.iter().map(|work| work.span));
        for work in &step.works {
            self.list(LAYERS, work.touches.iter().chain(&work.caught).map(|touch| touch.name.span));
        }
        let mut pictures = 0;
        for block in &step.body {
            block.each_figure(&mut |_| pictures += 1);
        }
        self.columns(&step.body, step.span);
        self.count(PICTURES, pictures, step.span);
    }
}

/// How many braces and references some blocks hold.
fn braces<'a>(blocks: impl IntoIterator<Item = &'a Block>) -> usize {
    let mut count = 0;
    for block in blocks {
        block.each_inline(&mut |inline| {
            count += usize::from(matches!(inline, Inline::Brace(_) | Inline::Reference(_)));
        });
    }
    count
}
