//! A step sews and does not say how far from the edge.
//!
//! ## Why it matters
//! A seam sewn at another distance than the pattern reckons with makes the whole thing larger or
//! smaller, twice over for each seam.
//!
//! ## Wrong
//! ````md
//! ## Sew the flap {#flap}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   stitch: 2.5 mm
//! ```
//!
//! Sew the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Sew the flap {#flap}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Sew the top edge.
//! ````
//!
//! ## Limits
//! Looks at `sew` and `box`. Topstitching, hems, binding and quilting keep their distance in their
//! own ways and are not asked for it; nor is sewing `by: hand` to a zip, or along an edge that was folded before. The allowance is printed with the step, so it need not be in
//! the words as well.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Draft, Kind, Notion, Verb};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("allowance-missing", Group::Work, include_str!("allowance_missing.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every work fact that joins layers at a distance from an edge.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut folded: Vec<&str> = Vec::new();
    for (_, step) in subject.draft.steps() {
        for work in &step.works {
            let names = || work.touches.iter().map(|touch| touch.name.text.as_str());
            if work.verb == Verb::Fold {
                folded.extend(names());
            }
            let by_hand = work.by_hand && names().any(|name| is_laid_on(name, subject.draft, &folded));
            // A corner that is boxed by measuring has its place from that.
            let told = work.allowance.is_some() || work.up.is_some() || by_hand;
            if work.verb.joins_at_allowance() && !told {
                findings.push(
                    CHECK
                        .at(work.verb_span, format!("this `{}` names no seam allowance", work.verb.word()))
                        .hint("add a line below it: `allowance: 1 cm`, or the name of a measurement")
                        .note(step.span, "in this step"),
                );
            }
        }
    }
}

/// Whether a hand sews something down along this: a zip, or what lies folded.
fn is_laid_on(name: &str, draft: &Draft, folded: &[&str]) -> bool {
    let owner = name.split('.').next().unwrap_or(name);
    let zip = |notion: &Notion| notion.kind == Kind::Zip && notion.id.text == owner;
    draft.facts.notions.iter().any(zip) || folded.iter().any(|known| *known == name || *known == owner)
}
