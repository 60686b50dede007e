//! One value as the booklet prints it, in one system and the other.

use serde::Serialize;

use super::worked::Worked;
use crate::measure::{
    Dimension, Exact, NumberStyle, Quantity, Stated, System, Unit, convert, ratio, round_to, show, up_to,
};
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
    /// The quantity itself, unrounded.
    #[serde(skip)]
    pub exact: Quantity,
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
        Shown { exact: worked.quantity, first, second }
    }

    /// A value in one unit; `None` when the unit measures something else.
    pub fn in_unit(worked: &Worked, unit: Unit, settings: &Show) -> Option<Shown> {
        let number = convert(worked.quantity, unit)?;
        let stated = worked.stated.and_then(|measure| {
            [Some(measure.first), measure.other].into_iter().flatten().find(|stated| stated.unit == unit)
        });
        let number = match (stated, unit.system()) {
            (Some(stated), _) => stated.number,
            (None, Some(system)) if stands_in(worked, system, settings, unit) => {
                return Some(Shown {
                    exact: worked.quantity,
                    first: figure_in(worked, system, settings)?,
                    second: None,
                });
            }
            (None, Some(system)) if unit.dimension() == Dimension::Length => {
                round_to(number, convert(step_quantity(system, settings), unit)?)?
            }
            (None, _) => round_to(number, Exact::of::<1, 100>())?,
        };
        Some(Shown { exact: worked.quantity, first: figure(number, unit)?, second: None })
    }
}

/// Whether a value can be said in every unit of its sort and be held against its other figure; one that
/// cannot is a finding where it is worked out, and nothing later needs to think of it.
pub(super) fn can_be_shown(worked: &Worked, settings: &Show) -> bool {
    if is_small(worked, settings) {
        return true;
    }
    let dimension = worked.quantity.dimension;
    let mut units = Unit::ALL.into_iter().filter(|unit| unit.dimension() == dimension);
    let systems = [System::Metric, System::Imperial].map(|system| figure_in(worked, system, settings));
    let [Some(metric), Some(imperial)] = systems else { return false };
    let apart = |one: &Quantity, other: &Quantity| one.value.distance(other.value).is_some();
    units.all(|unit| Shown::in_unit(worked, unit, settings).is_some())
        && apart(&metric.quantity, &imperial.quantity)
        && apart(&metric.quantity, &worked.quantity)
        && apart(&imperial.quantity, &worked.quantity)
}

/// Whether a value is of the size that cloth has, so that it need not be tried: the factors between units have 33 bits at
/// the most (square yards), steps and value 30 each, and a sum holds 127.
fn is_small(worked: &Worked, settings: &Show) -> bool {
    const BITS: u32 = 30;
    let small = |number: Exact| number.numer().unsigned_abs() < 1 << BITS && number.denom().unsigned_abs() < 1 << BITS;
    worked.stated.is_none()
        && [worked.quantity.value, settings.metric_step, settings.imperial_step].into_iter().all(small)
}

/// How stitch lengths are told where machines work in inches.
pub const STITCHES_PER_INCH: &str = "stitches per inch";

/// A stitch length: in millimetres, and as stitches to the inch, which is how machines that work in
/// inches are marked (25.4 mm to the inch by definition; whole stitches).
pub fn stitch_figures(worked: &Worked, settings: &Show) -> Shown {
    let length = worked.quantity;
    let per_inch = Exact::of::<254, 10>().checked_div(length.value).and_then(|count| round_to(count, Exact::ONE));
    let tenth = Exact::of::<1, 10>();
    let millimetres = match worked.stated.and_then(|measure| measure.in_system(System::Metric).copied()) {
        Some(stated) => Some(stated_figure(stated)),
        None => round_to(length.value, tenth).and_then(|number| figure(number, Unit::Mm)),
    };
    let (Some(per_inch), Some(millimetres), Dimension::Length, true) =
        (per_inch, millimetres, length.dimension, length.value.is_positive())
    else {
        return Shown::of(worked, settings);
    };
    let stitches = ShownFigure {
        number: show(per_inch, Unit::Count, NumberStyle::Decimal).number,
        unit: STITCHES_PER_INCH.into(),
        quantity: length,
    };
    match (settings.first, settings.second) {
        (System::Metric, Some(_)) => Shown { exact: length, first: millimetres, second: Some(stitches) },
        (System::Metric, None) => Shown { exact: length, first: millimetres, second: None },
        (System::Imperial, Some(_)) => Shown { exact: length, first: stitches, second: Some(millimetres) },
        (System::Imperial, None) => Shown { exact: length, first: stitches, second: None },
    }
}

