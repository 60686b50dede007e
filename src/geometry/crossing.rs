//! Where a closed line crosses or touches itself: no piece can be cut from such a line, and an
//! offset line that does so needs its loops removed.

use kurbo::{ParamCurve, PathSeg, Point};

use super::ring::Seg;

/// Curves are followed with straight chords that leave them by no more than this, in mm: about a
/// tenth of the width of a thread.
const CHORD_WITHIN: f64 = 0.005;

/// A meeting this close to the corner that two neighbours share, in mm, is that corner.
const AT_CORNER: f64 = 0.01;

/// Two runs that meet where they should not.
#[derive(Debug, Clone, Copy)]
pub(super) struct Crossing {
    pub first: Option<usize>,
    pub second: Option<usize>,
    pub at: Point,
}

/// The first crossing as one goes round.
pub(super) fn find(segs: &[Seg]) -> Option<Crossing> {
    let boxes: Vec<Span> = segs.iter().map(|seg| Span::of(&seg.curve)).collect();
    let mut chords: Vec<Option<Vec<Point>>> = vec![None; segs.len()];
    for (i, first) in segs.iter().enumerate() {
        let found = |at| Crossing { first: first.edge, second: first.edge, at };
        if may_loop(&first.curve)
            && let Some(at) = own_loop(chords_of(&mut chords, i, &first.curve))
        {
            return Some(found(at));
        }
        for (j, second) in segs.iter().enumerate().skip(i + 1) {
            if !boxes[i].touches(&boxes[j]) {
                continue;
            }
            let mut shared: Vec<Point> = Vec::new();
            if j == i + 1 {
                shared.push(second.curve.start());
            }
            if i == 0 && j + 1 == segs.len() {
                shared.push(first.curve.start());
            }
            let one = chords_of(&mut chords, i, &first.curve).to_vec();
            let other = chords_of(&mut chords, j, &second.curve);
            if let Some(at) = meeting(&one, other, &shared) {
                return Some(Crossing { second: second.edge, ..found(at) });
            }
        }
    }
    None
}

fn chords_of<'a>(chords: &'a mut [Option<Vec<Point>>], index: usize, curve: &PathSeg) -> &'a [Point] {
    chords[index].get_or_insert_with(|| {
        let count = chord_count(curve, CHORD_WITHIN);
        (0..=count).map(|k| curve.eval(k as f64 / count as f64)).collect()
    })
}

/// How many chords of equal parameter follow the curve within `tolerance` (the bound of Wang, from
/// the second differences of the control points).
pub(super) fn chord_count(curve: &PathSeg, tolerance: f64) -> usize {
    let PathSeg::Cubic(cubic) = curve else {
        return 1;
    };
    let bend = (cubic.p0.to_vec2() - 2.0 * cubic.p1.to_vec2() + cubic.p2.to_vec2())
        .hypot()
        .max((cubic.p1.to_vec2() - 2.0 * cubic.p2.to_vec2() + cubic.p3.to_vec2()).hypot());
    ((0.75 * bend / tolerance).sqrt().ceil() as usize).clamp(2, 400)
}

/// An upright box, from the least to the greatest coordinates.
struct Span([f64; 4]);

impl Span {
    fn of(curve: &PathSeg) -> Self {
        let points = match curve {
            PathSeg::Line(line) => [line.p0, line.p0, line.p1, line.p1],
            other => {
                let cubic = other.to_cubic();
                [cubic.p0, cubic.p1, cubic.p2, cubic.p3]
            }
        };
        Self::round(&points)
    }

    fn round(points: &[Point]) -> Self {
        let mut span = [f64::MAX, f64::MAX, f64::MIN, f64::MIN];
        for point in points {
            span[0] = span[0].min(point.x);
            span[1] = span[1].min(point.y);
            span[2] = span[2].max(point.x);
            span[3] = span[3].max(point.y);
        }
        Self(span)
    }

    fn touches(&self, other: &Self) -> bool {
        let (a, b) = (&self.0, &other.0);
        a[0] <= b[2] + 1e-9 && b[0] <= a[2] + 1e-9 && a[1] <= b[3] + 1e-9 && b[1] <= a[3] + 1e-9
    }
}

/// Whether a cubic turns far enough to come back on itself.
fn may_loop(curve: &PathSeg) -> bool {
    let PathSeg::Cubic(cubic) = curve else {
        return false;
    };
    let legs: Vec<_> = [cubic.p1 - cubic.p0, cubic.p2 - cubic.p1, cubic.p3 - cubic.p2]
        .into_iter()
        .filter(|leg| leg.hypot() > 1e-12)
        .collect();
    let turned: f64 = legs.windows(2).map(|pair| pair[0].cross(pair[1]).atan2(pair[0].dot(pair[1])).abs()).sum();
    turned >= std::f64::consts::PI - 1e-9
}

fn own_loop(points: &[Point]) -> Option<Point> {
    let closes = points.first().zip(points.last()).is_some_and(|(first, last)| (*first - *last).hypot() < 1e-9);
    let count = points.len().saturating_sub(1);
    for i in 0..count {
        for j in i + 2..count {
            if closes && i == 0 && j + 1 == count {
                continue;
            }
            if let Some(at) = cross([points[i], points[i + 1]], [points[j], points[j + 1]]) {
                return Some(at);
            }
        }
    }
    None
}

fn meeting(one: &[Point], other: &[Point], shared: &[Point]) -> Option<Point> {
    let whole = Span::round(other);
    for a in one.windows(2) {
        let span = Span::round(a);
        if !span.touches(&whole) {
            continue;
        }
        for b in other.windows(2) {
            if !span.touches(&Span::round(b)) {
                continue;
            }
            if let Some(at) = cross([a[0], a[1]], [b[0], b[1]])
                && shared.iter().all(|corner| (at - *corner).hypot() > AT_CORNER)
            {
                return Some(at);
            }
        }
    }
    None
}

/// Where two straight lines meet, ends included. Of lines that lie on each other, the middle of the
/// stretch that they share.
fn cross(a: [Point; 2], b: [Point; 2]) -> Option<Point> {
    let (along, other, between) = (a[1] - a[0], b[1] - b[0], b[0] - a[0]);
    let (length, across) = (along.hypot(), along.cross(other));
    if length < 1e-12 {
        return None;
    }
    if across.abs() > 1e-9 * length * other.hypot() {
        let (t, u) = (between.cross(other) / across, between.cross(along) / across);
        let within = |value: f64| (-1e-9..=1.0 + 1e-9).contains(&value);
        return (within(t) && within(u)).then(|| a[0] + along * t);
    }
    if (between.cross(along) / length).abs() > 1e-9 {
        return None;
    }
    let place = |point: Point| (point - a[0]).dot(along) / (length * length);
    let (from, to) = (place(b[0]).min(place(b[1])).max(0.0), place(b[0]).max(place(b[1])).min(1.0));
    (from <= to).then(|| a[0] + along * ((from + to) / 2.0))
}
