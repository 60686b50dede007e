//! Where each piece lies on the plan, so that few sheets are used and no small piece is cut by a
//! joint where it need not be.
//!
//! Several orders of the pieces are tried, each laid greedily; the numbers that shuffle them come
//! from a generator with a fixed start, so that the same pieces always lie the same way.

use std::collections::HashSet;

/// A box to lay, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Oblong {
    pub width: f64,
    pub height: f64,
    /// Whether it stays where it is put first: the test gauge.
    pub fixed: bool,
    /// Whether it may be turned by a quarter.
    pub may_turn: bool,
}

/// Where a box lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub x: f64,
    pub y: f64,
    /// Whether it is turned by a quarter.
    pub turned: bool,
}

/// The least distance between two pieces, in mm.
pub(super) const GAP: f64 = 8.0;
/// How far a piece that begins on a sheet keeps from its joints, in mm.
const INSET: f64 = 4.0;
/// How many orders are tried for each width of the plan, as long as there are no more than [`FEW`] boxes.
const TRIALS: usize = 48;
/// Of more boxes fewer orders are tried, so that a plan of hundreds ends as soon as one of dozens: each order costs the
/// cube of their number.
const FEW: usize = 28;
/// The widest plan, in sheets.
const WIDEST: usize = 9;

/// What an arrangement costs: the less the better, from left to right. Small pieces that a joint cuts
/// come before everything else, then sheets, then other joints that could be spared.
type Cost = (usize, usize, usize, usize, u64);

/// What a spot for one box costs, in the same way: small pieces cut, sheets begun, joints that could be
/// spared, and how far it lies from the upper left corner.
type SpotCost = (usize, usize, usize, u64, u64);

/// Lays boxes on sheets of a step; the first box lies on the first sheet.
pub(super) fn arrange(boxes: &[Oblong], step: (f64, f64)) -> Vec<Spot> {
    let mut best: Option<(Cost, Vec<Spot>)> = None;
    let mut random = 0x9e37_79b9_7f4a_7c15_u64;
    let narrow = |one: &Oblong| if one.may_turn { one.width.min(one.height) } else { one.width };
    let widest = boxes.iter().map(narrow).fold(0.0, f64::max);
    let least = ((widest + 2.0 * INSET) / step.0).ceil().max(1.0) as usize;
    for columns in least..=least.max(WIDEST) {
        for trial in 0..trials(boxes.len()) {
            let order = order(boxes, trial, &mut random);
            let Some(spots) = lay(boxes, &order, step, columns) else { continue };
            let cost = cost(boxes, &spots, step);
            if best.as_ref().is_none_or(|(known, _)| cost < *known) {
                best = Some((cost, spots));
            }
        }
    }
    best.map(|(_, spots)| spots).unwrap_or_default()
}

fn trials(boxes: usize) -> usize {
    match boxes {
        0..=FEW => TRIALS,
        many => (TRIALS * FEW.pow(3) / many.pow(3)).max(1),
    }
}

/// Largest first in three senses, then shuffled.
fn order(boxes: &[Oblong], trial: usize, random: &mut u64) -> Vec<usize> {
    let mut order: Vec<usize> = (0..boxes.len()).collect();
    let key = |at: &usize| {
        let one = boxes[*at];
        match trial {
            0 => one.width * one.height,
            1 => one.width.max(one.height),
            _ => one.width + one.height,
        }
    };
    order.sort_by(|one, two| key(two).total_cmp(&key(one)).then(one.cmp(two)));
    if trial > 2 {
        for at in (1..order.len()).rev() {
            *random ^= *random << 13;
            *random ^= *random >> 7;
            *random ^= *random << 17;
            order.swap(at, (*random % (at as u64 + 1)) as usize);
        }
    }
    // What is fixed is laid before everything else.
    order.sort_by_key(|at| !boxes[*at].fixed);
    order
}

fn lay(boxes: &[Oblong], order: &[usize], step: (f64, f64), columns: usize) -> Option<Vec<Spot>> {
    let mut spots: Vec<Option<Spot>> = vec![None; boxes.len()];
    let width = columns as f64 * step.0;
    for &at in order {
        let one = boxes[at];
        if one.fixed {
            spots[at] = Some(Spot { x: INSET, y: INSET, turned: false });
            continue;
        }
        let placed: Vec<Rect> =
            spots.iter().enumerate().filter_map(|(at, spot)| spot.map(|spot| Rect::of(boxes[at], spot))).collect();
        let rows = placed.iter().map(|rect| (rect.y1 / step.1).ceil() as usize).max().unwrap_or(0) + 1;
        let mut xs: Vec<f64> = (0..columns).map(|column| column as f64 * step.0 + INSET).collect();
        let mut ys: Vec<f64> = (0..=rows).map(|row| row as f64 * step.1 + INSET).collect();
        xs.extend(placed.iter().map(|rect| rect.x1 + GAP));
        ys.extend(placed.iter().map(|rect| rect.y1 + GAP));
        let begun: HashSet<(usize, usize)> = placed.iter().flat_map(|rect| rect.tiles(step)).collect();
        let mut found: Option<(SpotCost, Spot)> = None;
        for turned in [false, true].into_iter().filter(|turned| one.may_turn || !turned) {
            for &x in &xs {
                let column = Rect::of(one, Spot { x, y: 0.0, turned });
                if column.x1 > width {
                    continue;
                }
                let beside: Vec<Rect> = placed.iter().filter(|other| column.is_beside(other)).copied().collect();
                for &y in &ys {
                    let spot = Spot { x, y, turned };
                    let rect = Rect::of(one, spot);
                    let small = rect.small_cuts(step);
                    // What is worse already need not be held against all its neighbours.
                    if found.as_ref().is_some_and(|(known, _)| small > known.0) {
                        continue;
                    }
                    if beside.iter().any(|other| rect.near(other)) {
                        continue;
                    }
                    let fresh = rect.tiles(step).filter(|tile| !begun.contains(tile)).count();
                    let key = (small, fresh, rect.cuts(step), (y / step.1) as u64, ((y * 10.0 + x) * 10.0) as u64);
                    if found.as_ref().is_none_or(|(known, _)| key < *known) {
                        found = Some((key, spot));
                    }
                }
            }
        }
        spots[at] = Some(found?.1);
    }
    spots.into_iter().collect()
}

