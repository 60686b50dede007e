//! The names of pieces and notions as sentences say them: "the two cuffs", "the left front".

use super::passage::{Token, number, stem};
use crate::model::Vocabulary;
use crate::resolve::{CopyId, Edition};

/// A name, its words without the ending of their plural.
#[derive(Debug, Clone)]
pub(super) struct Spoken {
    words: Vec<String>,
}

impl Spoken {
    /// "Zip tab" is "zip" and "tab".
    pub fn of(name: &str) -> Spoken {
        // "Cotton, dark" is a cotton.
        let name = name.split([',', '(']).next().unwrap_or(name).to_lowercase();
        let words = name.split(|letter: char| !letter.is_alphanumeric() && letter != '’' && letter != '\'');
        Spoken { words: words.filter(|word| !word.is_empty()).map(|word| stem(word).to_owned()).collect() }
    }

    /// Its last word, which says what it is.
    pub fn head(&self) -> &str {
        self.words.last().map_or("", String::as_str)
    }

    /// Whether all its words stand among some.
    pub fn all_in(&self, tokens: &[Token<'_>]) -> bool {
        self.words.iter().all(|own| tokens.iter().any(|token| stem(&token.word) == own))
    }

    /// Whether one of its words is this one.
    pub fn has(&self, word: &str) -> bool {
        self.words.iter().any(|own| own == stem(word))
    }
}

/// A number before a noun: "two zip tabs".
#[derive(Debug, Clone)]
pub(super) struct Counted<'t> {
    /// How many.
    pub count: u32,
    /// The words between the number and the noun, and the noun: "zip tabs".
    pub noun: &'t [Token<'t>],
    /// The number and the noun.
    pub all: &'t [Token<'t>],
}

/// How many words may stand between a number and its noun.
const BETWEEN: usize = 3;

/// Every number before a noun that `is_noun` knows; "pairs of" and figures with a unit count something else.
pub(super) fn counted<'t>(
    sentence: &'t [Token<'t>],
    vocabulary: &Vocabulary,
    is_noun: &dyn Fn(&str) -> bool,
) -> Vec<Counted<'t>> {
    let mut found = Vec::new();
    for (at, token) in sentence.iter().enumerate() {
        let Some(count) = number(token, vocabulary) else { continue };
        let rest = &sentence[at + 1..];
        let near = rest.iter().take(BETWEEN + 1).take_while(|token| {
            let joined = token.gap.chars().all(|letter| letter.is_whitespace() || letter == '-');
            joined && !token.word.is_empty() && number(token, vocabulary).is_none()
        });
        let near: Vec<&Token<'_>> = near.collect();
        // The last of the nouns in a row is what is counted: "two front facings"; "four tabs of the front" are tabs.
        let of = near.iter().position(|token| vocabulary.pairs.contains(&token.word)).unwrap_or(near.len());
        let Some(last) = near[..of].iter().rposition(|token| is_noun(stem(&token.word))) else { continue };
        let followed =
            rest.get(last + 1).is_some_and(|next| next.gap == " " && vocabulary.edge_words.contains(&next.word));
        // "one side of the strap" and the like end at another noun than the piece.
        let ends = |word: &String| vocabulary.edge_words.contains(word) || vocabulary.ends_a_name.contains(word);
        let broken = near[..last].iter().any(|token| ends(&token.word));
        if !followed && !broken {
            found.push(Counted { count, noun: &rest[..=last], all: &sentence[at..=at + 1 + last] });
        }
    }
    found
}

/// What a copy is called on the page and in the facts, all words.
pub(super) fn called(edition: &Edition<'_>, copy: CopyId) -> Spoken {
    let member = &edition.cast[copy];
    let piece = &edition.draft.facts.pieces[member.piece].name.text;
    let mut words = Spoken::of(&edition.copy_name(copy));
    words.words.extend(Spoken::of(&member.name.replace('_', " ")).words);
    words.words.extend(Spoken::of(piece).words);
    words
}
