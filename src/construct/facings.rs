//! Facings, and folded layers that others are stitched down with: what lies covered in the end.

use std::collections::BTreeSet;

use super::deed::{self, Side};
use super::fault::Moment;
use super::player::{Player, edges};
use super::state::Seam;
use crate::resolve::{CopyId, EdgeId, Touched};

/// How much smaller than the other side of its seam a facing is at least, as a share of its area (common practice, no
/// source).
const SMALLER: f64 = 0.9;

impl Player<'_> {
    /// Takes down as facings the side of a seam that a fact names, where it is smaller than the other.
    pub fn face(&mut self, seam: usize, named: &BTreeSet<CopyId>) {
        let sewn = self.state.seams[seam].sewn;
        let Some(work) = Moment::work_of(self.edition, sewn) else { return };
        let sides = deed::sides(work, &BTreeSet::new());
        let (own, others): (Vec<Side>, Vec<Side>) =
            sides.into_iter().partition(|side| side.iter().any(|(copy, _)| named.contains(copy)));
        let copies = |sides: &[Side]| -> BTreeSet<CopyId> { sides.iter().flatten().map(|(copy, _)| *copy).collect() };
        let (own, others) = (copies(&own), copies(&others));
        let area = |copies: &BTreeSet<CopyId>| -> f64 {
            let shapes = copies.iter().filter_map(|copy| self.edition.values.whole(self.edition.cast[*copy].piece));
            shapes.map(|shape| shape.area()).sum()
        };
        if !others.is_empty() && area(&own) < SMALLER * area(&others) {
            own.into_iter().for_each(|copy| self.state.copies[copy].faces = true);
        }
    }

    /// Folded edges that a row of stitches on another layer catches: those of a layer that is sewn to it all round but
    /// for the edge at which it is sewn on.
    pub fn caught_beside(&self, target: &Touched) -> Vec<Touched> {
        let (copy, word) = match target {
            Touched::Copy(copy) => (*copy, None),
            Touched::Edge(copy, edge) => (*copy, Some(self.edition.edge_word(*copy, *edge))),
            _ => return Vec::new(),
        };
        let sewn = self.state.seams.iter().map(|seam| edges(&seam.members));
        let beside: BTreeSet<CopyId> = sewn
            .filter(|held| held.iter().any(|(with, _)| *with == copy))
            .flat_map(|held| held.into_iter().map(|(with, _)| with))
            .filter(|with| *with != copy && self.state.copies[*with].turned.is_some())
            .collect();
        let caught = beside.into_iter().filter_map(|layer| {
            let edge = self.left_folded(layer, copy)?;
            let called = self.edition.edge_word(layer, edge);
            let sewn_on = self.edge_called(copy, &called).is_some_and(|edge| self.state.is_sewn(copy, edge));
            let named = word.as_ref().is_none_or(|word| *word == called);
            (sewn_on && named).then_some(Touched::Edge(layer, edge))
        });
        caught.collect()
    }

    /// The one edge of a layer that is folded in, where all others are sewn to another copy.
    fn left_folded(&self, layer: CopyId, copy: CopyId) -> Option<EdgeId> {
        let joined = |edge: &EdgeId| {
            let own = (layer, *edge);
            let held = |seam: &Seam| {
                let held = edges(&seam.members);
                held.contains(&own) && held.iter().any(|(with, _)| *with == copy)
            };
            self.state.seams.iter().any(held)
        };
        let mut left = self.edition.edges_of(layer).into_iter().filter(|edge| !joined(edge));
        let edge = left.next().filter(|_| left.next().is_none())?;
        let folded = self.state.known_edge(layer, edge).is_some_and(|known| known.folded.is_some());
        folded.then_some(edge)
    }

    /// Whether a layer that is sewn on with an edge's copy, something between them, is folded over the edge's seam and
    /// stitched down, as the outer yoke of two.
    pub fn is_folded_over(&self, (copy, edge): (CopyId, EdgeId), sewn: Moment) -> bool {
        let word = self.edition.edge_word(copy, edge);
        let between = self.state.seams.iter().map(|seam| edges(&seam.members)).filter(|held| {
            let copies: BTreeSet<CopyId> = held.iter().map(|(copy, _)| *copy).collect();
            copies.len() > 2 && copies.contains(&copy)
        });
        let mut over = between.flat_map(|held| {
            let own: Vec<String> =
                held.iter().filter(|(with, _)| *with == copy).map(|of| self.edition.edge_word(of.0, of.1)).collect();
            held.into_iter().filter(move |of| of.0 != copy && own.contains(&self.edition.edge_word(of.0, of.1)))
        });
        over.any(|(layer, _)| {
            let same = self.edge_called(layer, &word);
            let known = same.and_then(|edge| self.state.known_edge(layer, edge));
            known.is_some_and(|known| known.held && known.topstitched.is_some_and(|stitched| stitched > sewn))
        })
    }
}
