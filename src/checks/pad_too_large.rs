//! A pad is larger than the cover that it is put into.
//!
//! ## Why it matters
//! Foam that is larger than its cover buckles in it, or does not go in at all; a pad of stuffing gives way a little.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   pad: {kind: filling, name: Foam pad, length: 40 cm, width: 30 cm, count: 1}
//! ```
//! ````md
//! ## Fill it {#fill}
//!
//! ```work
//! - insert: [pad, front]
//! ```
//!
//! Put the [](notion:pad) in.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   pad: {kind: filling, name: Foam pad, length: width, width: height - 2 cm, count: 1}
//! ```
//! ````md
//! ## Fill it {#fill}
//!
//! ```work
//! - insert: [pad, front]
//! ```
//!
//! Put the [](notion:pad) in.
//! ````
//!
//! ## Limits
//! Looks at what fills (the kind `filling`), has a `length` and a `width`, and is inserted into a piece whose finished
//! width and height the sewing tells. A pad may be larger by a tenth (common practice, no source). Covers with a depth
//! are passed over.

use super::judge::Judge;
use super::words::length;
use crate::construct::{History, sewn};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::to_f64;
use crate::model::{Kind, NotionFigure, Verb};
use crate::resolve::{Edition, EditionWork, NotionRow, SewnMeasure};

/// How much larger than its cover a pad may be, as a share (common practice, no source).
const LARGER: f64 = 1.1;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("pad-too-large", Group::Work, include_str!("pad_too_large.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every pad that the steps of one size put into something.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let works = edition.steps().flat_map(|step| &step.works);
    for work in works.filter(|work| matches!(work.verb, Verb::Insert | Verb::Stuff)) {
        for row in edition.notions.iter().filter(|row| work.targets.iter().any(|one| one.notion() == Some(row.notion)))
        {
            let notion = &edition.draft.facts.notions[row.notion];
            let Some(pad) = pad(row).filter(|_| notion.kind == Kind::Filling) else { continue };
            let Some((name, cover)) = covers(edition, history, work)
                .into_iter()
                .find(|(_, cover)| pad.0 > cover.0 * LARGER || pad.1 > cover.1 * LARGER)
            else {
                continue;
            };
            let by = |(long, short): (f64, f64)| format!("{} by {}", length(edition, long), length(edition, short));
            findings.push(
                CHECK
                    .at(work.work.verb_span, format!("`{}` is larger than the cover `{name}`", notion.id.text))
                    .hint("make the pad smaller, or say its length and width by formulas of the cover")
                    .note(notion.id.span, "the pad")
                    .in_size(edition.size(), format!("it is {}, and the cover {}", by(pad), by(cover))),
            );
        }
    }
}

/// The longer and the shorter side of a pad, in mm; `None` for stuffing.
fn pad(row: &NotionRow) -> Option<(f64, f64)> {
    let figure = |figure: NotionFigure| Some(to_f64(row.figures.get(&figure)?.exact.value));
    Some(ordered(figure(NotionFigure::Length)?, figure(NotionFigure::Width)?))
}

/// The covers that a fact names, each with its longer and its shorter side as they are sewn, in mm.
fn covers(edition: &Edition<'_>, history: &History, work: &EditionWork<'_>) -> Vec<(String, (f64, f64))> {
    let copies = work.touched().filter_map(|touched| touched.copy());
    let cover = |copy| {
        let name = edition.cast[copy].name.clone();
        let measure = |measure| sewn(edition, history, &name, measure);
        if measure(SewnMeasure::Depth).is_some() {
            return None;
        }
        let sides = ordered(measure(SewnMeasure::Width)?, measure(SewnMeasure::Height)?);
        Some((name, sides))
    };
    copies.filter_map(cover).collect()
}

fn ordered(one: f64, other: f64) -> (f64, f64) {
    (one.max(other), one.min(other))
}
