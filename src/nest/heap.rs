//! Pieces on a strip of a given length, which may still overlap: what their overlaps weigh, and where a
//! single piece would lie best.

use super::field::Field;

/// A depth smaller than this share of another is none: so much is lost in adding.
const LOST: f64 = 1e-9;

/// Where a piece lies: its body and the corner of its grown outline's box.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub(super) body: usize,
    /// x and y.
    pub(super) at: [f64; 2],
}

/// The pieces, wherever they lie.
pub(super) struct Heap<'a> {
    pub(super) field: &'a mut Field,
    /// The strip's width and length, grown.
    pub(super) sides: [f64; 2],
    /// One for each piece.
    pub(super) spots: Vec<Spot>,
    /// Whether a piece is taken up: it then takes no room.
    pub(super) up: Vec<bool>,
    /// For each two pieces, how much their overlap counts.
    weights: Vec<f64>,
    /// Pairs looked at so far: the measure of effort.
    pub(super) steps: u64,
    /// Where the sum of the depths along a line bends, and by how much.
    bends: Vec<(f64, f64)>,
}

impl<'a> Heap<'a> {
    /// Pieces on a strip so wide and so long, both grown.
    pub(super) fn new(field: &'a mut Field, sides: [f64; 2], spots: Vec<Spot>) -> Heap<'a> {
        let count = spots.len();
        let (up, weights) = (vec![false; count], vec![1.0; count * count]);
        Heap { field, sides, spots, up, weights, steps: 0, bends: Vec::new() }
    }

    /// The far end of all pieces.
    pub(super) fn end(&self) -> f64 {
        (0..self.spots.len()).map(|piece| self.end_of(piece)).fold(0.0, f64::max)
    }

    /// The far end of one piece.
    pub(super) fn end_of(&self, piece: usize) -> f64 {
        let spot = self.spots[piece];
        spot.at[1] + self.field.bodies[spot.body].sides[1]
    }

    /// How far a body's corner may go along an axis.
    pub(super) fn room(&self, body: usize, axis: usize) -> f64 {
        (self.sides[axis] - self.field.bodies[body].sides[axis]).max(0.0)
    }

    /// Whether a body is no longer than the strip.
    pub(super) fn fits(&self, body: usize) -> bool {
        self.field.bodies[body].sides[1] <= self.sides[1] + self.field.touch
    }

    /// Every overlap counts alike.
    pub(super) fn weigh_alike(&mut self) {
        self.weights.fill(1.0);
    }

    /// What overlaps counts for more, the deeper the more; all else slowly for less again.
    pub(super) fn weigh_anew(&mut self, overlaps: &[(usize, usize, f64)]) {
        const FADES: f64 = 0.98;
        let count = self.spots.len();
        let deepest = overlaps.iter().map(|overlap| overlap.2).fold(0.0, f64::max);
        for &(one, other, depth) in overlaps {
            let more = (1.2 + 0.3 * depth / deepest) / FADES;
            self.weights[one * count + other] *= more;
            self.weights[other * count + one] *= more;
        }
        for weight in &mut self.weights {
            *weight = (*weight * FADES).max(1.0);
        }
    }

    /// Pairs that overlap, and how deep.
    pub(super) fn overlaps(&mut self) -> Vec<(usize, usize, f64)> {
        let mut found = Vec::new();
        for piece in 0..self.spots.len() {
            for other in 0..piece {
                let depth = self.depth(self.spots[piece], other);
                if depth > 0.0 {
                    found.push((piece, other, depth));
                }
            }
        }
        found
    }

    /// How deep a piece at a spot lies in another: the least way out along x or y.
    fn depth(&mut self, spot: Spot, other: usize) -> f64 {
        let there = self.spots[other];
        let (mine, theirs) = (&self.field.bodies[spot.body].sides, &self.field.bodies[there.body].sides);
        let touch = self.field.touch;
        let [x, y] = [spot.at[0] - there.at[0], spot.at[1] - there.at[1]];
        if x <= touch - mine[0] || y <= touch - mine[1] || x >= theirs[0] - touch || y >= theirs[1] - touch {
            return 0.0;
        }
        self.steps += 1;
        let nofit = self.field.nofit(there.body, spot.body);
        let along = nofit[0].depth(x, y);
        if along <= touch {
            return 0.0;
        }
        let across = nofit[1].depth(y, x);
        if across <= touch { 0.0 } else { along.min(across) }
    }

    /// What a piece would weigh at a spot; what is more than `most` may come out as any number above it.
    pub(super) fn weight(&mut self, piece: usize, spot: Spot, most: f64) -> f64 {
        let count = self.spots.len();
        let mut sum = 0.0;
        for other in 0..count {
            if other != piece && !self.up[other] {
                sum += self.weights[piece * count + other] * self.depth(spot, other);
                if sum > most {
                    break;
                }
            }
        }
        sum
    }

    /// The best spot of a body on a line along an axis that stands at `at` on the other: a guess from the
    /// depths along the line, and from how far aside the other pieces end; the nearest to the start among equals.
    pub(super) fn best_along(&mut self, piece: usize, body: usize, axis: usize, at: f64) -> Spot {
        let most = self.room(body, axis);
        let aside = 1 - axis;
        let count = self.spots.len();
        let touch = self.field.touch;
        let mine = self.field.bodies[body].sides;
        self.bends.clear();
        for other in 0..count {
            if other == piece || self.up[other] {
                continue;
            }
            let there = self.spots[other];
            let theirs = self.field.bodies[there.body].sides;
            let (shift, start) = (at - there.at[aside], there.at[axis]);
            let apart = shift <= touch - mine[aside] || shift >= theirs[aside] - touch;
            if apart || start + theirs[axis] <= 0.0 || start - mine[axis] >= most {
                continue;
            }
            self.steps += 1;
            let weight = self.weights[piece * count + other];
            let way_out = (shift + mine[aside]).min(theirs[aside] - shift);
            let cuts = &self.field.nofit(there.body, body)[aside];
            for (from, to) in cuts.at(shift) {
                // Well within what counts as touching, whatever is lost in adding.
                let (from, to) = (from + start + touch / 2.0, to + start - touch / 2.0);
                if from < to && to > 0.0 && from < most {
                    let rise = way_out.min((to - from) / 2.0);
                    self.bends.extend([(from, weight), (from + rise, -weight), (to - rise, -weight), (to, weight)]);
                }
            }
        }
        let mut spot = Spot { body, at: [at, at] };
        spot.at[axis] = self.lowest(most);
        spot
    }

    /// Where the sum that bends so is least, from 0 to `most`.
    fn lowest(&mut self, most: f64) -> f64 {
        self.bends.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let Some(&(mut last, _)) = self.bends.first() else { return 0.0 };
        let (mut value, mut slope) = (0.0, 0.0);
        // What the sum comes to at the start, once that is reached.
        let mut best: Option<(f64, f64)> = (last >= 0.0).then_some((0.0, 0.0));
        for &(at, bend) in &self.bends {
            if best.is_none() && at >= 0.0 {
                best = Some((value - slope * last, 0.0));
            }
            value += slope * (at.min(most) - last);
            last = at;
            if let Some((least, place)) = &mut best
                && value < *least * (1.0 - LOST) - LOST
            {
                (*least, *place) = (value, at.min(most));
            }
            if at >= most {
                break;
            }
            slope += bend;
        }
        best.map_or(0.0, |(_, place)| place)
    }
}
