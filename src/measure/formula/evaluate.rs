//! Working a formula out with exact numbers, and saying which names and functions gave what.

use super::functions::{Given, find_function, function_names};
use super::mismatch::{Side, TEMPERATURE_HINT, unlike, unmeasured};
use super::outcome::{Lookup, Names, Outcome};
use super::tree::{Comparison, Expr, ExprKind, Formula, Operator};
use crate::measure::problem::{Problem, ProblemKind};
use crate::measure::quantity::{Fault, Quantity};
use crate::measure::shapers::pi;
use crate::measure::unit::{Dimension, Unit};

/// The ratio of the length round a circle to its width, by its name; nothing else can be called so.
pub const PI: &str = "pi";

/// Works a formula out. All faults that do not follow from one another are given; the list is empty
/// when the only one is a name that is broken elsewhere.
pub fn evaluate(formula: &Formula, names: &dyn Names) -> Result<Outcome, Vec<Problem>> {
    let mut run = Run::new(formula, names);
    run.outcome(&formula.root).ok_or(run.problems)
}

/// Every name used and every function call, each once, with what it came to, in the order they are
/// worked out; what has a fault is left out.
pub fn explain(formula: &Formula, names: &dyn Names) -> Vec<(String, Quantity)> {
    let mut run = Run::new(formula, names);
    run.outcome(&formula.root);
    run.steps
}

struct Run<'a> {
    text: &'a str,
    names: &'a dyn Names,
    problems: Vec<Problem>,
    steps: Vec<(String, Quantity)>,
}

