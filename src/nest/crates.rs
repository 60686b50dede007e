//! Boxes before and after they are laid, in whole units.

/// A box that is to be laid.
pub(super) struct Crate {
    /// Its size, one for each way it may lie.
    pub(super) poses: Vec<Size>,
    /// In square units.
    pub(super) area: i128,
    /// Lies with its left edge on the left edge of the strip.
    pub(super) on_fold: bool,
}

impl Crate {
    /// A box with its poses; poses of one size are kept apart by their number only.
    pub(super) fn new(poses: Vec<Size>, on_fold: bool) -> Crate {
        let area = poses.first().map_or(0, |size| i128::from(size.width) * i128::from(size.height));
        Crate { poses, area, on_fold }
    }

    /// The box in one of its poses only.
    pub(super) fn held(&self, pose: usize) -> Crate {
        Crate { poses: self.poses.get(pose).copied().into_iter().collect(), area: self.area, on_fold: self.on_fold }
    }

    /// The first pose of each size.
    pub(super) fn distinct_poses(&self) -> Vec<usize> {
        (0..self.poses.len()).filter(|at| !self.poses[..*at].contains(&self.poses[*at])).collect()
    }
}

/// In units.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct Size {
    pub(super) width: i64,
    pub(super) height: i64,
}

/// Where a box lies: its corner nearest the start and the left edge, in units, and the number of
/// its pose.
#[derive(Clone, Copy)]
pub(super) struct Spot {
    pub(super) x: i64,
    pub(super) y: i64,
    pub(super) pose: usize,
}
