//! The first layout by outlines, and the last touch: pieces laid one after the other where they end
//! nearest to the start.

use super::field::Field;
use super::heap::{Heap, Spot};

/// Lines tried across the strip.
const LINES: u32 = 40;
/// A gain smaller than this, in mm, is none.
const GAIN: f64 = 1e-3;

/// The best of a few orders: by area, by length, by width.
pub(super) fn first(field: &mut Field, width: f64) -> Vec<Spot> {
    let count = field.poses.len();
    let tallest = field.bodies.iter().map(|body| body.sides[1]).fold(0.0, f64::max);
    let spots: Vec<Spot> = field.poses.iter().map(|poses| Spot { body: poses[0], at: [0.0, 0.0] }).collect();
    let side = |axis: usize| -> Vec<f64> {
        let own = |spot: &Spot| field.bodies[spot.body].sides[axis];
        spots.iter().map(own).collect()
    };
    let measures = [field.areas.clone(), side(1), side(0)];
    let mut best: Option<(f64, Vec<Spot>)> = None;
    for measure in measures {
        let mut order: Vec<usize> = (0..count).collect();
        order.sort_by(|a, b| measure[*b].total_cmp(&measure[*a]));
        let mut heap = Heap::new(field, [width, tallest * (count + 1) as f64], spots.clone());
        heap.up.fill(true);
        for piece in order {
            heap.lay(piece);
            heap.up[piece] = false;
        }
        let end = heap.end();
        if best.as_ref().is_none_or(|kept| end < kept.0 - GAIN) {
            best = Some((end, heap.spots));
        }
    }
    best.map_or(Vec::new(), |best| best.1)
}

impl Heap<'_> {
    /// Lays a piece that is taken up where it ends nearest to the start.
    fn lay(&mut self, piece: usize) {
        // Behind all others there is room in any case.
        let (mut best, mut there) = (f64::INFINITY, self.spots[piece]);
        for pose in 0..self.field.poses[piece].len() {
            let body = self.field.poses[piece][pose];
            let room = self.room(body, 0);
            let lines = if self.field.on_fold[piece] || room == 0.0 { 0 } else { LINES };
            for line in 0..=lines {
                let x = if lines == 0 { 0.0 } else { room * f64::from(line) / f64::from(lines) };
                let spot = self.best_along(piece, body, 1, x);
                let end = spot.at[1] + self.field.bodies[body].sides[1];
                if end < best - GAIN && self.weight(piece, spot, 0.0) == 0.0 {
                    (best, there) = (end, spot);
                }
            }
        }
        if best == f64::INFINITY {
            let laid = (0..self.spots.len()).filter(|other| !self.up[*other]);
            there.at = [0.0, laid.map(|other| self.end_of(other)).fold(0.0, f64::max)];
        }
        self.spots[piece] = there;
    }

    /// Brings pieces that do not overlap nearer to the start, and then further to the left.
    pub(super) fn settle(&mut self) {
        self.weigh_alike();
        for _ in 0..4 {
            let mut order: Vec<usize> = (0..self.spots.len()).collect();
            order.sort_by(|a, b| self.end_of(*a).total_cmp(&self.end_of(*b)));
            let mut moved = false;
            for piece in order {
                let ways: &[usize] = if self.field.on_fold[piece] { &[1] } else { &[1, 0, 1, 0] };
                for &axis in ways {
                    let here = self.spots[piece];
                    let spot = self.best_along(piece, here.body, axis, here.at[1 - axis]);
                    if spot.at[axis] < here.at[axis] - GAIN && self.weight(piece, spot, 0.0) == 0.0 {
                        self.spots[piece] = spot;
                        moved = true;
                    }
                }
            }
            if !moved {
                return;
            }
        }
    }
}
