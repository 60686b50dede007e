//! What is wrong with a figure or a formula, and at which characters of it, so that every caller can
//! show the same fact and the same advice.

use std::ops::Range;

/// One fault in a figure or a formula.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// What sort of fault it is, for callers that decide by it.
    pub kind: ProblemKind,
    /// The characters at fault, as bytes of the formula's text.
    pub range: Range<usize>,
    /// The fact.
    pub message: String,
    /// The act: what to write or check instead.
    pub hint: String,
    /// Other places in the same text that help to see the fault, each with a label.
    pub related: Vec<(Range<usize>, String)>,
}

/// The sorts of fault.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ProblemKind {
    /// The text does not follow the written forms.
    Unreadable,
    /// A name that nothing carries.
    UnknownName(String),
    /// A function that does not exist.
    UnknownFunction(String),
    /// Quantities that do not go together.
    Mismatch,
    /// A result too large, or too finely divided, to be held exactly.
    Overflow,
    /// A division by nothing.
    DivisionByZero,
    /// `stock` found nothing long enough.
    NoStock,
    /// A function with too many or too few arguments, or with the wrong sort.
    WrongArguments,
    /// A value, a length or a depth outside its limits.
    OutOfRange,
}

impl Problem {
    pub(super) fn new(
        kind: ProblemKind,
        range: Range<usize>,
        message: impl Into<String>,
        hint: impl Into<String>,
    ) -> Problem {
        Problem { kind, range, message: message.into(), hint: hint.into(), related: Vec::new() }
    }

    pub(super) fn unreadable(range: Range<usize>, message: impl Into<String>, hint: impl Into<String>) -> Problem {
        Problem::new(ProblemKind::Unreadable, range, message, hint)
    }

    pub(super) fn overflow(range: Range<usize>) -> Problem {
        Problem::new(
            ProblemKind::Overflow,
            range,
            "the result is too large, or too finely divided, to be held exactly",
            "use smaller numbers, or round a part of the formula: round(x, 1 mm)",
        )
    }

    pub(super) fn with_related(mut self, range: Range<usize>, label: impl Into<String>) -> Problem {
        self.related.push((range, label.into()));
        self
    }
}
