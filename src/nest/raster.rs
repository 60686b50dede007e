//! The cloth in narrow columns: a quick search for the first free place of a piece. A column takes
//! the greatest reach of a piece anywhere in it, so a place found here is free in truth.

use super::pose::Pose;

/// Reaches nearer than this (mm) touch without overlapping.
const TOUCH: f64 = 1e-9;

/// A pose in columns, the first one beginning at its left edge.
pub(super) struct Columns {
    /// Where the reaches of each column begin; one more than there are columns.
    starts: Vec<usize>,
    /// Least and greatest y, mm.
    reaches: Vec<(f64, f64)>,
    /// mm
    pub(super) height: f64,
}

impl Columns {
    /// Cuts a pose, grown by the gap, into columns `step` mm wide, at most so many: a pose may be
    /// wider than the strip by what counts as touching.
    pub(super) fn new(pose: &Pose, gap: f64, step: f64, most: usize) -> Columns {
        let width = pose.width + gap;
        let mut columns = Columns { starts: vec![0], reaches: Vec::new(), height: pose.height + gap };
        let mut index = 0;
        while index < most && (index as f64) * step < width - step * 1e-6 {
            let left = index as f64 * step;
            columns.reaches.extend(pose.slabs.column(left, left + step));
            columns.starts.push(columns.reaches.len());
            index += 1;
        }
        columns
    }

    /// How many columns.
    pub(super) fn len(&self) -> usize {
        self.starts.len() - 1
    }

    fn at(&self, index: usize) -> &[(f64, f64)] {
        &self.reaches[self.starts[index]..self.starts[index + 1]]
    }
}

/// What is taken, column by column, each in order.
pub(super) struct Cloth {
    columns: Vec<Vec<(f64, f64)>>,
    /// Reaches compared so far: the measure of effort.
    pub(super) steps: u64,
}

impl Cloth {
    /// An empty cloth of so many columns.
    pub(super) fn new(count: usize) -> Cloth {
        Cloth { columns: vec![Vec::new(); count], steps: 0 }
    }

    /// How many columns.
    pub(super) fn len(&self) -> usize {
        self.columns.len()
    }

    /// Takes everything off.
    pub(super) fn clear(&mut self) {
        for column in &mut self.columns {
            column.clear();
        }
    }

    /// The least y, from `start` onwards, at which a pose is free with its first column at `left`.
    /// A y beyond `limit` is not sure to be free, but no lesser one is.
    pub(super) fn fit(&mut self, pose: &Columns, left: usize, start: f64, limit: f64) -> f64 {
        let mut y = start;
        let count = pose.len();
        // Columns in a row that are known to be free at `y`; all of them end the search.
        let (mut free, mut index) = (0, 0);
        while free < count && y <= limit {
            let before = y;
            let taken = &self.columns[left + index];
            for &(low, high) in pose.at(index) {
                // Reaches taken are in order and apart, so their ends are in order too.
                let first = taken.partition_point(|&(_, to)| to <= y + low + TOUCH);
                for &(from, to) in &taken[first..] {
                    self.steps += 1;
                    if from >= y + high - TOUCH {
                        break;
                    }
                    y = to - low;
                }
            }
            self.steps += 1;
            // A pose with several reaches in a column has to be looked at again after a move.
            free = if y > before { usize::from(pose.at(index).len() == 1) } else { free + 1 };
            if y == before || free == 1 {
                index = (index + 1) % count;
            }
        }
        y
    }

    /// Lays a pose.
    pub(super) fn lay(&mut self, pose: &Columns, left: usize, y: f64) {
        for index in 0..pose.len() {
            let column = &mut self.columns[left + index];
            for &(low, high) in pose.at(index) {
                let place = column.partition_point(|&(from, _)| from < y + low);
                column.insert(place, (y + low, y + high));
            }
        }
    }
}
