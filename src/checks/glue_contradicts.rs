//! The words turn the glue of a fused layer the other way than the work lays it.
//!
//! ## Why it matters
//! Glue that lies up where it should lie down melts onto the iron, and glue that lies down on the bare board stays
//! there. The cloth is lost, and the iron with it.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   stay: {name: Fusible interfacing, widths: [90 cm (36 in)], grain: no}
//! pieces:
//!   label: {name: Label, outline: {rectangle: [6 cm, 4 cm]}, raw: all, cut: {outer: [label_front], stay: [label_stay]}}
//! ```
//! ````md
//! ## Make the label {#label}
//!
//! ```work
//! - cut: label
//! - fuse: [label_front, label_stay]
//! - {topstitch: [label_front, front], stitch: 3 mm}
//! ```
//!
//! Lay the label wrong side up and the interfacing on it, glue side up. Fuse it and stitch it on.
//! ````
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   stay: {name: Fusible interfacing, widths: [90 cm (36 in)], grain: no}
//! pieces:
//!   label: {name: Label, outline: {rectangle: [6 cm, 4 cm]}, raw: all, cut: {outer: [label_front], stay: [label_stay]}}
//! ```
//! ````md
//! ## Make the label {#label}
//!
//! ```work
//! - cut: label
//! - fuse: [label_front, label_stay]
//! - {topstitch: [label_front, front], stitch: 3 mm}
//! ```
//!
//! Lay the label wrong side up and the interfacing on it, glue side down. Fuse it and stitch it on.
//! ````
//!
//! ## Limits
//! `fuse` names the layers from the lowest: the glue of a layer named first lies up, that of one named later down. Looks
//! for "glue side up" and words of the same meaning in the words and descriptions of a step that fuses, and for interfacing
//! and wadding that are fused to the right side. Which cloth has glue is told by the names under `glued_cloth` in
//! `templates/vocabulary-en.json`. Silent where the words say both, and where the work of a step lays glue both ways.

