//! Pieces left off the pattern sheets: what a ruler can cut.

use crate::diag::Findings;
use crate::faults::VALUE_UNREADABLE;
use crate::model::{NotchAt, Outline, Piece};
use crate::source::Span;

/// Tells of a piece that is left off the sheets though only they show its shape, or what lies on it.
pub(super) fn only_rectangles(piece: &mut Piece, span: Span, findings: &mut Findings) {
    if !piece.by_ruler {
        return;
    }
    let id = &piece.id.text;
    let shape = match &piece.outline {
        Some(Outline::Rectangle { corners_out, .. }) => corners_out.is_empty(),
        // What could not be read has been told.
        None => true,
        Some(_) => false,
    };
    let hint = "take `sheet: no` out, so that the sheets show it";
    if !shape {
        let message = format!("`{id}` is no plain rectangle, so no ruler can cut it without a sheet");
        findings.push(VALUE_UNREADABLE.at(span, message).hint(hint));
        piece.by_ruler = false;
        return;
    }
    let inside =
        [(piece.darts.is_empty(), "darts"), (piece.pleats.is_empty(), "pleats"), (piece.marks.is_empty(), "marks")];
    if let Some((_, what)) = inside.iter().find(|(none, _)| !none) {
        let message = format!("`{id}` has {what}, which only a sheet shows");
        findings.push(VALUE_UNREADABLE.at(span, message).hint(hint));
        piece.by_ruler = false;
        return;
    }
    let middle = |at: &NotchAt| matches!(at, NotchAt::Centre);
    if let Some(notch) = piece.notches.iter().find(|notch| !middle(&notch.at)) {
        let message = format!("only a sheet shows where the notch `{}` of `{id}` is", notch.text.text.trim());
        let hint = "put it in the centre of its edge, where a fold finds it, or take `sheet: no` out";
        findings.push(VALUE_UNREADABLE.at(span, message).hint(hint).note(notch.text.span, "the notch"));
        piece.by_ruler = false;
    }
}
