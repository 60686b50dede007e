//! Whether a line is its own mirror image: what tells a left piece from a right one.

use kurbo::{Line, ParamCurveNearest, PathEl, Point, Vec2};

use super::edge::Edge;
use super::outline::Outline;
use super::shape::Shape;

/// How far a line may lie from its mirror image and still be taken for the same, in mm: what a hand does not
/// notice (common practice, no source).
const WITHIN: f64 = 1.0;
/// How finely curves are read, in mm.
const FLAT: f64 = 0.05;
/// Points in which a line is compared.
const SAMPLES: usize = 96;

impl Edge {
    /// Whether the edge looks the same from both of its ends, as a straight one does: turned over, it still
    /// lies on itself.
    pub fn is_symmetric(&self) -> bool {
        let mut corners = Vec::new();
        kurbo::flatten(&self.seam, FLAT, |element| {
            if let PathEl::MoveTo(point) | PathEl::LineTo(point) = element {
                corners.push(point);
            }
        });
        let points = spaced(&corners);
        let (Some(first), Some(last)) = (points.first(), points.last()) else { return true };
        let chord = *last - *first;
        if chord.hypot() < WITHIN {
            return true;
        }
        let (along, middle) = (chord.normalize(), first.midpoint(*last));
        let over = |point: Point| point - along * (2.0 * (point - middle).dot(along));
        points.iter().zip(points.iter().rev()).all(|(one, other)| over(*one).distance(*other) <= WITHIN)
    }
}

impl Shape {
    /// Whether the whole piece, turned over, is the same piece: then there is no left and no right one.
    pub fn is_symmetric(&self) -> bool {
        let corners: Vec<Point> = corners(self.whole().cutting());
        let points = spaced(&corners);
        let (middle, slant) = lie(&corners);
        let turns = [0.0, 0.25, 0.5, 0.75].map(|part| part * std::f64::consts::PI);
        let principal = [slant, slant + std::f64::consts::FRAC_PI_2];
        turns.into_iter().chain(principal).any(|angle| {
            let axis = Vec2::from_angle(angle);
            let over = |point: Point| {
                let from = point - middle;
                middle + axis * (2.0 * from.dot(axis)) - from
            };
            points.iter().all(|point| distance(&corners, over(*point)) <= WITHIN)
        })
    }
}

/// The corners of a closed line, the first again at the end.
fn corners(outline: &Outline) -> Vec<Point> {
    let mut corners: Vec<Point> = outline.flatten(FLAT).into_iter().map(|[x, y]| Point::new(x, y)).collect();
    corners.extend(corners.first().copied());
    corners
}

/// Points along a line, at even distances.
fn spaced(corners: &[Point]) -> Vec<Point> {
    let total: f64 = corners.windows(2).map(|two| two[0].distance(two[1])).sum();
    let mut points = Vec::with_capacity(SAMPLES + 1);
    let (mut run, mut before) = (0, 0.0);
    for sample in 0..=SAMPLES {
        let far = total * sample as f64 / SAMPLES as f64;
        while run + 2 < corners.len() && before + corners[run].distance(corners[run + 1]) < far {
            before += corners[run].distance(corners[run + 1]);
            run += 1;
        }
        let Some([from, to]) = corners.get(run..run + 2).and_then(|two| <[Point; 2]>::try_from(two).ok()) else {
            break;
        };
        let length = from.distance(to);
        points.push(if length > 0.0 { from.lerp(to, ((far - before) / length).clamp(0.0, 1.0)) } else { from });
    }
    points
}

/// The centroid of the area inside a closed line, and the angle of its longer principal axis.
fn lie(corners: &[Point]) -> (Point, f64) {
    // Green's theorem over the triangles between the origin and each run.
    let origin = corners.first().copied().unwrap_or_default();
    let (mut area, mut first, mut second) = (0.0, Vec2::ZERO, (0.0, 0.0, 0.0));
    for two in corners.windows(2) {
        let (a, b) = (two[0] - origin, two[1] - origin);
        let twice = a.cross(b);
        area += twice / 2.0;
        first += (a + b) * (twice / 6.0);
        second.0 += twice * (a.x * a.x + a.x * b.x + b.x * b.x) / 12.0;
        second.1 += twice * (a.y * a.y + a.y * b.y + b.y * b.y) / 12.0;
        second.2 += twice * (a.x * b.y + 2.0 * a.x * a.y + 2.0 * b.x * b.y + b.x * a.y) / 24.0;
    }
    if area.abs() < f64::EPSILON {
        return (origin, 0.0);
    }
    let middle = first / area;
    let (xx, yy) = (second.0 / area - middle.x * middle.x, second.1 / area - middle.y * middle.y);
    let xy = second.2 / area - middle.x * middle.y;
    (origin + middle, (2.0 * xy).atan2(xx - yy) / 2.0)
}

fn distance(corners: &[Point], point: Point) -> f64 {
    let runs = corners.windows(2).map(|two| Line::new(two[0], two[1]).nearest(point, 1e-6).distance_sq);
    runs.fold(f64::INFINITY, f64::min).sqrt()
}
