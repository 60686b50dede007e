//! Lines of a drawn step: outlines cut back, seams laid beside edges, stretches of a seam.
//!
//! Everything is in millimetres on paper, y grows downwards.

use kurbo::{BezPath, Line, ParamCurve, PathEl, PathSeg, Point, Shape, Vec2};

/// How far a flattened line may leave its curve, in mm on paper.
const FLAT: f64 = 0.01;
/// Points nearer than this are one, in mm on paper.
const SAME: f64 = 1e-4;

/// How the side of a piece that is cut back for the drawing looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// A straight line: a fold, or a seam that is opened out.
    Straight,
    /// A wave: the drawing leaves the rest out.
    Torn,
}

/// A line as its corners, curves flattened.
pub(super) fn corners(path: &BezPath) -> Vec<Point> {
    let mut found: Vec<Point> = Vec::new();
    kurbo::flatten(path, FLAT, |element| match element {
        PathEl::MoveTo(point) | PathEl::LineTo(point) => {
            if found.last().is_none_or(|last| last.distance(point) > SAME) {
                found.push(point);
            }
        }
        // Flattening leaves nothing but straight lines.
        PathEl::QuadTo(..) | PathEl::CurveTo(..) | PathEl::ClosePath => {}
    });
    found
}

/// Corners as a line to draw.
pub(super) fn open_line(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (at, point) in points.iter().enumerate() {
        if at == 0 { path.move_to(*point) } else { path.line_to(*point) }
    }
    path
}

/// The same closed.
pub(super) fn closed_line(points: &[Point]) -> BezPath {
    let mut path = open_line(points);
    if points.len() > 2 {
        path.close_path();
    }
    path
}

/// Both ends of an edge that runs straight; `None` for a bent one.
pub(super) fn straight(path: &BezPath) -> Option<(Point, Point)> {
    let points = corners(path);
    let (first, last) = (*points.first()?, *points.last()?);
    let along = (last - first).normalize();
    let bent = points.iter().any(|point| (*point - first).cross(along).abs() > 0.05);
    (!bent && first.distance(last) > SAME).then_some((first, last))
}

/// What of a closed line lies on the side of `at` to which `inward` points, its new side straight or
/// torn. Empty when nothing does.
pub(super) fn cut_back(outline: &BezPath, at: Point, inward: Vec2, side: Side) -> BezPath {
    let reach = Vec2::new(-inward.y, inward.x) * 1e4;
    let line = Line::new(at - reach, at + reach);
    let mut kept: Vec<PathSeg> = Vec::new();
    for segment in outline.segments() {
        let mut breaks: Vec<f64> = segment.intersect_line(line).iter().map(|crossing| crossing.segment_t).collect();
        breaks.extend([0.0, 1.0]);
        breaks.sort_by(f64::total_cmp);
        for pair in breaks.windows(2).filter(|pair| pair[1] - pair[0] > 1e-7) {
            if (segment.eval(f64::midpoint(pair[0], pair[1])) - at).dot(inward) > SAME {
                kept.push(segment.subsegment(pair[0]..pair[1]));
            }
        }
    }
    let mut path = BezPath::new();
    let Some(start) = kept.first().map(PathSeg::start) else { return path };
    path.move_to(start);
    let mut here = start;
    for segment in kept {
        if here.distance(segment.start()) > SAME {
            join(&mut path, here, segment.start(), side);
        }
        path.push(segment.as_path_el());
        here = segment.end();
    }
    if here.distance(start) > SAME {
        join(&mut path, here, start, side);
    }
    path.close_path();
    path
}

fn join(path: &mut BezPath, from: Point, to: Point, side: Side) {
    let length = from.distance(to);
    if side == Side::Straight || length < 4.0 {
        path.line_to(to);
        return;
    }
    let waves = ((length / 7.0).round() as usize).max(2);
    let step = (to - from) / waves as f64;
    let across = Vec2::new(-step.y, step.x).normalize() * 2.0;
    for wave in 0..waves {
        let start = from + step * wave as f64;
        let bulge = if wave % 2 == 0 { across } else { -across };
        path.quad_to(start + step / 2.0 + bulge, start + step);
    }
}

