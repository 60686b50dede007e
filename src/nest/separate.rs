//! Pulls apart pieces that overlap: each in turn goes where it overlaps least, and what goes on
//! overlapping counts for more and more, until it gives way.
//!
//! A guided local search after the idea of S. Umetani and others, Solving the irregular strip packing
//! problem via guided local search for overlap minimization, International Transactions in Operational
//! Research 16, 2009, and of those who took it further (A. Elkeran, 2013; J. Gardeyn and G. Vanden
//! Berghe, 2025; all from memory).

use super::heap::{Heap, Spot};
use super::random::Random;

/// A gain of less than this share is none.
const GAIN: f64 = 0.02;
/// Lines tried by chance, for each pose and each way.
const BY_CHANCE: usize = 2;
/// How far from its place a piece looks first, as a share of its size.
const NEAR: f64 = 0.1;
/// How often a spot is moved along one axis and then the other.
const REFINED: usize = 8;

/// When to give up.
#[derive(Clone, Copy)]
pub(super) struct Patience {
    /// Rounds in a row without a gain that end a try.
    pub(super) rounds: usize,
    /// Tries in a row without a gain that end the search; each begins where least overlapped.
    pub(super) tries: usize,
    /// The steps at which it ends in any case.
    pub(super) until: u64,
}

/// A spot, and what a piece would weigh there.
#[derive(Clone, Copy)]
struct Found {
    weight: f64,
    spot: Spot,
}

impl Heap<'_> {
    /// Moves pieces until none overlaps, and says whether that came about; else they lie as they overlapped
    /// least.
    pub(super) fn separate(&mut self, patience: Patience, random: &mut Random) -> bool {
        self.weigh_alike();
        let mut best = (f64::INFINITY, self.spots.clone());
        let mut tries = 0;
        while tries < patience.tries {
            let (at_first, mut rounds) = (best.0, 0);
            while rounds < patience.rounds {
                // Each look costs something even when nothing is near.
                self.steps += self.spots.len() as u64;
                let overlaps = self.overlaps();
                if overlaps.is_empty() {
                    return true;
                }
                let total: f64 = overlaps.iter().map(|overlap| overlap.2).sum();
                rounds = if total < best.0 * (1.0 - GAIN) { 0 } else { rounds + 1 };
                if total < best.0 {
                    best = (total, self.spots.clone());
                }
                if self.steps >= patience.until {
                    self.spots = best.1;
                    return false;
                }
                self.weigh_anew(&overlaps);
                self.move_each(&overlaps, random);
            }
            tries = if best.0 < at_first * (1.0 - GAIN) { 0 } else { tries + 1 };
            self.spots.clone_from(&best.1);
        }
        false
    }

    /// Moves every piece that overlaps another, in an order left to chance.
    fn move_each(&mut self, overlaps: &[(usize, usize, f64)], random: &mut Random) {
        let mut moving: Vec<usize> = overlaps.iter().flat_map(|&(one, other, _)| [one, other]).collect();
        moving.sort_unstable();
        moving.dedup();
        for at in (1..moving.len()).rev() {
            moving.swap(at, random.below(at + 1));
        }
        for piece in moving {
            self.move_one(piece, random);
        }
    }

    /// Moves a piece to the best spot that is found for it, unless it lies as well where it is.
    fn move_one(&mut self, piece: usize, random: &mut Random) {
        let here = self.spots[piece];
        let weight = self.weight(piece, here, f64::INFINITY);
        if weight == 0.0 {
            return;
        }
        let mut found = [Found { weight: f64::INFINITY, spot: here }; 2];
        for pose in 0..self.field.poses[piece].len() {
            let body = self.field.poses[piece][pose];
            if !self.fits(body) {
                continue;
            }
            if self.field.on_fold[piece] {
                self.try_line(piece, body, 1, 0.0, &mut found);
                continue;
            }
            for axis in [1, 0] {
                let (aside, room) = (1 - axis, self.room(body, 1 - axis));
                for _ in 0..BY_CHANCE {
                    self.try_line(piece, body, axis, random.part() * room, &mut found);
                }
                if body == here.body {
                    let at = here.at[aside];
                    let near = (random.part() * 2.0 - 1.0) * NEAR * self.field.bodies[body].sides[aside];
                    self.try_line(piece, body, axis, at.min(room), &mut found);
                    self.try_line(piece, body, axis, (at + near).clamp(0.0, room), &mut found);
                }
            }
        }
        for one in &mut found {
            if one.weight.is_finite() && !self.field.on_fold[piece] {
                self.refine(piece, one);
            }
        }
        let best = if found[1].weight < found[0].weight { found[1] } else { found[0] };
        if best.weight < weight {
            self.spots[piece] = best.spot;
        }
    }

    /// Keeps the best spot on a line where it is one of the two best.
    fn try_line(&mut self, piece: usize, body: usize, axis: usize, at: f64, found: &mut [Found; 2]) {
        let spot = self.best_along(piece, body, axis, at);
        let weight = self.weight(piece, spot, found[1].weight);
        if weight < found[0].weight {
            *found = [Found { weight, spot }, found[0]];
        } else if weight < found[1].weight {
            found[1] = Found { weight, spot };
        }
    }

    /// Moves a spot along one axis and the other by turns, as long as that gains.
    fn refine(&mut self, piece: usize, found: &mut Found) {
        let mut idle = 0;
        for axis in [0, 1].into_iter().cycle().take(REFINED) {
            if idle == 2 || found.weight == 0.0 {
                return;
            }
            let spot = self.best_along(piece, found.spot.body, axis, found.spot.at[1 - axis]);
            let weight = self.weight(piece, spot, found.weight);
            if weight < found.weight {
                *found = Found { weight, spot };
                idle = 0;
            } else {
                idle += 1;
            }
        }
    }
}
