//! Prose as sentences: their words without the markup, each word with its place, and the figures among them.

use std::ops::Range;

use crate::model::{Block, Brace, Draft, Expression, Inline, NoticeKind, Text, is_for};
use crate::source::Span;

/// A sentence.
pub(super) struct Sentence<'a> {
    /// Its words as written, with a space where something is filled in.
    pub text: String,
    /// The formulas that it prints, each with its place in the words.
    pub figures: Vec<(usize, &'a Expression)>,
    /// The notice that it stands in.
    pub notice: Option<NoticeKind>,
    pieces: Vec<(usize, &'a Text, usize)>,
}

impl Sentence<'_> {
    /// Where its first run of words stands in the file; `None` where it has none.
    pub fn place(&self) -> Option<Span> {
        let words = |(_, text, from): &(usize, &Text, usize)| {
            let rest = &text.text[*from..];
            let begin = from + rest.len() - rest.trim_start().len();
            let end = rest.find(['.', '!', '?', ';']).map_or(text.text.len(), |end| from + end);
            (begin < end).then(|| text.at(begin..end))
        };
        self.pieces.iter().find_map(words)
    }
}

/// Every sentence of some blocks; in choices those of one size, or of all where none is given.
pub(super) fn sentences(blocks: &[Block], size: Option<usize>) -> Vec<Sentence<'_>> {
    let mut found = Vec::new();
    blocks.iter().for_each(|block| of_block(block, size, None, &mut found));
    found
}

/// Calls `see` with every run of prose of a booklet that makers read, its facts first.
pub(super) fn each_prose<'a>(draft: &'a Draft, see: &mut dyn FnMut(&'a [Block])) {
    let facts = &draft.facts;
    [&facts.time, &facts.read_first, &facts.care, &facts.terms].into_iter().for_each(|blocks| see(blocks));
    facts.cautions.iter().for_each(|caution| see(&caution.content));
    facts.fabrics.iter().for_each(|fabric| see(&fabric.note));
    facts.notions.iter().for_each(|notion| see(&notion.note));
    facts.sourcing().for_each(|sourcing| see(&sourcing.instead));
    facts.pieces.iter().for_each(|piece| see(&piece.note));
    facts.words.iter().for_each(|word| see(&word.meaning));
    facts.editions.iter().for_each(|entry| see(&entry.changes));
    for part in &draft.parts {
        see(&part.intro);
        for step in &part.steps {
            see(&step.body);
            step.works.iter().for_each(|work| see(&work.note));
        }
    }
    draft.help.iter().for_each(|question| see(&question.answer));
}

fn of_block<'a>(block: &'a Block, size: Option<usize>, notice: Option<NoticeKind>, found: &mut Vec<Sentence<'a>>) {
    match block {
        Block::Paragraph(content) | Block::Heading(_, content, _) => line(content, size, notice, found),
        Block::List(_, items) => {
            items.iter().flat_map(|item| &item.content).for_each(|block| of_block(block, size, notice, found));
        }
        Block::Quote(content) => content.iter().for_each(|block| of_block(block, size, notice, found)),
        Block::Notice(kind, content) => content.iter().for_each(|block| of_block(block, size, Some(*kind), found)),
        Block::Table(table) => {
            let cells = table.header.iter().chain(table.rows.iter().flatten());
            cells.for_each(|cell| line(cell, size, notice, found));
        }
        Block::Figure(_) | Block::Code(_) | Block::Rule => {}
    }
}

fn line<'a>(content: &'a [Inline], size: Option<usize>, notice: Option<NoticeKind>, found: &mut Vec<Sentence<'a>>) {
    let mut own = Gathered { open: blank(notice), done: Vec::new() };
    own.run(content, size);
    let Gathered { open, done } = own;
    found.extend(done.into_iter().chain([open]).filter(|sentence| !sentence.pieces.is_empty()));
}

fn blank<'a>(notice: Option<NoticeKind>) -> Sentence<'a> {
    Sentence { text: String::new(), figures: Vec::new(), notice, pieces: Vec::new() }
}

struct Gathered<'a> {
    open: Sentence<'a>,
    done: Vec<Sentence<'a>>,
}

impl<'a> Gathered<'a> {
    fn run(&mut self, content: &'a [Inline], size: Option<usize>) {
        for inline in content {
            match inline {
                Inline::Text(text) => self.words(text),
                Inline::Strong(inner) | Inline::Emphasis(inner) | Inline::Link(_, inner) => self.run(inner, size),
                Inline::Reference(reference) if !reference.content.is_empty() => self.run(&reference.content, size),
                Inline::Brace(Brace::Print { value, .. }) => {
                    self.open.figures.push((self.open.text.len(), value));
                    self.open.text.push(' ');
                }
                Inline::Brace(Brace::Choice { branches, .. }) => {
                    let takes = |sizes: Option<&Vec<usize>>| size.is_none_or(|size| is_for(sizes, size));
                    let most = if size.is_some() { 1 } else { branches.len() };
                    let taken = branches.iter().filter(|branch| takes(branch.sizes.as_ref())).take(most);
                    taken.for_each(|branch| self.run(&branch.content, size));
                }
                _ => self.open.text.push(' '),
            }
        }
    }

    /// Takes words in, and begins a new sentence behind each full stop.
    fn words(&mut self, text: &'a Text) {
        let mut from = 0;
        for (at, letter) in text.text.char_indices() {
            let after = at + letter.len_utf8();
            let ends = matches!(letter, '.' | '!' | '?' | ';');
            if ends && text.text[after..].chars().next().is_none_or(|next| next.is_whitespace() || next == '”') {
                self.take(text, from..after);
                let next = blank(self.open.notice);
                self.done.push(std::mem::replace(&mut self.open, next));
                from = after;
            }
        }
        self.take(text, from..text.text.len());
    }

    fn take(&mut self, text: &'a Text, range: Range<usize>) {
        if !range.is_empty() {
            self.open.pieces.push((self.open.text.len(), text, range.start));
            self.open.text.push_str(&text.text[range]);
        }
    }
}
