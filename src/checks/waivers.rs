//! What is wrong with a waiver that took nothing away.

use super::table::by_code;
use crate::diag::{Finding, Waiver};
use crate::faults::{WAIVER_UNUSED, WAIVER_WITHOUT_REASON};

/// The finding at a waiver that is of no use.
pub fn unused_waiver(waiver: &Waiver) -> Option<Finding> {
    Some(match by_code(&waiver.check) {
        None => WAIVER_UNUSED
            .at(waiver.span, format!("no check is called `{}`", waiver.check))
            .hint("`notchbook explain` lists the checks"),
        Some(check) if !check.waivable => WAIVER_UNUSED
            .at(waiver.span, format!("`{}` cannot be waived: without it the booklet cannot be made", waiver.check))
            .hint("mend the fault, and take the waiver out"),
        Some(_) if waiver.reason.is_empty() => {
            WAIVER_WITHOUT_REASON.at(waiver.span, "this waiver gives no reason").hint(format!(
                "write why it is right here: `waive {}: the reason`, in the facts `because: the reason`",
                waiver.check
            ))
        }
        Some(_) => WAIVER_UNUSED
            .at(waiver.span, format!("nothing here is found by `{}`", waiver.check))
            .hint("take the waiver out, or move it into the step that it is meant for"),
    })
}