fn cost(boxes: &[Oblong], spots: &[Spot], step: (f64, f64)) -> Cost {
    let rects: Vec<Rect> = boxes.iter().zip(spots).map(|(one, spot)| Rect::of(*one, *spot)).collect();
    let mut tiles: Vec<(usize, usize)> = rects.iter().flat_map(|rect| rect.tiles(step)).collect();
    tiles.sort_unstable();
    tiles.dedup();
    let cuts = rects.iter().map(|rect| rect.cuts(step)).sum();
    let small = rects.iter().map(|rect| rect.small_cuts(step)).sum();
    let wide = tiles.iter().map(|(_, column)| column + 1).max().unwrap_or(0);
    let high = tiles.iter().map(|(row, _)| row + 1).max().unwrap_or(0);
    let spread: f64 = rects.iter().map(|rect| rect.x1 + rect.y1).sum();
    (small, tiles.len(), cuts, wide.max(high), spread as u64)
}

#[derive(Debug, Clone, Copy)]
struct Rect {
    x0: f64,
    y0: f64,
    x1: f64,
    y1: f64,
}

impl Rect {
    fn of(one: Oblong, spot: Spot) -> Rect {
        let (width, height) = if spot.turned { (one.height, one.width) } else { (one.width, one.height) };
        Rect { x0: spot.x, y0: spot.y, x1: spot.x + width, y1: spot.y + height }
    }

    /// Whether it would be near the other at some height.
    fn is_beside(&self, other: &Rect) -> bool {
        self.x0 < other.x1 + GAP - 1e-6 && other.x0 < self.x1 + GAP - 1e-6
    }

    fn near(&self, other: &Rect) -> bool {
        self.is_beside(other) && self.y0 < other.y1 + GAP - 1e-6 && other.y0 < self.y1 + GAP - 1e-6
    }

    /// The sheets that it touches: row and column.
    fn tiles(&self, step: (f64, f64)) -> impl Iterator<Item = (usize, usize)> + use<> {
        let range = |from: f64, to: f64, step: f64| {
            (from / step).floor().max(0.0) as usize..=((to - 1e-6) / step).floor().max(0.0) as usize
        };
        let columns = range(self.x0, self.x1, step.0);
        range(self.y0, self.y1, step.1).flat_map(move |row| columns.clone().map(move |column| (row, column)))
    }

    /// How many joints cut it though it would fit on one sheet, lying or standing.
    fn small_cuts(&self, step: (f64, f64)) -> usize {
        let (width, height) = (self.x1 - self.x0 + 2.0 * INSET, self.y1 - self.y0 + 2.0 * INSET);
        let fits = |wide: f64, high: f64| wide <= step.0 && high <= step.1;
        if !fits(width, height) && !fits(height, width) {
            return 0;
        }
        let crossed = |from: f64, to: f64, step: f64| (((to - 1e-6) / step).floor() - (from / step).floor()) as usize;
        crossed(self.x0, self.x1, step.0) + crossed(self.y0, self.y1, step.1)
    }

    /// How many joints cut it that need not.
    fn cuts(&self, step: (f64, f64)) -> usize {
        let count = |from: f64, to: f64, step: f64| {
            let crossed = ((to - 1e-6) / step).floor() - (from / step).floor();
            let needed = ((to - from) / step).ceil() - 1.0;
            (crossed - needed).max(0.0) as usize
        };
        count(self.x0, self.x1, step.0) + count(self.y0, self.y1, step.1)
    }
}

/// How many sheets a plain grid takes: the pieces in rows, in their order, none turned, over as many
/// columns as `columns`, and every sheet of the grid printed.
pub fn naive_count(boxes: &[(f64, f64)], step: (f64, f64), columns: usize) -> usize {
    let room = columns.max(1) as f64 * step.0;
    let (mut x, mut y, mut row, mut wide) = (0.0, 0.0, 0.0_f64, 0.0_f64);
    for (width, height) in boxes {
        if x > 0.0 && x + width > room {
            x = 0.0;
            y += row + GAP;
            row = 0.0;
        }
        x += width + GAP;
        wide = wide.max(x - GAP);
        row = row.max(*height);
    }
    let (across, down) = ((wide / step.0).ceil().max(1.0), ((y + row) / step.1).ceil().max(1.0));
    across as usize * down as usize
}
