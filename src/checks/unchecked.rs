//! What no check looked at, and why: so that silence is never taken for proof.

use super::judge::Subject;
use super::passage::{Passage, Stands, Token, number, passages, spoken};
use crate::diag::listed;
use crate::model::{Draft, Step, Verb, Vocabulary};
use crate::resolve::Edition;
use crate::source::Span;

/// Something that was not checked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unchecked {
    /// Where it stands.
    pub span: Span,
    /// What it is, and why it was passed over.
    pub what: String,
}

/// Everything that was not checked in a booklet, in the order of its facts, then of its steps.
pub fn unchecked(subject: &Subject<'_>) -> Vec<Unchecked> {
    let mut list = of_facts(subject.draft);
    if subject.vocabulary.verbs.is_empty() {
        let language = &subject.draft.facts.language;
        let what = format!("the house has no vocabulary for `{}`: no words were held against the work", language.text);
        list.push(Unchecked { span: language.span, what });
    }
    for (_, step) in subject.draft.steps() {
        list.extend(of_step(step, subject.editions, subject.vocabulary));
    }
    list
}

fn of_facts(draft: &Draft) -> Vec<Unchecked> {
    let mut list = Vec::new();
    for piece in &draft.facts.pieces {
        if piece.outline.is_none() {
            let what = format!("`{}` has no outline: its edges, cloth and sheets were not reckoned", piece.id.text);
            list.push(Unchecked { span: piece.id.span, what });
        }
    }
    let rows: Vec<_> = draft.facts.finished.iter().filter(|row| row.sewn.is_none()).collect();
    if let Some(first) = rows.first() {
        let names: Vec<String> = rows.iter().map(|row| format!("“{}”", row.name.text)).collect();
        let names = listed(&names);
        let what = match rows.len() {
            1 => format!("{names} does not say by `sewn:` what it measures: the sewing was not held to it"),
            _ => format!("{names} do not say by `sewn:` what they measure: the sewing was not held to them"),
        };
        list.push(Unchecked { span: first.name.span, what });
    }
    list
}

fn of_step(step: &Step, editions: &[Edition<'_>], vocabulary: &Vocabulary) -> Vec<Unchecked> {
    let mut list = Vec::new();
    if step.works.is_empty() && !step.body.is_empty() {
        let what = "this step states no work: nothing of it was played".to_owned();
        list.push(Unchecked { span: step.span, what });
    }
    if !step.works.is_empty() && step.works.iter().all(|work| work.verb == Verb::Attach) {
        let what = "this step only attaches: that it fits there was not reckoned".to_owned();
        list.push(Unchecked { span: step.span, what });
    }
    let size = editions.first().map(Edition::size);
    let typed: Vec<(String, Span)> = passages(step, size)
        .iter()
        .filter(|passage| passage.stands == Stands::Body)
        .flat_map(|passage| typed(passage, vocabulary))
        .collect();
    if let Some((_, span)) = typed.first() {
        let words: Vec<String> = typed.iter().map(|(words, _)| format!("“{words}”")).collect();
        let what = format!("no fact stands behind {}", listed(&words));
        list.push(Unchecked { span: *span, what });
    }
    list
}

/// Numbers in a passage, each with the words behind it that make it read; "one" and "two" are as often words as counts.
fn typed(passage: &Passage<'_>, vocabulary: &Vocabulary) -> Vec<(String, Span)> {
    let mut found = Vec::new();
    let mut from = 0;
    while from < passage.tokens.len() {
        let token = &passage.tokens[from];
        let counts = number(token, vocabulary).is_some_and(|count| count > 2);
        if token.brace.is_some() || !counts {
            from += 1;
            continue;
        }
        // "All four" counts what was named before.
        let all = from
            .checked_sub(1)
            .filter(|before| token.gap == " " && vocabulary.counted_all.contains(&passage.tokens[*before].word));
        let small = |word: &String| vocabulary.small_words.contains(word) || vocabulary.articles.contains(word);
        let ends =
            |next: &Token<'_>| vocabulary.ends_a_name.contains(&next.word) || vocabulary.articles.contains(&next.word);
        let rest = passage.tokens[from + 1..].iter().take(if all.is_some() { 0 } else { BEHIND });
        let near = rest.take_while(|next| next.gap.trim().is_empty() && !next.raw.is_empty() && !ends(next));
        let mut end = from + 1 + near.count();
        while end > from + 1 && small(&passage.tokens[end - 1].word) {
            end -= 1;
        }
        found.push((spoken(&passage.tokens[all.unwrap_or(from)..end]), token.span));
        from = end;
    }
    found
}

/// How many words behind a number are quoted at the most.
const BEHIND: usize = 3;
