//! Laying pieces by their true outlines: many orders are laid on a cloth of columns, and the best
//! ones are settled exactly.

use super::pose::Piece;
use super::random::Random;
use super::raster::{Cloth, Columns};
use super::settle::{Laid, Table};

/// How many of the best layouts are settled.
const KEPT: usize = 3;

/// How many of those are then improved, which takes longer.
const IMPROVED: usize = 2;

/// What a place is chosen by, besides being near the left edge.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Rule {
    /// The piece ends as near to the start as it can.
    End,
    /// The piece begins as near to the start as it can.
    Begin,
}

/// A plan for one trial.
#[derive(Clone)]
struct Plan {
    order: Vec<usize>,
    rule: Rule,
    /// The pose in which each piece has to lie; None leaves the choice to the rule. A choice that
    /// looks best for one piece may spoil the room for the next.
    poses: Vec<Option<usize>>,
}

/// A layout with its cost: the length, and a small share of where its pieces lie.
struct Draft {
    cost: f64,
    laid: Vec<Laid>,
}

struct Search<'a> {
    pieces: &'a [Piece],
    columns: Vec<Vec<Columns>>,
    cloth: Cloth,
    /// For each pose of a piece and each first column, a y below which the cloth is known to be
    /// taken. Within a trial cloth is only taken, so what holds for a piece holds for its twins.
    floors: Vec<Vec<f64>>,
    step: f64,
    drafts: Vec<Draft>,
}

/// Lays pieces on a strip, trying as long as the budget of compared reaches lasts; `known` is a
/// layout to begin with. All lengths are grown by the gap.
pub(super) fn lay(pieces: &[Piece], width: f64, gap: f64, known: Vec<Laid>, budget: u64) -> Vec<Laid> {
    // Fewer columns make more trials in the same time; what they waste is won back by settling.
    let count = match pieces.len() {
        0..=12 => 160,
        13..=30 => 100,
        _ => 70,
    };
    let step = width / count as f64;
    let columns = |piece: &Piece| piece.poses.iter().map(|pose| Columns::new(pose, gap, step, count)).collect();
    let most = pieces.iter().map(|piece| piece.poses.len()).max().unwrap_or(0);
    let mut search = Search {
        pieces,
        columns: pieces.iter().map(columns).collect(),
        cloth: Cloth::new(count),
        floors: vec![vec![0.0; most * count]; pieces.len()],
        step,
        drafts: Vec::new(),
    };
    let mut random = Random::new(pieces.len() as u64 + 1);
    search.climb(&known, budget, &mut random);
    let drafts = std::mem::take(&mut search.drafts);
    let layouts = drafts.into_iter().map(|draft| draft.laid).chain([known]);
    let mut tables: Vec<Table> = layouts.map(|laid| Table::new(pieces, width, gap, &laid)).collect();
    for table in &mut tables {
        table.settle();
    }
    tables.sort_by(|a, b| a.length().total_cmp(&b.length()));
    for table in tables.iter_mut().take(IMPROVED) {
        table.improve(budget / 16, &mut random);
    }
    tables.sort_by(|a, b| a.length().total_cmp(&b.length()));
    tables.first().map_or(Vec::new(), |table| table.places().to_vec())
}

