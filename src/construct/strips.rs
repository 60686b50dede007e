//! Strips that bind: whether they are as long as what they go round, and closed where that is a ring.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::fault::Fault;
use super::lengths::TOLERANCE;
use super::player::{Player, edges};
use super::state::{BOUND, Binding, Seam};
use super::wrapped;
use crate::measure::to_f64;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// What is turned in at an end where the strip states no allowance there, in mm (common practice, no source).
const END: f64 = 10.0;

/// How much longer a strip may be than what it binds: a share, and mm beside (common practice, no source).
const SPARE: (f64, f64) = (1.15, 100.0);

/// Takes down which strips bind which edges: strips are named whole, the edges by name.
pub(super) fn bind(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let whole = deed.targets.iter().filter_map(|target| match target {
        Touched::Copy(copy) => Some(*copy),
        _ => None,
    });
    let strips: BTreeSet<CopyId> = whole.collect();
    let Some(strip) = strips.first().copied().filter(|_| deed.work.part.iter().all(Option::is_none)) else { return };
    let bound = bound_once(player, deed);
    if bound.is_empty() {
        return;
    }
    let ends = strips.iter().map(|strip| folded_ends(player, *strip, deed.moment.step)).sum::<usize>();
    let ends = if deed.work.work.ends_in { ends.max(2) } else { ends };
    let turned = ends as f64 * turned_in(player, strip);
    let heaps = heaps(player, deed, &bound);
    let needed = in_piles(player, &heaps);
    let mut alike: Vec<f64> = Vec::new();
    for (_, length) in &heaps {
        if !alike.iter().any(|known| (known - length).abs() <= TOLERANCE) {
            alike.push(*length);
        }
    }
    let laid = alike.iter().sum();
    let edges: Vec<Of> = bound.iter().map(|(of, _)| *of).collect();
    let round = goes_round(player, &edges);
    player.state.bindings.push(Binding { strips, needed, laid, turned, round, bound: deed.moment });
}

/// The edges that are bound and how much of each is covered, in mm: of those that lie on each other, one. These are the
/// edges of one seam, layers that count as one, and edges that are named as one and follow each other nowhere.
fn bound_once(player: &Player<'_>, deed: &Deed<'_, '_>) -> Vec<(Of, f64)> {
    let mut bound: Vec<(Option<usize>, Of, f64)> = Vec::new();
    for side in deed.sides() {
        for (at, (copy, edge)) in side.iter().enumerate() {
            let seam = player.state.known_edge(*copy, *edge).and_then(|known| known.seams.last().copied());
            let length = covered(player, *copy, *edge, seam.is_none());
            let layers = player.lying_on((*copy, *edge));
            let on_other = |other: &Of| {
                let alike = (player.drawn_length(&[*other]) - player.drawn_length(&[(*copy, *edge)])).abs();
                alike <= TOLERANCE && player.meetings((*copy, *edge), *other).is_empty()
            };
            let lies = side[..at].iter().any(on_other);
            let same = |(known, of, _): &&mut (Option<usize>, Of, f64)| {
                (known.is_some() && *known == seam && !only_strips(player, seam, deed))
                    || layers.contains(of)
                    || (lies && side[..at].contains(of) && on_other(of))
            };
            match bound.iter_mut().find(same) {
                Some((_, _, known)) => *known = known.max(length),
                None => bound.push((seam, (*copy, *edge), length)),
            }
        }
    }
    bound.into_iter().map(|(_, of, length)| (of, length)).collect()
}

/// Whether a seam holds several edges to a strip that binds them.
fn only_strips(player: &Player<'_>, seam: Option<usize>, deed: &Deed<'_, '_>) -> bool {
    let Some(seam) = seam.and_then(|seam| player.state.seams.get(seam)) else { return false };
    let strips = |copy: &CopyId| deed.targets.contains(&Touched::Copy(*copy));
    seam.members.iter().filter_map(Touched::copy).any(|copy| strips(&copy))
}

/// What seams hold together of what is bound, and how much of it is, in mm.
type Heap = (BTreeSet<CopyId>, f64);

fn heaps(player: &Player<'_>, deed: &Deed<'_, '_>, bound: &[(Of, f64)]) -> Vec<Heap> {
    let mut heaps: Vec<Heap> = Vec::new();
    for ((copy, _), length) in bound {
        match heaps.iter_mut().find(|(copies, _)| copies.contains(copy)) {
            Some((_, known)) => *known += length,
            None => heaps.push((without_strips(player, deed, *copy), *length)),
        }
    }
    heaps
}

