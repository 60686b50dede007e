//! Pulls apart pieces that overlap: each in turn goes where it overlaps least, and what goes on
//! overlapping counts for more and more (the guided local search of S. Umetani and others, Solving the
//! irregular strip packing problem via guided local search for overlap minimization, International
//! Transactions in Operational Research 16, 2009; and as J. Gardeyn and G. Vanden Berghe tell it, 2025; from memory).

use super::heap::{Heap, Spot};
use super::random::Random;

/// How the search goes on.
#[derive(Clone, Copy)]
pub(super) struct Patience {
    /// Rounds without a gain that end a try.
    pub(super) rounds: usize,
    /// Tries without a gain that end the search.
    pub(super) tries: usize,
}

/// Lines tried by chance for each pose.
pub static mut LINES: usize = 3;
pub static mut FOCUS: usize = 1;
pub static mut GROW: f64 = 1.5;
pub static mut DECAY: f64 = 0.95;

impl Heap<'_> {
    /// Depths of all pairs that overlap.
    fn overlaps(&mut self) -> Vec<(usize, usize, f64)> {
        let count = self.spots.len();
        let mut found = Vec::new();
        for piece in 0..count {
            for other in 0..piece {
                let depth = self.depth(self.spots[piece], other);
                if depth > 0.0 {
                    found.push((piece, other, depth));
                }
            }
        }
        found
    }

    /// Moves pieces until none overlaps; whether that came about before patience or the budget ran out. Leaves
    /// the best spots that were found.
    pub(super) fn separate(&mut self, patience: Patience, until: u64, random: &mut Random) -> bool {
        let count = self.spots.len();
        self.weights.fill(1.0);
        let mut best = (f64::INFINITY, self.spots.clone());
        let mut tries = 0;
        while tries < patience.tries {
            let mut rounds = 0;
            let at_first = best.0;
            while rounds < patience.rounds {
                let overlaps = self.overlaps();
                let total: f64 = overlaps.iter().map(|pair| pair.2).sum();
                if overlaps.is_empty() {
                    return true;
                }
                if self.steps >= until {
                    self.spots = best.1;
                    return false;
                }
                if total < best.0 * 0.98 {
                    rounds = 0;
                } else {
                    rounds += 1;
                }
                if total < best.0 {
                    best = (total, self.spots.clone());
                }
                let most = overlaps.iter().map(|pair| pair.2).fold(0.0, f64::max);
                let decay = unsafe { DECAY };
                for weight in &mut self.weights {
                    *weight = (*weight * decay).max(1.0);
                }
                let mut moving: Vec<usize> = Vec::new();
                for &(piece, other, depth) in &overlaps {
                    let grown = self.weights[piece * count + other] / decay * (1.2 + (unsafe { GROW } - 1.2) * depth / most);
                    self.weights[piece * count + other] = grown;
                    self.weights[other * count + piece] = grown;
                    moving.extend([piece, other]);
                }
                moving.sort_unstable();
                moving.dedup();
                for at in (1..moving.len()).rev() {
                    moving.swap(at, random.below(at + 1));
                }
                for piece in moving {
                    self.move_best(piece, random);
                }
            }
            tries += 1;
            if best.0 < at_first * 0.98 {
                tries = 0;
            }
            self.spots.clone_from(&best.1);
        }
        false
    }

    /// Moves a piece to the best place that is found for it, unless it lies as well where it is.
    fn move_best(&mut self, piece: usize, random: &mut Random) {
        let here = self.spots[piece];
        let weight = self.weigh(piece, here, f64::INFINITY);
        if weight == 0.0 {
            return;
        }
        let mut found: [(f64, Spot); 2] = [(f64::INFINITY, here); 2];
        let poses = self.field.poses[piece].clone();
        for body in poses {
            let own = body == here.body;
            let lines = unsafe { LINES };
            let focus = if own { unsafe { FOCUS } } else { 0 };
            for line in 0..lines + focus {
                for axis in [1, 0] {
                    if self.field.on_fold[piece] && axis == 0 {
                        continue;
                    }
                    let room = self.room(body, 1 - axis);
                    let at = if self.field.on_fold[piece] {
                        0.0
                    } else if line == lines {
                        here.at[1 - axis].min(room)
                    } else if line > lines {
                        (here.at[1 - axis] + (random.part() - 0.5) * 0.2 * self.size(body, 1 - axis)).clamp(0.0, room)
                    } else {
                        random.part() * room
                    };
                    self.try_line(piece, body, axis, at, &mut found);
                    if self.field.on_fold[piece] { break; }
                }
            }
        }
        for index in 0..found.len() {
            if found[index].0.is_finite() && found[index].0 > 0.0 && !self.field.on_fold[piece] {
                self.refine(piece, &mut found[index]);
            }
        }
        let best = if found[1].0 < found[0].0 { found[1] } else { found[0] };
        if best.0 < weight {
            self.spots[piece] = best.1;
        }
    }

    fn try_line(&mut self, piece: usize, body: usize, axis: usize, at: f64, found: &mut [(f64, Spot); 2]) {
        let along = self.best_along(piece, body, axis, at);
        let mut spot = Spot { body, at: [at, at] };
        spot.at[axis] = along;
        let weight = self.weigh(piece, spot, found[1].0);
        if weight < found[0].0 {
            found[1] = found[0];
            found[0] = (weight, spot);
        } else if weight < found[1].0 {
            found[1] = (weight, spot);
        }
    }

    /// Moves along one axis and the other by turns, as long as that gains.
    fn refine(&mut self, piece: usize, found: &mut (f64, Spot)) {
        let mut idle = 0;
        let mut axis = 0;
        for _ in 0..8 {
            let mut spot = found.1;
            spot.at[axis] = self.best_along(piece, spot.body, axis, spot.at[1 - axis]);
            let weight = self.weigh(piece, spot, found.0);
            if weight < found.0 {
                *found = (weight, spot);
                idle = 0;
            } else {
                idle += 1;
            }
            if idle == 2 || found.0 == 0.0 {
                return;
            }
            axis = 1 - axis;
        }
    }
}
