//! The functions of formulas in one table: the parser, the evaluator, the help pages and the
//! advice on misspelt names all walk it.

use std::cmp::Ordering;
use std::ops::Range;

use super::mismatch::{Side, TEMPERATURE_HINT, unlike};
use super::outcome::Outcome;
use super::tree::{Expr, ExprKind};
use crate::measure::exact::{Way, square_root, to_step};
use crate::measure::problem::{Problem, ProblemKind};
use crate::measure::quantity::Quantity;
use crate::measure::shapers::table::SHAPERS;
use crate::measure::unit::{Dimension, Unit};

/// One function: how it is written, what it means, how it is worked out.
#[derive(Debug, Clone, Copy)]
pub struct FunctionDoc {
    /// Its name.
    pub name: &'static str,
    /// How it is written, with a word for each argument.
    pub signature: &'static str,
    /// What it gives, in one line.
    pub meaning: &'static str,
    /// A use of it that holds, as an expectation is written.
    pub example: &'static str,
    pub(super) least: usize,
    /// `None`: as many as are wanted.
    pub(super) most: Option<usize>,
    pub(super) run: fn(&Given<'_>) -> Result<Quantity, Problem>,
}

/// Every function there is.
#[rustfmt::skip]
pub const FUNCTIONS: &[FunctionDoc] = &[
    FunctionDoc { name: "min", signature: "min(x, y, …)", meaning: "the least of the values", example: "min(3 cm, 1 in) = 1 in", least: 1, most: None, run: min },
    FunctionDoc { name: "max", signature: "max(x, y, …)", meaning: "the greatest of the values", example: "max(3 cm, 1 in) = 3 cm", least: 1, most: None, run: max },
    FunctionDoc { name: "abs", signature: "abs(x)", meaning: "x without its minus sign", example: "abs(2 cm - 5 cm) = 3 cm", least: 1, most: Some(1), run: abs },
    FunctionDoc { name: "round", signature: "round(x, step)", meaning: "x to the nearest step, half a step away from 0", example: "round(42 mm, 5 mm) = 40 mm", least: 2, most: Some(2), run: round },
    FunctionDoc { name: "up", signature: "up(x, step)", meaning: "x to the next step that is not less", example: "up(42 mm, 5 mm) = 45 mm", least: 2, most: Some(2), run: up },
    FunctionDoc { name: "down", signature: "down(x, step)", meaning: "x to the next step that is not more", example: "down(42 mm, 5 mm) = 40 mm", least: 2, most: Some(2), run: down },
    FunctionDoc { name: "stock", signature: "stock(x, [a, b, …])", meaning: "the shortest length of the list that is at least x", example: "stock(22 cm, [20 cm, 25 cm, 30 cm]) = 25 cm", least: 2, most: Some(2), run: stock },
    FunctionDoc { name: "sqrt", signature: "sqrt(x)", meaning: "the square root of x: the side of a square whose area is x", example: "sqrt(900 cm²) = 30 cm", least: 1, most: Some(1), run: sqrt },
    trade(0), trade(1), trade(2), trade(3), trade(4), trade(5), trade(6),
    trade(7), trade(8), trade(9), trade(10), trade(11), trade(12), trade(13),
    trade(14), trade(15), trade(16), trade(17), trade(18), trade(19), trade(20),
    trade(21), trade(22), trade(23), trade(24),
];

/// A formula of the trade as a function, by its place in their table.
const fn trade(at: usize) -> FunctionDoc {
    let shaper = &SHAPERS[at];
    let count = shaper.arguments.len();
    FunctionDoc {
        name: shaper.name,
        signature: shaper.signature,
        meaning: shaper.meaning,
        example: shaper.example,
        least: count,
        most: Some(count),
        run: work_out_trade,
    }
}

// A formula of the trade that no author could call would be dead.
const _: () = assert!(SHAPERS.len() == 25, "give each shaper its place in FUNCTIONS");

pub(super) fn find_function(name: &str) -> Option<&'static FunctionDoc> {
    FUNCTIONS.iter().find(|function| function.name == name)
}

/// The names for a sentence: "min, max and abs".
pub(super) fn function_names() -> String {
    let names: Vec<&str> = FUNCTIONS.iter().map(|function| function.name).collect();
    match names.split_last() {
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
        None => String::new(),
    }
}

