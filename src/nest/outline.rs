//! Closed outlines: cleaned, turned, mirrored, and grown by half the gap, so that outlines which
//! touch after growing lie exactly the gap apart.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::float::simplify::SimplifyShape;

/// A point in mm, y downwards.
pub(super) type Point = [f64; 2];

/// The parts of an outline, each closed; one part for any sound piece.
pub(super) type Parts = Vec<Vec<Point>>;

/// The sides of the polygon that stands for a circle when an outline is grown: with 32 it reaches
/// at most 0.5 % of the radius too far, and never too little.
const SIDES: usize = 32;

/// Least and greatest x and y.
pub(super) fn bounds(points: impl IntoIterator<Item = Point>) -> [f64; 4] {
    let start = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    points.into_iter().fold(start, |at, [x, y]| [at[0].min(x), at[1].min(y), at[2].max(x), at[3].max(y)])
}

/// The area inside one closed part, in mm².
pub(super) fn area(part: &[Point]) -> f64 {
    let Some(&last) = part.last() else { return 0.0 };
    let mut before = last;
    let mut twice = 0.0;
    for &point in part {
        twice += before[0] * point[1] - point[0] * before[1];
        before = point;
    }
    (twice / 2.0).abs()
}

/// The outline mirrored left to right when `flipped`, then turned by quarters, with its box's
/// corner at the origin.
pub(super) fn turned(outline: &[Point], quarter_turns: u8, flipped: bool) -> Vec<Point> {
    let turned: Vec<Point> = outline
        .iter()
        .map(|&[x, y]| {
            let x = if flipped { -x } else { x };
            match quarter_turns % 4 {
                0 => [x, y],
                1 => [-y, x],
                2 => [-x, -y],
                _ => [y, -x],
            }
        })
        .collect();
    let [left, top, ..] = bounds(turned.iter().copied());
    turned.iter().map(|&[x, y]| [x - left, y - top]).collect()
}

/// The outline without crossings or points on straight lines; holes count as filled.
pub(super) fn cleaned(outline: &[Point]) -> Parts {
    outer(&[outline.to_vec()])
}

/// The outline with a margin of `radius` mm all round, rounded at its corners.
pub(super) fn grown(outline: &[Point], radius: f64) -> Parts {
    if radius <= 0.0 {
        return cleaned(outline);
    }
    let (normals, corners) = circle(radius);
    let mut shapes = cleaned(outline);
    for part in shapes.clone() {
        for (index, &from) in part.iter().enumerate() {
            let to = part[(index + 1) % part.len()];
            shapes.push(rod(from, to, &normals, &corners));
        }
    }
    for shape in &mut shapes {
        if signed(shape) < 0.0 {
            shape.reverse();
        }
    }
    outer(&shapes)
}

/// The outer parts of all that the shapes cover.
fn outer(shapes: &[Vec<Point>]) -> Parts {
    let joined = shapes.to_vec().simplify_shape_as::<i64>(FillRule::NonZero);
    joined.into_iter().filter_map(|shape| shape.into_iter().next()).filter(|part| part.len() > 2).collect()
}

fn signed(part: &[Point]) -> f64 {
    let mut twice = 0.0;
    for (index, point) in part.iter().enumerate() {
        let next = part[(index + 1) % part.len()];
        twice += point[0] * next[1] - next[0] * point[1];
    }
    twice
}

/// The directions in which the sides of the circle's polygon look, and its corners, each after the
/// side of the same number. Found by halving angles: square roots give the same digits on every
/// machine, sines need not.
fn circle(radius: f64) -> (Vec<Point>, Vec<Point>) {
    let mut half = [0.0f64, 1.0f64];
    let mut sides = 2;
    while sides < SIDES {
        half = [((1.0 + half[0]) / 2.0).sqrt(), ((1.0 - half[0]) / 2.0).sqrt()];
        sides *= 2;
    }
    let product = |a: Point, b: Point| [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
    let mut normals = Vec::with_capacity(SIDES);
    let mut corners = Vec::with_capacity(SIDES);
    let reach = radius / half[0];
    let mut at = [1.0, 0.0];
    for _ in 0..SIDES {
        normals.push(at);
        at = product(at, half);
        corners.push([at[0] * reach, at[1] * reach]);
        at = product(at, half);
    }
    (normals, corners)
}

/// All that the circle's polygon sweeps when moved along a straight line.
fn rod(from: Point, to: Point, normals: &[Point], corners: &[Point]) -> Vec<Point> {
    let along = [to[0] - from[0], to[1] - from[1]];
    let ahead = |normal: &Point| normal[0] * along[0] + normal[1] * along[1] > 0.0;
    let mut points = Vec::with_capacity(corners.len() + 2);
    for (index, corner) in corners.iter().enumerate() {
        let here = ahead(&normals[index]);
        let next = ahead(&normals[(index + 1) % normals.len()]);
        let mut push = |end: bool| {
            let base = if end { to } else { from };
            points.push([base[0] + corner[0], base[1] + corner[1]]);
        };
        push(here);
        if here != next {
            push(next);
        }
    }
    points
}
