//! A measurement is defined and nothing uses it.
//!
//! ## Why it matters
//! A figure that nothing uses is most often one that was typed by hand elsewhere, where it does not
//! follow the sizes; or what is left of an older edition.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   strap: 60 cm (23 5/8 in)
//! ```
//! …and no step, piece or formula names `strap`.
//!
//! ## Right
//! ```yaml
//! measurements:
//!   strap: 60 cm (23 5/8 in)
//! finished:
//!   Strap: strap
//! ```
//!
//! ## Limits
//! A use in one size is enough. A use in another measurement counts, even where nothing uses that
//! one.

use super::judge::Judge;
use std::collections::BTreeSet;

use super::judge::Subject;
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("unused-measurement", Group::Facts, include_str!("unused_measurement.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every measurement over all sizes.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !subject.draft.whole {
        return;
    }
    let uses = subject.editions.iter().map(|edition| &edition.uses).chain(subject.figures.uses.values());
    let used: BTreeSet<&str> = uses.flat_map(|uses| &uses.names).map(String::as_str).collect();
    for measurement in &subject.draft.facts.measurements {
        if !used.contains(measurement.name.text.as_str()) {
            findings.push(
                CHECK
                    .at(measurement.name.span, format!("nothing uses `{}`", measurement.name.text))
                    .hint("name it where it is meant, or take it out"),
            );
        }
    }
}
