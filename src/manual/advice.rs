//! What to say of a word that has no page: the word that was meant, or the pages that speak of it.

use super::chapter::Chapter;
use super::shelf::pages;
use crate::diag::{is_slip, nearest};

/// The most pages that are named.
const MOST: usize = 8;

/// Shorter words are near to too many others.
const LONG: usize = 6;

/// An act for a reader who asked for a word without a page.
pub fn advice(word: &str) -> String {
    let word = word.trim().trim_end_matches(':').to_lowercase();
    let pages = pages();
    let chapters = Chapter::ALL.iter().map(|chapter| chapter.name());
    let names: Vec<&str> = pages.iter().map(|page| page.name.as_str()).chain(chapters).collect();
    let near = nearest(&word, names.iter().copied());
    let sure = near.filter(|name| word.chars().count() >= LONG || is_slip(&word, name));
    // `topstitching` and `zipper` begin with the word that was meant.
    let begun = names.iter().copied().filter(|name| name.chars().count() > 2 && word.starts_with(name));
    if let Some(meant) = sure.or_else(|| begun.max_by_key(|name| name.len())) {
        return format!("did you mean `{meant}`?");
    }
    let mut speaking: Vec<&str> = Vec::new();
    // Pages that are about the word come before those that only use it.
    let about = pages.iter().filter(|page| speaks(&page.summary, &word));
    for page in about.chain(pages.iter().filter(|page| speaks(&page.text, &word))) {
        if !speaking.contains(&page.name.as_str()) {
            speaking.push(&page.name);
        }
    }
    match speaking.as_slice() {
        [] => "`notchbook explain` lists every word that has one".to_owned(),
        several => {
            let named: Vec<String> = several.iter().take(MOST).map(|name| format!("`{name}`")).collect();
            let more = if several.len() > MOST { ", and others" } else { "" };
            format!("these pages speak of it: {}{more}", named.join(", "))
        }
    }
}

/// Whether a text has the word, in any case, as a word of its own.
fn speaks(text: &str, word: &str) -> bool {
    let text = text.to_lowercase();
    let letter = |found: Option<char>| found.is_some_and(char::is_alphanumeric);
    !word.is_empty()
        && text
            .match_indices(word)
            .any(|(at, _)| !letter(text[..at].chars().next_back()) && !letter(text[at + word.len()..].chars().next()))
}
