//! The cutting lines of a nest as they are drawn: what lies on one line in several sizes is drawn once, for all of
//! them.

use kurbo::{BezPath, PathEl, Point, Vec2};

use super::plan::PlacedPiece;
use super::window;
use crate::draw::Detail;

/// A cutting line, and the sizes whose line it is.
#[derive(Debug, Clone)]
pub(super) struct Stroke {
    /// The sizes, by their places in `sizes`, the first first.
    pub sizes: Vec<usize>,
    pub path: BezPath,
}

/// How far the line through a point reaches on either side, in mm.
const POINT: Vec2 = Vec2::new(1.2, 0.0);

/// How far two lines may lie apart and be one, in mm: less than can be seen or cut.
const SAME: f64 = 0.02;

/// The cutting lines of a piece: one for each size, less what others share, and those shared.
pub(super) fn strokes(piece: &PlacedPiece) -> Vec<Stroke> {
    let lines: Vec<(usize, BezPath)> = piece.drawn().iter().map(|(size, plan)| (*size, plan.cut.clone())).collect();
    once(&lines)
}

/// The edges on the fold, each stretch once.
pub(super) fn folds(piece: &PlacedPiece) -> Vec<Stroke> {
    let fold = |(size, plan): &(usize, crate::draw::Plan)| Some((*size, plan.fold.clone()?));
    once(&piece.drawn().iter().filter_map(fold).collect::<Vec<_>>())
}

/// The marks of a nest that lie elsewhere in some of its sizes, each as a line that can be named: buttonholes, what is
/// placed, and through each point a short one.
pub(super) fn marks(piece: &PlacedPiece) -> Vec<Stroke> {
    let through = |at: Point| [at - POINT, at + POINT];
    let mut found: Vec<Stroke> = Vec::new();
    for (size, plan) in piece.drawn() {
        for detail in &plan.details {
            let path = match detail {
                Detail::Hole(line) => BezPath::from_iter(open_line(&[line.p0, line.p1])),
                Detail::Dot(at) => BezPath::from_iter(open_line(&through(*at))),
                Detail::Placed(placed) => placed.clone(),
                _ => continue,
            };
            match found.iter_mut().find(|known| is_same(&known.path, &path)) {
                Some(known) => known.sizes.push(*size),
                None => found.push(Stroke { sizes: vec![*size], path }),
            }
        }
    }
    found.retain(|stroke| stroke.sizes.len() < piece.outlines.len());
    found
}

/// Whether two marks are one: all their corners lie on each other.
fn is_same(one: &BezPath, other: &BezPath) -> bool {
    let corners = |path: &BezPath| -> Vec<Point> { path.elements().iter().filter_map(PathEl::end_point).collect() };
    let (one, other) = (corners(one), corners(other));
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| one.distance(other) <= SAME)
}

fn open_line(points: &[Point; 2]) -> [PathEl; 2] {
    [PathEl::MoveTo(points[0]), PathEl::LineTo(points[1])]
}

/// A straight stretch.
type Stretch = (Point, Point);

fn once(lines: &[(usize, BezPath)]) -> Vec<Stroke> {
    let stretches: Vec<(usize, Vec<Stretch>)> = lines.iter().map(|(size, path)| (*size, straight(path))).collect();
    let mut drawn: Vec<(Vec<usize>, Stretch)> = Vec::new();
    for (at, (size, own)) in stretches.iter().enumerate() {
        let before = drawn.len();
        for stretch in own {
            for (mut sizes, part) in parts(*stretch, at, &stretches) {
                // What an earlier size has drawn for this one as well is there already.
                let middle = part.0.midpoint(part.1);
                let is_there = |(with, line): &(Vec<usize>, Stretch)| with.contains(size) && lies_on(middle, *line);
                if drawn[..before].iter().any(is_there) {
                    continue;
                }
                let first = sizes.iter().position(|one| one == size).unwrap_or(0);
                drawn.push((sizes.split_off(first), part));
            }
        }
    }
    joined(drawn)
}

/// Stretches of the same sizes that follow each other, as one line.
fn joined(drawn: Vec<(Vec<usize>, Stretch)>) -> Vec<Stroke> {
    let mut strokes: Vec<Stroke> = Vec::new();
    let mut last: Option<(Vec<usize>, Point)> = None;
    for (sizes, (from, to)) in drawn {
        let goes_on = last.as_ref().is_some_and(|(with, end)| *with == sizes && end.distance(from) < 1e-9);
        let at = strokes.iter().position(|stroke| stroke.sizes == sizes).unwrap_or_else(|| {
            strokes.push(Stroke { sizes: sizes.clone(), path: BezPath::new() });
            strokes.len() - 1
        });
        if !goes_on {
            strokes[at].path.move_to(from);
        }
        strokes[at].path.line_to(to);
        last = Some((sizes, to));
    }
    strokes
}

/// Whether a place lies on a stretch, as near as lines are that are one.
fn lies_on(place: Point, (from, to): Stretch) -> bool {
    let along = to - from;
    let share = ((place - from).dot(along) / along.hypot2()).clamp(0.0, 1.0);
    (from + along * share).distance(place) <= SAME
}

fn straight(path: &BezPath) -> Vec<Stretch> {
    let mut found = Vec::new();
    window::segments(path, &mut |from, to| found.push((from, to)));
    found.retain(|(from, to)| from.distance(*to) > 1e-9);
    found
}

/// A stretch of one size cut where another size's line joins it or leaves it, each part with the sizes that lie on it.
fn parts((from, to): Stretch, own: usize, all: &[(usize, Vec<Stretch>)]) -> Vec<(Vec<usize>, Stretch)> {
    let mut covers: Vec<(usize, f64, f64)> = Vec::new();
    for (at, (_, other)) in all.iter().enumerate().filter(|(at, _)| *at != own) {
        covers.extend(other.iter().filter_map(|other| over((from, to), *other)).map(|(low, high)| (at, low, high)));
    }
    let mut cuts: Vec<f64> = covers.iter().flat_map(|(_, low, high)| [*low, *high]).chain([0.0, 1.0]).collect();
    cuts.sort_by(f64::total_cmp);
    let least = SAME / from.distance(to);
    cuts.dedup_by(|one, two| (*one - *two).abs() < least && *one < 1.0);
    let mut found = Vec::new();
    for pair in cuts.windows(2) {
        let middle = (pair[0] + pair[1]) / 2.0;
        if pair[1] - pair[0] < 1e-12 {
            continue;
        }
        let lies = |at: &usize| {
            *at == own || covers.iter().any(|(with, low, high)| with == at && *low <= middle && middle <= *high)
        };
        let sizes: Vec<usize> = (0..all.len()).filter(lies).map(|at| all[at].0).collect();
        found.push((sizes, (from.lerp(to, pair[0]), from.lerp(to, pair[1]))));
    }
    found
}

/// Where another stretch lies on this one, as shares of it; `None` where it does not.
fn over((from, to): Stretch, other: Stretch) -> Option<(f64, f64)> {
    let along = to - from;
    let length = along.hypot();
    let share = |point: Point| (along.dot(point - from) / (length * length)).clamp(0.0, 1.0);
    let (one, two) = (share(other.0), share(other.1));
    let (low, high) = (one.min(two), one.max(two));
    if (high - low) * length <= SAME {
        return None;
    }
    // Where they lie side by side, each is as near to the other: so either says the same of both.
    let way = (other.1 - other.0).normalize();
    let near = |share: f64| way.cross(from + along * share - other.0).abs() <= SAME;
    (near(low) && near(high)).then_some((low, high))
}
