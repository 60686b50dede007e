//! The doors to Markdown: a text opened for its reader, a value of the facts read whole, and what
//! other stages ask of prose.

use std::ops::Range;

use pulldown_cmark::Event;

use super::braces::{self, Group};
use super::events::{self, Piece};
use super::reader::{Reader, Room};
use super::walk::Builder;
use crate::diag::Findings;
use crate::faults::{FORMULA_UNREADABLE, MARKUP_NOT_PRINTED, NESTED_TOO_DEEP};
use crate::model::{Block, Brace, Branch, Inline, Size, Text};

/// How deep lists, quotations and the like may nest.
const DEEPEST: usize = 24;

/// Opens a text: finds its braces, parses it, takes its footnotes and addresses down. Whoever has
/// walked over all events ends with [`Reader::finish`].
pub(super) fn open<'a>(
    source: &'a Text,
    sizes: &'a [Size],
    room: Room,
    findings: &'a mut Findings,
) -> (Reader<'a>, Vec<Piece>) {
    let code = events::code(&source.text);
    let (groups, unclosed) = braces::find(&source.text, &code);
    for at in unclosed {
        findings.push(
            FORMULA_UNREADABLE
                .at(source.at(at..at + 1), "this brace is never closed")
                .hint("close it with `}` before the paragraph ends, or write `\\{` for a brace"),
        );
    }
    let pieces = events::read(&braces::hide(&source.text, &groups), &code);
    let mut reader = Reader::new(source, sizes, room, findings, groups, code);
    if too_deep(&mut reader, &pieces) {
        return (reader, Vec::new());
    }
    reader.take_addresses(&pieces);
    let pieces = reader.take_footnotes(pieces);
    (reader, pieces)
}

fn too_deep(reader: &mut Reader<'_>, pieces: &[Piece]) -> bool {
    let mut depth = 0usize;
    for (event, range) in pieces {
        match event {
            Event::Start(_) => depth += 1,
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        // A list takes two levels, itself and its item.
        if depth > DEEPEST * 2 {
            let text = &reader.source.text;
            let line = text[range.start..].find('\n').map_or(range.end, |end| range.start + end);
            let finding = NESTED_TOO_DEEP
                .at(reader.source.at(range.start..line), "lists or quotations are nested too deep here")
                .hint(format!("nest at most {DEEPEST} levels"));
            reader.findings.push(finding);
            return true;
        }
    }
    false
}

/// Reads prose that stands as a value in YAML. Waivers and work blocks have no meaning there.
pub(super) fn read_value(source: &Text, sizes: &[Size], room: Room, findings: &mut Findings) -> Vec<Block> {
    let (mut reader, pieces) = open(source, sizes, room, findings);
    let blocks = Builder::new(&mut reader, &pieces).blocks();
    reader.finish();
    for waiver in std::mem::take(&mut reader.waivers) {
        reader.findings.push(
            MARKUP_NOT_PRINTED
                .at(waiver.span, "a waiver has no meaning inside the facts' words")
                .hint("write it as an entry under `waive:`, with `check:`, `at:` and `because:`"),
        );
    }
    blocks
}

/// The words of a run without marks, for places that take plain text. Braces are left out.
pub fn plain_inline(content: &[Inline]) -> String {
    let mut words = String::new();
    Inline::walk(content, &mut |inline| match inline {
        Inline::Text(text) | Inline::Code(text) => words.push_str(&text.text),
        Inline::Break => words.push(' '),
        _ => {}
    });
    words
}

/// The outermost brace groups of a text that is no Markdown, such as a diagram's attribute.
///
/// # Errors
/// The place of a brace that is never closed.
pub fn brace_groups(text: &str) -> Result<Vec<Range<usize>>, usize> {
    let (groups, unclosed) = braces::find(text, &[]);
    match unclosed.first() {
        Some(at) => Err(*at),
        None => Ok(groups),
    }
}

/// Reads one brace group out of a text that is no Markdown: the words of a choice stand as they are.
pub fn read_brace(source: &Text, range: Range<usize>, sizes: &[Size], findings: &mut Findings) -> Brace {
    match braces::read(&mut braces::Desk { source, sizes, findings }, range) {
        Group::Whole(brace) => brace,
        Group::Choice(branches, span) => {
            let branches = branches
                .into_iter()
                .map(|(named, words)| Branch { sizes: named, content: plain_words(source, words, sizes, findings) })
                .collect();
            Brace::Choice { branches, span }
        }
    }
}

fn plain_words(source: &Text, range: Range<usize>, sizes: &[Size], findings: &mut Findings) -> Vec<Inline> {
    let words = &source.text[range.clone()];
    let start = range.start + (words.len() - words.trim_start().len());
    let words = words.trim();
    let run = |range: Range<usize>| {
        Inline::Text(Text {
            text: words[range.clone()].to_owned(),
            span: source.at(start + range.start..start + range.end),
            verbatim: source.verbatim,
        })
    };
    let mut content = Vec::new();
    let mut at = 0;
    // Braces inside closed ones are closed.
    for group in braces::find(words, &[]).0 {
        content.extend((at < group.start).then(|| run(at..group.start)));
        at = group.end;
        content.push(Inline::Brace(read_brace(source, start + group.start..start + group.end, sizes, findings)));
    }
    content.extend((at < words.len()).then(|| run(at..words.len())));
    content
}
