//! The words give a piece another width and height than it is cut.
//!
//! ## Why it matters
//! "Cut it {seam} wide and {height} tall" is cut just so, and no piece of the table has that size.
//!
//! ## Wrong
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut two tabs, each {width} by {height}, and press them.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//!
//! ## Right
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut two tabs, each {5 cm} by {5 cm}, and press them.
//! ````
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//!
//! ## Limits
//! Looks for two figures joined by "by", "wide and … tall" and the like in the sentences of a step that cuts, and
//! compares them with the rectangles that the step cuts, where it cuts nothing else, to half a millimetre: with "wide and tall" as they
//! lie, else either way round. A figure that is said to be "for" one piece, and that another one of the step has, is told too. "{…} square" is compared where the step cuts a square. A piece that is
//! referred to before the figures is meant alone.
//! Where nothing is cut, a width and a height are told that a piece named there has the other way about.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, place};
use super::printed_words::each_step;
use super::spoken_names::Spoken;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, to_f64};
use crate::model::{BySize, Outline, Reference, ReferenceKind, Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, PieceId, Scope, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("size-contradicts", Group::Words, include_str!("size_contradicts.rs")).waivable_in(Home::Words),
    run,
);

/// How far two lengths may be apart, in mm.
const NEAR: f64 = 0.5;

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, step, passages| {
        let sizes = sizes(edition, step);
        let sizes = &sizes;
        for passage in passages.iter().filter(|passage| passage.stands == Stands::Body) {
            look(edition, passage, sizes, subject.vocabulary, findings);
            exchanged(edition, passage, sizes, subject.vocabulary, findings);
            turned(edition, passage, sizes, subject.vocabulary, findings);
        }
    });
}

/// Width and height in mm of a piece that is cut.
#[derive(Clone, Copy)]
struct Size {
    piece: PieceId,
    across: f64,
    down: f64,
}

/// The rectangles that a step cuts.
struct Cut {
    sizes: Vec<Size>,
    /// Whether it cuts nothing else.
    whole: bool,
}

fn sizes(edition: &Edition<'_>, step: &EditionStep<'_>) -> Cut {
    let works = step.works.iter().filter(|work| work.verb == Verb::Cut);
    let touched = works.flat_map(|work| work.targets.iter().flat_map(|target| &target.touched));
    let pieces: Vec<_> = touched.filter_map(Touched::copy).map(|copy| edition.cast[copy].piece).collect();
    let size = |piece: &PieceId| {
        // What is cut larger first, on the fold, or not straight is told by other figures too.
        let facts = &edition.draft.facts.pieces[*piece];
        let plain = matches!(facts.outline, Some(Outline::Rectangle { .. }))
            && facts.cut_larger.is_none()
            && facts.fold.is_none();
        let row = edition.cuts.iter().find(|row| row.piece == *piece).filter(|_| plain)?;
        let (width, height) = row.dimensions.as_ref()?;
        let length = |shown: &crate::resolve::Shown| to_f64(shown.exact.value);
        Some(Size { piece: *piece, across: length(width), down: length(height) })
    };
    let known: Vec<Size> = pieces.iter().filter_map(size).collect();
    let whole = known.len() == pieces.len();
    Cut { sizes: known, whole }
}

fn look(edition: &Edition<'_>, passage: &Passage<'_>, sizes: &Cut, vocabulary: &Vocabulary, findings: &mut Findings) {
    let Some(verbs) = vocabulary.verbs.get(Verb::Cut.word()) else { return };
    for sentence in passage.sentences() {
        if !any_of(sentence, verbs) {
            continue;
        }
        square(edition, sentence, sizes, vocabulary, findings);
        let figures: Vec<usize> = (0..sentence.len()).filter(|at| sentence[*at].brace.is_some()).collect();
        for pair in figures.windows(2) {
            let [one, other] = pair else { continue };
            let (Some(width), Some(height)) = (length(edition, &sentence[*one]), length(edition, &sentence[*other]))
            else {
                continue;
            };
            let near = |one: f64, other: f64| (one - other).abs() <= NEAR;
            // "Wide and tall" says which is which, "by" does not.
            let upright =
                |at: usize, words: &[String]| sentence.get(at + 1).is_some_and(|next| words.contains(&next.word));
            let said = upright(*one, &vocabulary.wide) && upright(*other, &vocabulary.tall);
            let meant = meant(edition, &sentence[..*one], sizes);
            let fits = meant.is_empty()
                || meant.iter().any(|Size { across, down, .. }| {
                    (near(width, *across) && near(height, *down))
                        || (!said && near(width, *down) && near(height, *across))
                });
            if is_size(&sentence[*one..=*other], vocabulary)
                && !fits
                && let Some(span) = place(&sentence[*one..=*other])
            {
                findings.push(
                    CHECK
                        .at(span, "no piece that this step cuts is as wide and as tall")
                        .hint("name the measurements of the piece, as the table of pieces prints them")
                        .in_size(edition.size(), ""),
                );
            }
        }
    }
}

