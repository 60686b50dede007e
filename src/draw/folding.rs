//! A whole piece folded up, fold by fold: where each crease lies, what is brought over it, and what comes of it.

use kurbo::{BezPath, Point, Rect, Vec2};

use super::cloth::Face;
use super::desk::{Desk, Undrawn};
use super::lies::Fold;
use super::page::{Anchor, Page};
use super::part::Part;
use super::past::folded;
use super::told::words_of;
use super::trace::open_line;
use crate::resolve::{CopyId, EditionWork};

/// Draws the folds of one copy, in the order of the step, each under its number; with how many there are.
pub(super) fn draw<'a>(
    desk: &Desk<'a, '_>,
    copy: CopyId,
    works: &[&EditionWork<'_>],
    scale: f64,
) -> Result<Option<(Page<'a>, usize)>, Undrawn> {
    let mut page = Page::new(desk.ruler);
    let mut lies = desk.past.lies(copy);
    let mut frames = Vec::new();
    for work in works {
        let Some(fold) = folded(work, copy, desk.edition) else {
            return Err(Undrawn::unclear("nothing says which way the piece is folded, and how far"));
        };
        for (fold, words) in stages(fold, words_of(work)) {
            let Some(part) = Part::lying(desk, copy, Face::Right, scale, &lies) else { return Ok(None) };
            let mut frame = Page::new(desk.ruler);
            desk.paint(&mut frame, &part, Vec2::ZERO, scale);
            // A crease that is opened again is folded as any other first.
            let opened = Fold::told(&words.replace("open", ""), size(part.bounds())).unwrap_or(fold);
            creases(&mut frame, part.bounds(), opened, &words);
            lies.folds = lies.folds.after(fold);
            frames.push((frame, part.bounds()));
        }
    }
    let Some(part) = Part::lying(desk, copy, Face::Right, scale, &lies) else { return Ok(None) };
    let mut last = Page::new(desk.ruler);
    desk.paint(&mut last, &part, Vec2::ZERO, scale);
    frames.push((last, part.bounds()));
    let beside = frames[0].1.height() > frames[0].1.width();
    let count = frames.len();
    for (at, (mut frame, bounds)) in frames.into_iter().enumerate() {
        let size = desk.ruler.type_size();
        let number = (at + 1).to_string();
        match beside {
            true => frame.label(&number, Point::new(bounds.center().x, bounds.y0 - 2.0), Anchor::Middle),
            false => frame.label(&number, Point::new(bounds.x0 - 3.0, bounds.center().y + size * 0.35), Anchor::End),
        }
        if at + 1 == count {
            frame.name(&desk.name(copy), bounds);
        }
        page.join(frame, beside, 3.0);
    }
    Ok(Some((page, count)))
}

/// The folds that one is made of, each with the words for it: a strip is folded into four by a crease along its middle, both
/// edges to that, and the crease again (common practice, no source).
fn stages(fold: Fold, words: String) -> Vec<(Fold, String)> {
    let told = |fold: Fold, words: &str| (fold, words.to_owned());
    match fold {
        Fold::Along(share) if share == FOUR => vec![
            told(Fold::Opened, "in half lengthwise and open"),
            told(Fold::Along(0.5), "long edges to the crease"),
            told(Fold::Along(0.5), "in half lengthwise"),
        ],
        Fold::Across(share) if share == FOUR => {
            vec![told(Fold::Across(0.5), "in half crosswise"), told(Fold::Across(0.5), "in half crosswise")]
        }
        fold => vec![(fold, words)],
    }
}

/// What is left of a side that is folded into four.
const FOUR: f64 = 0.25;

fn size(bounds: Rect) -> (f64, f64) {
    (bounds.width(), bounds.height())
}

/// The creases of one fold, with what is brought over them.
fn creases(page: &mut Page<'_>, bounds: Rect, fold: Fold, words: &str) {
    let wide = bounds.width() >= bounds.height();
    let (share, level) = match fold {
        Fold::Along(share) => (share, wide),
        Fold::Across(share) => (share, !wide),
        Fold::Opened => (0.5, wide),
    };
    let both = ["to the crease", "to the middle", "to the cent"].iter().any(|to| words.contains(to));
    let parts = if both { 4 } else { (1.0 / share).round() as usize };
    let at = |along: f64, across: f64| match level {
        true => Point::new(bounds.x0 + bounds.width() * along, bounds.y0 + bounds.height() * across),
        false => Point::new(bounds.x0 + bounds.width() * across, bounds.y0 + bounds.height() * along),
    };
    for part in (1..parts).filter(|part| !both || *part != 2) {
        let across = part as f64 / parts as f64;
        page.path("fold", open_line(&[at(0.0, across), at(1.0, across)]));
    }
    if both {
        over(page, at(0.88, 0.0), at(0.88, 0.46), level);
        over(page, at(0.88, 1.0), at(0.88, 0.54), level);
    } else {
        over(page, at(0.88, 0.92), at(0.88, 0.92 - 1.84 / parts as f64), level);
    }
}

/// An arrow that brings cloth over a crease.
fn over(page: &mut Page<'_>, from: Point, to: Point, level: bool) {
    let high = (to - from).hypot() * 0.45;
    let lift = if level { Vec2::new(high.max(2.0), 0.0) } else { Vec2::new(0.0, -high.max(2.0)) };
    let mut arrow = BezPath::new();
    arrow.move_to(from);
    arrow.curve_to(from + lift, to + lift, to);
    page.path("arrow", arrow);
}
