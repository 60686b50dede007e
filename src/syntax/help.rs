//! The file under `help:`: the questions that makers ask, each a heading with its answer below.

use pulldown_cmark::{Event, HeadingLevel, Tag};

use super::headings::{conditions, crowded_headings, find, heading_end, heads, line_end};
use super::markdown::open;
use super::reader::Room;
use super::walk::Builder;
use crate::diag::{Findings, Waiver};
use crate::faults::{FILE_EMPTY, HEADING_SKIPS};
use crate::model::{Name, Question, Size, Text};
use crate::source::{FileId, Span};

/// What a heading of a question looks like, for hints.
const EXAMPLE: &str = "`## Why does my zip wave? {#zip}`";

/// Reads a file of questions.
pub(super) fn read(
    file: FileId,
    text: &str,
    all_sizes: &[Size],
    waivers: &mut Vec<Waiver>,
    findings: &mut Findings,
) -> Vec<Question> {
    let source = Text { text: text.to_owned(), span: Span::new(file, 0..text.len()), verbatim: true };
    let (mut reader, pieces) = open(&source, all_sizes, Room::Answer, findings);
    crowded_headings(&source, &mut reader);
    let heads = heads(&pieces);
    let first = heads.first().copied().unwrap_or(pieces.len());
    if text.trim().is_empty() {
        reader.findings.push(FILE_EMPTY.at(source.at(0..0), "no question stands in this file").hint(format!(
            "write one as a heading, {EXAMPLE}, with its answer below, or take `help:` out of booklet.yaml"
        )));
    } else if first > 0 {
        let (_, range) = &pieces[0];
        let line = line_end(text, range.start);
        reader.findings.push(
            HEADING_SKIPS
                .at(source.at(range.start..line), "these words stand before the first question")
                .hint(format!("begin the file with a question: {EXAMPLE}")),
        );
        Builder::new(&mut reader, &pieces[..first]).blocks();
    }
    let mut questions = Vec::new();
    for (index, &start) in heads.iter().enumerate() {
        let end = heads.get(index + 1).copied().unwrap_or(pieces.len());
        let (event, range) = &pieces[start];
        let Event::Start(Tag::Heading { level, id, attrs, classes }) = event else { continue };
        let body_start = heading_end(&pieces, start);
        let head = source.at(range.start..line_end(text, range.start));
        let scope_end = pieces.get(end).map_or(text.len(), |(_, next)| next.start);
        let title = Builder::new(&mut reader, &pieces[start + 1..body_start]).inlines();
        let answer = Builder::new(&mut reader, &pieces[body_start..end]).blocks();
        let sizes = conditions(text, head, attrs, classes, &[], &mut reader);
        if *level == HeadingLevel::H1 {
            reader.findings.push(
                HEADING_SKIPS
                    .at(head, "a question is a heading of the second level")
                    .hint("write it with `##`; the booklet itself prints the heading above all of them"),
            );
            continue;
        }
        let step = id.as_ref().map(|id| Name { text: id.to_string(), span: find(text, head, &format!("#{id}"), 1) });
        let scope = source.at(range.start..scope_end);
        questions.push(Question { title, span: head, scope, step, sizes, answer });
    }
    reader.finish();
    for note in std::mem::take(&mut reader.waivers) {
        let own = questions.iter().map(|question| question.scope).find(|scope| scope.holds(note.span));
        let scope = own.unwrap_or(source.span);
        waivers.push(Waiver { check: note.check, reason: note.reason, scope, span: note.span });
    }
    questions
}
