//! Names of sizes in one list beside a small piece, each with a leader to its line: where words are as large as the
//! piece, names at every line would hide it.

use kurbo::{BezPath, Point, Rect, Vec2};

use super::crowd::Crowd;
use super::face::{Face, face, is_beam, width};
use super::labels::Words;
use super::names::{Names, dot};
use super::paper::SheetPaper;
use super::plan::PlacedPiece;
use super::strokes::Stroke;
use super::window;
use crate::model::Size;

/// A piece is small that is shorter and narrower than so many names are high: leaders to a long one would run along it.
const SMALL: f64 = 20.0;
/// From row to row, as a share of the height of a name.
const STEP: f64 = 1.5;
/// How far leaders keep from each other on the lines, as a share of the height of a name.
const APART: f64 = 0.8;

/// Whether the sizes of a piece stand in a list: on a beam, beside what is small.
pub(super) fn is_listed(paper: SheetPaper, (wide, high): (f64, f64), sizes: usize) -> bool {
    is_beam(paper) && sizes > 1 && wide.max(high) < SMALL * face(paper).line
}

/// The room of a list of some names: its width and its height.
pub(super) fn room<'a>(names: impl Iterator<Item = &'a str>, face: &Face) -> (f64, f64) {
    let (mut wide, mut high) = (0.0_f64, 0.0);
    for name in names {
        wide = wide.max(width(name, face.line) * 1.2);
        high += face.line * STEP;
    }
    (wide, high + face.line * STEP)
}

/// The list, at the foot of the room beside the piece.
pub(super) fn list(
    (piece, strokes): (&PlacedPiece, &[Stroke]),
    beside: Rect,
    sizes: &[Size],
    face: &Face,
    crowd: &mut Crowd,
) -> Names {
    let mut found = Names::default();
    let mut taken: Vec<Point> = Vec::new();
    let step = face.line * STEP;
    let top = beside.y1 - step * piece.outlines.len() as f64;
    for (at, (size, _)) in piece.outlines.iter().enumerate() {
        let name = &sizes[*size].name;
        let foot = Point::new(beside.x0, top + step * (at as f64 + 0.7));
        let start = foot - Vec2::new(1.0, face.line * 0.35);
        if let Some(target) = target(strokes, *size, start, &taken, face.line * APART) {
            found.leaders.move_to(target);
            found.leaders.line_to(start);
            found.dots.extend(dot(target, face.line * 0.2));
            taken.push(target);
        }
        let wide = width(name, face.line) * 1.2;
        crowd.room(Rect::new(foot.x, foot.y - face.line, foot.x + wide, foot.y + face.line * 0.25));
        found.words.push(Words { at: foot, text: name.clone(), size: face.line, strong: true, block: None });
    }
    found
}

/// The place on the line of a size to which its leader goes: the nearest that no other leader has, on what is its own
/// before what it shares.
fn target(strokes: &[Stroke], size: usize, from: Point, taken: &[Point], apart: f64) -> Option<Point> {
    let own = strokes.iter().filter(|stroke| stroke.sizes.contains(&size));
    let fewest = own.clone().map(|stroke| stroke.sizes.len()).min()?;
    let lines = own.filter(|stroke| stroke.sizes.len() == fewest);
    let places: Vec<Point> = lines.flat_map(|stroke| places(&stroke.path)).collect();
    let nearest = |clear: bool| {
        let free = |place: &&Point| !clear || taken.iter().all(|other| other.distance(**place) > apart);
        places.iter().filter(free).min_by(|one, two| one.distance(from).total_cmp(&two.distance(from))).copied()
    };
    nearest(true).or_else(|| nearest(false))
}

/// Places all along a line, a few mm apart.
fn places(path: &BezPath) -> Vec<Point> {
    let mut found = Vec::new();
    window::segments(path, &mut |from, to| {
        let count = (from.distance(to) / 3.0).ceil().max(1.0) as usize;
        found.extend((0..=count).map(|at| from.lerp(to, at as f64 / count as f64)));
    });
    found
}
