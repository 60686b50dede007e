//! How large a piece is cut: what the table of pieces gives beside its name.

use super::ids::PieceId;
use super::shapes::hundredths;
use super::values::Values;
use super::worked::Worked;
use crate::geometry::Shape;
use crate::measure::{Dimension, Exact, Quantity};

/// The width and the height that the scissors cut, overall.
#[derive(Debug, Clone, Copy)]
pub(super) struct CutSize {
    /// From left to right.
    pub width: Worked,
    /// From top to bottom.
    pub height: Worked,
}

impl Values<'_> {
    /// The box round a piece's cutting line, of its half where it is cut on the fold; `larger` by so
    /// much all round (in mm), but not over the fold. `stated` are width and height as the author
    /// gives them: they stand where the scissors cut just that. `None` where the shape has a fault and
    /// nothing is stated that could be cut, and where the size could not be held.
    pub(super) fn cut_size(
        &self,
        piece: PieceId,
        stated: Option<(Worked, Worked)>,
        larger: Option<Exact>,
    ) -> Option<CutSize> {
        let facts = &self.draft.facts.pieces[piece];
        let stated = stated.map(|(width, height)| CutSize { width, height });
        let Some(shape) = self.shape(piece) else { return stated.filter(|_| !facts.drawn_stitching) };
        let (mut width, mut height) = box_size(shape)?;
        if larger.is_none()
            && let Some(stated) =
                stated.filter(|stated| (stated.width.quantity.value, stated.height.quantity.value) == (width, height))
        {
            return Some(stated);
        }
        if let Some(larger) = larger {
            let fold = facts.fold.as_ref().and_then(|fold| shape.edge(&fold.text)).map(|fold| extent(&fold.cut));
            let (beside, above) = fold.map_or((2, 2), |(across, down)| if down >= across { (1, 2) } else { (2, 1) });
            width = width.checked_add(larger.checked_mul(Exact::from_integer(beside))?)?;
            height = height.checked_add(larger.checked_mul(Exact::from_integer(above))?)?;
        }
        let length = |value: Exact| Worked { quantity: Quantity { value, dimension: Dimension::Length }, stated: None };
        Some(CutSize { width: length(width), height: length(height) })
    }
}

/// Exact where the shape is, else to a hundredth of a millimetre.
fn box_size(shape: &Shape) -> Option<(Exact, Exact)> {
    shape.exact_box().or_else(|| {
        let (width, height) = shape.box_size();
        hundredths(width).zip(hundredths(height))
    })
}

fn extent(path: &kurbo::BezPath) -> (f64, f64) {
    let bounds = kurbo::Shape::bounding_box(path);
    (bounds.width(), bounds.height())
}
