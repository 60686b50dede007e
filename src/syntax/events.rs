//! Markdown by byte offset: the parser's events, and where a text holds code, which only the parser
//! itself can tell.

use std::ops::Range;

use pulldown_cmark::{Event, Options, Parser, Tag};

use super::links;

/// An event and its bytes in the source.
pub(super) type Piece = (Event<'static>, Range<usize>);

/// The parts of Markdown that the language names, and no others.
fn options() -> Options {
    Options::ENABLE_TABLES
        | Options::ENABLE_FOOTNOTES
        | Options::ENABLE_TASKLISTS
        | Options::ENABLE_HEADING_ATTRIBUTES
        | Options::ENABLE_GFM
}

/// The events of a text whose braces are hidden; `code` is where it holds code.
pub(super) fn read(text: &str, code: &[Range<usize>]) -> Vec<Piece> {
    Parser::new_ext(&links::hide(text, code), options())
        .into_offset_iter()
        .map(|(event, range)| (event.into_static(), range))
        .collect()
}

/// The blocks and runs of code in a text as written, in order: nothing has a meaning in there.
pub(super) fn code(text: &str) -> Vec<Range<usize>> {
    Parser::new_ext(text, options())
        .into_offset_iter()
        .filter(|(event, _)| matches!(event, Event::Code(_) | Event::Start(Tag::CodeBlock(_))))
        .map(|(_, range)| range)
        .collect()
}

/// The end of the code that a byte lies in; `None` outside of code.
pub(super) fn end_of_code(code: &[Range<usize>], at: usize) -> Option<usize> {
    let next = code.partition_point(|range| range.end <= at);
    code.get(next).filter(|range| range.contains(&at)).map(|range| range.end)
}
