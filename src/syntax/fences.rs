//! Fences: whether a block of code is work, and the work in it.

use std::ops::Range;

use super::reader::{Reader, Room};
use super::work;
use crate::diag::is_slip;
use crate::faults::{MARKUP_NOT_PRINTED, WORK_UNREADABLE};
use crate::model::Text;

/// Whether a fence opens work. A slip of the hand counts and is a finding, since its facts would be
/// printed as they stand; so is work in the facts, which is printed.
pub(super) fn is_work(info: &str, block: &Range<usize>, reader: &mut Reader<'_>) -> bool {
    let mut words = info.split_whitespace();
    let Some(word) = words.next() else { return false };
    if word != "work" && !is_slip(word, "work") {
        not_printed(info, block, reader);
        return false;
    }
    let span = reader.line(block);
    if reader.room != Room::Part {
        reader.findings.push(
            WORK_UNREADABLE
                .at(span, format!("work in {} has no meaning", reader.room.called()))
                .hint("put it below a step's heading, in one of the parts"),
        );
        return false;
    }
    let message = match words.next() {
        _ if word != "work" => format!("`{word}` opens no work block, and its facts would be printed as they stand"),
        Some(more) => format!("`{more}` has no meaning behind `work`"),
        None => return true,
    };
    let marks: String =
        reader.source.text[block.clone()].chars().take_while(|mark| matches!(mark, '`' | '~')).collect();
    reader
        .findings
        .push(WORK_UNREADABLE.at(span, message).hint(format!("write {marks}work and nothing else on the line")));
    true
}

/// Words behind the marks of a block of code, which no page shows.
fn not_printed(info: &str, block: &Range<usize>, reader: &mut Reader<'_>) {
    let line = reader.line(block);
    let text = &reader.source.text[block.start..];
    let at = text.find(info.trim()).unwrap_or(0);
    let span = reader.source.at(block.start + at..block.start + at + info.trim().len());
    let span = if line.holds(span) { span } else { line };
    reader.findings.push(
        MARKUP_NOT_PRINTED
            .at(span, "words behind the marks of a block of code are not printed")
            .hint("take them out; what makers are to read goes into a line of its own"),
    );
}

/// Reads the work inside a block of code.
pub(super) fn read_work(range: Range<usize>, reader: &mut Reader<'_>) {
    let source = reader.source;
    let slice = source.text[range.clone()].to_owned();
    let text = Text { text: slice, span: source.at(range), verbatim: source.verbatim };
    let works = work::read(&text, reader.findings);
    reader.works.extend(works);
}
