//! How large the sewn thing is, where the construction determines it: rectangles that are joined, and
//! boxed corners.
//!
//! With the allowances a at the sides, b at the base, t at the top and x at the boxed corners, and a
//! rectangle of width w and height h (cutting line) from whose lower corners c across and d up are
//! taken out (plane geometry; common practice, no source: a corner taken out at half the depth, with
//! one allowance throughout, boxes to the whole depth):
//!
//! - width at the base: w − 2c − 2x
//! - depth: 2 (d − b + x), which must equal 2 (c − a + x)
//! - height: h − t − d − x
//!
//! and without boxed corners the width is w less both side allowances, the height h less those at the
//! top and the base.

use super::fault::Fault;
use super::state::State;
use crate::measure::{Dimension, to_f64};
use crate::model::{Outline, Text};
use crate::resolve::{CopyId, EdgeId, Edition};

/// Which measure of a sewn piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the words of the finished measurements")]
pub enum SewnMeasure {
    Width,
    Height,
    Depth,
}

/// How far a stated measurement may differ from what the sewing gives, in mm.
const TOLERANCE: f64 = 1.0;

/// A measure of a sewn copy in mm; `None` where the construction does not determine it.
pub fn sewn(edition: &Edition<'_>, history: &super::History, copy: &str, measure: SewnMeasure) -> Option<f64> {
    of(edition, &history.state, edition.cast.copies().find(|(_, member)| member.name == copy)?.0, measure)
}

fn of(edition: &Edition<'_>, state: &State, copy: CopyId, measure: SewnMeasure) -> Option<f64> {
    let piece = edition.cast[copy].piece;
    let Some(Outline::Rectangle { corners_out, .. }) = &edition.draft.facts.pieces[piece].outline else { return None };
    let (wide, high) = edition.values.shape(piece)?.exact_box()?;
    let (wide, high) = (to_f64(wide), to_f64(high));
    let taken = |word: &str| {
        let edge = edition.edges_of(copy).into_iter().find(|edge| edition.edge_word(copy, *edge) == word)?;
        taken(edition, state, copy, edge)
    };
    let boxed = corners_out.iter().find(|(at, ..)| at.text == "bottom");
    let Some((_, across, up)) = boxed else {
        return match measure {
            SewnMeasure::Width => Some(wide - taken("left")? - taken("right")?),
            SewnMeasure::Height => Some(high - taken("top")? - taken("bottom")?),
            SewnMeasure::Depth => None,
        };
    };
    let length = |value: &crate::model::BySize| {
        let worked = edition.values.quiet(value.get(edition.size())?)?;
        (worked.quantity.dimension == Dimension::Length).then(|| to_f64(worked.quantity.value))
    };
    let (across, up) = (length(across)?, length(up)?);
    let corner = taken("bottom_left_corner")?;
    match measure {
        SewnMeasure::Width => Some(wide - 2.0 * across - 2.0 * corner),
        SewnMeasure::Height => Some(high - taken("top")? - up - corner),
        SewnMeasure::Depth => {
            let down_side = 2.0 * (up - taken("bottom")? + corner);
            let along_base = 2.0 * (across - taken("left")? + corner);
            // The two sides of a boxed corner are sewn to each other.
            ((down_side - along_base).abs() <= TOLERANCE).then_some(down_side)
        }
    }
}

/// What the seam, hem or fold at an edge takes away, in mm; `None` when the edge is neither.
fn taken(edition: &Edition<'_>, state: &State, copy: CopyId, edge: EdgeId) -> Option<f64> {
    let own = || edition.values.allowance(edition.cast[copy].piece, &edition.edge_word(copy, edge)).map(to_f64);
    let known = state.known_edge(copy, edge)?;
    if let Some(seam) = known.seams.first() {
        let moment = state.seams[*seam].sewn;
        let step = edition.steps().find(|step| step.number == moment.step)?;
        let worked = step.works.get(moment.work)?.allowance?;
        return Some(to_f64(worked.quantity.value));
    }
    if known.finished.is_some() || known.folded.is_some() { own() } else { None }
}

/// Reads `front.width`; `Err` with the fault in words when it is no measure.
pub(super) fn read(text: &Text) -> Option<(&str, SewnMeasure)> {
    let (copy, measure) = text.text.split_once('.')?;
    let measure = match measure {
        "width" => SewnMeasure::Width,
        "height" => SewnMeasure::Height,
        "depth" => SewnMeasure::Depth,
        _ => return None,
    };
    Some((copy, measure))
}

/// Holds the stated finished measurements against the sewing.
pub(super) fn compare(edition: &Edition<'_>, state: &State) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (at, row) in edition.draft.facts.finished.iter().enumerate() {
        let Some((copy, measure)) = row.sewn.as_ref().and_then(read) else { continue };
        let Some((copy, _)) = edition.cast.copies().find(|(_, member)| member.name == copy) else { continue };
        let Some(sewn) = of(edition, state, copy, measure) else { continue };
        let Some(stated) = row.value.get(edition.size()).and_then(|value| edition.values.quiet(value)) else {
            continue;
        };
        let stated = to_f64(stated.quantity.value);
        if (stated - sewn).abs() > TOLERANCE {
            faults.push(Fault::SewnDiffers { row: at, stated, sewn });
        }
    }
    faults
}
