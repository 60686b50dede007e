//! Stitches whose place a mark tells: rows along marked lines, and straps boxed on at marked points.

use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};

use super::cloth::Face;
use super::desk::{Desk, Undrawn};
use super::inside::Detail;
use super::page::Page;
use super::part::Part;
use super::past::{Held, held};
use super::trace::open_line;
use crate::diag::listed;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Inside, PieceId, Touched};

/// How wide a box is at the least in which the cross shows its dashes, in mm on paper.
const SMALL: f64 = 9.0;

/// A piece with the marks that facts of a step name on it, and what is stitched on there.
struct Marked<'d, 'e> {
    base: CopyId,
    marks: Vec<(Inside, &'d EditionWork<'e>)>,
    others: Vec<String>,
}

/// Whether a fact names a mark to stitch along or at.
pub(super) fn names_mark(work: &EditionWork<'_>) -> bool {
    matches!(work.verb, Verb::Topstitch | Verb::Edgestitch | Verb::Boxstitch)
        && work.touched().any(|touched| matches!(touched, Touched::Inside(_, Inside::Mark(_))))
}

/// Whether every fact of a verb does.
pub(super) fn is_marked(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    works.peek().is_some() && works.all(names_mark)
}

/// Whether the facts of a verb tell along which edges it stitches whole pieces: round one of them alone.
pub(super) fn are_told(desk: &Desk<'_, '_>, verb: Verb) -> Result<(), Undrawn> {
    let rows = matches!(verb, Verb::Topstitch | Verb::Edgestitch);
    for work in desk.step.works.iter().filter(|work| work.verb == verb && rows && !names_mark(work)) {
        let whole = held(work, desk.edition).into_iter().filter_map(|target| match target {
            Held::Copy(copy) => Some(copy),
            _ => None,
        });
        let whole: Vec<CopyId> = whole.collect();
        let Some(first) = whole.first() else { continue };
        let piece = |copy: &CopyId| desk.edition.cast[*copy].piece;
        let other = whole.iter().find(|copy| piece(copy) != piece(first));
        let round =
            |words: &str| ["round", "all sides", "all edges", "every side"].iter().any(|one| words.contains(one));
        let words = &work.work.words;
        let message = match other {
            Some(_)
                if words.iter().any(|own| round(&own.text)) && whole.iter().all(|copy| desk.past.is_folded(*copy)) =>
            {
                continue;
            }
            Some(other) => format!(
                "nothing says how {} lies on {}, nor where the stitches run",
                desk.name(*first),
                desk.name(*other)
            ),
            None if words.is_empty() || words.iter().any(|own| round(&own.text)) => continue,
            None => format!("nothing says along which line of {} the stitches run", desk.name(*first)),
        };
        return Err(Undrawn {
            message,
            hint: format!(
                "mark the line on the piece, `marks: {{row: {{line: [[5 cm, 0 cm], [5 cm, 10 cm]]}}}}`, and name it, \
                 `{0}: {1}.row`; or name the edges beside which they run, `{0}: {1}.left`, or draw this diagram by hand \
                 and name its file here",
                verb.word(),
                desk.edition.cast[*first].name
            ),
            follows: false,
        });
    }
    Ok(())
}

/// Draws each piece with its stitches; what looks the same is drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Result<Option<Page<'a>>, Undrawn> {
    let mut page = Page::new(desk.ruler);
    let mut looks: Vec<(PieceId, &str, Vec<Inside>)> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    for one in marked(desk, verb) {
        let marks: Vec<Inside> = one.marks.iter().map(|(inside, _)| *inside).collect();
        let names: Vec<&String> = one.marks.iter().filter_map(|(inside, _)| name_of(desk, one.base, *inside)).collect();
        let look = (desk.edition.cast[one.base].piece, desk.class(one.base, Face::Right), marks);
        if looks.contains(&look) {
            again.push(desk.name(one.base));
            continue;
        }
        let Some(drawn) = on_marks(desk, &one, &names, verb, scale)? else { return Ok(None) };
        page.join(drawn, beside, 5.0);
        looks.push(look);
    }
    for work in desk.step.works.iter().filter(|work| work.verb == verb).take(1) {
        desk.sewing(&mut page, work);
    }
    desk.tell(&mut page, "draw_same_on", &again);
    Ok(Some(page))
}

fn name_of<'e>(desk: &Desk<'_, 'e>, copy: CopyId, inside: Inside) -> Option<&'e String> {
    let facts = &desk.edition.draft.facts.pieces[desk.edition.cast[copy].piece];
    Some(&inside.called(facts).0.text)
}

/// The pieces whose marks the facts of a verb name, in their order.
fn marked<'d, 'e>(desk: &'d Desk<'_, 'e>, verb: Verb) -> Vec<Marked<'d, 'e>> {
    let mut found: Vec<Marked<'d, 'e>> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        let named: Vec<(CopyId, Inside)> = work
            .touched()
            .filter_map(|touched| match touched {
                Touched::Inside(copy, inside) => Some((copy, inside)),
                _ => None,
            })
            .collect();
        let bases: Vec<CopyId> = named.iter().map(|(copy, _)| *copy).collect();
        let others = work.touched().filter_map(|touched| touched.copy()).filter(|copy| !bases.contains(copy));
        let others: Vec<String> = others.map(|copy| desk.name(copy)).collect();
        for (base, inside) in named {
            let at = found.iter().position(|one| one.base == base).unwrap_or_else(|| {
                found.push(Marked { base, marks: Vec::new(), others: Vec::new() });
                found.len() - 1
            });
            found[at].marks.push((inside, work));
            found[at].others.extend(others.iter().cloned());
        }
    }
    for one in &mut found {
        one.others.sort();
        one.others.dedup();
    }
    found
}