impl Search<'_> {
    /// Orders worth trying first; the last is that of the layout already known.
    fn first_orders(&self, known: &[Laid]) -> Vec<Vec<usize>> {
        let sorted = |measure: &dyn Fn(usize) -> f64| {
            let mut order: Vec<usize> = (0..self.pieces.len()).collect();
            order.sort_by(|&a, &b| measure(b).total_cmp(&measure(a)));
            order
        };
        let first = |piece: usize| &self.pieces[piece].poses[0];
        vec![
            sorted(&|piece| self.pieces[piece].area),
            sorted(&|piece| first(piece).height),
            sorted(&|piece| first(piece).width),
            sorted(&|piece| first(piece).width * first(piece).height),
            sorted(&|piece| first(piece).width.max(first(piece).height)),
            sorted(&|piece| -known[piece].y * 1e3 - known[piece].x),
        ]
    }

    /// Lays the first orders, then changes the best one step by step.
    fn climb(&mut self, known: &[Laid], budget: u64, random: &mut Random) {
        let mut best: Option<(f64, Plan)> = None;
        for order in self.first_orders(known) {
            for rule in [Rule::End, Rule::Begin] {
                let poses = vec![None; order.len()];
                let plan = Plan { order: order.clone(), rule, poses };
                let cost = self.trial(&plan);
                if best.as_ref().is_none_or(|kept| cost < kept.0) {
                    best = Some((cost, plan));
                }
            }
        }
        let Some((mut cost, mut plan)) = best else {
            return;
        };
        while self.cloth.steps < budget && plan.order.len() > 1 {
            let before = plan.clone();
            self.change(&mut plan, random);
            let now = self.trial(&plan);
            if now <= cost {
                cost = now;
            } else {
                plan = before;
            }
        }
    }

    /// Changes a plan in one place, or in a few.
    fn change(&self, plan: &mut Plan, random: &mut Random) {
        let count = plan.order.len();
        loop {
            let (from, to) = (random.below(count), random.below(count));
            match random.below(16) {
                0..4 => {
                    let piece = plan.order.remove(from);
                    plan.order.insert(to, piece);
                }
                4..8 => {
                    let poses = self.pieces[from].poses.len();
                    plan.poses[from] = Some(random.below(poses + 1)).filter(|&pose| pose < poses);
                }
                8 => plan.rule = if plan.rule == Rule::End { Rule::Begin } else { Rule::End },
                _ => {
                    let (one, other) = (plan.order[from], plan.order[to]);
                    let alike = self.pieces[one].twin == self.pieces[other].twin;
                    if alike && plan.poses[one] == plan.poses[other] {
                        continue;
                    }
                    plan.order.swap(from, to);
                }
            }
            if random.below(3) > 0 {
                return;
            }
        }
    }

    /// Lays all pieces by a plan, keeps the layout if it is one of the best, and gives its cost.
    fn trial(&mut self, plan: &Plan) -> f64 {
        self.cloth.clear();
        for floor in &mut self.floors {
            floor.fill(0.0);
        }
        let order = &plan.order;
        let mut laid = vec![Laid { pose: 0, x: 0.0, y: 0.0 }; order.len()];
        let (mut length, mut ends) = (0.0, 0.0);
        for &piece in order {
            let (pose, left, y) = self.place(piece, plan.rule, plan.poses[piece]);
            let columns = &self.columns[piece][pose];
            self.cloth.lay(columns, left, y);
            laid[piece] = Laid { pose, x: left as f64 * self.step, y };
            length = f64::max(length, y + columns.height);
            ends += y + columns.height;
        }
        // Each trial costs something even when nothing is compared.
        self.cloth.steps += order.len() as u64;
        let cost = length + 0.05 * ends / order.len().max(1) as f64;
        let place = self.drafts.partition_point(|draft| draft.cost < cost);
        let known = self.drafts.get(place).is_some_and(|draft| draft.cost == cost);
        if place < KEPT && !known {
            self.drafts.insert(place, Draft { cost, laid });
            self.drafts.truncate(KEPT);
        }
        cost
    }

    /// The pose, the first column and the y of the best free place of a piece.
    fn place(&mut self, piece: usize, rule: Rule, only: Option<usize>) -> (usize, usize, f64) {
        let mut best = (0, 0, f64::INFINITY);
        let mut best_value = (f64::INFINITY, f64::INFINITY);
        let floors = &mut self.floors[self.pieces[piece].twin];
        for (pose, columns) in self.columns[piece].iter().enumerate() {
            if only.is_some_and(|only| only != pose) {
                continue;
            }
            let last = match self.pieces[piece].on_fold {
                true => 0,
                false => self.cloth.len().saturating_sub(columns.len()),
            };
            for left in 0..=last {
                let limit = match rule {
                    Rule::End => best_value.0 - columns.height,
                    Rule::Begin => best_value.0,
                };
                let floor = &mut floors[pose * self.cloth.len() + left];
                if *floor <= limit {
                    *floor = self.cloth.fit(columns, left, *floor, limit);
                }
                let y = *floor;
                if y > limit {
                    continue;
                }
                let end = y + columns.height;
                let value = if rule == Rule::End { (end, y) } else { (y, end) };
                if value < best_value {
                    best_value = value;
                    best = (pose, left, y);
                }
            }
        }
        best
    }
}