/// The middle of an edge, and the direction from there into the piece, one long.
pub(super) fn inward(edge: &BezPath, outline: &BezPath) -> Option<(Point, Vec2)> {
    let points = corners(edge);
    let (middle, along) = place(&points, length(&points) / 2.0)?;
    let normal = Vec2::new(-along.y, along.x);
    // A corner may lie near the middle: the nearest points tell the side, not those further off.
    for far in [0.02, 0.2, 1.0] {
        let inside = |way: Vec2| outline.contains(middle + way * far);
        match (inside(normal), inside(-normal)) {
            (true, false) => return Some((middle, normal)),
            (false, true) => return Some((middle, -normal)),
            _ => {}
        }
    }
    None
}

/// A line beside an open one, `distance` from it towards the side on which `inner` lies of its middle.
pub(super) fn beside(points: &[Point], inner: Vec2, distance: f64) -> Vec<Point> {
    let Some((_, along)) = place(points, length(points) / 2.0) else { return Vec::new() };
    let left = if Vec2::new(-along.y, along.x).dot(inner) > 0.0 { 1.0 } else { -1.0 };
    offset(points, left * distance, false)
}

/// A line inside a closed one, `distance` from it.
pub(super) fn ring_inside(outline: &BezPath, distance: f64) -> Vec<Point> {
    let mut points = corners(outline);
    if points.len() > 1 && points[0].distance(points[points.len() - 1]) < SAME {
        points.pop();
    }
    let way = if outline.area() > 0.0 { 1.0 } else { -1.0 };
    offset(&points, way * distance, true)
}

/// Each side moved by `distance` to its left hand (as y grows downwards: from x towards y), corners
/// kept sharp.
fn offset(points: &[Point], distance: f64, closed: bool) -> Vec<Point> {
    let count = points.len();
    let normal = |from: Point, to: Point| {
        let along = (to - from).normalize();
        Vec2::new(-along.y, along.x)
    };
    let mut moved = Vec::with_capacity(count);
    for at in 0..count {
        let before = (closed || at > 0).then(|| normal(points[(at + count - 1) % count], points[at]));
        let after = (closed || at + 1 < count).then(|| normal(points[at], points[(at + 1) % count]));
        let shift = match (before, after) {
            (Some(one), Some(other)) if 1.0 + one.dot(other) > 1e-3 => (one + other) / (1.0 + one.dot(other)),
            (Some(one), _) | (None, Some(one)) => one,
            (None, None) => continue,
        };
        moved.push(points[at] + shift * distance);
    }
    moved
}

/// The length of a line of corners.
pub(super) fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
}

/// The point so far along a line, and the direction there, one long.
pub(super) fn place(points: &[Point], mut far: f64) -> Option<(Point, Vec2)> {
    let last = points.len().checked_sub(2)?;
    for (at, pair) in points.windows(2).enumerate() {
        let side = pair[0].distance(pair[1]);
        if far <= side || at == last {
            let along = (pair[1] - pair[0]).normalize();
            return Some((pair[0] + along * far, along));
        }
        far -= side;
    }
    None
}

/// A stretch of a line, between two distances from its start.
pub(super) fn stretch(points: &[Point], from: f64, to: f64) -> Vec<Point> {
    let (Some((start, _)), Some((end, _))) = (place(points, from), place(points, to)) else { return Vec::new() };
    let mut kept = vec![start];
    let mut far = 0.0;
    for pair in points.windows(2) {
        far += pair[0].distance(pair[1]);
        if far > from + SAME && far < to - SAME {
            kept.push(pair[1]);
        }
    }
    kept.push(end);
    kept
}