/// The width of a cloth: in the other system to the nearest half inch or centimetre, as shops name it.
pub fn width_figures(worked: &Worked, settings: &Show) -> Shown {
    let (metric_step, imperial_step) = (Exact::from_integer(10), Exact::of::<127, 10>());
    // How wide cloth is, nobody measures to the eighth.
    let coarse = Show { metric_step, imperial_step, tolerance: Exact::from_integer(1000), ..*settings };
    Shown::of(worked, &coarse)
}

/// An amount to buy: what is not stated is rounded up, so that nobody buys too little.
pub fn bought_figures(worked: &Worked, settings: &Show) -> Shown {
    let more = |step: Exact| Worked {
        quantity: Quantity {
            value: up_to(worked.quantity.value, step).unwrap_or(worked.quantity.value),
            ..worked.quantity
        },
        stated: worked.stated.filter(|measure| measure.other.is_some()),
    };
    let show = |system: System| match worked.stated.as_ref().and_then(|measure| measure.in_system(system)) {
        Some(_) => in_system(worked, system, settings),
        None if stated_in(worked, Unit::M) || stated_in(worked, Unit::Yd) => in_system(worked, system, settings),
        None => in_system(&more(step_quantity(system, settings).value), system, settings),
    };
    Shown { exact: worked.quantity, first: show(settings.first), second: settings.second.map(show) }
}

/// The figure of one system. A value that cannot be held in the system's unit stands in the unit that
/// it is reckoned in, which is never wrong.
pub fn in_system(worked: &Worked, system: System, settings: &Show) -> ShownFigure {
    figure_in(worked, system, settings).unwrap_or_else(|| {
        let Quantity { value, dimension } = worked.quantity;
        written(value, dimension.base(), worked.quantity)
    })
}

/// Whether a length is printed in this unit where both systems stand.
fn stands_in(worked: &Worked, system: System, settings: &Show, unit: Unit) -> bool {
    let units = [Unit::Mm, Unit::Cm, Unit::In];
    units.contains(&unit)
        && figure_in(worked, system, settings)
            .is_some_and(|figure| figure.unit == show(Exact::ONE, unit, NumberStyle::Decimal).unit)
}

/// What no hand can tell apart, in mm.
const HAIR: Exact = Exact::of::<1, 2>();

/// How far the two figures for one length may lie apart, in mm: as far as the booklet allows, and no further than an
/// eighth of the length, since on a narrow seam a millimetre is much (common practice, no source). `None` where that
/// cannot be held.
pub fn allowed_apart(length: Quantity, settings: &Show) -> Option<Exact> {
    let eighth = length.value.abs().checked_mul(Exact::of::<1, 8>())?;
    Some(settings.tolerance.min(eighth.max(HAIR)))
}

/// How finely a length is rounded in each system: to the booklet's steps; where the two figures would not say the same
/// length, to as much finer a step as it takes. What the author states is left alone, and so is cloth that is sold by
/// the metre or the yard.
fn steps(worked: &Worked, settings: &Show) -> [Exact; 2] {
    let coarse = [settings.metric_step, settings.imperial_step];
    let stated = |system: System| worked.stated.as_ref().and_then(|measure| measure.in_system(system));
    let is_open = worked.quantity.dimension == Dimension::Length
        && settings.second.is_some()
        && !(stated(System::Metric).is_some() && stated(System::Imperial).is_some())
        && !(stated_in(worked, Unit::M) || stated_in(worked, Unit::Yd));
    let Some(allowed) = allowed_apart(worked.quantity, settings).filter(|_| is_open) else { return coarse };
    let at = |system: System, step: Exact| match stated(system) {
        Some(stated) => Some(stated.quantity.value),
        None => round_to(worked.quantity.value, step),
    };
    let agree = |[metric, imperial]: &[Exact; 2]| {
        let apart = at(System::Metric, *metric).zip(at(System::Imperial, *imperial));
        apart.and_then(|(one, other)| one.distance(other)).is_some_and(|apart| apart <= allowed)
    };
    // The system that comes first keeps its step as long as that goes.
    let finer =
        |step: Exact, parts: [i128; 4]| parts.map(|part| ratio(1, part).and_then(|part| step.checked_mul(part)));
    let [metric, imperial] = [finer(coarse[0], [1, 2, 5, 10]), finer(coarse[1], [1, 2, 4, 8])];
    let pairs = (0..4).flat_map(|first| (0..4).map(move |second| (first, second)));
    let pair = |(first, second): (usize, usize)| match settings.first {
        System::Metric => Some([metric[first]?, imperial[second]?]),
        System::Imperial => Some([metric[second]?, imperial[first]?]),
    };
    pairs.filter_map(pair).find(agree).unwrap_or(coarse)
}

