//! A band whose two ends are sewn to each other: a ring, in the proportions that its seam leaves it.
//!
//! Of a band L long with the allowance a at both ends the ring is L − 2a round, and that over π wide (plane geometry).

use kurbo::{Arc, BezPath, Point, Rect, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::Page;
use super::paint::CLOSE;
use super::part::Who;
use super::past::{Held, Seam, copies, held, millimetres};
use super::trace::{closed_line, corners, open_line};
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork};

/// How high the mouth of a ring is drawn against its width: it is seen from a little above.
const SEEN: f64 = 0.28;
/// How far two ends may differ in length and still be sewn to each other, in mm of cloth.
const LEVEL: f64 = 1.0;

/// The verbs whose work on a ring is drawn on the ring.
const DRAWN: [Verb; 6] = [Verb::Sew, Verb::Press, Verb::Turn, Verb::Topstitch, Verb::Edgestitch, Verb::Hem];

/// A ring, in mm of cloth.
struct Ring {
    copy: CopyId,
    round: f64,
    high: f64,
    /// Its long edges, the upper one first.
    edges: Vec<String>,
}

/// Whether all that the facts of a verb do is done to rings, or makes them.
pub(super) fn is_hoop(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    DRAWN.contains(&verb) && works.peek().is_some() && works.all(|work| !rings(desk, work).is_empty())
}

/// The rings of a fact; none where it touches anything else.
fn rings(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> Vec<Ring> {
    let named = copies(&held(work, desk.edition));
    let ring = |copy: &CopyId| {
        let now = desk
            .past
            .now
            .iter()
            .filter(|seam| work.verb == Verb::Sew && std::ptr::eq(&desk.step.works[seam.work], work));
        let before = desk.past.seams.iter().filter(|_| work.verb != Verb::Sew);
        now.chain(before).find_map(|seam| made(desk, *copy, seam))
    };
    let found: Vec<Ring> = named.iter().filter_map(ring).collect();
    if found.len() == named.len() { found } else { Vec::new() }
}

/// The ring that a seam makes of a copy: it holds two opposite straight ends of it, of one length, and nothing else.
fn made(desk: &Desk<'_, '_>, copy: CopyId, seam: &Seam) -> Option<Ring> {
    let ends: Vec<&str> = seam
        .members
        .iter()
        .map(|member| match member {
            Held::Edge(other, edge) if *other == copy => Some(edge.as_str()),
            _ => None,
        })
        .collect::<Option<_>>()?;
    let [one, other] = ends[..] else { return None };
    if desk.past.is_folded(copy) {
        return None;
    }
    let shape = desk.edition.values.whole(desk.edition.cast[copy].piece)?;
    let line = |name: &str| {
        corners(&shape.edge(name)?.cut).into_iter().fold(None, |ends: Option<(Point, Point)>, point| {
            Some(ends.map_or((point, point), |(from, _)| (from, point)))
        })
    };
    let (first, second) = (line(one)?, line(other)?);
    let (high, also) = (first.0.distance(first.1), second.0.distance(second.1));
    let long = first.0.midpoint(first.1).distance(second.0.midpoint(second.1));
    let round = long - 2.0 * seam.allowance.unwrap_or(0.0);
    let straight = |name: &str, long: f64| shape.edge(name).is_some_and(|edge| (edge.cut_length - long).abs() < 0.5);
    let is_band = (shape.cutting().path.area().abs() - long * high).abs() < 0.02 * long * high;
    if !is_band || (high - also).abs() > LEVEL || !straight(one, high) || !straight(other, also) || round <= 0.0 {
        return None;
    }
    let mut edges: Vec<(f64, String)> = shape
        .edges()
        .iter()
        .filter(|edge| !edge.on_fold && edge.name != one && edge.name != other)
        .map(|edge| (edge.cut.bounding_box().center().y, edge.name.clone()))
        .collect();
    edges.sort_by(|one, other| one.0.total_cmp(&other.0));
    Some(Ring { copy, round, high, edges: edges.into_iter().map(|(_, name)| name).collect() })
}

/// Draws each ring; what looks the same is drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Page<'a> {
    let mut drawings = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        for ring in rings(desk, work) {
            let look = format!("{:?} {}", desk.edition.cast[ring.copy].piece, desk.class(ring.copy, Face::Right));
            if looks.contains(&look) {
                again.push(desk.name(ring.copy));
                continue;
            }
            looks.push(look);
            drawings.push(one(desk, work, &ring, scale));
        }
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 5.0, desk.sheet);
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        desk.sewing(&mut page, work);
    }
    desk.tell(&mut page, "draw_same_with", &again);
    page
}

