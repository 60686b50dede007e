//! The plan: every piece of one size, or of all sizes nested, at its place on the joined sheets.

use kurbo::{Affine, BezPath, Rect, Shape as _};

use super::arrange::{Oblong, Spot, arrange, naive_count};
use super::paper::SheetPaper;
use super::{gauge, labels};
use crate::draw::Plan;
use crate::model::{SheetSettings, is_for};
use crate::nest::{Effort, Item, NestFault, Strip, Turns, nest};
use crate::resolve::{Edition, PieceId};

/// A piece at its place.
#[derive(Debug, Clone)]
pub struct PlacedPiece {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// Its number on sheets and in the booklet, from 1.
    pub number: usize,
    /// Its lines in each size shown, with the size's place in `sizes`; already at their place.
    pub outlines: Vec<(usize, Plan)>,
    /// The box that holds all of them.
    pub bounds: Rect,
    /// Room for the words beside a piece that is too small to hold them.
    pub beside: Option<Rect>,
    /// Whether it is turned by a quarter.
    pub turned: bool,
}

/// All pieces on the joined sheets of one paper.
#[derive(Debug, Clone)]
pub struct SheetPlan {
    /// The paper.
    pub paper: SheetPaper,
    /// The settings of margins and overlap.
    pub settings: SheetSettings,
    /// The sizes shown, by their places in `sizes`.
    pub sizes: Vec<usize>,
    /// The pieces.
    pub pieces: Vec<PlacedPiece>,
    /// Where the test gauge lies: its upper left corner.
    pub gauge: (f64, f64),
    /// The part of the plan that each sheet adds, in mm.
    pub step: (f64, f64),
    /// The sheets to print, row by row: row and column, from 0.
    pub tiles: Vec<(usize, usize)>,
    /// How many sheets a plain grid would take.
    pub naive: usize,
    /// Pieces that do not fit on the paper at all (an endless page takes any length, but not any
    /// width).
    pub too_large: Vec<PieceId>,
}

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

/// A page as long as it has to be: the pieces are laid one behind the other by their boxes. Gives the
/// places, the page's part of the plan, and the pieces that are too wide for it.
fn endless(boxes: &[Oblong], width: f64) -> (Vec<Spot>, (f64, f64), Vec<usize>) {
    let mut kept: Vec<usize> = (0..boxes.len()).collect();
    let mut too_large = Vec::new();
    let mut spots = vec![Spot { x: 0.0, y: 0.0, turned: false }; boxes.len()];
    loop {
        let items: Vec<Item> = kept
            .iter()
            .map(|at| {
                let one = boxes[*at];
                Item {
                    outline: vec![[0.0, 0.0], [one.width, 0.0], [one.width, one.height], [0.0, one.height]],
                    turns: if one.may_turn { Turns::Quarter } else { Turns::Fixed },
                    may_flip: false,
                    on_fold: one.fixed,
                }
            })
            .collect();
        match nest(&items, &Strip { width, gap: super::arrange::GAP }, Effort::Quick) {
            Ok(layout) => {
                for place in &layout.places {
                    spots[kept[place.item]] = Spot { x: place.x, y: place.y, turned: place.quarter_turns % 2 == 1 };
                }
                return (spots, (width, layout.length + 0.01), too_large);
            }
            Err(faults) => {
                let wide: Vec<usize> = faults
                    .iter()
                    .filter_map(|fault| match fault {
                        NestFault::TooWide { item, .. } | NestFault::NoArea { item } => Some(kept[*item]),
                        NestFault::NoStrip => None,
                    })
                    .collect();
                if wide.is_empty() {
                    return (spots, (width, 0.0), too_large);
                }
                kept.retain(|at| !wide.contains(at));
                // The first box is the gauge; pieces are counted from nought.
                too_large.extend(wide.iter().filter_map(|at| at.checked_sub(1)));
            }
        }
    }
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
        fold: plan.fold.as_ref().map(|fold| place * fold.clone()),
        notches: plan.notches.iter().map(|notch| place * *notch).collect(),
        grain: plan.grain.map(|grain| place * grain),
        size: plan.size,
        origin: plan.origin,
    }
}

impl SheetPlan {
    /// The sheets that show something: a line of a piece, its inside, or the gauge.
    fn used_tiles(&self) -> Vec<(usize, usize)> {
        let gauge = Rect::new(self.gauge.0, self.gauge.1, self.gauge.0 + gauge::SIZE.0, self.gauge.1 + gauge::SIZE.1);
        let last = |end: f64, step: f64| ((end - 1e-6) / step).floor().max(0.0) as usize;
        let rooms = self.pieces.iter().flat_map(|piece| [Some(piece.bounds), piece.beside].into_iter().flatten());
        let reach = rooms.fold(gauge, |all, one| all.union(one));
        let mut tiles = Vec::new();
        for row in 0..=last(reach.y1, self.step.1) {
            for column in 0..=last(reach.x1, self.step.0) {
                let tile = self.tile(row, column);
                let shows = tile.intersect(gauge).area() > 0.0
                    || self
                        .pieces
                        .iter()
                        .filter_map(|piece| piece.beside)
                        .any(|room| tile.intersect(room).area() > 0.0)
                    || self
                        .pieces
                        .iter()
                        .any(|piece| piece.outlines.iter().any(|(_, plan)| meets(&plan.cutting, tile)));
                if shows {
                    tiles.push((row, column));
                }
            }
        }
        tiles
    }

    /// The part of the plan that a sheet adds.
    pub fn tile(&self, row: usize, column: usize) -> Rect {
        let (x, y) = (column as f64 * self.step.0, row as f64 * self.step.1);
        Rect::new(x, y, x + self.step.0, y + self.step.1)
    }

    /// Rows and columns of the grid that holds all sheets.
    pub fn grid(&self) -> (usize, usize) {
        let rows = self.tiles.iter().map(|(row, _)| row + 1).max().unwrap_or(1);
        let columns = self.tiles.iter().map(|(_, column)| column + 1).max().unwrap_or(1);
        (rows, columns)
    }
}

/// Whether an outline crosses a rectangle, lies in it, or holds it.
fn meets(outline: &BezPath, tile: Rect) -> bool {
    if outline.bounding_box().intersect(tile).area() <= 0.0 {
        return false;
    }
    if outline.contains(tile.center()) {
        return true;
    }
    let mut crosses = false;
    super::window::segments(outline, &mut |from, to| crosses |= super::window::clip(from, to, tile).is_some());
    crosses
}

/// A tile's name: a letter for its row, a number for its column.
pub(super) fn tile_name((row, column): (usize, usize)) -> String {
    let mut letters = String::new();
    let mut row = row;
    loop {
        letters.insert(0, char::from(b'A' + u8::try_from(row % 26).unwrap_or(0)));
        if row < 26 {
            break;
        }
        row = row / 26 - 1;
    }
    format!("{letters}{}", column + 1)
}
