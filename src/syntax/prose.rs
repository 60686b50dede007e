//! Markdown events as a tree of prose: its blocks. The words inside a line are read in `words.rs`.

use std::ops::Range;

use pulldown_cmark::{Alignment as Align, BlockQuoteKind, CodeBlockKind, Event, Tag, TagEnd};

use super::markdown::{Piece, Reader};
use super::words::is_inline;
use super::{waive, work};
use crate::faults::MARKUP_NOT_PRINTED;
use crate::model::{Alignment, Block, Inline, ListItem, NoticeKind, Table, Text};

/// Walks over events and builds prose.
pub(super) struct Builder<'r, 'a, 'p> {
    pub(super) reader: &'r mut Reader<'a>,
    pub(super) pieces: &'p [Piece],
    pub(super) at: usize,
}

impl<'r, 'a, 'p> Builder<'r, 'a, 'p> {
    pub fn new(reader: &'r mut Reader<'a>, pieces: &'p [Piece]) -> Self {
        Builder { reader, pieces, at: 0 }
    }

    /// Blocks up to the end of the enclosing one, which is consumed, or of the events.
    pub fn blocks(&mut self) -> Vec<Block> {
        let mut blocks = Vec::new();
        while let Some((event, range)) = self.pieces.get(self.at) {
            match event {
                Event::End(_) => {
                    self.at += 1;
                    break;
                }
                Event::Start(tag) if !is_inline(tag) => {
                    self.at += 1;
                    self.block(tag, range.clone(), &mut blocks);
                }
                Event::Rule => {
                    self.at += 1;
                    blocks.push(Block::Rule);
                }
                Event::TaskListMarker(_) => self.at += 1,
                _ => {
                    let content = self.run();
                    push_paragraph(content, &mut blocks);
                }
            }
        }
        blocks
    }

    fn block(&mut self, tag: &Tag<'static>, range: Range<usize>, blocks: &mut Vec<Block>) {
        match tag {
            Tag::Paragraph => {
                let content = self.inlines();
                push_paragraph(content, blocks);
            }
            Tag::Heading { level, .. } => {
                let span = self.reader.source.at(self.line(&range));
                let content = self.inlines();
                blocks.push(Block::Heading(*level as u8, content, span));
            }
            Tag::BlockQuote(kind) => {
                let content = self.blocks();
                blocks.push(match kind {
                    None => Block::Quote(content),
                    Some(kind) => Block::Notice(notice(*kind), content),
                });
            }
            Tag::CodeBlock(kind) => self.code(kind, blocks),
            Tag::List(start) => {
                let mut items = Vec::new();
                while let Some((Event::Start(Tag::Item), _)) = self.pieces.get(self.at) {
                    self.at += 1;
                    let task = self.is_task();
                    let content = self.blocks();
                    items.push(ListItem { task, content });
                }
                self.at += 1;
                blocks.push(Block::List(*start, items));
            }
            Tag::Table(columns) => {
                let columns = columns.iter().map(|column| alignment(*column)).collect();
                let table = self.table(columns);
                blocks.push(Block::Table(table));
            }
            Tag::HtmlBlock => {
                while matches!(self.pieces.get(self.at), Some((Event::Html(_) | Event::Text(_), _))) {
                    self.at += 1;
                }
                self.at += 1;
                self.html(range);
            }
            // Everything else is switched off.
            _ => {
                let inner = self.blocks();
                blocks.extend(inner);
            }
        }
    }

    /// In a loose list the mark stands inside the item's first paragraph.
    fn is_task(&self) -> bool {
        let mut ahead = self.pieces[self.at..].iter().map(|(event, _)| event);
        match ahead.next() {
            Some(Event::TaskListMarker(_)) => true,
            Some(Event::Start(Tag::Paragraph)) => matches!(ahead.next(), Some(Event::TaskListMarker(_))),
            _ => false,
        }
    }

