//! A value worked out, with the figure as its author stated it.

use crate::measure::{Measure, Quantity};

/// A value and, when its formula is one figure, the figure as stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Worked {
    /// The exact value.
    pub quantity: Quantity,
    /// The figure as the author wrote it; `None` for a formula.
    pub stated: Option<Measure>,
}
