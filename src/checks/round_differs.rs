//! A finished measurement round an edge is far from what the edges come to.
//!
//! ## Why it matters
//! A quarter that was taken for the whole, or a half for all of it, tells the maker of a hem or an opening that is twice
//! as wide as the one that she sews.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: width
//!   Height: height
//!   Side round the top: width
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: width
//!   Height: height
//!   Side round the top: 2 * width
//! ```
//!
//! ## Limits
//! Looks at rows whose name goes round (`round` in `templates/vocabulary-en.json`) an edge, by its name in the facts or on
//! the page, and names the pieces that have it by a word of their names. All copies count, on the line where they are sewn. Edges
//! that are sewn to something, gathered or taken in are passed over. Told is less than three quarters of them, since what
//! overlaps is taken off, and more than all of them.

use super::judge::{Judge, Subject};
use super::passage::{any_of, of_text, stem};
use super::spoken_names::Spoken;
use super::words::length;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, to_f64};
use crate::model::{Text, Verb};
use crate::resolve::{CopyId, EdgeId, Edition, PieceId, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("round-differs", Group::Facts, include_str!("round_differs.rs")).waivable_in(Home::Facts),
    run,
);

/// How much of the edges a measurement round them has at the least: the rest overlaps.
const LEAST: f64 = 0.75;
/// How much more it may have, for what a shape gives.
const MOST: f64 = 1.05;

/// Looks at every row of every size that goes round something.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for edition in subject.editions {
        for own in &edition.finished {
            let row = &subject.draft.facts.finished[own.row];
            let name = of_text(&row.name);
            let goes_round = any_of(&name.tokens, &subject.vocabulary.round);
            if !goes_round || row.sewn.is_some() || own.worked.quantity.dimension != Dimension::Length {
                continue;
            }
            let Some(sum) = round(edition, &row.name) else { continue };
            let value = to_f64(own.worked.quantity.value);
            if value >= sum * LEAST && value <= sum * MOST {
                continue;
            }
            let at = row.value.get(edition.size()).map_or(row.name.span, |formula| formula.span());
            findings.push(
                CHECK
                    .at(at, format!("“{}” is far from what its edges come to", row.name.text))
                    .hint(
                        "see whether a half or a quarter was taken for the whole; if it is meant, waive it and say why",
                    )
                    .in_size(
                        edition.size(),
                        format!("{} against {} in all", length(edition, value), length(edition, sum)),
                    ),
            );
        }
    }
}

/// What the edges that a name says come to, in mm; `None` where it says none, or one that is sewn to something.
fn round(edition: &Edition<'_>, name: &Text) -> Option<f64> {
    let said = of_text(name);
    let says = |word: &str| said.tokens.iter().any(|token| stem(&token.word) == stem(word));
    let mut edges: Vec<(CopyId, EdgeId)> = Vec::new();
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let of_piece = Spoken::of(&piece.name.text);
        if !said.tokens.iter().any(|token| of_piece.has(&token.word)) {
            continue;
        }
        for copy in edition.cast.of_piece(id) {
            edges.extend(edition.edges_of(copy).into_iter().filter_map(|edge| {
                let drawn = edition.drawn_word(copy, edge);
                let called = piece.edge_called(&drawn).unwrap_or_else(|| drawn.clone());
                (says(&called) || says(&drawn)).then_some((copy, edge))
            }));
        }
    }
    let shapes = |verb: Verb| {
        use Verb::{Box, Dart, Easestitch, Gather, Insert, Pleat, Sew, Tuck};
        matches!(verb, Box | Dart | Easestitch | Gather | Insert | Pleat | Sew | Tuck)
    };
    let works = || edition.steps().flat_map(|step| &step.works).filter(|work| shapes(work.verb));
    let shaped = |of: &(CopyId, EdgeId)| {
        works().flat_map(|work| work.touched()).any(|touched| touched == Touched::Edge(of.0, of.1))
    };
    if edges.is_empty() || edges.iter().any(shaped) {
        return None;
    }
    edges.iter().map(|(copy, edge)| edition.edge(*copy, *edge).map(|edge| edge.seam_length)).sum()
}
