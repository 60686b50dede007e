//! What goes round a thing at an edge: waistbands and collar stands as strips along it, sleeves at its armholes.

use kurbo::{Point, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use super::part::{Part, Who};
use super::past::{Held, Seam, copies, held};
use super::seen::{is_seen, strip, words, works};
use super::trace::{beside, closed_line, corners, inward};
use crate::model::Verb;
use crate::resolve::CopyId;

/// How far a sleeve hangs away from the side: across for one down.
const LEAN: f64 = 0.5;

fn edges(seam: &Seam, copy: CopyId) -> Vec<&str> {
    super::paint::edges_of(seam, copy)
}

/// Whether a copy is a strip that a seam holds by one edge along several others.
pub(super) fn is_band(desk: &Desk<'_, '_>, copy: CopyId) -> bool {
    strip(desk, copy).is_some() && seams_of_band(desk, copy).next().is_some()
}

/// What the seams hold that sew a strip by one of its edges to several pieces.
fn seams_of_band<'d>(desk: &'d Desk<'_, '_>, copy: CopyId) -> impl Iterator<Item = Vec<Held>> + 'd {
    let sewn = works(desk).filter(|work| work.verb == Verb::Sew).map(|work| held(work, desk.edition));
    sewn.filter(move |all| {
        let own = all.iter().filter(|one| matches!(one, Held::Edge(other, _) if *other == copy)).count();
        own == 1 && copies(all).len() > 2
    })
}

/// The strips that are sewn along edges of a part and of others.
pub(super) fn round(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, scale: f64) {
    let Who::Copy(copy) = part.who else { return };
    let all = desk.edition.cast.copies().map(|(band, _)| band).filter(|band| *band != copy && is_seen(desk, *band));
    for (band, wide) in all.filter_map(|band| Some((band, strip(desk, band)?.1))) {
        let class = desk.class(band, Face::Right);
        for one in seams_of_band(desk, band).flatten() {
            let Held::Edge(other, edge) = one else { continue };
            for line in part.rim(&edge).filter(|_| other == copy).iter().flat_map(|rim| &rim.lines) {
                let Some((_, inner)) = inward(line, &part.outline) else { continue };
                let edge = corners(line);
                let mut far = beside(&edge, -inner, wide / scale);
                far.reverse();
                page.path(class, closed_line(&[edge, far].concat()));
            }
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
