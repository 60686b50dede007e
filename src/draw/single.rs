//! What is done to each piece by itself: notches marked, edges turned, bound, trimmed or gathered,
//! folds, basting round, turning out, zips and gaps opened and closed.

use kurbo::{Point, Vec2};

use super::cloth::Face;
use super::desk::{Desk, Undrawn};
use super::edges;
use super::folding;
use super::frames::numbered;
use super::handled::{Handled, handled};
use super::inside::Detail;
use super::page::{Anchor, Page};
use super::paint::{CLOSE, QUILTING, stitching};
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::shaping;
use super::told::{Quilting, lines};
use super::trace::{corners, nearest, open_line, place};
use super::trimmings;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, NotionId};

/// Draws one verb of the step on each piece that it names; pieces that look the same are drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Result<Option<Page<'a>>, Undrawn> {
    if matches!(verb, Verb::Open | Verb::Close)
        && let Some(zip) = zip_of(desk, verb)
    {
        return Ok(Some(drawn_zip(desk, zip, verb, scale)));
    }
    let mut drawings = Vec::new();
    let mut on: Vec<String> = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    let mut handled = handled(desk, verb);
    if matches!(verb, Verb::Applique | Verb::Boxstitch) {
        // What it is stitched to lies beneath.
        let mut seen: Vec<*const EditionWork<'_>> = Vec::new();
        let (shown, below): (Vec<_>, Vec<_>) = handled.into_iter().partition(|one| {
            let work: *const EditionWork<'_> = one.work;
            let first = !seen.contains(&work);
            seen.push(work);
            first
        });
        let piece = |copy: CopyId| desk.edition.cast[copy].piece;
        let is_shown = |copy: CopyId| shown.iter().any(|one: &Handled<'_, '_>| piece(one.copy) == piece(copy));
        on.extend(below.iter().filter(|one| !is_shown(one.copy)).map(|one| desk.name(one.copy)));
        on.dedup();
        handled = shown;
    }
    let whole = |one: &Handled<'_, '_>| verb == Verb::Fold && one.edges.is_empty();
    let mut frames = 0;
    for (at, one) in handled.iter().enumerate() {
        if handled[..at].iter().any(|known| known.copy == one.copy && whole(known) && whole(one)) {
            continue;
        }
        let look =
            format!("{:?} {} {:?}", desk.edition.cast[one.copy].piece, desk.class(one.copy, Face::Right), one.edges);
        let member = &desk.edition.cast[one.copy];
        let own = desk.edition.draft.facts.pieces[member.piece].marks.iter().map(|mark| mark.is_on(&member.name));
        let marks = format!("{:?} {:?} {:?}", member.piece, one.edges, own.collect::<Vec<_>>());
        // Marks are the same on any cloth.
        let look = if verb == Verb::Mark { marks } else { look };
        if looks.contains(&look) {
            again.push(desk.name(one.copy));
            continue;
        }
        looks.push(look);
        let drawn = match verb {
            Verb::Fold if whole(one) => {
                let known = handled.iter().filter(|other| other.copy == one.copy && other.edges.is_empty());
                let folds: Vec<&EditionWork<'_>> = known.map(|other| other.work).collect();
                let drawn = folding::draw(desk, one.copy, &folds, scale)?;
                drawn.map(|(page, count)| {
                    frames = count;
                    page
                })
            }
            // What follows a piece that is folded up goes on with its numbers.
            Verb::Fold if frames > 0 => {
                frames += 1;
                piece(desk, one, verb, scale)?.and_then(|page| numbered(page, frames, desk.sheet))
            }
            _ => piece(desk, one, verb, scale)?,
        };
        let Some(drawn) = drawn else { return Ok(None) };
        drawings.push(drawn);
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    desk.tell(&mut page, "draw_on_names", &on);
    for one in &handled {
        desk.sewing(&mut page, one.work);
    }
    desk.tell(&mut page, "draw_same_on", &again);
    Ok(Some(page))
}

