//! What lies on a piece of a thing or is caught in its edge: pockets on their marks or along its edges, limbs at the
//! marks that bear their names; and what is set on it: buttons, rows along marks, bindings.

use kurbo::{Affine, Circle, Point, Shape as _, Vec2};

use super::desk::Desk;
use super::inside::Detail;
use super::page::Page;
use super::part::{Part, Who};
use super::past::{Held, held, millimetres};
use super::seen::{area, is_seen, strip, words, works};
use super::sides::smooth;
use super::trace::{beside, closed_line, corners, inward, open_line};
use crate::model::{NotionFigure, Verb};
use crate::resolve::{CopyId, EditionWork, Inside, MarkAt, Touched};

/// How near two edges must face the same way to lie on each other.
const SAME: f64 = 0.9;
/// How large a piece is at the most that is drawn without a mark, as a share of what it lies on, and how far down, as a
/// share of the room that there is (common practice, no source).
const LARGE: f64 = 0.5;
const DOWN: f64 = 0.55;
/// How wide a binding shows where nothing tells it, in mm of cloth (common practice, no source).
const BINDING: f64 = 8.0;
/// How large a button is where nothing tells it, in mm of cloth (common practice, no source).
const BUTTON: f64 = 15.0;

/// Whether a verb sews something on.
fn sews_on(verb: Verb) -> bool {
    verb == Verb::Sew || verb == Verb::Attach || (verb.stitches() && !verb.counts())
}

/// The copies that lie on one, each in its place; those in `laid` lie elsewhere.
pub(super) fn patches(desk: &Desk<'_, '_>, base: &Part, laid: &[CopyId], scale: f64) -> Vec<Part> {
    let Who::Copy(copy) = base.who else { return Vec::new() };
    let mut found: Vec<Part> = Vec::new();
    for work in works(desk).filter(|work| sews_on(work.verb)) {
        for other in super::past::copies(&held(work, desk.edition)) {
            let known = found.iter().any(|part| part.who == Who::Copy(other));
            let small = area(desk, other) < area(desk, copy) * 0.95;
            if other == copy || known || laid.contains(&other) || !small {
                continue;
            }
            let Some(part) = smooth(desk, other, scale) else { continue };
            let on = on_mark(desk, work, (copy, base), (other, &part), &found)
                .or_else(|| along_edges(desk, (copy, base), (other, &part)))
                .or_else(|| caught(desk, work, (copy, base), (other, &part)))
                .or_else(|| usual(desk, work, (copy, base), (other, &part)));
            found.extend(on.map(|by| part.moved(by)));
        }
    }
    found
}

/// Where a piece comes to lie that is sewn onto its mark; of several alike, the next free one.
fn on_mark(
    desk: &Desk<'_, '_>,
    work: &EditionWork<'_>,
    (copy, base): (CopyId, &Part),
    (other, part): (CopyId, &Part),
    found: &[Part],
) -> Option<Affine> {
    let marks = desk.edition.values.marks(desk.edition.cast[copy].piece);
    let mine = |at: usize| matches!(marks.get(at), Some(Some(MarkAt::Outline { piece, .. })) if *piece == desk.edition.cast[other].piece);
    let named =
        work.touched().any(|one| matches!(one, Touched::Inside(on, Inside::Mark(at)) if on == copy && mine(at)));
    let whole = work.touched().any(|one| one == Touched::Copy(copy));
    if !named && !whole {
        return None;
    }
    let details = base.inside.iter().filter(|(inside, _)| matches!(inside, Inside::Mark(at) if mine(*at)));
    let mut places = details.flat_map(|(_, details)| details).filter_map(|detail| match detail {
        Detail::Placed(path) => Some(path.bounding_box().center()),
        _ => None,
    });
    let free = |place: &Point| !found.iter().any(|part| part.bounds().center().distance(*place) < 0.5);
    places.find(free).map(|place| Affine::translate(place - part.bounds().center()))
}

