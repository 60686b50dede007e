//! Darts, pleats and tucks that were closed before a step: the piece drawn with their mouths shut.
//!
//! What a dart takes out is widest at its edge and nothing at its point. On either side of it the cloth is drawn
//! nearer to its middle by half of what it takes out there, so that both legs come to lie on one line and the edge
//! is as long as it is sewn. A pleat takes out the same from its edge down to where it is released.

use kurbo::{BezPath, Line, PathEl, Point, Vec2};

use super::inside::Detail;
use super::trace::{closed_line, corners, open_line};
use crate::geometry::{Dart, Fold, Pleat, Shape};
use crate::resolve::Inside;

/// How finely lines are divided before they are moved, in mm of cloth.
const FINE: f64 = 3.0;
/// What lies nearer together is one place, in mm of cloth.
const STEP: f64 = 0.4;
/// How far a line may bend and still be drawn straight, in mm of cloth.
const STRAIGHT: f64 = 0.02;

/// One fold of cloth that is closed, in the author's drawing.
#[derive(Debug, Clone, Copy)]
struct Closing {
    /// The middle of its mouth on the stitching line.
    at: Point,
    /// From there into the piece, one long.
    along: Vec2,
    /// Half of what it takes out at its widest.
    half: f64,
    /// How far in it is widest, and where it ends.
    widest: (f64, f64),
    /// Where it is nothing on the other side of the mouth; `None` where it opens at an edge.
    before: Option<f64>,
    /// How far in its lips lie on the cutting line; mostly less than nothing.
    lip: f64,
    /// Whether its mouth is shaped, so that the cutting line runs out and back across it.
    shaped: bool,
}

impl Closing {
    /// Half of what it takes out so far in.
    fn taken(&self, far: f64) -> f64 {
        let (widest, end) = self.widest;
        let share = match self.before {
            Some(start) if far < 0.0 => 1.0 - far / start,
            Some(_) => 1.0 - far / end,
            None if far <= widest && widest > 0.0 => 1.0,
            // The legs run on through the allowance.
            None => (1.0 - (far - widest) / (end - widest)).min(1.3),
        };
        self.half * share.max(0.0)
    }

    fn moved(&self, point: Point) -> Vec2 {
        let across = Vec2::new(-self.along.y, self.along.x);
        let from = point - self.at;
        let (far, aside) = (from.dot(self.along), from.dot(across));
        let taken = self.taken(far);
        if aside.abs() > taken {
            return across * (-aside.signum() * taken);
        }
        // What lies between the legs is folded away; the lips meet.
        let lift = if self.shaped && far < self.widest.1 * 0.25 { self.lip - far } else { 0.0 };
        across * -aside + self.along * lift
    }

    /// The line at which it is sewn or laid, as it lies when it is closed.
    fn line(&self) -> Line {
        let (from, to) = match self.before {
            Some(start) => (start, self.widest.1),
            None => (self.lip, if self.widest.0 > 0.0 { self.widest.0 } else { self.widest.1 }),
        };
        Line::new(self.at + self.along * from, self.at + self.along * to)
    }
}

/// All that is closed in a piece, in the author's drawing.
#[derive(Debug, Clone, Default)]
pub(super) struct Shut {
    closings: Vec<Closing>,
    lines: Vec<Detail>,
}

impl Shut {
    /// What of a piece is closed; of one cut on the fold, in both halves. `is_turned_in` tells of an edge, by its place,
    /// whether its allowance lies inside, so that lips meet at the stitching line.
    pub fn of(shape: &Shape, closed: &[Inside], is_turned_in: impl Fn(usize) -> bool) -> Shut {
        let mut shut = Shut::default();
        for inside in closed {
            match inside {
                Inside::Dart(at) => shut.dart(shape.darts().get(*at).and_then(Option::as_ref), &is_turned_in),
                Inside::Pleat(at) => shut.pleat(shape.pleats().get(*at).and_then(Option::as_ref)),
                Inside::Mark(_) => {}
            }
        }
        if let Some(over) = shape.over_fold() {
            let other: Vec<Closing> = shut
                .closings
                .iter()
                .map(|one| Closing { at: over * one.at, along: over * (one.at + one.along) - over * one.at, ..*one })
                .collect();
            // A dart in the middle of the whole piece is its own mirror image.
            let fresh = |one: &Closing| shut.closings.iter().all(|known| known.at.distance(one.at) > 0.5);
            let other: Vec<Closing> = other.into_iter().filter(fresh).collect();
            let lines: Vec<Detail> = shut.lines.iter().map(|line| line.moved(over)).collect();
            shut.closings.extend(other);
            shut.lines.extend(lines);
        }
        shut
    }

