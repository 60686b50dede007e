//! Checks a layout with code that shares nothing with the code that made it: points are turned by
//! a matrix, and overlaps are found twice over: by sampling lines and insides, and as the area that a
//! library of polygons finds in common.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use notchbook::nest::{Effort, Item, Layout, Place, Strip, Turns};

use crate::{laid, rectangle};

/// How far (mm) a piece may reach into another, or over an edge.
const DEPTH: f64 = 0.01;

type Point = [f64; 2];

/// All that is wrong with a layout, in words; empty when it is sound.
pub fn wrongs(items: &[Item], strip: &Strip, layout: &Layout) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut seen: Vec<usize> = layout.places.iter().map(|place| place.item).collect();
    seen.sort_unstable();
    if seen != (0..items.len()).collect::<Vec<_>>() {
        wrong.push(format!("pieces laid: {seen:?} of {}", items.len()));
        return wrong;
    }
    for place in layout
        .places
        .iter()
        .filter(|place| items[place.item].on_fold)
    {
        let item = &items[place.item];
        let left = item
            .outline
            .iter()
            .map(|point| point[0])
            .fold(f64::MAX, f64::min);
        for (before, after) in item.outline.iter().zip(put(item, place)) {
            // The fold edge stays at the fold: nothing is mirrored left to right.
            if (before[0] - left - after[0]).abs() > DEPTH {
                wrong.push(format!("piece {} has left the fold", place.item));
            }
        }
    }
    let outlines: Vec<Vec<Point>> = layout
        .places
        .iter()
        .map(|place| put(&items[place.item], place))
        .collect();
    let mut end = 0.0f64;
    for (place, outline) in layout.places.iter().zip(&outlines) {
        let item = &items[place.item];
        if !allowed(item, place) {
            wrong.push(format!(
                "piece {} lies as it may not: {place:?}",
                place.item
            ));
        }
        for &[x, y] in outline {
            end = end.max(y);
            if x < -DEPTH || x > strip.width + DEPTH || y < -DEPTH || y > layout.length + DEPTH {
                wrong.push(format!("piece {} leaves the strip at {x}, {y}", place.item));
            }
        }
    }
    if (end - layout.length).abs() > DEPTH {
        wrong.push(format!(
            "the pieces end at {end}, the layout at {}",
            layout.length
        ));
    }
    for (first, one) in outlines.iter().enumerate() {
        for (second, other) in outlines.iter().enumerate().skip(first + 1) {
            let depth = reach(one, other).max(reach(other, one));
            if depth > DEPTH {
                wrong.push(format!("pieces {first} and {second} overlap by {depth} mm"));
            }
            let shared = shared_area(one, other);
            if shared > DEPTH * around(one).min(around(other)) {
                wrong.push(format!("pieces {first} and {second} share {shared} mm²"));
            }
            let distance = distance(one, other);
            if distance < strip.gap - DEPTH {
                wrong.push(format!(
                    "pieces {first} and {second} are {distance} mm apart"
                ));
            }
        }
    }
    wrong
}

/// Whether the cloth allows the piece to lie so.
fn allowed(item: &Item, place: &Place) -> bool {
    if item.on_fold {
        let whole = place.quarter_turns == 0 && !place.flipped;
        let end_for_end = place.quarter_turns == 2 && place.flipped && item.turns != Turns::Fixed;
        return place.x.abs() <= DEPTH && (whole || end_for_end);
    }
    let turned = match item.turns {
        Turns::Fixed => place.quarter_turns == 0,
        Turns::Half => place.quarter_turns.is_multiple_of(2),
        Turns::Quarter => place.quarter_turns < 4,
    };
    turned && (item.may_flip || !place.flipped)
}

/// The outline where the layout puts it.
pub fn put(item: &Item, place: &Place) -> Vec<Point> {
    // Clockwise as seen with y downwards: x runs to y, y runs to -x.
    let (cos, sin) =
        [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)][usize::from(place.quarter_turns)];
    let mirror = if place.flipped { -1.0 } else { 1.0 };
    let points: Vec<Point> = item
        .outline
        .iter()
        .map(|&[x, y]| [mirror * x * cos - y * sin, mirror * x * sin + y * cos])
        .collect();
    let left = points.iter().map(|point| point[0]).fold(f64::MAX, f64::min);
    let top = points.iter().map(|point| point[1]).fold(f64::MAX, f64::min);
    points
        .iter()
        .map(|point| [point[0] - left + place.x, point[1] - top + place.y])
        .collect()
}

fn edges(outline: &[Point]) -> impl Iterator<Item = (Point, Point)> + Clone {
    outline
        .iter()
        .copied()
        .zip(outline.iter().copied().cycle().skip(1))
}

/// How deep points of one outline and of its inside lie in the other, mm; 0 when none does.
fn reach(one: &[Point], other: &[Point]) -> f64 {
    if apart(one, other) {
        return 0.0;
    }
    let mut samples = Vec::new();
    for (from, to) in edges(one) {
        let count = ((to[0] - from[0]).hypot(to[1] - from[1]) / 2.0)
            .ceil()
            .max(2.0);
        for part in 0..count as usize {
            let part = part as f64 / count;
            samples.push([
                from[0] + (to[0] - from[0]) * part,
                from[1] + (to[1] - from[1]) * part,
            ]);
        }
    }
    let ([left, top], [right, bottom]) = corners(one);
    for across in 1..16 {
        for down in 1..16 {
            let x = left + (right - left) * (f64::from(across) + 0.13) / 16.3;
            let y = top + (bottom - top) * (f64::from(down) + 0.17) / 16.3;
            if inside([x, y], one) {
                samples.push([x, y]);
            }
        }
    }
    samples
        .iter()
        .filter(|&&point| inside(point, other))
        .map(|&point| to_line(point, other))
        .fold(0.0, f64::max)
}