use super::judge::{Judge, Subject};
use super::passage::{Stands, Token, any_of, length, one_of, place, spoken};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Vocabulary};
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("glue-contradicts", Group::Words, include_str!("glue_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step that fuses.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let vocabulary = subject.vocabulary;
    each_step(subject, &mut |edition, step, passages| {
        let Some((up, work)) = glue_up(edition, step, vocabulary) else { return };
        let sentences: Vec<(&[Token<'_>], Stands)> = passages
            .iter()
            .flat_map(|passage| passage.sentences().into_iter().map(|sentence| (sentence, passage.stands)))
            .filter(|(sentence, _)| !any_of(sentence, &vocabulary.forbids))
            .collect();
        let said = |alt: bool| -> Vec<(bool, &[Token<'_>])> {
            let of = sentences.iter().filter(|(_, stands)| (*stands == Stands::Alt) == alt);
            of.flat_map(|(sentence, _)| glue(sentence, vocabulary)).collect()
        };
        let way = |up: bool| if up { "up" } else { "down" };
        let mut tell = |span: Span, message: String, hint: &str| {
            let finding = CHECK.at(span, message).hint(hint).note(work, "the work").in_size(edition.size(), "");
            findings.push(finding);
        };
        for told in [said(false), said(true)] {
            if told.iter().any(|(says_up, _)| *says_up == up) {
                continue;
            }
            for (_, tokens) in told {
                let Some(span) = place(tokens) else { continue };
                let lies = if up { "lowest, on the board, with its glue up" } else { "on top, with its glue down" };
                tell(
                    span,
                    format!(
                        "“{}”, but as the work names the layers, the one with the glue lies {lies}",
                        spoken(tokens)
                    ),
                    &format!("write “glue side {}”, or name the layers in the work from the lowest", way(up)),
                );
            }
        }
        for (sentence, stands) in sentences.iter().filter(|_| !up) {
            let shown = *stands == Stands::Alt;
            let Some(tokens) = on_the_right_side(sentence, shown, vocabulary) else { continue };
            let Some(span) = place(tokens) else { continue };
            tell(
                span,
                format!("“{}”, but what stiffens or pads is fused to the wrong side", spoken(tokens)),
                "write “wrong side”; where it is meant, waive it and say why",
            );
        }
    });
}

/// Whether the glue lies up in all fusing of a step, and where the first of it stands; `None` where it cannot be told.
fn glue_up(edition: &Edition<'_>, step: &EditionStep<'_>, vocabulary: &Vocabulary) -> Option<(bool, Span)> {
    let works: Vec<&EditionWork<'_>> = step.works.iter().filter(|work| work.verb == Verb::Fuse).collect();
    let ways: Vec<bool> = works.iter().map(|work| lies_up(edition, work, vocabulary)).collect::<Option<_>>()?;
    let first = *ways.first()?;
    ways.iter().all(|way| *way == first).then(|| (first, works[0].work.span))
}

fn lies_up(edition: &Edition<'_>, work: &EditionWork<'_>, vocabulary: &Vocabulary) -> Option<bool> {
    let copies: Vec<CopyId> = work.targets.iter().filter_map(|target| target.touched.first()?.copy()).collect();
    let [lowest, rest @ ..] = copies.as_slice() else { return None };
    let glued = |copy: &CopyId| has_glue(edition, *copy, vocabulary);
    match (glued(lowest), rest.iter().any(glued)) {
        (true, false) if !rest.is_empty() => Some(true),
        (false, true) => Some(false),
        _ => None,
    }
}

fn has_glue(edition: &Edition<'_>, copy: CopyId, vocabulary: &Vocabulary) -> bool {
    let Some(fabric) = edition.cast[copy].fabric else { return false };
    let name = super::passage::of_text(&edition.draft.facts.fabrics[fabric].name);
    any_of(&name.tokens, &vocabulary.glued_cloth)
}

/// Where a sentence says which way the glue lies, and whether it is up.
fn glue<'t>(sentence: &'t [Token<'t>], vocabulary: &Vocabulary) -> Vec<(bool, &'t [Token<'t>])> {
    let mut found = Vec::new();
    for at in 0..sentence.len() {
        if !vocabulary.glue_sides.contains(&sentence[at].word) {
            continue;
        }
        let near = |next: usize, words: &[String]| {
            sentence.get(next).is_some_and(|token| words.contains(&token.word) && token.gap.trim().is_empty())
        };
        let side = at + 1 + usize::from(near(at + 1, &vocabulary.side));
        let faces = side + usize::from(near(side, &vocabulary.faces));
        let plain = |token: &Token<'_>| token.gap.chars().all(|letter| letter.is_whitespace() || letter == '*');
        let Some(way) = sentence.get(faces).filter(|token| plain(token) && side > at + 1) else { continue };
        if let Some(pole) = vocabulary.up_down.iter().position(|words| words.contains(&way.word)) {
            found.push((pole == 0, &sentence[at..=faces]));
        }
    }
    found
}

/// "Fuse the interfacing to the right side of the band".
fn on_the_right_side<'t>(sentence: &'t [Token<'t>], shown: bool, vocabulary: &Vocabulary) -> Option<&'t [Token<'t>]> {
    let (at, phrase) =
        (0..sentence.len()).find_map(|at| Some((at, one_of(sentence, at, &vocabulary.on_right_side)?)))?;
    let layer = (0..at).any(|at| one_of(sentence, at, &vocabulary.glued_cloth).is_some());
    let fuses = shown || vocabulary.verbs.get(Verb::Fuse.word()).is_some_and(|forms| any_of(sentence, forms));
    let stiffens = sentence[..at]
        .iter()
        .filter_map(|token| token.leads)
        .any(|leads| vocabulary.glued_cloth.iter().any(|word| leads.target.contains(word.as_str())));
    (fuses && (layer || stiffens)).then(|| &sentence[at..at + length(phrase)])
}
