//! Two things of one size have the same name on the page.
//!
//! ## Why it matters
//! The maker reads “Strap” twice in one list and in one step, and cannot tell which of the two is meant. She cuts the
//! wrong one, or takes one of them for a slip and leaves it out.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     grain: vertical
//!     cut:
//!       outer: {front: Side, back: Side}
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     grain: vertical
//!     cut:
//!       outer: {front: Front side, back: Back side}
//! ```
//!
//! ## Limits
//! Looks at sizes of one view, fabrics, notions, pieces, copies, tools, explained words, and the rows of `body:` and
//! `finished:`, each among their like; capitals and spaces make no difference. Things that no size has together may
//! share a name.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Facts, Piece, is_for};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("display-name-twice", Group::Facts, include_str!("display_name_twice.rs")).waivable_in(Home::Facts),
    run,
);

/// A name on the page, where it stands, and the sizes that have it; `None` for all.
struct Named {
    name: String,
    span: Span,
    sizes: Option<Vec<usize>>,
}

/// Looks at all names, list by list.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (what, names) in lists(&subject.draft.facts) {
        for (at, one) in names.iter().enumerate() {
            let twin = names[..at].iter().find(|other| alike(&other.name, &one.name) && meet(other, one));
            let Some(twin) = twin else { continue };
            findings.push(
                CHECK
                    .at(one.span, format!("two {what} are called “{}”", one.name))
                    .hint("give each the name by which the maker tells it from the other")
                    .note(twin.span, "the first one"),
            );
        }
    }
}

fn lists(facts: &Facts) -> Vec<(&'static str, Vec<Named>)> {
    let named = |name: &str, span: Span, sizes: Option<&Vec<usize>>| Named {
        name: name.to_owned(),
        span,
        sizes: sizes.cloned(),
    };
    let view =
        |at: usize| (0..facts.sizes.len()).filter(move |other| facts.sizes[at].shares_view(&facts.sizes[*other]));
    let sizes = facts.sizes.iter().enumerate();
    let sizes = sizes.map(|(at, one)| named(&one.name, one.name_at, Some(&view(at).collect())));
    let fabrics = facts.fabrics.iter().map(|one| named(&one.name.text, one.name.span, one.sizes.as_ref()));
    let notions = facts.notions.iter().map(|one| named(&one.name.text, one.name.span, one.sizes.as_ref()));
    let pieces = facts.pieces.iter().map(|one| named(&one.name.text, one.name.span, one.sizes.as_ref()));
    let tools = facts.tools.iter().map(|one| named(&one.name.text, one.name.span, None));
    let words = facts.words.iter().map(|one| named(&one.term.text, one.term.span, None));
    let body = facts.body.iter().map(|one| named(&one.name.text, one.name.span, None));
    let finished = facts.finished.iter().map(|one| named(&one.name.text, one.name.span, one.sizes.as_ref()));
    vec![
        ("sizes", sizes.collect()),
        ("fabrics", fabrics.collect()),
        ("notions", notions.collect()),
        ("pieces", pieces.collect()),
        ("copies", facts.pieces.iter().flat_map(|piece| copies(piece, facts.sizes.len())).collect()),
        ("tools", tools.collect()),
        ("explained words", words.collect()),
        ("body measurements", body.collect()),
        ("finished measurements", finished.collect()),
    ]
}

/// The copies of a piece that have names of their own.
fn copies(piece: &Piece, sizes: usize) -> Vec<Named> {
    let mut all = Vec::new();
    for cut in &piece.cut {
        let both = |size: &usize| is_for(piece.sizes.as_ref(), *size) && is_for(cut.sizes.as_ref(), *size);
        let own: Vec<usize> = (0..sizes).filter(both).collect();
        for copy in cut.names() {
            let called = piece.copy_names.iter().find(|(name, _)| name.span == copy.span);
            let span = called.map_or(copy.span, |(_, called)| called.span);
            all.push(Named { name: piece.copy_called(&copy.text), span, sizes: Some(own.clone()) });
        }
    }
    all
}

fn alike(one: &str, other: &str) -> bool {
    let plain = |name: &str| name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    plain(one) == plain(other)
}

fn meet(one: &Named, other: &Named) -> bool {
    match (&one.sizes, &other.sizes) {
        (Some(own), sizes) | (sizes, Some(own)) => own.iter().any(|size| is_for(sizes.as_ref(), *size)),
        (None, None) => true,
    }
}
