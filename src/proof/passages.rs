//! The words of a booklet as one size reads them, each figure with where it comes from.
//!
//! They are read from what the author wrote, since places are kept there; what references print is taken from the
//! words as they were worked out, in the same order.

use std::collections::VecDeque;
use std::ops::Range;

use super::evidence::Evidence;
use super::numbers::{Bit, bits};
use super::origin::Tracer;
use super::row::Origin;
use crate::book::Amount;
use crate::diag::Findings;
use crate::model::{self, Brace, Expression, Filter, is_for};
use crate::resolve::{self, Aim, Edition, EditionStep, Pointer, Said, Scope, Uses, handed_words, say};
use crate::source::Span;

/// A run of words or a figure.
#[derive(Debug, Clone)]
pub(super) struct Told {
    pub text: String,
    /// Where it is written.
    pub span: Span,
    /// What it is where it is a figure.
    pub figure: Option<Figure>,
}

/// A figure in words.
#[derive(Debug, Clone)]
pub(super) struct Figure {
    /// As it is written; for one that is typed, with the word behind it.
    pub written: String,
    /// Whether it is typed by hand.
    pub typed: bool,
    /// What tells it from others: where it is written.
    pub span: Span,
    pub from: Vec<Origin>,
}

/// A paragraph, a cell, a heading, a description.
#[derive(Debug, Clone)]
pub(super) struct Passage {
    /// What tells it from others: the address of what is written.
    pub key: usize,
    /// The key of what it is.
    pub kind: &'static str,
    /// What stands before it: the sign of an item.
    pub sign: String,
    pub told: Vec<Told>,
}

/// Reads words for one size.
pub(super) struct Reader<'a, 'b> {
    pub evidence: &'b Evidence<'a>,
    pub edition: &'b Edition<'a>,
    pub scope: Scope<'b>,
    /// What references lead to, in their order.
    pointers: VecDeque<&'b Pointer>,
    sign: String,
    found: Vec<Passage>,
}

impl<'a, 'b> Reader<'a, 'b> {
    pub fn new(evidence: &'b Evidence<'a>, edition: &'b Edition<'a>, scope: Scope<'b>) -> Reader<'a, 'b> {
        Reader { evidence, edition, scope, pointers: VecDeque::new(), sign: String::new(), found: Vec::new() }
    }

    /// What was read.
    pub fn passages(self) -> Vec<Passage> {
        self.found
    }

    /// A heading, or another line by itself.
    pub fn title(&mut self, written: &[model::Inline], printed: &'b [resolve::Inline], kind: &'static str) {
        self.pointers = VecDeque::new();
        in_line(printed, &mut self.pointers);
        self.line(written, kind);
    }

    /// Blocks.
    pub fn prose(&mut self, written: &[model::Block], printed: &'b [resolve::Block]) {
        self.pointers = VecDeque::new();
        in_blocks(printed, &mut self.pointers);
        written.iter().for_each(|block| self.block(block, "sentence"));
    }

    /// A step: its heading, its words, and the notes of its work.
    pub fn step(&mut self, step: &'b EditionStep<'_>) {
        self.title(&step.step.title, &step.title, "heading");
        let mut pointers = VecDeque::new();
        in_blocks(&step.body, &mut pointers);
        // The first diagram stands by itself once a step is worked out.
        let first = step.step.body.iter().position(|block| matches!(block, model::Block::Figure(_)));
        self.pointers = pointers;
        for (at, block) in step.step.body.iter().enumerate() {
            let Some(figure) = step.figure.as_ref().filter(|_| Some(at) == first) else {
                self.block(block, "sentence");
                continue;
            };
            let rest = std::mem::take(&mut self.pointers);
            in_line(&figure.alt, &mut self.pointers);
            self.block(block, "sentence");
            self.pointers = rest;
        }
        for work in &step.works {
            self.pointers = VecDeque::new();
            in_blocks(&work.note, &mut self.pointers);
            work.work.note.iter().for_each(|block| self.block(block, "note"));
        }
    }

