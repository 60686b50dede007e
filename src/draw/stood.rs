//! A boxed bag as it stands when it is made up: its pockets on its face, its handles and loops in their seams, its width,
//! depth and height beside it.

use kurbo::{Affine, Point, Vec2};

use super::bag::{corners, is_zipped, lining_of, measures, paint, rim};
use super::cloth::Face;
use super::desk::Desk;
use super::hung::{How, hung};
use super::laid_on::{patches, set_on};
use super::page::{Anchor, Page};
use super::part::Who;
use super::seen::{is_seen, side_of};
use super::sides::smooth;
use super::sized::{Length, Rows};
use super::trace::open_line;
use crate::resolve::CopyId;

/// The face of the bag that is seen from before, where the thing is one: a boxed piece, that named after the front first.
pub(super) fn face(desk: &Desk<'_, '_>) -> Option<CopyId> {
    let boxed = || desk.past.boxed.iter().map(|(copy, _)| *copy).filter(|copy| is_seen(desk, *copy));
    boxed().find(|copy| side_of(desk, *copy) == Some(0)).or_else(|| boxed().next())
}

/// The bag with a face; `None` where nothing tells how deep it is. `plain` is the desk whose pieces are made up.
pub(super) fn draw<'a>(
    desk: &Desk<'a, '_>,
    plain: &Desk<'a, '_>,
    front: CopyId,
    scale: f64,
    rows: &mut Rows,
) -> Option<Page<'a>> {
    let measures = measures(desk, front, scale)?;
    let zipped = is_zipped(desk, front);
    let corners = corners(&measures, zipped);
    let within = lining_of(desk, front).unwrap_or(front);
    let inside = if within == front { Face::Wrong } else { Face::Right };
    let mut page = Page::new(desk.ruler);
    let [left, right, back, _] = corners.base;
    let (rims, seam) = match corners.top[..] {
        [from, to] => ([(from, to), (from, to)], (to, right.midpoint(back))),
        [one, two, three, four] => ([(one, two), (four, three)], (two.midpoint(three), right.midpoint(back))),
        _ => return None,
    };
    let all = hung(desk);
    let high = measures.high;
    let draw = |page: &mut Page<'_>, behind: bool| {
        for one in &all {
            let of_back = one.on.0 != front;
            let edge = one.on.1.as_str();
            let (line, out, is_behind) = match (one.how, edge) {
                (_, edge) if edge.contains("top") => (rims[usize::from(of_back)], Vec2::new(0.0, -1.0), of_back),
                // The right of the front is the left of the back.
                (_, edge) if edge.contains("right") != of_back => (seam, Vec2::new(1.0, -0.12).normalize(), false),
                (How::Loop | How::Strap | How::Tails, edge) if edge.contains("left") || edge.contains("right") => {
                    ((corners.top[0], left), Vec2::new(-1.0, 0.0), true)
                }
                _ => continue,
            };
            if is_behind == behind {
                one.draw(desk, page, (&open_line(&[line.0, line.1]), out), None, (high, scale));
            }
        }
    };
    draw(&mut page, true);
    paint(desk, &mut page, &corners, (front, Face::Right), (within, inside), scale);
    on_face(plain, &mut page, front, (rims[0].0.midpoint(rims[0].1), left.midpoint(right)), scale);
    for (copy, edge, far) in plain.past.topstitched.iter().filter(|(copy, ..)| *copy == front) {
        if edge.contains("top") && !zipped && is_seen(desk, *copy) {
            page.path("stitched", open_line(&rim(&corners, far.unwrap_or(super::paint::CLOSE) / scale)));
        }
    }
    draw(&mut page, false);
    let up = Point::new(left.x, left.y - high);
    let down = Vec2::new(0.0, 1.0);
    rows.set(
        &mut page,
        &[
            Length { from: left, to: right, away: down, mm: measures.base * scale },
            Length { from: up, to: left, away: Vec2::new(-1.0, 0.0), mm: high * scale },
        ],
    );
    if let Some(words) = rows.take(measures.deep * scale) {
        let by = Vec2::new(2.2, 2.2);
        page.line("dimension", right + by, back + by);
        let middle = right.midpoint(back) + by;
        page.label(&words, Point::new(middle.x + 2.0, middle.y + desk.ruler.type_size()), Anchor::Start);
    }
    if let (Some(words), [from, to]) = (rows.take(measures.wide * scale), &corners.top[..]) {
        let above = Vec2::new(0.0, page.bounds().y0 - 3.2 - from.y);
        page.dimension(*from + above, *to + above, &[words], -down);
    }
    Some(page)
}

/// What lies on the front, from its rim down.
fn on_face(plain: &Desk<'_, '_>, page: &mut Page<'_>, front: CopyId, (top, base): (Point, Point), scale: f64) {
    let Some(part) = smooth(plain, front, scale) else { return };
    let bounds = part.bounds();
    let boxed: Vec<CopyId> = plain.past.boxed.iter().map(|(copy, _)| *copy).collect();
    for patch in patches(plain, &part, &boxed, scale) {
        let Who::Copy(copy) = patch.who else { continue };
        if !is_seen(plain, copy) {
            continue;
        }
        // The face leans back from its base to a rim in the middle.
        let from_top = (patch.bounds().center().y - bounds.y0) / bounds.height().max(1e-9);
        let middle = top.lerp(base, from_top.clamp(0.0, 1.0));
        let place = Point::new(
            middle.x + patch.bounds().center().x - bounds.center().x,
            top.y + patch.bounds().center().y - bounds.y0,
        );
        let patch = patch.clone().moved(Affine::translate(place - patch.bounds().center()));
        plain.paint(page, &patch, Vec2::ZERO, scale);
        set_on(plain, page, &patch, scale);
    }
}
