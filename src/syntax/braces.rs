//! Braces in prose: found and hidden before Markdown is parsed, and read for what they say.
//!
//! `{a*b} and {c*d}` would come out of a Markdown parser as emphasis, so each group is hidden
//! behind letters of the same byte length and set back by offset afterwards.

use std::collections::HashMap;
use std::ops::Range;

use super::events::end_of_code;
use super::expression::parse_expression;
use super::sizes;
use crate::diag::Findings;
use crate::faults::{CHOICE_UNREADABLE, FORMULA_UNREADABLE, NESTED_TOO_DEEP};
use crate::limits::CHOICES_DEEP;
use crate::measure::Unit;
use crate::model::{Brace, Filter, Size, Text};
use crate::source::Span;

/// The letter that hides a group: it has no meaning in Markdown.
const FILLER: u8 = b'x';

/// The sizes of a branch (`None` for `else`) and where its words stand.
pub(super) type BranchPlace = (Option<Vec<usize>>, Range<usize>);

/// What one group says; the words of a choice are left to the reader of words.
pub(super) enum Group {
    /// A value, or braces that could not be read, which has been reported.
    Whole(Brace),
    /// A choice: its branches, in the order written, and its place.
    Choice(Vec<BranchPlace>, Span),
}

/// The outermost brace groups of a text, and the braces that are never closed. `code` is where the
/// text holds code, in which a brace is a brace.
pub(super) fn find(text: &str, code: &[Range<usize>]) -> (Vec<Range<usize>>, Vec<usize>) {
    let ends = ends(text);
    let mut lines = Lines { text, start: 0, looked: 0 };
    let mut groups = Vec::new();
    let mut unclosed = Vec::new();
    let mut at = 0;
    while let Some(&letter) = text.as_bytes().get(at) {
        match letter {
            b'\\' if end_of_code(code, at).is_none() => at += 2,
            b'{' => match (end_of_code(code, at), ends.get(&at)) {
                (Some(end), _) => at = end,
                (None, _) if is_attributes(text, lines.start_of(at), at) => at += line(text, at).len(),
                (None, Some(&end)) => {
                    groups.push(at..end);
                    at = end;
                }
                (None, None) => {
                    unclosed.push(at);
                    at += 1;
                }
            },
            _ => at += 1,
        }
    }
    (groups, unclosed)
}

/// Where lines begin, for places that are asked for in their order.
struct Lines<'a> {
    text: &'a str,
    start: usize,
    looked: usize,
}

impl Lines<'_> {
    fn start_of(&mut self, at: usize) -> usize {
        if let Some(end) = self.text[self.looked..at].rfind('\n') {
            self.start = self.looked + end + 1;
        }
        self.looked = at;
        self.start
    }
}

/// The text with every group hidden; of the same length in bytes.
pub(super) fn hide(text: &str, groups: &[Range<usize>]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for group in groups {
        bytes[group.clone()].fill(FILLER);
    }
    String::from_utf8(bytes).unwrap_or_else(|_| text.to_owned())
}

/// `{#id …}`, `{.class}` or `{for=sizes}` from `at` to the end of a heading's line, which begins at `start`.
fn is_attributes(text: &str, start: usize, at: usize) -> bool {
    if !text[start..at].trim_start_matches([' ', '>', '\t']).starts_with('#') {
        return false;
    }
    let rest = line(text, at).trim_end();
    let Some(inner) = rest.strip_prefix('{').and_then(|rest| rest.strip_suffix('}')) else { return false };
    if inner.contains(['{', '}']) {
        return false;
    }
    let inner = inner.trim();
    inner == "optional"
        || inner.starts_with(['#', '.'])
        || ["for=", "or=", "of="].iter().any(|key| inner.starts_with(key))
}

/// The rest of a line from `at`.
fn line(text: &str, at: usize) -> &str {
    let rest = &text[at..];
    &rest[..rest.find('\n').unwrap_or(rest.len())]
}

/// Where each group that is closed ends, by where it opens; groups nest, and end with their paragraph.
fn ends(text: &str) -> HashMap<usize, usize> {
    let mut found = HashMap::new();
    let mut open = Vec::new();
    let mut newline = false;
    let mut escaped = false;
    for (at, letter) in text.char_indices() {
        match letter {
            _ if escaped => {
                escaped = false;
                continue;
            }
            '\\' => escaped = true,
            '{' => open.push(at),
            '}' => {
                if let Some(start) = open.pop() {
                    found.insert(start, at + 1);
                }
            }
            '\n' if newline => open.clear(),
            '\n' => {
                newline = true;
                continue;
            }
            letter if letter.is_whitespace() || letter == '>' => continue,
            _ => {}
        }
        newline = false;
    }
    found
}

/// How deep the braces of a text lie in one another.
fn depth(text: &str) -> usize {
    let mut depth = 0usize;
    let mut deepest = 0;
    for letter in text.bytes() {
        match letter {
            b'{' => depth += 1,
            b'}' => depth = depth.saturating_sub(1),
            _ => {}
        }
        deepest = deepest.max(depth);
    }
    deepest
}

/// What reading a group needs at hand.
pub(super) struct Desk<'a> {
    /// The text with its place.
    pub source: &'a Text,
    /// The booklet's sizes.
    pub sizes: &'a [Size],
    /// Where faults go.
    pub findings: &'a mut Findings,
}

