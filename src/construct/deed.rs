//! One work fact as it is played.

use std::collections::BTreeSet;

use super::fault::Moment;
use crate::resolve::{CopyId, EditionWork, Touched};

/// A work fact with what it touches, and when.
pub(super) struct Deed<'d, 'e> {
    pub work: &'d EditionWork<'e>,
    /// In the author's order.
    pub targets: Vec<Touched>,
    /// The copies among them, and those whose edges they name.
    pub touched: BTreeSet<CopyId>,
    pub moment: Moment,
}

impl<'d, 'e> Deed<'d, 'e> {
    pub fn of(work: &'d EditionWork<'e>, moment: Moment) -> Deed<'d, 'e> {
        let targets: Vec<Touched> = work.touched().collect();
        let copies = targets.iter().filter_map(|target| match target {
            Touched::Copy(copy) | Touched::Edge(copy, _) | Touched::Inside(copy, _) => Some(*copy),
            _ => None,
        });
        let touched = copies.collect();
        Deed { work, targets, touched, moment }
    }
}