fn piece<'a>(desk: &Desk<'a, '_>, one: &Handled<'_, '_>, verb: Verb, scale: f64) -> Result<Option<Page<'a>>, Undrawn> {
    let mut page = Page::new(desk.ruler);
    let face = match verb {
        Verb::Fold | Verb::Hem if !one.edges.is_empty() => Face::Wrong,
        Verb::Dart => Face::Wrong,
        Verb::Trim | Verb::Clip | Verb::Grade if desk.past.seams_of(one.copy).next().is_some() => Face::Wrong,
        _ => Face::Right,
    };
    let Some(mut part) = Part::copy(desk, one.copy, face, scale) else { return Ok(None) };
    match verb {
        Verb::Fold | Verb::Hem if !one.edges.is_empty() => edges::turn(desk, &mut page, &mut part, one, verb, scale)?,
        Verb::Bind => edges::bind(desk, &mut page, &part, one, scale),
        Verb::Trim | Verb::Clip | Verb::Grade => edges::cut(desk, &mut page, &part, one, verb, scale)?,
        Verb::Turn => turned_out(desk, &mut page, &part, scale),
        Verb::Mark => {
            let inside = shaping::wanted(one, &part);
            let quilted = Quilting::of(desk.edition, &[one.copy]).filter(|_| inside.is_empty());
            let has_way = quilted.is_some_and(|quilting| quilting.way.is_some());
            if part.notches.is_empty() && inside.is_empty() && quilted.is_some() && !has_way {
                return Err(Undrawn {
                    message: format!("nothing says which way the lines of quilting run over {}", desk.name(one.copy)),
                    hint: "say it in the work that quilts, with how far apart they are: `{quilt: [front, wadding, slanting lines], gap: 3 cm}`, or `level lines`, `upright lines`, `in squares`, `in diamonds`".into(),
                    follows: false,
                });
            }
            if part.notches.is_empty() && inside.is_empty() && !has_way {
                let message = "nothing says where the marks are: the piece has neither notches nor `marks:`";
                return Err(Undrawn::unclear(message));
            }
            desk.paint(&mut page, &part, Vec2::ZERO, scale);
            shaping::draw(&mut page, &part, &inside);
            if let Some(quilting) = quilted.filter(|_| part.notches.is_empty()) {
                to_quilt(desk, &mut page, &part, &quilting, scale);
            }
            let names: Vec<&str> = part.notches.iter().map(|(edge, ..)| edge.as_str()).collect();
            desk.notches(&mut page, &part, &names);
            for (_, point, inner) in &part.notches {
                name_notch(desk, &mut page, *point, *inner);
            }
        }
        Verb::Dart | Verb::Pleat | Verb::Tuck => {
            desk.paint(&mut page, &part, Vec2::ZERO, scale);
            shaping::draw(&mut page, &part, &shaping::wanted(one, &part));
        }
        Verb::Close => close(desk, &mut page, &part, one, scale)?,
        Verb::Finish | Verb::Applique => trimmings::zigzag(desk, &mut page, &part, one, scale),
        Verb::Boxstitch => trimmings::boxed(desk, &mut page, &part, one, scale)?,
        Verb::Buttonhole | Verb::Button | Verb::Fasten => {
            trimmings::at_marks(desk, &mut page, &part, one, verb, scale)?;
        }
        Verb::Slash => trimmings::slashed(desk, &mut page, &part, one, scale)?,
        Verb::Insert => trimmings::passed(desk, &mut page, &mut part, one, scale)?,
        Verb::Stuff => {
            filled(desk, &mut page, one, scale)?;
            return Ok(Some(page));
        }
        Verb::Attach => {
            let inside = shaping::wanted(one, &part);
            desk.paint(&mut page, &part, Vec2::ZERO, scale);
            shaping::draw(&mut page, &part, &inside);
            let own = part.inside.iter().filter(|(one, _)| inside.contains(one)).flat_map(|(_, details)| details);
            if let Some(place) = own.filter_map(Detail::middle).next().filter(|_| one.work.work.by_hand) {
                page.symbol("needle", place + Vec2::new(1.0, 6.5), 9.0, 0.0);
            }
        }
        Verb::Press => {
            desk.paint(&mut page, &part, Vec2::ZERO, scale);
            let bounds = part.bounds();
            let size = (bounds.width().min(bounds.height()) * 0.6).clamp(4.0, 11.0);
            page.symbol("iron", bounds.center() - Vec2::new(bounds.width() * 0.25, 0.0), size, 0.0);
        }
        _ => {
            desk.paint(&mut page, &part, Vec2::ZERO, scale);
            let all = one.edges_of(&part);
            let far = one.work.allowance.and_then(millimetres).unwrap_or(CLOSE);
            let rows: &[f64] = if verb == Verb::Gather { &[0.35, 0.75] } else { &[1.0] };
            for row in rows {
                let line =
                    stitching(&part, &all, far.max(if verb == Verb::Gather { 8.0 } else { 0.0 }) * row / scale, None);
                line.stretches.into_iter().for_each(|stretch| page.path("stitch", stretch));
            }
            if let Some(gather) = one.work.gather {
                page.caption(desk.say("draw_gather_to", &[("length", &desk.spoken(&gather))]));
            }
        }
    }
    page.name(&desk.name_and_side(one.copy, part.face), part.bounds());
    desk.nap_arrow(&mut page, &part);
    Ok(Some(page))
}

