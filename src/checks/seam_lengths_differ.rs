//! Two edges that are sewn together do not have one length.
//!
//! ## Why it matters
//! The maker reaches the end of the seam with one layer left over. She will doubt her cutting
//! before she doubts the booklet.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Measures edges on the stitching line and on the cutting line, to a millimetre (common practice,
//! no source); it is enough that they agree on one. One long edge against several in a row is in
//! order when the several come to it. `ease:` allows a difference, `gather:` says what length the
//! longer edge is gathered to. Zips and whole pieces are not measured.

use super::apart::Told;
use super::judge::Judge;
use crate::construct::Moment;
use crate::construct::{Fault, History};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("seam-lengths-differ", Group::Work, include_str!("seam_lengths_differ.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    // A piece that is too short does not fit at any of its seams: one finding tells them all.
    let mut told: Vec<((PieceId, PieceId), Vec<Moment>, Finding)> = Vec::new();
    for fault in &history.faults {
        let Fault::LengthsDiffer { pieces, first, second, eased, both, sewn } = fault else { continue };
        let edges = format!("`{}` and `{}`", first.0, second.0);
        if let Some((_, moments, finding)) = told.iter_mut().find(|(known, ..)| known == pieces) {
            if !moments.contains(sewn) {
                moments.push(*sewn);
                finding.notes.push((sewn.verb, format!("nor do {edges} in step {}", sewn.step)));
            }
            continue;
        }
        let told_apart = Told::lengths(edition, first.1, second.1);
        let mut detail = format!("{} against {}{}", told_apart.one, told_apart.other, told_apart.apart);
        if *eased > 0.0 {
            let ease = Told::lengths(edition, (first.1 - second.1).abs(), *eased);
            if told_apart.apart.is_empty() && !ease.apart.is_empty() {
                detail = format!("{detail}, {} apart", ease.one);
            }
            detail = format!("{detail}, more than the ease of {}", ease.other);
        }
        let finding = CHECK.at( sewn.verb, format!("{edges} are sewn together and differ in length"))
            .hint(match both {
                Some(piece) => format!(
                    "`{piece}` means all of its copies: give each a name under `cut:`, and name the one that is meant"
                ),
                None => "mend the piece that is wrong; where one edge is meant to be longer, say how much with `ease:` or `gather:`".to_owned(),
            })
            .in_size(edition.size(), detail);
        told.push((*pieces, vec![*sewn], finding));
    }
    findings.extend(told.into_iter().map(|(.., finding)| finding));
}
