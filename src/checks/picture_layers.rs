//! What lies on what, in the words and in the description of a picture; and what a picture that the compiler draws from the
//! work can show.

use std::collections::BTreeSet;

use super::passage::{Passage, Stands, Token, any_of, length, one_of, place, spoken};
use super::spoken_names::Spoken;
use crate::figure::DRAW;
use crate::model::{Block, Pair, Verb, Vocabulary};
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork};
use crate::source::Span;

/// "The left placket on the right one" in the words, and the other way round in the description.
pub(super) fn layers(passages: &[Passage<'_>], vocabulary: &Vocabulary, tell: &mut dyn FnMut(Span, String)) {
    let of = |alt: bool| passages.iter().filter(move |passage| (passage.stands == Stands::Alt) == alt);
    let shown: Vec<Laid<'_>> = of(true).flat_map(|passage| laid(&passage.tokens, vocabulary)).collect();
    for said in of(false).flat_map(|passage| laid(&passage.tokens, vocabulary)) {
        let alike = |other: &&Laid<'_>| other.pair == said.pair && other.noun == said.noun;
        let same = shown.iter().filter(alike).any(|other| other.above == said.above);
        let Some(other) = shown.iter().find(alike).filter(|_| !same) else { continue };
        let Some(span) = place(said.tokens) else { continue };
        let (words, description) = (spoken(said.tokens), spoken(other.tokens));
        tell(span, format!("the words say “{words}”, and the description “{description}”"));
    }
}

/// Of two of one noun, which lies above.
struct Laid<'t> {
    pair: usize,
    above: usize,
    noun: String,
    tokens: &'t [Token<'t>],
}

