//! The units a booklet may use, each with its symbol, spellings, sort and exact size, in one table.
//!
//! Sources of the sizes: the yard is 0.9144 m and the pound 0.453 592 37 kg exactly (international
//! yard and pound agreement, 1959), hence 1 in = 25.4 mm and 1 oz = 28.349 523 125 g; NIST SP 811,
//! appendix B, and NIST Handbook 44, appendix C, print the same. Fahrenheit to Celsius:
//! (F − 32) / 1.8, NIST SP 811, appendix B.

use super::exact::Exact;

/// The two systems that a maker works in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum System {
    /// Millimetres, centimetres, metres, grams, degrees Celsius.
    Metric,
    /// Inches, feet, yards, ounces, degrees Fahrenheit.
    Imperial,
}

impl System {
    /// The word for it in a message.
    pub fn name(self) -> &'static str {
        match self {
            System::Metric => "metric",
            System::Imperial => "imperial",
        }
    }
}

/// What sort of quantity a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Dimension {
    /// A plain number; a percentage is one too.
    Count,
    /// Held in millimetres.
    Length,
    /// Held in square millimetres.
    Area,
    /// Held in degrees.
    Angle,
    /// Held in degrees Celsius.
    Temperature,
    /// Held in seconds.
    Time,
    /// Held in grams.
    Mass,
}

impl Dimension {
    /// The unit that values of the sort are held in.
    pub fn base(self) -> Unit {
        match self {
            Dimension::Count => Unit::Count,
            Dimension::Length => Unit::Mm,
            Dimension::Area => Unit::Mm2,
            Dimension::Angle => Unit::Deg,
            Dimension::Temperature => Unit::Celsius,
            Dimension::Time => Unit::Second,
            Dimension::Mass => Unit::Gram,
        }
    }

    /// The sort with its article, as messages put it: "a length".
    pub fn name(self) -> &'static str {
        match self {
            Dimension::Count => "a plain number",
            Dimension::Length => "a length",
            Dimension::Area => "an area",
            Dimension::Angle => "an angle",
            Dimension::Temperature => "a temperature",
            Dimension::Time => "a time",
            Dimension::Mass => "a weight",
        }
    }

    /// The unit that an example in a hint uses.
    pub(super) fn usual_unit(self) -> Unit {
        match self {
            Dimension::Count => Unit::Count,
            Dimension::Length => Unit::Cm,
            Dimension::Area => Unit::Cm2,
            Dimension::Angle => Unit::Deg,
            Dimension::Temperature => Unit::Celsius,
            Dimension::Time => Unit::Minute,
            Dimension::Mass => Unit::Gram,
        }
    }
}

/// A unit of measurement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Unit {
    /// Millimetre.
    Mm,
    /// Centimetre.
    Cm,
    /// Metre.
    M,
    /// Inch, 25.4 mm.
    In,
    /// Foot, 12 in.
    Ft,
    /// Yard, 36 in.
    Yd,
    /// Square millimetre.
    Mm2,
    /// Square centimetre.
    Cm2,
    /// Square metre.
    M2,
    /// Square inch.
    In2,
    /// Square yard.
    Yd2,
    /// Degree of an angle.
    Deg,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Second.
    Second,
    /// Minute.
    Minute,
    /// Hour.
    Hour,
    /// Gram.
    Gram,
    /// Kilogram.
    Kilogram,
    /// Avoirdupois ounce.
    Ounce,
    /// A hundredth: 3 % is the plain number 3/100.
    Percent,
    /// No unit: a plain number.
    Count,
}

