//! A slit is cut open and its edges stay raw, or it is bound before it is cut open.
//!
//! ## Why it matters
//! The edges of a slit have no allowance to spare: raw, they fray up to its point. And a binding goes round an edge
//! that is there: before the slit is cut open, there is none.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [20 cm, 20 cm]}
//!     allowance: seam
//!     raw: [top, right, bottom, left]
//!     marks: {slit: {line: [[10 cm, 0 cm], [10 cm, 8 cm]]}}
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [18 cm, 4 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - slash: strap.slit
//! ```
//!
//! Cut the slit open.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [20 cm, 20 cm]}
//!     allowance: seam
//!     raw: [top, right, bottom, left]
//!     marks: {slit: {line: [[10 cm, 0 cm], [10 cm, 8 cm]]}}
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [18 cm, 4 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - slash: strap.slit
//! - {bind: [strap.slit, tab], allowance: 5 mm (3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Cut the slit open and bind it.
//! ````
//!
//! ## Limits
//! A slit is neat once it is bound, hemmed, finished or sewn to something. Pieces that say `raw: all` are passed over.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("slit-left-raw", Group::Work, include_str!("slit_left_raw.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SlitRaw { name, slashed, bound } = fault else { continue };
        let finding = match (slashed, bound) {
            (Some(slashed), Some(bound)) => CHECK
                .at(bound.verb, format!("`{name}` is bound before it is cut open"))
                .hint(format!("move it behind step {}, in which the slit is cut open", slashed.step))
                .note(slashed.verb, "cut open here"),
            (Some(slashed), None) => CHECK
                .at(slashed.verb, format!("`{name}` is cut open, and its edges stay raw"))
                .hint(format!("bind it with a strip, `- bind: [{name}, …]`, or sew a placket or a facing to it")),
            (None, Some(bound)) => CHECK
                .at(bound.verb, format!("`{name}` is bound, and is never cut open"))
                .hint(format!("cut it open before: `- slash: {name}`")),
            (None, None) => continue,
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}
