//! Notions that are worked on by themselves, or laid on a whole piece: a zip that is cut to length, tape on the end of a
//! strap, a face that is embroidered.

use kurbo::{Point, Rect, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::{Anchor, Page};
use super::paint::CLOSE;
use super::part::Part;
use super::past::{Held, held, millimetres};
use super::told::{places, words_of};
use super::trace::{Side, closed_line, open_line};
use crate::construct::LONG;
use crate::model::{Kind, NotionFigure, Verb};
use crate::resolve::{CopyId, Edition, EditionWork, NotionId, Touched};

/// How much of a zip is drawn, in mm of cloth: its middle is left out.
const ZIP: f64 = 170.0;
/// How wide its middle is torn open, in mm on paper.
const OPEN: f64 = 4.0;
/// How far from its end something is done to a zip of which nothing says where, in mm of cloth.
const NEAR: f64 = 22.0;
/// How much of a strap is drawn, in mm on paper.
const STRAP: f64 = 46.0;
/// How wide and how long tape is drawn where no figure says it, as shares of the strap under it.
const TAPE: f64 = 0.8;

/// Whether all facts of a verb work on zips alone.
pub(super) fn is_zip(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    works.peek().is_some() && works.all(|work| zip(desk.edition, work).is_some())
}

/// The zip that a fact works on by itself.
pub(super) fn zip(edition: &Edition<'_>, work: &EditionWork<'_>) -> Option<NotionId> {
    if !matches!(work.verb, Verb::Mark | Verb::Attach | Verb::Trim) {
        return None;
    }
    let named = held(work, edition);
    match named[..] {
        [Held::Notion(notion)] if edition.draft.facts.notions[notion].kind == Kind::Zip => Some(notion),
        _ => None,
    }
}

/// The zips of a verb with all that the step did to them up to it, their middles left out.
pub(super) fn draw_zip<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64) -> Option<Page<'a>> {
    let last = desk.step.works.iter().rposition(|work| work.verb == verb)?;
    let works = &desk.step.works[..=last];
    let notion = works.iter().rev().find_map(|work| zip(desk.edition, work))?;
    let mut page = Page::new(desk.ruler);
    let whole = Part::zip(notion, ZIP.min(desk.zip_length(notion, None)), Face::Right, scale);
    let all = whole.bounds();
    for (side, way) in [(-1.0, Vec2::new(-1.0, 0.0)), (1.0, Vec2::new(1.0, 0.0))] {
        let mut half = whole.clone();
        half.cut_back(all.center() + Vec2::new(side * OPEN / 2.0, 0.0), way, Side::Torn);
        desk.paint(&mut page, &half, Vec2::ZERO, scale);
    }
    page.symbol("zip-slider", all.center() - Vec2::new(all.width() * 0.18, 0.0), 5.4, 90.0);
    let own = |work: &EditionWork<'_>| zip(desk.edition, work) == Some(notion);
    let ends = works.iter().filter(|work| own(work)).map(|work| places(&words_of(work))).max().unwrap_or(1);
    for (at, work) in works.iter().enumerate().filter(|(_, work)| own(work)) {
        for end in [1.0, -1.0].into_iter().take(ends) {
            let from = if end > 0.0 { all.x0 } else { all.x1 };
            done(&mut page, work, at == last, (from + end * NEAR / scale, end), all, scale);
        }
        let words = words_of(work);
        if at == last && !words.is_empty() {
            let verb = desk.verb(if verb == Verb::Attach { Verb::Sew } else { verb });
            page.caption(desk.say("draw_zip_work", &[("verb", &verb), ("words", &words)]));
        }
    }
    page.label(
        &desk.zip_face(Face::Right),
        Point::new(all.center().x, all.y1 + desk.ruler.type_size() + 1.2),
        Anchor::Middle,
    );
    Some(page)
}

/// What is done to a zip near one end: a mark across the tapes, stitches over the teeth inside it, a cut along it.
fn done(page: &mut Page<'_>, work: &EditionWork<'_>, now: bool, (x, end): (f64, f64), all: Rect, scale: f64) {
    let line = |x: f64, over: f64| open_line(&[Point::new(x, all.y0 - over), Point::new(x, all.y1 + over)]);
    match work.verb {
        Verb::Mark => page.path("mark", line(x, 1.0)),
        Verb::Attach => {
            let (high, inside) = (all.height() * 0.22, x + end * (CLOSE / scale).max(1.2));
            let stitches = [Point::new(inside, all.center().y - high), Point::new(inside, all.center().y + high)];
            page.path(if now { "stitch" } else { "stitched" }, open_line(&stitches));
            if now && work.work.by_hand && end > 0.0 {
                page.symbol("needle", Point::new(inside + 5.0, all.y0 - 5.5), 9.0, 0.0);
            }
        }
        _ => {
            page.path("cut-line", line(x, 2.0));
            page.symbol("scissors", Point::new(x, all.y1 + 5.0), 6.5, -90.0);
        }
    }
}

