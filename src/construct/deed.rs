//! One work fact as it is played.

use std::collections::BTreeSet;

use super::fault::Moment;
use super::player::Player;
use crate::resolve::{CopyId, EdgeId, EditionWork, Placed, Touched};

/// What is sewn as one length: an edge, or edges that follow each other.
pub(super) type Side = Vec<(CopyId, EdgeId)>;

/// A work fact with what it touches, and when.
pub(super) struct Deed<'d, 'e> {
    pub work: &'d EditionWork<'e>,
    /// As written, in the author's order.
    pub targets: Vec<Touched>,
    /// The same with the layers that count as one with them.
    pub all: Vec<Touched>,
    /// What its stitches catch beside.
    pub caught: Vec<Touched>,
    /// The copies among all of these, and those whose edges they name.
    pub touched: BTreeSet<CopyId>,
    /// Layers of others that its names mean as well: their edges are the others'.
    layers: BTreeSet<CopyId>,
    pub moment: Moment,
}

impl<'d, 'e> Deed<'d, 'e> {
    pub fn of(work: &'d EditionWork<'e>, moment: Moment, player: &Player<'_>) -> Deed<'d, 'e> {
        let layers = player.layers_in(work);
        let on = |touched: &Touched| touched.copy().is_none_or(|copy| !layers.contains(&copy));
        let targets: Vec<Touched> = work.touched().filter(on).collect();
        let mut all = targets.clone();
        for fellow in targets.iter().flat_map(|target| player.fellows(target)) {
            if !all.contains(&fellow) {
                all.push(fellow);
            }
        }
        let mut caught: Vec<Touched> = work.caught.iter().flat_map(|target| target.touched.iter().copied()).collect();
        let fellows: Vec<Touched> = caught.iter().flat_map(|target| player.fellows(target)).collect();
        caught.extend(fellows);
        let touched = all.iter().chain(&caught).filter_map(Touched::copy).collect();
        Deed { work, targets, all, caught, touched, layers, moment }
    }

    /// The places that it names: where it begins and ends, and where a gap lies.
    pub fn places(&self) -> impl Iterator<Item = &Placed<'e>> {
        self.work.part.iter().chain([&self.work.leave_at]).flatten()
    }

    /// The sides of a seam: edges in a row are one, every other edge is one by itself.
    pub fn sides(&self) -> Vec<Side> {
        sides(self.work, &self.layers)
    }
}

/// The sides of a fact, some layers left out.
pub(super) fn sides(work: &EditionWork<'_>, without: &BTreeSet<CopyId>) -> Vec<Side> {
    let mut sides: Vec<(Option<usize>, Side)> = Vec::new();
    for target in &work.targets {
        for touched in &target.touched {
            let Touched::Edge(copy, edge) = touched else { continue };
            if without.contains(copy) {
                continue;
            }
            match sides.last_mut().filter(|(row, _)| row.is_some() && *row == target.row) {
                Some((_, side)) => side.push((*copy, *edge)),
                None => sides.push((target.row, vec![(*copy, *edge)])),
            }
        }
    }
    sides.into_iter().map(|(_, side)| side).collect()
}
