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
    let mut letters = value.char_indices().filter(|(_, letter)| is_hidden(*letter) && !written.contains(*letter));
    let (_, hidden) = letters.find(|(at, letter)| !is_in_place(value, *at, *letter))?;
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
    let mut hidden = line.char_indices().filter(|(_, letter)| is_hidden(*letter) || is_joiner(*letter));
    if let Some((at, letter)) = hidden.find(|(at, letter)| !is_in_place(line, *at, *letter)) {
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

/// Whether what has no sign is needed where it stands: a joiner between letters that it joins, and a mark of direction
/// beside words that run from right to left.
fn is_in_place(line: &str, at: usize, letter: char) -> bool {
    let (before, after) = (&line[..at], &line[at + letter.len_utf8()..]);
    match letter {
        letter if is_joiner(letter) => {
            let beside = [before.chars().next_back(), after.chars().next()];
            beside.into_iter().all(|beside| beside.is_some_and(|beside| !beside.is_ascii()))
        }
        '\u{61c}' | '\u{200e}' | '\u{200f}' => {
            // Signs and figures between a mark and a word are why it is there.
            let says = |letter: &char| letter.is_alphabetic();
            let beside = [before.chars().rev().find(says), after.chars().find(says)];
            beside.into_iter().flatten().any(|letter| runs_left(letter.script()))
        }
        _ => false,
    }
}

fn is_joiner(letter: char) -> bool {
    matches!(letter, '\u{200c}' | '\u{200d}')
}

/// The scripts that are written from right to left, of those in use (Unicode Standard Annex 9, classes R and AL).
fn runs_left(script: Script) -> bool {
    use Script::{Adlam, Arabic, Hebrew, Mandaic, Nko, Samaritan, Syriac, Thaana};
    matches!(script, Adlam | Arabic | Hebrew | Mandaic | Nko | Samaritan | Syriac | Thaana)
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
        let hidden = code.ok().and_then(char::from_u32).filter(|letter| is_hidden(*letter));
        // What stands on both sides of it, as it is read.
        let in_place =
            |letter: &char| is_in_place(&format!("{}{letter}{}", &line[..start], &line[end + 1..]), start, *letter);
        if let Some(letter) = hidden.filter(|letter| !in_place(letter)) {
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
