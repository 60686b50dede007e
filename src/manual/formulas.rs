//! The pages of functions and units, from their tables.

use super::chapter::Chapter;
use super::page::ManualPage;
use crate::measure::shapers::SHAPERS;
use crate::measure::{Dimension, Exact, FUNCTIONS, FunctionDoc, Unit};

/// The pages of all functions.
pub(super) fn functions() -> Vec<ManualPage> {
    FUNCTIONS.iter().map(function).collect()
}

fn function(function: &FunctionDoc) -> ManualPage {
    let mut text =
        format!("`{}` gives {}.\n\n```formula\n{}\n```\n", function.signature, function.meaning, function.example);
    let shaper = SHAPERS.iter().find(|shaper| shaper.name == function.name);
    if let Some(shaper) = shaper {
        text.push_str(&format!("\nThe sum behind it: `{}` ({}).\n", shaper.formula, shaper.source));
    }
    ManualPage {
        name: function.name.to_owned(),
        sort: "a function of formulas".to_owned(),
        chapter: Chapter::Functions,
        section: if shaper.is_some() { "Functions of the trade" } else { "Functions of figures" }.to_owned(),
        summary: format!("`{}`: {}", function.signature, function.meaning),
        text,
    }
}

/// The pages of all units.
pub(super) fn units() -> Vec<ManualPage> {
    Unit::ALL.into_iter().filter(|unit| !unit.symbol().is_empty()).map(unit).collect()
}

fn unit(unit: Unit) -> ManualPage {
    let (symbol, sort) = (unit.symbol(), unit.dimension().name());
    let system = match unit.system() {
        Some(system) => format!("of the {} system", system.name()),
        None => "in both systems".to_owned(),
    };
    let spelt: Vec<String> = unit.spellings().iter().map(|spelling| written(spelling)).collect();
    let summary = capital(&format!("{sort} {system}"));
    let mut text = format!("{summary}. It is written {}.\n", spelt.join(" or "));
    text.push_str(&worth(unit));
    ManualPage {
        name: symbol.to_owned(),
        sort: "a unit".to_owned(),
        chapter: Chapter::Units,
        section: String::new(),
        summary,
        text,
    }
}

/// A figure of a unit in code marks: `5 cm`, and with no space `5″`.
fn written(spelling: &str) -> String {
    let space = if matches!(spelling, "\"" | "″" | "°") { "" } else { " " };
    format!("`5{space}{spelling}`")
}

/// What one of it is in the base unit; nothing for a base unit, and for temperatures, which are not reckoned with.
fn worth(unit: Unit) -> String {
    let base = match unit.dimension() {
        Dimension::Temperature => return "\nTemperatures are not reckoned with.\n".to_owned(),
        Dimension::Count => "",
        Dimension::Length => "mm",
        Dimension::Area => "mm²",
        Dimension::Angle => "°",
        Dimension::Time => "s",
        Dimension::Mass => "g",
    };
    if base == unit.symbol() {
        return String::new();
    }
    let equation = format!("1 {} = {} {base}", unit.symbol(), decimal(unit.factor()));
    format!("\n```formula\n{}\n```\n", equation.trim_end())
}

/// A number above 0 as a decimal; the sizes of all units end within twelve places.
fn decimal(number: Exact) -> String {
    let mut digits = format!("{}.", number.numer() / number.denom());
    let mut rest = number.numer() % number.denom();
    for _ in 0..12 {
        rest *= 10;
        digits.push_str(&(rest / number.denom()).to_string());
        rest %= number.denom();
    }
    digits.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
