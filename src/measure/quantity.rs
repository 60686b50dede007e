//! Quantities and the figures that state them: an exact value with its sort, so that lengths are
//! never mixed up with counts, and the number and unit just as the author wrote them.

use std::cmp::Ordering;
use std::fmt;

use super::exact::{Exact, round_to};
use super::show::{NumberStyle, show};
use super::unit::{Dimension, System, Unit};

/// An exact value and the sort of thing it measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Quantity {
    /// In the base unit: mm, mm², degrees, °C, seconds, grams, or a plain number.
    pub value: Exact,
    /// What it measures.
    pub dimension: Dimension,
}

/// Why two quantities cannot be reckoned with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// Their sorts do not go together.
    Mismatch {
        /// The sort on the left.
        left: Dimension,
        /// What was to be done, in words: "plus".
        doing: &'static str,
        /// The sort on the right.
        right: Dimension,
    },
    /// The result cannot be held exactly.
    Overflow,
    /// The divisor is 0.
    DivisionByZero,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Mismatch { left, doing, right } => {
                write!(f, "{} {doing} {}", left.name(), right.name())
            }
            Fault::Overflow => f.write_str("the result is too large, or too finely divided, to be held exactly"),
            Fault::DivisionByZero => f.write_str("a division by 0"),
        }
    }
}

impl Quantity {
    /// A plain number.
    pub fn count(value: Exact) -> Quantity {
        Quantity { value, dimension: Dimension::Count }
    }

    /// A number of some unit. `None` on overflow.
    pub fn of(number: Exact, unit: Unit) -> Option<Quantity> {
        Some(Quantity { value: unit.to_base(number)?, dimension: unit.dimension() })
    }

    fn mismatch(self, doing: &'static str, other: Quantity) -> Fault {
        Fault::Mismatch { left: self.dimension, doing, right: other.dimension }
    }

    fn additive(self, doing: &'static str, other: Quantity) -> Result<(), Fault> {
        let like = self.dimension == other.dimension;
        if like && self.dimension != Dimension::Temperature { Ok(()) } else { Err(self.mismatch(doing, other)) }
    }

    fn holding(value: Option<Exact>, dimension: Dimension) -> Result<Quantity, Fault> {
        match value {
            Some(value) => Ok(Quantity { value, dimension }),
            None => Err(Fault::Overflow),
        }
    }

    /// The sum of two quantities of one sort; temperatures are not added.
    pub fn checked_add(self, other: Quantity) -> Result<Quantity, Fault> {
        self.additive("plus", other)?;
        Quantity::holding(self.value.checked_add(other.value), self.dimension)
    }

    /// The difference of two quantities of one sort; temperatures are not subtracted.
    pub fn checked_sub(self, other: Quantity) -> Result<Quantity, Fault> {
        self.additive("minus", other)?;
        Quantity::holding(self.value.checked_sub(other.value), self.dimension)
    }

    /// A product: a plain number times anything but a temperature, or two lengths to an area.
    pub fn checked_mul(self, other: Quantity) -> Result<Quantity, Fault> {
        use Dimension::{Area, Count, Length, Temperature};
        let dimension = match (self.dimension, other.dimension) {
            (Temperature, _) | (_, Temperature) => return Err(self.mismatch("times", other)),
            (Count, sort) | (sort, Count) => sort,
            (Length, Length) => Area,
            _ => return Err(self.mismatch("times", other)),
        };
        Quantity::holding(self.value.checked_mul(other.value), dimension)
    }

    /// A quotient: anything but a temperature by a plain number or by its like, or an area by a
    /// length.
    pub fn checked_div(self, other: Quantity) -> Result<Quantity, Fault> {
        use Dimension::{Area, Count, Length, Temperature};
        let dimension = match (self.dimension, other.dimension) {
            (Temperature, _) | (_, Temperature) => return Err(self.mismatch("divided by", other)),
            (sort, Count) => sort,
            (left, right) if left == right => Count,
            (Area, Length) => Length,
            _ => return Err(self.mismatch("divided by", other)),
        };
        if other.value.is_zero() {
            return Err(Fault::DivisionByZero);
        }
        Quantity::holding(self.value.checked_div(other.value), dimension)
    }

