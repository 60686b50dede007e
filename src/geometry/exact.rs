//! What can be told exactly, without floating point: lengths, boxes and areas of straight lines
//! between exact points, and allowances along the axes.

use kurbo::Rect;

use super::ring::{ExactPoint, Seg};
use crate::measure::{Exact, square_root, to_f64};

/// The length of a straight run, in mm. `None` when it is not a ratio of whole numbers or cannot be
/// held.
pub(super) fn run_length([from, to]: [ExactPoint; 2]) -> Option<Exact> {
    let across = to[0].checked_sub(from[0])?;
    let down = to[1].checked_sub(from[1])?;
    if across.is_zero() || down.is_zero() {
        return Some(across.abs().max(down.abs()));
    }
    let square = across.checked_mul(across)?.checked_add(down.checked_mul(down)?)?;
    let root = square_root(square)?;
    (root.checked_mul(root)? == square).then_some(root)
}

/// The length of the runs together; `None` unless all are straight between exact points.
pub(super) fn length<'a>(segs: impl Iterator<Item = &'a Seg>) -> Option<Exact> {
    let mut sum = Exact::ZERO;
    for seg in segs {
        let ends = seg.ends.filter(|_| seg.is_straight())?;
        sum = sum.checked_add(run_length(ends)?)?;
    }
    Some(sum)
}

/// The area inside straight runs between exact points, in mm².
pub(super) fn area(segs: &[Seg]) -> Option<Exact> {
    let mut twice = Exact::ZERO;
    for seg in segs {
        let [from, to] = seg.ends.filter(|_| seg.is_straight())?;
        let one = from[0].checked_mul(to[1])?;
        let other = from[1].checked_mul(to[0])?;
        twice = twice.checked_add(one.checked_sub(other)?)?;
    }
    twice.checked_div(Exact::from_integer(2))
}

/// The width and the height of the box round a line. `None` unless the points that reach furthest
/// are exact; `bounds` is the same box in floating point.
pub(super) fn box_size(segs: &[Seg], bounds: Rect) -> Option<(Exact, Exact)> {
    let points = || segs.iter().filter_map(|seg| seg.ends).flatten();
    let (left, right) = (points().map(|point| point[0]).min()?, points().map(|point| point[0]).max()?);
    let (top, bottom) = (points().map(|point| point[1]).min()?, points().map(|point| point[1]).max()?);
    let sides = [(left, bounds.x0), (right, bounds.x1), (top, bounds.y0), (bottom, bounds.y1)];
    let reaches = sides.into_iter().all(|(exact, drawn)| (to_f64(exact) - drawn).abs() < 1e-9 * (1.0 + drawn.abs()));
    if !reaches {
        return None;
    }
    Some((right.checked_sub(left)?, bottom.checked_sub(top)?))
}

/// The exact ends of every run of an offset line whose runs all lie along the axes. `None` when one
/// does not, or when runs that continue each other have different allowances.
pub(super) fn offset_ends(segs: &[Seg], distances: &[Exact]) -> Option<Vec<[ExactPoint; 2]>> {
    let lines: Vec<Axis> = segs.iter().map(|seg| Axis::of(seg, distances)).collect::<Option<_>>()?;
    let mut corners: Vec<ExactPoint> = Vec::with_capacity(lines.len());
    for (index, line) in lines.iter().enumerate() {
        let next = &lines[(index + 1) % lines.len()];
        corners.push(line.meet(next)?);
    }
    let before = |index: usize| corners[(index + corners.len() - 1) % corners.len()];
    Some(corners.iter().enumerate().map(|(index, corner)| [before(index), *corner]).collect())
}

/// A line along one axis, shifted: its one constant coordinate, and the end that it had.
struct Axis {
    upright: bool,
    at: Exact,
    end: ExactPoint,
}

impl Axis {
    fn of(seg: &Seg, distances: &[Exact]) -> Option<Self> {
        let [from, to] = seg.ends.filter(|_| seg.is_straight())?;
        let distance = *distances.get(seg.edge?)?;
        if from[0] == to[0] {
            // Downwards the outside lies to the right, upwards to the left.
            let out = if to[1] > from[1] { distance } else { -distance };
            let at = from[0].checked_add(out)?;
            Some(Self { upright: true, at, end: to })
        } else if from[1] == to[1] {
            let out = if to[0] > from[0] { -distance } else { distance };
            let at = from[1].checked_add(out)?;
            Some(Self { upright: false, at, end: to })
        } else {
            None
        }
    }

    fn meet(&self, next: &Self) -> Option<ExactPoint> {
        match (self.upright, next.upright) {
            (true, false) => Some([self.at, next.at]),
            (false, true) => Some([next.at, self.at]),
            _ if self.at != next.at => None,
            (true, true) => Some([self.at, self.end[1]]),
            (false, false) => Some([self.end[0], self.at]),
        }
    }
}
