//! How a plan is made: the pieces of the sizes gathered, laid, and settled at their places.

use kurbo::{Affine, Rect};

use super::align::corners;
use super::arrange::{Oblong, Spot, arrange, naive_count};
use super::endless::endless;
use super::face::{face, is_beam};
use super::paper::SheetPaper;
use super::plan::{PlacedPiece, SheetPlan};
use super::words::house;
use super::{gauge, labels, list};
use crate::draw::Plan;
use crate::model::{brief_sizes, by_view, is_for};
use crate::resolve::{Edition, PieceId};

/// The plan of one size.
pub fn plan_one_size(edition: &Edition<'_>, paper: SheetPaper) -> SheetPlan {
    plan_sizes(&[edition], paper)
}

/// The plan of all sizes, nested: each piece's outlines over one another, as their author drew them.
pub fn plan_all_sizes(editions: &[Edition<'_>], paper: SheetPaper) -> SheetPlan {
    plan_sizes(&editions.iter().collect::<Vec<_>>(), paper)
}

/// A piece before it has a place: its outlines over one another, from 0, 0.
struct Loose {
    piece: PieceId,
    outlines: Vec<(usize, Plan)>,
    size: (f64, f64),
    /// The room that the words need to the right of it, when they do not fit inside.
    beside: Option<(f64, f64)>,
    /// How far the words keep from it.
    gap: f64,
    /// Its number on sheets and in the booklet, from 1.
    number: usize,
    /// Whether it is equal in the sizes of several things.
    once: bool,
}

impl Loose {
    /// The room that the piece takes with its words.
    fn room(&self) -> (f64, f64) {
        match self.beside {
            Some((width, height)) => (self.size.0 + self.gap + width, self.size.1.max(height)),
            None => self.size,
        }
    }
}

/// How far words keep from the piece that they stand beside, as a share of their height.
const BESIDE: f64 = 0.8;

/// The plan of some sizes, nested where there are several; of several things, each thing's own pieces lie on sheets of
/// their own, behind those that it shares.
pub fn plan_sizes(editions: &[&Edition<'_>], paper: SheetPaper) -> SheetPlan {
    plan(editions, paper, false)
}

/// The same with the pieces that are cut with a ruler: what leaving them off is held against.
pub fn plan_with_all(editions: &[&Edition<'_>], paper: SheetPaper) -> SheetPlan {
    plan(editions, paper, true)
}

fn plan(editions: &[&Edition<'_>], paper: SheetPaper, by_ruler: bool) -> SheetPlan {
    let settings = editions.first().map(|edition| edition.draft.facts.sheets).unwrap_or_default();
    let sizes: Vec<usize> = editions.iter().map(|edition| edition.size()).collect();
    let mut loose = loose(editions, paper, by_ruler);
    let key = key(editions, &loose);
    let (wide, high) = gauge::size(paper, &gauge::key_lines(&key, house(editions)));
    if let (width, None) = paper.step(&settings) {
        // Words beside a long thin piece give way before the piece does.
        loose.iter_mut().filter(|one| one.room().0 > width).for_each(|one| one.beside = None);
    }
    let (step, height) = {
        let (width, height) = paper.step(&settings);
        ((width, height.unwrap_or(f64::INFINITY)), height)
    };
    let mut boxes = vec![Oblong { width: wide, height: high, fixed: true, may_turn: false }];
    // Names at their leaders need room between pieces where words are large.
    let rims: Vec<f64> = loose.iter().map(|one| rim(paper, step.0 - one.room().0)).collect();
    boxes.extend(loose.iter().zip(&rims).map(|(one, rim)| Oblong {
        width: one.room().0 + 2.0 * rim,
        height: one.room().1 + 2.0 * rim,
        fixed: false,
        may_turn: one.beside.is_none(),
    }));
    let sections = sections(&loose, editions);
    let (spots, step, too_large) = match height {
        Some(_) => (in_sections(&boxes, &sections, step), step, Vec::new()),
        None => endless(&boxes, step.0),
    };
    let sizes_of: Vec<(f64, f64)> = boxes.iter().map(|one| (one.width, one.height)).collect();
    let mut plan = SheetPlan {
        paper,
        settings,
        sizes,
        pieces: Vec::new(),
        gauge: spots.first().map_or(Rect::ZERO, |spot| Rect::new(spot.x, spot.y, spot.x + wide, spot.y + high)),
        key,
        step,
        tiles: Vec::new(),
        naive: 0,
        too_large: too_large.iter().filter_map(|at| loose.get(*at).map(|one| one.piece)).collect(),
    };
    for (at, (one, spot)) in loose.into_iter().zip(spots.iter().skip(1)).enumerate() {
        if !too_large.contains(&at) {
            let spot = Spot { x: spot.x + rims[at], y: spot.y + rims[at], ..*spot };
            plan.pieces.push(settle(one, spot));
        }
    }
    plan.tiles = plan.used_tiles();
    let columns = plan.tiles.iter().map(|(_, column)| column + 1).max().unwrap_or(1);
    // Each thing lies on sheets of its own, in a plain grid as well.
    let grid = |section: &Vec<usize>| {
        let own: Vec<(f64, f64)> = section.iter().map(|at| sizes_of[*at]).collect();
        naive_count(&own, step, columns)
    };
    plan.naive = if height.is_some() { sections.iter().map(grid).sum() } else { 1 };
    plan
}

/// What is left free round a piece on a page of large words, as far as the page is wide enough.
fn rim(paper: SheetPaper, left: f64) -> f64 {
    const RIM: f64 = 20.0;
    if is_beam(paper) { RIM.min(left / 2.0 - 1e-6).max(0.0) } else { 0.0 }
}

/// The boxes that lie together, by their places: the gauge with what several things share, then each thing's own.
fn sections(loose: &[Loose], editions: &[&Edition<'_>]) -> Vec<Vec<usize>> {
    let Some(first) = editions.first() else { return vec![vec![0]] };
    let views = by_view(&first.draft.facts.sizes);
    let of = |one: &Loose| {
        let own = views.iter().enumerate().filter(|(_, view)| one.outlines.iter().any(|(size, _)| view.contains(size)));
        own.map(|(at, _)| at).collect::<Vec<usize>>()
    };
    let mut sections = vec![vec![0]];
    sections.resize(views.len() + 1, Vec::new());
    for (at, one) in loose.iter().enumerate() {
        let place = match of(one).as_slice() {
            [only] if views.len() > 1 => only + 1,
            _ => 0,
        };
        sections[place].push(at + 1);
    }
    // A gauge with nothing beside it goes with the first thing's pieces.
    if let ([0], Some(next)) = (sections[0].as_slice(), (1..sections.len()).find(|at| !sections[*at].is_empty())) {
        let own = std::mem::take(&mut sections[next]);
        sections[0].extend(own);
    }
    sections.retain(|section| !section.is_empty());
    sections
}

/// Lays each section on sheets of its own, below the one before.
fn in_sections(boxes: &[Oblong], sections: &[Vec<usize>], step: (f64, f64)) -> Vec<Spot> {
    let mut spots = vec![Spot { x: 0.0, y: 0.0, turned: false }; boxes.len()];
    let mut top = 0.0;
    for section in sections {
        let own: Vec<Oblong> = section.iter().map(|at| boxes[*at]).collect();
        let mut low = top;
        for (at, spot) in section.iter().zip(arrange(&own, step)) {
            let high = if spot.turned { boxes[*at].width } else { boxes[*at].height };
            spots[*at] = Spot { y: spot.y + top, ..spot };
            low = f64::max(low, top + spot.y + high);
        }
        top = (low / step.1).ceil() * step.1;
    }
    spots
}

fn loose(editions: &[&Edition<'_>], paper: SheetPaper, by_ruler: bool) -> Vec<Loose> {
    let Some(first) = editions.first() else { return Vec::new() };
    let views = by_view(&first.draft.facts.sizes);
    let mut all = Vec::new();
    let mut number = 0;
    for (id, piece) in PieceId::each(&first.draft.facts.pieces) {
        let have = |edition: &&&Edition<'_>| is_for(piece.sizes.as_ref(), edition.size());
        let own: Vec<&Edition<'_>> = editions.iter().filter(have).copied().collect();
        if own.is_empty() {
            continue;
        }
        number = if first.size_facts().view.is_some() { id.at() + 1 } else { number + 1 };
        // A length of tape is cut with a ruler, always.
        if piece.tape.is_some() || (piece.by_ruler && !by_ruler) {
            continue;
        }
        let outlines: Vec<(usize, Plan)> =
            own.iter().filter_map(|edition| Some((edition.size(), Plan::of(edition, id)?))).collect();
        // What is one for several things is printed once; all else is nested thing by thing.
        let one = outlines.first().map_or(0, |(size, _)| view_of(&views, *size));
        let several = outlines.iter().any(|(size, _)| view_of(&views, *size) != one);
        let once = several && outlines.windows(2).all(|pair| same_lines(&pair[0].1, &pair[1].1));
        let mut groups: Vec<Vec<(usize, Plan)>> = Vec::new();
        for (size, plan) in outlines {
            let with = |group: &&mut Vec<(usize, Plan)>| once || view_of(&views, group[0].0) == view_of(&views, size);
            match groups.iter_mut().find(with) {
                Some(group) => group.push((size, plan)),
                None => groups.push(vec![(size, plan)]),
            }
        }
        all.extend(groups.into_iter().map(|group| nested(editions, paper, id, (number, once), group)));
    }
    all
}

fn view_of(views: &[Vec<usize>], size: usize) -> usize {
    views.iter().position(|view| view.contains(&size)).unwrap_or(0)
}

/// Whether two sizes' lines of a piece are the same.
fn same_lines(one: &Plan, other: &Plan) -> bool {
    let lines = one.cutting == other.cutting && one.stitching == other.stitching && one.cut == other.cut;
    lines && (&one.details, &one.notches, one.origin) == (&other.details, &other.notches, other.origin)
}

/// The outlines of one piece over one another.
fn nested(
    editions: &[&Edition<'_>],
    paper: SheetPaper,
    piece: PieceId,
    (number, once): (usize, bool),
    mut outlines: Vec<(usize, Plan)>,
) -> Loose {
    let plans: Vec<&Plan> = outlines.iter().map(|(_, plan)| plan).collect();
    let corners = corners(&plans);
    let left = corners.iter().map(|(x, _)| *x).fold(f64::INFINITY, f64::min);
    let top = corners.iter().map(|(_, y)| *y).fold(f64::INFINITY, f64::min);
    let mut size = (0.0_f64, 0.0_f64);
    for ((_, plan), corner) in outlines.iter_mut().zip(corners) {
        let (x, y) = (corner.0 - left, corner.1 - top);
        size = (size.0.max(x + plan.size.0), size.1.max(y + plan.size.1));
        *plan = moved(plan, Affine::translate((x, y)));
    }
    let mut beside = labels::room_beside(editions, face(paper), piece, &outlines);
    if let Some(room) = beside.as_mut().filter(|_| !once && list::is_listed(paper, size, outlines.len())) {
        let sizes = editions.iter().filter(|edition| outlines.iter().any(|(size, _)| *size == edition.size()));
        let (wide, high) = list::room(sizes.map(|edition| edition.size_facts().name.as_str()), face(paper));
        *room = (room.0.max(wide), room.1 + high);
    }
    let gap = BESIDE * face(paper).beside;
    Loose { piece, outlines, size, beside, gap, number, once }
}

/// The patterns of lines in a nest, and the sizes that have each: the first size of every thing has the first.
fn key(editions: &[&Edition<'_>], loose: &[Loose]) -> Vec<(usize, String)> {
    let Some(first) = editions.first().filter(|_| loose.iter().any(|one| one.outlines.len() > 1 && !one.once)) else {
        return Vec::new();
    };
    let sizes = &first.draft.facts.sizes;
    let views = by_view(sizes);
    let nth = |nth: usize| -> Vec<usize> { views.iter().filter_map(|view| view.get(nth).copied()).collect() };
    let shown = |size: &usize| editions.iter().any(|edition| edition.size() == *size);
    let longest = views.iter().map(Vec::len).max().unwrap_or(0);
    let line = |at: usize| {
        let own: Vec<usize> = nth(at).into_iter().filter(shown).collect();
        (!own.is_empty()).then(|| (at, brief_sizes(sizes, &own)))
    };
    (0..longest).filter_map(line).collect()
}

fn settle(one: Loose, spot: Spot) -> PlacedPiece {
    // Words stand upright whichever way the piece is turned, so their room is only ever at the right.
    let place = if spot.turned {
        // A quarter clockwise about the corner, then back into view.
        Affine::translate((spot.x + one.size.1, spot.y)) * Affine::rotate(std::f64::consts::FRAC_PI_2)
    } else {
        Affine::translate((spot.x, spot.y))
    };
    let (width, height) = if spot.turned { (one.size.1, one.size.0) } else { one.size };
    let left = spot.x + width + one.gap;
    let beside = one.beside.map(|(wide, high)| Rect::new(left, spot.y, left + wide, spot.y + high));
    PlacedPiece {
        piece: one.piece,
        number: one.number,
        once: one.once,
        outlines: one.outlines.iter().map(|(size, plan)| (*size, moved(plan, place))).collect(),
        bounds: Rect::new(spot.x, spot.y, spot.x + width, spot.y + height),
        beside,
        turned: spot.turned,
    }
}

fn moved(plan: &Plan, place: Affine) -> Plan {
    Plan {
        piece: plan.piece,
        cutting: place * plan.cutting.clone(),
        stitching: place * plan.stitching.clone(),
        cut: place * plan.cut.clone(),
        sewn: place * plan.sewn.clone(),
        details: plan.details.iter().map(|detail| detail.moved(place)).collect(),
        fold: plan.fold.as_ref().map(|fold| place * fold.clone()),
        notches: plan.notches.iter().map(|notch| place * *notch).collect(),
        grain: plan.grain.map(|grain| place * grain),
        size: plan.size,
        origin: plan.origin,
    }
}
