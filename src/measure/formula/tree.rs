//! A formula as a tree whose every node knows its characters, so that a fault is shown where it
//! stands.

use std::ops::Range;

use crate::measure::quantity::Measure;

/// A formula as written, and what it says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Formula {
    /// The text, to whose bytes every range refers.
    pub text: String,
    /// The whole of it as a tree.
    pub root: Expr,
}

/// One part of a formula.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Expr {
    /// What it is.
    pub kind: ExprKind,
    /// Its characters, as bytes of the text, without brackets that merely surround it.
    pub range: Range<usize>,
}

/// The parts a formula is made of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ExprKind {
    /// A figure, in one system or both.
    Literal(Measure),
    /// A name, dotted or not.
    Name(String),
    /// A minus in front.
    Negate(Box<Expr>),
    /// A sum, difference, product or quotient.
    Binary {
        /// The sign.
        op: Operator,
        /// What stands before it.
        left: Box<Expr>,
        /// What stands after it.
        right: Box<Expr>,
    },
    /// A comparison.
    Compare {
        /// The sign.
        op: Comparison,
        /// What stands before it.
        left: Box<Expr>,
        /// What stands after it.
        right: Box<Expr>,
    },
    /// A function and what it is given.
    Call {
        /// The function's name, one of `FUNCTIONS`.
        function: String,
        /// Its arguments in order.
        args: Vec<Expr>,
    },
    /// A list in square brackets; only ever an argument.
    List(Vec<Expr>),
}

/// The signs of reckoning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Operator {
    /// `+`
    Add,
    /// `-`
    Subtract,
    /// `*`
    Multiply,
    /// `/`
    Divide,
}

/// The signs of comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Comparison {
    /// `<`
    Less,
    /// `<=`
    AtMost,
    /// `=`
    Equal,
    /// `>=`
    AtLeast,
    /// `>`
    Greater,
}

impl Comparison {
    /// Whether it holds for a pair that is ordered so.
    pub fn holds(self, ordering: std::cmp::Ordering) -> bool {
        match self {
            Comparison::Less => ordering.is_lt(),
            Comparison::AtMost => ordering.is_le(),
            Comparison::Equal => ordering.is_eq(),
            Comparison::AtLeast => ordering.is_ge(),
            Comparison::Greater => ordering.is_gt(),
        }
    }
}

impl Formula {
    /// Every name used, in the order of the text, as often as it is used.
    pub fn names(&self) -> Vec<(&str, Range<usize>)> {
        let mut names = Vec::new();
        let mut waiting = vec![&self.root];
        while let Some(expr) = waiting.pop() {
            match &expr.kind {
                ExprKind::Literal(_) => {}
                ExprKind::Name(name) => names.push((name.as_str(), expr.range.clone())),
                ExprKind::Negate(inner) => waiting.push(inner),
                ExprKind::Binary { left, right, .. } | ExprKind::Compare { left, right, .. } => {
                    waiting.extend([&**right, &**left]);
                }
                ExprKind::Call { args: parts, .. } | ExprKind::List(parts) => {
                    waiting.extend(parts.iter().rev());
                }
            }
        }
        names
    }

    /// The figure, when the whole formula is one. `None` for anything that has to be worked out, a
    /// minus in front of a figure included.
    pub fn as_measure(&self) -> Option<&Measure> {
        match &self.root.kind {
            ExprKind::Literal(measure) => Some(measure),
            _ => None,
        }
    }
}
