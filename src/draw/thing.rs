//! The thing that the steps make, drawn from the facts: made up, for the cover, and as far as it is made at the end of a
//! part. Where the facts do not tell what it looks like, nothing is drawn.

use kurbo::{Point, Rect, Vec2};

use super::cloth;
use super::desk::Desk;
use super::fits::SCALES;
use super::hung::hung;
use super::laid_on::{layered, patches, place_of, set_on};
use super::page::{Anchor, Page, Sheet};
use super::part::{Part, Who};
use super::past::{Held, Past, copies, held};
use super::seen::{area, is_seen, made_up, works};
use super::sides::{Side, sides, smooth};
use super::sized::{Length, Rows};
use super::trace::{inward, straight};
use super::{bands, drum, stood};
use crate::figure::{Ruler, Studio};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionPart, EditionStep};

/// On the cover, and at the end of a part.
const COVER: Sheet = Sheet { width: 150.0, high: 112.0, cropped: true };
const STATE: Sheet = Sheet { width: 76.0, high: 52.0, cropped: true };
/// Between the sides of a thing, in mm on paper.
const APART: f64 = 9.0;

/// A drawing of the thing.
#[derive(Debug, Clone, PartialEq)]
pub struct Thing {
    /// The drawing in the house style.
    pub svg: String,
    /// Its width and height on paper, in mm.
    pub size: (f64, f64),
}

/// The drawings of a thing in one size.
#[derive(Debug, Clone, Default)]
pub struct Things {
    /// Made up, with its finished measurements; `None` where the facts do not tell what it looks like.
    pub measured: Option<Thing>,
    /// The same without.
    pub plain: Option<Thing>,
    /// At the end of each part; `None` where nothing was joined in it, or it cannot be drawn.
    pub states: Vec<Option<Thing>>,
}

impl Things {
    /// Draws one size.
    pub fn of(edition: &Edition<'_>, studio: &Studio) -> Things {
        let mut states: Vec<Option<Thing>> = Vec::new();
        for part in &edition.parts {
            // What the last part ends in is the thing itself.
            let last = edition.parts.last().is_some_and(|last| std::ptr::eq(last, part));
            let drawn = Some(part).filter(|_| !last).and_then(|part| state(edition, part, studio));
            let known = drawn.as_ref().is_some_and(|thing| states.iter().flatten().any(|other| other.svg == thing.svg));
            states.push(drawn.filter(|_| !known));
        }
        Things { measured: finished(edition, studio, true), plain: finished(edition, studio, false), states }
    }
}

/// The thing made up, with its finished measurements or without; `None` where the facts do not tell what it looks like.
fn finished(edition: &Edition<'_>, studio: &Studio, measured: bool) -> Option<Thing> {
    let last = edition.steps_to(None).last()?;
    let ruler = studio.ruler();
    let desk = at(edition, last, &ruler, COVER);
    let root = stood::face(&desk).or_else(|| largest(&desk, |copy| is_made(&desk, copy)))?;
    drawn(&desk, root, studio, measured)
}

/// The state of the work at the end of a part: what its steps joined last; `None` where nothing was, or where it cannot
/// be drawn.
fn state(edition: &Edition<'_>, part: &EditionPart<'_>, studio: &Studio) -> Option<Thing> {
    let last = part.steps.last()?;
    let ruler = studio.ruler();
    let desk = at(edition, last, &ruler, STATE);
    let made = part.steps.iter().flat_map(|step| &step.works).filter(|work| joins(work.verb));
    let named: Vec<CopyId> = made.flat_map(|work| copies(&held(work, edition))).collect();
    let group: Vec<CopyId> = named.iter().flat_map(|copy| desk.past.sewn_to(*copy)).collect();
    if !is_right_side_out(&desk, &group) {
        return None;
    }
    let boxed = stood::face(&desk).filter(|copy| group.contains(copy));
    let root = boxed.or_else(|| largest(&desk, |copy| group.contains(&copy)))?;
    drawn(&desk, root, studio, false)
}

/// Whether work lies as it is drawn: it is not turned or stuffed later on, and no zip holds it flat.
fn is_right_side_out(desk: &Desk<'_, '_>, group: &[CopyId]) -> bool {
    let later = desk.edition.steps().filter(|step| step.number > desk.step.number).flat_map(|step| &step.works);
    let mut turned = later.filter(|work| matches!(work.verb, Verb::Turn | Verb::Stuff));
    let mut flat =
        desk.past.seams.iter().filter(|seam| seam.members.iter().any(|one| matches!(one, Held::ZipEdge(..))));
    let holds = |all: &[CopyId]| all.iter().any(|copy| group.contains(copy));
    let boxed = desk.past.boxed.iter().any(|(copy, _)| group.contains(copy));
    !turned.any(|work| holds(&copies(&held(work, desk.edition))))
        && (boxed || !flat.any(|seam| holds(&copies(&seam.members))))
}

