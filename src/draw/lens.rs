//! A lens beside a drawing: what the step is about, magnified where it would be too small on paper to be seen.

use kurbo::{BezPath, Circle, PathEl, Point, Shape as _, Vec2};

use super::desk::Desk;
use super::edges;
use super::page::Page;
use super::past::millimetres;
use super::strips;
use super::trace::{closed_line, open_line};
use crate::model::Verb;

/// What is smaller than this on paper gets a lens, in mm.
const SMALL: f64 = 4.0;
/// How large the distance is under the lens, in mm on paper.
const SEEN: f64 = 4.5;
/// The radius of the lens, in mm on paper.
const RADIUS: f64 = 8.0;
/// What stays free between the drawing and its lens, in mm.
const GAP: f64 = 4.0;
/// How exactly a line must lie at the distance to be what it is measured from, in mm on paper.
const AT: f64 = 0.06;

/// Verbs that are about a distance from an edge or a seam.
const MEASURED: [Verb; 6] =
    [Verb::Topstitch, Verb::Edgestitch, Verb::Understitch, Verb::Staystitch, Verb::Baste, Verb::Boxstitch];

/// A place on the drawing, and from there to the line that the stitching is measured from.
struct Seen {
    at: Point,
    to_line: Vec2,
}

/// The drawing with a lens to its right, below it and to its left, as far as its verb is about a distance that is
/// too small to be seen; nothing where it is not, or where nothing on the drawing shows the distance.
pub(super) fn with<'a>(desk: &Desk<'_, '_>, verb: Verb, page: &Page<'a>, scale: f64) -> Vec<Page<'a>> {
    let works = desk.step.works.iter().filter(|work| work.verb == verb);
    let measured = MEASURED.contains(&verb) || (verb == Verb::Sew && strips::are_laid(desk));
    let mut far = works.filter_map(|work| match verb {
        Verb::Bind => Some(edges::bound(work).1),
        _ => work.allowance.filter(|_| measured).and_then(millimetres),
    });
    let Some(far) = far.next().map(|far| far / scale).filter(|far| *far > 0.0 && *far < SMALL) else {
        return Vec::new();
    };
    let more = SEEN / far;
    let Some(seen) = find(page, far, RADIUS / more) else { return Vec::new() };
    let all = page.bounds();
    let middle = |low: f64, high: f64, wanted: f64| {
        if high - low < 2.0 * RADIUS { f64::midpoint(low, high) } else { wanted.clamp(low + RADIUS, high - RADIUS) }
    };
    let level = middle(all.y0, all.y1, seen.at.y);
    let mut places = [
        Point::new(all.x1 + GAP + RADIUS, level),
        Point::new(middle(all.x0, all.x1, seen.at.x), all.y1 + GAP + RADIUS),
        Point::new(all.x0 - GAP - RADIUS, level),
    ];
    // The nearest first, so that its line crosses little.
    places.sort_by(|one, other| one.distance(seen.at).total_cmp(&other.distance(seen.at)));
    places.into_iter().map(|place| magnified(page.clone(), &seen, place, more)).collect()
}

/// The first place on the stitching of the drawing, the longest stretch first, where a line runs at the distance and
/// neither words nor symbols stand.
fn find(page: &Page<'_>, far: f64, ring: f64) -> Option<Seen> {
    let mut rows: Vec<(Point, Point)> =
        page.shapes().filter(|(class, _)| *class == "stitch").flat_map(|(_, path)| stretches(path)).collect();
    rows.retain(|(from, to)| from.distance(*to) > ring);
    rows.sort_by(|one, other| other.0.distance(other.1).total_cmp(&one.0.distance(one.1)));
    let lines: Vec<(Point, Point)> = page
        .shapes()
        .filter(|(class, _)| !matches!(*class, "stitch" | "arrow" | "dimension" | "pin" | "notch"))
        .flat_map(|(_, path)| stretches(path))
        .collect();
    for (from, to) in rows {
        let along = (to - from).normalize();
        let across = Vec2::new(-along.y, along.x) * far;
        for share in [0.75, 0.25, 0.62, 0.38, 0.88, 0.12, 0.5] {
            let at = from.lerp(to, share);
            let room = Circle::new(at, ring.max(1.0)).bounding_box();
            let there = |way: Vec2| lines.iter().any(|line| runs(*line, at + way, along));
            let way = [across, -across].into_iter().find(|way| there(*way));
            if let Some(to_line) = way.filter(|_| page.is_free(room)) {
                return Some(Seen { at, to_line });
            }
        }
    }
    None
}

/// Whether a line passes a point and runs nearly that way there.
fn runs((from, to): (Point, Point), point: Point, along: Vec2) -> bool {
    let way = to - from;
    let long = way.hypot();
    if long < 1e-6 || (way / long).cross(along).abs() > 0.05 {
        return false;
    }
    let share = (point - from).dot(way) / (long * long);
    (-0.01..=1.01).contains(&share) && from.lerp(to, share).distance(point) < AT
}