fn laid<'t>(tokens: &'t [Token<'t>], vocabulary: &Vocabulary) -> Vec<Laid<'t>> {
    let side = |pair: &Pair, at: usize| {
        let word = &tokens.get(at)?.word;
        pair.iter().position(|words| words.contains(word))
    };
    let mut found = Vec::new();
    for at in 0..tokens.len() {
        for (pair, sides) in vocabulary.before_nouns.iter().enumerate() {
            let Some(above) = side(sides, at) else { continue };
            let near = at + 3..tokens.len().min(at + 8);
            let Some(below) = near.into_iter().find(|below| side(sides, *below) == Some(1 - above)) else { continue };
            let upon = (at + 1..below).any(|at| one_of(tokens, at, &vocabulary.upon).is_some());
            let noun = super::passage::stem(&tokens[at + 1].word).to_owned();
            if upon && tokens[at + 1].gap == " " && !vocabulary.edge_words.contains(&noun) {
                found.push(Laid { pair, above, noun, tokens: &tokens[at..=below] });
            }
        }
    }
    found
}

/// What the description of a drawing that is made from the work says, and the work does not.
pub(super) fn by_the_work(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passages: &[Passage<'_>],
    vocabulary: &Vocabulary,
    tell: &mut dyn FnMut(Span, String),
) {
    others_together(edition, step, passages, vocabulary, tell);
    if !drawn_alone(step) {
        return;
    }
    let sewn: Vec<&EditionWork<'_>> = step.works.iter().filter(|work| work.verb == Verb::Sew).collect();
    for passage in passages.iter().filter(|passage| passage.stands == Stands::Alt) {
        let wrong = |work: &&EditionWork<'_>| {
            work.work.wrong_sides || work.work.with.is_some_and(|with| with == crate::model::Together::WrongSides)
        };
        for (side, other) in [(0, 1), (1, 0)] {
            let is_so = !sewn.is_empty() && sewn.iter().all(|work| wrong(work) == (side == 1));
            let says = |side: usize| any_of(&passage.tokens, &vocabulary.together[side]);
            let at = (0..passage.tokens.len())
                .find_map(|at| Some((at, one_of(&passage.tokens, at, &vocabulary.together[other])?)));
            let Some((at, phrase)) = at.filter(|_| is_so && !says(side)) else { continue };
            let tokens = &passage.tokens[at..at + super::passage::length(phrase)];
            if let Some(span) = place(tokens) {
                let right = &vocabulary.together[side][0];
                tell(span, format!("the description says “{phrase}”, and the work sews {right}"));
            }
        }
        if let Some(token) = stranger(edition, step, passage, vocabulary) {
            let word = &token.raw;
            tell(
                token.span,
                format!("the description names the {word}, and this drawing is made from work without one"),
            );
        }
    }
}

/// "Front and back right sides together" in the description of a step that sews other pieces.
fn others_together(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passages: &[Passage<'_>],
    vocabulary: &Vocabulary,
    tell: &mut dyn FnMut(Span, String),
) {
    let sewn = step.works.iter().filter(|work| work.verb == Verb::Sew);
    let touched: BTreeSet<CopyId> = sewn.flat_map(|work| work.touched()).filter_map(|touched| touched.copy()).collect();
    if touched.is_empty() {
        return;
    }
    let names = |of: bool| -> Vec<Spoken> {
        let copies = edition.cast.copies().map(|(copy, _)| copy).filter(|copy| touched.contains(copy) == of);
        copies.map(|copy| Spoken::of(&edition.copy_name(copy))).collect()
    };
    let (own, others) = (names(true), names(false));
    for passage in passages.iter().filter(|passage| passage.stands == Stands::Alt) {
        for at in 0..passage.tokens.len() {
            if !vocabulary.together.iter().any(|words| one_of(&passage.tokens, at, words).is_some()) {
                continue;
            }
            let before = &passage.tokens[..at];
            let head = |name: &Spoken| before.iter().any(|token| super::passage::stem(&token.word) == name.head());
            let of_own = own.iter().any(|name| name.all_in(before) || head(name));
            let strange: Vec<&Spoken> = others.iter().filter(|name| name.all_in(before)).collect();
            if !of_own
                && strange.len() > 1
                && let Some(span) = place(before)
            {
                tell(
                    span,
                    format!("the description lays “{}” on each other, and the work sews other pieces", spoken(before)),
                );
            }
        }
    }
}

/// Whether the one picture of a step is drawn from its work.
fn drawn_alone(step: &EditionStep<'_>) -> bool {
    let mut paths = Vec::new();
    step.step
        .body
        .iter()
        .for_each(|block: &Block| block.each_figure(&mut |figure| paths.push(figure.path.text.as_str())));
    step.step.body.iter().for_each(|block| {
        block.each_inline(&mut |inline| {
            if let crate::model::Inline::Figure(figure) = inline {
                paths.push(figure.path.text.as_str());
            }
        });
    });
    paths.len() == 1 && paths[0].starts_with(DRAW)
}

/// A word that is the name of pieces of this size alone, none of which the work touches or has been sewn to what it
/// touches.
fn stranger<'t>(
    edition: &Edition<'_>,
    step: &EditionStep<'_>,
    passage: &'t Passage<'_>,
    vocabulary: &Vocabulary,
) -> Option<&'t Token<'t>> {
    let near = joined(edition, step);
    if near.is_empty() || near.len() == edition.cast.len() {
        return None;
    }
    let known: Vec<String> = near_words(edition, step, &near);
    let strangers: Vec<String> = edition
        .cast
        .copies()
        .filter(|(copy, _)| !near.contains(copy))
        .map(|(copy, _)| Spoken::of(&edition.copy_name(copy)).head().to_owned())
        .filter(|word| !word.is_empty() && !known.contains(word))
        .collect();
    let tokens = &passage.tokens;
    (0..tokens.len()).find_map(|at| {
        let word = super::passage::stem(&tokens[at].word);
        // "From the front" and "at the back" are no pieces.
        let way = at
            .checked_sub(2)
            .is_some_and(|from| vocabulary.seen_from.contains(&tokens[from].word) && tokens[at - 1].gap == " ");
        // "Turned back" is none either, and "the strap patch" is a patch.
        let article =
            |back: usize| at.checked_sub(back).is_some_and(|from| vocabulary.articles.contains(&tokens[from].word));
        let side = at.checked_sub(1).is_some_and(|from| {
            vocabulary.before_nouns.iter().flatten().any(|words| words.contains(&tokens[from].word))
        });
        let begins = at == 0 || article(1) || (side && article(2));
        let ends = tokens.get(at + 1).is_none_or(|next| next.gap != " " || vocabulary.ends_a_name.contains(&next.word));
        let is = begins && ends && !way;
        (is && strangers.iter().any(|own| own == word)).then(|| &tokens[at])
    })
}

/// The words of the names of what the work touches, and of the edges and notions.
pub(super) fn near_words(edition: &Edition<'_>, step: &EditionStep<'_>, near: &BTreeSet<CopyId>) -> Vec<String> {
    let mut names: Vec<String> = near.iter().map(|copy| edition.copy_name(*copy)).collect();
    for copy in near {
        names.push(edition.draft.facts.pieces[edition.cast[*copy].piece].name.text.clone());
        names.extend(edition.edges_of(*copy).into_iter().map(|edge| edition.edge_word(*copy, edge)));
        names.extend(edition.cast[*copy].fabric.map(|fabric| edition.draft.facts.fabrics[fabric].name.text.clone()));
    }
    names.extend(step.works.iter().flat_map(|work| work.named()).map(|target| target.spoken.clone()));
    names.iter().flat_map(|name| super::passage::name_words(name)).collect()
}

/// What the work of a step touches, and all that was sewn to it before.
pub(super) fn joined(edition: &Edition<'_>, step: &EditionStep<'_>) -> BTreeSet<CopyId> {
    let copies =
        |work: &EditionWork<'_>| -> BTreeSet<CopyId> { work.touched().filter_map(|touched| touched.copy()).collect() };
    let mut near: BTreeSet<CopyId> = step.works.iter().flat_map(copies).collect();
    let before: Vec<BTreeSet<CopyId>> = edition
        .steps()
        .filter(|other| other.number < step.number)
        .flat_map(|other| &other.works)
        .filter(|work| !matches!(work.verb, Verb::Cut | Verb::Press | Verb::Mark))
        .map(copies)
        .collect();
    loop {
        let more: BTreeSet<CopyId> = before
            .iter()
            .filter(|some| !some.is_disjoint(&near))
            .flatten()
            .copied()
            .filter(|copy| !near.contains(copy))
            .collect();
        if more.is_empty() {
            return near;
        }
        near.extend(more);
    }
}

/// Whether the words turn something over.
pub(super) fn turned_over(passages: &[Passage<'_>], vocabulary: &Vocabulary) -> bool {
    let [turn, over] = &vocabulary.turned_over;
    passages.iter().filter(|passage| passage.stands != Stands::Alt).any(|passage| {
        let tokens = passage.tokens.as_slice();
        let turned = (0..tokens.len()).find(|at| one_of(tokens, *at, turn).is_some());
        // "Turn the handwheel over the teeth" turns nothing over.
        let turns_over = |at: usize| {
            let Some(phrase) = one_of(tokens, at, over) else { return false };
            let next = tokens.get(at + length(phrase)).filter(|next| next.gap.trim().is_empty());
            next.is_none_or(|next| !vocabulary.articles.contains(&next.word))
        };
        turned.is_some_and(|from| (from..tokens.len()).any(turns_over))
    })
}
