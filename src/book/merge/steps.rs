//! Parts, steps and seam facts of all sizes, numbered anew.

use super::order::{alike, together};
use super::prose::{Row, blocks, inlines, picture};
use crate::book::amount::Value;
use crate::book::prose::Picture;
use crate::book::seam::{PlaceFact, SeamFact};
use crate::book::thing::{ThingDrawing, one_of_each};
use crate::book::volume::{AllowanceUse, Book, Part, Step};

/// Parts and steps of all sizes in the order of `parts:`.
pub(super) fn parts(books: &[Book]) -> Vec<Part> {
    let sizes: Vec<(usize, &[Part])> = books.iter().map(|book| (book.shown[0], book.parts.as_slice())).collect();
    let mut number = 0;
    together(&sizes, |part| part.id.as_str(), |part| part.at)
        .into_iter()
        .map(|group| {
            let steps: Vec<(usize, &[Step])> =
                group.own.iter().map(|(size, part)| (*size, part.steps.as_slice())).collect();
            let steps = together(&steps, |step| step.id.as_str(), |step| step.at);
            Part {
                id: group.first().id.clone(),
                at: group.first().at,
                sizes: group.first().sizes.clone(),
                offer: group.first().offer.clone(),
                state: part_state(books, &group.own),
                watch: group.first().watch,
                title: over(&group.own, |part| part.title.as_slice(), inlines),
                intro: over(&group.own, |part| part.intro.as_slice(), blocks),
                steps: steps
                    .into_iter()
                    .map(|group| {
                        number += 1;
                        step(&group.own, number)
                    })
                    .collect(),
            }
        })
        .collect()
}

/// The state at the end of a part, of each thing in one size.
fn part_state(books: &[Book], own: &[(usize, &Part)]) -> Vec<ThingDrawing> {
    let all: Vec<ThingDrawing> = own.iter().flat_map(|(_, part)| part.state.iter().cloned()).collect();
    one_of_each(&views(books), &all)
}

/// The sizes of each thing; none where there is one alone.
pub(super) fn views(books: &[Book]) -> Vec<Vec<usize>> {
    books.first().map_or_else(Vec::new, |book| book.views.iter().map(|view| view.sizes.clone()).collect())
}

