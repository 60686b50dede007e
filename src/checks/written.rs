//! Every text that an author wrote and that is printed, in one place for all checks of words.

use super::judge::Subject;
use crate::model::{Block, Facts, Inline, Name, Part, PrintedText, Text, Work};
use crate::source::Span;

/// What sort of text it is, which decides what may be asked of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    /// Prose, or words of a diagram: braces have a meaning there.
    Prose,
    /// A name, a title or plain words about the thing that is made: braces have no meaning there.
    Plain,
    /// The name of one size, which stands for that size alone.
    SizeName,
    /// Code and addresses, set as they are, the words of the house, and what tells who made the booklet
    /// and when.
    Set,
}

/// Calls `see` with every printed text, each at its place.
pub(super) fn each_text(subject: &Subject<'_>, see: &mut dyn FnMut(&Text, Sort)) {
    facts(&subject.draft.facts, see);
    subject.draft.parts.iter().for_each(|part| words_of(part, see));
    for question in &subject.draft.help {
        line(&question.title, see);
        prose(&question.answer, see);
    }
    subject.figures.words.iter().for_each(|text| see(text, Sort::Prose));
    subject.labels.iter().for_each(|text| see(text, Sort::Set));
}

fn facts(facts: &Facts, see: &mut dyn FnMut(&Text, Sort)) {
    let mut plain: Vec<&Text> = vec![&facts.title];
    plain.extend([&facts.skill, &facts.summary, &facts.style.cover_alt].into_iter().flatten());
    plain.extend(facts.fabrics.iter().map(|fabric| &fabric.name));
    plain.extend(facts.notions.iter().flat_map(|notion| std::iter::once(&notion.name).chain(&notion.plural)));
    for piece in &facts.pieces {
        plain.push(&piece.name);
        plain.extend(piece.copy_names.iter().chain(&piece.edge_names).map(|(_, called)| called));
    }
    plain.extend(facts.tools.iter().map(|tool| &tool.name));
    plain.extend(facts.body.iter().map(|row| &row.name));
    plain.extend(facts.finished.iter().map(|row| &row.name));
    plain.into_iter().for_each(|text| see(text, Sort::Plain));
    facts.words.iter().for_each(|word| see(&named(&word.term), Sort::Plain));
    facts.sizes.iter().for_each(|size| see(&text(&size.name, size.name_at), Sort::SizeName));
    if let Some(video) = &facts.video {
        see(&video.url, Sort::Set);
        video.opening.iter().for_each(|opening| see(opening, Sort::Plain));
    }
    let set = [&facts.designer, &facts.contact].into_iter().flatten().chain([&facts.edition]);
    set.chain(facts.editions.iter().map(|entry| &entry.edition)).for_each(|text| see(text, Sort::Set));
    for line in facts.sourcing().flat_map(|sourcing| &sourcing.search) {
        see(line, if line.text.contains("://") { Sort::Set } else { Sort::Plain });
    }
    let notes = facts.pieces.iter().map(|piece| &piece.note);
    let notes = notes.chain(facts.fabrics.iter().map(|fabric| &fabric.note));
    let notes = notes.chain(facts.notions.iter().map(|notion| &notion.note));
    let notes = notes.chain(facts.sourcing().map(|sourcing| &sourcing.instead));
    let meanings = facts.words.iter().map(|word| &word.meaning);
    let changes = facts.editions.iter().map(|entry| &entry.changes);
    let pages = [&facts.time, &facts.read_first, &facts.care, &facts.terms]
        .into_iter()
        .chain(facts.cautions.iter().map(|one| &one.content));
    pages.chain(notes).chain(meanings).chain(changes).for_each(|blocks| prose(blocks, see));
}

fn words_of(part: &Part, see: &mut dyn FnMut(&Text, Sort)) {
    // What reads as a formula is worked out, and its figures are printed.
    let handed = part.params.each().filter(|param| param.expression.is_none());
    handed.for_each(|param| see(&param.text, Sort::Plain));
    line(&part.title, see);
    prose(&part.intro, see);
    for step in &part.steps {
        line(&step.title, see);
        prose(&step.body, see);
        step.works.iter().for_each(|work| work_words(work, see));
    }
}

fn work_words(work: &Work, see: &mut dyn FnMut(&Text, Sort)) {
    work.words.iter().for_each(|text| see(text, Sort::Plain));
    prose(&work.note, see);
}

fn prose(blocks: &[Block], see: &mut dyn FnMut(&Text, Sort)) {
    blocks.iter().for_each(|block| block.each_text(&mut |printed| sorted(printed, see)));
}

fn line(content: &[Inline], see: &mut dyn FnMut(&Text, Sort)) {
    Inline::each_text(content, &mut |printed| sorted(printed, see));
}

fn sorted(printed: PrintedText<'_>, see: &mut dyn FnMut(&Text, Sort)) {
    match printed {
        PrintedText::Words(text) => see(text, Sort::Prose),
        PrintedText::Set(text) => see(text, Sort::Set),
    }
}

fn named(name: &Name) -> Text {
    text(&name.text, name.span)
}

fn text(words: &str, span: Span) -> Text {
    // Of the same length, they stand in the file as they are.
    Text { text: words.to_owned(), span, verbatim: span.range().len() == words.len() }
}