/// Lines to quilt along, and how far apart they are.
fn to_quilt(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, quilting: &Quilting, scale: f64) {
    let apart = quilting.apart.and_then(millimetres).map_or(QUILTING, |apart| apart / scale);
    let Some(way) = quilting.way else { return };
    let rows = lines(&part.visible, part.bounds().center(), part.turn, way, apart);
    rows.into_iter().for_each(|row| page.path("mark", row));
    if let Some(apart) = &quilting.apart {
        page.caption(desk.say("draw_lines_apart", &[("length", &desk.spoken(apart))]));
    }
}

fn name_notch(desk: &Desk<'_, '_>, page: &mut Page<'_>, point: Point, inner: Vec2) {
    let size = page.ruler.type_size();
    let (at, anchor) = match (inner.x.abs() > inner.y.abs(), inner.x > 0.0, inner.y > 0.0) {
        (true, true, _) => (point + Vec2::new(-1.2, size * 0.3), Anchor::End),
        (true, false, _) => (point + Vec2::new(1.2, size * 0.3), Anchor::Start),
        (false, _, true) => (point + Vec2::new(0.0, -1.3), Anchor::Middle),
        (false, _, false) => (point + Vec2::new(0.0, 1.0 + size), Anchor::Middle),
    };
    page.label_if_free(&desk.say("draw_notch", &[]), at, anchor);
}

/// Seams at the outside, the right side out, and an arrow that says so.
fn turned_out(desk: &Desk<'_, '_>, page: &mut Page<'_>, part: &Part, scale: f64) {
    desk.paint(page, part, Vec2::ZERO, scale);
    let bounds = part.bounds();
    let size = (bounds.width().min(bounds.height()) * 0.4).clamp(6.0, 12.0);
    page.symbol("turn-arrow", Point::new(bounds.center().x, bounds.y0 + size * 0.8), size, 0.0);
}

/// A body in outline, and the way in through its gap.
fn filled(desk: &Desk<'_, '_>, page: &mut Page<'_>, one: &Handled<'_, '_>, scale: f64) -> Result<(), Undrawn> {
    let whole = desk.past.sewn_to(one.copy);
    // The fact of a seam names first where it runs; what it catches stands behind.
    let gaps = desk.past.seams.iter().filter(|seam| seam.gap.is_some());
    let mut firsts = gaps.filter_map(|seam| match seam.members.first() {
        Some(Held::Edge(copy, edge)) if whole.contains(copy) => Some((*copy, seam, edge)),
        _ => None,
    });
    let Some((copy, seam, edge)) = firsts.next_back() else {
        let name = desk.name(one.copy);
        return Err(Undrawn::unclear(format!("no seam of {name} has a gap through which it is filled")));
    };
    // What is filled is seen from the side of its gap.
    let Some(part) = &Part::copy(desk, copy, Face::Right, scale) else { return Ok(()) };
    desk.paint(page, part, Vec2::ZERO, scale);
    page.name(&desk.name(copy), part.bounds());
    let gap = desk.gap_on(seam, part.who, scale);
    let place = gap.as_ref().and_then(|gap| gap.middle(part));
    let Some((middle, inner)) = place.or_else(|| part.hold(edge)) else { return Ok(()) };
    let half = seam.gap.unwrap_or(0.0) / scale / 2.0;
    let across = Vec2::new(-inner.y, inner.x);
    for side in [-1.0, 1.0] {
        let at = middle + across * (half * side);
        page.path("stitched", open_line(&[at, at + inner * 1.5]));
    }
    page.path("arrow", open_line(&[middle - inner * 8.0, middle + inner * 5.0]));
    Ok(())
}

