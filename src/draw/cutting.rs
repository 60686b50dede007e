//! Pieces as they are cut: side by side at one scale, with their measurements.

use kurbo::{Affine, Point, Vec2};

use super::cloth::Face;
use super::desk::Desk;
use super::page::{Anchor, Page};
use super::part::Part;
use super::past::{copies, held};
use super::trace::{corners, open_line};
use crate::diag::in_sentence;
use crate::figure::numbers;
use crate::model::{Outline, Verb};
use crate::resolve::{CopyId, FabricId, PieceId, Shown};

/// What of the sheet's width a row of pieces leaves, in mm.
const BESIDE: f64 = 5.0;
/// What stays free between two rows, in mm.
const ROWS: f64 = 1.4;
/// How far a second copy stands out behind the first, in mm.
const COPY: f64 = 1.1;

/// Copies of one piece from one fabric.
struct Lot {
    piece: PieceId,
    fabric: Option<FabricId>,
    copies: Vec<CopyId>,
}

pub(super) fn draw<'a>(desk: &Desk<'a, '_>, scale: f64, measured: bool) -> Option<Page<'a>> {
    let whole = desk.sheet.width - BESIDE;
    let mut lots: Vec<Lot> = Vec::new();
    for work in desk.step.works.iter().filter(|work| work.verb == Verb::Cut) {
        for copy in copies(&held(work, desk.edition)) {
            let member = &desk.edition.cast[copy];
            match lots.iter_mut().find(|lot| (lot.piece, lot.fabric) == (member.piece, member.fabric)) {
                Some(lot) if !lot.copies.contains(&copy) => lot.copies.push(copy),
                Some(_) => {}
                None => lots.push(Lot { piece: member.piece, fabric: member.fabric, copies: vec![copy] }),
            }
        }
    }
    let mut page = Page::new(desk.ruler);
    let mut row = Page::new(desk.ruler);
    // What is cut from one pattern stands together.
    lots.sort_by_key(|lot| lot.piece);
    let mut room = whole;
    for (at, lot) in lots.iter().enumerate() {
        let first = !lots[..at].iter().any(|known| known.piece == lot.piece);
        // The fabric tells apart what is cut from one pattern.
        let fabrics = lots.iter().filter(|other| other.piece == lot.piece).count() > 1;
        let one = piece(desk, lot, fabrics, (first, first && measured), lots.len() == 1, scale)?;
        let kin = lots[at + 1..].iter().filter(|other| first && other.piece == lot.piece).count();
        let wanted = one.bounds().width() * (kin + 1) as f64;
        room -= one.bounds().width() + 4.0;
        let starts = row.bounds().width() > 0.0;
        if starts && (room < 0.0 || (wanted <= whole && row.bounds().width() + 4.0 + wanted > whole)) {
            room = whole - one.bounds().width();
            page.join(std::mem::replace(&mut row, Page::new(desk.ruler)), false, ROWS);
        }
        row.join(one, true, 4.0);
    }
    page.join(row, false, ROWS);
    Some(page)
}