/// What a function is given, with the characters it was written in.
pub(super) struct Given<'a> {
    pub text: &'a str,
    pub call: Range<usize>,
    pub function: &'a str,
    pub args: Vec<(&'a Expr, Outcome)>,
}

impl<'a> Given<'a> {
    fn wrong(&self, range: Range<usize>, message: String) -> Problem {
        let known = find_function(self.function);
        let hint = known.map_or(String::new(), |known| format!("write {}", known.signature));
        Problem::new(ProblemKind::WrongArguments, range, message, hint)
    }

    fn quantity(&self, index: usize) -> Result<(Side<'a>, Quantity), Problem> {
        let function = self.function;
        let sort = match self.args.get(index) {
            Some((expr, Outcome::Quantity(quantity))) => {
                let side = Side { expr, dimension: quantity.dimension };
                return Ok((side, *quantity));
            }
            Some((expr, Outcome::Truth(_))) => (expr.range.clone(), "a comparison"),
            Some((expr, Outcome::List(_))) => (expr.range.clone(), "a list"),
            None => {
                let message = format!("{function} is given too few values");
                return Err(self.wrong(self.call.clone(), message));
            }
        };
        let (range, what) = sort;
        Err(self.wrong(range, format!("{function} is given {what} where one value is wanted")))
    }

    fn overflow(&self) -> Problem {
        Problem::overflow(self.call.clone())
    }

    /// One value that is no temperature: those are not reckoned with.
    fn reckonable(&self, index: usize) -> Result<(Side<'a>, Quantity), Problem> {
        let (side, quantity) = self.quantity(index)?;
        if !side.is_temperature() {
            return Ok((side, quantity));
        }
        Err(Problem::new(
            ProblemKind::Mismatch,
            side.expr.range.clone(),
            format!("{} of a temperature", self.function),
            TEMPERATURE_HINT,
        ))
    }
}

fn min(given: &Given<'_>) -> Result<Quantity, Problem> {
    extreme(given, Ordering::Less)
}

fn max(given: &Given<'_>) -> Result<Quantity, Problem> {
    extreme(given, Ordering::Greater)
}

fn extreme(given: &Given<'_>, wanted: Ordering) -> Result<Quantity, Problem> {
    let (first, mut best) = given.quantity(0)?;
    for index in 1..given.args.len() {
        let (side, quantity) = given.quantity(index)?;
        let ordering = quantity.compare(best).map_err(|_| {
            let message = format!("{} of {} and {}", given.function, first.dimension.name(), side.dimension.name());
            unlike(given.text, message, side.expr.range.clone(), first, side)
        })?;
        if ordering == wanted {
            best = quantity;
        }
    }
    Ok(best)
}

fn abs(given: &Given<'_>) -> Result<Quantity, Problem> {
    let (_, quantity) = given.reckonable(0)?;
    Ok(Quantity { value: quantity.value.abs(), ..quantity })
}

fn round(given: &Given<'_>) -> Result<Quantity, Problem> {
    step(given, Way::Nearest)
}

fn up(given: &Given<'_>) -> Result<Quantity, Problem> {
    step(given, Way::Up)
}

fn down(given: &Given<'_>) -> Result<Quantity, Problem> {
    step(given, Way::Down)
}

fn step(given: &Given<'_>, way: Way) -> Result<Quantity, Problem> {
    let (value_side, value) = given.reckonable(0)?;
    let (step_side, step) = given.reckonable(1)?;
    let step_range = step_side.expr.range.clone();
    if value.dimension != step.dimension {
        let message = format!("{} rounded to a step that is {}", value.dimension.name(), step.dimension.name());
        return Err(unlike(given.text, message, step_range, value_side, step_side));
    }
    if !step.value.is_positive() {
        let message = if step.value.is_zero() { "the step is 0" } else { "the step is below 0" };
        return Err(Problem::new(
            ProblemKind::OutOfRange,
            step_range,
            message,
            "give a step above 0, such as 5 mm or 1/8 in",
        ));
    }
    let rounded = to_step(value.value, step.value, way).ok_or_else(|| given.overflow())?;
    Ok(Quantity { value: rounded, ..value })
}

