//! Pieces on a strip of a given length, which may still overlap: what their overlaps weigh, and where a
//! single piece would lie best.

use super::field::Field;

/// Where a piece lies: its body and the corner of its grown outline's box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) body: usize,
    /// x and y.
    pub(super) at: [f64; 2],
}

/// The pieces, wherever they lie.
pub(super) struct Heap<'a> {
    pub(super) field: &'a mut Field,
    /// The strip's width, grown.
    pub(super) width: f64,
    /// How far pieces may reach, grown.
    pub(super) length: f64,
    pub(super) spots: Vec<Spot>,
    /// Whether a piece takes no room for now.
    pub(super) up: Vec<bool>,
    /// For each two pieces, how much their overlap counts.
    pub(super) weights: Vec<f64>,
    /// Pairs looked at so far: the measure of effort.
    pub(super) steps: u64,
    bends: Vec<(f64, f64)>,
}

impl<'a> Heap<'a> {
    pub(super) fn new(field: &'a mut Field, width: f64, length: f64, spots: Vec<Spot>) -> Heap<'a> {
        let count = spots.len();
        Heap {
            field,
            width,
            length,
            spots,
            up: vec![false; count],
            weights: vec![1.0; count * count],
            steps: 0,
            bends: Vec::new(),
        }
    }

    /// The size of a body along x (0) or y (1).
    pub(super) fn size(&self, body: usize, axis: usize) -> f64 {
        if axis == 0 { self.field.bodies[body].width } else { self.field.bodies[body].height }
    }

    /// How far a body's corner may go along an axis.
    pub(super) fn room(&self, body: usize, axis: usize) -> f64 {
        let whole = if axis == 0 { self.width } else { self.length };
        (whole - self.size(body, axis)).max(0.0)
    }

    /// How deep a piece at a spot would lie in another: the least way out along x or y.
    pub(super) fn depth(&mut self, spot: Spot, other: usize) -> f64 {
        let there = self.spots[other];
        let (mine, theirs) = (&self.field.bodies[spot.body], &self.field.bodies[there.body]);
        let touch = self.field.touch;
        let [x, y] = [spot.at[0] - there.at[0], spot.at[1] - there.at[1]];
        if x <= touch - mine.width
            || y <= touch - mine.height
            || x >= theirs.width - touch
            || y >= theirs.height - touch
        {
            return 0.0;
        }
        self.steps += 1;
        let nofit = self.field.nofit(there.body, spot.body);
        let along = nofit.along.depth(x, y);
        if along <= touch {
            return 0.0;
        }
        let across = nofit.across.depth(y, x);
        if across <= touch { 0.0 } else { along.min(across) }
    }

    /// What a piece would weigh at a spot; more than `limit` may come out as any number above it.
    pub(super) fn weigh(&mut self, piece: usize, spot: Spot, limit: f64) -> f64 {
        let count = self.spots.len();
        let mut sum = 0.0;
        for other in 0..count {
            if other != piece && !self.up[other] {
                sum += self.weights[piece * count + other] * self.depth(spot, other);
                if sum > limit {
                    break;
                }
            }
        }
        sum
    }

    /// The best place for a body along a line: `axis` is the way it runs, `at` where it stands on the other
    /// axis. A guess from the depths along the line, the nearest to the start among equals.
    pub(super) fn best_along(&mut self, piece: usize, body: usize, axis: usize, at: f64) -> f64 {
        let most = self.room(body, axis);
        let other_axis = 1 - axis;
        let count = self.spots.len();
        let touch = self.field.touch;
        let (my_size, my_length) = (self.size(body, other_axis), self.size(body, axis));
        self.bends.clear();
        for other in 0..count {
            if other == piece || self.up[other] {
                continue;
            }
            let there = self.spots[other];
            let shift = at - there.at[other_axis];
            let their_size = self.size(there.body, other_axis);
            if shift <= touch - my_size || shift >= their_size - touch {
                continue;
            }
            let start = there.at[axis];
            if start + self.size(there.body, axis) <= 0.0 || start - my_length >= most {
                continue;
            }
            self.steps += 1;
            let weight = self.weights[piece * count + other];
            let aside = (shift + my_size).min(their_size - shift);
            let nofit = self.field.nofit(there.body, body);
            let cuts = if axis == 1 { &nofit.along } else { &nofit.across };
            for (from, to) in cuts.at(shift) {
                let (from, to) = (from + start + touch, to + start - touch);
                if from >= to || to <= 0.0 || from >= most {
                    continue;
                }
                let rise = aside.min((to - from) / 2.0);
                self.bends.extend([(from, weight), (from + rise, -weight), (to - rise, -weight), (to, weight)]);
            }
        }
        self.lowest(most)
    }

    /// Where the sum of the bends is least, from 0 to `most`.
    fn lowest(&mut self, most: f64) -> f64 {
        self.bends.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let (mut best, mut place) = (f64::INFINITY, 0.0);
        let (mut value, mut slope, mut last) = (0.0, 0.0, f64::NEG_INFINITY);
        let mut begun = false;
        for &(at, change) in &self.bends {
            if at >= 0.0 {
                if !begun {
                    begun = true;
                    best = if last == f64::NEG_INFINITY { 0.0 } else { value - slope * last };
                    place = 0.0;
                }
                if at >= most {
                    break;
                }
            }
            if last != f64::NEG_INFINITY {
                value += slope * (at - last);
            }
            // What is lost in adding is no gain.
            if at >= 0.0 && value < best * (1.0 - 1e-9) - 1e-9 {
                best = value;
                place = at;
            }
            slope += change;
            last = at;
        }
        if begun {
            let end = if last == f64::NEG_INFINITY { 0.0 } else { value + slope * (most - last).max(0.0) };
            if end < best * (1.0 - 1e-9) - 1e-9 {
                place = most;
            }
        } else if last != f64::NEG_INFINITY {
            // Every bend lies before the start.
            place = 0.0;
        }
        place
    }
}
