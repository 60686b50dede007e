//! What is stitched over edges and set into a piece: zigzag over raw edges and round shapes, boxes with a cross,
//! buttons, buttonholes and fasteners at their marks, and what is passed into a casing.

use std::f64::consts::TAU;

use kurbo::{Arc, BezPath, Point, Shape as _, Vec2};

use super::desk::{Desk, Undrawn};
use super::handled::Handled;
use super::inside::Detail;
use super::page::Page;
use super::part::Part;
use super::shaping;
use super::trace::{beside, closed_line, corners, inward, length, open_line, place};
use crate::construct::LONG;
use crate::measure::to_f64;
use crate::model::{NotionFigure, Verb};
use crate::resolve::NotionId;

/// How wide and how close a zigzag is drawn, in mm on paper.
const ZIGZAG: (f64, f64) = (1.3, 1.1);
/// How large a button is drawn at the least, in mm on paper from its middle.
const BUTTON: f64 = 1.1;
/// How wide what is passed through a casing is, in mm of cloth, where the facts do not say (common practice, no
/// source).
const PASSED: f64 = 10.0;

/// Stitches to and fro over the edges.
pub(super) fn zigzag(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, one: &Handled<'_, '_>, scale: f64) {
    desk.paint(page, part, Vec2::ZERO, scale);
    for name in one.edges_of(part) {
        for line in part.rim(name).iter().flat_map(|rim| &rim.lines) {
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let (outer, inside) = (corners(line), beside(&corners(line), inner, ZIGZAG.0));
            let (long, deep) = (length(&outer), length(&inside));
            let count = (long / ZIGZAG.1).max(2.0) as usize;
            let at = |turn: usize| {
                let share = turn as f64 / count as f64;
                let on =
                    if turn.is_multiple_of(2) { place(&outer, long * share) } else { place(&inside, deep * share) };
                on.map(|(point, _)| point)
            };
            let points: Vec<Point> = (0..=count).filter_map(at).collect();
            page.path("stitch", open_line(&points));
        }
    }
    if let Some(finish) = one.work.work.finish {
        page.caption(desk.say("draw_finish", &[("how", &desk.say(&format!("finish_{}", finish.word()), &[]))]));
    }
}

