//! A piece is sewn on at a mark that is drawn for another piece.
//!
//! ## Why it matters
//! The mark on the sheet has the outline of one piece. Another one does not fit there: its edges lie beside the
//! lines, or it covers what should be seen.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     grain: vertical
//!     marks: {patch_place: {outline: patch, at: [3 cm, 3 cm]}}
//!     cut: {outer: [front, back]}
//!   patch: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: 1}}
//!   badge: {outline: {rectangle: [8 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the patch on {#patch-on}
//!
//! ```work
//! - cut: [patch, badge]
//! - {topstitch: [badge, front.patch_place], stitch: 3 mm}
//! - {topstitch: [patch, back], stitch: 3 mm}
//! ```
//!
//! Sew the patch and the badge on.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     grain: vertical
//!     marks: {patch_place: {outline: patch, at: [3 cm, 3 cm]}}
//!     cut: {outer: [front, back]}
//!   patch: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: 1}}
//!   badge: {outline: {rectangle: [8 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the patch on {#patch-on}
//!
//! ```work
//! - cut: [patch, badge]
//! - {topstitch: [patch, front.patch_place], stitch: 3 mm}
//! - {topstitch: [badge, back], stitch: 3 mm}
//! ```
//!
//! Sew the patch and the badge on.
//! ````
//!
//! ## Limits
//! Only for marks with the `outline` of a piece. That such an outline lies on the piece is held by `off-piece`.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{MarkPlace, Name};
use crate::resolve::{Edition, EditionWork, Inside, Meant, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("mark-of-another", Group::Work, include_str!("mark_of_another.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every work fact of one size.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let facts = &edition.draft.facts;
    for work in edition.steps().flat_map(|step| &step.works) {
        let Some((host, mark, drawn)) = outlined(edition, work) else { continue };
        let laid = work.targets.iter().filter_map(|target| Some((target, target.piece(&edition.cast)?)));
        let laid: Vec<_> = laid.filter(|(_, piece)| *piece != host).collect();
        if laid.iter().any(|(_, piece)| facts.pieces[*piece].id.text == drawn.text) {
            continue;
        }
        if let Some((target, _)) = laid.first() {
            let own = target.name.text.split('.').next().unwrap_or(&target.name.text);
            findings.push(
                CHECK
                    .at(
                        target.name.span,
                        format!("`{own}` is laid at `{}`, which is drawn for `{}`", mark.text, drawn.text),
                    )
                    .hint(format!(
                        "name a copy of `{}` here, or give the mark the outline of what is laid there",
                        drawn.text
                    ))
                    .note(mark.span, "the mark")
                    .in_size(edition.size(), ""),
            );
        }
    }
}

/// The piece that has the mark which a fact names, the mark, and the piece that it is drawn for.
fn outlined<'a>(edition: &Edition<'a>, work: &EditionWork<'_>) -> Option<(PieceId, &'a Name, &'a Name)> {
    work.targets.iter().find_map(|target| {
        let Meant::Inside(owner, all) = &target.meant else { return None };
        let host = owner.piece(&edition.cast);
        all.iter().find_map(|inside| {
            let Inside::Mark(at) = inside else { return None };
            let mark = &edition.draft.facts.pieces[host].marks[*at];
            match &mark.place {
                MarkPlace::Outline { piece, .. } => Some((host, &mark.name, piece)),
                _ => None,
            }
        })
    })
}