/// Where a piece comes to lie whose edges are held on edges of the base that face the same way.
fn along_edges(desk: &Desk<'_, '_>, (copy, base): (CopyId, &Part), (other, part): (CopyId, &Part)) -> Option<Affine> {
    let (mut across, mut down) = (None, None);
    for work in works(desk).filter(|work| sews_on(work.verb)) {
        let [Held::Edge(one, edge), Held::Edge(two, to)] = &held(work, desk.edition)[..] else { continue };
        let (edge, to) = match () {
            () if *one == other && *two == copy => (edge, to),
            () if *two == other && *one == copy => (to, edge),
            () => continue,
        };
        let (Some(mine), Some(there)) = (part.hold(edge), base.hold(to)) else { continue };
        if mine.1.dot(there.1) < SAME {
            continue;
        }
        let by = there.0 - mine.0;
        if there.1.x.abs() > SAME { across = Some(by.x) } else { down = Some(by.y) }
    }
    Some(Affine::translate(Vec2::new(across?, down?)))
}

/// Where a piece is drawn that is stitched on a whole other one without a mark: in the middle, where pockets mostly are.
fn usual(
    desk: &Desk<'_, '_>,
    work: &EditionWork<'_>,
    (copy, base): (CopyId, &Part),
    (other, part): (CopyId, &Part),
) -> Option<Affine> {
    let row = matches!(work.verb, Verb::Topstitch | Verb::Edgestitch | Verb::Applique);
    let whole = work.touched().any(|one| one == Touched::Copy(copy));
    let small = area(desk, other) < area(desk, copy) * LARGE;
    if !row || !whole || !small || strip(desk, other).is_some() {
        return None;
    }
    let (room, own) = (base.bounds(), part.bounds());
    let top = room.y0 + (room.height() - own.height()) * DOWN;
    Some(Affine::translate(Vec2::new(room.center().x - own.center().x, top - own.y0)))
}

/// Where a piece comes to stand out that is caught by one of its edges where a mark bears its name.
fn caught(
    desk: &Desk<'_, '_>,
    work: &EditionWork<'_>,
    (copy, base): (CopyId, &Part),
    (other, part): (CopyId, &Part),
) -> Option<Affine> {
    if strip(desk, other).is_some() || !is_seen(desk, other) {
        return None;
    }
    let all = held(work, desk.edition);
    let edge = |of: CopyId| {
        all.iter().find_map(|one| match one {
            Held::Edge(copy, edge) if *copy == of => Some(edge.as_str()),
            _ => None,
        })
    };
    let (own, to) = (edge(other)?, edge(copy)?);
    // What stands out of a toy is a limb or an ear; of other things it may as well be turned in.
    let toy = work.verb == Verb::Baste && works(desk).any(|work| work.verb == Verb::Stuff);
    let point = place_of(desk, base, other).or_else(|| toy.then(|| on_edge(desk, base, to, other)).flatten())?;
    let out = -inward_at(base, to, point)?;
    let (middle, inside) = part.hold(own)?;
    let turn = Affine::rotate(out.atan2() - inside.atan2());
    Some(Affine::translate(point - turn * middle) * turn)
}

/// The place on a part that is marked with the name of another copy or of its piece.
pub(super) fn place_of(desk: &Desk<'_, '_>, base: &Part, other: CopyId) -> Option<Point> {
    let Who::Copy(copy) = base.who else { return None };
    let piece = &desk.edition.draft.facts.pieces[desk.edition.cast[copy].piece];
    let names = words(desk, other);
    base.inside.iter().find_map(|(inside, details)| {
        let Inside::Mark(at) = inside else { return None };
        let named = names.contains(&piece.marks[*at].name.text.to_lowercase());
        named.then(|| details.iter().find_map(Detail::middle)).flatten()
    })
}

/// Where on an edge a piece is caught that has no mark: all that are caught there share it evenly, in their order.
fn on_edge(desk: &Desk<'_, '_>, base: &Part, edge: &str, other: CopyId) -> Option<Point> {
    let Who::Copy(copy) = base.who else { return None };
    let mut all: Vec<CopyId> = Vec::new();
    for work in works(desk).filter(|work| work.verb == Verb::Baste) {
        let held = held(work, desk.edition);
        if held.contains(&Held::Edge(copy, edge.to_owned())) {
            let more = super::past::copies(&held)
                .into_iter()
                .filter(|one| *one != copy && area(desk, *one) < area(desk, copy) * LARGE);
            all.extend(more.filter(|one| !all.contains(one)).collect::<Vec<_>>());
        }
    }
    let nth = all.iter().position(|one| *one == other)?;
    let points = corners(base.rim(edge)?.lines.first()?);
    let far = super::trace::length(&points) * (nth as f64 + 0.5) / all.len() as f64;
    super::trace::place(&points, far).map(|(point, _)| point)
}

