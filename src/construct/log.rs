//! What was done, in its order: what is asked at the end looks back over it.

use std::collections::BTreeSet;

use super::fault::Moment;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// One fact of work as it was played.
#[derive(Debug, Clone)]
pub(super) struct Logged {
    pub verb: Verb,
    pub moment: Moment,
    /// What it names.
    pub named: Vec<Touched>,
    /// The same with layers that count as one with it, and what its stitches catch.
    pub touched: Vec<Touched>,
}

impl Logged {
    /// Whether it names an edge, or the piece as a whole.
    pub fn meets(&self, (copy, edge): (CopyId, EdgeId)) -> bool {
        self.touched.iter().any(|target| match target {
            Touched::Edge(other, named) => (*other, *named) == (copy, edge),
            Touched::Copy(other) => *other == copy,
            _ => false,
        })
    }

    /// Whether it has to do with a copy.
    pub fn holds(&self, copy: CopyId) -> bool {
        self.touched.iter().any(|target| target.copy() == Some(copy))
    }

    /// The copies that it names as a whole.
    pub fn whole(&self) -> BTreeSet<CopyId> {
        let whole = self.named.iter().filter_map(|target| match target {
            Touched::Copy(copy) => Some(*copy),
            _ => None,
        });
        whole.collect()
    }

    /// All copies that it names, by themselves or by something of them.
    pub fn copies(&self) -> BTreeSet<CopyId> {
        self.named.iter().filter_map(Touched::copy).collect()
    }
}
