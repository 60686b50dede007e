//! There are more or fewer buttonholes than buttons.
//!
//! ## Why it matters
//! A button without a hole stays open, and a hole without a button gapes; both show only when everything is
//! sewn.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 5}
//! ```
//! ````md
//! ## Close the front {#buttons}
//!
//! ```work
//! - {buttonhole: front, count: 4}
//! - {button: [buttons, back], count: 5, by: hand}
//! ```
//!
//! Sew the holes and the buttons.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 5}
//! ```
//! ````md
//! ## Close the front {#buttons}
//!
//! ```work
//! - {buttonhole: front, count: 5}
//! - {button: [buttons, back], count: 5, by: hand}
//! ```
//!
//! Sew the holes and the buttons.
//! ````
//!
//! ## Limits
//! Adds up the holes and the buttons of a size, where every one of these facts names marks or says a `count:`. Without a
//! buttonhole the buttons are for show, or go through loops.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;
use crate::resolve::{Edition, EditionWork};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("holes-differ", Group::Work, include_str!("holes_differ.rs")).waivable_in(Home::Words),
    run,
);

/// Adds up the holes and the buttons of one size.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    let (Some((last, holes)), Some((sewn, buttons))) = (sum(edition, Verb::Buttonhole), sum(edition, Verb::Button))
    else {
        return;
    };
    if holes != buttons {
        // Where as many are bought as there are holes, it is the buttons that some are missing of.
        let bought = sewn.targets.iter().find_map(|target| {
            let row = edition.notions.iter().find(|row| Some(row.notion) == target.notion())?;
            row.count
        });
        let at = if bought == Some(holes) { sewn } else { last };
        findings.push(
            CHECK
                .at(at.work.verb_span, "there are not as many buttonholes as buttons")
                .hint("give both the same count, such as `count: buttons.count`")
                .in_size(edition.size(), format!("{holes} and {buttons}")),
        );
    }
}

/// The last of a verb's facts, and how many they make together; `None` where there is none, or one that
/// does not say.
fn sum<'a, 'e>(edition: &'a Edition<'e>, verb: Verb) -> Option<(&'a EditionWork<'e>, u32)> {
    let works = edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == verb);
    let mut found = None;
    for work in works {
        let before = found.map_or(0, |(_, before)| before);
        found = Some((work, work.count?.checked_add(before)?));
    }
    found
}
