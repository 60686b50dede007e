//! A stretch of a run that is moved a little at each of its ends: what is left of an edge beside a dart
//! whose shorter leg was lengthened.

use kurbo::{CubicBez, Line, ParamCurve, PathSeg, Vec2};

use super::ring;

/// A place on the runs of an edge: which of them, and the parameter on it.
pub(super) type Spot = (usize, f64);

/// A stretch of one run.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    pub run: usize,
    pub from: f64,
    pub to: f64,
    /// How far its start is moved.
    pub start: Vec2,
    /// How far its end is moved.
    pub end: Vec2,
}

impl Part {
    /// The stretches from one place to another, the first moved by `start`, the last by `end`, and all
    /// between them by what lies between, by their share of the length.
    pub fn between(runs: &[PathSeg], from: Spot, to: Spot, start: Vec2, end: Vec2) -> Vec<Part> {
        let mut parts: Vec<Part> = (from.0..=to.0)
            .map(|run| Part {
                run,
                from: if run == from.0 { from.1 } else { 0.0 },
                to: if run == to.0 { to.1 } else { 1.0 },
                start,
                end,
            })
            .filter(|part| part.to - part.from > 1e-9 && part.run < runs.len())
            .collect();
        let lengths: Vec<f64> =
            parts.iter().map(|part| ring::length(&runs[part.run].subsegment(part.from..part.to))).collect();
        let whole: f64 = lengths.iter().sum();
        let mut done = 0.0;
        for (part, length) in parts.iter_mut().zip(&lengths) {
            let (first, last) = (done / whole, (done + length) / whole);
            (part.start, part.end) = (start.lerp(end, first), start.lerp(end, last));
            done += length;
        }
        parts
    }

    /// Whether it is a whole run where it was.
    pub fn is_untouched(&self) -> bool {
        self.from == 0.0 && self.to == 1.0 && self.start == Vec2::ZERO && self.end == Vec2::ZERO
    }

    /// The run as moved. What is added to the control points of a cubic makes it stray from where it was by
    /// a length that grows evenly with its parameter.
    pub fn curve(&self, runs: &[PathSeg]) -> PathSeg {
        let drawn = runs[self.run].subsegment(self.from..self.to);
        let push = |share: f64| self.start.lerp(self.end, share);
        match drawn {
            PathSeg::Line(line) => PathSeg::Line(Line::new(line.p0 + push(0.0), line.p1 + push(1.0))),
            other => {
                let cubic = other.to_cubic();
                PathSeg::Cubic(CubicBez::new(
                    cubic.p0 + push(0.0),
                    cubic.p1 + push(1.0 / 3.0),
                    cubic.p2 + push(2.0 / 3.0),
                    cubic.p3 + push(1.0),
                ))
            }
        }
    }

    /// How far it moves the place at `t` of a run; `None` when that is not on it.
    pub fn push(&self, run: usize, t: f64) -> Option<Vec2> {
        let on = run == self.run && (self.from..=self.to).contains(&t);
        on.then(|| self.start.lerp(self.end, (t - self.from) / (self.to - self.from)))
    }
}
