//! How an edge lies in its piece: which way it runs round it, and what meets it at its ends.

use super::player::Player;
use crate::geometry::{Along, Shape};
use crate::measure::Exact;
use crate::resolve::{CopyId, EdgeId};

/// How far two corners may lie apart and still be one, in mm.
pub(super) const SAME_CORNER: f64 = 0.5;

impl Player<'_> {
    /// Whether an edge is counted clockwise as its piece lies right side up, and whether it runs rather up than across;
    /// `None` where its outline is not known.
    pub fn clockwise(&self, (copy, edge): (CopyId, EdgeId)) -> Option<(bool, bool)> {
        let member = &self.edition.cast[copy];
        let shape = self.edition.values.whole(member.piece)?;
        let edge = shape.edges().get(edge.at())?.name.as_str();
        let at = |share: Exact| shape.point_at(edge, Along::Fraction(share));
        let (here, next) = (at(Exact::of::<500, 1000>())?, at(Exact::of::<501, 1000>())?);
        let walk = [next.at[0] - here.at[0], next.at[1] - here.at[1]];
        // Walking clockwise as seen, the inside is at the right hand.
        let inside = here.inward[0] * -walk[1] + here.inward[1] * walk[0] > 0.0;
        Some((inside != member.mirrored, walk[1].abs() > walk[0].abs()))
    }

    /// The edges that meet an edge at its two ends, clockwise as its piece lies right side up, by the names that they
    /// have on the drawing; `None` where nothing meets it, as at a fold.
    pub fn corners(&self, of: (CopyId, EdgeId)) -> Option<[String; 2]> {
        let shape = self.edition.values.whole(self.edition.cast[of.0].piece)?;
        let own = &shape.edges().get(of.1.at())?.name;
        let [first, last] = ends(shape, own)?;
        let beside = |corner: [f64; 2]| {
            let mut others = shape.edges().iter().filter(|other| other.name != *own && !other.on_fold);
            others.find(|other| meets(shape, &other.name, corner)).map(|other| other.drawn.clone())
        };
        let (first, last) = (beside(first)?, beside(last)?);
        let (counted, _) = self.clockwise(of)?;
        Some(if counted { [first, last] } else { [last, first] })
    }
}

/// The two ends of an edge, as it is counted.
pub(super) fn ends(shape: &Shape, edge: &str) -> Option<[[f64; 2]; 2]> {
    let at = |share| shape.point_at(edge, Along::Fraction(share)).map(|point| point.at);
    Some([at(Exact::ZERO)?, at(Exact::ONE)?])
}

/// Whether an edge ends in a corner.
pub(super) fn meets(shape: &Shape, edge: &str, corner: [f64; 2]) -> bool {
    let near = |end: &[f64; 2]| (end[0] - corner[0]).hypot(end[1] - corner[1]) < SAME_CORNER;
    ends(shape, edge).is_some_and(|ends| ends.iter().any(near))
}
