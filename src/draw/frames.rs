//! A step of several works that are not alike: one numbered frame for each, in reading order, at one scale.

use super::desk::Desk;
use super::fits::{Drawn, SCALES};
use super::page::{ABOVE, Anchor, BESIDE, Page, Sheet};
use super::past::{Past, Seam};
use crate::model::Verb;
use crate::resolve::{EditionStep, EditionWork, Touched};

/// Verbs that get a frame of their own beside the leading one; pressing, pinning and marking go with what follows.
const FRAMED: [Verb; 19] = [
    Verb::Sew,
    Verb::Fuse,
    Verb::Bind,
    Verb::Hem,
    Verb::Dart,
    Verb::Gather,
    Verb::Topstitch,
    Verb::Edgestitch,
    Verb::Understitch,
    Verb::Staystitch,
    Verb::Boxstitch,
    Verb::Baste,
    Verb::Fold,
    Verb::Turn,
    Verb::Close,
    Verb::Trim,
    Verb::Grade,
    Verb::Clip,
    Verb::Stuff,
];

/// How large the largest shape of each frame is at least, in mm on paper.
const READ: f64 = 14.0;
/// What stays free between frames, in mm.
const GAP: f64 = 5.0;

/// What one frame shows: the step as far as it is about one verb, and what was done before that.
pub(super) struct Frame<'e> {
    verb: Verb,
    step: EditionStep<'e>,
    past: Past,
}

/// The frames of a step, in the order of its work; none where one drawing shows it.
pub(super) fn split<'e>(desk: &Desk<'_, 'e>, leading: Verb) -> Vec<Frame<'e>> {
    let works = &desk.step.works;
    let mut verbs: Vec<Verb> = Vec::new();
    for work in works.iter().filter(|work| work.verb == leading || is_shown(work, works)) {
        if !verbs.contains(&work.verb) {
            verbs.push(work.verb);
        }
    }
    if verbs.len() < 2 {
        return Vec::new();
    }
    let group = |verb: Verb| (0..works.len()).filter(|at| works[*at].verb == verb).collect::<Vec<_>>();
    verbs.into_iter().map(|verb| frame(desk, &group(verb))).collect()
}

/// The frames of a step whose facts of one verb are not of one sort, in the order of its work: what can be shown together
/// stands in one. None where one of them cannot be drawn, since the step would seem to be less than it is.
pub(super) fn apart<'e>(desk: &Desk<'_, 'e>) -> Vec<Frame<'e>> {
    let works = &desk.step.works;
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (at, work) in works.iter().enumerate().filter(|(_, work)| is_work(work, works)) {
        if let Some(last) = groups.last_mut().filter(|last| works[last[0]].verb == work.verb) {
            let joined: Vec<usize> = last.iter().copied().chain([at]).collect();
            if frame(desk, &joined).is_drawn(desk) {
                *last = joined;
                continue;
            }
        }
        groups.push(vec![at]);
    }
    let frames: Vec<Frame<'e>> = groups.iter().map(|group| frame(desk, group)).collect();
    if frames.iter().all(|frame| frame.is_drawn(desk)) { frames } else { Vec::new() }
}

/// Whether a work must be shown by itself where each is.
fn is_work(work: &EditionWork<'_>, works: &[EditionWork<'_>]) -> bool {
    match work.verb {
        Verb::Fold | Verb::Turn | Verb::Clip => is_shown(work, works),
        verb => !matches!(verb, Verb::Press | Verb::Pin | Verb::Mark | Verb::Put | Verb::Open),
    }
}

/// Whether a work changes what is seen, so that it wants a frame.
fn is_shown(work: &EditionWork<'_>, works: &[EditionWork<'_>]) -> bool {
    let after = || works.iter().skip_while(|other| !std::ptr::eq(*other, work)).skip(1);
    match work.verb {
        // Whole pieces that are folded are drawn in frames already; a turning that ends at a hem or a binding is that.
        Verb::Fold => {
            let edges = work.touched().all(|touched| matches!(touched, Touched::Edge(..)));
            let ends = |other: &EditionWork<'_>| {
                matches!(other.verb, Verb::Hem | Verb::Topstitch | Verb::Edgestitch | Verb::Bind)
                    && other.touched().any(|touched| work.touched().any(|own| own == touched))
            };
            edges && !works.iter().any(ends)
        }
        // What is turned before it is stitched is drawn as it is turned; a facing goes to the inside by itself.
        Verb::Turn => {
            let aside = work.work.words.iter().any(|words| words.text.contains("inside"));
            !aside && !after().any(|other| other.verb.stitches() && other.verb != Verb::Close)
        }
        // What is trimmed at the same edges shows their snips, too.
        Verb::Clip => !works.iter().any(|other| {
            matches!(other.verb, Verb::Trim | Verb::Grade)
                && work.touched().all(|own| other.touched().any(|touched| own == touched))
        }),
        verb => FRAMED.contains(&verb),
    }
}

