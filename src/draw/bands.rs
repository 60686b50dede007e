//! What goes round a thing at an edge: waistbands and collar stands as strips along it, sleeves at its armholes.

use kurbo::{Point, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use super::part::{Part, Who};
use super::past::{Held, Seam};
use super::seen::{is_seen, strip, words};
use super::trace::{beside, closed_line, corners, inward};
use crate::resolve::CopyId;

/// How far a sleeve hangs away from the side: across for one down.
const LEAN: f64 = 0.5;

fn edges(seam: &Seam, copy: CopyId) -> Vec<&str> {
    super::paint::edges_of(seam, copy)
}

/// The strips that are sewn along edges of a part and of others.
pub(super) fn round(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, scale: f64) {
    let Who::Copy(copy) = part.who else { return };
    for seam in desk.past.seams.iter().filter(|seam| !edges(seam, copy).is_empty()) {
        let band = super::past::copies(&seam.members).into_iter().find(|other| {
            let sewn_to_several = seam.members.len() > 2 && edges(seam, *other).len() == 1;
            *other != copy && sewn_to_several && is_seen(desk, *other) && strip(desk, *other).is_some()
        });
        let Some((_, wide)) = band.and_then(|band| strip(desk, band)) else { continue };
        let Some(class) = band.map(|band| desk.class(band, Face::Right)) else { continue };
        for line in edges(seam, copy).iter().filter_map(|edge| part.rim(edge)).flat_map(|rim| &rim.lines) {
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let edge = corners(line);
            let mut far = beside(&edge, -inner, wide / scale);
            far.reverse();
            page.path(class, closed_line(&[edge, far].concat()));
        }
    }
}

/// The sleeves that are set into armholes of a part, laid as they hang.
pub(super) fn sleeves(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, scale: f64) {
    let Who::Copy(copy) = part.who else { return };
    for seam in &desk.past.seams {
        let sleeve = seam.members.iter().find_map(|one| match one {
            Held::Edge(other, _) if *other != copy && words(desk, *other).iter().any(|word| word == "sleeve") => {
                Some(*other)
            }
            _ => None,
        });
        let own = edges(seam, copy);
        let (Some(sleeve), Some(edge)) = (sleeve.filter(|sleeve| is_seen(desk, *sleeve)), own.first()) else {
            continue;
        };
        let (Some(laid), Some(line)) =
            (Part::copy(desk, sleeve, Face::Right, scale), part.rim(edge).and_then(|rim| rim.lines.first()))
        else {
            continue;
        };
        let Some((_, inner)) = inward(line, &part.outline) else { continue };
        let points = corners(line);
        let (mut top, mut under) = (points[0], points[points.len() - 1]);
        if top.y > under.y {
            std::mem::swap(&mut top, &mut under);
        }
        let way = Vec2::new(if inner.x > 0.0 { -LEAN } else { LEAN }, 1.0).normalize();
        let bounds = laid.bounds();
        // The wrist lies folded in half.
        let wrist = lowest(&laid, bounds.y1) / 2.0;
        let across = Vec2::new(-way.y, way.x) * if way.x > 0.0 { 1.0 } else { -1.0 };
        let outer = top + way * bounds.height();
        let inside = outer + across * wrist;
        page.path(desk.class(sleeve, Face::Right), closed_line(&[top, outer, inside, under]));
    }
}

/// How wide a part is at a level.
fn lowest(part: &Part, level: f64) -> f64 {
    let near: Vec<Point> = corners(&part.outline).into_iter().filter(|point| (point.y - level).abs() < 0.5).collect();
    let (low, high) =
        near.iter().fold((f64::MAX, f64::MIN), |(low, high), point| (low.min(point.x), high.max(point.x)));
    (high - low).max(0.0)
}
