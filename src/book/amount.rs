//! A figure of the booklet: its exact quantity, and how it is shown in one system and the other.

use serde::{Deserialize, Serialize};

use crate::measure::{Dimension, Quantity};
use crate::resolve::{STITCHES_PER_INCH, Shown, ShownFigure};

/// A quantity without loss: a fraction in the base unit of its dimension.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ExactAmount {
    /// Numerator and denominator, such as `127/5`; a whole number has no bar.
    pub value: String,
    /// What is measured, such as `length`; the base unit of lengths is the millimetre.
    pub dimension: String,
}

impl ExactAmount {
    /// A quantity as it was reckoned.
    pub fn of(quantity: Quantity) -> ExactAmount {
        let (numer, denom) = (quantity.value.numer(), quantity.value.denom());
        let value = if denom == 1 { numer.to_string() } else { format!("{numer}/{denom}") };
        ExactAmount { value, dimension: dimension(quantity.dimension).to_owned() }
    }
}

/// The key of a dimension.
fn dimension(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "length",
        Dimension::Area => "area",
        Dimension::Angle => "angle",
        Dimension::Temperature => "temperature",
        Dimension::Time => "time",
        Dimension::Mass => "mass",
        Dimension::Count => "count",
    }
}

/// A figure as printed: number and unit apart, since they are set apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Written {
    /// The number; a whole number and its fraction are joined by a no-break space.
    pub number: String,
    /// The unit's sign, or the key of a unit that is a word of the house; empty for a plain number.
    pub unit: String,
}

impl Written {
    fn of(shown: &ShownFigure) -> Written {
        // What a machine is marked with is a word, and words of the house are keys.
        let unit = if shown.unit == STITCHES_PER_INCH { "stitches_per_inch" } else { &shown.unit };
        Written { number: shown.number.clone(), unit: unit.to_owned() }
    }
}

/// One quantity in the booklet's systems.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Amount {
    /// The quantity itself.
    pub exact: ExactAmount,
    /// The system that comes first.
    pub first: Written,
    /// The other one, in brackets; `None` where there is no other way to say it.
    pub second: Option<Written>,
}

impl Amount {
    /// A quantity as the booklet shows it.
    pub fn of(shown: &Shown) -> Amount {
        Amount {
            exact: ExactAmount::of(shown.exact),
            first: Written::of(&shown.first),
            second: shown.second.as_ref().map(Written::of),
        }
    }
}

/// An amount of one size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SizedAmount {
    /// The size, by its place in `sizes`.
    pub size: usize,
    /// What it comes to.
    pub amount: Amount,
}

/// A figure in running words: one for all sizes that the words are for, or one for each.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// The same in every size.
    Same(Amount),
    /// One for each size, in their order.
    Each(Vec<SizedAmount>),
}

impl Value {
    /// A quantity that is the same in every size.
    pub fn of(shown: &Shown) -> Value {
        Value::Same(Amount::of(shown))
    }

    /// Lays the figures of several sizes beside one another.
    pub(super) fn merge(rows: &[(&[usize], &Value)]) -> Value {
        let mut each: Vec<SizedAmount> = Vec::new();
        for (sizes, value) in rows {
            match value {
                Value::Same(amount) => {
                    each.extend(sizes.iter().map(|size| SizedAmount { size: *size, amount: amount.clone() }));
                }
                Value::Each(amounts) => each.extend(amounts.iter().cloned()),
            }
        }
        match each.first() {
            Some(first) if each.iter().all(|one| one.amount == first.amount) => Value::Same(first.amount.clone()),
            _ => Value::Each(each),
        }
    }
}