/// Whether all facts of a verb lay a notion on whole pieces.
pub(super) fn is_on_whole(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    matches!(verb, Verb::Attach | Verb::Sew) && works.peek().is_some() && works.all(|work| on_whole(work).is_some())
}

fn on_whole(work: &EditionWork<'_>) -> Option<(NotionId, Vec<CopyId>)> {
    let mut notion = None;
    let mut on = Vec::new();
    for touched in work.touched() {
        match touched {
            Touched::Notion(one) if notion.is_none() => notion = Some(one),
            Touched::Copy(copy) => on.push(copy),
            _ => return None,
        }
    }
    Some((notion?, on)).filter(|(_, on)| !on.is_empty())
}

/// Draws each piece with its notion; what looks the same is drawn once.
pub(super) fn draw_on_whole<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut drawings = Vec::new();
    let mut captions = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        let (notion, copies) = on_whole(work)?;
        for copy in &copies {
            let look = format!("{notion:?} {:?} {}", desk.edition.cast[*copy].piece, desk.class(*copy, Face::Right));
            if !looks.contains(&look) {
                looks.push(look);
                drawings.push(piece(desk, work, notion, *copy, scale)?);
            }
        }
        let (name, names) = (desk.notion(notion), copies.iter().map(|copy| desk.name(*copy)).collect::<Vec<_>>());
        let on = [("name", name.as_str()), ("names", &desk.listed(&names))];
        let words: Vec<&str> = work.work.words.iter().map(|words| words.text.as_str()).collect();
        captions.push(match words.is_empty() {
            true => desk.say("draw_on", &on),
            false => desk.say("draw_on_told", &[on[0], on[1], ("words", &words.join(", "))]),
        });
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    captions.into_iter().for_each(|caption| page.caption(caption));
    Some(page)
}

fn piece<'a>(
    desk: &Desk<'a, '_>,
    work: &EditionWork<'_>,
    notion: NotionId,
    copy: CopyId,
    scale: f64,
) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let mut part = Part::copy(desk, copy, Face::Right, scale)?;
    let all = part.bounds();
    let facts = &desk.edition.draft.facts.notions[notion];
    let (wide, long) = (all.width().min(all.height()), all.width().max(all.height()));
    // What is bought by its length is a strip itself.
    let by_length = [NotionFigure::Amount, NotionFigure::Length].iter().any(|one| facts.figures.contains_key(one));
    let tape = matches!(facts.kind, Kind::Tape | Kind::Elastic) || (facts.kind == Kind::Other && by_length);
    let strip = long >= 2.0 * LONG * wide && tape;
    let upright = all.height() > all.width();
    if strip && long > STRAP {
        let half = if upright { Vec2::new(0.0, STRAP / 2.0) } else { Vec2::new(STRAP / 2.0, 0.0) };
        part.cut_back(all.center() - half, half.normalize(), Side::Torn);
        part.cut_back(all.center() + half, -half.normalize(), Side::Torn);
    }
    desk.paint(&mut page, &part, Vec2::ZERO, scale);
    if strip && !work.work.by_hand {
        let own = desk.figure(notion, NotionFigure::Width);
        let across = own.map_or(wide * TAPE, |own| own / scale).min(wide);
        let along = (across * 2.5).min(STRAP * 0.6);
        let size = if upright { (across, along) } else { (along, across) };
        let place = Rect::from_center_size(all.center(), size);
        page.path("binding", place.to_path(0.02));
        let far = work.allowance.and_then(millimetres).unwrap_or(CLOSE) / scale;
        let row = place.inset(-far.min(across * 0.35));
        page.path(
            "stitch",
            closed_line(&[
                Point::new(row.x0, row.y0),
                Point::new(row.x1, row.y0),
                Point::new(row.x1, row.y1),
                Point::new(row.x0, row.y1),
            ]),
        );
    }
    if work.work.by_hand {
        let at = part.bounds();
        page.symbol("needle", Point::new(at.x0 + at.width() * 0.25, at.y0 - 4.0), 9.0, 0.0);
    }
    page.name(&desk.name_and_side(copy, part.face), part.bounds());
    Some(page)
}
