//! A seam as it is sewn: the pieces right sides together, cut back so that every layer shows.

use kurbo::{Point, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use super::hoop;
use super::page::{Anchor, Page};
use super::paint::{CLOSE, stitching};
use super::part::{Part, Who};
use super::past::{Held, Seam, copies};
use super::stack::{Owner, Stack, outwards, owners};
use super::trace::{Side, open_line};
use crate::model::Verb;
use crate::resolve::CopyId;

/// How far a lower layer stands out from the one on it, in mm on paper.
const STEP: f64 = 1.3;
/// The least room on paper, in mm, for a layer that is cut back beside another.
const LEAST: f64 = 10.5;

/// Draws the seams of a step; those that would look the same are drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, seams: &[Seam], scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut drawings = Vec::new();
    let mut left: Vec<&Seam> = seams.iter().collect();
    let mut drawn: Vec<(String, Vec<CopyId>)> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    while let Some(first) = left.first().copied() {
        let (stack, taken) = match desk.best_stack(&left, scale) {
            Some((stack, order)) => {
                let taken: Vec<&Seam> = stack.seams.iter().map(|at| order[*at]).collect();
                (Some(stack), taken)
            }
            None => (None, vec![first]),
        };
        let names: Vec<CopyId> =
            taken.iter().flat_map(|seam| copies(&seam.members)).fold(Vec::new(), |mut names, copy| {
                if !names.contains(&copy) {
                    names.push(copy);
                }
                names
            });
        let looks = taken.iter().map(|seam| look(desk, &owners(seam), seam)).collect::<Vec<_>>().join("; ");
        if drawn.iter().any(|(known, _)| *known == looks) {
            again.extend(names.iter().map(|copy| desk.name(*copy)));
        } else {
            let one = match stack {
                Some(stack) => pile(desk, stack, &taken, scale),
                None => apart(desk, first, scale)?,
            };
            drawings.push(one);
            drawn.push((looks, names));
        }
        left.retain(|seam| !taken.iter().any(|taken| std::ptr::eq(*taken, *seam)));
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    for seam in seams {
        desk.sewing(&mut page, &desk.step.works[seam.work]);
    }
    desk.tell(&mut page, "draw_same_with", &again);
    let mut between: Vec<String> = Vec::new();
    for name in seams.iter().flat_map(|seam| &seam.between).map(|copy| desk.name(*copy)) {
        if !between.contains(&name) {
            between.push(name);
        }
    }
    desk.tell(&mut page, "draw_between", &between);
    Some(page)
}

/// What tells one drawing of a seam from another.
fn look(desk: &Desk<'_, '_>, owners: &[Owner], seam: &Seam) -> String {
    let one = |(who, edges): &Owner| match who {
        Who::Copy(copy) => {
            format!("{:?} {} {edges:?}", desk.edition.cast[*copy].piece, desk.class(*copy, Face::Wrong))
        }
        Who::Zip(zip) => format!("zip {zip:?} {}", edges.iter().any(|edge| edge.starts_with("tape"))),
    };
    format!("{:?} {:?} {}", seam.allowance, seam.gap, owners.iter().map(one).collect::<Vec<_>>().join(", "))
}

fn pile<'a>(desk: &Desk<'a, '_>, stack: Stack, seams: &[&Seam], scale: f64) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    let base = stack.layers[0][0].clone();
    let cloths = stack.cloths();
    let sewn: Vec<Vec2> = seams
        .iter()
        .filter_map(|seam| owners(seam).into_iter().next())
        .filter_map(|(who, edges)| Some(outwards(stack.part(who)?, &edges)))
        .flatten()
        .collect();
    let whole: Vec<Part> = stack.layers.iter().flatten().cloned().collect();
    let torn = tear(&stack, &cloths, &sewn);
    let mut layers = stack.layers.clone();
    if let Some((away, shares)) = &torn {
        for (layer, share) in cloths[1..].iter().zip(shares) {
            for part in &mut layers[*layer] {
                let bounds = part.bounds();
                let far =
                    Vec2::new(bounds.width() * away.x.abs(), bounds.height() * away.y.abs()).hypot() * (share - 0.5);
                part.cut_back(bounds.center() + *away * far, -*away, Side::Torn);
            }
        }
    }
    for (at, layer) in layers.iter().enumerate() {
        let shift = if torn.is_some() { Vec2::ZERO } else { Vec2::new(STEP, -STEP) * above(&layers, &cloths, at) };
        for part in layer {
            desk.paint(&mut page, part, shift, scale);
        }
    }
    for seam in seams {
        let work = &desk.step.works[seam.work];
        let Some((who, edges)) = owners(seam).into_iter().next() else { continue };
        let Some(part) = whole.iter().find(|part| part.who == who) else { continue };
        let edges: Vec<&str> = edges.iter().map(String::as_str).collect();
        if work.verb == Verb::Pin {
            let padded = copies(&seam.members)
                .iter()
                .any(|copy| matches!(desk.cloth(*copy), Cloth::Quilted | Cloth::Wadding | Cloth::Foam));
            edges.iter().for_each(|edge| desk.hold(&mut page, part, edge, padded));
        } else {
            let (part, edges) = held_by(seam, &whole).unwrap_or((part, edges.clone()));
            let gap = desk.gap_on(seam, part.who, scale);
            let line = stitching(part, &edges, seam.allowance.unwrap_or(CLOSE) / scale, gap.as_ref());
            line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
            if let Some((gap, worked)) = line.gap.zip(work.leave.as_ref()) {
                desk.gap(&mut page, gap, worked);
            }
        }
        desk.notches(&mut page, part, &edges);
    }
    zips(desk, &mut page, &layers, &base, torn.as_ref());
    name_layers(desk, &mut page, &layers, &cloths, torn.as_ref());
    desk.nap_arrows(&mut page, &layers.iter().flatten().collect::<Vec<_>>());
    page
}