fn stock(given: &Given<'_>) -> Result<Quantity, Problem> {
    let (side, wanted) = given.quantity(0)?;
    let (list, stocked) = match given.args.get(1) {
        Some((list, Outcome::List(stocked))) => (*list, stocked),
        Some((other, _)) => {
            let message = "stock is given one value where a list is wanted";
            return Err(given.wrong(other.range.clone(), message.to_owned()));
        }
        None => return Err(given.wrong(given.call.clone(), "stock is given no list".to_owned())),
    };
    let exprs: &[Expr] = match &list.kind {
        ExprKind::List(exprs) => exprs,
        _ => &[],
    };
    let mut best: Option<Quantity> = None;
    let mut longest: Option<(&Expr, Quantity)> = None;
    for (expr, quantity) in exprs.iter().zip(stocked) {
        let other = Side { expr, dimension: quantity.dimension };
        let ordering = quantity.compare(wanted).map_err(|_| {
            let message = format!("{} sought in a list that holds {}", side.dimension.name(), other.dimension.name());
            unlike(given.text, message, expr.range.clone(), side, other)
        })?;
        if ordering.is_ge() && best.is_none_or(|best| quantity.value < best.value) {
            best = Some(*quantity);
        }
        if longest.is_none_or(|(_, longest)| quantity.value > longest.value) {
            longest = Some((expr, *quantity));
        }
    }
    let Some((expr, longest)) = longest else {
        return Err(given.wrong(list.range.clone(), "the list is empty".to_owned()));
    };
    best.ok_or_else(|| no_stock(side, wanted, expr, longest))
}

fn no_stock(side: Side<'_>, wanted: Quantity, expr: &Expr, longest: Quantity) -> Problem {
    let unit: Option<Unit> = match &expr.kind {
        ExprKind::Literal(measure) => Some(measure.first.unit),
        _ => None,
    };
    let (wanted, most) = (wanted.spoken(unit), longest.spoken(unit));
    Problem::new(
        ProblemKind::NoStock,
        side.expr.range.clone(),
        format!("{wanted} is needed, and the longest in the list is {most}"),
        "add a length that is stocked and long enough to the list, or ask for less",
    )
    .with_related(expr.range.clone(), "the longest in the list")
}

fn sqrt(given: &Given<'_>) -> Result<Quantity, Problem> {
    let (side, quantity) = given.reckonable(0)?;
    let range = side.expr.range.clone();
    let dimension = match quantity.dimension {
        Dimension::Count => Dimension::Count,
        Dimension::Area => Dimension::Length,
        other => {
            return Err(Problem::new(
                ProblemKind::Mismatch,
                range,
                format!("the square root of {}", other.name()),
                "take the root of an area, which gives a length, or of a plain number",
            ));
        }
    };
    if quantity.value.is_negative() {
        return Err(Problem::new(
            ProblemKind::OutOfRange,
            range,
            format!("the square root of {}, which is below 0", quantity.spoken(None)),
            "check the formula inside sqrt; abs(x) leaves the minus out",
        ));
    }
    let value = square_root(quantity.value).ok_or_else(|| given.overflow())?;
    Ok(Quantity { value, dimension })
}

fn work_out_trade(given: &Given<'_>) -> Result<Quantity, Problem> {
    let Some(shaper) = SHAPERS.iter().find(|shaper| shaper.name == given.function) else {
        return Err(given.wrong(given.call.clone(), format!("nothing is called {}", given.function)));
    };
    let mut values = Vec::with_capacity(shaper.arguments.len());
    for (at, argument) in shaper.arguments.iter().enumerate() {
        let (side, quantity) = given.reckonable(at)?;
        if quantity.dimension != argument.dimension {
            return Err(Problem::new(
                ProblemKind::Mismatch,
                side.expr.range.clone(),
                format!("{} stands where {} should", quantity.dimension.name(), argument.dimension.name()),
                format!("the {} of {} is {}", argument.name, shaper.signature, argument.dimension.name()),
            ));
        }
        values.push(quantity.value);
    }
    let value = shaper.work_out(&values).ok_or_else(|| {
        Problem::new(
            ProblemKind::OutOfRange,
            given.call.clone(),
            format!("{} has no answer for these figures", given.function),
            format!("it is {}: see whether a figure is 0, below 0, or too large", shaper.formula),
        )
    })?;
    Ok(Quantity { value, dimension: shaper.gives })
}