    pub fn is_empty(&self) -> bool {
        self.closings.is_empty()
    }

    fn dart(&mut self, dart: Option<&Dart>, is_turned_in: impl Fn(usize) -> bool) {
        let Some(dart) = dart else { return };
        let at = dart.mouth[0].midpoint(dart.mouth[1]);
        let half = dart.mouth[0].distance(dart.mouth[1]) / 2.0;
        let Some(point) = dart.points.last() else { return };
        let end = at.distance(*point);
        let along = (*point - at).normalize();
        let before = (dart.edge.is_none()).then(|| (dart.points[0] - at).dot(along));
        let lip = dart.legs.iter().map(|leg| (leg.p0 - at).dot(along)).fold(0.0, f64::min);
        let lip = if dart.edge.is_none_or(is_turned_in) { 0.0 } else { lip };
        let closing = Closing { at, along, half, widest: (0.0, end), before, lip, shaped: dart.edge.is_some() };
        self.lines.push(Detail::Sewn(closing.line()));
        self.closings.push(closing);
    }

    fn pleat(&mut self, pleat: Option<&Pleat>) {
        for [from, to] in pleat.iter().flat_map(|pleat| &pleat.folds) {
            let tuck = pleat.is_some_and(|pleat| pleat.fold == Fold::Tuck);
            let (start, end) = (from.p0.midpoint(to.p0), from.p1.midpoint(to.p1));
            let long = start.distance(end);
            if long < 1.0 {
                continue;
            }
            let closing = Closing {
                at: start,
                along: (end - start).normalize(),
                half: from.p0.distance(to.p0) / 2.0,
                widest: if tuck { (long * 0.98, long * 1.6) } else { (0.0, long) },
                before: None,
                lip: 0.0,
                shaped: false,
            };
            self.lines.push(if tuck { Detail::Sewn(closing.line()) } else { Detail::Folded(closing.line()) });
            self.closings.push(closing);
        }
    }

    /// Where a point comes to lie.
    pub fn point(&self, point: Point) -> Point {
        point + self.closings.iter().fold(Vec2::ZERO, |sum, closing| sum + closing.moved(point))
    }

    /// Where a line comes to lie.
    pub fn path(&self, path: &BezPath) -> BezPath {
        let closed = path.elements().iter().any(|element| matches!(element, PathEl::ClosePath));
        let mut points = corners(path);
        if closed && let Some(first) = points.first().copied() {
            points.push(first);
        }
        let mut fine: Vec<Point> = Vec::new();
        for pair in points.windows(2) {
            let parts = (pair[0].distance(pair[1]) / FINE).ceil().max(1.0);
            fine.extend((0..parts as usize).map(|part| pair[0].lerp(pair[1], part as f64 / parts)));
        }
        fine.extend(points.last());
        let mut moved: Vec<Point> = fine.into_iter().map(|point| self.point(point)).collect();
        // Where lips meet the line takes steps to and fro that are too small to be seen.
        let last = moved.last().copied();
        moved.dedup_by(|one, other| one.distance(*other) < STEP);
        if let (Some(end), Some(last)) = (moved.last_mut(), last) {
            *end = last;
        }
        let mut line = straightened(&moved);
        if closed {
            line.pop();
            return closed_line(&line);
        }
        open_line(&line)
    }

    /// The rest of what is drawn inside the piece, moved with it, and the lines at which it is closed.
    pub fn inside(&self, inside: &mut Vec<(Inside, Vec<Detail>)>, closed: &[Inside]) {
        inside.retain(|(one, _)| !closed.contains(one));
        for detail in inside.iter_mut().flat_map(|(_, details)| details) {
            *detail = detail.bent(|point| self.point(point), |path| self.path(path));
        }
    }

    /// The lines at which the piece was closed.
    pub fn lines(&self) -> Vec<Detail> {
        self.lines.clone()
    }
}

/// A line without the points that lie between two others.
fn straightened(points: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    let mut start = 0;
    while start < points.len() {
        kept.push(points[start]);
        let mut end = start + 1;
        while end + 1 < points.len() && is_straight(&points[start..=end + 1]) {
            end += 1;
        }
        start = end;
    }
    kept
}

fn is_straight(points: &[Point]) -> bool {
    let [first, .., last] = points else { return true };
    let way = *last - *first;
    if way.hypot() < 1e-9 {
        return false;
    }
    let along = way.normalize();
    points.iter().all(|point| {
        let from = *point - *first;
        from.cross(along).abs() < STRAIGHT && from.dot(along) > -1e-6
    })
}
