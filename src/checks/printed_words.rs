//! Every printed passage of a booklet, for the checks that look at words alone.

use super::judge::Subject;
use super::passage::{Passage, of_blocks, of_text, passages};
use super::said::each_prose;
use super::written::{Sort, each_text};
use crate::model::{Block, Part};
use crate::resolve::{Edition, EditionStep};

/// Calls `see` with every step of every size, and its passages there.
pub(super) fn each_step(subject: &Subject<'_>, see: &mut dyn FnMut(&Edition<'_>, &EditionStep<'_>, &[Passage<'_>])) {
    let steps = || subject.editions.iter().flat_map(|edition| edition.steps().map(move |step| (edition, step)));
    let read =
        subject.read.or_read(|| steps().map(|(edition, step)| passages(step.step, Some(edition.size()))).collect());
    for ((edition, step), passages) in steps().zip(read) {
        see(edition, step, passages);
    }
}

/// Calls `see` with every passage: of the facts, of the parts, of the steps and of the diagrams.
pub(super) fn each_passage(subject: &Subject<'_>, see: &mut dyn FnMut(&Passage<'_>)) {
    // Names and words of diagrams are no prose; prose is read whole, since a slip stands between two runs of it.
    each_text(subject, &mut |text, sort| {
        if sort == Sort::Plain {
            see(&of_text(text));
        }
    });
    each_sentence(subject, see);
}

/// The same without names, which may say of a thing what no sentence should, such as "Part 1".
pub(super) fn each_sentence(subject: &Subject<'_>, see: &mut dyn FnMut(&Passage<'_>)) {
    subject.figures.words.iter().for_each(|text| see(&of_text(text)));
    each_prose(subject.draft, &mut |blocks| all(blocks, see));
    subject.draft.parts.iter().for_each(|part| of_titles(part, see));
    subject.draft.help.iter().for_each(|question| all(&[Block::Paragraph(question.title.clone())], see));
}

fn of_titles(part: &Part, see: &mut dyn FnMut(&Passage<'_>)) {
    all(&[Block::Paragraph(part.title.clone())], see);
    part.steps.iter().for_each(|step| all(&[Block::Paragraph(step.title.clone())], see));
}

fn all(blocks: &[Block], see: &mut dyn FnMut(&Passage<'_>)) {
    of_blocks(blocks, None).iter().for_each(see);
}