impl<'a> Run<'a> {
    fn new(formula: &'a Formula, names: &'a dyn Names) -> Run<'a> {
        Run { text: &formula.text, names, problems: Vec::new(), steps: Vec::new() }
    }

    fn fail<T>(&mut self, problem: Problem) -> Option<T> {
        self.problems.push(problem);
        None
    }

    fn step(&mut self, expr: &Expr, quantity: Quantity) {
        let written = &self.text[expr.range.clone()];
        if self.steps.iter().all(|(known, _)| known != written) {
            self.steps.push((written.to_owned(), quantity));
        }
    }

    /// `None` when something in it has a fault.
    fn outcome(&mut self, expr: &'a Expr) -> Option<Outcome> {
        match &expr.kind {
            ExprKind::Literal(measure) => Some(Outcome::Quantity(self.names.figure(measure))),
            ExprKind::Name(name) => self.name(name, expr).map(Outcome::Quantity),
            ExprKind::Negate(inner) => self.negate(expr, inner).map(Outcome::Quantity),
            ExprKind::Binary { .. } => self.row(expr).map(Outcome::Quantity),
            ExprKind::Compare { op, left, right } => self.compare(expr, *op, left, right).map(Outcome::Truth),
            ExprKind::Call { function, args } => self.call(expr, function, args).map(Outcome::Quantity),
            ExprKind::List(values) => {
                let values: Vec<_> = values.iter().map(|value| self.quantity(value)).collect();
                let values: Option<Vec<Quantity>> = values.into_iter().collect();
                values.map(Outcome::List)
            }
        }
    }

    fn quantity(&mut self, expr: &'a Expr) -> Option<Quantity> {
        let what = match self.outcome(expr)? {
            Outcome::Quantity(quantity) => return Some(quantity),
            Outcome::Truth(_) => "a comparison",
            Outcome::List(_) => "a list",
        };
        self.fail(Problem::new(
            ProblemKind::Mismatch,
            expr.range.clone(),
            format!("{what} stands where one value is wanted"),
            "write a figure, a name, or a formula that gives one value",
        ))
    }

    fn name(&mut self, name: &str, expr: &Expr) -> Option<Quantity> {
        let value = if name == PI {
            Lookup::Found(Quantity { value: pi(), dimension: Dimension::Count })
        } else {
            self.names.value(name)
        };
        match value {
            Lookup::Found(quantity) => {
                self.step(expr, quantity);
                Some(quantity)
            }
            Lookup::Broken => None,
            Lookup::Unknown => {
                let hint = match Unit::parse(name) {
                    Some(_) => format!("a unit needs a number in front: 1 {name}"),
                    None => format!("check the spelling, or define {name}"),
                };
                self.fail(Problem::new(
                    ProblemKind::UnknownName(name.to_owned()),
                    expr.range.clone(),
                    format!("nothing is called “{name}”"),
                    hint,
                ))
            }
        }
    }

    fn negate(&mut self, expr: &Expr, inner: &'a Expr) -> Option<Quantity> {
        let quantity = self.quantity(inner)?;
        if quantity.dimension != Dimension::Temperature {
            return Some(Quantity { value: -quantity.value, ..quantity });
        }
        let problem = Problem::new(
            ProblemKind::Mismatch,
            expr.range.clone(),
            "a minus in front of a temperature that is worked out",
            TEMPERATURE_HINT,
        );
        self.fail(problem.with_related(inner.range.clone(), quantity.dimension.name()))
    }

    /// A row of signs leans to the left: it is walked, not recursed into, so that a long sum needs
    /// no deep stack.
    fn row(&mut self, expr: &'a Expr) -> Option<Quantity> {
        let mut row = Vec::new();
        let mut at = expr;
        while let ExprKind::Binary { op, left, right } = &at.kind {
            row.push((at, *op, &**left, &**right));
            at = left;
        }
        let mut total = self.quantity(at);
        for (whole, op, left, right) in row.into_iter().rev() {
            let next = self.quantity(right);
            total = match total.zip(next) {
                Some(pair) => self.binary(whole, op, (left, right), pair),
                None => None,
            };
        }
        total
    }

    fn binary(
        &mut self,
        whole: &Expr,
        op: Operator,
        (left, right): (&Expr, &Expr),
        (a, b): (Quantity, Quantity),
    ) -> Option<Quantity> {
        let result = match op {
            Operator::Add => a.checked_add(b),
            Operator::Subtract => a.checked_sub(b),
            Operator::Multiply => a.checked_mul(b),
            Operator::Divide => a.checked_div(b),
        };
        let fault = match result {
            Ok(quantity) => return Some(quantity),
            Err(fault) => fault,
        };
        let range = whole.range.clone();
        let (left_side, right_side) = sides((left, a), (right, b));
        let message = fault.to_string();
        self.fail(match (fault, op) {
            (Fault::Overflow, _) => Problem::overflow(range),
            (Fault::DivisionByZero, _) => {
                let divisor = &self.text[right.range.clone()];
                Problem::new(
                    ProblemKind::DivisionByZero,
                    right.range.clone(),
                    message,
                    match right.kind {
                        ExprKind::Literal(_) => "divide by a figure other than 0".to_owned(),
                        _ => format!("check {divisor}, which comes to 0 here"),
                    },
                )
            }
            (Fault::Mismatch { .. }, Operator::Add | Operator::Subtract)
                if !left_side.is_temperature() && !right_side.is_temperature() =>
            {
                unlike(self.text, message, range, left_side, right_side)
            }
            (Fault::Mismatch { .. }, _) => unmeasured(message, range, left_side, right_side),
        })
    }

    fn compare(&mut self, whole: &Expr, op: Comparison, left: &'a Expr, right: &'a Expr) -> Option<bool> {
        let (a, b) = (self.quantity(left), self.quantity(right));
        let (a, b) = a.zip(b)?;
        match a.compare(b) {
            Ok(ordering) => Some(op.holds(ordering)),
            Err(fault) => {
                let (left, right) = sides((left, a), (right, b));
                let range = whole.range.clone();
                self.fail(unlike(self.text, fault.to_string(), range, left, right))
            }
        }
    }

    fn call(&mut self, expr: &'a Expr, function: &'a str, args: &'a [Expr]) -> Option<Quantity> {
        let outcomes: Vec<_> = args.iter().map(|arg| (arg, self.outcome(arg))).collect();
        let args: Option<Vec<(&Expr, Outcome)>> =
            outcomes.into_iter().map(|(arg, outcome)| Some((arg, outcome?))).collect();
        let args = args?;
        // The parser lets only known functions through; a tree built by hand may hold another.
        let Some(known) = find_function(function) else {
            return self.fail(Problem::new(
                ProblemKind::UnknownFunction(function.to_owned()),
                expr.range.clone(),
                format!("there is no function “{function}”"),
                format!("the functions are {}", function_names()),
            ));
        };
        let given = Given { text: self.text, call: expr.range.clone(), function, args };
        match (known.run)(&given) {
            Ok(quantity) => {
                self.step(expr, quantity);
                Some(quantity)
            }
            Err(problem) => self.fail(problem),
        }
    }
}

fn sides<'e>(left: (&'e Expr, Quantity), right: (&'e Expr, Quantity)) -> (Side<'e>, Side<'e>) {
    let side = |(expr, quantity): (&'e Expr, Quantity)| Side { expr, dimension: quantity.dimension };
    (side(left), side(right))
}