/// A gap that is closed by hand at an edge.
fn close(
    desk: &Desk<'_, '_>,
    page: &mut Page<'_>,
    part: &Part,
    one: &Handled<'_, '_>,
    scale: f64,
) -> Result<(), Undrawn> {
    let named = one.edges_of(part);
    let gaps = desk.past.seams_of(one.copy).filter(|(_, edge)| named.contains(edge));
    let mut gaps = gaps.filter_map(|(seam, edge)| Some((edge, seam.allowance?, desk.gap_on(seam, part.who, scale)?)));
    let Some((edge, allowance, gap)) = gaps.next() else {
        return Err(Undrawn::unclear("no open gap is at the edges that this step closes"));
    };
    let mut part = part.clone();
    // What is turned out has its allowances inside already.
    let deep = if part.hidden.iter().any(|hidden| hidden == edge) { 0.0 } else { allowance / scale };
    if deep > 0.0 {
        part.fold_away(edge, deep);
    }
    desk.paint(page, &part, Vec2::ZERO, scale);
    let Some((rim, held)) = part.rim(edge).zip(part.hold(edge)) else { return Ok(()) };
    let points = corners(&rim.lines[0]);
    let (middle, inner) = gap.middle(&part).unwrap_or(held);
    let middle = nearest(&points, middle);
    let at = |far: f64| place(&points, far).map(|(point, _)| point + inner * deep);
    if let (Some(from), Some(to)) = (at(middle - gap.long / 2.0), at(middle + gap.long / 2.0)) {
        page.path("stitch", open_line(&[from, to]));
        if one.work.work.by_hand {
            page.symbol("needle", from.midpoint(to) - inner * 5.5, 9.0, 0.0);
        }
    }
    Ok(())
}

fn zip_of(desk: &Desk<'_, '_>, verb: Verb) -> Option<NotionId> {
    let works = desk.step.works.iter().filter(|work| work.verb == verb);
    works.flat_map(|work| held(work, desk.edition)).find_map(|target| match target {
        Held::Notion(zip) | Held::ZipEdge(zip, _) => Some(zip),
        _ => None,
    })
}

/// A zip by itself, face up, its slider on the way.
fn drawn_zip<'a>(desk: &Desk<'a, '_>, zip: NotionId, verb: Verb, scale: f64) -> Page<'a> {
    let mut page = Page::new(desk.ruler);
    let part = Part::zip(zip, desk.zip_length(zip, None), Face::Right, scale);
    desk.paint(&mut page, &part, Vec2::ZERO, scale);
    let bounds = part.bounds();
    let middle = bounds.center();
    let way = if verb == Verb::Open { -1.0 } else { 1.0 };
    page.symbol("zip-slider", middle, 6.0, 90.0);
    let above = bounds.y0 - 2.5;
    let arrow = [Point::new(middle.x - 8.0 * way, above), Point::new(middle.x + 8.0 * way, above)];
    page.path("arrow", open_line(&arrow));
    let words = desk.say(if verb == Verb::Open { "draw_zip_open" } else { "draw_zip_close" }, &[]);
    page.label(&words, Point::new(middle.x, bounds.y1 + desk.ruler.type_size() + 1.2), Anchor::Middle);
    page
}
