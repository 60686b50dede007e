//! Markdown by byte offset: the parser's events over a text whose braces are hidden.

use std::collections::HashMap;
use std::ops::Range;

use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};

use super::braces;
use super::links;
use super::prose::Builder;
use super::waive::WaiverNote;
use crate::diag::Findings;
use crate::faults::{FORMULA_UNREADABLE, NESTED_TOO_DEEP};
use crate::model::{Block, Brace, Inline, Size, Text, Work};

/// How deep lists, quotations and the like may nest.
const DEEPEST: usize = 24;

/// An event and its bytes in the source.
pub(super) type Piece = (Event<'static>, Range<usize>);

/// What reading prose needs at hand, and what it gathers beside the prose.
pub(super) struct Reader<'a> {
    /// The text with its place.
    pub source: &'a Text,
    /// The booklet's sizes.
    pub sizes: &'a [Size],
    /// Where faults go.
    pub findings: &'a mut Findings,
    /// The brace groups of the text.
    pub groups: Vec<Range<usize>>,
    /// The footnotes of the text.
    pub footnotes: HashMap<String, Vec<Block>>,
    /// The waivers met in comments.
    pub waivers: Vec<WaiverNote>,
    /// The work facts met; `None` where the text may hold none.
    pub works: Option<Vec<Work>>,
}

/// The parts of Markdown that the language names, and no others.
fn options() -> Options {
    Options::ENABLE_TABLES
        | Options::ENABLE_FOOTNOTES
        | Options::ENABLE_TASKLISTS
        | Options::ENABLE_HEADING_ATTRIBUTES
        | Options::ENABLE_GFM
}

impl<'a> Reader<'a> {
    /// Opens a text: finds its braces, parses it, reads its footnotes.
    pub fn open(
        source: &'a Text,
        sizes: &'a [Size],
        works: bool,
        findings: &'a mut Findings,
    ) -> (Reader<'a>, Vec<Piece>) {
        let (groups, unclosed) = braces::find(&source.text);
        for at in unclosed {
            findings.push(
                FORMULA_UNREADABLE
                    .at(source.at(at..at + 1), "this brace is never closed")
                    .hint("close it with `}` before the paragraph ends, or write `\\{` for a brace"),
            );
        }
        let pieces = events(&braces::hide(&source.text, &groups), 0);
        let works = works.then(Vec::new);
        let mut reader =
            Reader { source, sizes, findings, groups, footnotes: HashMap::new(), waivers: Vec::new(), works };
        let pieces = match reader.too_deep(&pieces) {
            true => Vec::new(),
            false => reader.take_footnotes(pieces),
        };
        (reader, pieces)
    }

    /// Reads a range of the source as words in a line: the branch of a choice.
    pub fn inline_part(&mut self, range: Range<usize>) -> Vec<Inline> {
        let words = &self.source.text[range.clone()];
        let start = range.start + (words.len() - words.trim_start().len());
        // A choice that runs over lines of a quotation carries their marks along.
        let words = words.trim().replace("\n>", "\n ");
        let (groups, _) = braces::find(&words);
        let pieces = events(&braces::hide(&words, &groups), start);
        let shifted = groups.iter().map(|group| group.start + start..group.end + start).collect();
        let outer = std::mem::replace(&mut self.groups, shifted);
        let blocks = Builder::new(self, &pieces).blocks();
        self.groups = outer;
        match blocks.into_iter().next() {
            Some(Block::Paragraph(content)) => content,
            Some(_) | None if words.is_empty() => Vec::new(),
            _ => {
                let span = self.source.at(start..start + words.len());
                vec![Inline::Text(Text { text: words, span, verbatim: false })]
            }
        }
    }

    fn too_deep(&mut self, pieces: &[Piece]) -> bool {
        let mut depth = 0usize;
        for (event, range) in pieces {
            match event {
                Event::Start(_) => depth += 1,
                Event::End(_) => depth = depth.saturating_sub(1),
                _ => {}
            }
            // A list takes two levels, itself and its item.
            if depth > DEEPEST * 2 {
                let line = self.source.text[range.start..].find('\n').map_or(range.end, |end| range.start + end);
                self.findings.push(
                    NESTED_TOO_DEEP
                        .at(self.source.at(range.start..line), "lists or quotations are nested too deep here")
                        .hint(format!("nest at most {DEEPEST} levels")),
                );
                return true;
            }
        }
        false
    }

    fn take_footnotes(&mut self, pieces: Vec<Piece>) -> Vec<Piece> {
        let mut rest = Vec::with_capacity(pieces.len());
        let mut notes: Vec<(String, Vec<Piece>)> = Vec::new();
        let mut open: Option<(String, Vec<Piece>)> = None;
        for piece in pieces {
            match (&piece.0, &mut open) {
                (Event::Start(Tag::FootnoteDefinition(label)), None) => open = Some((label.to_string(), Vec::new())),
                (Event::End(TagEnd::FootnoteDefinition), Some(_)) => notes.extend(open.take()),
                (_, Some((_, inner))) => inner.push(piece),
                (_, None) => rest.push(piece),
            }
        }
        for (label, pieces) in notes {
            let blocks = Builder::new(self, &pieces).blocks();
            self.footnotes.insert(label, blocks);
        }
        rest
    }
}

fn events(text: &str, offset: usize) -> Vec<Piece> {
    Parser::new_ext(&links::hide(text), options())
        .into_offset_iter()
        .map(|(event, range)| (event.into_static(), range.start + offset..range.end + offset))
        .collect()
}

/// Reads prose that stands as a value in YAML. Waivers and work blocks have no meaning there.
pub(super) fn read_value(source: &Text, sizes: &[Size], findings: &mut Findings) -> Vec<Block> {
    let (mut reader, pieces) = Reader::open(source, sizes, false, findings);
    Builder::new(&mut reader, &pieces).blocks()
}

/// The words of a run without marks, for places that take plain text. Braces are left out.
pub fn plain_inline(content: &[Inline]) -> String {
    let mut words = String::new();
    Inline::walk(content, &mut |inline| match inline {
        Inline::Text(text) => words.push_str(&text.text),
        Inline::Code(text) => words.push_str(text),
        Inline::Break => words.push(' '),
        _ => {}
    });
    words
}

/// The outermost brace groups of a text that is no Markdown, such as a diagram's attribute; `None`
/// when a brace is never closed (its place).
pub fn brace_groups(text: &str) -> Result<Vec<Range<usize>>, usize> {
    let (groups, unclosed) = braces::find(text);
    match unclosed.first() {
        Some(at) => Err(*at),
        None => Ok(groups),
    }
}

/// Reads one brace group out of a text that is no Markdown.
pub fn read_brace(source: &Text, range: Range<usize>, sizes: &[Size], findings: &mut Findings) -> Brace {
    let mut reader = Reader {
        source,
        sizes,
        findings,
        groups: Vec::new(),
        footnotes: HashMap::new(),
        waivers: Vec::new(),
        works: None,
    };
    braces::read(&mut reader, range)
}
