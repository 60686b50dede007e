//! Laying pieces by their boxes: the best method for rectangles, and the starting point for
//! pieces of any other outline.
//!
//! Lengths are whole numbers of units here, so that "as wide as" has one meaning. One trial lays
//! the boxes in a given order below a limit; the search changes the order, keeps what leaves less
//! area over, and lowers the limit as soon as nothing is left over.

use super::crates::{Crate, Spot};
use super::random::Random;
use super::skyline::{Bench, Choice};

/// How many boxes the first climbs compare before another start is tried; later climbs last longer.
/// It does not depend on the budget, so a greater budget never gives a longer layout.
const FIRST_CLIMB: u64 = 400_000;

/// Every box laid.
pub(super) struct Stack {
    /// In units.
    pub(super) length: i64,
    /// One for each box, in the order of the boxes.
    pub(super) spots: Vec<Spot>,
}

/// Lays boxes on a strip `width` units wide, trying as long as the `budget` of compared boxes
/// lasts, or until the boxes are no longer than `enough`, in units. No pose of any box may be wider than the strip.
pub(super) fn stack(boxes: &[Crate], width: i64, budget: u64, enough: i64) -> Stack {
    let least = least_length(boxes, width).max(enough);
    let mut best = search(boxes, width, budget, enough);
    // A trial takes for each box the pose that lies lowest, and so never stands two upright that
    // would only then fit side by side. Poses held fast find that.
    let held = poses_held(boxes);
    let share = budget / (8 * held.len().max(1) as u64);
    for poses in held {
        if best.length <= least {
            break;
        }
        let crates: Vec<Crate> = boxes.iter().zip(&poses).map(|(each, pose)| each.held(*pose)).collect();
        let mut found = search(&crates, width, share, enough);
        if found.length < best.length {
            for (spot, pose) in found.spots.iter_mut().zip(&poses) {
                spot.pose = *pose;
            }
            best = found;
        }
    }
    best
}

/// Ways to hold every box in one pose: each mix of poses for a few boxes, for more of them all upright
/// or all lying.
fn poses_held(boxes: &[Crate]) -> Vec<Vec<usize>> {
    const FEW: usize = 6;
    let distinct: Vec<Vec<usize>> = boxes.iter().map(Crate::distinct_poses).collect();
    if distinct.iter().all(|poses| poses.len() < 2) {
        return Vec::new();
    }
    if boxes.len() <= FEW {
        let mut mixes: Vec<Vec<usize>> = vec![Vec::new()];
        for poses in &distinct {
            mixes = mixes
                .iter()
                .flat_map(|mix| poses.iter().map(|pose| mix.iter().copied().chain([*pose]).collect()))
                .collect();
        }
        return mixes;
    }
    let by = |upright: bool| -> Vec<usize> {
        let key = |each: &Crate, pose: usize| if upright { each.poses[pose].width } else { each.poses[pose].height };
        let least = |(each, poses): (&Crate, &Vec<usize>)| poses.iter().copied().min_by_key(|pose| key(each, *pose));
        boxes.iter().zip(&distinct).map(|pair| least(pair).unwrap_or(0)).collect()
    };
    vec![by(true), by(false)]
}

/// One search among the poses that the boxes have.
fn search(boxes: &[Crate], width: i64, budget: u64, enough: i64) -> Stack {
    let least = least_length(boxes, width).max(enough);
    let mut search = Search { boxes, width, bench: Bench::new(boxes.len()), best: pile(boxes), spent: 0 };
    let mut starts = Vec::new();
    for order in first_orders(boxes) {
        for choice in [Choice::Level, Choice::Snug] {
            let top = search.trial(&order, i64::MAX, choice).0;
            starts.push((top, order.clone(), choice));
        }
    }
    // A stable sort: equal starts keep the order above.
    starts.sort_by_key(|start| start.0);
    let mut random = Random::new(boxes.len() as u64 + 1);
    let mut round = 0;
    while search.length() > least && search.spent < budget && boxes.len() > 1 {
        let (_, order, choice) = &starts[round % starts.len()];
        let until = search.spent.saturating_add(FIRST_CLIMB * (round as u64 / 5 + 1));
        search.climb(order.clone(), *choice, least, until.min(budget), &mut random);
        round += 1;
    }
    search.best
}