/// A ring that was made before, wrong side out, with the row by which another thing is sewn to its edges; `None` of what is
/// no ring, or of other edges. `far` in mm of cloth.
pub(super) fn sewn_round<'a>(
    desk: &Desk<'a, '_>,
    who: Who,
    edges: &[String],
    far: f64,
    scale: f64,
) -> Option<Page<'a>> {
    let Who::Copy(copy) = who else { return None };
    let ring = desk.past.seams.iter().find_map(|seam| made(desk, copy, seam))?;
    if !edges.iter().all(|edge| ring.edges.contains(edge)) {
        return None;
    }
    let face = if desk.past.turned.contains_key(&copy) { Face::Right } else { Face::Wrong };
    let mut page = Page::new(desk.ruler);
    let bounds = walls(desk, &mut page, &ring, face, scale);
    page.path("stitched", seam(&ring, scale));
    rows(&mut page, &ring, far / scale, scale, |edge| edges.contains(edge));
    page.name(&desk.name_and_out(copy, face), bounds);
    Some(page)
}

/// Both walls of a ring: the far one is seen through the mouth, the near one hides what is left of it. The room for words on
/// the near one.
fn walls(desk: &Desk<'_, '_>, page: &mut Page<'_>, ring: &Ring, face: Face, scale: f64) -> Rect {
    let (wide, high) = (ring.round / std::f64::consts::PI / scale, ring.high / scale);
    let mouth: Vec<Point> = [rim(wide, 0.0, 0.0), rim(wide, 0.0, std::f64::consts::PI)].concat();
    page.path(desk.class(ring.copy, face.over()), closed_line(&mouth));
    let mut wall = rim(wide, 0.0, 0.0);
    wall.extend(rim(wide, high, 0.0).into_iter().rev());
    let wall = closed_line(&wall);
    page.path(desk.class(ring.copy, face), wall.clone());
    let bounds = wall.bounding_box();
    Rect::new(bounds.x0, bounds.y0 + wide * SEEN * 0.5, bounds.x1, bounds.y1)
}

/// The seam that makes the ring, on the near wall.
fn seam(ring: &Ring, scale: f64) -> BezPath {
    let (wide, high) = (ring.round / std::f64::consts::PI / scale, ring.high / scale);
    let seam = Point::new(wide * 0.25, wide / 2.0 * SEEN * 0.866);
    open_line(&[seam, seam + Vec2::new(0.0, high)])
}

/// Rows along those of its edges that are meant, on the near wall.
fn rows(page: &mut Page<'_>, ring: &Ring, far: f64, scale: f64, is_meant: impl Fn(&String) -> bool) {
    let (wide, high) = (ring.round / std::f64::consts::PI / scale, ring.high / scale);
    let ends = [ring.edges.first().map(|edge| (edge, far)), ring.edges.last().map(|edge| (edge, high - far))];
    for (_, y) in ends.into_iter().flatten().filter(|(edge, _)| is_meant(edge)) {
        page.path("stitch", open_line(&rim(wide, y, 0.0)));
    }
}

fn one<'a>(desk: &Desk<'a, '_>, work: &EditionWork<'_>, ring: &Ring, scale: f64) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    let turned = work.verb == Verb::Turn || desk.past.turned.contains_key(&ring.copy) || work.verb != Verb::Sew;
    let face = if turned { Face::Right } else { Face::Wrong };
    let (wide, high) = (ring.round / std::f64::consts::PI / scale, ring.high / scale);
    let bounds = walls(desk, &mut page, ring, face, scale);
    page.path(if work.verb == Verb::Sew { "stitch" } else { "stitched" }, seam(ring, scale));
    let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
    let named = held(work, desk.edition);
    match work.verb {
        Verb::Press => {
            page.symbol("iron", bounds.center() - Vec2::new(wide * 0.2, 0.0), 9.0_f64.min(high.max(4.0)), 0.0)
        }
        Verb::Turn => page.symbol("turn-arrow", bounds.center() - Vec2::new(wide * 0.25, 0.0), 9.0, 0.0),
        Verb::Topstitch | Verb::Edgestitch | Verb::Hem => {
            let is_named = |edge: &String| named.contains(&Held::Edge(ring.copy, edge.clone()));
            let whole = named.contains(&Held::Copy(ring.copy));
            rows(&mut page, ring, far, scale, |edge| whole || is_named(edge));
        }
        _ => {}
    }
    let words = desk.name_and_out(ring.copy, face);
    page.name(&words, bounds);
    page
}

/// Half of the round of a ring at a height: the near half, from the left, or the far one, from the right.
fn rim(wide: f64, y: f64, from: f64) -> Vec<Point> {
    let arc =
        Arc::new((0.0, y), (wide / 2.0, wide / 2.0 * SEEN), std::f64::consts::PI - from, -std::f64::consts::PI, 0.0);
    let path: BezPath = arc.to_path(0.01);
    corners(&path)
}
