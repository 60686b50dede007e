//! Markdown events as a tree of prose, with brace groups set back where they stood.

use std::ops::Range;

use pulldown_cmark::{Alignment as Align, BlockQuoteKind, CodeBlockKind, Event, LinkType, Tag, TagEnd};

use super::{braces, links};
use super::markdown::{Piece, Reader};
use super::{waive, work};
use crate::diag::{Finding, did_you_mean};
use crate::model::{
    Alignment, Block, Figure, Inline, ListItem, NoticeKind, Reference, Table, Text,
};

/// Walks over events and builds prose.
pub(super) struct Builder<'r, 'a, 'p> {
    reader: &'r mut Reader<'a>,
    pieces: &'p [Piece],
    at: usize,
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
        let source =
            Text { text: slice, span: self.reader.source.at(range), verbatim: self.reader.source.verbatim };
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

    /// Words up to the end of the enclosing element, which is consumed.
    pub fn inlines(&mut self) -> Vec<Inline> {
        let content = self.run();
        links::unread(&content, self.reader.findings);
        if matches!(self.pieces.get(self.at), Some((Event::End(_), _))) {
            self.at += 1;
        }
        content
    }

    /// Words up to the next thing that is no part of a line.
    fn run(&mut self) -> Vec<Inline> {
        let mut content = Vec::new();
        while let Some((event, range)) = self.pieces.get(self.at) {
            match event {
                Event::Text(words) => {
                    self.at += 1;
                    self.text(words, range.clone(), &mut content);
                }
                Event::Code(words) => {
                    self.at += 1;
                    let whole = &self.reader.source.text[range.clone()];
                    let inner = whole.trim_matches('`');
                    let same = inner.len() == whole.len() - 2 && inner.len() == words.len();
                    // The end of a line is a space there (CommonMark 0.31, 6.1).
                    content.push(Inline::Code(if same { inner.replace('\n', " ") } else { words.to_string() }));
                }
                Event::SoftBreak => {
                    self.at += 1;
                    content.push(self.plain(" ", range.clone()));
                }
                Event::HardBreak => {
                    self.at += 1;
                    content.push(Inline::Break);
                }
                Event::FootnoteReference(label) => {
                    self.at += 1;
                    let blocks = self.reader.footnotes.get(label.as_ref()).cloned().unwrap_or_default();
                    content.push(Inline::Footnote(blocks));
                }
                Event::InlineHtml(_) => {
                    self.at += 1;
                    self.html(range.clone());
                }
                Event::TaskListMarker(_) => self.at += 1,
                Event::Start(tag) if is_inline(tag) => {
                    self.at += 1;
                    let inline = self.inline(tag, range.clone());
                    content.push(inline);
                }
                _ => break,
            }
        }
        content
    }

    fn inline(&mut self, tag: &Tag<'static>, range: Range<usize>) -> Inline {
        match tag {
            Tag::Strong => Inline::Strong(self.inlines()),
            Tag::Link { link_type, dest_url, .. } => {
                let content = self.inlines();
                let written = links::target(&self.reader.source.text[range.clone()]);
                let span = self.reader.source.at(range);
                match links::reference(written.as_deref().unwrap_or(dest_url)) {
                    Some((kind, target)) => Inline::Reference(Reference { kind, target, content, span }),
                    None => self.link(*link_type, dest_url, content, span),
                }
            }
            Tag::Image { dest_url, .. } => {
                let alt = self.inlines();
                let path = self.destination(dest_url, range.clone());
                Inline::Figure(Figure { path, alt, span: self.reader.source.at(range) })
            }
            _ => Inline::Emphasis(self.inlines()),
        }
    }

    fn link(&mut self, kind: LinkType, url: &str, content: Vec<Inline>, span: crate::source::Span) -> Inline {
        let url = if kind == LinkType::Email { format!("mailto:{url}") } else { url.to_owned() };
        let known = ["https://", "http://", "mailto:"].iter().any(|scheme| url.starts_with(scheme));
        if !known {
            let prefix = url.split(':').next().unwrap_or("");
            let prefixes = ["piece", "notion", "fabric", "figure", "term"];
            self.reader.findings.push(
                Finding::error("reference-broken", span, format!("`{url}` leads nowhere"))
                    .hint(did_you_mean(prefix, prefixes, "write `#id` for a step, or `piece:`, `notion:`, `fabric:`, `figure:` or `term:` and a name, or a whole address that begins with https://")),
            );
        }
        Inline::Link(url, content)
    }

    /// The path of a picture as it stands in the source, braces and all.
    fn destination(&self, parsed: &str, range: Range<usize>) -> Text {
        let whole = &self.reader.source.text[range.clone()];
        let at = whole.rfind("](").map(|at| at + 2);
        if let Some(start) = at {
            let rest = &whole[start..];
            let end = rest.find([')', ' ', '"']).unwrap_or(rest.len());
            let path = &rest[..end];
            if path.len() == parsed.len() || path.contains('{') {
                let span = self.reader.source.at(range.start + start..range.start + start + end);
                return Text { text: path.to_owned(), span, verbatim: self.reader.source.verbatim };
            }
        }
        Text { text: parsed.to_owned(), span: self.reader.source.at(range), verbatim: false }
    }

    /// `[!WARNIG]` and `[^1]` without its note are printed as they stand, which nobody wants.
    fn unread_marks(&mut self, range: &Range<usize>) {
        let line = &self.reader.source.text[range.start..];
        let line = &line[..line.find('\n').unwrap_or(line.len())];
        let close = line.find(']').map_or(line.len(), |at| at + 1);
        let (message, hint) = if let Some(word) = line.strip_prefix("[!") {
            let word: String = word.chars().take_while(|letter| letter.is_alphabetic()).collect();
            let kinds = ["NOTE", "TIP", "IMPORTANT", "WARNING", "CAUTION"];
            (format!("`[!{word}]` is no kind of notice"), did_you_mean(&word, kinds, ""))
        } else if line.starts_with("[^") {
            let mark = &line[..close];
            (format!("the footnote `{mark}` has no text"), format!("add a line of its own: `{mark}: the text`"))
        } else {
            return;
        };
        let span = self.reader.source.at(range.start..range.start + close);
        self.reader.findings.push(Finding::error("markup-not-printed", span, message).hint(hint));
    }

    /// Plain words, with the brace groups among them read.
    fn text(&mut self, words: &str, range: Range<usize>, content: &mut Vec<Inline>) {
        if words.starts_with('[') {
            self.unread_marks(&range);
        }
        if words.len() != range.len() {
            content.push(self.plain(words, range));
            return;
        }
        let mut at = range.start;
        // The groups stand in the order of the text: a long one is not walked anew for every run.
        let first = self.reader.groups.partition_point(|group| group.start < range.start);
        let inside: Vec<Range<usize>> =
            self.reader.groups[first..].iter().take_while(|group| group.end <= range.end).cloned().collect();
        for group in inside {
            self.verbatim(at..group.start, content);
            at = group.end;
            let brace = braces::read(self.reader, group);
            content.push(Inline::Brace(brace));
        }
        self.verbatim(at..range.end, content);
    }

    fn plain(&self, words: &str, range: Range<usize>) -> Inline {
        Inline::Text(Text { text: words.to_owned(), span: self.reader.source.at(range), verbatim: false })
    }

    /// Words that stand in the source letter for letter; joined to such words just before them.
    fn verbatim(&self, range: Range<usize>, content: &mut Vec<Inline>) {
        if range.is_empty() {
            return;
        }
        let words = &self.reader.source.text[range.clone()];
        let span = self.reader.source.at(range);
        if let Some(Inline::Text(before)) = content.last_mut()
            && before.verbatim
            && before.span.end == span.start
        {
            before.text.push_str(words);
            before.span.end = span.end;
            return;
        }
        let verbatim = self.reader.source.verbatim;
        content.push(Inline::Text(Text { text: words.to_owned(), span, verbatim }));
    }

    fn html(&mut self, range: Range<usize>) {
        let html = self.reader.source.text[range.clone()].trim_end();
        let html_at = self.reader.source.at(range.start..range.start + html.len());
        match waive::read_comment(html, html_at) {
            waive::Comment::Waiver(waiver) => self.reader.waivers.push(waiver),
            waive::Comment::Remark => {}
            waive::Comment::Markup => self.reader.findings.push(
                Finding::error("markup-not-printed", html_at, "HTML is not printed in a booklet")
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
    let blank = |words: &[Inline]| {
        words.iter().all(|word| matches!(word, Inline::Text(text) if text.text.trim().is_empty()))
    };
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

fn is_inline(tag: &Tag<'_>) -> bool {
    matches!(tag, Tag::Emphasis | Tag::Strong | Tag::Strikethrough | Tag::Link { .. } | Tag::Image { .. })
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
