//! The words turn an edge under by another length than its allowance.
//!
//! ## Why it matters
//! A band with 1 cm to turn under does not reach its seam once 2 cm are turned, and a hem turned up by the half leaves the
//! skirt too long.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   wide: 2.5 cm (1 in)
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [9 cm, 9 cm]}, allowance: {all: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make a tab {#tab}
//!
//! ```work
//! - cut: tab
//! - {hem: tab.top, allowance: seam, stitch: 2.5 mm}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Turn the top edge of the tab under by {wide}, hem it and stitch it on.
//! ````
//!
//! ## Right
//! ```yaml
//! measurements:
//!   wide: 2.5 cm (1 in)
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [9 cm, 9 cm]}, allowance: {all: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make a tab {#tab}
//!
//! ```work
//! - cut: tab
//! - {hem: tab.top, allowance: seam, stitch: 2.5 mm}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Turn the top edge of the tab under by {seam}, hem it and stitch it on, {wide} from the edge.
//! ````
//!
//! ## Limits
//! Looks for "by {…}" behind "turn … under", "fold … over" and the like in steps that fold or hem. Right is the allowance of
//! one of the edges that are folded or hemmed there, or the one that the work states; a half of it where the words say
//! "twice" or "again", and figures that come to it together. Silent where no edge has an allowance, and in sentences that
//! point to another step.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, one_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, to_f64};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{CopyId, EdgeId, Edition, EditionStep, Scope, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("turn-contradicts", Group::Words, include_str!("turn_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// How far two lengths may be apart, in mm.
const NEAR: f64 = 0.5;

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        let allowed = allowed(edition, step);
        if allowed.is_empty() {
            return;
        }
        let body: Vec<&Passage<'_>> = passages.iter().filter(|passage| passage.stands == Stands::Body).collect();
        let turns: Vec<(&Token<'_>, f64)> = body
            .iter()
            .flat_map(|passage| passage.sentences())
            .flat_map(|sentence| turned(edition, sentence, vocabulary))
            .collect();
        // "Then over again by {…}" goes on from the verb before.
        let all: Vec<(&Token<'_>, f64)> = body
            .iter()
            .flat_map(|passage| (1..passage.tokens.len()).map(|at| (&passage.tokens[at - 1], &passage.tokens[at])))
            .filter(|(by, _)| vocabulary.by.contains(&by.word))
            .filter_map(|(_, token)| Some((token, length(edition, token)?)))
            .collect();
        let again = body.iter().any(|passage| any_of(&passage.tokens, &vocabulary.again));
        for (token, length) in &turns {
            let near = |one: f64, other: f64| (one - other).abs() <= NEAR;
            let with_others = |whole: f64| {
                let others = all.iter().filter(|(other, _)| !std::ptr::eq(*other, *token));
                others.into_iter().any(|(_, other)| near(length + other, whole))
            };
            let fits = allowed
                .iter()
                .any(|whole| near(*length, *whole) || with_others(*whole) || again && near(length * 2.0, *whole));
            if fits {
                continue;
            }
            let mut told: Vec<String> = allowed.iter().map(|whole| super::words::length(edition, *whole)).collect();
            told.dedup();
            let message = format!(
                "{} are turned here, and the allowance of the edge is {}",
                super::words::length(edition, *length),
                told.join(" or ")
            );
            let hint = "write `{allowance}` where the work states it, or the measurement of the edge";
            findings.push(CHECK.at(token.span, message).hint(hint).in_size(edition.size(), ""));
        }
    });
}

/// The allowances in mm of the edges that a step folds and hems, and those that such work states.
fn allowed(edition: &Edition<'_>, step: &EditionStep<'_>) -> Vec<f64> {
    let mut found = Vec::new();
    let works = || step.works.iter().filter(|work| matches!(work.verb, Verb::Fold | Verb::Hem));
    // "In half" folds no edge.
    let by_edge = works().flat_map(|work| work.touched()).any(|touched| matches!(touched, Touched::Edge(..)));
    for work in works() {
        found.extend(work.allowance.map(|own| to_f64(own.quantity.value)));
        for touched in work.touched() {
            let edges: Vec<(CopyId, EdgeId)> = match touched {
                Touched::Edge(copy, edge) => vec![(copy, edge)],
                Touched::Copy(copy) if !by_edge => {
                    edition.edges_of(copy).into_iter().map(|edge| (copy, edge)).collect()
                }
                _ => Vec::new(),
            };
            found.extend(edges.into_iter().filter_map(|(copy, edge)| {
                let piece = edition.cast[copy].piece;
                edition.values.allowance(piece, &edition.drawn_word(copy, edge)).map(to_f64)
            }));
        }
    }
    found.retain(|length| *length > 0.0);
    found.sort_by(f64::total_cmp);
    found.dedup();
    found
}

/// The figures by which a sentence turns an edge.
fn turned<'t>(edition: &Edition<'_>, sentence: &'t [Token<'t>], vocabulary: &Vocabulary) -> Vec<(&'t Token<'t>, f64)> {
    let folds = |at: usize| {
        vocabulary
            .folding
            .iter()
            .filter_map(|verb| vocabulary.verbs.get(verb))
            .any(|forms| one_of(sentence, at, forms).is_some())
    };
    if Passage::points_away(sentence) {
        return Vec::new();
    }
    let figures = (1..sentence.len()).filter(|at| vocabulary.by.contains(&sentence[at - 1].word));
    figures
        .filter_map(|at| {
            let length = length(edition, &sentence[at])?;
            let before = at.saturating_sub(REACH)..at - 1;
            let turned = before.clone().any(folds)
                && before.clone().any(|at| one_of(sentence, at, &vocabulary.turned_to).is_some());
            turned.then_some((&sentence[at], length))
        })
        .collect()
}

/// The length in mm that a token prints.
fn length(edition: &Edition<'_>, token: &Token<'_>) -> Option<f64> {
    let (formula, _) = token.brace?;
    let worked = Scope::plain(&edition.values).work_out(formula, &mut Findings::default())?;
    (worked.quantity.dimension == Dimension::Length).then(|| to_f64(worked.quantity.value))
}

/// How many words may stand between the verb and its figure.
const REACH: usize = 12;