fn on_marks<'a>(
    desk: &Desk<'a, '_>,
    one: &Marked<'_, '_>,
    names: &[&String],
    verb: Verb,
    scale: f64,
) -> Result<Option<Page<'a>>, Undrawn> {
    let mut page = Page::new(desk.ruler);
    let Some(base) = Part::copy(desk, one.base, Face::Right, scale) else { return Ok(None) };
    desk.paint(&mut page, &base, Vec2::ZERO, scale);
    let mut taken: Vec<Rect> = Vec::new();
    for (inside, work) in &one.marks {
        let own = base.inside.iter().filter(|(known, _)| known == inside).flat_map(|(_, details)| details);
        let mut stitched = false;
        for detail in own {
            match (detail, verb) {
                (Detail::Dot(point), Verb::Boxstitch) => {
                    taken.extend(strap(desk, &mut page, work, *point, scale));
                    stitched = true;
                }
                (Detail::Placed(line), Verb::Boxstitch) => {
                    taken.push(line.bounding_box());
                    crossed(&mut page, line.bounding_box());
                    stitched = true;
                }
                (Detail::Hole(line), Verb::Topstitch | Verb::Edgestitch) => {
                    taken.push(Rect::from_points(line.p0, line.p1));
                    page.path("stitch", open_line(&[line.p0, line.p1]));
                    stitched = true;
                }
                (Detail::Placed(line), _) => {
                    taken.push(line.bounding_box());
                    page.path("stitch", line.clone());
                    stitched = true;
                }
                _ => {}
            }
        }
        if !stitched {
            let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
            return Err(Undrawn {
                message: format!("nothing says along which line of {} the stitches run", desk.name(one.base)),
                hint: format!(
                    "give {} a line, `{{line: [[5 cm, 0 cm], [5 cm, 10 cm]]}}`, or draw this diagram by hand and name its file here",
                    listed(&names)
                ),
                follows: false,
            });
        }
    }
    let (words, with) = if verb == Verb::Boxstitch { ("draw_with", true) } else { ("draw_on_names", false) };
    if with || one.others.len() == 1 {
        desk.tell(&mut page, words, &one.others);
    }
    page.label_in_one(&desk.name_and_side(one.base, base.face), &rooms(base.bounds(), &taken));
    Ok(Some(page))
}

/// The parts of a piece on which nothing is stitched, the widest first: beside, between, above or below what is.
pub(super) fn rooms(all: Rect, taken: &[Rect]) -> Vec<Rect> {
    let mut across = vec![(all.x0, all.x0), (all.x1, all.x1)];
    across.extend(taken.iter().map(|own| (own.x0, own.x1)));
    across.sort_by(|one, two| one.0.total_cmp(&two.0));
    let beside = across.windows(2).map(|pair| Rect::new(pair[0].1, all.y0, pair[1].0, all.y1));
    let mut down = vec![(all.y0, all.y0), (all.y1, all.y1)];
    down.extend(taken.iter().map(|own| (own.y0, own.y1)));
    down.sort_by(|one, two| one.0.total_cmp(&two.0));
    let between = down.windows(2).map(|pair| Rect::new(all.x0, pair[0].1, all.x1, pair[1].0));
    let room = |own: &Rect| own.width().max(0.0) * own.height().max(0.0);
    let mut found: Vec<Rect> = beside.chain(between).collect();
    found.sort_by(|one, two| room(two).total_cmp(&room(one)));
    found
}

/// The end of a strap at a point, as wide as it is, with a box and a cross in it.
fn strap(desk: &Desk<'_, '_>, page: &mut Page<'_>, work: &EditionWork<'_>, at: Point, scale: f64) -> Option<Rect> {
    let end = held(work, desk.edition).into_iter().find_map(|target| match target {
        Held::Edge(copy, edge) => Some((copy, edge)),
        _ => None,
    });
    let drawn = end.and_then(|(copy, edge)| Some((copy, Part::copy(desk, copy, Face::Right, scale)?.length(&edge))));
    let (copy, wide) = drawn.filter(|(_, wide)| *wide > 0.0)?;
    let place = Rect::from_center_size(at, (wide, wide));
    page.path(desk.class(copy, Face::Right), place.to_path(0.02));
    crossed(page, place.inset(-wide * 0.1));
    Some(place)
}

/// A box with a cross in it.
fn crossed(page: &mut Page<'_>, place: Rect) {
    let corner = |x: f64, y: f64| Point::new(x, y);
    page.path("stitch", place.to_path(0.02));
    let (one, two): (BezPath, BezPath) = (
        open_line(&[corner(place.x0, place.y0), corner(place.x1, place.y1)]),
        open_line(&[corner(place.x1, place.y0), corner(place.x0, place.y1)]),
    );
    // Small as it is, a cross of dashes would be a blot.
    let cross = if place.width() < SMALL { "stitched" } else { "stitch" };
    page.path(cross, one);
    page.path(cross, two);
}
