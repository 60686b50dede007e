//! How a plan is made: the pieces of the sizes gathered, laid, and settled at their places.

use kurbo::{Affine, Rect};

use super::arrange::{Oblong, Spot, arrange, naive_count};
use super::endless::endless;
use super::paper::SheetPaper;
use super::plan::{PlacedPiece, SheetPlan};
use super::{gauge, labels};
use crate::draw::Plan;
use crate::model::is_for;
use crate::resolve::{Edition, PieceId};

/// The plan of one size.
pub fn plan_one_size(edition: &Edition<'_>, paper: SheetPaper) -> SheetPlan {
    plan(&[edition], paper)
}

/// The plan of all sizes, nested: each piece's outlines over one another, as their author drew them.
pub fn plan_all_sizes(editions: &[Edition<'_>], paper: SheetPaper) -> SheetPlan {
    let all: Vec<&Edition<'_>> = editions.iter().collect();
    plan(&all, paper)
}

/// A piece before it has a place: its outlines over one another, from 0, 0.
struct Loose {
    piece: PieceId,
    outlines: Vec<(usize, Plan)>,
    size: (f64, f64),
    /// The room that the words need to the right of it, when they do not fit inside.
    beside: Option<(f64, f64)>,
}

impl Loose {
    /// The room that the piece takes with its words.
    fn room(&self) -> (f64, f64) {
        match self.beside {
            Some((width, height)) => (self.size.0 + BESIDE + width, self.size.1.max(height)),
            None => self.size,
        }
    }
}

/// How far words keep from the piece that they stand beside, in mm.
const BESIDE: f64 = 2.0;

fn plan(editions: &[&Edition<'_>], paper: SheetPaper) -> SheetPlan {
    let settings = editions.first().map(|edition| edition.draft.facts.sheets).unwrap_or_default();
    let sizes: Vec<usize> = editions.iter().map(|edition| edition.size()).collect();
    let mut loose = loose(editions);
    if let (width, None) = paper.step(&settings) {
        // Words beside a long thin piece give way before the piece does.
        loose.iter_mut().filter(|one| one.room().0 > width).for_each(|one| one.beside = None);
    }
    let (step, height) = {
        let (width, height) = paper.step(&settings);
        ((width, height.unwrap_or(f64::INFINITY)), height)
    };
    let mut boxes = vec![Oblong { width: gauge::SIZE.0, height: gauge::SIZE.1, fixed: true, may_turn: false }];
    boxes.extend(loose.iter().map(|one| Oblong {
        width: one.room().0,
        height: one.room().1,
        fixed: false,
        may_turn: one.beside.is_none(),
    }));
    let (spots, step, too_large) = match height {
        Some(_) => (arrange(&boxes, step), step, Vec::new()),
        None => endless(&boxes, step.0),
    };
    let sizes_of: Vec<(f64, f64)> = boxes.iter().map(|one| (one.width, one.height)).collect();
    let mut plan = SheetPlan {
        paper,
        settings,
        sizes,
        pieces: Vec::new(),
        gauge: spots.first().map_or((0.0, 0.0), |spot| (spot.x, spot.y)),
        step,
        tiles: Vec::new(),
        naive: 0,
        too_large: too_large.iter().filter_map(|at| loose.get(*at).map(|one| one.piece)).collect(),
    };
    for (at, (one, spot)) in loose.into_iter().zip(spots.iter().skip(1)).enumerate() {
        if !too_large.contains(&at) {
            let number = editions.first().map_or(at + 1, |edition| edition.piece_number(one.piece));
            plan.pieces.push(settle(one, number, *spot));
        }
    }
    plan.tiles = plan.used_tiles();
    let columns = plan.tiles.iter().map(|(_, column)| column + 1).max().unwrap_or(1);
    plan.naive = if height.is_some() { naive_count(&sizes_of, step, columns) } else { 1 };
    plan
}

fn loose(editions: &[&Edition<'_>]) -> Vec<Loose> {
    let Some(first) = editions.first() else { return Vec::new() };
    let mut all = Vec::new();
    for (id, piece) in PieceId::each(&first.draft.facts.pieces) {
        // A length of tape is cut with a ruler.
        if piece.tape.is_some() {
            continue;
        }
        let mut outlines: Vec<(usize, Plan)> = Vec::new();
        for edition in editions.iter().filter(|edition| is_for(piece.sizes.as_ref(), edition.size())) {
            let Some(plan) = Plan::of(edition, id) else { continue };
            outlines.push((edition.size(), plan));
        }
        if outlines.is_empty() {
            continue;
        }
        let left = outlines.iter().map(|(_, plan)| plan.origin.0).fold(f64::INFINITY, f64::min);
        let top = outlines.iter().map(|(_, plan)| plan.origin.1).fold(f64::INFINITY, f64::min);
        let mut size = (0.0_f64, 0.0_f64);
        for (_, plan) in &mut outlines {
            let (x, y) = (plan.origin.0 - left, plan.origin.1 - top);
            size = (size.0.max(x + plan.size.0), size.1.max(y + plan.size.1));
            *plan = moved(plan, Affine::translate((x, y)));
        }
        let beside = labels::room_beside(edition_of(editions, &outlines), id, &outlines);
        all.push(Loose { piece: id, outlines, size, beside });
    }
    all
}

/// An edition that has the piece.
fn edition_of<'a, 'e>(editions: &[&'a Edition<'e>], outlines: &[(usize, Plan)]) -> Option<&'a Edition<'e>> {
    editions.iter().copied().find(|edition| outlines.iter().any(|(size, _)| *size == edition.size()))
}

fn settle(one: Loose, number: usize, spot: Spot) -> PlacedPiece {
    // Words stand upright whichever way the piece is turned, so their room is only ever at the right.
    let place = if spot.turned {
        // A quarter clockwise about the corner, then back into view.
        Affine::translate((spot.x + one.size.1, spot.y)) * Affine::rotate(std::f64::consts::FRAC_PI_2)
    } else {
        Affine::translate((spot.x, spot.y))
    };
    let (width, height) = if spot.turned { (one.size.1, one.size.0) } else { one.size };
    let left = spot.x + width + BESIDE;
    let beside = one.beside.map(|(wide, high)| Rect::new(left, spot.y, left + wide, spot.y + high));
    PlacedPiece {
        piece: one.piece,
        number,
        outlines: one.outlines.iter().map(|(size, plan)| (*size, moved(plan, place))).collect(),
        bounds: Rect::new(spot.x, spot.y, spot.x + width, spot.y + height),
        beside,
        turned: spot.turned,
    }
}

fn moved(plan: &Plan, place: Affine) -> Plan {
    Plan {
        piece: plan.piece,
        cutting: place * plan.cutting.clone(),
        stitching: place * plan.stitching.clone(),
        cut: place * plan.cut.clone(),
        sewn: place * plan.sewn.clone(),
        details: plan.details.iter().map(|detail| detail.moved(place)).collect(),
        fold: plan.fold.as_ref().map(|fold| place * fold.clone()),
        notches: plan.notches.iter().map(|notch| place * *notch).collect(),
        grain: plan.grain.map(|grain| place * grain),
        size: plan.size,
        origin: plan.origin,
    }
}
