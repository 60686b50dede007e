//! A tape goes through a buckle, a ring or a slider that is narrower than it is.
//!
//! ## Why it matters
//! Webbing of 3 cm does not pass a bar of 2 cm. The maker has bought both, and can use neither.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   buckle: {kind: fastener, name: Buckle, width: 2 cm (3/4 in), count: 1}
//!   webbing: {kind: tape, name: Webbing, width: 3 cm (1 1/8 in), cut: {tab: {length: 10 cm}}}
//! ```
//! ````md
//! ## Thread the buckle {#thread}
//!
//! ```work
//! - cut: tab
//! - {fasten: [buckle, tab], count: 1}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Thread the tab through the buckle and stitch it on.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   buckle: {kind: fastener, name: Buckle, width: 3 cm (1 1/8 in), count: 1}
//!   webbing: {kind: tape, name: Webbing, width: 3 cm (1 1/8 in), cut: {tab: {length: 10 cm}}}
//! ```
//! ````md
//! ## Thread the buckle {#thread}
//!
//! ```work
//! - cut: tab
//! - {fasten: [buckle, tab], count: 1}
//! - {topstitch: [tab, front], stitch: 3 mm}
//! ```
//!
//! Thread the tab through the buckle and stitch it on.
//! ````
//!
//! ## Limits
//! Looks at work that touches a notion of the kind `fastener` with a `width` and a piece that is cut from a tape with one.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::Quantity;
use crate::model::{Kind, Notion, NotionFigure};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("tape-too-wide", Group::Facts, include_str!("tape_too_wide.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at all work of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for edition in subject.editions {
        for work in edition.steps().flat_map(|step| &step.works) {
            let fasteners = work.named().filter_map(|target| target.notion()).map(|notion| &facts.notions[notion]);
            let tapes = work.touched().filter_map(|touched| touched.copy()).filter_map(|copy| {
                let tape = facts.pieces[edition.cast[copy].piece].tape.as_ref()?;
                facts.notions.iter().find(|notion| notion.id.text == tape.text)
            });
            let tapes: Vec<&Notion> = tapes.collect();
            for fastener in fasteners.filter(|notion| notion.kind == Kind::Fastener) {
                let Some(room) = width(edition, fastener) else { continue };
                let wider = |tape: &&&Notion| width(edition, tape).is_some_and(|tape| tape.value > room.value);
                let Some(tape) = tapes.iter().find(wider) else { continue };
                let place = fastener.figures.get(&NotionFigure::Width).and_then(|value| value.get(edition.size()));
                findings.push(
                    CHECK
                        .at(
                            place.map_or(fastener.id.span, |formula| formula.span()),
                            format!(
                                "“{}” is wider than “{}”, through which it goes",
                                tape.name.text, fastener.name.text
                            ),
                        )
                        .hint("choose the two of one width")
                        .note(tape.id.span, "the tape")
                        .in_size(edition.size(), ""),
                );
            }
        }
    }
}

fn width(edition: &Edition<'_>, notion: &Notion) -> Option<Quantity> {
    let formula = notion.figures.get(&NotionFigure::Width)?.get(edition.size())?;
    Some(edition.values.quiet(formula)?.quantity)
}
