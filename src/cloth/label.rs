//! What stands on a piece in a layout, and where there is room for it.

use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};

use super::layers::Layers;
use super::layout::{ClothLayout, LaidPiece};

/// How far apart the lines of a label stand, in mm.
pub(super) const LINE: f64 = 2.9;
/// The width of a letter, nearly, in mm.
const LETTER: f64 = 1.4;
/// How many places are tried across a piece, and along it.
const PLACES: i32 = 12;

/// The lines of a label and their middle, in mm on paper: the name where there is room for it, else the
/// number; and how the piece is laid where that is not the usual way. `None` on a piece too small to be
/// written on. `outline` is the piece as drawn.
pub(super) fn label(
    layout: &ClothLayout,
    piece: &LaidPiece,
    outline: &BezPath,
    name: &str,
    number: usize,
) -> Option<(Vec<String>, Point)> {
    let bounds = outline.bounding_box();
    if bounds.width() <= LETTER || bounds.height() <= LETTER {
        return None;
    }
    let mut places = places(bounds);
    places.retain(|place| outline.contains(*place));
    let tries = ways(layout, piece, name, number);
    let found =
        tries.iter().find_map(|lines| Some((lines.clone(), places.iter().find(|at| holds(outline, lines, **at))?)));
    match found {
        Some((lines, at)) => Some((lines, *at)),
        None => Some((tries.last()?.clone(), *places.first()?)),
    }
}

/// What may be written, the fullest first.
fn ways(layout: &ClothLayout, piece: &LaidPiece, name: &str, number: usize) -> Vec<Vec<String>> {
    let notes: &[(&str, &str)] = match (layout.single_layer(piece), piece.turned_over && piece.layers == Layers::One) {
        (false, false) => &[],
        (true, false) => &[("single layer", "1×")],
        (false, true) => &[("turned over", "over")],
        (true, true) => &[("single layer", "1×"), ("turned over", "over")],
    };
    let number = number.to_string();
    let long =
        |first: &str| [first].into_iter().chain(notes.iter().map(|(note, _)| *note)).map(str::to_owned).collect();
    let broken = |first: &str| {
        let words = notes.iter().flat_map(|(note, _)| note.split(' '));
        [first].into_iter().chain(words).map(str::to_owned).collect()
    };
    let short: Vec<&str> = notes.iter().map(|(_, short)| *short).collect();
    let short = if short.is_empty() { number.clone() } else { format!("{number} ({})", short.join(", ")) };
    vec![long(name), broken(name), long(&number), broken(&number), vec![short]]
}

/// Places all over a box, the nearest to its middle first.
fn places(bounds: Rect) -> Vec<Point> {
    let step = Vec2::new(bounds.width(), bounds.height()) / f64::from(2 * PLACES + 1);
    let all = (-PLACES..=PLACES).flat_map(|x| (-PLACES..=PLACES).map(move |y| (x, y)));
    let at = |(x, y): (i32, i32)| bounds.center() + Vec2::new(step.x * f64::from(x), step.y * f64::from(y));
    let mut places: Vec<Point> = all.map(at).collect();
    places.sort_by(|one, two| one.distance_squared(bounds.center()).total_cmp(&two.distance_squared(bounds.center())));
    places
}

/// Whether lines about a place lie wholly on a piece.
fn holds(outline: &BezPath, lines: &[String], at: Point) -> bool {
    let letters = lines.iter().map(|line| line.chars().count()).max().unwrap_or(0);
    let half = Vec2::new(letters as f64 * LETTER, lines.len() as f64 * LINE) / 2.0;
    let shares = [(-1.0, -1.0), (0.0, -1.0), (1.0, -1.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (-1.0, 1.0), (-1.0, 0.0)];
    shares.iter().all(|(x, y)| outline.contains(at + Vec2::new(half.x * x, half.y * y)))
}