/// Reads one group (the braces and all between).
pub(super) fn read(desk: &mut Desk<'_>, range: Range<usize>) -> Group {
    let span = desk.source.at(range.clone());
    if depth(&desk.source.text[range.clone()]) > CHOICES_DEEP.most + 1 {
        let finding = NESTED_TOO_DEEP.at(span, "braces lie in one another too deep here").hint(CHOICES_DEEP.act);
        desk.findings.push(finding);
        return Group::Whole(Brace::Broken);
    }
    let inner = range.start + 1..range.end.saturating_sub(1).max(range.start + 1);
    let parts = split(&desk.source.text, inner);
    let heads: Vec<Option<Range<usize>>> = parts.iter().map(|branch| head(&desk.source.text, branch.clone())).collect();
    if heads.first().is_some_and(Option::is_some) {
        return match desk.choice(parts, heads) {
            Some(branches) => Group::Choice(branches, span),
            None => Group::Whole(Brace::Broken),
        };
    }
    Group::Whole(desk.value(&parts, span).unwrap_or(Brace::Broken))
}

impl Desk<'_> {
    /// A value and its filter; `None` when they cannot be read, which is a finding.
    fn value(&mut self, parts: &[Range<usize>], span: Span) -> Option<Brace> {
        let (value, filter) = match parts {
            [value] => (value.clone(), None),
            [value, filter] => (value.clone(), Some(self.filter(filter.clone())?)),
            _ => {
                self.findings.push(
                    CHOICE_UNREADABLE
                        .at(span, "this choice names no sizes")
                        .hint("write a size before each branch: `{small: twice | else: three times}`"),
                );
                return None;
            }
        };
        let text = self.trimmed(value);
        if text.text.is_empty() {
            self.findings.push(
                FORMULA_UNREADABLE
                    .at(span, "these braces are empty")
                    .hint("name a measurement or write a formula between them, or write `\\{` for a brace"),
            );
            return None;
        }
        let value = parse_expression(&text, self.findings)?;
        Some(Brace::Print { value, filter, span })
    }

    fn filter(&mut self, range: Range<usize>) -> Option<Filter> {
        let text = self.trimmed(range);
        let known = matches!(text.text.as_str(), "words" | "first" | "second");
        if known || Unit::parse(&text.text).is_some() {
            return Some(Filter { name: text.text, span: text.span });
        }
        let message = match text.text.as_str() {
            "" => "nothing stands after the bar".to_owned(),
            other => format!("`{other}` is no way to print a value"),
        };
        self.findings.push(
            FORMULA_UNREADABLE
                .at(text.span, message)
                .hint("write a unit (`cm`, `in`), `words`, `first` or `second` after the bar"),
        );
        None
    }

    /// The branches of a choice; `None` when one cannot be read: what it would have covered is not told
    /// beside its fault.
    fn choice(&mut self, parts: Vec<Range<usize>>, heads: Vec<Option<Range<usize>>>) -> Option<Vec<BranchPlace>> {
        let mut read = Vec::new();
        let mut whole = true;
        for (part, head) in parts.into_iter().zip(heads) {
            let Some(head) = head else {
                let span = self.trimmed(part).span;
                self.findings.push(
                    CHOICE_UNREADABLE
                        .at(span, "this branch names no size")
                        .hint("begin it with its sizes and a colon, such as `large: three times`, or with `else:`"),
                );
                whole = false;
                continue;
            };
            let is_else = self.trimmed(head.clone()).text == "else";
            let sizes = if is_else { None } else { Some(self.names(head.clone(), &mut whole)) };
            read.push((sizes, head.end + 1..part.end));
        }
        whole.then_some(read)
    }

    /// The sizes of a branch; `whole` becomes false when one is unknown.
    fn names(&mut self, head: Range<usize>, whole: &mut bool) -> Vec<usize> {
        let mut found = Vec::new();
        let mut at = head.start;
        let text = self.source.text[head].to_owned();
        for word in text.split(',') {
            let name = self.trimmed(at..at + word.len());
            match sizes::named(&name.text, name.span, self.sizes, self.findings) {
                Some(places) => found.extend(places),
                None => *whole = false,
            }
            at += word.len() + 1;
        }
        found
    }

    /// A range of the source without the blank at its ends.
    fn trimmed(&self, range: Range<usize>) -> Text {
        let words = &self.source.text[range.clone()];
        let start = range.start + (words.len() - words.trim_start().len());
        let words = words.trim();
        Text {
            text: words.to_owned(),
            span: self.source.at(start..start + words.len()),
            verbatim: self.source.verbatim,
        }
    }
}

/// Splits at the bars that stand in no inner braces, brackets or code; `\|` counts as a bar.
fn split(text: &str, inner: Range<usize>) -> Vec<Range<usize>> {
    let mut parts = Vec::new();
    let mut start = inner.start;
    let mut depth = 0usize;
    let bytes = text.as_bytes();
    let mut at = inner.start;
    while at < inner.end {
        match bytes[at] {
            b'{' | b'(' | b'[' => depth += 1,
            b'}' | b')' | b']' => depth = depth.saturating_sub(1),
            // A bar in code is a bar.
            b'`' => at = text[at + 1..inner.end].find('`').map_or(at, |end| at + 1 + end),
            b'|' if depth == 0 => {
                let end = if at > start && bytes[at - 1] == b'\\' { at - 1 } else { at };
                parts.push(start..end);
                start = at + 1;
            }
            _ => {}
        }
        at += 1;
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
