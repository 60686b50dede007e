//! One value as the booklet prints it, in one system and the other.

use serde::Serialize;

use super::worked::Worked;
use crate::measure::{Dimension, Exact, NumberStyle, Quantity, Stated, System, Unit, convert, round_to, show, up_to};
use crate::model::Show;

/// A figure as printed: number and unit apart, since they are set apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ShownFigure {
    /// The number; a whole number and its fraction are joined by a no-break space.
    pub number: String,
    /// The unit; empty for a plain number.
    pub unit: String,
    /// The printed figure's own exact value, for the checks.
    #[serde(skip)]
    pub quantity: Quantity,
}

impl std::fmt::Display for ShownFigure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.unit.as_str() {
            "" => f.write_str(&self.number),
            "°" => write!(f, "{}°", self.number),
            unit => write!(f, "{}\u{a0}{unit}", self.number),
        }
    }
}

/// A value in the booklet's systems.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Shown {
    /// The system that comes first.
    pub first: ShownFigure,
    /// The other one, printed in brackets; `None` where there is no other way to say it.
    pub second: Option<ShownFigure>,
}

impl std::fmt::Display for Shown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match &self.second {
            Some(second) => write!(f, "{} ({second})", self.first),
            None => self.first.fmt(f),
        }
    }
}

impl Shown {
    /// A value as printed: what is stated stands as stated, the rest is converted and rounded.
    pub fn of(worked: &Worked, settings: &Show) -> Shown {
        let first = in_system(worked, settings.first, settings);
        let second = settings
            .second
            .filter(|_| has_systems(worked.quantity.dimension))
            .map(|system| in_system(worked, system, settings))
            .filter(|second| *second != first);
        Shown { first, second }
    }

    /// A value in one unit; `None` when the unit measures something else.
    pub fn in_unit(worked: &Worked, unit: Unit, settings: &Show) -> Option<Shown> {
        let number = convert(worked.quantity, unit)?;
        let stated = worked.stated.and_then(|measure| {
            [Some(measure.first), measure.other].into_iter().flatten().find(|stated| stated.unit == unit)
        });
        let number = match (stated, unit.system()) {
            (Some(stated), _) => stated.number,
            (None, Some(system)) if unit.dimension() == Dimension::Length => {
                let step = convert(step_quantity(system, settings), unit).unwrap_or(number);
                round_to(number, step)
            }
            (None, _) => round_to(number, Exact::new(1, 100)),
        };
        Some(Shown { first: figure(number, unit), second: None })
    }
}

/// A stitch length: in millimetres, and as stitches to the inch, which is how machines that work in
/// inches are marked (25.4 mm to the inch by definition; whole stitches).
pub fn stitch_figures(worked: &Worked, settings: &Show) -> Shown {
    let length = worked.quantity;
    if length.dimension != Dimension::Length || length.value <= Exact::from_integer(0) {
        return Shown::of(worked, settings);
    }
    let millimetres = match worked.stated.and_then(|measure| measure.in_system(System::Metric).copied()) {
        Some(stated) => figure(stated.number, stated.unit),
        None => figure(round_to(length.value, Exact::new(1, 10)), Unit::Mm),
    };
    let per_inch = round_to(Exact::new(254, 10) / length.value, Exact::from_integer(1));
    let stitches = ShownFigure {
        number: show(per_inch, Unit::Count, NumberStyle::Decimal).number,
        unit: "stitches per inch".into(),
        quantity: length,
    };
    match (settings.first, settings.second) {
        (System::Metric, Some(_)) => Shown { first: millimetres, second: Some(stitches) },
        (System::Metric, None) => Shown { first: millimetres, second: None },
        (System::Imperial, Some(_)) => Shown { first: stitches, second: Some(millimetres) },
        (System::Imperial, None) => Shown { first: stitches, second: None },
    }
}

/// The width of a cloth: in the other system to the nearest half inch or centimetre, as shops name it.
pub fn width_figures(worked: &Worked, settings: &Show) -> Shown {
    let coarse = Show { metric_step: Exact::from_integer(10), imperial_step: Exact::new(127, 10), ..*settings };
    Shown::of(worked, &coarse)
}

/// An amount to buy: what is not stated is rounded up, so that nobody buys too little.
pub fn bought_figures(worked: &Worked, settings: &Show) -> Shown {
    let more = |step: Exact| Worked {
        quantity: Quantity { value: up_to(worked.quantity.value, step), ..worked.quantity },
        stated: worked.stated.filter(|measure| measure.other.is_some()),
    };
    let show = |system: System| match worked.stated.as_ref().and_then(|measure| measure.in_system(system)) {
        Some(_) => in_system(worked, system, settings),
        None if stated_in(worked, Unit::M) || stated_in(worked, Unit::Yd) => in_system(worked, system, settings),
        None => in_system(&more(step_quantity(system, settings).value), system, settings),
    };
    Shown { first: show(settings.first), second: settings.second.map(show) }
}

