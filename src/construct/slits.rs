//! Slits: lines along which a piece is cut open, and whether their edges stay raw.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::fault::Fault;
use super::lengths::TOLERANCE;
use super::player::Player;
use crate::resolve::{CopyId, EdgeId, Inside, MarkAt, Touched};

/// Takes down that pieces are cut open along lines marked on them.
pub(super) fn slash(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for (copy, mark) in slits(deed) {
        player.handle(copy, deed.moment);
        player.state.slits.entry((copy, mark)).or_default().cut.get_or_insert(deed.moment);
    }
}

/// Takes down that slits are bound, hemmed or finished, which needs them open; or, `faced`, that something is sewn
/// along them, open or not.
pub(super) fn neaten(player: &mut Player<'_>, deed: &Deed<'_, '_>, faced: bool) {
    for at in slits(deed) {
        let slit = player.state.slits.entry(at).or_default();
        slit.neat |= faced || slit.cut.is_some();
        if !faced {
            slit.bound.get_or_insert(deed.moment);
        }
    }
}

/// A strip that is too short to bind both sides of a slit.
pub(super) fn check_strip(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let long = |copy: CopyId, edges: Vec<EdgeId>| {
        let lengths = edges.into_iter().filter_map(|edge| Some(player.edition.edge(copy, edge)?.cut_length));
        Some((copy, lengths.reduce(f64::max)?))
    };
    let strip = deed.targets.iter().find_map(|target| match target {
        Touched::Copy(copy) => long(*copy, player.edition.edges_of(*copy)),
        Touched::Edge(copy, edge) => long(*copy, vec![*edge]),
        _ => None,
    });
    let (Some((strip, length)), Some((copy, mark))) = (strip, slits(deed).first().copied()) else { return };
    let piece = player.edition.cast[copy].piece;
    let Some(Some(MarkAt::Line { ends: [from, to], .. })) = player.edition.values.marks(piece).get(mark) else {
        return;
    };
    let both = 2.0 * from.distance(*to);
    if length < both - TOLERANCE {
        let other = player.edition.cast[strip].piece;
        player.faults.push(Fault::LengthsDiffer {
            pieces: (piece.min(other), piece.max(other)),
            first: (player.edition.inside_name(copy, Inside::Mark(mark)), both),
            second: (player.edition.cast[strip].name.clone(), length),
            eased: 0.0,
            both: None,
            sewn: deed.moment,
        });
    }
}

/// Slits whose edges are raw in the end, and those that are bound before they are there.
pub(super) fn judge(player: &mut Player<'_>) {
    let raw = player.state.slits.iter().filter(|(_, slit)| !slit.neat);
    let meant = raw.filter(|((copy, _), _)| {
        let piece = &player.edition.draft.facts.pieces[player.edition.cast[*copy].piece];
        !piece.raw.iter().any(|raw| raw.text == "all")
    });
    let mut told: BTreeSet<_> = BTreeSet::new();
    let faults: Vec<Fault> = meant
        .filter(|(_, slit)| told.insert((slit.cut, slit.bound)))
        .map(|((copy, mark), slit)| Fault::SlitRaw {
            name: player.edition.inside_name(*copy, Inside::Mark(*mark)),
            slashed: slit.cut,
            bound: slit.bound,
        })
        .collect();
    player.faults.extend(faults);
}

fn slits(deed: &Deed<'_, '_>) -> Vec<(CopyId, usize)> {
    let marks = deed.targets.iter().filter_map(|target| match target {
        Touched::Inside(copy, Inside::Mark(at)) => Some((*copy, *at)),
        _ => None,
    });
    marks.collect()
}

impl Player<'_> {
    /// Whether one of these copies is cut open inside, so that a hand passes.
    pub fn has_slit<'c>(&self, mut copies: impl Iterator<Item = &'c CopyId>) -> bool {
        copies.any(|copy| self.state.slits.iter().any(|((with, _), slit)| with == copy && slit.cut.is_some()))
    }
}