/// The direction into a part at the place on an edge nearest to a point.
fn inward_at(base: &Part, edge: &str, point: Point) -> Option<Vec2> {
    let line = base.rim(edge)?.lines.first()?;
    let points = corners(line);
    let far = super::trace::nearest(&points, point);
    let (at, along) = super::trace::place(&points, far)?;
    let normal = Vec2::new(-along.y, along.x);
    Some(if base.outline.contains(at + normal * 0.3) { normal } else { -normal })
}

/// Buttons, rows along marks, stitches of embroidery and bindings on a part.
pub(super) fn set_on(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, scale: f64) {
    let Who::Copy(copy) = part.who else { return };
    let holes = works(desk).any(|work| work.verb == Verb::Buttonhole);
    for work in works(desk) {
        for touched in work.touched() {
            let Touched::Inside(on, inside) = touched else { continue };
            let details = part.inside.iter().filter(|(one, _)| on == copy && *one == inside).flat_map(|(_, all)| all);
            for detail in details {
                match (work.verb, detail) {
                    (Verb::Button, _) if holes => {}
                    (Verb::Buttonhole | Verb::Button | Verb::Fasten, detail) => {
                        let Some(middle) = detail.middle() else { continue };
                        let round = Circle::new(middle, (button(desk) / scale / 2.0).max(0.5));
                        page.path("nb-body", round.to_path(0.01));
                    }
                    (verb, Detail::Hole(line)) if verb.stitches() => {
                        page.path("stitched", open_line(&[line.p0, line.p1]))
                    }
                    (verb, Detail::Placed(line))
                        if verb == Verb::Attach || (verb.stitches() && !is_outline(desk, copy, inside)) =>
                    {
                        page.path(if verb == Verb::Attach { "nb-line" } else { "stitched" }, line.clone());
                    }
                    _ => {}
                }
            }
        }
        if work.verb == Verb::Bind {
            bind(desk, page, part, copy, work, scale);
        }
    }
}

fn is_outline(desk: &Desk<'_, '_>, copy: CopyId, inside: Inside) -> bool {
    let Inside::Mark(at) = inside else { return false };
    let marks = desk.edition.values.marks(desk.edition.cast[copy].piece);
    matches!(marks.get(at), Some(Some(MarkAt::Outline { .. })))
}

/// The binding on the edges that a fact binds: of the copy itself, or of one that lies on it edge to edge.
fn bind(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, copy: CopyId, work: &EditionWork<'_>, scale: f64) {
    let piece = desk.edition.cast[copy].piece;
    let wide = work.allowance.and_then(millimetres).unwrap_or(BINDING) / scale;
    for one in held(work, desk.edition) {
        let Held::Edge(on, edge) = &one else { continue };
        let same = *on == copy || (desk.edition.cast[*on].piece == piece && layered(desk, *on, copy));
        for line in part.rim(edge).filter(|_| same).iter().flat_map(|rim| &rim.lines) {
            let Some((_, inner)) = inward(line, &part.outline) else { continue };
            let edge = corners(line);
            let mut band = beside(&edge, inner, wide.max(0.7));
            band.reverse();
            page.path("binding", closed_line(&[edge, band].concat()));
        }
    }
}

/// Whether two copies were made one layer.
pub(super) fn layered(desk: &Desk<'_, '_>, one: CopyId, other: CopyId) -> bool {
    let as_one = works(desk).filter(|work| work.work.as_one || matches!(work.verb, Verb::Quilt | Verb::Fuse));
    as_one
        .map(|work| super::past::copies(&held(work, desk.edition)))
        .any(|all| all.contains(&one) && all.contains(&other))
}

/// How wide a button is, in mm of cloth.
fn button(desk: &Desk<'_, '_>) -> f64 {
    let edition = desk.edition;
    let sizes = edition.draft.facts.notions.iter().filter_map(|notion| {
        let size = notion.figures.get(&NotionFigure::Size)?.get(edition.size())?;
        (notion.kind == crate::model::Kind::Button).then(|| edition.values.quiet(size).and_then(millimetres)).flatten()
    });
    sizes.into_iter().next().unwrap_or(BUTTON)
}