/// A field of every size's thing, laid over one another.
fn over<'a, T, F: ?Sized + 'a, M>(
    own: &[(usize, &'a T)],
    field: impl Fn(&'a T) -> &'a F,
    merge: impl Fn(&[Row<'_, F>]) -> M,
) -> M {
    let sizes: Vec<[usize; 1]> = own.iter().map(|(size, _)| [*size]).collect();
    let rows: Vec<Row<'_, F>> =
        own.iter().zip(&sizes).map(|((_, thing), size)| (size.as_slice(), field(thing))).collect();
    merge(&rows)
}

fn step(own: &[(usize, &Step)], number: usize) -> Step {
    let first = own[0].1;
    let mut body = over(own, |step| step.body.as_slice(), blocks);
    let drawn: Vec<(usize, &Picture)> =
        own.iter().filter_map(|(size, step)| Some((*size, step.figure.as_ref()?))).collect();
    let figure = match drawn.is_empty() {
        true => None,
        false => over(&drawn, |picture| picture, picture),
    };
    // Sizes that open with different diagrams show them below one another.
    if figure.is_none() {
        body.splice(0..0, drawn.iter().map(|(_, picture)| crate::book::prose::Block::Figure((*picture).clone())));
    }
    Step {
        id: first.id.clone(),
        at: first.at,
        number,
        watch: first.watch,
        title: over(own, |step| step.title.as_slice(), inlines),
        body,
        figure,
        seam: seam(own),
        sizes: first.sizes.clone(),
        offer: first.offer.clone(),
    }
}

/// Facts that differ in their figures alone stand once; others say for which sizes they are.
fn seam(own: &[(usize, &Step)]) -> Vec<SeamFact> {
    let count = own[0].1.seam.len();
    let meet =
        |at: usize| own.iter().all(|(_, step)| step.seam.get(at).is_some_and(|fact| same(fact, &own[0].1.seam[at])));
    if own.iter().all(|(_, step)| step.seam.len() == count) && (0..count).all(meet) {
        return (0..count)
            .map(|at| fact(&own.iter().map(|(size, step)| (*size, &step.seam[at])).collect::<Vec<_>>()))
            .collect();
    }
    let facts: Vec<(Vec<usize>, Vec<SeamFact>)> =
        own.iter().map(|(size, step)| (vec![*size], step.seam.clone())).collect();
    alike(&facts)
        .into_iter()
        .flat_map(|(sizes, facts)| facts.into_iter().map(move |fact| SeamFact { sizes: sizes.clone(), ..fact }))
        .collect()
}

/// Whether two sizes' facts tell the same work.
fn same(one: &SeamFact, other: &SeamFact) -> bool {
    let given = |fact: &SeamFact| {
        [
            &fact.allowance,
            &fact.stitch,
            &fact.leave,
            &fact.ease,
            &fact.gather,
            &fact.lap,
            &fact.up,
            &fact.gap,
            &fact.count,
        ]
        .map(|value| value.is_some())
    };
    let places = |fact: &SeamFact| -> Vec<(String, String, String, bool)> {
        let words =
            |place: &PlaceFact| (place.role.clone(), place.point.clone(), place.from.clone(), place.far.is_some());
        fact.places.iter().map(words).collect()
    };
    (&one.verb, &one.what, &one.words, one.by_hand, one.note.is_empty(), given(one))
        == (&other.verb, &other.what, &other.words, other.by_hand, other.note.is_empty(), given(other))
        && (&one.finish, &one.leave_for, &one.caught, places(one), &one.together, one.ends_in, &one.around)
            == (
                &other.finish,
                &other.leave_for,
                &other.caught,
                places(other),
                &other.together,
                other.ends_in,
                &other.around,
            )
}

fn fact(own: &[(usize, &SeamFact)]) -> SeamFact {
    let value = |of: &dyn Fn(&SeamFact) -> Option<&Value>| {
        let sizes: Vec<[usize; 1]> = own.iter().map(|(size, _)| [*size]).collect();
        let rows: Option<Vec<(&[usize], &Value)>> =
            own.iter().zip(&sizes).map(|((_, fact), size)| Some((size.as_slice(), of(fact)?))).collect();
        rows.map(|rows| Value::merge(&rows))
    };
    let places = own[0]
        .1
        .places
        .iter()
        .enumerate()
        .map(|(at, place)| PlaceFact { far: value(&|fact| fact.places.get(at)?.far.as_ref()), ..place.clone() });
    let places = places.collect();
    SeamFact {
        allowance: value(&|fact| fact.allowance.as_ref()),
        stitch: value(&|fact| fact.stitch.as_ref()),
        leave: value(&|fact| fact.leave.as_ref()),
        ease: value(&|fact| fact.ease.as_ref()),
        gather: value(&|fact| fact.gather.as_ref()),
        count: value(&|fact| fact.count.as_ref()),
        lap: value(&|fact| fact.lap.as_ref()),
        up: value(&|fact| fact.up.as_ref()),
        gap: value(&|fact| fact.gap.as_ref()),
        places,
        note: over(own, |fact| fact.note.as_slice(), blocks),
        ..own[0].1.clone()
    }
}

/// The seam allowances of all sizes, narrowest first; the same one stands once, with the steps and the
/// sizes that use it.
pub(super) fn allowances(books: &[Book], parts: &[Part]) -> Vec<AllowanceUse> {
    let mut found: Vec<AllowanceUse> = Vec::new();
    for entry in books.iter().flat_map(|book| &book.allowances) {
        match found.iter_mut().find(|known| known.value == entry.value) {
            Some(known) => {
                known.sizes.extend(&entry.sizes);
                known.steps.extend(entry.steps.iter().cloned());
            }
            None => found.push(entry.clone()),
        }
    }
    let order: Vec<&str> = parts.iter().flat_map(|part| &part.steps).map(|step| step.id.as_str()).collect();
    for entry in &mut found {
        entry.steps.sort_by_key(|id| order.iter().position(|known| known == id));
        entry.steps.dedup();
    }
    found
}
