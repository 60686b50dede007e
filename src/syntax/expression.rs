//! Formulas out of text, and their faults as findings at the very characters.

use crate::diag::{Finding, Findings};
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
    let mut finding = Finding::error(code(&problem.kind), source.at(problem.range.clone()), problem.message.clone())
        .hint(problem.hint.clone());
    for (range, label) in &problem.related {
        finding = finding.note(source.at(range.clone()), label.clone());
    }
    finding
}

fn code(kind: &ProblemKind) -> &'static str {
    match kind {
        ProblemKind::Unreadable => "formula-unreadable",
        ProblemKind::UnknownName(_) | ProblemKind::UnknownFunction(_) => "unknown-name",
        ProblemKind::Mismatch => "unit-mismatch",
        ProblemKind::Overflow => "number-too-large",
        ProblemKind::DivisionByZero => "division-by-zero",
        ProblemKind::NoStock => "no-stock-length",
        ProblemKind::WrongArguments => "wrong-arguments",
        ProblemKind::OutOfRange => "out-of-range",
    }
}