/// How long all of it is, in mm: what was pinned, basted or put on something else without being sewn to it lies on it.
fn in_piles(player: &Player<'_>, heaps: &[Heap]) -> f64 {
    let laid = |one: &BTreeSet<CopyId>, other: &BTreeSet<CopyId>| {
        let both = |copies: &BTreeSet<CopyId>| !copies.is_disjoint(one) && !copies.is_disjoint(other);
        let lays = |verb: Verb| matches!(verb, Verb::Pin | Verb::Baste | Verb::Put);
        player.logged.iter().any(|logged| lays(logged.verb) && both(&logged.copies()))
    };
    let mut piles: Vec<(Vec<&BTreeSet<CopyId>>, f64)> = Vec::new();
    for (copies, length) in heaps {
        match piles.iter_mut().find(|(known, _)| known.iter().any(|other| laid(copies, other))) {
            Some((known, longest)) => {
                *longest = longest.max(*length);
                known.push(copies);
            }
            None => piles.push((vec![copies], *length)),
        }
    }
    piles.iter().map(|(_, length)| length).sum()
}

/// What seams hold together with a copy; the strips of a binding join nothing to each other.
fn without_strips(player: &Player<'_>, deed: &Deed<'_, '_>, copy: CopyId) -> BTreeSet<CopyId> {
    let mut found = BTreeSet::from([copy]);
    let strips = |copy: &CopyId| deed.targets.contains(&Touched::Copy(*copy));
    let seams = |seam: &&Seam| !seam.members.iter().filter_map(Touched::copy).any(|copy| strips(&copy));
    loop {
        let held = player.state.seams.iter().filter(seams).map(|seam| seam.members.iter().filter_map(Touched::copy));
        let held = held.map(|copies| copies.collect::<BTreeSet<_>>()).filter(|copies| !copies.is_disjoint(&found));
        let more: BTreeSet<CopyId> = held.flatten().collect();
        if more.is_subset(&found) {
            return found;
        }
        found.extend(more);
    }
}

/// Whether each of the edges meets others of them, or its own other end, at both ends.
fn goes_round(player: &Player<'_>, bound: &[Of]) -> bool {
    bound.iter().all(|of| {
        let others = bound.iter().filter(|other| *other != of);
        let ends: BTreeSet<bool> =
            others.flat_map(|other| player.meetings(*of, *other)).map(|(_, at_end)| at_end).collect();
        ends.len() == 2 || closes_on_itself(player, *of)
    })
}

/// Whether the two edges beside an edge are sewn to each other.
fn closes_on_itself(player: &Player<'_>, (copy, edge): Of) -> bool {
    let around = player.edition.edges_of(copy);
    let count = around.len();
    let Some(at) = around.iter().position(|other| *other == edge).filter(|_| count > 2) else { return false };
    let beside = [around[(at + 1) % count], around[(at + count - 1) % count]];
    let seam = |seam: &Seam| beside.iter().all(|edge| seam.members.contains(&Touched::Edge(copy, *edge)));
    player.state.seams.iter().any(seam)
}

fn longest(player: &Player<'_>, copy: CopyId) -> f64 {
    let edges = player.edition.edges_of(copy).into_iter();
    edges.map(|edge| player.drawn_length(&[(copy, edge)])).fold(0.0, f64::max)
}

/// The ends of a strip: of its edges the shorter ones.
fn ends(player: &Player<'_>, strip: CopyId) -> Vec<Of> {
    let long = longest(player, strip);
    let edges = player.edition.edges_of(strip).into_iter().map(|edge| (strip, edge));
    edges.filter(|of| player.drawn_length(&[*of]) < long - TOLERANCE).collect()
}

/// How much of a strip is turned in at each of its ends: the allowance of its shortest edges.
fn turned_in(player: &Player<'_>, strip: CopyId) -> f64 {
    let length = |of: &Of| player.drawn_length(&[*of]);
    let end = ends(player, strip).into_iter().min_by(|one, other| length(one).total_cmp(&length(other)));
    let piece = player.edition.cast[strip].piece;
    let stated =
        end.and_then(|(copy, end)| player.edition.values.allowance(piece, &player.edition.drawn_word(copy, end)));
    stated.map(to_f64).filter(|stated| *stated > 0.0).unwrap_or(END)
}

/// How many ends of a strip were folded in before, by name. A strip that is folded whole is folded along its length, and
/// keeps it.
fn folded_ends(player: &Player<'_>, strip: CopyId, step: usize) -> usize {
    let folded = |(copy, edge): &Of| {
        let works = player.edition.steps_to(Some(step)).flat_map(|step| &step.works);
        let mut folds = works.filter(|work| work.verb == Verb::Fold);
        folds.any(|work| work.touched().any(|touched| touched == Touched::Edge(*copy, *edge)))
    };
    ends(player, strip).iter().filter(|of| folded(of)).count()
}

