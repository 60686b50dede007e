//! Fewer copies of a piece are cut than the steps use.
//!
//! ## Why it matters
//! The maker cuts one and needs two. When she finds out, the cloth may be used up.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab_one
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut the tabs and press them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Cut the tabs and press them.
//! ````
//!
//! ## Limits
//! Compares the copies that steps name with those that are cut, in each size. A piece of which
//! nothing is cut at all is told by `piece-not-cut`.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge =
    Judge::construction(&Check::error("cut-count-differs", Group::Work, include_str!("cut_count_differs.rs")), run);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CutTooFew { missing, piece, cut, used } = fault else { continue };
        let piece = &edition.draft.facts.pieces[*piece].id.text;
        let missing = missing.join(", ");
        findings.push(
            CHECK
                .at(cut.verb, format!("`{piece}` is cut too few times: no step cuts `{missing}`"))
                .hint(format!("add it here: `- cut: [{missing}, …]`, or name the whole piece, `{piece}`"))
                .note(used.verb, format!("used here, in step {}", used.step))
                .in_size(edition.size(), ""),
        );
    }
}
