//! Whether a list names what is needed, under any of the words by which makers know it.

use std::collections::BTreeSet;

use super::passage::Token;
pub(super) use crate::syntax::plain_words as words;
use crate::syntax::{Harm, Need, Needs, holds, single};

/// A list that makers bring together from: tools and notions, each split into the things that it names.
pub(super) struct List {
    items: Vec<Vec<String>>,
    /// Whether it names all usual tools together.
    everything: bool,
}

impl List {
    /// The things that some names on the page come to: "Pins and clips" are two.
    pub fn of<'a>(names: impl Iterator<Item = &'a str>, needs: &Needs) -> List {
        let items: Vec<Vec<String>> = names.flat_map(split).collect();
        let everything = needs.everything.iter().any(|phrase| items.iter().any(|item| holds(item, &words(phrase))));
        List { items, everything }
    }

    /// Whether it names a thing.
    pub fn names(&self, need: &Need) -> bool {
        let means = |item: &Vec<String>| {
            let other = need.not.iter().any(|phrase| holds(item, &words(phrase)));
            let named = need.names.iter().any(|phrase| holds(item, &words(phrase)));
            let exactly = need.exactly.iter().any(|phrase| *item == words(phrase));
            (named || exactly) && !other
        };
        self.everything || self.items.iter().any(means)
    }
}

/// Whether some text holds one of the phrases.
pub(super) fn says(text: &str, phrases: &[String]) -> bool {
    let text = words(text);
    let begins: BTreeSet<Option<char>> = text.iter().map(|word| word.chars().next()).collect();
    let near = |phrase: &&String| begins.contains(&first_letter(phrase));
    phrases.iter().filter(near).any(|phrase| holds(&text, &words(phrase)))
}

/// The small letter that the first word of a phrase begins with: most phrases need not be taken apart to see that they
/// do not stand somewhere. `None` where it has no word.
fn first_letter(phrase: &str) -> Option<char> {
    phrase.chars().find(|letter| letter.is_alphanumeric())?.to_lowercase().next()
}

/// The words of some tokens as the lists hold them; empty where a figure stands.
pub(super) fn stems(tokens: &[Token<'_>]) -> Vec<String> {
    tokens.iter().map(|token| single(&token.word.replace(['\'', '’'], ""))).collect()
}

/// How many words of the longest phrase of a list begin at `at`; none where no phrase does.
pub(super) fn phrase_at(text: &[String], at: usize, phrases: &[String]) -> usize {
    let begins = text.get(at).and_then(|word| word.chars().next());
    let near = |phrase: &&String| first_letter(phrase) == begins;
    let all = phrases.iter().filter(near).map(|phrase| words(phrase));
    all.filter(|phrase| !phrase.is_empty() && text[at..].starts_with(phrase))
        .map(|phrase| phrase.len())
        .max()
        .unwrap_or(0)
}

/// Whether a name is that of a child: by a word, or by an age.
pub(super) fn is_of_child(name: &str, harm: &Harm) -> bool {
    if says(name, &harm.child) {
        return true;
    }
    let words = words(name);
    let number = |word: &String| word.parse::<u32>().ok();
    let is = |word: &String, of: &[String]| of.contains(word);
    (0..words.len()).any(|at| {
        let (before, word, after) = (at.checked_sub(1).map(|at| &words[at]), &words[at], words.get(at + 1));
        // `4y` is one word.
        let letters = word.trim_start_matches(|letter: char| letter.is_ascii_digit());
        let (digits, unit) = (&word[..word.len() - letters.len()], letters.to_owned());
        let joined = digits.parse::<u32>().ok().filter(|_| !unit.is_empty());
        let months = number(word).is_some() && after.is_some_and(|after| is(after, &harm.ages_months));
        let young = |age: Option<u32>| age.is_some_and(|age| age < GROWN);
        let years = young(number(word)) && after.is_some_and(|after| is(after, &harm.ages_years));
        let aged = young(number(word)) && before.is_some_and(|before| is(before, &harm.ages_before));
        let one = joined.is_some() && is(&unit, &harm.ages_months) || young(joined) && is(&unit, &harm.ages_years);
        months || years || aged || one
    })
}

/// From this age on, in years, a size is taken for a grown-up's (common practice, no source).
const GROWN: u32 = 16;

/// A name taken apart at its commas and its "and", "or" and "with".
fn split(name: &str) -> Vec<Vec<String>> {
    // What a machine has, such as a needle, is no thing by itself.
    let own = name.split_once(" with ").filter(|(thing, _)| thing.to_lowercase().ends_with("machine"));
    let name = own.map_or(name.to_owned(), |(thing, has)| {
        format!("{thing} and machine {}", has.replace(',', " ").replace(" and ", " and machine "))
    });
    let all = words(&name.replace([',', ';', '/', '(', ')', '+', '&'], " and "));
    let joins = |word: &String| ["and", "or", "with", "such", "plus"].contains(&word.as_str());
    let parts = all.split(joins).filter(|part| !part.is_empty()).map(<[String]>::to_vec);
    parts
        .map(|part| part.into_iter().filter(|word| !["a", "an", "the", "some"].contains(&word.as_str())).collect())
        .collect()
}