/// How far along a line the point nearest to `point` is.
pub(super) fn nearest(points: &[Point], point: Point) -> f64 {
    let (mut best, mut found, mut far) = (f64::INFINITY, 0.0, 0.0);
    for pair in points.windows(2) {
        let (side, length) = (pair[1] - pair[0], pair[0].distance(pair[1]));
        let share = if length > SAME { ((point - pair[0]).dot(side) / side.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
        let apart = point.distance(pair[0] + side * share);
        if apart < best - SAME {
            (best, found) = (apart, far + share * length);
        }
        far += length;
    }
    found
}

/// A seam drawn from edge to edge: both ends lengthened or cut back to where the outline runs. Of a
/// seam that leaves the outline on its way, the longest stretch inside is kept.
pub(super) fn edge_to_edge(seam: &[Point], outline: &BezPath) -> Vec<Point> {
    let [first, second, ..] = seam else { return Vec::new() };
    let (last, before) = (seam[seam.len() - 1], seam[seam.len() - 2]);
    let more = 3.0 * length(seam).clamp(1.0, 8.0);
    let mut long = seam.to_vec();
    long[0] = *first + (*first - *second).normalize() * more;
    let end = long.len() - 1;
    long[end] = last + (last - before).normalize() * more;
    let runs = runs_inside(&long, outline).into_iter();
    runs.max_by(|one, other| length(one).total_cmp(&length(other))).unwrap_or_default()
}

/// All stretches of a line that lie inside an outline.
pub(super) fn runs_inside(line: &[Point], outline: &BezPath) -> Vec<Vec<Point>> {
    let mut breaks = vec![0.0, length(line)];
    let mut far = 0.0;
    for pair in line.windows(2) {
        let side = pair[0].distance(pair[1]);
        for segment in outline.segments() {
            let crossings = segment.intersect_line(Line::new(pair[0], pair[1]));
            breaks.extend(crossings.iter().map(|crossing| far + crossing.line_t * side));
        }
        far += side;
    }
    breaks.sort_by(f64::total_cmp);
    let inside = |pair: &&[f64]| {
        let middle = place(line, f64::midpoint(pair[0], pair[1]));
        pair[1] - pair[0] > SAME && middle.is_some_and(|(point, _)| outline.contains(point))
    };
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for pair in breaks.windows(2).filter(inside) {
        match kept.last_mut() {
            // A line that only touches the outline goes on.
            Some((_, end)) if pair[0] - *end <= SAME => *end = pair[1],
            _ => kept.push((pair[0], pair[1])),
        }
    }
    kept.into_iter().map(|(from, to)| stretch(line, from, to)).collect()
}

/// Edges of one piece end to end, as far as they meet: lines of corners, and whether each is closed.
pub(super) fn chains(edges: &[BezPath]) -> Vec<(Vec<Point>, bool)> {
    let mut open: Vec<Vec<Point>> = edges.iter().map(corners).filter(|points| points.len() > 1).collect();
    let mut done = Vec::new();
    while let Some(mut chain) = open.pop() {
        loop {
            let (start, end) = (chain[0], chain[chain.len() - 1]);
            if start.distance(end) < SAME && chain.len() > 3 {
                chain.pop();
                done.push((chain, true));
                break;
            }
            let touching = open.iter().position(|other| {
                let (one, two) = (other[0], other[other.len() - 1]);
                [start.distance(one), start.distance(two), end.distance(one), end.distance(two)]
                    .iter()
                    .any(|far| *far < 1e-2)
            });
            let Some(at) = touching else {
                done.push((chain, false));
                break;
            };
            let mut other = open.remove(at);
            if start.distance(other[0]) < 1e-2 || start.distance(other[other.len() - 1]) < 1e-2 {
                chain.reverse();
            }
            if chain[chain.len() - 1].distance(other[0]) > 1e-2 {
                other.reverse();
            }
            chain.extend(other.into_iter().skip(1));
        }
    }
    done.reverse();
    done
}
