//! A strap, a loop or a tie is cut and worked on, and nothing ever holds it to anything.
//!
//! ## Why it matters
//! A tie whose ends are meant to stay raw needs no seam at its ends, so that the seam that should have held it is easily
//! forgotten: the maker has it left over, or sews it on where she thinks best.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   tape: {kind: tape, name: Cotton tape, width: 2 cm, cut: {tie: {length: 40 cm, count: 1, raw: [start, end]}}}
//! ```
//! ````md
//! ## Fold the tie {#tie}
//!
//! ```work
//! - cut: tie
//! - fold: [tie, end to end]
//! ```
//!
//! Cut the tie and fold it in half.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   tape: {kind: tape, name: Cotton tape, width: 2 cm, cut: {tie: {length: 40 cm, count: 1, raw: [start, end]}}}
//! ```
//! ````md
//! ## Fold the tie {#tie}
//!
//! ```work
//! - cut: tie
//! - fold: [tie, end to end]
//! - attach: [tie, front]
//! ```
//!
//! Cut the tie, fold it in half, and sew its fold on by hand.
//! ````
//!
//! ## Limits
//! Looks at copies of which another one is sewn on, or that a step for other sizes works with; and at lengths of tape, webbing
//! and elastic, and at pieces at least four times as long as they are wide whose ends may stay raw, and nothing else of them. Whatever sews, bastes, binds, attaches, fastens or inserts it with something else counts, and so does
//! what catches it; a row of stitches on the strip alone does not. A copy that no work names, and one whose edges are told
//! to be raw, is left to those findings, and a pattern of one piece is left alone.
//! A piece twice as long as wide or more is told too where its last fold is held by no stitch: a loop that was never sewn in.

use std::collections::BTreeSet;

use super::judge::Judge;
use super::left_out::step_of_others;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionWork, Meant, Target, Touched};
use crate::source::Span;

/// How much longer than wide a piece is that can be a strap, a loop or a tie (common practice, no source).
const LONG: f64 = 4.0;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("never-attached", Group::Work, include_str!("never_attached.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at the work of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let works = || edition.steps().flat_map(|step| &step.works);
    let named = |copy: CopyId| {
        let others = works().filter(|work| work.verb != Verb::Cut);
        others.flat_map(copies).any(|own| own == copy)
    };
    let layers = layers(edition);
    let lays =
        |work: &EditionWork<'_>| matches!(work.verb, Verb::Fuse) && copies(work).any(|copy| layers.contains(&copy));
    let attached: BTreeSet<CopyId> = works().filter(|work| holds(work) && !lays(work)).flat_map(copies).collect();
    let mut told = BTreeSet::new();
    for (copy, member) in edition.cast.copies() {
        let alone = edition.cast.copies().all(|(_, other)| other.piece == member.piece);
        let idle = attached.contains(&copy) || layers.contains(&copy) || !named(copy);
        if alone || idle || is_told(history, &member.name) {
            continue;
        }
        let Some(missed) = missed(edition, copy) else { continue };
        if told.insert((member.piece, member.name.clone())) {
            let piece = edition.draft.facts.pieces[member.piece].id.span;
            let (at, finding) = match missed {
                Missed::Nowhere => (piece, "nothing holds it to anything"),
                Missed::Fellow(at) => (at, "nothing holds it to anything; its like is sewn on here"),
                Missed::OthersStep(at) => (at, "nothing holds it to anything; this step does, and is for other sizes"),
                Missed::Folded(at) => (at, "nothing holds it to anything: this fold is the last that is done with it"),
            };
            let finding = CHECK.at(at, format!("`{}` is cut and worked on, and {finding}", member.name)).hint(format!(
                "sew, baste or attach it in a step, such as `- attach: [{}, front]`, or name it under `catch:` of a seam",
                member.name
            ));
            let finding = if at == piece { finding } else { finding.note(piece, "its piece") };
            findings.push(finding.in_size(edition.size(), ""));
        }
    }
}

/// Why a piece counts as forgotten.
enum Missed {
    /// It is a strap, a loop or a tie.
    Nowhere,
    /// Another copy of it is sewn on, there.
    Fellow(Span),
    /// A step does something with it that is for other sizes; its heading.
    OthersStep(Span),
    /// It is folded, and nothing holds the fold.
    Folded(Span),
}

/// Why a copy that nothing holds is one that something should hold; `None` where it may lie loose.
fn missed(edition: &Edition<'_>, copy: CopyId) -> Option<Missed> {
    let own = &edition.cast[copy];
    let fellow = |other: &CopyId| {
        let member = &edition.cast[*other];
        *other != copy && (member.piece, member.fabric) == (own.piece, own.fabric)
    };
    // A button on its like joins that to nothing.
    let several = |work: &EditionWork<'_>| copies(work).collect::<BTreeSet<_>>().len() > 1 || !work.caught.is_empty();
    let sewn_on = |work: &&EditionWork<'_>| {
        several(work) && holds(work) && work.verb.lasts() && copies(work).any(|other| fellow(&other))
    };
    let mut works = edition.steps().flat_map(|step| &step.works);
    if let Some(work) = works.find(sewn_on) {
        return Some(Missed::Fellow(work.work.verb_span));
    }
    let named = |name: &str| name == own.name;
    let others = step_of_others(edition, &named).map(Missed::OthersStep);
    let strip = || is_strip(edition, copy).then_some(Missed::Nowhere);
    others.or_else(strip).or_else(|| folded_strip(edition, copy).map(Missed::Folded))
}

