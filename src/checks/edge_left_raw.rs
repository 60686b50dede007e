//! An edge is never sewn, finished or declared raw.
//!
//! ## Why it matters
//! A raw edge frays from the first wash on. Most often a seam was forgotten; if it is meant, as on
//! a bound strip, the booklet should say so.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [right, bottom, left], cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [right, bottom, left], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at every copy that is sewn, hemmed, bound or folded at all, when the last step is done.
//! Seams, hems and binding settle an edge, and a fold once it is topstitched afterwards; so do
//! `raw:` with its name, or `all`, and the edge that lies on the fold. A zip of which one tape is sewn counts too.
//! It is told at the step in which it was missed: where another edge of the piece is sewn twice, where its like is sewn,
//! where it was pinned for, at a later seam that catches other parts and whose words name the piece; else at the last work
//! on the piece. What one step missed is one finding.

use super::judge::Judge;
use super::passage::passages;
use super::spoken_names::Spoken;
use crate::construct::{Cause, Fault, History, Moment, RawOf};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Facts;
use crate::resolve::{Edition, EditionWork};
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("edge-left-raw", Group::Work, include_str!("edge_left_raw.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::EdgesRaw { edges, cause } = fault else { continue };
        let facts = &edition.draft.facts;
        let Some((first, _)) = edges.first() else { continue };
        let names: Vec<String> = edges.iter().map(|(_, edge)| format!("`{edge}`")).collect();
        let message = match names.as_slice() {
            [one] => format!("{one} stays raw: no step sews or finishes it"),
            names => format!("{} stay raw: no step sews or finishes them", names.join(", ")),
        };
        let told = told_in_words(edition, *first, cause.as_ref());
        let at = cause.as_ref().map_or(place(*first, facts), |(_, moment)| moment.verb);
        let why = match told {
            Some(_) => "; the words of this step name it, and its work does not".to_owned(),
            None => missed(cause.as_ref().map(|(cause, _)| cause)),
        };
        let mut finding = CHECK.at(told.unwrap_or(at), format!("{message}{why}")).hint(
            "sew, hem or bind the edge, fold and topstitch it, or add it to the piece's `raw:` if it is meant to stay raw",
        );
        let mut told = Vec::new();
        for (of, _) in edges {
            let new = !told.contains(of) && (cause.is_some() || of != first);
            told.push(*of);
            match of {
                RawOf::Piece(piece) if new => finding = finding.note(facts.pieces[*piece].id.span, "of this piece"),
                RawOf::Zip(zip) if new => finding = finding.note(facts.notions[*zip].id.span, "of this zip"),
                _ => {}
            }
        }
        if let Some((Cause::Pinned(pin), _)) = cause {
            finding = finding.note(*pin, "pinned here");
        }
        findings.push(finding.in_size(edition.size(), ""));
    }
}

/// What a step has to do with it that is told there.
fn missed(cause: Option<&Cause>) -> String {
    match cause {
        Some(Cause::SewnTwice(edge)) => {
            format!("; `{edge}` is sewn for the second time here: is another edge meant?")
        }
        Some(Cause::StitchedEarly) => {
            "; it is topstitched here, before it is folded: topstitch it after the fold".to_owned()
        }
        Some(Cause::InPart) => "; only a part of it is sewn here".to_owned(),
        Some(Cause::LikeSewn(edge)) => format!("; its like, `{edge}`, is done here"),
        Some(Cause::Pinned(_)) => "; it was pinned for what is sewn here".to_owned(),
        Some(Cause::LastWork) => "; this is the last work there".to_owned(),
        None => String::new(),
    }
}

/// Where a raw edge is told: at its piece or its zip.
fn place(of: RawOf, facts: &Facts) -> Span {
    match of {
        RawOf::Piece(piece) => facts.pieces[piece].id.span,
        RawOf::Zip(zip) => facts.notions[zip].id.span,
    }
}

/// A later step that catches parts in a seam, and whose words, oftener than those of any other, name the piece while its
/// work does not.
fn told_in_words(edition: &Edition<'_>, of: RawOf, cause: Option<&(Cause, Moment)>) -> Option<Span> {
    let (Some((Cause::LastWork, last)), RawOf::Piece(piece)) = (cause, of) else { return None };
    let name = Spoken::of(&edition.draft.facts.pieces[piece].name.text);
    let holds = |work: &EditionWork<'_>| {
        let touched = work.targets.iter().chain(&work.caught).flat_map(|target| &target.touched);
        touched.filter_map(|touched| touched.copy()).any(|copy| edition.cast[copy].piece == piece)
    };
    let told = edition.steps().filter(|step| step.number > last.step).filter_map(|step| {
        let catching = step.works.iter().find(|work| !work.caught.is_empty())?;
        let read = passages(step.step, Some(edition.size()));
        let times = read.iter().flat_map(|passage| passage.sentences()).filter(|words| name.all_in(words)).count();
        (times > 0 && !step.works.iter().any(holds)).then_some((times, catching.work.verb_span))
    });
    told.max_by_key(|(times, _)| *times).map(|(_, span)| span)
}