/// A box with a cross, as wide as the end that is named.
pub(super) fn boxed(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &Part,
    one: &Handled<'_, '_>,
    scale: f64,
) -> Result<(), Undrawn> {
    let straight: Vec<&String> = one.edges.iter().filter(|edge| part.is_straight(edge)).collect();
    if straight.is_empty() {
        return Err(Undrawn::unclear("nothing says at which straight end the box is stitched"));
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    let piece = desk.edition.cast[one.copy].piece;
    for edge in straight {
        let folded = desk.edition.values.allowance(piece, edge).map_or(0.0, to_f64) / scale;
        let Some((middle, inner)) = part.hold(edge) else { continue };
        let across = Vec2::new(-inner.y, inner.x);
        let half = (part.length(edge) / 2.0 - super::paint::CLOSE / scale).max(part.length(edge) * 0.3);
        let near = middle + inner * (folded + super::paint::CLOSE / scale);
        let far = near + inner * (2.0 * half);
        let ends = [near - across * half, near + across * half, far + across * half, far - across * half];
        page.path("stitch", closed_line(&ends));
        page.path("stitch", open_line(&[ends[0], ends[2]]));
        page.path("stitch", open_line(&[ends[1], ends[3]]));
    }
    Ok(())
}

/// A ring without gaps in a class of dashes: each of its arcs is shorter than one dash.
fn solid_ring(middle: Point, round: f64) -> BezPath {
    const DASH: f64 = 1.4;
    let count = (TAU * round / DASH).ceil().max(3.0);
    let arc = |at: usize| Arc::new(middle, (round, round), TAU * at as f64 / count, TAU / count, 0.0).to_path(0.02);
    (0..count as usize).flat_map(|at| arc(at).elements().to_vec()).collect()
}

/// Buttons, buttonholes or fasteners at the marks that the fact names.
pub(super) fn at_marks(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &Part,
    one: &Handled<'_, '_>,
    verb: Verb,
    scale: f64,
) -> Result<(), Undrawn> {
    let wanted = shaping::wanted(one, part);
    let found: Vec<&Detail> =
        part.inside.iter().filter(|(inside, _)| wanted.contains(inside)).flat_map(|(_, details)| details).collect();
    let places: Vec<Point> = found
        .iter()
        .filter_map(|detail| match detail {
            Detail::Dot(point) => Some(*point),
            Detail::Hole(line) => Some(line.p0.midpoint(line.p1)),
            _ => None,
        })
        .collect();
    if places.is_empty() {
        let message = format!("nothing says where on {} this `{}` lies", desk.name(one.copy), verb.word());
        return Err(Undrawn {
            message,
            hint: "name a mark of the piece that has places, such as `marks: {buttons: {line: […], count: 5}}`, or draw this diagram by hand and name its file here".into(),
            follows: false,
        });
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    if verb == Verb::Buttonhole {
        shaping::draw(page, part, &wanted);
        return Ok(());
    }
    let round = notion(one).and_then(|notion| desk.figure(notion, NotionFigure::Size)).unwrap_or(0.0);
    let round = (round / 2.0 / scale).max(BUTTON);
    for place in places {
        page.path("stitch", solid_ring(place, round));
        for by in [Vec2::new(round * 0.35, 0.0), Vec2::new(-round * 0.35, 0.0)] {
            page.path("mark", open_line(&[place + by, place + by + Vec2::new(0.02, 0.0)]));
        }
    }
    Ok(())
}

/// Cuts into a piece along the lines that are marked on it.
pub(super) fn slashed(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &Part,
    one: &Handled<'_, '_>,
    scale: f64,
) -> Result<(), Undrawn> {
    let wanted = shaping::wanted(one, part);
    let found = part.inside.iter().filter(|(inside, _)| wanted.contains(inside)).flat_map(|(_, details)| details);
    let lines: Vec<&BezPath> = found
        .filter_map(|detail| match detail {
            Detail::Placed(line) => Some(line),
            _ => None,
        })
        .collect();
    if lines.is_empty() {
        return Err(Undrawn::unclear(format!("nothing says along which line {} is cut open", desk.name(one.copy))));
    }
    desk.paint(page, part, Vec2::ZERO, scale);
    for line in lines {
        page.path("cut-line", line.clone());
        if let Some((point, along)) = place(&corners(line), 0.0) {
            page.symbol("scissors", point, 6.5, along.atan2().to_degrees());
        }
    }
    Ok(())
}

/// What is passed through the casing at an edge.
pub(super) fn passed(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &mut Part,
    one: &Handled<'_, '_>,
    scale: f64,
) -> Result<(), Undrawn> {
    let named = one.edges.first().filter(|edge| part.is_straight(edge)).cloned();
    let Some(edge) = named.or_else(|| one.edges.is_empty().then(|| along(part)).flatten()) else {
        return Err(Undrawn::unclear("nothing says along which straight edge the casing runs"));
    };
    let piece = desk.edition.cast[one.copy].piece;
    let folded = desk.edition.values.allowance(piece, &edge).map_or(0.0, to_f64) / scale;
    let folded = if one.edges.is_empty() { 0.0 } else { folded };
    let Some((middle, inner)) = part.hold(&edge) else { return Ok(()) };
    part.fold_away(&edge, folded);
    desk.paint(page, part, Vec2::ZERO, scale);
    let across = Vec2::new(-inner.y, inner.x);
    let notion = notion(one);
    let wide = notion.and_then(|notion| desk.figure(notion, NotionFigure::Width)).unwrap_or(PASSED) / scale;
    let half = part.length(&edge) / 2.0;
    let near = middle + inner * (folded + 1.0);
    let (from, to) = (near - across * (half * 1.15), near + across * (half * 0.35));
    page.path(
        notion.map_or("elastic", |notion| desk.strip(notion)),
        closed_line(&[from, to, to + inner * wide, from + inner * wide]),
    );
    let line = [near - across * half, near + across * half].map(|point| point + inner * (wide + 1.0));
    page.path("stitched", open_line(&line));
    let head = to + inner * (wide / 2.0) + across * 1.0;
    page.path("arrow", open_line(&[head, head + across * 7.0]));
    page.caption(match notion {
        Some(notion) => desk.say("draw_pass", &[("name", &desk.notion(notion))]),
        None => desk.say("draw_pass_it", &[]),
    });
    Ok(())
}

/// The long straight side of a strip, through which something is passed that is named as a whole; `None` of what is no
/// strip.
fn along(part: &Part) -> Option<String> {
    let bounds = part.bounds();
    let (short, long) = (bounds.width().min(bounds.height()), bounds.width().max(bounds.height()));
    let straight = part.rims.iter().filter(|rim| part.is_straight(&rim.name));
    let longest = straight.max_by(|one, other| part.length(&one.name).total_cmp(&part.length(&other.name)))?;
    (long >= LONG * short).then(|| longest.name.clone())
}

/// The notion that a fact names.
fn notion(one: &Handled<'_, '_>) -> Option<NotionId> {
    one.work.targets.iter().find_map(|target| target.notion())
}