fn at<'a, 'e>(edition: &'a Edition<'e>, step: &'a EditionStep<'e>, ruler: &'a Ruler<'a>, sheet: Sheet) -> Desk<'a, 'e> {
    Desk { edition, step, past: Past::after(edition, step), cloths: cloth::sort(edition), ruler, sheet }
}

fn joins(verb: Verb) -> bool {
    matches!(verb, Verb::Sew | Verb::Box | Verb::Hem | Verb::Bind | Verb::Topstitch | Verb::Attach | Verb::Quilt)
}

/// Whether a copy is more than cut: something is sewn to it or on it.
fn is_made(desk: &Desk<'_, '_>, copy: CopyId) -> bool {
    works(desk).filter(|work| joins(work.verb)).any(|work| copies(&held(work, desk.edition)).contains(&copy))
}

/// The largest of the copies that are seen; that cut first of several alike.
fn largest(desk: &Desk<'_, '_>, is: impl Fn(CopyId) -> bool) -> Option<CopyId> {
    let seen = desk.edition.cast.copies().map(|(copy, _)| copy).filter(|copy| is_seen(desk, *copy) && is(*copy));
    seen.fold(None, |best, copy| match best {
        Some(known) if area(desk, known) >= area(desk, copy) => best,
        _ => Some(copy),
    })
}

fn drawn(desk: &Desk<'_, '_>, root: CopyId, studio: &Studio, measured: bool) -> Option<Thing> {
    let plain = Desk { past: made_up(desk), cloths: desk.cloths.clone(), ..*desk };
    for scale in SCALES {
        let mut rows = if measured { Rows::of(desk.edition) } else { Rows::none() };
        let page = page(desk, &plain, root, f64::from(scale), &mut rows)?;
        if let Some(text) = page.finish(scale, desk.sheet) {
            let (svg, size) = studio.whole(&text)?;
            return Some(Thing { svg, size });
        }
    }
    None
}

fn page<'a>(desk: &Desk<'a, '_>, plain: &Desk<'a, '_>, root: CopyId, scale: f64, rows: &mut Rows) -> Option<Page<'a>> {
    if desk.past.boxed.iter().any(|(copy, _)| *copy == root) {
        return stood::draw(desk, plain, root, scale, rows);
    }
    if let Some(drum) = drum::of(plain).filter(|drum| drum.has(root)) {
        return drum.draw(desk, plain, scale, rows);
    }
    let stuffed = works(desk).any(|work| work.verb == Verb::Stuff);
    let mut sides: Vec<Side> = sides(plain, root, scale, !stuffed)?.into_iter().collect();
    sides.retain(|side| !side.parts.is_empty());
    let named = sides.len() > 1;
    let mut names = ["draw_front", "draw_back"];
    if let Some(inside) = Some(()).filter(|()| !named && !stuffed).and_then(|()| lined(plain, root, scale)) {
        sides.insert(0, inside);
        names = ["draw_inside", "draw_outside"];
    }
    let laid: Vec<CopyId> = sides.iter().flat_map(|side| &side.parts).filter_map(of).collect();
    let count = sides.len();
    let mut page = Page::new(desk.ruler);
    for (at, side) in sides.iter().enumerate() {
        let mut one = Page::new(desk.ruler);
        paint(plain, &mut one, side, &laid, scale);
        rows.set(&mut one, &lengths(side, at + 1 == count && count > 1, scale));
        if count > 1 {
            let (cloth, all) = (side.bounds(), one.bounds());
            let under = Point::new(cloth.center().x, all.y1 + desk.ruler.type_size() + 2.0);
            one.label(&plain.say(names[at], &[]), under, Anchor::Middle);
        }
        page.join(one, true, APART);
    }
    Some(page)
}

fn of(part: &Part) -> Option<CopyId> {
    match part.who {
        Who::Copy(copy) => Some(copy),
        Who::Zip(_) => None,
    }
}

/// The other face of a flat thing that was made one with its largest piece, where something lies on it.
fn lined(desk: &Desk<'_, '_>, root: CopyId, scale: f64) -> Option<Side> {
    let piece = desk.edition.cast[root].piece;
    let all = desk.edition.cast.copies().filter(|(copy, member)| *copy != root && member.piece == piece);
    let mut parts = all.map(|(copy, _)| copy).filter(|copy| layered(desk, root, *copy)).filter_map(|copy| {
        let part = smooth(desk, copy, scale)?;
        (!patches(desk, &part, &[], scale).is_empty()).then_some(part)
    });
    Some(Side { parts: vec![parts.next()?] })
}

