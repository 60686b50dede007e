//! Finished measurements that say what they measure: `sewn: front.width`, led to copies once.

use super::cast::{Cast, CopyId};
use super::names::{Catalogue, NameKind};
use super::values::Values;
use super::worked::Worked;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{UNIT_MISMATCH, UNKNOWN_NAME};
use crate::measure::Dimension;
use crate::model::{Draft, Text, is_for};
use crate::source::Span;

/// Which measure of a sewn piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the words of the finished measurements")]
pub enum SewnMeasure {
    Width,
    Height,
    Depth,
}

impl SewnMeasure {
    /// All of them, as they are written.
    pub const ALL: &'static [(&'static str, SewnMeasure)] =
        &[("width", SewnMeasure::Width), ("height", SewnMeasure::Height), ("depth", SewnMeasure::Depth)];
}

/// A finished measurement that the sewing must give.
#[derive(Debug, Clone)]
pub struct SewnRow {
    /// The row's place among the finished measurements.
    pub row: usize,
    /// Where it says what it measures.
    pub span: Span,
    /// The copies that are so large; none when this size cuts none.
    pub copies: Vec<CopyId>,
    /// Which measure of them.
    pub measure: SewnMeasure,
    /// What is stated; `None` where it could not be worked out.
    pub stated: Option<Worked>,
}

/// The rows of one size; names that stand for nothing are findings.
pub(super) fn rows(
    draft: &Draft,
    catalogue: &Catalogue,
    values: &Values<'_>,
    cast: &Cast,
    findings: &mut Findings,
) -> Vec<SewnRow> {
    let mut rows = Vec::new();
    for (row, facts) in draft.facts.finished.iter().enumerate() {
        if !is_for(facts.sizes.as_ref(), values.size()) {
            continue;
        }
        let (Some(text), Some(stated)) = (&facts.sewn, facts.value.get(values.size())) else { continue };
        match read(text, draft, catalogue, cast) {
            // What is made of pieces that are left out is not measured.
            Ok((copies, _)) if copies.is_empty() && !cast.has_all() => {}
            Ok((copies, measure)) => {
                let worked = values.quiet(stated);
                if let Some(worked) = worked.filter(|worked| worked.quantity.dimension != Dimension::Length) {
                    let what = worked.quantity.dimension.name();
                    let finding = UNIT_MISMATCH.at(stated.span(), format!("what is sewn is a length, not {what}"));
                    let hint = format!("give it a unit, such as `{} cm`", stated.formula.text.trim());
                    findings.push(finding.hint(hint).in_size(values.size(), ""));
                }
                rows.push(SewnRow { row, span: text.span, copies, measure, stated: worked });
            }
            Err(finding) => findings.push(*finding),
        }
    }
    rows
}

fn read(
    text: &Text,
    draft: &Draft,
    catalogue: &Catalogue,
    cast: &Cast,
) -> Result<(Vec<CopyId>, SewnMeasure), Box<Finding>> {
    let (owner, word) = text.text.split_once('.').unwrap_or((&text.text, ""));
    let (owner, word) = (owner.trim(), word.trim());
    let copies = match catalogue.get(owner) {
        Some(NameKind::Piece(piece)) => cast.of_piece(piece).collect(),
        Some(NameKind::Copy(_)) => cast.named(owner).into_iter().collect(),
        kind => {
            let message = match kind {
                Some(kind) => format!("`{owner}` is {}, not a piece or a copy of one", kind.word()),
                None => format!("no piece and no copy is called `{owner}`"),
            };
            let pieces = draft.facts.pieces.iter().map(|piece| piece.id.text.as_str()).collect::<Vec<_>>().join(", ");
            let names = catalogue.all().filter(|name| catalogue.get(name).is_some_and(|kind| kind.piece().is_some()));
            let hint = did_you_mean(owner, names, &format!("the pieces are: {pieces}"));
            return Err(Box::new(UNKNOWN_NAME.at(text.at(0..owner.len()), message).hint(hint)));
        }
    };
    match SewnMeasure::ALL.iter().find(|(written, _)| *written == word) {
        Some((_, measure)) => Ok((copies, *measure)),
        None => {
            let words = SewnMeasure::ALL.iter().map(|(word, _)| *word);
            let whole = words.clone().map(|word| format!("`{owner}.{word}`")).collect::<Vec<_>>().join(" or ");
            let message = match word {
                "" => format!("`{owner}` does not say which of its measures is meant"),
                word => format!("`{word}` is no measure of a sewn piece"),
            };
            let hint = if word.is_empty() {
                format!("write {whole}")
            } else {
                did_you_mean(word, words, &format!("write {whole}"))
            };
            Err(Box::new(UNKNOWN_NAME.at(text.span, message).hint(hint)))
        }
    }
}
