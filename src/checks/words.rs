//! Words that several checks share.

use super::Subject;
use crate::construct::Moment;
use crate::model::{Inline, Text};
use crate::resolve::{Edition, Worked};

/// A length in mm as the booklet shows it in its first system: to the millimetre.
pub(super) fn length(edition: &Edition<'_>, millimetres: f64) -> String {
    let quantity = super::apart::millimetres(millimetres);
    edition.figures(&Worked { quantity, stated: None }).first.to_string().replace('\u{a0}', " ")
}

/// Another moment as seen from a step: "step 4", or the other work where both stand in one step.
pub(super) fn that_step(other: &Moment, own: &Moment) -> String {
    if other.step == own.step { "the other work of this step".to_owned() } else { format!("step {}", other.step) }
}

/// Calls `see` with every run of words that an author wrote: parts, steps, the prose of the facts, and
/// the names of tools.
pub(super) fn each_text<'a>(subject: &Subject<'a>, see: &mut dyn FnMut(&'a Text)) {
    let facts = &subject.draft.facts;
    let mut inline = |inline: &'a Inline| {
        if let Inline::Text(text) = inline {
            see(text);
        }
    };
    for part in &subject.draft.parts {
        Inline::walk(&part.title, &mut inline);
        part.intro.iter().for_each(|block| block.each_inline(&mut inline));
        for step in &part.steps {
            Inline::walk(&step.title, &mut inline);
            step.body.iter().for_each(|block| block.each_inline(&mut inline));
        }
    }
    let lists = [&facts.read_first, &facts.care, &facts.terms];
    let notes = facts.pieces.iter().map(|piece| &piece.note);
    let notes = notes.chain(facts.fabrics.iter().map(|fabric| &fabric.note));
    let notes = notes.chain(facts.notions.iter().map(|notion| &notion.note));
    let meanings = facts.words.iter().map(|word| &word.meaning);
    let blocks = lists.into_iter().chain(facts.cautions.iter()).chain(meanings).chain(notes);
    blocks.flatten().for_each(|block| block.each_inline(&mut inline));
    facts.tools.iter().for_each(|tool| see(&tool.name));
}