/// One box after the other along the left edge: complete, and longer than need be.
fn pile(boxes: &[Crate]) -> Stack {
    let mut length = 0;
    let mut spots = Vec::with_capacity(boxes.len());
    for each in boxes {
        spots.push(Spot { x: 0, y: length, pose: 0 });
        length += each.poses.first().map_or(0, |size| size.height);
    }
    Stack { length, spots }
}

/// No layout is shorter than this, in units.
fn least_length(boxes: &[Crate], width: i64) -> i64 {
    let mut least = 0;
    let mut area = 0;
    for each in boxes {
        let shortest = each.poses.iter().map(|size| size.height).min();
        least = least.max(shortest.unwrap_or(0));
        area += each.area;
    }
    let wide = i128::from(width.max(1));
    let by_area = (area + wide - 1) / wide;
    least.max(i64::try_from(by_area).unwrap_or(i64::MAX))
}

/// Orders worth trying first, each by one measure, the greatest first.
fn first_orders(boxes: &[Crate]) -> Vec<Vec<usize>> {
    let long = |each: &Crate| each.poses.iter().map(|size| size.height.max(size.width)).max();
    let tall = |each: &Crate| each.poses.iter().map(|size| size.height).max();
    let wide = |each: &Crate| each.poses.iter().map(|size| size.width).max();
    let around = |each: &Crate| each.poses.iter().map(|size| size.width + size.height).max();
    let sorted = |measure: &dyn Fn(&Crate) -> (i128, i128)| {
        let mut order: Vec<usize> = (0..boxes.len()).collect();
        order.sort_by(|&a, &b| measure(&boxes[b]).cmp(&measure(&boxes[a])));
        order
    };
    let number = |value: Option<i64>| i128::from(value.unwrap_or(0));
    vec![
        sorted(&|each| (each.area, 0)),
        sorted(&|each| (number(wide(each)), number(tall(each)))),
        sorted(&|each| (number(tall(each)), number(wide(each)))),
        sorted(&|each| (number(long(each)), each.area)),
        sorted(&|each| (number(around(each)), each.area)),
    ]
}

struct Search<'a> {
    boxes: &'a [Crate],
    width: i64,
    bench: Bench,
    best: Stack,
    /// Boxes compared so far.
    spent: u64,
}

impl Search<'_> {
    /// The length of the best layout so far.
    fn length(&self) -> i64 {
        self.best.length
    }

    /// Lays once, remembers the layout if it is complete and the shortest, and gives the farthest
    /// end and the area left over.
    fn trial(&mut self, order: &[usize], limit: i64, choice: Choice) -> (i64, i128) {
        let trial = self.bench.lay(self.boxes, order, self.width, limit, choice);
        self.spent += trial.steps + order.len() as u64;
        if trial.left_over == 0 && trial.top < self.length() {
            let spots: Option<Vec<Spot>> = self.bench.spots.iter().copied().collect();
            if let Some(spots) = spots {
                self.best = Stack { length: trial.top, spots };
            }
        }
        (trial.top, trial.left_over)
    }

    /// Changes the order step by step, for a layout shorter than the best one.
    fn climb(&mut self, mut order: Vec<usize>, choice: Choice, least: i64, until: u64, random: &mut Random) {
        let count = order.len();
        let mut limit = self.length() - 1;
        let mut left_over = self.trial(&order, limit, choice).1;
        while self.spent < until {
            let (from, to) = (random.below(count), random.below(count));
            if from == to {
                self.spent += 1;
                continue;
            }
            let moved = random.below(3) == 0;
            change(&mut order, from, to, moved);
            let now = self.trial(&order, limit, choice).1;
            if now <= left_over {
                left_over = now;
            } else {
                undo(&mut order, from, to, moved);
            }
            if left_over == 0 {
                if self.length() <= least {
                    return;
                }
                limit = self.length() - 1;
                left_over = self.trial(&order, limit, choice).1;
            }
        }
    }
}

/// Swaps two places, or moves one box to another place.
fn change(order: &mut [usize], from: usize, to: usize, moved: bool) {
    if !moved {
        order.swap(from, to);
    } else if from < to {
        order[from..=to].rotate_left(1);
    } else {
        order[to..=from].rotate_right(1);
    }
}

/// Takes a `change` back.
fn undo(order: &mut [usize], from: usize, to: usize, moved: bool) {
    change(order, to, from, moved);
}