/// The cloth of a seam that is shorter than what it is laid on, with its edges: the row runs no farther than it. `None` where
/// nothing is, or several are in a row.
fn held_by<'p>(seam: &'p Seam, whole: &'p [Part]) -> Option<(&'p Part, Vec<&'p str>)> {
    const SHORTER: f64 = 0.9;
    let mut found: Vec<(&Part, Vec<&str>)> = Vec::new();
    for member in &seam.members {
        let Held::Edge(copy, edge) = member else { continue };
        let Some(part) = whole.iter().find(|part| part.who == Who::Copy(*copy)) else { continue };
        match found.iter_mut().find(|(known, _)| known.who == part.who) {
            Some((_, edges)) => edges.push(edge),
            None => found.push((part, vec![edge])),
        }
    }
    let long = |one: &(&Part, Vec<&str>)| one.1.iter().map(|edge| one.0.length(edge)).sum::<f64>();
    found.sort_by(|one, other| long(one).total_cmp(&long(other)));
    let longest = found.pop().map_or(0.0, |longest| long(&longest));
    // Edges in a row are together as long as what they are laid on.
    let others: f64 = found.iter().map(long).sum();
    found.into_iter().next().filter(|_| others < SHORTER * longest)
}

/// How many layers lie on one, those that cover only a part of it together as one.
fn above(layers: &[Vec<Part>], cloths: &[usize], at: usize) -> f64 {
    let area = |layer: usize| layers[layer].iter().map(|part| part.bounds().area()).sum::<f64>();
    let upper: Vec<usize> = cloths.iter().copied().filter(|cloth| *cloth > at).collect();
    let full = upper.iter().filter(|layer| area(**layer) > 0.9 * area(0)).count();
    let parts = upper.len() > full && area(at) > 0.9 * area(0);
    // What lies on a part of a piece alone leaves the rest of it to be seen: their edges are level, and the row lies on both.
    if full == 0 { 0.0 } else { full as f64 + f64::from(u8::from(parts)) }
}

