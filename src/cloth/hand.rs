//! Left and right: whether a piece turned over is another piece.

use kurbo::{Affine, BezPath, Point, Shape as _};

use crate::geometry::Outline;
use crate::nest::Turns;

/// How far an outline may leave its mirror image and count as the same, in mm.
const SAME: f64 = 0.5;
/// How far apart the points are that are held against each other, in mm.
const APART: f64 = 4.0;

/// An outline turned over, across the cloth: what runs along the cloth still runs the same way.
pub(super) fn turned_over(outline: &BezPath) -> BezPath {
    let over = Affine::scale_non_uniform(-1.0, 1.0) * outline.clone();
    Affine::translate((-over.bounding_box().x0, 0.0)) * over
}

/// Whether an outline turned over can be laid upon itself, turned as the cloth allows: such a piece has
/// no left and right.
pub(super) fn has_no_hand(outline: &BezPath, turns: Turns) -> bool {
    let own = points(outline);
    let quarters: &[u8] = match turns {
        Turns::Fixed => &[0],
        Turns::Half => &[0, 2],
        Turns::Quarter => &[0, 1, 2, 3],
    };
    let over = turned_over(outline);
    quarters.iter().any(|quarter| {
        let turned = Affine::rotate(f64::from(*quarter) * std::f64::consts::FRAC_PI_2) * over.clone();
        let shift = outline.bounding_box().center() - turned.bounding_box().center();
        let other = points(&(Affine::translate(shift) * turned));
        near(&own, &other) && near(&other, &own)
    })
}

/// Points along a closed outline, its corners among them.
fn points(outline: &BezPath) -> Vec<Point> {
    let corners = Outline { path: outline.clone() }.flatten(0.05);
    let mut points = Vec::new();
    for (from, to) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        let (from, to) = (Point::new(from[0], from[1]), Point::new(to[0], to[1]));
        let parts = (from.distance(to) / APART).ceil().clamp(1.0, 1000.0) as u32;
        points.extend((0..parts).map(|part| from.lerp(to, f64::from(part) / f64::from(parts))));
    }
    points
}

/// Whether every point of one closed outline lies upon the line of the other.
fn near(one: &[Point], other: &[Point]) -> bool {
    one.iter().all(|point| {
        let lines = other.iter().zip(other.iter().cycle().skip(1));
        lines.into_iter().any(|(from, to)| away(*point, *from, *to) <= SAME)
    })
}

/// The distance of a point from a straight line between two others.
fn away(point: Point, from: Point, to: Point) -> f64 {
    let along = to - from;
    let share = if along.hypot2() > 0.0 { ((point - from).dot(along) / along.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
    point.distance(from + along * share)
}
