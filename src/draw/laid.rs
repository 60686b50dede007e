//! Pieces laid on another of which the facts tell what meets, but not all of where: a loop at an edge, straps, a pocket.
//!
//! What the facts do not say is not shown: beyond what meets, the lower piece is torn off.

use super::desk::Desk;
use super::page::Page;
use super::past::Past;
use super::told::{rows, words_of};
use super::{patch, strap};
use crate::construct::LONG;
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork, Inside, MarkAt, Touched};

/// How one piece lies on another.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Laid {
    /// On it, by edges that the fact names, or with rows across it.
    Patch { patch: CopyId, edges: Vec<String>, base: CopyId },
    /// Strips with one end at its edges: the strips in their order, each with its edge.
    Straps { straps: Vec<(CopyId, String)>, base: CopyId },
    /// Strips with one end at a mark.
    Marked { straps: Vec<CopyId>, base: CopyId, mark: usize },
    /// A strip with both ends at one edge.
    Arch { strap: CopyId, ends: [String; 2], base: CopyId, edge: String },
}

/// What a fact names, sorted.
#[derive(Default)]
struct Named {
    whole: Vec<CopyId>,
    edged: Vec<(CopyId, Vec<String>)>,
    marked: Vec<(CopyId, usize)>,
}

/// How a fact lays pieces on each other; `None` where it does something else, or leaves open what meets.
pub(super) fn laid(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> Option<Laid> {
    let verbs = [Verb::Topstitch, Verb::Edgestitch, Verb::Attach, Verb::Pin, Verb::Baste, Verb::Sew];
    if !verbs.contains(&work.verb) {
        return None;
    }
    let named = named(desk, work)?;
    let Named { whole, edged, marked } = &named;
    match (&whole[..], &edged[..], &marked[..]) {
        (straps, [], [(base, mark)]) if !straps.is_empty() && straps.iter().all(|copy| is_strip(desk, *copy)) => {
            let at = desk.edition.values.marks(desk.edition.cast[*base].piece).get(*mark)?.as_ref()?;
            matches!(at, MarkAt::Point(_)).then(|| Laid::Marked { straps: straps.to_vec(), base: *base, mark: *mark })
        }
        (straps, [(base, edges)], [])
            if straps.iter().all(|copy| is_strip(desk, *copy) && copy != base) && !straps.is_empty() =>
        {
            let each = straps.iter().enumerate().map(|(at, copy)| (*copy, edges[at % edges.len()].clone()));
            Some(Laid::Straps { straps: each.collect(), base: *base })
        }
        ([base], [(patch, edges)], [])
            if area(desk, *patch) <= area(desk, *base) && !is_bent_up(desk, *patch, edges) =>
        {
            Some(Laid::Patch { patch: *patch, edges: edges.clone(), base: *base })
        }
        ([], [(strap, ends), (base, edges)], []) | ([], [(base, edges), (strap, ends)], [])
            if is_bent_up(desk, *strap, ends) && edges.len() == 1 =>
        {
            let (ends, edge) = ([ends[0].clone(), ends[1].clone()], edges[0].clone());
            Some(Laid::Arch { strap: *strap, ends, base: *base, edge })
        }
        ([one, other], [], []) if work.verb.stitches() && !rows(&words_of(work)).0.is_empty() => {
            let (patch, base) = if area(desk, *one) <= area(desk, *other) { (*one, *other) } else { (*other, *one) };
            Some(Laid::Patch { patch, edges: Vec::new(), base })
        }
        _ => None,
    }
}

/// `None` where the fact names more than pieces, their edges and their marks.
fn named(desk: &Desk<'_, '_>, work: &EditionWork<'_>) -> Option<Named> {
    let mut named = Named::default();
    for touched in work.touched() {
        match touched {
            Touched::Copy(copy) => named.whole.push(copy),
            Touched::Inside(copy, Inside::Mark(at)) => named.marked.push((copy, at)),
            Touched::Edge(copy, edge) => {
                let edge = desk.edition.edge_word(copy, edge);
                match named.edged.iter_mut().find(|(known, _)| *known == copy) {
                    Some((_, edges)) => edges.push(edge),
                    None => named.edged.push((copy, vec![edge])),
                }
            }
            _ => return None,
        }
    }
    Some(named)
}

/// The box of a piece, in mm of cloth.
fn size(desk: &Desk<'_, '_>, copy: CopyId) -> (f64, f64) {
    desk.edition.values.whole(desk.edition.cast[copy].piece).map_or((0.0, 0.0), |shape| shape.box_size())
}

fn area(desk: &Desk<'_, '_>, copy: CopyId) -> f64 {
    let (wide, high) = size(desk, copy);
    wide * high
}

/// Whether a copy is a strip: long, or folded up.
fn is_strip(desk: &Desk<'_, '_>, copy: CopyId) -> bool {
    let (wide, high) = size(desk, copy);
    desk.past.is_folded(copy) || wide.max(high) >= 2.0 * LONG * wide.min(high)
}

/// Whether edges are both short ends of a strip, so that it does not lie flat where both are held.
fn is_bent_up(desk: &Desk<'_, '_>, copy: CopyId, edges: &[String]) -> bool {
    let (wide, high) = size(desk, copy);
    let shape = desk.edition.values.whole(desk.edition.cast[copy].piece);
    let short = |name: &String| {
        let edge = shape.and_then(|shape| shape.edge(name));
        edge.is_some_and(|edge| edge.cut_length <= wide.min(high) * 1.05)
    };
    edges.len() == 2 && edges.iter().all(short) && wide.max(high) >= LONG * wide.min(high)
}

/// Whether all facts of a verb lay pieces on each other.
pub(super) fn are_laid(desk: &Desk<'_, '_>, verb: Verb) -> bool {
    let mut works = desk.step.works.iter().filter(|work| work.verb == verb).peekable();
    works.peek().is_some() && works.all(|work| laid(&before(desk, work), work).is_some())
}

/// The desk at a fact of the step: what was folded earlier in it is folded.
fn before<'a, 'e>(desk: &Desk<'a, 'e>, work: &EditionWork<'_>) -> Desk<'a, 'e> {
    let mut past: Past = desk.past.clone();
    let earlier = desk.step.works.iter().take_while(|other| !std::ptr::eq(*other, work));
    for earlier in earlier.filter(|earlier| earlier.verb == Verb::Fold) {
        past.note(earlier, desk.step.number, desk.edition);
    }
    Desk {
        edition: desk.edition,
        step: desk.step,
        past,
        cloths: desk.cloths.clone(),
        ruler: desk.ruler,
        sheet: desk.sheet,
    }
}

/// Draws what the facts of a verb lay on each other; what looks the same is drawn once.
pub(super) fn draw<'a>(desk: &Desk<'a, '_>, verb: Verb, scale: f64, beside: bool) -> Option<Page<'a>> {
    let mut drawings = Vec::new();
    let mut looks: Vec<String> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    let mut patches: Vec<(CopyId, CopyId)> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        let own = before(desk, work);
        match laid(&own, work)? {
            // Several rows on one patch are shown on it together.
            Laid::Patch { patch, base, .. } => {
                if patches.contains(&(patch, base)) {
                    continue;
                }
                patches.push((patch, base));
                let works = desk.step.works.iter().filter(|work| work.verb == verb);
                let rows = works.filter_map(|work| match laid(&own, work) {
                    Some(Laid::Patch { patch: other, edges, base: on }) if (other, on) == (patch, base) => {
                        Some((edges, work))
                    }
                    _ => None,
                });
                drawings.push(patch::draw(&own, patch, base, &rows.collect::<Vec<_>>(), scale)?);
            }
            Laid::Straps { straps, base } => {
                for (copy, edge) in straps {
                    if is_new(&own, copy, base, &mut looks, &mut again) {
                        drawings.push(strap::at_edge(&own, copy, base, &edge, work, scale)?);
                    }
                }
            }
            Laid::Marked { straps, base, mark } => {
                for copy in straps {
                    if is_new(&own, copy, base, &mut looks, &mut again) {
                        drawings.push(strap::at_mark(&own, copy, base, mark, work, scale)?);
                    }
                }
            }
            Laid::Arch { strap: copy, ends, base, edge } => {
                if is_new(&own, copy, base, &mut looks, &mut again) {
                    drawings.push(match own.past.is_folded(copy) {
                        true => strap::at_edge(&own, copy, base, &edge, work, scale)?,
                        false => strap::arch(&own, (copy, &ends), base, &edge, work, scale)?,
                    });
                }
            }
        }
    }
    let mut page = Page::flowed(desk.ruler, drawings, beside, 4.0, desk.sheet);
    // A patch tells how far from its own edges it is stitched.
    let told = |work: &EditionWork<'_>| matches!(laid(&before(desk, work), work), Some(Laid::Patch { edges, .. }) if !edges.is_empty());
    for work in desk.step.works.iter().filter(|work| work.verb == verb && !told(work)) {
        desk.sewing(&mut page, work);
    }
    desk.tell(&mut page, "draw_same_with", &again);
    Some(page)
}

/// Whether nothing drawn before looks like a strip on its base.
fn is_new(desk: &Desk<'_, '_>, copy: CopyId, base: CopyId, looks: &mut Vec<String>, again: &mut Vec<String>) -> bool {
    let one = |copy: CopyId| {
        let face = super::cloth::Face::Right;
        format!("{:?} {} {:?}", desk.edition.cast[copy].piece, desk.class(copy, face), desk.past.lies(copy))
    };
    let look = format!("{} on {}", one(copy), one(base));
    if looks.contains(&look) {
        again.push(desk.name(copy));
        return false;
    }
    looks.push(look);
    true
}