fn paint(desk: &Desk<'_, '_>, page: &mut Page<'_>, side: &Side, laid: &[CopyId], scale: f64) {
    let bounds = side.bounds();
    let all = hung(desk);
    // What hangs down lies behind the cloth, as it is sewn to its wrong side or into its seam.
    for part in &side.parts {
        bands::sleeves(desk, page, part, scale);
        for one in all.iter().filter(|one| Some(one.on.0) == of(part) || lies_with(desk, one.on.0, part)) {
            for line in part.rim(&one.on.1).iter().flat_map(|rim| &rim.lines) {
                let Some((_, inner)) = inward(line, &part.outline) else { continue };
                one.draw(desk, page, (line, -inner), place_of(desk, part, one.copy), (bounds.height(), scale));
            }
        }
        for patch in patches(desk, part, laid, scale).iter().filter(|patch| stands_out(patch, part)) {
            desk.paint(page, patch, Vec2::ZERO, scale);
        }
    }
    for part in &side.parts {
        bands::round(desk, page, part, scale);
        desk.paint(page, part, Vec2::ZERO, scale);
    }
    for part in &side.parts {
        for patch in patches(desk, part, laid, scale).iter().filter(|patch| !stands_out(patch, part)) {
            desk.paint(page, patch, Vec2::ZERO, scale);
            set_on(desk, page, patch, scale);
        }
        set_on(desk, page, part, scale);
    }
}

/// Whether what is sewn on lies mostly beyond the piece.
fn stands_out(patch: &Part, part: &Part) -> bool {
    !kurbo::Shape::contains(&part.visible, patch.bounds().center())
}

/// Whether a copy is one layer with a part that is drawn.
fn lies_with(desk: &Desk<'_, '_>, copy: CopyId, part: &Part) -> bool {
    of(part).is_some_and(|other| {
        desk.edition.cast[copy].piece == desk.edition.cast[other].piece && layered(desk, copy, other)
    })
}

/// What may be measured on a side: it as a whole, its straight edges, its pieces.
fn lengths(side: &Side, last: bool, scale: f64) -> Vec<Length> {
    let bounds = side.bounds();
    let beside = Vec2::new(if last { 1.0 } else { -1.0 }, 0.0);
    let mut found = boxed(bounds, beside, scale);
    for part in &side.parts {
        for (from, to) in part.rims.iter().flat_map(|rim| &rim.lines).filter_map(straight) {
            let level = (to.y - from.y).abs() < 0.05;
            let upright = (to.x - from.x).abs() < 0.05;
            let share = (from.y - bounds.y0) / bounds.height().max(1e-9);
            let away = match () {
                () if level && share < 0.15 => Vec2::new(0.0, -1.0),
                () if level && share > 0.85 => Vec2::new(0.0, 1.0),
                () if upright => beside,
                () => continue,
            };
            found.push(Length { from, to, away, mm: from.distance(to) * scale });
        }
        found.extend(boxed(part.bounds(), beside, scale));
    }
    // An edge of two halves is measured whole.
    let level = side.parts.iter().flat_map(|part| &part.rims).flat_map(|rim| &rim.lines).filter_map(straight);
    let top = level.filter(|(from, to)| (from.y - bounds.y0).abs() < 0.5 && (to.y - bounds.y0).abs() < 0.5);
    let ends = top
        .flat_map(|(from, to)| [from.x, to.x])
        .fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)));
    if ends.0 < ends.1 {
        let (from, to) = (Point::new(ends.0, bounds.y0), Point::new(ends.1, bounds.y0));
        found.push(Length { from, to, away: Vec2::new(0.0, -1.0), mm: (ends.1 - ends.0) * scale });
    }
    found
}

fn boxed(bounds: Rect, beside: Vec2, scale: f64) -> Vec<Length> {
    let at = |x: f64, y: f64| Point::new(x, y);
    let x = if beside.x > 0.0 { bounds.x1 } else { bounds.x0 };
    vec![
        Length {
            from: at(bounds.x0, bounds.y1),
            to: at(bounds.x1, bounds.y1),
            away: Vec2::new(0.0, 1.0),
            mm: bounds.width() * scale,
        },
        Length { from: at(x, bounds.y0), to: at(x, bounds.y1), away: beside, mm: bounds.height() * scale },
    ]
}
