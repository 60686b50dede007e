//! One line of a piece with the mouths of its darts.

use kurbo::{ParamCurve, PathSeg, Vec2};

use super::super::crossing;
use super::super::part::{Part, Spot};
use super::super::ring::{self, Seg};
use super::mouth::{self, Opening};
use super::placing::{self, Mouth};

/// One line, shaped.
pub(super) struct ShapedLine {
    pub segs: Vec<Seg>,
    /// What is left of each edge that has darts, and how long it is in mm, without their mouths.
    pub left: Vec<(usize, Vec<Part>, f64)>,
    /// Where each dart meets the line.
    pub openings: Vec<Opening>,
}

/// A run, or a mouth that is to be filled in.
enum Item {
    Seg(Seg),
    Mouth(usize),
}

/// Shapes a line; `Err` with the dart, by its place in `mouths`, whose mouth does not fit.
pub(super) fn shape(segs: &[Seg], mouths: &[&Mouth]) -> Result<ShapedLine, usize> {
    let mut line = ShapedLine { segs: Vec::new(), left: Vec::new(), openings: Vec::new() };
    let mut openings: Vec<Option<Opening>> = vec![None; mouths.len()];
    let mut items = Vec::new();
    let mut at = 0;
    while at < segs.len() {
        let edge = segs[at].edge;
        let runs: Vec<&Seg> = segs[at..].iter().take_while(|seg| seg.edge == edge).collect();
        at += runs.len();
        let mut here: Vec<usize> = (0..mouths.len()).filter(|dart| Some(mouths[*dart].edge) == edge).collect();
        here.sort_by(|one, two| order(mouths[*one].spots[0]).total_cmp(&order(mouths[*two].spots[0])));
        match (edge, here.as_slice()) {
            (Some(edge), [_, ..]) => opened(&mut line, &mut items, &mut openings, (edge, &runs), (mouths, &here))?,
            _ => items.extend(runs.into_iter().cloned().map(Item::Seg)),
        }
    }
    line.openings = openings.into_iter().enumerate().map(|(dart, one)| one.ok_or(dart)).collect::<Result<_, _>>()?;
    line.segs = filled(&items, &line.openings)?;
    // Where the shaped line meets itself, the last mouth that is near enough is told.
    match crossing::find(&line.segs) {
        Some(found) => Err(line
            .openings
            .iter()
            .position(|opening| Some(opening.edge) == found.first || Some(opening.edge) == found.second)
            .unwrap_or(0)),
        None => Ok(line),
    }
}

fn order((run, t): Spot) -> f64 {
    run as f64 + t
}

/// Cuts one edge at its darts.
fn opened(
    line: &mut ShapedLine,
    items: &mut Vec<Item>,
    openings: &mut [Option<Opening>],
    (edge, segs): (usize, &[&Seg]),
    (mouths, here): (&[&Mouth], &[usize]),
) -> Result<(), usize> {
    let runs: Vec<PathSeg> = segs.iter().map(|seg| seg.curve).collect();
    let mut left: Vec<Part> = Vec::new();
    let (mut from, mut start) = ((0, 0.0), Vec2::ZERO);
    let mut add = |items: &mut Vec<Item>, from: Spot, to: Spot, start: Vec2, end: Vec2| {
        for part in Part::between(&runs, from, to, start, end) {
            let ends = segs[part.run].ends.filter(|_| part.is_untouched());
            items.push(Item::Seg(Seg { edge: Some(edge), curve: part.curve(&runs), ends }));
            left.push(part);
        }
    };
    for &dart in here {
        let one = mouths[dart];
        let mut spots = [(0, 0.0); 2];
        for (spot, side) in spots.iter_mut().zip(one.sides) {
            *spot = placing::met(&runs, one.point, side).ok_or(dart)?;
        }
        if order(spots[0]) < order(from) - 1e-9 || order(spots[1]) < order(spots[0]) {
            return Err(dart);
        }
        add(items, from, spots[0], start, one.lengthened[0]);
        items.push(Item::Mouth(dart));
        let ends = [0, 1].map(|side| runs[spots[side].0].eval(spots[side].1) + one.lengthened[side]);
        openings[dart] = Some(Opening { edge, point: one.point, sides: ends, onto_first: one.onto_first() });
        (from, start) = (spots[1], one.lengthened[1]);
    }
    add(items, from, (runs.len() - 1, 1.0), start, Vec2::ZERO);
    let length = left.iter().map(|part| ring::length(&part.curve(&runs))).sum();
    line.left.push((edge, left, length));
    Ok(())
}

/// Puts the mouths in their places.
fn filled(items: &[Item], openings: &[Opening]) -> Result<Vec<Seg>, usize> {
    let mut segs = Vec::new();
    for (at, item) in items.iter().enumerate() {
        match item {
            Item::Seg(seg) => segs.push(seg.clone()),
            Item::Mouth(dart) => {
                let around = items[at + 1..].iter().chain(&items[..at]);
                let beside: Vec<Seg> = match openings[*dart].onto_first {
                    true => around.rev().map_while(run).map(Seg::reversed).collect(),
                    false => around.map_while(run).cloned().collect(),
                };
                segs.extend(mouth::runs(&openings[*dart], &beside).ok_or(*dart)?);
            }
        }
    }
    Ok(segs)
}

fn run(item: &Item) -> Option<&Seg> {
    match item {
        Item::Seg(seg) => Some(seg),
        Item::Mouth(_) => None,
    }
}
