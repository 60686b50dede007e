//! Inward curves: those so tight that their allowances have to be cut before they lie flat.

use super::player::Player;
use crate::geometry::Along;
use crate::measure::ratio;
use crate::resolve::{CopyId, EdgeId};

/// Into how many stretches a curve is taken apart.
const STRETCHES: i128 = 24;
/// How far a curve turns at the least to ask for it, in radians: an eighth of a circle.
const TURN: f64 = std::f64::consts::FRAC_PI_4;
/// A sharper turn between two stretches is a corner and no curve, in radians: 30 degrees.
const CORNER: f64 = std::f64::consts::FRAC_PI_6;
/// The widest curve that asks for it, in mm from its middle (common practice, no source: necklines and
/// scallops are clipped, a hem or a long princess line is not).
const WIDEST: f64 = 120.0;

impl Player<'_> {
    /// Whether an edge curves inwards, and tightly.
    pub fn is_tight_hollow(&self, copy: CopyId, edge: EdgeId) -> bool {
        let Some(shape) = self.edition.values.whole(self.edition.cast[copy].piece) else { return false };
        let edge = &shape.edges()[edge.at()];
        let points: Vec<([f64; 2], [f64; 2])> = (0..=STRETCHES)
            .filter_map(|at| shape.point_at(&edge.name, Along::Fraction(ratio(at, STRETCHES)?)))
            .map(|point| (point.at, point.inward))
            .collect();
        let mut turns: Vec<f64> = Vec::new();
        turns.extend(points.windows(3).map(|three| {
            let walk = |from: usize| [0, 1].map(|axis| three[from + 1].0[axis] - three[from].0[axis]);
            let (one, two) = (walk(0), walk(1));
            let turned = (one[0] * two[1] - one[1] * two[0]).atan2(one[0] * two[0] + one[1] * two[1]).abs();
            // The walk bends towards the middle of the curve: outside the piece where it is hollow.
            let bend = (two[0] - one[0]) * three[1].1[0] + (two[1] - one[1]) * three[1].1[1];
            if bend < 0.0 { turned } else { -turned }
        }));
        let hollow: f64 = turns.iter().sum();
        turns.iter().all(|turn| turn.abs() < CORNER) && hollow >= TURN && edge.length / hollow <= WIDEST
    }
}
