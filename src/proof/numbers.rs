//! Figures that are typed among words: digits, and numbers written out.

use std::ops::Range;

use crate::model::Vocabulary;

/// A run of words, or a figure among them.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Bit {
    /// Words, by their bytes.
    Words(Range<usize>),
    /// A figure, and the same with the word behind it, by which it is known.
    Number(Range<usize>, String),
}

/// Words taken apart at their figures. "One" is as often a word as a count, and is left among the words.
pub(super) fn bits(text: &str, vocabulary: &Vocabulary) -> Vec<Bit> {
    let words = words(text);
    let counts = |at: usize| is_number(&text[words[at].clone()], vocabulary);
    let mut bits = Vec::new();
    let (mut from, mut at) = (0, 0);
    while at < words.len() {
        if !counts(at) {
            at += 1;
            continue;
        }
        let start = words[at].start;
        let mut end = words[at].end;
        // "Twenty-five", "1 1/2" and "7 ½" are one figure.
        while at + 1 < words.len()
            && counts(at + 1)
            && joins(&text[end..words[at + 1].start], &text[words[at + 1].clone()])
        {
            at += 1;
            end = words[at].end;
        }
        let behind = words
            .get(at + 1)
            .filter(|next| text[end..next.start].chars().all(|gap| matches!(gap, ' ' | '-' | '\u{a0}')));
        let sign = text[end..].chars().next().filter(|sign| matches!(sign, '%' | '°' | '″' | '"'));
        let written = match (sign, behind) {
            (Some(sign), _) => format!("{}{sign}", &text[start..end]),
            (None, Some(next)) => text[start..next.end].to_owned(),
            (None, None) => text[start..end].to_owned(),
        };
        if from < start {
            bits.push(Bit::Words(from..start));
        }
        bits.push(Bit::Number(start..end, written));
        from = end;
        at += 1;
    }
    if from < text.len() {
        bits.push(Bit::Words(from..text.len()));
    }
    bits
}

/// Whether two figures are one.
fn joins(gap: &str, next: &str) -> bool {
    gap == "-"
        || (gap.chars().all(|letter| matches!(letter, ' ' | '\u{a0}' | '\u{2009}'))
            && next.contains(['/', '½', '¼', '¾', '⅛', '⅜', '⅝', '⅞', '⅓', '⅔']))
}

fn is_number(word: &str, vocabulary: &Vocabulary) -> bool {
    word.starts_with(char::is_numeric) || vocabulary.numbers.get(&word.to_lowercase()).is_some_and(|count| *count > 1)
}

/// The words of a text: letters and digits, with what stands inside a figure.
fn words(text: &str) -> Vec<Range<usize>> {
    let letters: Vec<(usize, char)> = text.char_indices().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        if !letters[at].1.is_alphanumeric() {
            at += 1;
            continue;
        }
        let mut end = at + 1;
        while let Some((_, letter)) = letters.get(end) {
            let figure = letters[end - 1].1.is_ascii_digit()
                && letters.get(end + 1).is_some_and(|(_, next)| next.is_ascii_digit());
            let inside = matches!(letter, '.' | ',' | '/') && figure;
            let apostrophe =
                matches!(letter, '\'' | '’') && letters.get(end + 1).is_some_and(|(_, next)| next.is_alphabetic());
            if !letter.is_alphanumeric() && !inside && !apostrophe {
                break;
            }
            end += 1;
        }
        let to = letters.get(end).map_or(text.len(), |(byte, _)| *byte);
        found.push(letters[at].0..to);
        at = end;
    }
    found
}