/// "The pockets are {…} wide and {…} high", where the one named is so high and so wide.
fn turned(edition: &Edition<'_>, passage: &Passage<'_>, sizes: &Cut, vocabulary: &Vocabulary, findings: &mut Findings) {
    let near = |one: f64, other: f64| (one - other).abs() <= NEAR;
    let cuts = |sentence: &[Token<'_>]| {
        vocabulary.verbs.get(Verb::Cut.word()).is_some_and(|verbs| any_of(sentence, verbs)) && !sizes.sizes.is_empty()
    };
    for sentence in passage.sentences().into_iter().filter(|sentence| !cuts(sentence)) {
        let figures: Vec<usize> = (0..sentence.len()).filter(|at| sentence[*at].brace.is_some()).collect();
        let [one, other] = figures[..] else { continue };
        let says = |at: usize, words: &[String]| sentence.get(at + 1).is_some_and(|next| words.contains(&next.word));
        let said = says(one, &vocabulary.wide) && says(other, &vocabulary.tall);
        let (Some(wide), Some(tall)) = (length(edition, &sentence[one]), length(edition, &sentence[other])) else {
            continue;
        };
        let sides: Vec<(f64, f64)> = named_rectangles(edition, sentence);
        let fits = |(across, down): &(f64, f64)| near(wide, *across) && near(tall, *down);
        let turned = |(across, down): &(f64, f64)| near(wide, *down) && near(tall, *across);
        if said
            && is_size(&sentence[one..=other], vocabulary)
            && !sides.iter().any(fits)
            && sides.iter().any(turned)
            && let Some(span) = place(&sentence[one..=other])
        {
            findings.push(
                CHECK
                    .at(span, "the piece is so high and so wide: the two figures changed places")
                    .hint("name the width first and the height behind it, as the outline of the piece has them")
                    .in_size(edition.size(), ""),
            );
        }
    }
}

/// Width and height of the rectangles whose names a sentence says, in mm: by their outlines, and as they are cut.
fn named_rectangles(edition: &Edition<'_>, sentence: &[Token<'_>]) -> Vec<(f64, f64)> {
    let mut sides = Vec::new();
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let Some(Outline::Rectangle { width, height, .. }) = &piece.outline else { continue };
        let leads = |leads: &Reference| leads.kind == ReferenceKind::Piece && leads.target == piece.id.text;
        let referred = sentence.iter().filter_map(|token| token.leads).any(leads);
        if !referred && !Spoken::of(&piece.name.text).all_in(sentence) {
            continue;
        }
        let value = |side: &BySize| {
            let worked = edition.values.quiet(side.get(edition.size())?)?;
            Some(to_f64(worked.quantity.value))
        };
        sides.extend(value(width).zip(value(height)));
        let rows = edition.cuts.iter().filter(|row| row.piece == id).filter_map(|row| row.dimensions.as_ref());
        sides.extend(rows.map(|(width, height)| (to_f64(width.exact.value), to_f64(height.exact.value))));
    }
    sides
}

