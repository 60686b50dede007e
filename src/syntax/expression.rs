//! Formulas out of text, and their faults as findings at the very characters.

use crate::diag::{Check, Finding, Findings};
use crate::faults::{
    DIVISION_BY_ZERO, FORMULA_UNREADABLE, NO_STOCK_LENGTH, NUMBER_TOO_LARGE, OUT_OF_RANGE, UNIT_MISMATCH, UNKNOWN_NAME,
    WRONG_ARGUMENTS,
};
use crate::measure::{Formula, Problem, ProblemKind};
use crate::model::{Expression, Text};

/// Reads a formula; its faults are findings.
pub fn parse_expression(source: &Text, findings: &mut Findings) -> Option<Expression> {
    match Formula::parse(&source.text) {
        Ok(formula) => Some(Expression { formula, source: source.clone() }),
        Err(problems) => {
            findings.extend(problems.iter().map(|problem| problem_to_finding(problem, source)));
            None
        }
    }
}

/// A fault in a formula as a finding in the file that holds it.
pub fn problem_to_finding(problem: &Problem, source: &Text) -> Finding {
    let mut finding =
        check(&problem.kind).at(source.at(problem.range.clone()), problem.message.clone()).hint(problem.hint.clone());
    for (range, label) in &problem.related {
        finding = finding.note(source.at(range.clone()), label.clone());
    }
    finding
}

fn check(kind: &ProblemKind) -> &'static Check {
    match kind {
        ProblemKind::Unreadable => &FORMULA_UNREADABLE,
        ProblemKind::UnknownName(_) | ProblemKind::UnknownFunction(_) => &UNKNOWN_NAME,
        ProblemKind::Mismatch => &UNIT_MISMATCH,
        ProblemKind::Overflow => &NUMBER_TOO_LARGE,
        ProblemKind::DivisionByZero => &DIVISION_BY_ZERO,
        ProblemKind::NoStock => &NO_STOCK_LENGTH,
        ProblemKind::WrongArguments => &WRONG_ARGUMENTS,
        ProblemKind::OutOfRange => &OUT_OF_RANGE,
    }
}
