//! What of a thing is seen when it is made up: which pieces, what they are named after, and how large strips are.

use kurbo::Shape as _;

use super::cloth::Cloth;
use super::desk::Desk;
use super::past::{Held, Past, held, millimetres};
use crate::model::Verb;
use crate::resolve::{CopyId, EditionWork};

/// Words in the names of pieces that lie inside.
const INSIDE: [&str; 5] = ["facing", "lining", "interlining", "underlining", "interfacing"];
/// How many times longer than wide a strip is at least.
const STRIP: f64 = 3.0;
/// How far from its edge the row of a hem is left of its allowance: what its first turn takes, in mm (common practice,
/// no source).
const TURN: f64 = 10.0;

/// All works up to the step on the desk.
pub(super) fn works<'d, 'e>(desk: &'d Desk<'_, 'e>) -> impl Iterator<Item = &'d EditionWork<'e>> {
    desk.edition.steps_to(Some(desk.step.number)).flat_map(|step| &step.works)
}

/// The words of a copy's names, in small letters.
pub(super) fn words(desk: &Desk<'_, '_>, copy: CopyId) -> Vec<String> {
    let member = &desk.edition.cast[copy];
    let piece = &desk.edition.draft.facts.pieces[member.piece];
    let names = format!("{} {} {} {}", member.name, piece.id.text, piece.name.text, desk.name(copy)).to_lowercase();
    names.split(|sign: char| !sign.is_alphanumeric()).map(str::to_owned).collect()
}

/// Whether a copy is seen from outside.
pub(super) fn is_seen(desk: &Desk<'_, '_>, copy: CopyId) -> bool {
    let facts = &desk.edition.draft.facts;
    let member = &desk.edition.cast[copy];
    let piece = &facts.pieces[member.piece];
    let quilted =
        facts.fabrics.iter().any(|fabric| fabric.from.as_ref().is_some_and(|from| from.text == piece.id.text));
    let inside = words(desk, copy).iter().any(|word| INSIDE.contains(&word.as_str()));
    let outer = matches!(desk.cloth(copy), Cloth::Outer | Cloth::Quilted);
    outer && !member.left && piece.tape.is_none() && !quilted && !inside
}

/// The side that a copy is named after: 0 the front, 1 the back.
pub(super) fn side_of(desk: &Desk<'_, '_>, copy: CopyId) -> Option<usize> {
    let words = words(desk, copy);
    let says = |all: &[&str]| words.iter().any(|word| all.contains(&word.as_str()));
    match (says(&["front", "fronts"]), says(&["back", "backs", "rear"])) {
        (true, false) => Some(0),
        (false, true) => Some(1),
        _ => None,
    }
}

/// How long and how wide a strip is once it is folded up, in mm; `None` of what is no strip.
pub(super) fn strip(desk: &Desk<'_, '_>, copy: CopyId) -> Option<(f64, f64)> {
    let member = &desk.edition.cast[copy];
    let shape = desk.edition.values.whole(member.piece)?;
    let folds = desk.past.lies(copy).folds;
    let (wide, high) = if folds.short < 1.0 { shape.box_size() } else { shape.stitching().box_size() };
    let tape = desk.edition.draft.facts.pieces[member.piece].tape.is_some();
    let (long, short) = (wide.max(high) * folds.long, wide.min(high) * folds.short);
    (tape || long >= STRIP * short).then_some((long, short))
}

/// The area of a copy between its stitching lines, in mm².
pub(super) fn area(desk: &Desk<'_, '_>, copy: CopyId) -> f64 {
    let shape = desk.edition.values.whole(desk.edition.cast[copy].piece);
    shape.map_or(0.0, |shape| shape.stitching().path.area().abs())
}

/// The past as the thing looks when it is made up: what was sewn, hemmed or folded in lies at the stitching line, with no
/// seam to be seen.
pub(super) fn made_up(desk: &Desk<'_, '_>) -> Past {
    let mut past = desk.past.clone();
    past.seams.iter_mut().for_each(|seam| (seam.allowance, seam.gap) = (None, None));
    let mut folded = Vec::new();
    for work in works(desk).filter(|work| matches!(work.verb, Verb::Hem | Verb::Fold)) {
        for one in held(work, desk.edition) {
            let Held::Edge(copy, edge) = &one else { continue };
            let far = work.allowance.and_then(millimetres).filter(|_| work.verb == Verb::Hem && !work.work.by_hand);
            past.topstitched.extend(far.map(|far| (*copy, edge.clone(), Some((far - TURN).max(far / 2.0)))));
            folded.push(one);
        }
    }
    past.seams.extend(folded.into_iter().map(|edge| super::past::Seam {
        members: vec![edge],
        between: Vec::new(),
        allowance: None,
        gap: None,
        work: 0,
        step: 0,
    }));
    for (copy, _) in desk.edition.cast.copies() {
        past.turned.insert(copy, usize::MAX);
    }
    past
}
