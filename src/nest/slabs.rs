//! An outline cut into upright slabs between its corners: in each slab the outline is a few
//! trapezia, so that "how far may this piece move before it meets that one" has an exact answer.

use super::outline::Parts;

/// Nearer than this (mm) counts as touching, not as overlapping.
const TOUCH: f64 = 1e-6;

/// A trapezium between two uprights: where it begins and ends on the left and the right one.
#[derive(Clone, Copy)]
pub(super) struct Span {
    low: [f64; 2],
    high: [f64; 2],
}

impl Span {
    /// The trapezium's edges at a part of the way from its left upright to its right one.
    fn at(self, part: f64) -> (f64, f64) {
        let between = |ends: [f64; 2]| ends[0] + (ends[1] - ends[0]) * part;
        (between(self.low), between(self.high))
    }
}

/// The slabs of one outline, from left to right.
pub(super) struct Slabs {
    /// The uprights, one more than there are slabs.
    uprights: Vec<f64>,
    /// Where the spans of each slab begin in `spans`; one more than there are slabs.
    starts: Vec<usize>,
    spans: Vec<Span>,
}

impl Slabs {
    /// Cuts an outline.
    pub(super) fn new(parts: &Parts) -> Slabs {
        let mut uprights: Vec<f64> = parts.iter().flatten().map(|point| point[0]).collect();
        uprights.sort_by(f64::total_cmp);
        uprights.dedup_by(|next, kept| *next - *kept < TOUCH / 10.0);
        let mut slabs = Slabs { starts: vec![0], spans: Vec::new(), uprights };
        for index in 1..slabs.uprights.len() {
            let (left, right) = (slabs.uprights[index - 1], slabs.uprights[index]);
            let mut lines = crossing(parts, left, right);
            lines.sort_by(|a, b| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
            // A sound outline is crossed an even number of times; of any other, all is covered.
            if lines.len() % 2 == 1 {
                lines = vec![lines[0], lines[lines.len() - 1]];
            }
            for pair in lines.chunks_exact(2) {
                slabs.spans.push(Span { low: pair[0], high: pair[1] });
            }
            slabs.starts.push(slabs.spans.len());
        }
        slabs
    }

    /// How many slabs there are.
    pub(super) fn len(&self) -> usize {
        self.starts.len() - 1
    }

    fn slab(&self, index: usize) -> (f64, f64, &[Span]) {
        let spans = &self.spans[self.starts[index]..self.starts[index + 1]];
        (self.uprights[index], self.uprights[index + 1], spans)
    }

    /// The least and greatest y of every trapezium's share of the column from `left` to `right`;
    /// shares that touch are joined, and they are in order.
    pub(super) fn column(&self, left: f64, right: f64) -> Vec<(f64, f64)> {
        let mut shares: Vec<(f64, f64)> = Vec::new();
        for index in 0..self.len() {
            let (from, to, spans) = self.slab(index);
            let (begin, end) = (from.max(left), to.min(right));
            if end - begin <= TOUCH {
                continue;
            }
            for span in spans {
                let (low, high) = span.at((begin - from) / (to - from));
                let (low_end, high_end) = span.at((end - from) / (to - from));
                shares.push((low.min(low_end), high.max(high_end)));
            }
        }
        shares.sort_by(|a, b| a.0.total_cmp(&b.0));
        shares.dedup_by(|next, kept| {
            let joined = next.0 <= kept.1 + TOUCH;
            if joined {
                kept.1 = kept.1.max(next.1);
            }
            joined
        });
        shares
    }

    /// Adds the shifts in y at which this outline would overlap the other, when the other's box's
    /// corner lies `across` and `down` from this one's unshifted corner. Gives the slabs compared.
    pub(super) fn block(&self, other: &Slabs, across: f64, down: f64, blocked: &mut Vec<(f64, f64)>) -> u64 {
        let (mut mine, mut theirs, mut compared) = (0, 0, 0);
        while mine < self.len() && theirs < other.len() {
            compared += 1;
            let (from, to, spans) = self.slab(mine);
            let (other_from, other_to, other_spans) = other.slab(theirs);
            let (other_from, other_to) = (other_from + across, other_to + across);
            let (begin, end) = (from.max(other_from), to.min(other_to));
            if end - begin > TOUCH {
                let part = |at: f64| (at - from) / (to - from);
                let other_part = |at: f64| (at - other_from) / (other_to - other_from);
                for span in spans {
                    let (low, high) = span.at(part(begin));
                    let (low_end, high_end) = span.at(part(end));
                    for theirs in other_spans {
                        let (under, over) = theirs.at(other_part(begin));
                        let (under_end, over_end) = theirs.at(other_part(end));
                        let first = (under - high).min(under_end - high_end) + down + TOUCH;
                        let last = (over - low).max(over_end - low_end) + down - TOUCH;
                        if first < last {
                            blocked.push((first, last));
                        }
                    }
                }
            }
            if to < other_to {
                mine += 1;
            } else {
                theirs += 1;
            }
        }
        compared
    }
}

/// Where the lines of the outline that reach from one upright to the other cross the two.
fn crossing(parts: &Parts, left: f64, right: f64) -> Vec<[f64; 2]> {
    let middle = f64::midpoint(left, right);
    let mut lines = Vec::new();
    for part in parts {
        for (index, &from) in part.iter().enumerate() {
            let to = part[(index + 1) % part.len()];
            let (from, to) = if from[0] <= to[0] { (from, to) } else { (to, from) };
            if from[0] < middle && to[0] > middle {
                let slope = (to[1] - from[1]) / (to[0] - from[0]);
                // At the line's own ends its own points are exact.
                let at = |x: f64| (from[1] + (x - from[0]) * slope).clamp(from[1].min(to[1]), from[1].max(to[1]));
                lines.push([at(left), at(right)]);
            }
        }
    }
    lines
}

/// The least shift of 0 or more that is not blocked. Sorts the list.
pub(super) fn least_free(blocked: &mut [(f64, f64)]) -> f64 {
    blocked.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut free = 0.0;
    for &(first, last) in blocked.iter() {
        if first >= free {
            break;
        }
        free = f64::max(free, last);
    }
    free
}
