//! The line at a constant distance from one run: for a straight run another straight run, for a
//! curve a chain of cubics that agree with the true line in place and in slope at their ends.

use kurbo::{CubicBez, ParamCurve, ParamCurveDeriv, PathSeg, Point, Vec2};

use super::super::ring::{direction, outward, speed};

/// The chain leaves the true line by no more than this, in mm.
const CURVE_WITHIN: f64 = 1e-4;

/// A curve is halved no more often than this.
const MOST_HALVINGS: u32 = 10;

/// The offset of one run, and whether any of it runs backwards because the curve bends more tightly
/// than the offset is wide.
pub(super) struct Shifted {
    pub chain: Vec<PathSeg>,
    pub backwards: bool,
}

/// Shifts a run by `distance` mm, outwards on a clockwise line; below 0 inwards.
pub(super) fn shift(curve: &PathSeg, distance: f64) -> Shifted {
    let mut shifted = Shifted { chain: Vec::new(), backwards: false };
    if distance == 0.0 {
        shifted.chain.push(*curve);
        return shifted;
    }
    match curve {
        PathSeg::Line(line) => {
            let by = outward(direction(curve, 0.0)) * distance;
            shifted.chain.push(PathSeg::Line(kurbo::Line::new(line.p0 + by, line.p1 + by)));
        }
        other => {
            let cubic = other.to_cubic();
            let ends = [Sample::at(&cubic, distance, 0.0), Sample::at(&cubic, distance, 1.0)];
            follow(&cubic, distance, ends, 0, &mut shifted);
        }
    }
    shifted
}

/// One point of the true offset line: its parameter, its place and its derivative.
#[derive(Clone, Copy)]
struct Sample {
    t: f64,
    place: Point,
    slope: Vec2,
    backwards: bool,
}

impl Sample {
    fn at(cubic: &CubicBez, distance: f64, t: f64) -> Self {
        let first = speed(cubic, t);
        let second = cubic.deriv().deriv().eval(t).to_vec2();
        let size = first.hypot().max(f64::MIN_POSITIVE);
        // The offset line runs at this share of the speed of the curve, by its curvature.
        let share = 1.0 + distance * first.cross(second) / (size * size * size);
        Self {
            t,
            place: cubic.eval(t) + outward(first / size) * distance,
            slope: first * share,
            backwards: share <= 0.0,
        }
    }
}

fn follow(cubic: &CubicBez, distance: f64, [from, to]: [Sample; 2], depth: u32, shifted: &mut Shifted) {
    let step = (to.t - from.t) / 3.0;
    let candidate = CubicBez::new(from.place, from.place + from.slope * step, to.place - to.slope * step, to.place);
    let fits = [0.25, 0.5, 0.75].into_iter().all(|share| {
        let truth = Sample::at(cubic, distance, from.t + (to.t - from.t) * share);
        (candidate.eval(share) - truth.place).hypot() < CURVE_WITHIN
    });
    // Halved at least once, so that a curve like an S is not taken for its chord.
    if depth > 0 && (fits || depth >= MOST_HALVINGS) {
        shifted.backwards |= from.backwards || to.backwards;
        shifted.chain.push(PathSeg::Cubic(candidate));
        return;
    }
    let middle = Sample::at(cubic, distance, (from.t + to.t) / 2.0);
    follow(cubic, distance, [from, middle], depth + 1, shifted);
    follow(cubic, distance, [middle, to], depth + 1, shifted);
}
