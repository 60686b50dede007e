//! The upper contour of the boxes laid so far, and the rule that chooses the next box for its
//! lowest stretch: boxes are laid from the start of the strip onwards, each as near to the start
//! as the ones before it allow.

use super::crates::{Crate, Spot};

/// A level stretch of the contour, in units.
#[derive(Clone, Copy)]
struct Step {
    x: i64,
    y: i64,
    width: i64,
}

/// How the next box is chosen among those that fit the lowest stretch.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Choice {
    /// A box that fills the stretch, or ends level with its neighbours, goes first; otherwise the
    /// order decides.
    Level,
    /// As `Level`, but among the others the box that leaves the least width goes first.
    Snug,
}

/// What one trial came to.
pub(super) struct Trial {
    /// The farthest end of any box laid, in units.
    pub(super) top: i64,
    /// The area of the boxes that found no room below the limit, in square units.
    pub(super) left_over: i128,
    /// The boxes compared while laying: the measure of effort.
    pub(super) steps: u64,
}

/// The room one trial needs, kept between trials so that none is asked for anew.
pub(super) struct Bench {
    steps: Vec<Step>,
    /// For each place of the order, the next place whose box is not laid yet.
    next: Vec<usize>,
    /// Where each box lies; None while it is not laid.
    pub(super) spots: Vec<Option<Spot>>,
}

impl Bench {
    /// Room for so many boxes.
    pub(super) fn new(count: usize) -> Bench {
        Bench { steps: Vec::new(), next: vec![0; count + 1], spots: vec![None; count] }
    }

    /// Lays the boxes on a strip `width` wide and no longer than `limit`, both in units; what does
    /// not fit is left over.
    pub(super) fn lay(&mut self, boxes: &[Crate], order: &[usize], width: i64, limit: i64, choice: Choice) -> Trial {
        let count = order.len();
        self.steps.clear();
        self.steps.push(Step { x: 0, y: 0, width });
        // Place `count` stands before the first: its `next` is the first box to lay.
        for place in 0..count {
            self.next[place] = place + 1;
        }
        self.next[count] = 0;
        for spot in &mut self.spots {
            *spot = None;
        }
        let mut trial = Trial { top: 0, left_over: 0, steps: 0 };
        let mut waiting = count;
        while waiting > 0 {
            let at = self.lowest();
            let step = self.steps[at];
            if step.y >= limit {
                break;
            }
            let left = self.rise(at.checked_sub(1), step.y);
            let right = self.rise(Some(at + 1), step.y);
            let found = self.choose(boxes, order, step, (left, right), limit, choice, &mut trial.steps);
            let Some((before, pose)) = found else {
                // Past the limit no box can lie: a strip with no walls left is full.
                self.fill(at, left.min(right).min(limit - step.y));
                continue;
            };
            let place = self.next[before];
            let item = order[place];
            let size = boxes[item].poses[pose];
            let to_left = boxes[item].on_fold || left >= right;
            let x = if to_left { step.x } else { step.x + step.width - size.width };
            self.spots[item] = Some(Spot { x, y: step.y, pose });
            trial.top = trial.top.max(step.y + size.height);
            self.next[before] = self.next[place];
            waiting -= 1;
            self.raise(at, to_left, size.width, size.height);
        }
        let mut place = self.next[count];
        while place < count {
            trial.left_over += boxes[order[place]].area;
            place = self.next[place];
        }
        trial
    }

    /// The first of the lowest stretches.
    fn lowest(&self) -> usize {
        let mut at = 0;
        for (index, step) in self.steps.iter().enumerate() {
            if step.y < self.steps[at].y {
                at = index;
            }
        }
        at
    }

    /// How far a neighbour stands above `y`; the edge of the strip is as high as can be.
    fn rise(&self, neighbour: Option<usize>, y: i64) -> i64 {
        neighbour.and_then(|index| self.steps.get(index)).map_or(i64::MAX, |step| step.y - y)
    }

    /// The place before the chosen box, and its pose.
    #[expect(clippy::too_many_arguments, reason = "the inner loop: a record of these is slower to read")]
    fn choose(
        &self,
        boxes: &[Crate],
        order: &[usize],
        step: Step,
        (left, right): (i64, i64),
        limit: i64,
        choice: Choice,
        steps: &mut u64,
    ) -> Option<(usize, usize)> {
        let count = order.len();
        let (taller, shorter) = (left.max(right), left.min(right));
        let room = limit - step.y;
        let mut best = None;
        let mut best_score = (0, i64::MIN);
        let mut before = count;
        let mut place = self.next[count];
        while place < count {
            let candidate = &boxes[order[place]];
            let wall = if candidate.on_fold { left } else { taller };
            if !candidate.on_fold || step.x == 0 {
                for (pose, size) in candidate.poses.iter().enumerate() {
                    *steps += 1;
                    if size.width > step.width || size.height > room {
                        continue;
                    }
                    let fills = size.width == step.width;
                    let rank = match fills {
                        true if size.height == taller => 7,
                        true if size.height == shorter => 6,
                        true if size.height < taller => 5,
                        true => 4,
                        false if size.height == wall => 3,
                        false if size.height == shorter => 2,
                        false => 1,
                    };
                    let snug = match choice {
                        Choice::Snug if rank < 3 => size.width,
                        _ => 0,
                    };
                    if (rank, snug) > best_score {
                        best_score = (rank, snug);
                        best = Some((before, pose));
                    }
                }
                if best_score.0 == 7 {
                    break;
                }
            }
            before = place;
            place = self.next[place];
        }
        best
    }

    /// Gives up a stretch: it rises to its lower neighbour.
    fn fill(&mut self, at: usize, by: i64) {
        self.steps[at].y += by;
        self.merge(at);
    }

    /// Puts a box on a stretch, at its left or its right end.
    fn raise(&mut self, at: usize, to_left: bool, width: i64, height: i64) {
        let step = self.steps[at];
        let top = Step { x: if to_left { step.x } else { step.x + step.width - width }, y: step.y + height, width };
        if width == step.width {
            self.steps[at] = top;
            self.merge(at);
            return;
        }
        let rest = Step { x: if to_left { step.x + width } else { step.x }, y: step.y, width: step.width - width };
        let (first, second) = if to_left { (top, rest) } else { (rest, top) };
        self.steps[at] = first;
        self.steps.insert(at + 1, second);
        self.merge(if to_left { at } else { at + 1 });
    }

    /// Joins a stretch with neighbours of the same level.
    fn merge(&mut self, at: usize) {
        let level = self.steps[at].y;
        if self.steps.get(at + 1).is_some_and(|step| step.y == level) {
            self.steps[at].width += self.steps[at + 1].width;
            self.steps.remove(at + 1);
        }
        if at > 0 && self.steps[at - 1].y == level {
            self.steps[at - 1].width += self.steps[at].width;
            self.steps.remove(at);
        }
    }
}