/// One row of the table: symbol as shown, spellings as read, sort, system, size in the base unit.
struct Facts(&'static str, &'static [&'static str], Dimension, Option<System>, Exact);

impl Unit {
    /// Every unit, in the order of the table.
    pub const ALL: [Unit; 22] = [
        Unit::Mm,
        Unit::Cm,
        Unit::M,
        Unit::In,
        Unit::Ft,
        Unit::Yd,
        Unit::Mm2,
        Unit::Cm2,
        Unit::M2,
        Unit::In2,
        Unit::Yd2,
        Unit::Deg,
        Unit::Celsius,
        Unit::Fahrenheit,
        Unit::Second,
        Unit::Minute,
        Unit::Hour,
        Unit::Gram,
        Unit::Kilogram,
        Unit::Ounce,
        Unit::Percent,
        Unit::Count,
    ];

    #[rustfmt::skip]
    fn facts(self) -> Facts {
        use Dimension::{Angle, Area, Count, Length, Mass, Temperature, Time};
        let (metric, imperial) = (Some(System::Metric), Some(System::Imperial));
        match self {
            Unit::Mm => Facts("mm", &["mm"], Length, metric, Exact::of::<1, 1>()),
            Unit::Cm => Facts("cm", &["cm"], Length, metric, Exact::of::<10, 1>()),
            Unit::M => Facts("m", &["m"], Length, metric, Exact::of::<1000, 1>()),
            Unit::In => Facts("in", &["in", "\"", "″"], Length, imperial, Exact::of::<127, 5>()),
            Unit::Ft => Facts("ft", &["ft"], Length, imperial, Exact::of::<1524, 5>()),
            Unit::Yd => Facts("yd", &["yd"], Length, imperial, Exact::of::<4572, 5>()),
            Unit::Mm2 => Facts("mm²", &["mm²", "mm2"], Area, metric, Exact::of::<1, 1>()),
            Unit::Cm2 => Facts("cm²", &["cm²", "cm2"], Area, metric, Exact::of::<100, 1>()),
            Unit::M2 => Facts("m²", &["m²", "m2"], Area, metric, Exact::of::<1_000_000, 1>()),
            Unit::In2 => Facts("in²", &["in²", "in2"], Area, imperial, Exact::of::<{ 127 * 127 }, 25>()),
            Unit::Yd2 => Facts("yd²", &["yd²", "yd2"], Area, imperial, Exact::of::<{ 4572 * 4572 }, 25>()),
            Unit::Deg => Facts("°", &["°", "deg"], Angle, None, Exact::of::<1, 1>()),
            Unit::Celsius => Facts("°C", &["°C"], Temperature, metric, Exact::of::<1, 1>()),
            Unit::Fahrenheit => Facts("°F", &["°F"], Temperature, imperial, Exact::of::<5, 9>()),
            Unit::Second => Facts("s", &["s"], Time, None, Exact::of::<1, 1>()),
            Unit::Minute => Facts("min", &["min"], Time, None, Exact::of::<60, 1>()),
            Unit::Hour => Facts("h", &["h"], Time, None, Exact::of::<3600, 1>()),
            Unit::Gram => Facts("g", &["g"], Mass, metric, Exact::of::<1, 1>()),
            Unit::Kilogram => Facts("kg", &["kg"], Mass, metric, Exact::of::<1000, 1>()),
            Unit::Ounce => Facts("oz", &["oz"], Mass, imperial, Exact::of::<45_359_237, 1_600_000>()),
            Unit::Percent => Facts("%", &["%"], Count, None, Exact::of::<1, 100>()),
            Unit::Count => Facts("", &[], Count, None, Exact::of::<1, 1>()),
        }
    }

    /// Reads a unit as an author spells it, such as `cm`, `″` or `in2`. `None` for any other text;
    /// a plain count has no spelling.
    pub fn parse(text: &str) -> Option<Unit> {
        Unit::ALL.into_iter().find(|unit| unit.facts().1.contains(&text))
    }

    /// How an author may spell it; nothing for a plain count.
    pub fn spellings(self) -> &'static [&'static str] {
        self.facts().1
    }

    /// The symbol as it is shown; empty for a plain count.
    pub fn symbol(self) -> &'static str {
        self.facts().0
    }

    /// The sort of quantity it measures.
    pub fn dimension(self) -> Dimension {
        self.facts().2
    }

    /// The system it belongs to. `None` for units that both systems use: degrees of an angle, times,
    /// percentages and counts.
    pub fn system(self) -> Option<System> {
        self.facts().3
    }

    /// Base units to one of this unit. For a temperature it is the size of one degree only.
    pub fn factor(self) -> Exact {
        self.facts().4
    }

    // Where the scale starts, in this unit: only Fahrenheit starts apart from its base.
    fn start(self) -> Exact {
        Exact::from_integer(if self == Unit::Fahrenheit { 32 } else { 0 })
    }

    /// A number of this unit in the base unit. `None` on overflow.
    pub fn to_base(self, number: Exact) -> Option<Exact> {
        number.checked_sub(self.start())?.checked_mul(self.factor())
    }

    /// A value in the base unit as a number of this unit. `None` on overflow.
    pub fn from_base(self, value: Exact) -> Option<Exact> {
        value.checked_div(self.factor())?.checked_add(self.start())
    }
}

/// The unit that a common other spelling stands for, for a hint. `None` when there is none.
pub(super) fn unit_meant(word: &str) -> Option<Unit> {
    let word = word.trim_end_matches('.').to_lowercase();
    let unit = match word.as_str() {
        "inch" | "inches" | "ins" => Unit::In,
        "foot" | "feet" => Unit::Ft,
        "yard" | "yards" | "yds" => Unit::Yd,
        "mms" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Unit::Mm,
        "cms" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Unit::Cm,
        "metre" | "metres" | "meter" | "meters" => Unit::M,
        "degree" | "degrees" | "degs" | "º" => Unit::Deg,
        "c" | "ºc" | "℃" | "celsius" => Unit::Celsius,
        "f" | "ºf" | "℉" | "fahrenheit" => Unit::Fahrenheit,
        "sec" | "secs" | "second" | "seconds" => Unit::Second,
        "mins" | "minute" | "minutes" => Unit::Minute,
        "hr" | "hrs" | "hour" | "hours" => Unit::Hour,
        "gm" | "gms" | "gram" | "grams" => Unit::Gram,
        "kgs" | "kilo" | "kilos" | "kilogram" | "kilograms" => Unit::Kilogram,
        "ounce" | "ounces" | "ozs" => Unit::Ounce,
        "percent" => Unit::Percent,
        other => return Unit::parse(other),
    };
    Some(unit)
}
