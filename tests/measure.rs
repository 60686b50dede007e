//! The exact quantities and formulas of `notchbook::measure`, seen from outside.

#[path = "measure/conversions.rs"]
mod conversions;
#[path = "measure/exact.rs"]
mod exact_numbers;
#[path = "measure/faults.rs"]
mod faults;
#[path = "measure/formulas.rs"]
mod formulas;
#[path = "measure/random.rs"]
mod random;
#[path = "measure/reading.rs"]
mod reading;
#[path = "measure/showing.rs"]
mod showing;

use notchbook::measure::{
    Dimension, Exact, Formula, Lookup, Names, Outcome, Problem, Quantity, evaluate, ratio,
    read_measure,
};

/// A ratio of two whole numbers.
fn exact(numer: i128, denom: i128) -> Exact {
    ratio(numer, denom).expect("a denominator above 0")
}

/// The quantity that a figure states.
fn quantity(figure: &str) -> Quantity {
    match read_measure(figure) {
        Ok(measure) => measure.first.quantity,
        Err(problem) => panic!("{figure} was not read: {problem:?}"),
    }
}

/// A length of so many millimetres.
fn mm(numer: i128, denom: i128) -> Quantity {
    Quantity {
        value: exact(numer, denom),
        dimension: Dimension::Length,
    }
}

/// Names for formulas, each with the figure it stands for; "broken" is broken.
struct Known<'a>(&'a [(&'a str, &'a str)]);

impl Names for Known<'_> {
    fn value(&self, name: &str) -> Lookup {
        if name == "broken" {
            return Lookup::Broken;
        }
        match self.0.iter().find(|(known, _)| *known == name) {
            Some((_, figure)) => Lookup::Found(quantity(figure)),
            None => Lookup::Unknown,
        }
    }
}

/// The names that most tests use.
const BAG: Known<'_> = Known(&[
    ("width", "20 cm"),
    ("depth", "10 cm"),
    ("seam", "1 cm"),
    ("body.area", "900 cm2"),
    ("lining_front.top", "30 cm"),
    ("count", "3"),
    ("nothing", "0"),
    ("iron", "150 °C"),
    ("turn", "45 deg"),
    ("rest", "10 min"),
]);

fn run(text: &str) -> Result<Outcome, Vec<Problem>> {
    evaluate(&Formula::parse(text)?, &BAG)
}

/// What a formula that gives one quantity comes to.
fn worth(text: &str) -> Quantity {
    match run(text) {
        Ok(Outcome::Quantity(quantity)) => quantity,
        other => panic!("{text} gave {other:?}"),
    }
}
