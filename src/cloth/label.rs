//! What stands on a piece in a layout, and where there is room for it.

use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};

use super::layers::Layers;
use super::layout::{ClothLayout, LaidPiece};
use crate::model::HouseWords;

/// How far apart the lines of a label stand, in mm.
pub(super) const LINE: f64 = 2.9;
/// The width of a letter, nearly, in mm.
const LETTER: f64 = 1.4;
/// How many places are tried across a piece, and along it.
const PLACES: i32 = 12;

/// The words of a piece.
#[derive(Debug, Clone)]
pub(super) struct Label {
    pub lines: Vec<String>,
    /// The middle of its lines, in mm on paper.
    pub middle: Point,
    /// Where its leader ends in the piece, which is too small to be written on.
    pub leader: Option<Point>,
}

/// What stands on a piece: the name where there is room for it, else the number; and how the piece is laid where that
/// is not the usual way. What does not go on the piece stands beside it, where nothing is `taken`, with a leader.
/// `outline` is the piece as drawn, `taken` the rooms of the others and of what is written already.
pub(super) fn label(
    layout: &ClothLayout,
    piece: &LaidPiece,
    outline: &BezPath,
    (name, number, house): (&str, usize, &HouseWords),
    (sheet, taken): (Rect, &[Rect]),
) -> Label {
    let bounds = outline.bounding_box();
    let mut places = places(bounds);
    places.retain(|place| outline.contains(*place));
    let tries = ways(layout, piece, (name, number), house);
    let found =
        tries.iter().find_map(|lines| Some((lines.clone(), places.iter().find(|at| holds(outline, lines, **at))?)));
    if let Some((lines, at)) = found {
        return Label { lines, middle: *at, leader: None };
    }
    let lines = tries.last().cloned().unwrap_or_default();
    let heart = places.first().copied().unwrap_or_else(|| bounds.center());
    match beside(bounds, &lines, sheet, taken) {
        Some(middle) => Label { lines, middle, leader: Some(heart) },
        None => Label { lines, middle: heart, leader: None },
    }
}

/// The room that lines take about their middle.
pub(super) fn room(lines: &[String], middle: Point) -> Rect {
    let letters = lines.iter().map(|line| line.chars().count()).max().unwrap_or(0);
    Rect::from_center_size(middle, (letters as f64 * LETTER + 1.0, lines.len() as f64 * LINE + 0.4))
}

/// A place near a piece where nothing lies; `None` where all is taken.
fn beside(bounds: Rect, lines: &[String], sheet: Rect, taken: &[Rect]) -> Option<Point> {
    const WAYS: i32 = 16;
    let free = |at: &Point| {
        let own = room(lines, *at);
        sheet.contains_rect(own) && !own.overlaps(bounds) && taken.iter().all(|other| !other.overlaps(own))
    };
    let out = |far: i32, way: i32| {
        let angle = std::f64::consts::TAU * f64::from(way) / f64::from(WAYS);
        let reach = Vec2::new(bounds.width(), bounds.height()) / 2.0 + Vec2::new(2.0, 2.0) * f64::from(far);
        bounds.center() + Vec2::new(reach.x * angle.cos(), reach.y * angle.sin()) * std::f64::consts::SQRT_2
    };
    (1..=9).flat_map(|far| (0..WAYS).map(move |way| out(far, way))).find(free)
}

/// What may be written, the fullest first.
fn ways(
    layout: &ClothLayout,
    piece: &LaidPiece,
    (name, number): (&str, usize),
    house: &HouseWords,
) -> Vec<Vec<String>> {
    let single = layout.single_layer(piece).then_some(["cloth_single_layer", "cloth_single_layer_short"]);
    let over = (piece.turned_over && piece.layers == Layers::One).then_some(["cloth_over", "cloth_over_short"]);
    let notes: Vec<[String; 2]> =
        single.into_iter().chain(over).map(|names| names.map(|name| house.say(name))).collect();
    let number = number.to_string();
    let long = |first: &str| {
        [first].into_iter().chain(notes.iter().map(|[note, _]| note.as_str())).map(str::to_owned).collect()
    };
    let broken = |first: &str| {
        let words = notes.iter().flat_map(|[note, _]| note.split(' '));
        [first].into_iter().chain(words).map(str::to_owned).collect()
    };
    let short: Vec<&str> = notes.iter().map(|[_, short]| short.as_str()).collect();
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
