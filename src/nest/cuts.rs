//! An outline cut between its corners: along any line it is a few stretches, found at once.

/// A stretch of the outline between two uprights: where it begins and ends on each of them.
#[derive(Clone, Copy)]
struct Span {
    low: [f64; 2],
    high: [f64; 2],
}

/// An outline's slabs, from left to right; the way across is the other way round.
pub(super) struct Cuts {
    /// The uprights, one more than there are slabs.
    uprights: Vec<f64>,
    /// Where the spans of each slab begin; one more than there are slabs.
    starts: Vec<u32>,
    spans: Vec<Span>,
}

impl Cuts {
    /// Cuts closed outlines, holes among them, along x (0) or along y (1).
    pub(super) fn new(contours: &[Vec<[f64; 2]>], axis: usize) -> Cuts {
        let other = 1 - axis;
        let mut uprights: Vec<f64> = contours.iter().flatten().map(|point| point[axis]).collect();
        uprights.sort_unstable_by(f64::total_cmp);
        uprights.dedup();
        let count = uprights.len().saturating_sub(1);
        let mut slabs: Vec<Vec<[f64; 2]>> = vec![Vec::new(); count];
        for contour in contours {
            for (index, &from) in contour.iter().enumerate() {
                let to = contour[(index + 1) % contour.len()];
                let (from, to) = if from[axis] <= to[axis] { (from, to) } else { (to, from) };
                if from[axis] == to[axis] {
                    continue;
                }
                let slope = (to[other] - from[other]) / (to[axis] - from[axis]);
                let first = uprights.partition_point(|upright| *upright < from[axis]);
                let mut left = from[other];
                for slab in first..count {
                    let end = uprights[slab + 1];
                    if end > to[axis] {
                        break;
                    }
                    let right = if end == to[axis] { to[other] } else { from[other] + (end - from[axis]) * slope };
                    slabs[slab].push([left, right]);
                    left = right;
                }
            }
        }
        let mut cuts = Cuts { uprights, starts: vec![0], spans: Vec::new() };
        for mut lines in slabs {
            lines.sort_unstable_by(|a, b| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
            cuts.spans.extend(lines.chunks_exact(2).map(|pair| Span { low: pair[0], high: pair[1] }));
            cuts.starts.push(cuts.spans.len() as u32);
        }
        cuts
    }

    /// The stretches that a line at `at` has inside, in order: where each begins and ends.
    pub(super) fn at(&self, at: f64) -> impl Iterator<Item = (f64, f64)> {
        let slab = self.uprights.partition_point(|upright| *upright <= at);
        let (spans, part) = match slab {
            0 => (&[][..], 0.0),
            _ if slab >= self.uprights.len() => (&[][..], 0.0),
            _ => {
                let (from, to) = (self.uprights[slab - 1], self.uprights[slab]);
                let spans = &self.spans[self.starts[slab - 1] as usize..self.starts[slab] as usize];
                (spans, (at - from) / (to - from))
            }
        };
        spans.iter().map(move |span| {
            (span.low[0] + (span.low[1] - span.low[0]) * part, span.high[0] + (span.high[1] - span.high[0]) * part)
        })
    }

    /// How far a point is from the nearer end of the stretch in which it lies; 0 outside.
    pub(super) fn depth(&self, at: f64, point: f64) -> f64 {
        let mut spans = self.at(at);
        let inside = spans.find(|(from, to)| *from < point && point < *to);
        inside.map_or(0.0, |(from, to)| (point - from).min(to - point))
    }

    /// How much of a line at `at` lies inside.
    pub(super) fn inside(&self, at: f64) -> f64 {
        self.at(at).map(|(from, to)| to - from).sum()
    }

    /// The least that a line between two others has inside.
    pub(super) fn least_inside(&self, from: f64, to: f64) -> f64 {
        // Between two uprights it grows or shrinks evenly.
        let near = (to - from).max(1.0) * 1e-9;
        let own = self.uprights.iter().copied().filter(|upright| (from..=to).contains(upright));
        let each = own.flat_map(|upright| [upright - near, upright + near]).chain([from, to]);
        each.filter(|at| (from..=to).contains(at)).map(|at| self.inside(at)).fold(f64::INFINITY, f64::min)
    }
}
