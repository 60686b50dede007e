//! The last and exact part of laying: pieces slide towards the start of the strip and to the left
//! until they touch, and the farthest ones are taken up and laid anew where there is room.

use super::pose::{Piece, Pose};
use super::random::Random;
use super::slabs::least_free;

/// A gain smaller than this (mm) is none.
const GAIN: f64 = 1e-5;

/// Places tried across the strip, besides those that touch another piece.
const PLACES: usize = 120;

/// Where a piece lies: the corner of its grown outline's box.
#[derive(Clone, Copy)]
pub(super) struct Laid {
    pub(super) pose: usize,
    pub(super) x: f64,
    pub(super) y: f64,
}

/// The strip with its pieces.
pub(super) struct Table<'a> {
    pieces: &'a [Piece],
    /// Of the grown strip, mm.
    width: f64,
    gap: f64,
    /// One for each piece.
    laid: Vec<Laid>,
    /// Whether a piece is taken up: it then takes no room.
    up: Vec<bool>,
    blocked: Vec<(f64, f64)>,
    /// Slabs compared so far: the measure of effort.
    steps: u64,
}

impl<'a> Table<'a> {
    /// A strip with all its pieces, free of overlaps.
    pub(super) fn new(pieces: &'a [Piece], width: f64, gap: f64, laid: &[Laid]) -> Table<'a> {
        Table { pieces, width, gap, laid: laid.to_vec(), up: vec![false; laid.len()], blocked: Vec::new(), steps: 0 }
    }

    /// Where the pieces lie.
    pub(super) fn places(&self) -> &[Laid] {
        &self.laid
    }

    /// The far end of the layout, grown.
    pub(super) fn length(&self) -> f64 {
        (0..self.pieces.len()).map(|piece| self.end(piece)).fold(0.0, f64::max)
    }

    fn pose(&self, piece: usize, pose: usize) -> &'a Pose {
        &self.pieces[piece].poses[pose]
    }

    /// The far end of a piece, grown.
    fn end(&self, piece: usize) -> f64 {
        let at = self.laid[piece];
        at.y + self.pose(piece, at.pose).height + self.gap
    }

    /// The least y at which a piece is free at `at.x`.
    fn free_y(&mut self, piece: usize, at: Laid) -> f64 {
        let mine = self.pose(piece, at.pose);
        self.blocked.clear();
        for (other, laid) in self.laid.iter().enumerate() {
            if other == piece || self.up[other] {
                continue;
            }
            let theirs = &self.pieces[other].poses[laid.pose];
            if laid.x < at.x + mine.width + self.gap && at.x < laid.x + theirs.width + self.gap {
                let across = laid.x - at.x;
                self.steps += mine.slabs.block(&theirs.slabs, across, laid.y, &mut self.blocked);
            }
        }
        self.steps += 1;
        least_free(&mut self.blocked)
    }

    /// The least x at which a piece is free at `at.y`.
    fn free_x(&mut self, piece: usize, at: Laid) -> f64 {
        let mine = self.pose(piece, at.pose);
        self.blocked.clear();
        for (other, laid) in self.laid.iter().enumerate() {
            if other == piece || self.up[other] {
                continue;
            }
            let theirs = &self.pieces[other].poses[laid.pose];
            if laid.y < at.y + mine.height + self.gap && at.y < laid.y + theirs.height + self.gap {
                let across = laid.y - at.y;
                self.steps += mine.across.block(&theirs.across, across, laid.x, &mut self.blocked);
            }
        }
        self.steps += 1;
        least_free(&mut self.blocked)
    }

    /// Slides every piece as near to the start, and then as far to the left, as it will go.
    pub(super) fn settle(&mut self) {
        for _ in 0..4 {
            let mut order: Vec<usize> = (0..self.pieces.len()).collect();
            order.sort_by(|&a, &b| self.end(a).total_cmp(&self.end(b)));
            let mut moved = false;
            for piece in order {
                let before = self.laid[piece];
                let mut at = before;
                for _ in 0..3 {
                    let y = self.free_y(piece, at);
                    if y < at.y - GAIN {
                        at.y = y;
                    }
                    if self.pieces[piece].on_fold {
                        break;
                    }
                    let x = self.free_x(piece, at);
                    if x >= at.x - GAIN {
                        break;
                    }
                    at.x = x;
                }
                moved |= at.y < before.y || at.x < before.x;
                self.laid[piece] = at;
            }
            if !moved {
                return;
            }
        }
    }

    /// Takes up the farthest piece, and sometimes others, and lays them anew, as long as the budget
    /// lasts; what does not shorten the layout or draw its pieces together is undone.
    pub(super) fn improve(&mut self, budget: u64, random: &mut Random) {
        let count = self.pieces.len();
        let mut tries = 0;
        while self.steps < budget && count > 1 {
            let before = self.laid.clone();
            let was = self.cost();
            let far = (0..count).max_by(|&a, &b| self.end(a).total_cmp(&self.end(b)));
            let mut taken: Vec<usize> = far.into_iter().collect();
            for _ in 0..tries % 4 {
                let other = random.below(count);
                if !taken.contains(&other) {
                    taken.push(other);
                }
            }
            if tries % 8 > 4 {
                taken.rotate_left(1);
            }
            for &piece in &taken {
                self.up[piece] = true;
            }
            for &piece in &taken {
                self.lay(piece);
                self.up[piece] = false;
            }
            if self.cost() < was - GAIN {
                self.settle();
            } else {
                self.laid = before;
            }
            tries += 1;
        }
    }

    /// The length, with a small share of where the pieces end on average.
    fn cost(&self) -> f64 {
        let ends: f64 = (0..self.pieces.len()).map(|piece| self.end(piece)).sum();
        self.length() + 0.02 * ends / self.pieces.len() as f64
    }

    /// Lays a piece where it ends nearest to the start.
    fn lay(&mut self, piece: usize) {
        let mut best: Option<(f64, Laid)> = None;
        for pose in 0..self.pieces[piece].poses.len() {
            let (width, height) = (self.pose(piece, pose).width + self.gap, self.pose(piece, pose).height);
            for x in self.places_across(piece, width) {
                let mut at = Laid { pose, x, y: 0.0 };
                at.y = self.free_y(piece, at);
                let better = best.is_none_or(|(end, kept)| {
                    let gain = end - (at.y + height);
                    gain > GAIN || (gain > -GAIN && at.y < kept.y - GAIN)
                });
                if better {
                    best = Some((at.y + height, at));
                }
            }
        }
        if let Some((_, at)) = best {
            self.laid[piece] = at;
        }
    }

    /// Where the left edge of a piece so wide may lie: evenly across, and touching each other piece.
    fn places_across(&self, piece: usize, width: f64) -> Vec<f64> {
        if self.pieces[piece].on_fold {
            return vec![0.0];
        }
        let last = (self.width - width).max(0.0);
        let mut places: Vec<f64> = (0..=PLACES).map(|part| last * part as f64 / PLACES as f64).collect();
        for (other, laid) in self.laid.iter().enumerate() {
            if other != piece && !self.up[other] {
                let right = laid.x + self.pieces[other].poses[laid.pose].width + self.gap;
                places.extend([right, laid.x - width, laid.x, right - width]);
            }
        }
        places.retain(|x| (0.0..=last).contains(x));
        places.sort_by(f64::total_cmp);
        places.dedup_by(|next, kept| *next - *kept < GAIN);
        places
    }
}
