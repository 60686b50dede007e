//! What a fact is done to, as a maker reads it: sides told apart, the edges of one piece under its name.

use crate::book::seam::DoneTo;
use crate::model::Verb;
use crate::resolve::{Edition, EditionWork, Inside, Meant, Target};

/// What a fact is done to: the sides of a seam, or one list of all that it names.
pub(super) fn done_to(work: &EditionWork<'_>, edition: &Edition<'_>) -> Vec<Vec<DoneTo>> {
    let sides = work.sides();
    let in_rows = work.targets.iter().any(|target| target.row.is_some());
    let lie_on_each_other = work.verb == Verb::Sew || in_rows;
    let told = |side: &[&Target]| together(side, work.verb, edition);
    match lie_on_each_other {
        true => sides.iter().map(|side| told(side)).collect(),
        false => vec![told(&sides.concat())],
    }
}

/// The names of one side, each once; edges of one piece that follow each other stand under its name.
fn together(side: &[&Target], verb: Verb, edition: &Edition<'_>) -> Vec<DoneTo> {
    let mut told: Vec<(&Target, DoneTo)> = Vec::new();
    for target in side {
        let new = one(target, verb, edition);
        if told.iter().any(|(_, known)| *known == new) {
            continue;
        }
        match told.last_mut().filter(|(last, _)| is_part(last) && is_part(target) && last.owner == target.owner) {
            Some((first, known)) => add(known, first, target, &new),
            None => told.push((target, new)),
        }
    }
    let whole = |(first, mut known): (&Target, DoneTo)| {
        let edges_alone = side.iter().all(|one| one.owner != first.owner || matches!(one.meant, Meant::Edge(_)));
        let all = sides(first, edition).filter(|sides| edges_alone && *sides == known.parts.len());
        known.sides = all.unwrap_or(0);
        known
    };
    told.into_iter().map(whole).collect()
}

/// How many sides a piece has whose edge is meant: three and more, or there would be nothing to sum up.
fn sides(target: &Target, edition: &Edition<'_>) -> Option<usize> {
    let Meant::Edge(edge) = &target.meant else { return None };
    let sides = edition.values.shape(edge.owner.piece(&edition.cast))?.edges().len();
    (sides > 2).then_some(sides)
}

/// Whether it is a part of a piece whose two names do not say the same words.
fn is_part(target: &Target) -> bool {
    !target.part.is_empty() && target.spoken == format!("{} {}", target.owner, target.part)
}

fn one(target: &Target, verb: Verb, edition: &Edition<'_>) -> DoneTo {
    let plain = DoneTo { name: target.spoken.clone(), parts: Vec::new(), sides: 0, marks: Vec::new(), several: false };
    let Meant::Inside(owner, all) = &target.meant else { return plain };
    if !verb.counts() {
        return plain;
    }
    let marks = edition.values.marks(owner.piece(&edition.cast));
    let places = all.iter().filter_map(|one| match one {
        Inside::Mark(at) => marks.get(*at)?.as_ref().map(|mark| mark.places().len()),
        Inside::Dart(_) | Inside::Pleat(_) => None,
    });
    let several = places.sum::<usize>() > 1;
    DoneTo { name: target.owner.clone(), marks: vec![target.part.clone()], several, ..plain }
}

/// Adds another part of the same piece.
fn add(known: &mut DoneTo, first: &Target, target: &Target, new: &DoneTo) {
    if !known.marks.is_empty() && !new.marks.is_empty() {
        known.marks.extend(new.marks.iter().cloned());
        known.several = true;
        return;
    }
    if known.parts.is_empty() {
        known.parts.push(first.part.clone());
        known.name.clone_from(&first.owner);
    }
    // "hip and side edge": the word stands behind the last of them.
    if let Some(last) = known.parts.last_mut()
        && target.part.ends_with(EDGE)
        && let Some(short) = last.strip_suffix(EDGE)
    {
        *last = short.to_owned();
    }
    known.parts.push(target.part.clone());
}

/// How the name of an edge ends.
const EDGE: &str = " edge";
