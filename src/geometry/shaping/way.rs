//! To which side a dart or a pleat is laid.

use kurbo::{Point, Shape as _, Vec2};

use super::super::dart::Laid;
use super::super::shape::Shape;
use super::fault::ShapingFault;

/// The direction in which something at `place` is laid that takes up cloth along `across` (one long): that or
/// the opposite. Without a word it is laid down where it takes up cloth up and down, else to the centre (common
/// practice, no source).
pub(super) fn towards(shape: &Shape, place: Point, across: Vec2, laid: Option<Laid>) -> Result<Vec2, ShapingFault> {
    let upright = across.y.abs() > across.x.abs();
    let wanted = match laid.unwrap_or(if upright { Laid::Down } else { Laid::Centre }) {
        Laid::Up => Vec2::new(0.0, -1.0),
        Laid::Down => Vec2::new(0.0, 1.0),
        Laid::Left => Vec2::new(-1.0, 0.0),
        Laid::Right => Vec2::new(1.0, 0.0),
        Laid::Centre => to_centre(shape, place),
        Laid::Side => -to_centre(shape, place),
    };
    let along = wanted.dot(across);
    // Fifteen degrees: what is laid there lies neither to one side nor to the other.
    if laid.is_some() && along.abs() < 0.26 {
        return Err(ShapingFault::CannotLie);
    }
    Ok(if along < 0.0 { -across } else { across })
}

/// To the fold, else to an edge that is called the centre or the middle, else to the middle of the piece.
fn to_centre(shape: &Shape, place: Point) -> Vec2 {
    let named = |name: &str| ["centre", "center", "middle"].iter().any(|word| name.contains(word));
    let fold = shape.fold.as_ref().and_then(|fold| shape.edges.get(fold.edge));
    let edge = fold.or_else(|| shape.edges.iter().find(|edge| named(&edge.name)));
    let centre = match edge {
        Some(edge) => edge.cut.bounding_box().center().x,
        None => shape.cutting.outline.bounds().center().x,
    };
    Vec2::new(if centre < place.x { -1.0 } else { 1.0 }, 0.0)
}
