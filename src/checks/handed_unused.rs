//! A shared part is handed something that it never uses.
//!
//! ## Why it matters
//! What stands under `with:` is meant to come out in the part. A name that the part does not use is most often
//! misspelt, here or there, and the part then speaks of something else.
//!
//! ## Wrong
//! ```yaml
//! parts:
//!   - {file: make.md, with: {colour: of the lining, clolh: damp}}
//! ```
//! ````md
//! ## Press it once more {#press-again}
//!
//! Press it, and take thread in the colour {colour}.
//! ````
//!
//! ## Right
//! ```yaml
//! parts:
//!   - {file: make.md, with: {colour: of the lining, cloth: damp}}
//! ```
//! ````md
//! ## Press it once more {#press-again}
//!
//! Press it under a {cloth} cloth, and take thread in the colour {colour}.
//! ````
//!
//! ## Limits
//! A use in one size is enough, in the words of the part, in its work or in its diagrams. A part that the booklet
//! takes twice is handed its own things each time, and each is looked at by itself.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("handed-unused", Group::Words, include_str!("handed_unused.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at all that is handed to parts, over all sizes.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !subject.draft.whole {
        return;
    }
    let uses = || subject.editions.iter().map(|edition| &edition.uses).chain(subject.figures.uses.values());
    let mut told: Vec<Span> = Vec::new();
    for param in subject.draft.parts.iter().flat_map(|part| part.params.each()) {
        let used = uses().any(|uses| uses.handed.contains(&param.name.span));
        // A file of several parts is handed everything once.
        if used || told.contains(&param.name.span) {
            continue;
        }
        told.push(param.name.span);
        findings.push(
            CHECK.at(param.name.span, format!("the part never uses `{}`", param.name.text)).hint(format!(
                "write `{{{0}}}` in its words or `{0}` in its work, or take it out here",
                param.name.text
            )),
        );
    }
}
