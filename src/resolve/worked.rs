//! A value worked out, with the figure as its author stated it.

use crate::measure::{Dimension, Exact, Measure, Quantity};

/// A value and, when its formula is one figure, the figure as stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Worked {
    /// The exact value.
    pub quantity: Quantity,
    /// The figure as the author wrote it; `None` for a formula.
    pub stated: Option<Measure>,
}

impl Worked {
    /// A number of things.
    pub fn count(count: u32) -> Worked {
        let quantity = Quantity { value: Exact::from_integer(i64::from(count)), dimension: Dimension::Count };
        Worked { quantity, stated: None }
    }

    /// The value as a number of things; `None` when it is no whole number above nothing.
    pub fn whole(&self) -> Option<u32> {
        let value = self.quantity.value;
        let counts = self.quantity.dimension == Dimension::Count && value.is_integer() && value.is_positive();
        if counts { u32::try_from(value.numer()).ok() } else { None }
    }
}
