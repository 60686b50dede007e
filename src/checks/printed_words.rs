//! Every printed passage of a booklet, for the checks that look at words alone.

use super::judge::Subject;
use super::passage::{Passage, of_blocks, of_text, passages};
use super::written::{Sort, each_text};
use crate::model::{Block, Facts, Part};
use crate::resolve::{Edition, EditionStep};

/// Calls `see` with every step of every size, and its passages there.
pub(super) fn each_step(
    subject: &Subject<'_>,
    see: &mut dyn FnMut(&Edition<'_>, &EditionStep<'_>, &[Passage<'_>]),
) {
    for edition in subject.editions {
        for step in edition.steps() {
            see(edition, step, &passages(step.step, Some(edition.size())));
        }
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
    subject.figures.words.iter().for_each(|text| see(&of_text(text)));
    of_facts(&subject.draft.facts, see);
    subject.draft.parts.iter().for_each(|part| of_part(part, see));
}

fn of_facts(facts: &Facts, see: &mut dyn FnMut(&Passage<'_>)) {
    let notes = facts.pieces.iter().map(|piece| &piece.note);
    let notes = notes.chain(facts.fabrics.iter().map(|fabric| &fabric.note));
    let notes = notes.chain(facts.notions.iter().map(|notion| &notion.note));
    let words = facts.words.iter().map(|word| &word.meaning);
    let changes = facts.editions.iter().map(|entry| &entry.changes);
    let pages = [&facts.read_first, &facts.care, &facts.terms].into_iter().chain(&facts.cautions);
    pages.chain(notes).chain(words).chain(changes).for_each(|blocks| all(blocks, see));
}

fn of_part(part: &Part, see: &mut dyn FnMut(&Passage<'_>)) {
    all(&[Block::Paragraph(part.title.clone())], see);
    all(&part.intro, see);
    for step in &part.steps {
        passages(step, None).iter().for_each(&mut *see);
        step.works.iter().for_each(|work| all(&work.note, see));
    }
}

fn all(blocks: &[Block], see: &mut dyn FnMut(&Passage<'_>)) {
    of_blocks(blocks, None).iter().for_each(see);
}
