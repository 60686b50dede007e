//! The words claim that the thing is safe.
//!
//! ## Why it matters
//! Nobody can promise that what a maker sews of her own cloth and buttons is safe for a child. The house's own caution says
//! that the booklet does not claim it; a sentence that does contradicts it, and a maker may believe it.
//!
//! ## Wrong
//! ```yaml
//! summary: A small pouch, perfectly safe for babies.
//! ```
//!
//! ## Right
//! ```yaml
//! summary: A small pouch with rounded corners and no loose parts.
//! ```
//!
//! ## Limits
//! Looks for plain claims (safe for a child, fit for a baby, non-toxic, no choking hazard and the like, from
//! `templates/needs-en.json`) in the title, the summary and all words, and lets sentences go that deny one or ask; and of a toy or a thing that is
//! filled for being made for a baby. English booklets alone. That nothing is found never means that a thing is safe.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{says, words};
use super::said::{each_prose, sentences};
use crate::diag::{Check, Finding, Findings, Group};
use crate::source::Span;
use crate::syntax::Harm;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("claimed-safe", Group::Words, include_str!("claimed_safe.rs")).waivable(), run);

/// Looks at every sentence.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let harm = &subject.needs.harm;
    if !is_english(&facts.language.text) {
        return;
    }
    let plain = [Some(&facts.title), facts.summary.as_ref()];
    for text in plain.into_iter().flatten().filter(|text| claim(&text.text, harm)) {
        findings.push(told(text.span));
    }
    let toy = super::wearer_out_of_order::is_toy(subject);
    each_prose(subject.draft, &mut |blocks| {
        for sentence in sentences(blocks, None).into_iter().filter(|sentence| {
            let for_a_baby = |text: &str| harm.made_for.iter().any(|phrase| says_for(text, phrase, harm));
            claim(&sentence.text, harm) || (toy && for_a_baby(&sentence.text))
        }) {
            findings.extend(sentence.place().map(told));
        }
    });
}

fn told(span: Span) -> Finding {
    CHECK.at(span, "this claims that the thing is safe, or fit for a child, which no booklet can promise").hint(
        "say what it is made of and how, and leave the judgement to the rules of the place and to a competent tester",
    )
}

/// Whether a sentence makes a claim and does not deny it.
fn claim(text: &str, harm: &Harm) -> bool {
    if says(text, &harm.claims_outright) {
        return true;
    }
    let fit = says(text, &harm.claims)
        || is_called_safe(text, harm)
        || harm.claims_for.iter().any(|phrase| is_for_a_child(text, phrase, harm));
    fit && !says(text, &harm.denials)
}

/// "The cushion is safe in a cot", "keeps food safe", "makes the apron safe": a verb of being or making, and "safe" of
/// the thing itself, not of a place or of what one does.
fn is_called_safe(text: &str, harm: &Harm) -> bool {
    // Endings count: "keeps food safe" claims, "keep the pattern safe" asks.
    let lower = text.to_lowercase();
    let parts = lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let text: Vec<String> = parts.map(str::to_owned).collect();
    let safe = (0..text.len()).filter(|at| harm.safe.contains(&text[*at]));
    safe.into_iter().any(|at| {
        let of_a_deed = text.get(at + 1).is_some_and(|next| harm.safe_deeds.contains(next));
        let verbs = text[at.saturating_sub(6)..at].iter().any(|word| harm.safe_verbs.contains(word));
        !of_a_deed && verbs
    })
}

/// Whether a phrase such as "made for" goes on with those who are too small for any toy.
fn says_for(text: &str, phrase: &str, harm: &Harm) -> bool {
    let (text, phrase) = (words(text), words(phrase));
    (0..text.len()).any(|at| {
        // What the rest of the sentence denies is something else.
        let denied = says(&text[..at].join(" "), &harm.denials);
        !denied
            && text[at..].starts_with(&phrase)
            && text[at + phrase.len()..].iter().take(3).any(|word| harm.babies.contains(word))
    })
}

/// Whether a phrase such as "safe for" goes on with those who are to be kept safe, within four words.
fn is_for_a_child(text: &str, phrase: &str, harm: &Harm) -> bool {
    let (text, phrase) = (words(text), words(phrase));
    let starts = (0..text.len()).filter(|at| text[*at..].starts_with(&phrase));
    starts.into_iter().any(|at| {
        let after: Vec<&str> = text[at + phrase.len()..].iter().take(4).map(String::as_str).collect();
        says(&after.join(" "), &harm.kept_safe)
    })
}
