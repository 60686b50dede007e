//! Strips that are sewn to an edge and then laid round it: they take nothing off what they enclose.

use super::state::{Seam, State};
use crate::measure::to_f64;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Edition, Touched};

/// How wide a strip is at the most that is laid round an edge, in allowances: double binding is cut six times as wide
/// as it shows, and a little more for thick cloth (common practice, no source).
const WIDEST: f64 = 6.7;

/// How much longer than wide a strip is at the least (common practice, no source).
const SLENDER: f64 = 3.0;

/// Whether a strip is laid round the edge that it is sewn to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wrapped {
    /// Another piece, or a strip too wide for it.
    No,
    /// A strip that is narrow enough, and nothing tells.
    Perhaps,
    /// A strip that later work binds the edge with.
    Yes,
}

/// Whether a copy is a strip that is narrow enough to be laid round an edge at an allowance in mm.
pub(super) fn is_narrow(edition: &Edition<'_>, copy: CopyId, allowance: f64) -> bool {
    let lengths = edition.edges_of(copy).into_iter().filter_map(|edge| Some(edition.edge(copy, edge)?.cut_length));
    let lengths: Vec<f64> = lengths.collect();
    let wide = lengths.iter().copied().fold(f64::MAX, f64::min);
    let long = lengths.iter().copied().fold(0.0, f64::max);
    lengths.len() == 4 && wide <= WIDEST * allowance && long >= SLENDER * wide
}

/// Whether one of the edges of a seam at an allowance in mm is that of a strip narrow enough for a copy.
pub(super) fn by_any(edition: &Edition<'_>, copy: CopyId, edges: &[(CopyId, EdgeId)], allowance: f64) -> bool {
    let piece = edition.cast[copy].piece;
    edges.iter().any(|(other, _)| edition.cast[*other].piece != piece && is_narrow(edition, *other, allowance))
}

/// Whether the seam of an edge at an allowance in mm holds a strip that is laid round it.
pub(super) fn wrapped(
    edition: &Edition<'_>,
    state: &State,
    (copy, edge): (CopyId, EdgeId),
    seam: &Seam,
    allowance: f64,
) -> Wrapped {
    let piece = edition.cast[copy].piece;
    let strip = seam
        .members
        .iter()
        .filter_map(Touched::copy)
        .find(|other| edition.cast[*other].piece != piece && is_narrow(edition, *other, allowance));
    let Some(strip) = strip else { return Wrapped::No };
    let binds = state.bindings.iter().any(|binding| binding.bound > seam.sewn && binding.strips.contains(&strip));
    let later = || {
        let mut works = edition.steps().filter(|step| step.number >= seam.sewn.step).flat_map(|step| &step.works);
        works.any(|work| work.verb == Verb::Bind && work.touched().any(|touched| touched == Touched::Edge(copy, edge)))
    };
    if binds || later() { Wrapped::Yes } else { Wrapped::Perhaps }
}

/// The allowance of a seam, in mm.
pub(super) fn taken(edition: &Edition<'_>, seam: &Seam) -> Option<f64> {
    let work = super::fault::Moment::work_of(edition, seam.sewn)?;
    work.allowance.map(|worked| to_f64(worked.quantity.value))
}