/// The copies of an interfacing and the like, which are only fused to another copy of their own piece.
fn layers(edition: &Edition<'_>) -> BTreeSet<CopyId> {
    let works = || edition.steps().flat_map(|step| &step.works);
    let mut found = BTreeSet::new();
    for work in works().filter(|work| work.verb == Verb::Fuse) {
        let own: Vec<CopyId> = copies(work).collect();
        let [one, two] = own[..] else { continue };
        if edition.cast[one].piece != edition.cast[two].piece {
            continue;
        }
        let only_fused = |copy: &CopyId| {
            let others = works().filter(|work| !matches!(work.verb, Verb::Cut | Verb::Fuse | Verb::Press | Verb::Trim));
            !others.flat_map(copies).any(|other| other == *copy)
        };
        let flat: Vec<CopyId> = [one, two].into_iter().filter(only_fused).collect();
        // Where nothing is done to either, the one is as much the layer as the other.
        found.extend((flat.len() == 1).then(|| flat[0]));
    }
    found
}

/// The last fold of a piece at least twice as long as wide, which no stitch holds, and whose ends no work names: it was made
/// to be taken in by something.
fn folded_strip(edition: &Edition<'_>, copy: CopyId) -> Option<Span> {
    let (wide, high) = edition.values.whole(edition.cast[copy].piece)?.box_size();
    let (long, short) = (wide.max(high), wide.min(high));
    let all = edition.steps().flat_map(|step| &step.works);
    let works: Vec<&EditionWork<'_>> =
        all.filter(|work| work.verb != Verb::Cut && copies(work).any(|own| own == copy)).collect();
    let whole = |work: &EditionWork<'_>| work.touched().any(|touched| touched == Touched::Copy(copy));
    let last = works.iter().rposition(|work| work.verb == Verb::Fold && whole(work))?;
    let held = works[last..].iter().any(|work| work.verb.stitches());
    let is_end = |edge| edition.edge(copy, edge).is_some_and(|edge| edge.cut_length <= short * 1.1);
    let ends = works.iter().flat_map(|work| work.touched()).any(|touched| match touched {
        Touched::Edge(own, edge) => own == copy && is_end(edge),
        _ => false,
    });
    (!held && !ends && long >= 2.0 * short).then_some(works[last].work.verb_span)
}

/// The copies that a fact names.
fn copies<'a>(work: &'a EditionWork<'_>) -> impl Iterator<Item = CopyId> + 'a {
    work.named().flat_map(|target| &target.touched).filter_map(Touched::copy)
}

/// Whether a fact holds what it names together, or to a notion. What cannot be told is taken for it.
fn holds(work: &EditionWork<'_>) -> bool {
    let several = copies(work).collect::<BTreeSet<_>>().len() > 1;
    let notion = work.targets.iter().any(|target| target.notion().is_some());
    let open = !work.work.words.is_empty() || work.touched().any(|touched| touched == Touched::Unknown);
    let whole = work.targets.iter().any(|target| matches!(target.meant, Meant::Whole(_)));
    if !work.caught.is_empty() {
        return true;
    }
    match work.verb {
        Verb::Sew
        | Verb::Baste
        | Verb::Bind
        | Verb::Attach
        | Verb::Lap
        | Verb::Insert
        | Verb::Button
        | Verb::Fasten => several || notion || open,
        Verb::Applique | Verb::Boxstitch | Verb::Quilt | Verb::Fuse | Verb::Box | Verb::Stuff | Verb::Close => {
            several || notion
        }
        // Edges in a list are each stitched by themselves, and so are the copies of one piece.
        Verb::Topstitch | Verb::Edgestitch => several && whole && !is_a_list(work),
        _ => false,
    }
}

/// Whether a fact names whole copies alone, several of them of one piece.
fn is_a_list(work: &EditionWork<'_>) -> bool {
    let owner = |target: &Target| match target.meant {
        Meant::Whole(_) => target.name.text.clone(),
        _ => String::new(),
    };
    let whole = work.targets.iter().all(|target| !owner(target).is_empty());
    whole && work.targets.len() > 3
}

/// Whether a copy is of tape, or as long and narrow as a strap and meant to stay raw somewhere.
fn is_strip(edition: &Edition<'_>, copy: CopyId) -> bool {
    let piece = edition.cast[copy].piece;
    let facts = &edition.draft.facts.pieces[piece];
    let Some(shape) = edition.values.whole(piece) else { return false };
    let (wide, high) = shape.box_size();
    let is_end = |word: &str| shape.edge(word).is_some_and(|edge| edge.cut_length * LONG <= wide.max(high));
    let ends = !facts.raw.is_empty() && facts.raw.iter().all(|edge| is_end(&edge.text));
    facts.tape.is_some() || ends && wide.max(high) >= LONG * wide.min(high)
}

/// Whether an edge of a copy is told to stay raw.
fn is_told(history: &History, name: &str) -> bool {
    let of = |edge: &str| edge.split('.').next() == Some(name);
    history
        .faults
        .iter()
        .any(|fault| matches!(fault, Fault::EdgesRaw { edges, .. } if edges.iter().any(|(_, edge)| of(edge))))
}
