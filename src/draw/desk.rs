//! What drawing a step has at hand, and why it may not be drawn.

use super::cloth::Cloth;
use super::page::Sheet;
use super::past::Past;
use crate::figure::Ruler;
use crate::resolve::{Edition, EditionStep};

/// Why a step cannot be drawn: the fact and the act.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Undrawn {
    pub message: String,
    pub hint: String,
    /// Whether it follows from a fault that is told by itself.
    pub follows: bool,
}

impl Undrawn {
    pub fn unclear(message: impl Into<String>) -> Undrawn {
        Undrawn {
            message: message.into(),
            hint: "say it in the step's work block, or draw this diagram by hand and name its file here".into(),
            follows: false,
        }
    }
}

/// What drawing a step has at hand.
pub(super) struct Desk<'a, 'e> {
    pub edition: &'a Edition<'e>,
    pub step: &'a EditionStep<'e>,
    pub past: Past,
    pub cloths: Vec<Cloth>,
    pub ruler: &'a Ruler<'a>,
    pub sheet: Sheet,
}
