//! The steps, each with its words, its work and its pictures in every size.

use std::collections::BTreeMap;

use super::evidence::Evidence;
use super::passages::Reader;
use super::pictures;
use super::sentences::{BySize, sentences, tellings};
use super::sheet::StepSheet;
use super::work::{InSize, edges, work};
use crate::book::Book;
use crate::model::{Part, Step};
use crate::resolve::Edition;

/// Every step that some size has; its pictures go into `files`.
pub(super) fn steps(evidence: &Evidence<'_>, files: &mut BTreeMap<String, Vec<u8>>) -> Vec<StepSheet> {
    let ids = evidence.ids();
    let mut sheets = Vec::new();
    for (part_at, part) in evidence.draft.parts.iter().enumerate() {
        for (step_at, step) in part.steps.iter().enumerate() {
            let sized = in_sizes(evidence, part, step, (part_at, step_at));
            if sized.iter().all(Option::is_none) {
                continue;
            }
            sheets.push(sheet(evidence, (part, step), ids.step(part_at, step_at), &sized, files));
        }
    }
    sheets
}

/// A step in each size; `None` where a size does not have it.
fn in_sizes<'b>(
    evidence: &'b Evidence<'_>,
    part: &Part,
    step: &Step,
    (part_at, step_at): (usize, usize),
) -> Vec<Option<InSize<'b>>> {
    let own = |(edition, book): (&'b Edition<'b>, &'b Book)| {
        let part = edition.parts.iter().find(|own| std::ptr::eq(own.part, part))?;
        let step = part.steps.iter().find(|own| std::ptr::eq(own.step, step))?;
        let told = book.parts.iter().find(|part| part.at == part_at)?.steps.iter().find(|step| step.at == step_at);
        Some(InSize { edition, part, step, seam: told.map_or(&[], |step| step.seam.as_slice()) })
    };
    let mut sized = vec![None; evidence.count()];
    for (edition, book) in evidence.editions.iter().zip(evidence.books) {
        if let Some(place) = sized.get_mut(edition.size()) {
            *place = own((edition, book));
        }
    }
    sized
}

fn sheet(
    evidence: &Evidence<'_>,
    (part, step): (&Part, &Step),
    id: &str,
    sized: &[Option<InSize<'_>>],
    files: &mut BTreeMap<String, Vec<u8>>,
) -> StepSheet {
    let read = |own: &InSize<'_>| {
        let mut reader = Reader::new(evidence, own.edition, own.scope());
        reader.step(own.step);
        reader.passages()
    };
    let by_size: BySize = sized.iter().map(|own| own.as_ref().map(read)).collect();
    let has: Vec<usize> = (0..sized.len()).filter(|size| sized[*size].is_some()).collect();
    let mut found = sentences(evidence, &by_size);
    found.extend(pictures::labels(evidence, step, sized));
    let told = evidence.all.parts.iter().flat_map(|part| part.steps.iter().map(move |step| (part, step)));
    let told = told.into_iter().find(|(_, step)| step.id == id);
    let plain = evidence.plain();
    let work = work(evidence, step, sized);
    StepSheet {
        id: id.to_owned(),
        number: told.map_or_else(|| first_number(sized), |(_, step)| step.number),
        part: told.map_or_else(|| evidence.sources.text(part.span).to_owned(), |(part, _)| plain.inlines(&part.title)),
        title: told.map_or_else(|| evidence.sources.text(step.span).to_owned(), |(_, step)| plain.inlines(&step.title)),
        place: evidence.place(step.span),
        sizes: evidence.sizes(&has),
        words: tellings(evidence, &by_size),
        figures: work.iter().any(|work| !work.rows.is_empty()),
        work,
        edges: edges(evidence, step, sized),
        pictures: pictures::pictures(evidence, id, sized, files),
        sentences: found,
    }
}

fn first_number(sized: &[Option<InSize<'_>>]) -> usize {
    sized.iter().flatten().map(|own| own.step.number).next().unwrap_or(0)
}