    fn block(&mut self, block: &model::Block, kind: &'static str) {
        match block {
            model::Block::Paragraph(content) => self.line(content, kind),
            model::Block::Heading(_, content, _) => self.line(content, "heading"),
            model::Block::List(start, items) => {
                let before = std::mem::take(&mut self.sign);
                for (item, at) in items.iter().zip(0..) {
                    self.sign = match start {
                        _ if item.task => "– ".to_owned(),
                        Some(start) => format!("{}. ", start + at),
                        None => "• ".to_owned(),
                    };
                    item.content.iter().for_each(|block| self.block(block, kind));
                }
                self.sign = before;
            }
            model::Block::Quote(content) | model::Block::Notice(_, content) => {
                content.iter().for_each(|block| self.block(block, kind));
            }
            model::Block::Table(table) => {
                let cells = table.header.iter().chain(table.rows.iter().flatten());
                cells.for_each(|cell| self.line(cell, "cell"));
            }
            model::Block::Figure(figure) => self.line(&figure.alt, "alt"),
            model::Block::Code(text) => {
                let told = self.typed(text);
                self.take(text.text.as_ptr() as usize, kind, told);
            }
            model::Block::Rule => {}
        }
    }

    fn line(&mut self, content: &[model::Inline], kind: &'static str) {
        let mut told = Vec::new();
        let mut notes = Vec::new();
        self.inlines(content, &mut told, &mut notes);
        self.take(content.as_ptr() as usize, kind, told);
        self.found.append(&mut notes);
    }

    fn take(&mut self, key: usize, kind: &'static str, told: Vec<Told>) {
        let sign = std::mem::take(&mut self.sign);
        if !told.is_empty() {
            self.found.push(Passage { key, kind, sign, told });
        }
    }

    fn inlines(&mut self, content: &[model::Inline], told: &mut Vec<Told>, notes: &mut Vec<Passage>) {
        for (at, inline) in content.iter().enumerate() {
            match inline {
                model::Inline::Text(text) | model::Inline::Code(text) => told.extend(self.typed(text)),
                model::Inline::Strong(inner) | model::Inline::Emphasis(inner) => self.inlines(inner, told, notes),
                model::Inline::Link(url, inner) => {
                    self.inlines(inner, told, notes);
                    told.push(plain(format!(" ({})", url.text), url.span));
                }
                model::Inline::Break => {
                    if let Some(last) = told.last() {
                        told.push(plain(" ".to_owned(), last.span));
                    }
                }
                model::Inline::Brace(Brace::Print { value, filter, span }) => {
                    let words = |at: Option<usize>| match at.and_then(|at| content.get(at)) {
                        Some(model::Inline::Text(text)) => text.text.as_str(),
                        _ => "",
                    };
                    let beside = (words(at.checked_sub(1)), words(Some(at + 1)));
                    told.push(self.printed(value, filter.as_ref(), *span, beside));
                }
                model::Inline::Brace(Brace::Choice { branches, .. }) => {
                    let size = self.edition.size();
                    let taken = branches.iter().find(|branch| is_for(branch.sizes.as_ref(), size));
                    taken.iter().for_each(|branch| self.inlines(&branch.content, told, notes));
                }
                model::Inline::Brace(Brace::Broken) | model::Inline::Figure(_) => {}
                model::Inline::Reference(reference) => {
                    let pointer = self.pointers.pop_front();
                    match reference.content.is_empty() {
                        true => told.push(plain(self.led(reference, pointer), reference.span)),
                        false => self.inlines(&reference.content, told, notes),
                    }
                }
                model::Inline::Footnote(blocks) => {
                    let own = std::mem::take(&mut self.found);
                    blocks.iter().for_each(|block| self.block(block, "footnote"));
                    notes.append(&mut self.found);
                    self.found = own;
                }
            }
        }
    }

    /// What a reference prints that has no words of the author's.
    fn led(&self, reference: &model::Reference, pointer: Option<&Pointer>) -> String {
        match pointer {
            Some(pointer) if matches!(pointer.to, Some(Aim::Step | Aim::Figure)) => {
                self.evidence.plain().word("ref_step", &[("n", &pointer.name)])
            }
            Some(pointer) => pointer.name.clone(),
            None => reference.target.clone(),
        }
    }

