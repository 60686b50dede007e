//! Braces in prose: found and hidden before Markdown is parsed, and read for what they say.
//!
//! `{a*b} and {c*d}` would come out of a Markdown parser as emphasis, so each group is hidden
//! behind letters of the same byte length and set back by offset afterwards.

use std::ops::Range;

use super::expression::parse_expression;
use super::markdown::Reader;
use super::sizes;
use crate::faults::{CHOICE_UNREADABLE, FORMULA_UNREADABLE};
use crate::measure::Unit;
use crate::model::{Brace, Branch, Filter, Text};

/// The letter that hides a group: it has no meaning in Markdown.
const FILLER: u8 = b'x';

/// The outermost brace groups of a text, and the braces that are never closed.
pub(super) fn find(text: &str) -> (Vec<Range<usize>>, Vec<usize>) {
    let mut groups = Vec::new();
    let mut unclosed = Vec::new();
    let mut fence: Option<&str> = None;
    let mut skip_to = 0;
    let mut line_start = 0;
    for line in text.split_inclusive('\n') {
        let start = line_start;
        line_start += line.len();
        let bare = line.trim_start_matches([' ', '>', '\t']).trim_end();
        match fence {
            Some(mark) => {
                if bare.starts_with(mark) && bare.trim_start_matches(['`', '~']).is_empty() {
                    fence = None;
                }
                continue;
            }
            None if bare.starts_with("```") || bare.starts_with("~~~") => {
                fence = Some(if bare.starts_with('`') { "```" } else { "~~~" });
                continue;
            }
            None => {}
        }
        let heading = bare.starts_with('#');
        let mut at = start.max(skip_to);
        while at < line_start {
            match text.as_bytes()[at] {
                b'\\' => at += 2,
                b'{' if heading && is_attributes(&text[at..line_start]) => at = line_start,
                b'{' => match close(text, at) {
                    Some(end) => {
                        groups.push(at..end);
                        at = end;
                        skip_to = end;
                    }
                    None => {
                        unclosed.push(at);
                        at += 1;
                    }
                },
                _ => at += 1,
            }
        }
    }
    (groups, unclosed)
}

/// The text with every group hidden; of the same length in bytes.
pub(super) fn hide(text: &str, groups: &[Range<usize>]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for group in groups {
        bytes[group.clone()].fill(FILLER);
    }
    String::from_utf8(bytes).unwrap_or_else(|_| text.to_owned())
}

/// `{#id …}`, `{.class}` or `{key=value}` to the end of a heading line.
fn is_attributes(rest: &str) -> bool {
    let rest = rest.trim_end();
    let Some(inner) = rest.strip_prefix('{').and_then(|rest| rest.strip_suffix('}')) else { return false };
    if inner.contains(['{', '}']) {
        return false;
    }
    inner.trim_start().starts_with(['#', '.']) || inner.trim_start().starts_with("for=")
}

/// The end of the group that opens at `open`; groups nest, and end with their paragraph.
fn close(text: &str, open: usize) -> Option<usize> {
    let mut depth = 0;
    let mut newline = false;
    let mut escaped = false;
    for (at, letter) in text[open..].char_indices() {
        match letter {
            _ if escaped => {
                escaped = false;
                continue;
            }
            '\\' => escaped = true,
            '{' => depth += 1,
            '}' => {
                depth -= 1;
                if depth == 0 {
                    return Some(open + at + 1);
                }
            }
            '\n' if newline => return None,
            '\n' => {
                newline = true;
                continue;
            }
            letter if letter.is_whitespace() || letter == '>' => continue,
            _ => {}
        }
        newline = false;
    }
    None
}

/// Reads one group (the braces and all between).
pub(super) fn read(reader: &mut Reader<'_>, range: Range<usize>) -> Brace {
    let span = reader.source.at(range.clone());
    let inner = range.start + 1..range.end.saturating_sub(1).max(range.start + 1);
    let branches = split(&reader.source.text, inner.clone());
    let heads: Vec<Option<Range<usize>>> =
        branches.iter().map(|branch| head(&reader.source.text, branch.clone())).collect();
    if heads.first().is_some_and(Option::is_some) {
        return choice(reader, branches, heads, span);
    }
    let (value, filter) = match branches.as_slice() {
        [value] => (value.clone(), None),
        [value, filter] => (value.clone(), Some(filter.clone())),
        _ => {
            reader.findings.push(
                CHOICE_UNREADABLE
                    .at(span, "this choice names no sizes")
                    .hint("write a size before each branch: `{small: twice | else: three times}`"),
            );
            return Brace::Broken;
        }
    };
    let filter = match filter {
        None => None,
        Some(range) => match read_filter(reader, range) {
            Some(filter) => Some(filter),
            None => return Brace::Broken,
        },
    };
    let text = trimmed(reader, value);
    if text.text.is_empty() {
        reader.findings.push(
            FORMULA_UNREADABLE
                .at(span, "these braces are empty")
                .hint("name a measurement or write a formula between them, or write `\\{` for a brace"),
        );
        return Brace::Broken;
    }
    match parse_expression(&text, reader.findings) {
        Some(value) => Brace::Print { value, filter, span },
        None => Brace::Broken,
    }
}

