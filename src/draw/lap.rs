//! Pieces laid over each other at the ends of edges that are one row afterwards.

use kurbo::Vec2;

use super::cloth::Face;
use super::desk::{Desk, Undrawn};
use super::page::Page;
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::trace::Side;
use crate::model::Verb;

/// How deep the pieces are drawn from the row, in mm on paper.
const DEEP: f64 = 30.0;

/// Draws each lap of the step, the first-named piece on the left.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, scale: f64, beside: bool) -> Result<Option<Page<'a>>, Undrawn> {
    let mut page = Page::new(desk.ruler);
    for work in desk.step.works.iter().filter(|work| work.verb == Verb::Lap) {
        let (Some(lap), Some(over)) = (work.lap, work.lap.and_then(millimetres)) else { continue };
        let mut one = Page::new(desk.ruler);
        let mut parts: Vec<Part> = Vec::new();
        let mut end = None;
        for target in held(work, desk.edition) {
            let Held::Edge(copy, edge) = target else { continue };
            let Some(part) = Part::copy(desk, copy, Face::Right, scale) else { return Ok(None) };
            if !part.is_straight(&edge) {
                return Err(Undrawn::unclear(format!("`{edge}` of {} is no straight edge", desk.name(copy))));
            }
            let half = part.length(&edge) / 2.0;
            let Some((middle, inner)) = part.hold(&edge) else { return Ok(None) };
            // Down the page, the row above: the first as it was drawn, the next beside it.
            let (place, way) = end.unwrap_or((middle, inner));
            let right = Vec2::new(way.y, -way.x);
            let at = if parts.is_empty() { place } else { place + right * (half - over / scale) };
            let Some(mut part) = part.laid(&edge, 0.0, at, way) else { return Ok(None) };
            part.cut_back(at + way * DEEP, -way, Side::Torn);
            end = Some((at + right * half, way));
            parts.push(part);
        }
        for part in &parts {
            desk.paint(&mut one, part, Vec2::ZERO, scale);
        }
        if let [.., _, last] = parts.as_slice()
            && let Some((place, way)) = end
        {
            let right = Vec2::new(way.y, -way.x);
            let long = held(work, desk.edition).iter().rev().find_map(|target| match target {
                Held::Edge(_, edge) => Some(last.length(edge)),
                _ => None,
            });
            let from = place - right * long.unwrap_or(0.0);
            one.dimension(
                from - way * 2.4,
                from - way * 2.4 + right * (over / scale),
                &[desk.say("draw_lap", &[("length", &desk.spoken(&lap))])],
                -way,
            );
        }
        for part in &parts {
            if let super::part::Who::Copy(copy) = part.who {
                one.name(&desk.name_and_side(copy, part.face), part.bounds());
            }
        }
        page.join(one, beside, 4.0);
    }
    Ok(Some(page))
}
