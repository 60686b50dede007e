//! Letters that deceive the eye, in every text that was read: hidden ones, and look-alikes of another script.

use std::collections::BTreeSet;
use std::ops::Range;

use unicode_script::{Script, UnicodeScript};

use crate::diag::{Finding, Findings, is_hidden};
use crate::faults::DECEIVING_LETTERS;
use crate::source::{Sources, Span};

/// How many lines of one file are told; of more only how many.
const LINES: usize = 20;

/// What deceives in the texts that were read, at its place.
pub fn deceiving(sources: &Sources) -> Findings {
    let mut findings = Findings::default();
    for file in sources.ids() {
        let text = &sources.file(file).text;
        let mut found = Vec::new();
        let mut at = 0;
        for line in text.split_inclusive('\n') {
            found.extend(first(line).map(|(range, message)| (at + range.start..at + range.end, message)));
            at += line.len();
        }
        let more = found.len().saturating_sub(LINES);
        for (range, message) in found.drain(..found.len() - more) {
            findings.push(finding(Span::new(file, range), message));
        }
        if let Some((range, message)) = found.first() {
            let message = format!("{message}, and {more} lines from here on hold such letters");
            findings.push(finding(Span::new(file, range.clone()), message));
        }
    }
    findings
}

/// What a value of YAML hides by an escape that stands in its text, such as `\u200b`.
pub(super) fn escaped(value: &str, written: &str, span: Span) -> Option<Finding> {
    let hidden = value.chars().find(|letter| is_hidden(*letter) && !written.contains(*letter))?;
    Some(finding(span, hides(hidden)))
}

fn finding(span: Span, message: String) -> Finding {
    DECEIVING_LETTERS.at(span, message).hint("type the word anew; for a space or a hyphen use the plain one")
}

fn hides(letter: char) -> String {
    format!("a letter that cannot be seen stands here (U+{:04X})", u32::from(letter))
}

/// The first thing in a line that deceives.
fn first(line: &str) -> Option<(Range<usize>, String)> {
    let hidden = line.char_indices().find(|(at, letter)| is_hidden(*letter) || joins_latin(line, *at, *letter));
    if let Some((at, letter)) = hidden {
        return Some((at..at + letter.len_utf8(), hides(letter)));
    }
    if let Some((range, letter)) = referred(line) {
        return Some((range, hides(letter)));
    }
    if line.is_ascii() {
        return None;
    }
    mixed(line)
}

/// A joiner between letters that it does not join.
fn joins_latin(line: &str, at: usize, letter: char) -> bool {
    if !matches!(letter, '\u{200c}' | '\u{200d}') {
        return false;
    }
    let before = line[..at].chars().next_back();
    let after = line[at + letter.len_utf8()..].chars().next();
    [before, after].into_iter().any(|beside| beside.is_none_or(|beside| beside.is_ascii()))
}

/// A hidden letter that is written by its number, `&#x202e;`.
fn referred(line: &str) -> Option<(Range<usize>, char)> {
    let mut from = 0;
    while let Some(start) = line[from..].find("&#").map(|at| from + at) {
        from = start + 2;
        let Some(end) = line[from..].find(';').filter(|end| *end <= 8).map(|end| from + end) else { continue };
        let number = &line[from..end];
        let code = match number.strip_prefix(['x', 'X']) {
            Some(digits) => u32::from_str_radix(digits, 16),
            None => number.parse(),
        };
        if let Some(letter) = code.ok().and_then(char::from_u32).filter(|letter| is_hidden(*letter)) {
            return Some((start..end + 1, letter));
        }
    }
    None
}

/// A word with letters of two scripts that look alike.
fn mixed(line: &str) -> Option<(Range<usize>, String)> {
    let mut at = 0;
    for word in line.split(|letter: char| !letter.is_alphabetic()) {
        let start = at;
        at += word.len() + line[start + word.len()..].chars().next().map_or(0, char::len_utf8);
        let scripts: BTreeSet<&str> = word.chars().filter_map(|letter| look_alike(letter.script())).collect();
        if scripts.len() > 1 {
            let scripts: Vec<&str> = scripts.into_iter().collect();
            let message = format!("“{word}” holds letters of {}, which look alike", scripts.join(" and "));
            return Some((start..start + word.len(), message));
        }
    }
    None
}

/// The scripts of which letters look like one another (Unicode Technical Standard 39, section 5.1).
fn look_alike(script: Script) -> Option<&'static str> {
    match script {
        Script::Latin => Some("Latin"),
        Script::Greek => Some("Greek"),
        Script::Cyrillic => Some("Cyrillic"),
        Script::Armenian => Some("Armenian"),
        Script::Cherokee => Some("Cherokee"),
        _ => None,
    }
}