/// Where the upper layers are cut back: the side on which, and for each of them from the second the
/// share that is left. `None` when they are stepped instead.
fn tear(stack: &Stack, cloths: &[usize], sewn: &[Vec2]) -> Option<(Vec2, Vec<f64>)> {
    let count = cloths.len();
    let single = |layer: &&usize| stack.layers[**layer].len() == 1;
    if count < 2 || !cloths.iter().all(|layer| single(&layer)) {
        return None;
    }
    let bounds = stack.layers[0][0].bounds();
    let sides = [Vec2::new(1.0, 0.0), Vec2::new(-1.0, 0.0), Vec2::new(0.0, 1.0), Vec2::new(0.0, -1.0)];
    let away = sides.into_iter().find(|side| {
        let room = if side.x == 0.0 { bounds.height() } else { bounds.width() };
        sewn.iter().all(|out| out.dot(*side) < 0.5) && room >= LEAST * count as f64
    })?;
    let share = |above: usize| if count == 2 { 0.53 } else { 1.0 - above as f64 / count as f64 };
    Some((away, (1..count).map(share).collect()))
}

/// Labels in the parts of the layers that show.
fn name_layers(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    layers: &[Vec<Part>],
    cloths: &[usize],
    torn: Option<&(Vec2, Vec<f64>)>,
) {
    let mut below: Vec<(String, String)> = Vec::new();
    for (at, layer) in cloths.iter().enumerate() {
        for part in &layers[*layer] {
            let Who::Copy(copy) = part.who else { continue };
            let words = desk.name_and_side(copy, part.face);
            let mut room = part.bounds().inset(-2.8);
            let top = at + 1 == cloths.len();
            if let (Some((away, _)), false) = (torn, top) {
                // What shows lies beyond the next layer's tear.
                let next = layers[cloths[at + 1]][0].bounds();
                match (away.x, away.y) {
                    (x, _) if x > 0.0 => room.x0 = next.x1,
                    (x, _) if x < 0.0 => room.x1 = next.x0,
                    (_, y) if y > 0.0 => room.y0 = next.y1,
                    _ => room.y1 = next.y0,
                }
            } else if !top {
                below.push((desk.name(copy), desk.side(copy, part.face)));
                continue;
            }
            for zip in layers.iter().flatten().filter(|part| matches!(part.who, Who::Zip(_))) {
                let zip = zip.bounds();
                let level = zip.width() > zip.height() && zip.overlaps(room);
                if level && zip.center().y < room.center().y {
                    room.y0 = room.y0.max(zip.y1);
                } else if level {
                    room.y1 = room.y1.min(zip.y0);
                }
            }
            if !page.label_in(&words, room) {
                // From a place that no layer above hides.
                let y = if top { room.y0 + 1.0 } else { part.bounds().y1 - 1.2 };
                let over: Vec<&Part> = cloths[at + 1..].iter().flat_map(|layer| &layers[*layer]).collect();
                page.lead(&words, &on_cloth(part, &over, Point::new(room.center().x, y)), top);
            }
        }
    }
    let mut sides: Vec<&String> = below.iter().map(|(_, side)| side).collect();
    sides.dedup();
    for side in sides {
        let names: Vec<String> =
            below.iter().filter(|(_, known)| known == side).map(|(name, _)| name.clone()).collect();
        let under = desk.say("draw_underneath", &[("names", &desk.listed(&names))]);
        page.caption(match side.as_str() {
            "" => under,
            side => desk.say("draw_side", &[("name", &under), ("side", side)]),
        });
    }
}

