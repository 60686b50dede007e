//! One thing goes by two names, or one word is spelled in two ways.
//!
//! ## Why it matters
//! A maker who reads "zip" on the list and "zipper" in the step looks for a second thing. A booklet keeps to one
//! word for one thing, and to British or American spelling.
//!
//! ## Wrong
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the centre of the pouch, then from the center outwards.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the pouch {#press-pouch}
//!
//! Press the centre of the pouch, then from the centre outwards.
//! ````
//!
//! ## Limits
//! The names and spellings stand in `templates/vocabulary-en.json` under `same_thing` and `spellings` (from
//! memory). The rarer of the two is told, at each of its places; of two that are as frequent, the one that comes
//! later. Where the facts say `language: en-US` or `en-GB`, the spelling of the other is told as well, and the
//! language itself where no word is spelled its way.

use std::collections::BTreeMap;

use super::judge::{Judge, Subject};
use super::passage::{length, one_of, place};
use super::printed_words::each_passage;
use crate::diag::{Check, Findings, Group};
use crate::model::{Pair, Vocabulary};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::warning("two-names", Group::Words, include_str!("two_names.rs")).waivable(), run);

/// Where each of two names stands, and as what it is written there.
type Seen = [Vec<(Span, String)>; 2];

/// Looks at every printed passage.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let pairs = pairs(subject.vocabulary);
    let mut seen: BTreeMap<usize, Seen> = BTreeMap::new();
    each_passage(subject, &mut |passage| {
        for at in 0..passage.tokens.len() {
            for (index, pair) in pairs.iter().enumerate() {
                for (side, names) in pair.iter().enumerate() {
                    let Some(name) = one_of(&passage.tokens, at, names) else { continue };
                    if let Some(span) = place(&passage.tokens[at..at + length(name)]) {
                        seen.entry(index).or_default()[side].push((span, name.to_owned()));
                    }
                }
            }
        }
    });
    let language = &subject.draft.facts.language;
    // Where the facts do not say, no country is meant.
    let stated = language.verbatim.then_some(language.span);
    let language = if stated.is_some() { language.text.as_str() } else { "" };
    let things = subject.vocabulary.same_thing.len();
    let own = ["en-GB", "en-US"].iter().position(|one| *one == language);
    // Where no word is spelled as the language has it, the language is what is wrong.
    let spelled = || seen.range(things..).map(|(_, seen)| seen);
    if let (Some(own), Some(stated)) = (own, stated)
        && spelled().all(|seen| seen[own].is_empty())
        && let Some((span, word)) = spelled().find_map(|seen| seen[1 - own].first())
    {
        let message = format!("the words are not spelled as in {language}: “{word}”");
        let finding = CHECK.at(stated, message).hint("name the language of the words, or mend their spelling");
        findings.push(finding.note(*span, "such as here"));
        seen.retain(|index, _| *index < things);
    }
    for (index, seen) in &seen {
        let spelling = *index >= subject.vocabulary.same_thing.len();
        let other_country = match language {
            "en-GB" if spelling => Some(1),
            "en-US" if spelling => Some(0),
            _ => None,
        };
        tell(seen, spelling, other_country, language, findings);
    }
}

/// Names of things, then spellings.
fn pairs(vocabulary: &Vocabulary) -> Vec<Pair> {
    let spelled = vocabulary.spellings.iter().map(|[one, other]| [vec![one.clone()], vec![other.clone()]]);
    vocabulary.same_thing.iter().cloned().chain(spelled).collect()
}

fn tell(seen: &Seen, spelling: bool, other_country: Option<usize>, language: &str, findings: &mut Findings) {
    let [one, other] = seen;
    let both = !one.is_empty() && !other.is_empty();
    let rarer = match other_country {
        Some(side) if !seen[side].is_empty() => side,
        _ if !both => return,
        _ if one.len() < other.len() => 0,
        _ if other.len() < one.len() => 1,
        _ => usize::from(is_later(other, one)),
    };
    let usual = seen[1 - rarer].first();
    for (span, name) in &seen[rarer] {
        let message = match usual {
            Some((_, usual)) if spelling => format!("“{name}” is spelled “{usual}” elsewhere in this booklet"),
            Some((_, usual)) => format!("“{name}” is called “{usual}” elsewhere in this booklet"),
            None => format!("“{name}” is not how {language} spells it"),
        };
        let finding = CHECK.at(*span, message).hint("keep to one of the two throughout");
        findings.push(match usual {
            Some((other, _)) => finding.note(*other, "the other, here"),
            None => finding,
        });
    }
}

fn is_later(one: &[(Span, String)], other: &[(Span, String)]) -> bool {
    let first = |seen: &[(Span, String)]| seen.first().map(|(span, _)| (span.file, span.range().start));
    first(one) > first(other)
}
