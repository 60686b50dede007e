//! What came of a play, and what others may see of it: the seams that hold the work together.

use super::fault::{Fault, Moment};
use super::state::State;
use crate::resolve::Touched;

/// What came of a play.
#[derive(Debug, Clone)]
pub struct History {
    /// What is wrong, in the order in which it was met.
    pub faults: Vec<Fault>,
    pub(super) state: State,
}

/// A seam as it stands at the end of a play.
#[derive(Debug, Clone, Copy)]
pub struct SewnSeam<'a> {
    /// The work that made it.
    pub sewn: Moment,
    /// The edges that it holds, in the order in which the work names them; a whole piece stands for
    /// those of its edges that were free.
    pub members: &'a [Touched],
    /// Whether a gap was left in it that is still open.
    pub open_gap: bool,
    /// When that gap was closed by a step of its own; `None` where there is none, or none that is closed.
    pub closed: Option<Moment>,
}

impl History {
    /// The seams sewn so far, boxed corners among them, in the order of the sewing.
    pub fn seams(&self) -> impl Iterator<Item = SewnSeam<'_>> {
        self.state.seams.iter().map(|seam| SewnSeam {
            sewn: seam.sewn,
            members: &seam.members,
            open_gap: seam.gap == Some(None),
            closed: seam.gap.flatten(),
        })
    }
}