/// The figure of one system; `None` when it cannot be held.
fn figure_in(worked: &Worked, system: System, settings: &Show) -> Option<ShownFigure> {
    if let Some(stated) = worked.stated.as_ref().and_then(|measure| measure.in_system(system)) {
        return Some(stated_figure(*stated));
    }
    if let Some(measure) = worked.stated
        && measure.first.unit.system().is_none()
    {
        return Some(stated_figure(measure.first));
    }
    let (unit, number) = convert_for(worked, system, settings)?;
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

/// Unit and rounded number for a value that is not stated in a system; `None` when it cannot be held.
fn convert_for(worked: &Worked, system: System, settings: &Show) -> Option<(Unit, Exact)> {
    let quantity = worked.quantity;
    let size = quantity.value.abs();
    let nearest = |unit: Unit, step: Exact| Some((unit, round_to(convert(quantity, unit)?, step)?));
    let next = |unit: Unit, step: Exact| Some((unit, up_to(convert(quantity, unit)?, step)?));
    let half = Exact::of::<1, 2>();
    match (quantity.dimension, system) {
        // Cloth is bought by the metre or by the yard, and never a little too short.
        (Dimension::Length, System::Imperial) if stated_in(worked, Unit::M) => next(Unit::Yd, Exact::of::<1, 8>()),
        (Dimension::Length, System::Metric) if stated_in(worked, Unit::Yd) => next(Unit::M, Exact::of::<1, 10>()),
        (Dimension::Length, _) => {
            let [metric, imperial] = steps(worked, settings);
            let (unit, step) = match system {
                System::Imperial => (Unit::In, imperial),
                System::Metric if size < Exact::from_integer(10) => (Unit::Mm, metric),
                System::Metric => (Unit::Cm, metric),
            };
            nearest(unit, convert(Quantity { value: step, dimension: Dimension::Length }, unit)?)
        }
        (Dimension::Area, System::Metric) if size < Exact::from_integer(1_000_000) => nearest(Unit::Cm2, Exact::ONE),
        (Dimension::Area, System::Metric) => nearest(Unit::M2, Exact::of::<1, 100>()),
        (Dimension::Area, System::Imperial) => nearest(Unit::In2, Exact::ONE),
        (Dimension::Temperature, System::Metric) => nearest(Unit::Celsius, Exact::from_integer(5)),
        (Dimension::Temperature, System::Imperial) => nearest(Unit::Fahrenheit, Exact::from_integer(5)),
        (Dimension::Mass, System::Metric) => nearest(Unit::Gram, Exact::ONE),
        (Dimension::Mass, System::Imperial) => nearest(Unit::Ounce, Exact::of::<1, 4>()),
        (Dimension::Angle, _) => nearest(Unit::Deg, half),
        (Dimension::Time, _) => nearest(Unit::Minute, half),
        (Dimension::Count, _) => Some((Unit::Count, quantity.value)),
    }
}

fn stated_in(worked: &Worked, unit: Unit) -> bool {
    worked.stated.is_some_and(|measure: crate::measure::Measure| measure.first.unit == unit)
}

/// A number of some unit as printed; `None` when its value cannot be held.
fn figure(number: Exact, unit: Unit) -> Option<ShownFigure> {
    Stated::new(number, unit).map(stated_figure)
}

fn stated_figure(stated: Stated) -> ShownFigure {
    written(stated.number, stated.unit, stated.quantity)
}

fn written(number: Exact, unit: Unit, quantity: Quantity) -> ShownFigure {
    let style = match unit.system() {
        Some(System::Imperial) if unit.dimension() == Dimension::Length => NumberStyle::Fraction,
        _ => NumberStyle::Decimal,
    };
    let shown = show(number, unit, style);
    ShownFigure { number: shown.number, unit: shown.unit.to_owned(), quantity }
}
