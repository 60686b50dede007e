//! A copy of a piece is cut, and nothing is done with it, though the others of its piece are used.
//!
//! ## Why it matters
//! One of two straps is never sewn on: the maker has a piece left over, or the step that uses it was forgotten.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut: {outer: [tab_left, tab_right]}
//! ```
//! ````md
//! ## Cut the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - fold: tab_left
//! ```
//!
//! Cut the tabs and fold one.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut: {outer: [tab_left, tab_right]}
//! ```
//! ````md
//! ## Cut the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - fold: [tab_left, tab_right]
//! ```
//!
//! Cut the tabs and fold both.
//! ````
//!
//! ## Limits
//! Looks at work, not at words. Any work but `cut` counts, on the copy or on one of its edges. Copies without names of
//! their own are used together.

use super::judge::Judge;
use super::left_out::step_of_others;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("copy-unused", Group::Work, include_str!("copy_unused.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CopyIdle { copy, piece, cut } = fault else { continue };
        let id = &edition.draft.facts.pieces[*piece].id;
        let finding = CHECK
            .at(cut.verb, format!("`{copy}` is cut here, and no step does anything with it"))
            .hint(format!("name `{copy}` in the work of the step that uses it, or cut one fewer"))
            .note(id.span, "its piece");
        let finding = match step_of_others(edition, &|name| name == copy) {
            Some(step) => finding.note(step, "the step that uses it is for other sizes"),
            None => finding,
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}