/// The figure of one system.
pub fn in_system(worked: &Worked, system: System, settings: &Show) -> ShownFigure {
    if let Some(stated) = worked.stated.as_ref().and_then(|measure| measure.in_system(system)) {
        return figure(stated.number, stated.unit);
    }
    if let Some(measure) = worked.stated
        && measure.first.unit.system().is_none()
    {
        return figure(measure.first.number, measure.first.unit);
    }
    let (unit, number) = convert_for(worked, system, settings);
    figure(number, unit)
}

/// The printed figure's exact value in one system: what a maker who knows only this system works
/// with.
pub fn rounded_in(worked: &Worked, system: System, settings: &Show) -> Quantity {
    in_system(worked, system, settings).quantity
}

fn has_systems(dimension: Dimension) -> bool {
    matches!(dimension, Dimension::Length | Dimension::Area | Dimension::Temperature | Dimension::Mass)
}

fn step_quantity(system: System, settings: &Show) -> Quantity {
    let value = match system {
        System::Metric => settings.metric_step,
        System::Imperial => settings.imperial_step,
    };
    Quantity { value, dimension: Dimension::Length }
}

/// Unit and rounded number for a value that is not stated in a system.
fn convert_for(worked: &Worked, system: System, settings: &Show) -> (Unit, Exact) {
    let quantity = worked.quantity;
    let of = |unit: Unit| convert(quantity, unit).unwrap_or(quantity.value);
    let size = if quantity.value < Exact::from_integer(0) { -quantity.value } else { quantity.value };
    match (quantity.dimension, system) {
        // Cloth is bought by the metre or by the yard, and never a little too short.
        (Dimension::Length, System::Imperial) if stated_in(worked, Unit::M) => {
            (Unit::Yd, up_to(of(Unit::Yd), Exact::new(1, 8)))
        }
        (Dimension::Length, System::Metric) if stated_in(worked, Unit::Yd) => {
            (Unit::M, up_to(of(Unit::M), Exact::new(1, 10)))
        }
        (Dimension::Length, System::Imperial) => {
            (Unit::In, round_to(of(Unit::In), settings.imperial_step / Exact::new(254, 10)))
        }
        (Dimension::Length, System::Metric) => {
            let rounded = round_to(quantity.value, settings.metric_step);
            if size < Exact::from_integer(10) { (Unit::Mm, rounded) } else { (Unit::Cm, rounded / 10) }
        }
        (Dimension::Area, System::Metric) if size < Exact::from_integer(1_000_000) => {
            (Unit::Cm2, round_to(of(Unit::Cm2), Exact::from_integer(1)))
        }
        (Dimension::Area, System::Metric) => (Unit::M2, round_to(of(Unit::M2), Exact::new(1, 100))),
        (Dimension::Area, System::Imperial) => (Unit::In2, round_to(of(Unit::In2), Exact::from_integer(1))),
        (Dimension::Temperature, System::Metric) => {
            (Unit::Celsius, round_to(of(Unit::Celsius), Exact::from_integer(5)))
        }
        (Dimension::Temperature, System::Imperial) => {
            (Unit::Fahrenheit, round_to(of(Unit::Fahrenheit), Exact::from_integer(5)))
        }
        (Dimension::Mass, System::Metric) => (Unit::Gram, round_to(of(Unit::Gram), Exact::from_integer(1))),
        (Dimension::Mass, System::Imperial) => (Unit::Ounce, round_to(of(Unit::Ounce), Exact::new(1, 4))),
        (Dimension::Angle, _) => (Unit::Deg, round_to(quantity.value, Exact::new(1, 2))),
        (Dimension::Time, _) => (Unit::Minute, round_to(of(Unit::Minute), Exact::new(1, 2))),
        (Dimension::Count, _) => (Unit::Count, quantity.value),
    }
}

fn stated_in(worked: &Worked, unit: Unit) -> bool {
    worked.stated.is_some_and(|measure: crate::measure::Measure| measure.first.unit == unit)
}

fn figure(number: Exact, unit: Unit) -> ShownFigure {
    let decimal = show(number, unit, NumberStyle::Decimal);
    let shown = match unit.system() {
        Some(System::Imperial) if unit.dimension() == Dimension::Length => show(number, unit, NumberStyle::Fraction),
        _ => decimal,
    };
    let quantity = Stated::new(number, unit)
        .map_or(Quantity { value: number, dimension: unit.dimension() }, |stated| stated.quantity);
    ShownFigure { number: shown.number, unit: shown.unit.to_owned(), quantity }
}
