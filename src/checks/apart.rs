//! Two figures that differ, told so that a reader sees it: where rounding makes them alike, both are
//! written finer, with what lies between them.

use crate::measure::{Dimension, Exact, NumberStyle, Quantity, System, Unit, convert, ratio, show};
use crate::resolve::{Edition, Worked};

/// Two figures in words.
pub(super) struct Told {
    /// The first.
    pub one: String,
    /// The second.
    pub other: String,
    /// What lies between them, ", 0.4 mm apart"; empty where the two figures show it.
    pub apart: String,
}

impl Told {
    /// Two quantities in the booklet's first system.
    pub fn of(edition: &Edition<'_>, one: Quantity, other: Quantity) -> Told {
        let usual = |quantity| edition.figures(&Worked { quantity, stated: None }).first.to_string();
        Told::from(usual(one), usual(other), [one, other], edition.draft.facts.show.first)
    }

    /// Two lengths in mm, to the hundredth.
    pub fn lengths(edition: &Edition<'_>, one: f64, other: f64) -> Told {
        Told::of(edition, millimetres(one), millimetres(other))
    }

    /// Two quantities that are usually written so, in one system.
    pub fn from(one: String, other: String, [first, second]: [Quantity; 2], system: System) -> Told {
        let plain = |words: String| words.replace('\u{a0}', " ");
        if one != other || first == second {
            return Told { one: plain(one), other: plain(other), apart: String::new() };
        }
        let written = |style| [first, second].map(|quantity| fine(quantity, system, style));
        let style = match written(NumberStyle::Decimal) {
            [one, other] if one == other => NumberStyle::Fraction,
            _ => NumberStyle::Decimal,
        };
        let [one, other] = written(style);
        let between = first.value.distance(second.value);
        let apart = between
            .map_or_else(String::new, |value| format!(", {} apart", fine(Quantity { value, ..first }, system, style)));
        Told { one, other, apart }
    }
}

/// A length in mm as the checks tell it, to the hundredth. One that no cloth has is 0.
pub(super) fn millimetres(length: f64) -> Quantity {
    let hundredths = (length * 100.0).round();
    let value = if hundredths.abs() < 1e15 { ratio(hundredths as i128, 100) } else { None };
    Quantity { value: value.unwrap_or(Exact::ZERO), dimension: Dimension::Length }
}

/// A quantity in the smallest unit of a system, such as `240.4 mm`.
pub(super) fn fine(quantity: Quantity, system: System, style: NumberStyle) -> String {
    let unit = match (quantity.dimension, system) {
        (Dimension::Length, System::Metric) => Unit::Mm,
        (Dimension::Length, System::Imperial) => Unit::In,
        (Dimension::Area, System::Metric) => Unit::Mm2,
        (Dimension::Area, System::Imperial) => Unit::In2,
        (Dimension::Temperature, System::Metric) => Unit::Celsius,
        (Dimension::Temperature, System::Imperial) => Unit::Fahrenheit,
        (Dimension::Mass, System::Metric) => Unit::Gram,
        (Dimension::Mass, System::Imperial) => Unit::Ounce,
        (Dimension::Angle, _) => Unit::Deg,
        (Dimension::Time, _) => Unit::Second,
        (Dimension::Count, _) => Unit::Count,
    };
    let Some(number) = convert(quantity, unit) else { return String::new() };
    // Rulers in inches are marked to the sixty-fourth at most.
    let style = if unit == Unit::In && number.denom() <= 64 { NumberStyle::Fraction } else { style };
    show(number, unit, style).to_string().replace('\u{a0}', " ")
}