/// The straight stretches of a path, curves flattened.
fn stretches(path: &BezPath) -> Vec<(Point, Point)> {
    let lines = outlines(path).into_iter().flat_map(|(points, closed)| {
        let mut ends = points.clone();
        ends.extend(points.first().filter(|_| closed));
        ends.windows(2).map(|pair| (pair[0], pair[1])).collect::<Vec<_>>()
    });
    lines.collect()
}

/// The lines of a path as their corners, and whether each is closed.
fn outlines(path: &BezPath) -> Vec<(Vec<Point>, bool)> {
    let mut found: Vec<(Vec<Point>, bool)> = Vec::new();
    kurbo::flatten(path, 0.005, |element| match (element, found.last_mut()) {
        (PathEl::MoveTo(point), _) => found.push((vec![point], false)),
        (PathEl::LineTo(point), Some((points, _))) => points.push(point),
        (PathEl::ClosePath, Some((_, closed))) => *closed = true,
        // Flattening leaves nothing but straight lines.
        _ => {}
    });
    found
}

fn magnified<'a>(mut page: Page<'a>, seen: &Seen, place: Point, more: f64) -> Page<'a> {
    let ring = RADIUS / more;
    let larger = |point: Point| place + (point - seen.at) * more;
    let mut inside = Vec::new();
    for (class, path) in page.shapes().filter(|(class, _)| !matches!(*class, "arrow" | "dimension" | "pin")) {
        for (points, closed) in outlines(path) {
            if closed {
                let kept: Vec<Point> = clipped(points, seen.at, ring).into_iter().map(larger).collect();
                inside.extend((kept.len() > 2).then(|| (class, closed_line(&kept))));
            } else {
                let kept = runs_within(&points, seen.at, ring);
                let kept = kept.into_iter().map(|run| run.into_iter().map(larger).collect::<Vec<_>>());
                inside.extend(kept.map(|run| (class, open_line(&run))));
            }
        }
    }
    inside.push(("dimension", open_line(&[place, larger(seen.at + seen.to_line)])));
    let round = |middle: Point, radius: f64| Circle::new(middle, radius).to_path(0.01);
    let way = (place - seen.at).normalize();
    page.path("context", open_line(&[seen.at + way * ring, place - way * RADIUS]));
    page.path("lens", round(seen.at, ring));
    inside.push(("lens", round(place, RADIUS)));
    page.lens(inside);
    page
}

/// How many sides the round of a lens has where shapes are cut to it; the ring lies over them.
const SIDES: u32 = 60;

/// The sides of the round: a point on each, and the way out of it.
fn sides(middle: Point, radius: f64) -> impl Iterator<Item = (Point, Vec2)> {
    let turn = std::f64::consts::TAU / f64::from(SIDES);
    (0..SIDES).map(move |at| {
        let out = Vec2::from_angle(turn * f64::from(at));
        (middle + out * radius, out)
    })
}

/// What of a closed line lies in a round, side by side of it (Sutherland and Hodgman, Reentrant polygon clipping,
/// Communications of the ACM 17, 1974); where it leaves and comes back it runs along the round.
fn clipped(points: Vec<Point>, middle: Point, radius: f64) -> Vec<Point> {
    sides(middle, radius).fold(points, |points, (on, out)| {
        let count = points.len();
        let beyond = |point: Point| (point - on).dot(out);
        let mut kept = Vec::new();
        for at in 0..count {
            let (from, to) = (points[at], points[(at + 1) % count]);
            let (here, there) = (beyond(from), beyond(to));
            if here <= 0.0 {
                kept.push(from);
            }
            if (here > 0.0) != (there > 0.0) {
                kept.push(from.lerp(to, here / (here - there)));
            }
        }
        kept
    })
}

/// The runs of an open line in a round.
fn runs_within(points: &[Point], middle: Point, radius: f64) -> Vec<Vec<Point>> {
    let mut runs: Vec<Vec<Point>> = Vec::new();
    for pair in points.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (on, out) in sides(middle, radius) {
            let (here, there) = ((from - on).dot(out), (to - on).dot(out));
            match (here > 0.0, there > 0.0) {
                (true, true) => leaves = -1.0,
                (true, false) => enters = enters.max(here / (here - there)),
                (false, true) => leaves = leaves.min(here / (here - there)),
                (false, false) => {}
            }
        }
        if leaves - enters < 1e-9 {
            continue;
        }
        let (start, end) = (from.lerp(to, enters), from.lerp(to, leaves));
        match runs.last_mut() {
            Some(run) if run.last().is_some_and(|last| last.distance(start) < 1e-6) => run.push(end),
            _ => runs.push(vec![start, end]),
        }
    }
    runs
}