/// Where a part is seen under others, well inside its edge, the places nearest to a point first; that point where it is hidden.
fn on_cloth(part: &Part, over: &[&Part], near: Point) -> Vec<Point> {
    const PLACES: i32 = 16;
    const INSIDE: f64 = 1.0;
    let bounds = part.bounds();
    let seen = |point: Point| {
        let contains = |part: &Part| kurbo::Shape::contains(&part.visible, point);
        contains(part) && !over.iter().any(|upper| contains(upper))
    };
    let ways =
        [Vec2::ZERO, Vec2::new(INSIDE, 0.0), Vec2::new(-INSIDE, 0.0), Vec2::new(0.0, INSIDE), Vec2::new(0.0, -INSIDE)];
    let share = |at: i32| f64::from(at) / f64::from(PLACES);
    let all = (1..PLACES).flat_map(|x| (1..PLACES).map(move |y| (x, y)));
    let places = all
        .map(|(x, y)| Point::new(bounds.x0 + bounds.width() * share(x), bounds.y0 + bounds.height() * share(y)))
        .chain([near])
        .filter(|point| ways.iter().all(|way| seen(*point + *way)));
    let mut places: Vec<Point> = places.collect();
    places.sort_by(|one, other| one.distance(near).total_cmp(&other.distance(near)));
    if places.is_empty() { vec![near] } else { places }
}

/// What a zip in the pile is, and how it lies.
fn zips(desk: &Desk<'_, '_>, page: &mut Page<'_>, layers: &[Vec<Part>], base: &Part, torn: Option<&(Vec2, Vec<f64>)>) {
    let Some(zip) = layers.iter().flatten().find(|part| matches!(part.who, Who::Zip(_))) else { return };
    let words = desk.zip_face(zip.face);
    let (bounds, cloth) = (zip.bounds(), base.bounds());
    let size = page.ruler.type_size();
    if bounds.x1 > cloth.x1 + 20.0 {
        let at = Point::new(f64::midpoint(cloth.x1, bounds.x1), bounds.y1 + size + 1.0);
        page.label(&words, at, Anchor::Middle);
        return;
    }
    // A line leads out over the nearer edge, where the layers on the zip are cut back.
    let seen = match torn {
        Some((away, shares)) => shares.first().map_or(0.75, |share| 0.5 + away.x * (f64::midpoint(*share, 1.0) - 0.5)),
        None => 0.75,
    };
    let over = bounds.center().y <= cloth.center().y;
    let x = cloth.x0 + cloth.width() * seen;
    let (edge, text) =
        if over { (cloth.y0 - 1.2, cloth.y0 - 2.0) } else { (cloth.y1 + 1.2, cloth.y1 + 2.0 + size * 0.8) };
    let inside = if over { bounds.y0 + bounds.height() * 0.6 } else { bounds.y1 - bounds.height() * 0.6 };
    page.path("context", open_line(&[Point::new(x, inside), Point::new(x, edge)]));
    page.label(&words, Point::new(x, text), Anchor::Middle);
}

/// Pieces whose edges cannot be laid on each other flat: side by side, the edges that meet marked.
fn apart<'a>(desk: &Desk<'a, '_>, seam: &Seam, scale: f64) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    for (who, edges) in owners(seam) {
        if let Some(ring) = hoop::sewn_round(desk, who, &edges, seam.allowance.unwrap_or(CLOSE), scale) {
            page.join(ring, true, 4.0);
            continue;
        }
        let mut one = Page::new(desk.ruler);
        let part = match who {
            Who::Copy(copy) => Part::copy(desk, copy, Face::Wrong, scale)?,
            Who::Zip(zip) => Part::zip(zip, desk.zip_length(zip, None), Face::Right, scale),
        };
        desk.paint(&mut one, &part, Vec2::ZERO, scale);
        let edges: Vec<&str> = edges.iter().map(String::as_str).collect();
        let line = stitching(&part, &edges, seam.allowance.unwrap_or(CLOSE) / scale, None);
        line.stretches.into_iter().for_each(|stretch| one.path("stitch", stretch));
        desk.notches(&mut one, &part, &edges);
        let words = match who {
            Who::Copy(copy) => desk.name_and_side(copy, part.face),
            Who::Zip(_) => desk.zip_face(Face::Right),
        };
        one.name(&words, part.bounds());
        desk.nap_arrow(&mut one, &part);
        let level = part.bounds().width() < 30.0;
        page.join(one, level, 4.0);
    }
    if owners(seam).len() > 1 {
        page.caption(desk.say("draw_match", &[]));
    }
    Some(page)
}