fn corners(outline: &[Point]) -> (Point, Point) {
    let fold = |start: f64, pick: fn(f64, f64) -> f64, axis: usize| {
        outline.iter().map(|point| point[axis]).fold(start, pick)
    };
    (
        [fold(f64::MAX, f64::min, 0), fold(f64::MAX, f64::min, 1)],
        [fold(f64::MIN, f64::max, 0), fold(f64::MIN, f64::max, 1)],
    )
}

/// Whether the boxes of two outlines do not overlap.
fn apart(one: &[Point], other: &[Point]) -> bool {
    let (from, to) = corners(one);
    let (other_from, other_to) = corners(other);
    (0..2).any(|axis| to[axis] <= other_from[axis] || other_to[axis] <= from[axis])
}

/// The area that two outlines have in common, mm².
fn shared_area(one: &[Point], other: &[Point]) -> f64 {
    if apart(one, other) {
        return 0.0;
    }
    let shapes =
        [one.to_vec()].overlay(&[other.to_vec()], OverlayRule::Intersect, FillRule::NonZero);
    let area = |line: &Vec<Point>| {
        edges(line)
            .map(|(from, to)| from[0] * to[1] - to[0] * from[1])
            .sum::<f64>()
            / 2.0
    };
    shapes.iter().flatten().map(area).sum::<f64>().abs()
}

/// The length of an outline, mm.
fn around(outline: &[Point]) -> f64 {
    edges(outline)
        .map(|(from, to)| (to[0] - from[0]).hypot(to[1] - from[1]))
        .sum()
}

/// Even-odd rule, by a ray to the right.
fn inside([x, y]: Point, outline: &[Point]) -> bool {
    edges(outline)
        .filter(|(from, to)| {
            (from[1] > y) != (to[1] > y)
                && x < from[0] + (y - from[1]) / (to[1] - from[1]) * (to[0] - from[0])
        })
        .count()
        % 2
        == 1
}

/// The distance of a point from the line of an outline.
fn to_line(point: Point, outline: &[Point]) -> f64 {
    edges(outline)
        .map(|(from, to)| to_edge(point, from, to))
        .fold(f64::MAX, f64::min)
}

fn to_edge(point: Point, from: Point, to: Point) -> f64 {
    let along = [to[0] - from[0], to[1] - from[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let part = ((point[0] - from[0]) * along[0] + (point[1] - from[1]) * along[1]) / square;
    let part = if square > 0.0 {
        part.clamp(0.0, 1.0)
    } else {
        0.0
    };
    (point[0] - from[0] - along[0] * part).hypot(point[1] - from[1] - along[1] * part)
}

/// The distance of two outlines that do not cross: between a corner of one and the line of the
/// other.
fn distance(one: &[Point], other: &[Point]) -> f64 {
    let there = one.iter().map(|&point| to_line(point, other));
    let back = other.iter().map(|&point| to_line(point, one));
    there.chain(back).fold(f64::MAX, f64::min)
}

/// A layout of two squares of 40 mm, moved to where the second lies at `x`, `y`.
fn two_squares(x: f64, y: f64, gap: f64) -> Vec<String> {
    let items = vec![rectangle(40.0, 40.0, Turns::Fixed); 2];
    let strip = Strip { width: 100.0, gap };
    let mut layout = laid(
        &items,
        &Strip {
            width: 100.0,
            gap: 0.0,
        },
        Effort::Quick,
    );
    let first = layout.places[0];
    layout.places[1] = Place {
        item: 1,
        x: first.x + x,
        y: first.y + y,
        ..first
    };
    layout.length = first.y + y.max(0.0) + 40.0;
    wrongs(&items, &strip, &layout)
}

#[test]
fn the_checker_sees_overlaps() {
    assert!(two_squares(40.0, 0.0, 0.0).is_empty());
    assert!(two_squares(39.98, 0.0, 0.0).join("").contains("overlap"));
    assert!(two_squares(0.0, 0.0, 0.0).join("").contains("overlap"));
    assert!(two_squares(10.0, 20.0, 0.0).join("").contains("overlap"));
    assert!(
        two_squares(61.0, 0.0, 0.0)
            .join("")
            .contains("leaves the strip")
    );
    assert!(two_squares(44.0, 0.0, 5.0).join("").contains("apart"));
    assert!(two_squares(45.0, 0.0, 5.0).is_empty());
}

#[test]
fn the_checker_sees_lost_pieces_and_wrong_lengths() {
    let items = vec![rectangle(40.0, 20.0, Turns::Fixed); 3];
    let strip = Strip {
        width: 100.0,
        gap: 0.0,
    };
    let sound = laid(&items, &strip, Effort::Quick);
    let mut lost = sound.clone();
    lost.places.pop();
    assert!(
        wrongs(&items, &strip, &lost)
            .join("")
            .contains("pieces laid")
    );
    let mut long = sound.clone();
    long.length += 1.0;
    assert!(
        wrongs(&items, &strip, &long)
            .join("")
            .contains("the pieces end")
    );
    let mut turned = sound;
    turned.places[0].quarter_turns = 2;
    assert!(
        wrongs(&items, &strip, &turned)
            .join("")
            .contains("as it may not")
    );
}
