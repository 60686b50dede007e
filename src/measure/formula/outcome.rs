//! What goes into working a formula out and what comes of it: the values of names, and a quantity, a
//! truth or a list.

use crate::measure::quantity::{Measure, Quantity};

/// What a formula comes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// One quantity.
    Quantity(Quantity),
    /// Whether a comparison holds.
    Truth(bool),
    /// The values of a list.
    List(Vec<Quantity>),
}

/// Where a formula finds the values of its names.
pub trait Names {
    /// The value of a name, dotted or not.
    fn value(&self, name: &str) -> Lookup;

    /// The value to take for a figure written in the formula: the first that it states, unless the
    /// caller works in one system with rounded figures and says otherwise.
    fn figure(&self, measure: &Measure) -> Quantity {
        measure.first.quantity
    }
}

/// What became of a name that was looked up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lookup {
    /// It has this value.
    Found(Quantity),
    /// Nothing is called so.
    Unknown,
    /// It exists, but its own value has a fault that is reported elsewhere; the formula that uses it
    /// stops without a problem of its own.
    Broken,
}