    fn code(&mut self, kind: &CodeBlockKind<'static>, blocks: &mut Vec<Block>) {
        let mut text = String::new();
        let mut range: Option<Range<usize>> = None;
        while let Some((event, piece)) = self.pieces.get(self.at) {
            self.at += 1;
            match event {
                Event::Text(words) => {
                    text.push_str(words);
                    range = Some(range.map_or(piece.clone(), |range| range.start..piece.end));
                }
                _ => break,
            }
        }
        let is_work = matches!(kind, CodeBlockKind::Fenced(info) if info.trim() == "work");
        if !is_work || self.reader.works.is_none() {
            blocks.push(Block::Code(text));
            return;
        }
        let Some(range) = range else { return };
        let slice = self.reader.source.text[range.clone()].to_owned();
        let source = Text { text: slice, span: self.reader.source.at(range), verbatim: self.reader.source.verbatim };
        let works = work::read(&source, self.reader.findings);
        if let Some(known) = &mut self.reader.works {
            known.extend(works);
        }
    }

    fn table(&mut self, columns: Vec<Alignment>) -> Table {
        let mut table = Table { columns, header: Vec::new(), rows: Vec::new() };
        while let Some((event, _)) = self.pieces.get(self.at) {
            self.at += 1;
            match event {
                Event::Start(Tag::TableHead) => table.header = self.cells(),
                Event::Start(Tag::TableRow) => {
                    let row = self.cells();
                    table.rows.push(row);
                }
                _ => break,
            }
        }
        table
    }

    fn cells(&mut self) -> Vec<Vec<Inline>> {
        let mut cells = Vec::new();
        while let Some((Event::Start(Tag::TableCell), _)) = self.pieces.get(self.at) {
            self.at += 1;
            let cell = self.inlines();
            cells.push(cell);
        }
        self.at += 1;
        cells
    }

    pub(super) fn html(&mut self, range: Range<usize>) {
        let html = self.reader.source.text[range.clone()].trim_end();
        let html_at = self.reader.source.at(range.start..range.start + html.len());
        match waive::read_comment(html, html_at) {
            waive::Comment::Waiver(waiver) => self.reader.waivers.push(waiver),
            waive::Comment::Remark => {}
            waive::Comment::Markup => self.reader.findings.push(
                MARKUP_NOT_PRINTED
                    .at(html_at, "HTML is not printed in a booklet")
                    .hint("write it in Markdown, or take it out"),
            ),
        }
    }

    fn line(&self, range: &Range<usize>) -> Range<usize> {
        let text = &self.reader.source.text[range.clone()];
        range.start..range.start + text.find('\n').unwrap_or(text.len())
    }
}

/// A figure among the words of a paragraph stands by itself, after the words before it.
fn push_paragraph(content: Vec<Inline>, blocks: &mut Vec<Block>) {
    let mut words: Vec<Inline> = Vec::new();
    let blank =
        |words: &[Inline]| words.iter().all(|word| matches!(word, Inline::Text(text) if text.text.trim().is_empty()));
    for inline in content {
        match inline {
            Inline::Figure(figure) => {
                let before = std::mem::take(&mut words);
                if !blank(&before) {
                    blocks.push(Block::Paragraph(before));
                }
                blocks.push(Block::Figure(figure));
            }
            other => words.push(other),
        }
    }
    if !blank(&words) {
        blocks.push(Block::Paragraph(words));
    }
}

fn notice(kind: BlockQuoteKind) -> NoticeKind {
    match kind {
        BlockQuoteKind::Note => NoticeKind::Note,
        BlockQuoteKind::Tip => NoticeKind::Tip,
        BlockQuoteKind::Important => NoticeKind::Important,
        BlockQuoteKind::Warning => NoticeKind::Warning,
        BlockQuoteKind::Caution => NoticeKind::Caution,
    }
}

fn alignment(align: Align) -> Alignment {
    match align {
        Align::None => Alignment::None,
        Align::Left => Alignment::Left,
        Align::Center => Alignment::Center,
        Align::Right => Alignment::Right,
    }
}

/// The end of a heading, for those who split a file at its headings.
pub(super) fn heading_end(pieces: &[Piece], start: usize) -> usize {
    pieces[start..]
        .iter()
        .position(|(event, _)| matches!(event, Event::End(TagEnd::Heading(_))))
        .map_or(pieces.len(), |at| start + at + 1)
}
