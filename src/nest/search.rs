//! The search for a short layout by outlines: the strip is made shorter, the pieces that no longer have
//! room are pulled apart, and so on; at the end in small steps.

use super::field::Field;
use super::first::first;
use super::heap::{Heap, Spot};
use super::random::Random;
use super::separate::Patience;

/// By what share the strip is made shorter at first, and at least; less after each time that it was too much.
const LEAPS: [f64; 2] = [0.02, 0.004];
const LESS: f64 = 0.7;
/// The share of the steps after which it is made shorter by little only.
const LEAPING: f64 = 0.8;
/// The greatest and the least of those small shares.
const SMALL: [f64; 2] = [0.0011, 0.0001];

/// What ends the search.
pub(super) struct Goal<'a> {
    /// A grown length that is short enough, mm.
    pub(super) enough: f64,
    /// The steps after which what was found is made shorter by little; each next one goes on from there.
    pub(super) budgets: &'a [u64],
}

/// Lays pieces on a strip so wide, beginning with a layout that is known. All lengths are grown by the gap.
pub(super) fn search(field: &mut Field, width: f64, known: Vec<Spot>, goal: &Goal<'_>) -> Vec<Spot> {
    // Corners lie on whole units, which may be a hair longer.
    let enough = goal.enough + field.touch;
    let mut best = known;
    let mut heap = Heap::new(field, [width, 0.0], best.clone());
    let mut length = heap.end();
    if length > enough {
        let spots = first(heap.field, width);
        heap.spots = spots;
        if heap.end() < length {
            length = heap.end();
            best.clone_from(&heap.spots);
        }
    }
    heap.spots.clone_from(&best);
    let mut random = Random::new(best.len() as u64 + 1);
    let mut settled = (f64::INFINITY, Vec::new());
    let (mut from, mut leap) = (0, LEAPS[0]);
    for &until in goal.budgets {
        let leaping = from + ((until - from) as f64 * LEAPING) as u64;
        while length > enough && heap.steps < until {
            let leaps = heap.steps < leaping;
            let (share, patience) = if leaps {
                (leap, Patience { rounds: 100, tries: 3, until: leaping })
            } else {
                let left = (until - heap.steps) as f64 / (until - leaping) as f64;
                heap.spots.clone_from(&best);
                (SMALL[1] + (SMALL[0] - SMALL[1]) * left, Patience { rounds: 50, tries: 1, until })
            };
            heap.sides[1] = (length * (1.0 - share)).max(goal.enough);
            heap.bring_back();
            if heap.separate(patience, &mut random) {
                best.clone_from(&heap.spots);
                length = heap.end();
            } else if leaps {
                leap = (leap * LESS).max(LEAPS[1]);
                heap.exchange(&mut random);
            }
        }
        from = until;
        heap.settle_apart(&best, &mut settled);
    }
    settled.1
}

impl Heap<'_> {
    /// Settles pieces, and keeps them so where none were as short before. The search goes on as if nothing
    /// had been moved, so that a greater effort ends no worse than a smaller one.
    fn settle_apart(&mut self, best: &[Spot], settled: &mut (f64, Vec<Spot>)) {
        let (spots, steps) = (std::mem::replace(&mut self.spots, best.to_vec()), self.steps);
        self.sides[1] = self.end();
        self.settle();
        if self.end() < settled.0 {
            *settled = (self.end(), self.spots.clone());
        }
        (self.spots, self.steps) = (spots, steps);
    }

    /// Brings pieces back that reach beyond the strip; those that stand too tall for it are turned.
    fn bring_back(&mut self) {
        for piece in 0..self.spots.len() {
            if !self.fits(self.spots[piece].body) {
                let poses = self.field.poses[piece].iter().copied();
                let tall = |body: &usize| self.field.bodies[*body].sides[1];
                let flat = poses.min_by(|one, other| tall(one).total_cmp(&tall(other)));
                self.spots[piece].body = flat.unwrap_or(self.spots[piece].body);
            }
            let body = self.spots[piece].body;
            for axis in [0, 1] {
                self.spots[piece].at[axis] = self.spots[piece].at[axis].min(self.room(body, axis));
            }
        }
    }

    /// Exchanges two pieces, left to chance; half of the time two of the larger ones.
    fn exchange(&mut self, random: &mut Random) {
        const TRIES: usize = 20;
        let count = self.spots.len();
        let mut order: Vec<usize> = (0..count).collect();
        order.sort_by(|a, b| self.field.areas[*b].total_cmp(&self.field.areas[*a]));
        let large = if random.below(2) == 0 { (count / 2).max(2).min(count) } else { count };
        let mut pairs = (0..TRIES).map(|_| (order[random.below(large)], order[random.below(large)]));
        let Some((one, other)) = pairs.find(|(one, other)| self.field.poses[*one] != self.field.poses[*other]) else {
            return;
        };
        let middle = |piece: usize| {
            let spot = self.spots[piece];
            [0, 1].map(|axis| spot.at[axis] + self.field.bodies[spot.body].sides[axis] / 2.0)
        };
        for (piece, to) in [(one, middle(other)), (other, middle(one))] {
            let body = self.spots[piece].body;
            for axis in if self.field.on_fold[piece] { 1..2 } else { 0..2 } {
                let at = to[axis] - self.field.bodies[body].sides[axis] / 2.0;
                self.spots[piece].at[axis] = at.clamp(0.0, self.room(body, axis));
            }
        }
    }
}