/// A frame for some works of one verb, by their places in the step.
fn frame<'e>(desk: &Desk<'_, 'e>, group: &[usize]) -> Frame<'e> {
    let (step, works) = (desk.step, &desk.step.works);
    let first = group.first().copied().unwrap_or(0);
    let verb = works[first].verb;
    let mut past = desk.past.clone();
    for (at, work) in works.iter().enumerate().take(first) {
        if work.verb == Verb::Sew {
            let sewn = past.now.iter().filter(|seam| seam.work == at).cloned();
            past.seams.extend(sewn.collect::<Vec<_>>());
        } else if work.verb != Verb::Turn {
            past.note(work, step.number, desk.edition);
        }
    }
    // What was folded before lies folded already.
    let is_kept = |at: usize| match works[at].verb {
        own if own == verb => group.contains(&at),
        Verb::Fold => at > first || is_shown(&works[at], works),
        _ => true,
    };
    let kept: Vec<usize> = (0..works.len()).filter(|at| is_kept(*at)).collect();
    let seams = std::mem::take(&mut past.now).into_iter();
    let moved = seams.filter_map(|seam| Some(Seam { work: kept.iter().position(|at| *at == seam.work)?, ..seam }));
    past.now = moved.collect();
    let step = EditionStep {
        step: step.step,
        number: step.number,
        title: Vec::new(),
        body: Vec::new(),
        figure: None,
        works: kept.into_iter().map(|at| works[at].clone()).collect(),
    };
    Frame { verb, step, past }
}

/// The frames as large as a sheet holds them, at no smaller a scale than 1 to `most`; `None` where fewer than two can be
/// drawn, or none large enough.
pub(super) fn draw<'e>(desk: &Desk<'_, 'e>, frames: &[Frame<'e>], most: u32) -> Option<Drawn> {
    let shown: Vec<&Frame<'e>> = frames.iter().filter(|frame| frame.is_drawn(desk)).collect();
    if shown.len() < 2 {
        return None;
    }
    [BESIDE, ABOVE].into_iter().find_map(|sheet| largest(desk, &shown, sheet, most))
}

fn largest<'e>(desk: &Desk<'_, 'e>, frames: &[&Frame<'e>], sheet: Sheet, most: u32) -> Option<Drawn> {
    let ways = SCALES.iter().filter(|scale| **scale <= most).flat_map(|scale| [(*scale, true), (*scale, false)]);
    ways.into_iter().find_map(|(scale, way)| {
        let mut reach = f64::MAX;
        let mut drawings = Vec::new();
        for (at, frame) in frames.iter().enumerate() {
            let own = frame.desk(desk, sheet);
            let page = own.page(frame.verb, f64::from(scale), way).ok()??;
            reach = reach.min(page.reach());
            drawings.push(numbered(page, at + 1, sheet)?);
        }
        let page = Page::flowed(desk.ruler, drawings, true, GAP, sheet);
        let svg = page.finish(scale, sheet).filter(|_| reach >= READ || scale == 1)?;
        Some(Drawn { svg, scale, reach })
    })
}

/// A frame with its captions below it and its number before it.
pub(super) fn numbered(mut page: Page<'_>, number: usize, sheet: Sheet) -> Option<Page<'_>> {
    // The number stands at the drawing, not at the words below it, which may be wider.
    let bounds = page.bounds();
    page.set_captions(bounds.width().max(sheet.width / 2.2))?;
    let at = kurbo::Point::new(bounds.x0 - 1.4, bounds.y0 + page.ruler.type_size());
    page.label(&number.to_string(), at, Anchor::End);
    Some(page)
}

impl<'e> Frame<'e> {
    fn desk<'b>(&'b self, desk: &Desk<'b, 'e>, sheet: Sheet) -> Desk<'b, 'e> {
        Desk {
            edition: desk.edition,
            step: &self.step,
            past: self.past.clone(),
            cloths: desk.cloths.clone(),
            ruler: desk.ruler,
            sheet,
        }
    }

    /// Whether the frame can be drawn by itself.
    fn is_drawn(&self, desk: &Desk<'_, 'e>) -> bool {
        let own = self.desk(desk, BESIDE);
        let drawn = || own.page(self.verb, 10.0, true);
        own.is_drawable(self.verb).is_ok() && matches!(drawn(), Ok(Some(_)))
    }
}
