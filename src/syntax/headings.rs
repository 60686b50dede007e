//! The headings of a file of Markdown: where they begin, and what their braces say.

use pulldown_cmark::{CowStr, Event, HeadingLevel, Tag, TagEnd};

use super::events::{Piece, end_of_code};
use super::reader::Reader;
use super::sizes;
use crate::faults::{FOR_UNREADABLE, HEADING_SKIPS};
use crate::model::Text;
use crate::source::Span;

/// Where headings of parts and steps begin, at the top level of the file.
pub(super) fn heads(pieces: &[Piece]) -> Vec<usize> {
    let mut depth = 0usize;
    let mut found = Vec::new();
    for (at, (event, _)) in pieces.iter().enumerate() {
        match event {
            Event::Start(tag) => {
                let opens = matches!(tag, Tag::Heading { level: HeadingLevel::H1 | HeadingLevel::H2, .. });
                if opens && depth == 0 {
                    found.push(at);
                }
                depth += 1;
            }
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    found
}

/// The end of the heading that begins at a piece.
pub(super) fn heading_end(pieces: &[Piece], start: usize) -> usize {
    pieces[start..]
        .iter()
        .position(|(event, _)| matches!(event, Event::End(TagEnd::Heading(_))))
        .map_or(pieces.len(), |at| start + at + 1)
}

/// The sizes of `{for=a,b}`, beside which `others` may stand; faults in the form are findings that show the right one.
pub(super) fn conditions(
    text: &str,
    head: Span,
    attrs: &[(CowStr<'_>, Option<CowStr<'_>>)],
    classes: &[CowStr<'_>],
    others: &[&str],
    reader: &mut Reader<'_>,
) -> Option<Vec<usize>> {
    let line = &text[head.range()];
    let braces = line.rfind('{').map_or(head, |at| head.part(at..line.len()));
    let value = attrs.iter().find(|(key, _)| &**key == "for").map(|(_, value)| value.as_deref().unwrap_or(""));
    let stray: Vec<&str> =
        attrs.iter().map(|(key, _)| &**key).filter(|key| *key != "for" && !others.contains(key)).collect();
    let whole = format!("{} {}", value.unwrap_or(""), stray.join(" "));
    let names: Vec<&str> =
        whole.split([',', ' ', '"', '\'', '“', '”']).map(str::trim).filter(|name| !name.is_empty()).collect();
    let clean = value.is_none_or(|value| !value.is_empty() && !value.contains(['"', '\'']) && !value.ends_with(','));
    if !stray.is_empty() || !clean || !classes.is_empty() {
        let finding = FOR_UNREADABLE.at(braces, "this heading's braces cannot be read");
        reader.findings.push(match value {
            Some(_) if names.is_empty() => {
                finding.hint("name the sizes that it is for, `for=small,large`, or take `for=` out")
            }
            Some(_) => {
                finding.hint(format!("write the sizes without quotes and without spaces: `for={}`", names.join(",")))
            }
            None => finding.hint("write `{#the-id}`, or `{#the-id for=small,large}` for some sizes only"),
        });
        return None;
    }
    value?;
    let mut found = Vec::new();
    for name in names {
        let span = find(text, head, name, 0);
        found.extend(sizes::named(name, span, reader.sizes, reader.findings).unwrap_or_default());
    }
    found.sort_unstable();
    found.dedup();
    Some(found)
}

/// The last mention of `wanted` in a heading, `skip` bytes in; the heading when there is none.
pub(super) fn find(text: &str, head: Span, wanted: &str, skip: usize) -> Span {
    let line = &text[head.range()];
    match line.rfind(wanted) {
        Some(at) => head.part(at + skip..at + wanted.len()),
        None => head,
    }
}

/// The end of the line that begins at a byte, without the blanks there.
pub(super) fn line_end(text: &str, start: usize) -> usize {
    let rest = &text[start..];
    start + rest.find('\n').map_or(rest.len(), |at| rest[..at].trim_end().len())
}

/// `##Sew the sides` is no heading in Markdown, though its author thinks so.
pub(super) fn crowded_headings(source: &Text, reader: &mut Reader<'_>) {
    let mut at = 0;
    for line in source.text.split_inclusive('\n') {
        let start = at;
        at += line.len();
        let words = line.trim_start_matches('#');
        let marks = line.len() - words.len();
        if end_of_code(&reader.code, start).is_some()
            || !(1..=6).contains(&marks)
            || !words.starts_with(char::is_alphabetic)
        {
            continue;
        }
        let marks_text = &line[..marks];
        let end = start + line.trim_end().len();
        reader.findings.push(
            HEADING_SKIPS
                .at(source.at(start..end), "this line is no heading: a space is missing")
                .hint(format!("put a space after `{marks_text}`: `{marks_text} {}`", words.trim())),
        );
    }
}