/// "{…} long for the neck": a figure that another piece of the step has, and the named one has not.
fn exchanged(
    edition: &Edition<'_>,
    passage: &Passage<'_>,
    sizes: &Cut,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    let names: Vec<(&Size, Spoken)> =
        sizes.sizes.iter().map(|size| (size, Spoken::of(&edition.draft.facts.pieces[size.piece].name.text))).collect();
    for sentence in passage.sentences() {
        for at in 0..sentence.len() {
            let Some(figure) = length(edition, &sentence[at]) else { continue };
            let measures = |word: &String| vocabulary.tall.contains(word) || vocabulary.wide.contains(word);
            let [measure, joins, rest @ ..] = &sentence[at + 1..] else { continue };
            if !measures(&measure.word) || !vocabulary.meant_for.contains(&joins.word) || joins.gap != " " {
                continue;
            }
            let noun = rest.iter().take_while(|token| token.gap.trim().is_empty() && token.brace.is_none()).take(3);
            let said: Vec<&Token<'_>> = noun.collect();
            let of = |word: &str| {
                let all: Vec<&Size> = names.iter().filter(|(_, name)| name.has(word)).map(|(size, _)| *size).collect();
                all
            };
            // The word that one piece alone bears.
            let piece = |size: &&Size| size.piece;
            let Some(own) = said
                .iter()
                .map(|token| of(&token.word))
                .find(|all| !all.is_empty() && all.iter().all(|size| piece(size) == all[0].piece))
            else {
                continue;
            };
            let has = |size: &Size| (figure - size.across).abs() <= NEAR || (figure - size.down).abs() <= NEAR;
            let other = sizes.sizes.iter().find(|size| size.piece != own[0].piece && has(size));
            let Some(other) = other.filter(|_| !own.iter().any(|size| has(size))) else { continue };
            let (own, other) = (own[0].piece, other.piece);
            let called = |piece: PieceId| &edition.draft.facts.pieces[piece].name.text;
            findings.push(
                CHECK
                    .at(
                        sentence[at].span,
                        format!("“{}” is not cut so long or so wide; “{}” is", called(own), called(other)),
                    )
                    .hint("name the measurement of the piece, as the table of pieces prints it")
                    .in_size(edition.size(), ""),
            );
        }
    }
}

/// The piece that is referred to last before a figure; all of them where none is. None where it cannot be told.
fn meant(edition: &Edition<'_>, before: &[Token<'_>], cut: &Cut) -> Vec<Size> {
    let reference =
        before.iter().rev().filter_map(|token| token.leads).find(|leads| leads.kind == ReferenceKind::Piece);
    let Some(reference) = reference else { return if cut.whole { cut.sizes.clone() } else { Vec::new() } };
    let is = |size: &&Size| edition.draft.facts.pieces[size.piece].id.text == reference.target;
    cut.sizes.iter().filter(is).copied().collect()
}

/// "{…} square".
fn square(
    edition: &Edition<'_>,
    sentence: &[Token<'_>],
    sizes: &Cut,
    vocabulary: &Vocabulary,
    findings: &mut Findings,
) {
    for at in 1..sentence.len() {
        if !vocabulary.square.contains(&sentence[at].word) {
            continue;
        }
        let Some(side) = length(edition, &sentence[at - 1]) else { continue };
        let sizes = meant(edition, &sentence[..at - 1], sizes);
        let fits = sizes.iter().any(|size| (side - size.across).abs() <= NEAR && (side - size.down).abs() <= NEAR);
        let any_square = sizes.iter().any(|size| (size.across - size.down).abs() <= NEAR);
        if !fits
            && any_square
            && let Some(span) = place(&sentence[at - 1..=at])
        {
            findings.push(
                CHECK
                    .at(span, "no piece that this step cuts is a square of this size")
                    .hint("name the measurement of the piece, as the table of pieces prints it")
                    .in_size(edition.size(), ""),
            );
        }
    }
}

fn length(edition: &Edition<'_>, token: &Token<'_>) -> Option<f64> {
    let (formula, filter) = token.brace?;
    let worked = Scope::plain(&edition.values).work_out(formula, &mut Findings::default())?;
    (worked.quantity.dimension == Dimension::Length && filter.is_none()).then(|| to_f64(worked.quantity.value))
}

/// "{…} by {…}", "{…} wide and {…}".
fn is_size(tokens: &[Token<'_>], vocabulary: &Vocabulary) -> bool {
    let between: Vec<&str> = tokens[1..tokens.len() - 1].iter().map(|token| token.word.as_str()).collect();
    let between = between.join(" ");
    let plain = tokens.iter().skip(1).all(|token| token.gap.chars().all(char::is_whitespace));
    plain && vocabulary.between_sizes.contains(&between)
}