    fn printed(&self, value: &Expression, filter: Option<&Filter>, span: Span, beside: (&str, &str)) -> Told {
        let show = &self.evidence.draft.facts.show;
        let (mut unheard, mut unused) = (Findings::default(), Uses::default());
        let said = say(&self.scope, value, filter, Some(beside), show, (&mut unheard, &mut unused));
        let words = handed_words(&self.scope, value).is_some();
        let text = match said {
            Some(Said::Figures(shown)) => self.evidence.amount(&Amount::of(&shown)),
            Some(Said::Words(text)) if words => return plain(text, span),
            Some(Said::Words(text)) => text,
            None => self.evidence.word("proof_broken"),
        };
        let tracer = Tracer { evidence: self.evidence, edition: self.edition, scope: &self.scope };
        let from = tracer.printed("braces", value, span);
        let written = from.first().map_or_else(String::new, |origin| origin.text.clone());
        Told { text, span, figure: Some(Figure { written, typed: false, span, from }) }
    }

    /// Words of an author's, in which figures may be typed.
    fn typed(&self, text: &model::Text) -> Vec<Told> {
        let bits = bits(&text.text, self.evidence.vocabulary);
        bits.into_iter()
            .map(|bit| match bit {
                Bit::Words(range) => sentences(&text.text, range)
                    .map(|range| plain(text.text[range.clone()].to_owned(), text.at(range)))
                    .collect(),
                Bit::Number(range, written) => {
                    let span = text.at(range.clone());
                    let from = vec![Origin { how: "typed", text: String::new(), place: self.evidence.place(span) }];
                    let figure = Some(Figure { written, typed: true, span, from });
                    vec![Told { text: text.text[range].to_owned(), span, figure }]
                }
            })
            .collect::<Vec<Vec<Told>>>()
            .concat()
    }
}

/// A run of words cut behind the end of each sentence in it.
fn sentences(text: &str, range: Range<usize>) -> impl Iterator<Item = Range<usize>> {
    let mut cuts = vec![range.start];
    let mut letters = text[range.clone()].char_indices().peekable();
    while let Some((at, letter)) = letters.next() {
        let gap = letters.peek().is_some_and(|(_, next)| next.is_whitespace());
        if matches!(letter, '.' | '!' | '?') && gap {
            cuts.push(range.start + at + 1);
        }
    }
    cuts.push(range.end);
    let pairs: Vec<Range<usize>> = cuts.windows(2).map(|pair| pair[0]..pair[1]).filter(|one| !one.is_empty()).collect();
    pairs.into_iter()
}

fn plain(text: String, span: Span) -> Told {
    Told { text, span, figure: None }
}

fn in_blocks<'b>(blocks: &'b [resolve::Block], found: &mut VecDeque<&'b Pointer>) {
    for block in blocks {
        match block {
            resolve::Block::Paragraph { content } | resolve::Block::Heading { content, .. } => in_line(content, found),
            resolve::Block::List { items, .. } => items.iter().for_each(|item| in_blocks(item, found)),
            resolve::Block::Tasks { items } => items.iter().for_each(|item| in_blocks(&item.content, found)),
            resolve::Block::Quote { content } | resolve::Block::Notice { content, .. } => in_blocks(content, found),
            resolve::Block::Table { header, rows, .. } => {
                header.iter().chain(rows.iter().flatten()).for_each(|cell| in_line(cell, found));
            }
            resolve::Block::Figure(figure) => in_line(&figure.alt, found),
            resolve::Block::Code { .. } | resolve::Block::Rule => {}
        }
    }
}

fn in_line<'b>(content: &'b [resolve::Inline], found: &mut VecDeque<&'b Pointer>) {
    for inline in content {
        match inline {
            resolve::Inline::Reference(pointer) => {
                found.push_back(pointer);
                in_line(&pointer.content, found);
            }
            resolve::Inline::Strong { content }
            | resolve::Inline::Emphasis { content }
            | resolve::Inline::Choice { content, .. }
            | resolve::Inline::Link { content, .. } => in_line(content, found),
            resolve::Inline::Footnote { content } => in_blocks(content, found),
            _ => {}
        }
    }
}
