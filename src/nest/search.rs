//! The search for a short strip: shrink it, pull the pieces apart, and shrink it again.

use super::field::Field;
use super::heap::{Heap, Spot};
use super::random::Random;
use super::separate::Patience;

/// Lays every piece, the largest first, where it ends nearest to the start.
pub(super) fn first(field: &mut Field, width: f64) -> Vec<Spot> {
    let count = field.poses.len();
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|a, b| field.areas[*b].total_cmp(&field.areas[*a]));
    let length = field.bodies.iter().map(|body| body.height).fold(0.0, f64::max) * (count + 1) as f64;
    let spots = field.poses.iter().map(|poses| Spot { body: poses[0], at: [0.0, 0.0] }).collect();
    let mut heap = Heap::new(field, width, length, spots);
    heap.up.fill(true);
    for piece in order {
        let mut best: Option<(f64, Spot)> = None;
        for body in heap.field.poses[piece].clone() {
            let room = heap.room(body, 0);
            let parts = if heap.field.on_fold[piece] { 0 } else { 40 };
            for part in 0..=parts {
                let x = if parts == 0 { 0.0 } else { room * f64::from(part) / f64::from(parts) };
                let y = heap.best_along(piece, body, 1, x);
                let spot = Spot { body, at: [x, y] };
                let end = y + heap.size(body, 1);
                if best.is_none_or(|kept| end < kept.0) && heap.weigh(piece, spot, 0.0) == 0.0 {
                    best = Some((end, spot));
                }
            }
        }
        if let Some((_, spot)) = best {
            heap.spots[piece] = spot;
        }
        heap.up[piece] = false;
    }
    heap.spots
}

pub static mut TRACE: bool = false;
pub static mut SHRINK: f64 = 0.01;
pub static mut ROUNDS: usize = 100;
pub static mut TRIES: usize = 3;
pub static mut SHARE: f64 = 0.8;

fn end(heap: &Heap) -> f64 {
    heap.spots.iter().map(|spot| spot.at[1] + heap.size(spot.body, 1)).fold(0.0, f64::max)
}

pub(super) fn shrink(field: &mut Field, width: f64, spots: Vec<Spot>, least: f64, budget: u64) -> Vec<Spot> {
    let mut random = Random::new(spots.len() as u64 + 1);
    let mut best = spots.clone();
    let mut heap = Heap::new(field, width, 0.0, spots);
    let mut length = end(&heap);
    let patience = Patience { rounds: unsafe { ROUNDS }, tries: unsafe { TRIES } };
    let explore = (budget as f64 * unsafe { SHARE }) as u64;
    let mut rate = unsafe { SHRINK };
    let mut fails = 0;
    while heap.steps < explore {
        heap.length = length * (1.0 - rate);
        if heap.length < least { heap.length = least; }
        heap.clamp();
        if heap.separate(patience, explore, &mut random) {
            best.clone_from(&heap.spots);
            length = end(&heap);
            fails = 0;
            if unsafe { TRACE } {
                eprintln!("{:>10} {length:.2}", heap.steps);
            }
            if length <= least + heap.field.touch {
                return best;
            }
        } else {
            fails += 1;
            if unsafe { TRACE } {
                eprintln!("{:>10} fail {:.2}", heap.steps, heap.length);
            }
            heap.disrupt(&mut random);
        }
    }
    let start = heap.steps;
    let mut left = 1.0;
    while heap.steps < budget {
        left = 1.0 - (heap.steps - start) as f64 / (budget - start) as f64;
        rate = 0.0001 + 0.001 * left;
        heap.spots.clone_from(&best);
        heap.length = (length * (1.0 - rate)).max(least);
        heap.clamp();
        if heap.separate(Patience { rounds: 50, tries: 1 }, budget, &mut random) {
            best.clone_from(&heap.spots);
            length = end(&heap);
            if unsafe { TRACE } {
                eprintln!("{:>10} compressed {length:.2}", heap.steps);
            }
        }
    }
    let _ = (left, fails);
    best
}

impl Heap<'_> {
    /// Brings pieces back that reach beyond the strip.
    fn clamp(&mut self) {
        for piece in 0..self.spots.len() {
            let spot = self.spots[piece];
            for axis in [0, 1] {
                self.spots[piece].at[axis] = spot.at[axis].min(self.room(spot.body, axis));
            }
        }
    }

    /// Exchanges two large pieces.
    fn disrupt(&mut self, random: &mut Random) {
        let count = self.spots.len();
        let mut order: Vec<usize> = (0..count).collect();
        order.sort_by(|a, b| self.field.areas[*b].total_cmp(&self.field.areas[*a]));
        let large = (count / 2).max(2).min(count);
        for _ in 0..20 {
            let (one, other) = (order[random.below(large)], order[random.below(large)]);
            if self.field.poses[one] == self.field.poses[other] {
                continue;
            }
            let middle = |heap: &Heap, piece: usize| {
                let spot = heap.spots[piece];
                [0, 1].map(|axis| spot.at[axis] + heap.size(spot.body, axis) / 2.0)
            };
            let (here, there) = (middle(self, one), middle(self, other));
            for (piece, to) in [(one, there), (other, here)] {
                let body = self.spots[piece].body;
                for axis in [0, 1] {
                    if axis == 0 && self.field.on_fold[piece] {
                        continue;
                    }
                    self.spots[piece].at[axis] = (to[axis] - self.size(body, axis) / 2.0).clamp(0.0, self.room(body, axis));
                }
            }
            return;
        }
    }
}