fn read_filter(reader: &mut Reader<'_>, range: Range<usize>) -> Option<Filter> {
    let text = trimmed(reader, range);
    let known = matches!(text.text.as_str(), "words" | "first" | "second");
    if known || Unit::parse(&text.text).is_some() {
        return Some(Filter { name: text.text, span: text.span });
    }
    let message = match text.text.as_str() {
        "" => "nothing stands after the bar".to_owned(),
        other => format!("`{other}` is no way to print a value"),
    };
    reader.findings.push(
        FORMULA_UNREADABLE
            .at(text.span, message)
            .hint("write a unit (`cm`, `in`), `words`, `first` or `second` after the bar"),
    );
    None
}

fn choice(
    reader: &mut Reader<'_>,
    branches: Vec<Range<usize>>,
    heads: Vec<Option<Range<usize>>>,
    span: crate::source::Span,
) -> Brace {
    let mut read = Vec::new();
    let mut whole = true;
    for (branch, head) in branches.into_iter().zip(heads) {
        let Some(head) = head else {
            let span = trimmed(reader, branch).span;
            reader.findings.push(
                CHOICE_UNREADABLE
                    .at(span, "this branch names no size")
                    .hint("begin it with its sizes and a colon, such as `large: three times`, or with `else:`"),
            );
            whole = false;
            continue;
        };
        let is_else = trimmed(reader, head.clone()).text == "else";
        let sizes = if is_else { None } else { Some(names(reader, head.clone(), &mut whole)) };
        let content = reader.inline_part(head.end + 1..branch.end);
        read.push(Branch { sizes, content });
    }
    // What a branch that cannot be read would have covered is not told beside its fault.
    if whole { Brace::Choice { branches: read, span } } else { Brace::Broken }
}

/// The sizes of a branch; `whole` becomes false when one is unknown.
fn names(reader: &mut Reader<'_>, head: Range<usize>, whole: &mut bool) -> Vec<usize> {
    let mut found = Vec::new();
    let mut at = head.start;
    let text = reader.source.text[head].to_owned();
    for word in text.split(',') {
        let name = trimmed(reader, at..at + word.len());
        match sizes::index(&name.text, name.span, reader.sizes, reader.findings) {
            Some(index) => found.push(index),
            None => *whole = false,
        }
        at += word.len() + 1;
    }
    found
}

/// Splits at the bars that stand in no inner braces, brackets or code; `\|` counts as a bar.
fn split(text: &str, inner: Range<usize>) -> Vec<Range<usize>> {
    let mut parts = Vec::new();
    let mut start = inner.start;
    let mut depth = 0usize;
    let bytes = text.as_bytes();
    for at in inner.clone() {
        match bytes[at] {
            b'{' | b'(' | b'[' => depth += 1,
            b'}' | b')' | b']' => depth = depth.saturating_sub(1),
            b'|' if depth == 0 => {
                let end = if at > start && bytes[at - 1] == b'\\' { at - 1 } else { at };
                parts.push(start..end);
                start = at + 1;
            }
            _ => {}
        }
    }
    parts.push(start..inner.end);
    parts
}

/// The names before the colon of a branch.
fn head(text: &str, branch: Range<usize>) -> Option<Range<usize>> {
    let words = &text[branch.clone()];
    let colon = words.find(':')?;
    let names = &words[..colon];
    let right = |letter: char| {
        letter.is_ascii_lowercase() || letter.is_ascii_digit() || matches!(letter, '_' | ',' | '-' | ' ' | '\n')
    };
    let is_list = !names.trim().is_empty() && names.chars().all(right);
    is_list.then_some(branch.start..branch.start + colon)
}

/// A range of the source without the blank at its ends.
fn trimmed(reader: &Reader<'_>, range: Range<usize>) -> Text {
    let words = &reader.source.text[range.clone()];
    let start = range.start + (words.len() - words.trim_start().len());
    let words = words.trim();
    Text {
        text: words.to_owned(),
        span: reader.source.at(start..start + words.len()),
        verbatim: reader.source.verbatim,
    }
}
