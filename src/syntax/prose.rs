//! Markdown events as a tree of prose: its blocks. The words inside a line are read in `words.rs`.

use std::ops::Range;

use pulldown_cmark::{Alignment as Align, BlockQuoteKind, CodeBlockKind, Event, Tag};

use super::reader::Room;
use super::walk::{Builder, is_inline};
use super::{fences, waive};
use crate::faults::{FIGURE_MISPLACED, FOR_UNREADABLE, MARKUP_NOT_PRINTED};
use crate::model::{Alignment, Block, Inline, ListItem, NoticeKind, Table, Text};

impl Builder<'_, '_, '_> {
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
                    self.no_room("a line across", range);
                    blocks.push(Block::Rule);
                }
                Event::TaskListMarker(_) => {
                    self.at += 1;
                    self.no_room("a box to tick", range);
                }
                _ => {
                    let content = self.run();
                    self.paragraph(content, &mut blocks);
                }
            }
        }
        blocks
    }

    fn block(&mut self, tag: &Tag<'static>, range: Range<usize>, blocks: &mut Vec<Block>) {
        match tag {
            Tag::Paragraph => {
                let content = self.inlines();
                self.paragraph(content, blocks);
            }
            Tag::Heading { level, id, classes, attrs } => {
                let span = self.reader.line(&range);
                self.no_room("a heading", &range);
                if id.is_some() || !classes.is_empty() || !attrs.is_empty() {
                    self.attributes(&range);
                }
                let content = self.inlines();
                blocks.push(Block::Heading(*level as u8, content, span));
            }
            Tag::BlockQuote(kind) => {
                if kind.is_some() {
                    self.no_room("a notice", &range);
                }
                let content = self.blocks();
                blocks.push(match kind {
                    None => Block::Quote(content),
                    Some(kind) => Block::Notice(notice(*kind), content),
                });
            }
            Tag::CodeBlock(kind) => self.code(kind, range, blocks),
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
                self.no_room("a table", &range);
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

    fn code(&mut self, kind: &CodeBlockKind<'static>, whole: Range<usize>, blocks: &mut Vec<Block>) {
        let mut text = String::new();
        let mut range = whole.start..whole.start;
        while let Some((Event::Text(words), piece)) = self.pieces.get(self.at) {
            self.at += 1;
            range = if text.is_empty() { piece.clone() } else { range.start..piece.end };
            text.push_str(words);
        }
        self.at += 1;
        let source = self.reader.source;
        let verbatim = source.verbatim && source.text[range.clone()] == text;
        let text = Text { text, span: source.at(range.clone()), verbatim };
        let is_work = matches!(kind, CodeBlockKind::Fenced(info) if fences::is_work(info, &whole, self.reader));
        if is_work {
            fences::read_work(range, self.reader);
        } else {
            blocks.push(Block::Code(text));
        }
    }

    fn table(&mut self, columns: Vec<Alignment>) -> Table {
        let mut table = Table { columns, header: Vec::new(), rows: Vec::new() };
        while let Some((event, range)) = self.pieces.get(self.at) {
            self.at += 1;
            match event {
                Event::Start(Tag::TableHead) => table.header = self.cells(),
                Event::Start(Tag::TableRow) => {
                    self.excess(range.clone(), table.columns.len());
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

    /// Cells that a row has beyond the table's columns, which Markdown leaves out.
    fn excess(&mut self, row: Range<usize>, columns: usize) {
        let text = self.reader.source.text[row.clone()].trim_end();
        let inner = text.trim_start().strip_prefix('|').unwrap_or(text.trim_start());
        let mut at = row.start + (text.len() - inner.len());
        let end = row.start + text.len();
        let mut bars = 0;
        while at < end {
            let group = self.reader.groups.iter().find(|group| group.start == at);
            match self.reader.source.text.as_bytes()[at] {
                b'\\' => at += 2,
                b'|' => {
                    bars += 1;
                    at += 1;
                    let rest = self.reader.source.text.get(at..end).unwrap_or("");
                    let words = rest.trim_matches([' ', '\t', '|']);
                    if bars == columns && !words.is_empty() {
                        let start = at + rest.find(words).unwrap_or(0);
                        self.reader.findings.push(
                            MARKUP_NOT_PRINTED
                                .at(
                                    self.reader.source.at(start..start + words.len()),
                                    "this row has more cells than the table has columns, and they are not printed",
                                )
                                .hint("add a column to the first two lines of the table, or write `\\|` for a bar"),
                        );
                        return;
                    }
                }
                _ => at = group.map_or(at + 1, |group| group.end),
            }
        }
    }

    pub(super) fn html(&mut self, range: Range<usize>) {
        let html = self.reader.source.text[range.clone()].trim_end();
        let html_at = self.reader.source.at(range.start..range.start + html.len());
        let (message, hint) = match waive::read_comments(html, html_at) {
            waive::Comment::Remarks(waivers) => return self.reader.waivers.extend(waivers),
            waive::Comment::Unclosed => {
                ("this remark is never closed, and all below it is not printed", "close it with `-->`")
            }
            waive::Comment::Markup => ("HTML is not printed in a booklet", "write it in Markdown, or take it out"),
        };
        self.reader.findings.push(MARKUP_NOT_PRINTED.at(html_at, message).hint(hint));
    }

    /// Reports what a cell of a table cannot hold.
    pub(super) fn no_room(&mut self, what: &str, range: &Range<usize>) {
        if self.reader.room == Room::Cell {
            let span = self.reader.line(range);
            self.reader.findings.push(
                MARKUP_NOT_PRINTED
                    .at(span, format!("{what} cannot be printed in a note or beside a word explained"))
                    .hint("write it as a paragraph or as a list, or put it into a step"),
            );
        }
    }

    /// Braces behind a heading that is neither a part's nor a step's.
    fn attributes(&mut self, range: &Range<usize>) {
        let line = self.reader.line(range);
        let text = &self.reader.source.text[range.clone()];
        let text = text.lines().next().unwrap_or("").trim_end();
        let braces =
            text.rfind('{').map_or(line, |at| self.reader.source.at(range.start + at..range.start + text.len()));
        let (inside, hint) = match self.reader.room {
            Room::Answer => {
                ("an answer", "take them out, or make it a question of its own: `## Why does it wave? {#zip}`")
            }
            _ => (
                "a step",
                "take them out, or make it the heading of a step of its own: `## The seams {#seams for=large}`",
            ),
        };
        self.reader.findings.push(
            FOR_UNREADABLE.at(braces, format!("braces behind a heading inside {inside} have no meaning")).hint(hint),
        );
    }

    /// A figure among the words of a paragraph stands by itself, after the words before it.
    fn paragraph(&mut self, content: Vec<Inline>, blocks: &mut Vec<Block>) {
        let mut words: Vec<Inline> = Vec::new();
        for inline in content {
            match inline {
                Inline::Figure(figure) if self.reader.room == Room::Part => {
                    push_words(&mut words, blocks);
                    blocks.push(Block::Figure(figure));
                }
                Inline::Figure(figure) => self.reader.findings.push(
                    FIGURE_MISPLACED
                        .at(figure.span, format!("a diagram cannot stand in {}", self.reader.room.called()))
                        .hint("put it into a part or a step"),
                ),
                other => words.push(other),
            }
        }
        push_words(&mut words, blocks);
    }
}

fn push_words(words: &mut Vec<Inline>, blocks: &mut Vec<Block>) {
    let words = std::mem::take(words);
    let blank = words.iter().all(|word| matches!(word, Inline::Text(text) if text.text.trim().is_empty()));
    if !blank {
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