/// How much of an edge a strip covers: of a raw one between raw neighbours all that was cut, since a binding takes
/// nothing off; else what lies between the seams of its neighbours.
fn covered(player: &Player<'_>, copy: CopyId, edge: EdgeId, raw: bool) -> f64 {
    let Some(own) = player.edition.edge(copy, edge) else { return 0.0 };
    let around = player.edition.edges_of(copy);
    let count = around.len();
    let at = around.iter().position(|other| *other == edge).filter(|_| raw && count > 2);
    let untouched = |other: EdgeId| {
        let known = player.state.known_edge(copy, other);
        known.is_none_or(|known| {
            known.seams.is_empty() && known.folded.is_none() && known.finished.is_none_or(|(_, word)| word == BOUND)
        })
    };
    let whole = at.is_some_and(|at| untouched(around[(at + 1) % count]) && untouched(around[(at + count - 1) % count]));
    if whole { own.cut_length } else { own.seam_length }
}

/// Holds the strips against what they bind, once all their ends are sewn that ever are.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for binding in &player.state.bindings {
        let Some(first) = binding.strips.first() else { continue };
        let strip = player.edition.cast[*first].name.clone();
        let long = binding.strips.iter().map(|strip| longest(player, *strip)).sum::<f64>() - joined(player, binding);
        let (needed, laid) = (binding.needed + binding.turned, binding.laid + binding.turned);
        if needed > long + TOLERANCE {
            let laid = laid <= long + TOLERANCE && laid < needed;
            faults.push(Fault::StripTooShort { strip, long, needed, laid, bound: binding.bound });
            continue;
        }
        if binding.round && binding.turned == 0.0 && stays_open(player, binding) {
            faults.push(Fault::StripNotClosed { strip: strip.clone(), bound: binding.bound });
        }
        let others = || player.state.bindings.iter().filter(|other| !other.strips.is_disjoint(&binding.strips));
        let needed: f64 = others().map(|other| other.needed + other.turned).sum();
        let alone = others().all(|other| other.strips == binding.strips);
        let first = others().all(|other| other.bound >= binding.bound);
        if alone && first && long > needed * SPARE.0 + SPARE.1 && is_binding_alone(player, binding) {
            faults.push(Fault::StripTooLong { strip, long, needed, bound: binding.bound });
        }
    }
    player.faults.extend(faults);
}

/// How much the seams between the ends of strips take of their length, in mm.
fn joined(player: &Player<'_>, binding: &Binding) -> f64 {
    let ends: BTreeSet<Of> = binding.strips.iter().flat_map(|strip| ends(player, *strip)).collect();
    let taken = |seam: &Seam| {
        let held: Vec<Of> = edges(&seam.members).into_iter().filter(|of| ends.contains(of)).collect();
        let copies: BTreeSet<CopyId> = held.iter().map(|(copy, _)| *copy).collect();
        let joins = if held.len() == 2 { 1 } else { copies.len().saturating_sub(1) };
        joins as f64 * 2.0 * wrapped::taken(player.edition, seam).unwrap_or(0.0)
    };
    player.state.seams.iter().map(taken).sum()
}

/// Whether an end of a strip is in no seam, and nothing else is said of it.
fn stays_open(player: &Player<'_>, binding: &Binding) -> bool {
    let told = player.edition.steps().find(|step| step.number == binding.bound.step);
    let told = told.and_then(|step| step.works.get(binding.bound.work));
    let words = ["end", "lap", "join"];
    let said = told.is_some_and(|work| {
        !work.note.is_empty() || work.work.words.iter().any(|own| words.iter().any(|word| own.text.contains(word)))
    });
    let open = |of: &Of| {
        let named = |target: &Touched| *target == Touched::Edge(of.0, of.1);
        !player.state.is_sewn(of.0, of.1) && !player.logged.iter().any(|logged| logged.touched.iter().any(named))
    };
    !said && binding.strips.iter().flat_map(|strip| ends(player, *strip)).any(|of| open(&of))
}

/// Whether strips do nothing but bind: one that goes on as a tie is stitched by itself, or is told of in words.
fn is_binding_alone(player: &Player<'_>, binding: &Binding) -> bool {
    let own = |copy: &CopyId| binding.strips.contains(copy);
    let ends: BTreeSet<Of> = binding.strips.iter().flat_map(|strip| ends(player, *strip)).collect();
    let works = player.edition.steps().flat_map(|step| &step.works);
    let mut works = works.filter(|work| work.touched().filter_map(|touched| touched.copy()).any(|copy| own(&copy)));
    works.all(|work| match work.verb {
        Verb::Cut | Verb::Fold | Verb::Press | Verb::Pin | Verb::Trim | Verb::Mark => true,
        Verb::Bind => work.work.words.is_empty() && work.note.is_empty() && work.part.iter().all(Option::is_none),
        Verb::Sew => work.touched().all(|touched| edges(&[touched]).iter().all(|of| ends.contains(of))),
        _ => false,
    })
}