fn piece<'a>(
    desk: &Desk<'a, '_>,
    lot: &Lot,
    fabrics: bool,
    (first, measured): (bool, bool),
    alone: bool,
    scale: f64,
) -> Option<Page<'a>> {
    let mut page = Page::new(desk.ruler);
    let facts = &desk.edition.draft.facts;
    let part = Part::copy(desk, lot.copies[0], Face::Right, scale)?;
    let class = desk.class(lot.copies[0], Face::Right);
    // A single piece is drawn by itself, so that nothing shows through its corners.
    let behind = if alone { 1 } else { lot.copies.len().min(3) };
    for behind in (1..behind).rev() {
        let shift = Vec2::new(COPY, -COPY) * behind as f64;
        page.path(class, Affine::translate(shift) * part.outline.clone());
    }
    let drawn = page.bounds();
    page.path(class, part.outline.clone());
    desk.quilting(&mut page, lot.copies[0], (&part.outline, part.bounds().center()), part.turn, scale);
    let (bounds, all) = (part.bounds(), page.bounds());
    let name = in_sentence(&facts.pieces[lot.piece].name.text);
    let fabric = lot.fabric.filter(|_| fabrics).map(|fabric| in_sentence(&facts.fabrics[fabric].name.text));
    let count = lot.copies.len().to_string();
    let (name, n) = (("name", name.as_str()), ("n", count.as_str()));
    let words = match (&fabric, first) {
        (None, _) => desk.say("draw_cut", &[name, n]),
        (Some(fabric), true) => desk.say("draw_cut_from", &[name, n, ("fabric", fabric)]),
        (Some(fabric), false) => desk.say("draw_cut_also", &[n, ("fabric", fabric)]),
    };
    let row = desk.edition.cuts.iter().find(|row| row.piece == lot.piece && row.fabric() == lot.fabric);
    let plain = matches!(facts.pieces[lot.piece].outline, Some(Outline::Rectangle { .. }));
    if let Some((width, height)) = row.and_then(|row| row.dimensions.as_ref()).filter(|_| measured && plain) {
        let top = all.y0.min(drawn.y0.min(bounds.y0)) - 1.8;
        page.dimension(
            Point::new(bounds.x0, top),
            Point::new(bounds.x1, top),
            &[numbers::spoken(width)],
            Vec2::new(0.0, -1.0),
        );
        let right = all.x1 + 2.2;
        let words = two_lines(height);
        page.dimension(Point::new(right, bounds.y0), Point::new(right, bounds.y1), &words, Vec2::new(1.0, 0.0));
    }
    if measured {
        corners_out(desk, &mut page, lot.piece, &part);
    }
    if alone {
        grain(desk, &mut page, lot.piece, &part);
    }
    page.name(&words, bounds);
    desk.nap_arrow(&mut page, &part);
    Some(page)
}

/// `20 cm (7⅞ in)` as two lines.
fn two_lines(figures: &Shown) -> Vec<String> {
    let one = |figures: Shown| numbers::spoken(&figures);
    let first = one(Shown { second: None, ..figures.clone() });
    match &figures.second {
        Some(second) => {
            vec![first, format!("({})", one(Shown { exact: figures.exact, first: second.clone(), second: None }))]
        }
        None => vec![first],
    }
}

/// Corners taken out of a rectangle: what is cut away, and how large it is.
fn corners_out(desk: &Desk<'_, '_>, page: &mut Page<'_>, piece: PieceId, part: &Part) {
    let Some(Outline::Rectangle { corners_out, .. }) = &desk.edition.draft.facts.pieces[piece].outline else { return };
    let bounds = part.bounds();
    for (place, across, down) in corners_out {
        let worked = |value: &crate::model::BySize| {
            value.get(desk.edition.size()).and_then(|formula| desk.edition.values.quiet(formula))
        };
        let (Some(across), Some(down)) = (worked(across), worked(down)) else { continue };
        let top = place.text == "top";
        for (side, out) in [("left", 1.0), ("right", -1.0)] {
            let edge = format!("{}_{side}_corner", place.text);
            let Some(rim) = part.rim(&edge) else { continue };
            // What the corner's two legs leave out of the rectangle.
            let legs: Vec<Point> = rim.lines.iter().flat_map(corners).collect();
            let [from, .., to] = legs[..] else { continue };
            let tip =
                Point::new(if out > 0.0 { bounds.x0 } else { bounds.x1 }, if top { bounds.y0 } else { bounds.y1 });
            page.path("cut-line", open_line(&[from, tip, to]));
            if out > 0.0 && !top {
                let inner = legs.iter().map(|point| point.x).fold(tip.x, f64::max);
                let y = bounds.y1 + 2.2;
                page.line("dimension", Point::new(bounds.x0, y), Point::new(inner, y));
                let size = desk.spoken(&across);
                let words = match across.quantity == down.quantity {
                    true => desk.say("draw_square", &[("length", &size)]),
                    false => desk.say("draw_by", &[("across", &size), ("down", &desk.spoken(&down))]),
                };
                page.label(&words, Point::new(bounds.x0, y + desk.ruler.type_size() + 0.9), Anchor::Start);
            }
        }
    }
}

/// The straight grain, where the piece has room for it.
fn grain(desk: &Desk<'_, '_>, page: &mut Page<'_>, piece: PieceId, part: &Part) {
    let bounds = part.bounds();
    let turn = match desk.edition.draft.facts.pieces[piece].grain.as_ref().map(|grain| grain.text.as_str()) {
        Some("vertical") => 0.0,
        Some("horizontal") => 90.0,
        _ => return,
    };
    if bounds.width() > 26.0 && bounds.height() > 18.0 {
        page.symbol("grain", Point::new(bounds.center().x, bounds.y0 + 8.0), 10.0, turn);
    }
}
