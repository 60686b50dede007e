//! Words that several checks share.

use crate::construct::Moment;
use crate::resolve::{Edition, Worked};

/// A length in mm as the booklet shows it in its first system: to the millimetre.
pub(super) fn length(edition: &Edition<'_>, millimetres: f64) -> String {
    let quantity = super::apart::millimetres(millimetres);
    edition.figures(&Worked { quantity, stated: None }).first.to_string().replace('\u{a0}', " ")
}

/// A value as the booklet shows it in its first system.
pub(super) fn length_of(edition: &Edition<'_>, worked: Worked) -> String {
    edition.figures(&worked).first.to_string().replace('\u{a0}', " ")
}

/// Another moment as seen from a step: "step 4", or the other work where both stand in one step.
pub(super) fn that_step(other: &Moment, own: &Moment) -> String {
    if other.step == own.step { "the other work of this step".to_owned() } else { format!("step {}", other.step) }
}