    /// Which of two quantities of one sort is greater; temperatures may be compared.
    pub fn compare(self, other: Quantity) -> Result<Ordering, Fault> {
        if self.dimension == other.dimension {
            Ok(self.value.cmp(&other.value))
        } else {
            Err(self.mismatch("compared with", other))
        }
    }

    /// The quantity in words for a message: "45 cm" or, where three places do not tell it all,
    /// "about 3.333 cm".
    pub(super) fn spoken(self, unit: Option<Unit>) -> String {
        let unit = unit.filter(|unit| unit.dimension() == self.dimension).unwrap_or(self.dimension.usual_unit());
        let Some(number) = convert(self, unit) else {
            return self.dimension.name().to_owned();
        };
        let style = match unit.system() {
            Some(System::Imperial) if number.denom() <= 64 => NumberStyle::Fraction,
            _ => NumberStyle::Decimal,
        };
        let shown = show(number, unit, style);
        let about = if shown.exact { "" } else { "about " };
        format!("{about}{shown}")
    }
}

/// One figure as the author wrote it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Stated {
    /// What it comes to.
    pub quantity: Quantity,
    /// The number as written, in `unit`.
    pub number: Exact,
    /// The unit as written.
    pub unit: Unit,
}

impl Stated {
    /// A figure from its number and unit. `None` on overflow.
    pub fn new(number: Exact, unit: Unit) -> Option<Stated> {
        Some(Stated { quantity: Quantity::of(number, unit)?, number, unit })
    }
}

/// Shows the figure so that reading it gives the same value again.
impl fmt::Display for Stated {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let decimal = show(self.number, self.unit, NumberStyle::Decimal);
        let usual = self.unit.system() != Some(System::Imperial);
        if usual && decimal.exact { decimal.fmt(f) } else { show(self.number, self.unit, NumberStyle::Fraction).fmt(f) }
    }
}

/// A figure in one system or in both: `5 mm`, `1 cm (3/8 in)`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Measure {
    /// The figure that stands first; formulas reckon with it.
    pub first: Stated,
    /// The figure of the other system. `None` when one system is stated alone.
    pub other: Option<Stated>,
}

impl Measure {
    /// The figure stated in `system`. `None` when it is not stated there, or its unit belongs to
    /// both systems.
    pub fn in_system(&self, system: System) -> Option<&Stated> {
        std::iter::once(&self.first).chain(&self.other).find(|stated| stated.unit.system() == Some(system))
    }

    // A minus stands before the whole of `1 cm (3/8 in)`; each temperature carries its own, since
    // minus 5 °C is not minus 41 °F.
    pub(super) fn negated(&self) -> Option<Measure> {
        let turned = |stated: Stated| Stated::new(-stated.number, stated.unit);
        let first = turned(self.first)?;
        let other = match self.other {
            Some(other) if other.quantity.dimension != Dimension::Temperature => Some(turned(other)?),
            kept => kept,
        };
        Some(Measure { first, other })
    }
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.other {
            None => self.first.fmt(f),
            // The minus in front covers both figures, so the second is shown without its own.
            Some(other) if other.quantity.dimension != Dimension::Temperature => {
                match Stated::new(other.number.abs(), other.unit) {
                    Some(other) => write!(f, "{} ({other})", self.first),
                    None => self.first.fmt(f),
                }
            }
            Some(other) => write!(f, "{} ({other})", self.first),
        }
    }
}

/// The number that a quantity comes to in `unit`. `None` when the unit measures something else, and
/// on overflow.
pub fn convert(quantity: Quantity, unit: Unit) -> Option<Exact> {
    if unit.dimension() == quantity.dimension { unit.from_base(quantity.value) } else { None }
}

/// The length in inches to the nearest `step` of an inch (1/16, say), as an author would state it.
/// `None` when the quantity is no length, the step is 0, or the result cannot be held.
pub fn nearest_fraction(quantity: Quantity, step: Exact) -> Option<Stated> {
    let inches = convert(quantity, Unit::In)?;
    Stated::new(round_to(inches, step)?, Unit::In)
}
