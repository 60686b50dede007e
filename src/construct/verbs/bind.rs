//! An edge is enclosed in a strip.
//!
//! ## How to write it
//! Name the edges and, if it is a notion or a piece of its own, the strip. The stitch length belongs to it.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {bind: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Bind the long edges.
//! ````
//!
//! ## What it needs
//! The allowance, where it is stated, is the one that the piece has. A strip that is named whole beside the edges, as
//! in `bind: [front.left, back.left, strip]`, is as long as what it binds; the two edges of one seam count once. A seam is
//! sewn before it is bound.
//!
//! ## What it changes
//! The edge is finished, and no longer raw.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::lengths::TOLERANCE;
use crate::construct::player::{Player, edges};
use crate::construct::slits;
use crate::construct::state::BOUND;
use crate::measure::to_f64;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Bind, include_str!("bind.rs"), bind);

fn bind(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, false);
    slits::check_strip(player, deed);
    player.check_allowance(deed.work, &edges(&deed.targets), deed.moment);
    player.check_places(deed);
    check_strip(player, deed);
    let named = edges(&deed.all);
    let inside = deed.targets.iter().any(|target| matches!(target, Touched::Inside(..)));
    for (copy, edge) in player.edges_of(&deed.all) {
        let share = player.shares(deed, copy, edge);
        // A strip that is named whole binds, and is not bound.
        let bound = named.contains(&(copy, edge)) || (named.is_empty() && !inside);
        let word = if bound { BOUND } else { "sewn on as a binding" };
        player.finish_edge((copy, edge), share, word, deed.moment);
    }
}

/// What is turned in at an end where the strip states no allowance there, in mm (common practice, no source).
const END: f64 = 10.0;

/// How much of a strip is turned in at each of its ends: the allowance of its shortest edges.
fn turned_in(player: &Player<'_>, strip: CopyId) -> f64 {
    let edges = player.edition.edges_of(strip);
    let length = |edge: &EdgeId| player.edition.edge(strip, *edge).map_or(f64::MAX, |edge| edge.cut_length);
    let end = edges.into_iter().min_by(|one, other| length(one).total_cmp(&length(other)));
    let piece = player.edition.cast[strip].piece;
    let stated = end.and_then(|end| player.edition.values.allowance(piece, &player.edition.drawn_word(strip, end)));
    stated.map(to_f64).filter(|stated| *stated > 0.0).unwrap_or(END)
}

/// How many ends of a strip were folded in before, by name: of its edges the shorter ones.
fn folded_ends(player: &Player<'_>, strip: CopyId, step: usize) -> usize {
    let length = |edge: EdgeId| player.edition.edge(strip, edge).map_or(0.0, |edge| edge.cut_length);
    let edges = player.edition.edges_of(strip);
    let longest = edges.iter().map(|edge| length(*edge)).fold(0.0, f64::max);
    // A strip that is folded whole is folded along its length, and keeps it.
    let folded = |edge: EdgeId| {
        let works = player.edition.steps_to(Some(step)).flat_map(|step| &step.works);
        let mut folds = works.filter(|work| work.verb == Verb::Fold);
        folds.any(|work| work.touched().any(|touched| touched == Touched::Edge(strip, edge)))
    };
    edges.into_iter().filter(|edge| length(*edge) < longest - TOLERANCE && folded(*edge)).count()
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

/// A strip that is named whole beside the edges that it binds is as long as they are: an edge of a seam is bound
/// together with the other, and counts once.
fn check_strip(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let whole = |target: &Touched| match target {
        Touched::Copy(copy) => Some(*copy),
        _ => None,
    };
    let strips = || deed.targets.iter().filter_map(whole);
    let longest = |copy: CopyId| {
        let edges = player.edition.edges_of(copy).into_iter();
        edges.map(|edge| player.drawn_length(&[(copy, edge)])).fold(0.0, f64::max)
    };
    let mut long = 0.0;
    let mut strip = None;
    for copy in strips() {
        long += longest(copy);
        strip = strip.or(Some(copy));
    }
    let Some(strip) = strip.filter(|_| deed.work.part.iter().all(Option::is_none)) else { return };
    let mut bound: Vec<(Option<usize>, f64)> = Vec::new();
    for (copy, edge) in edges(&deed.targets) {
        let seam = player.state.known_edge(copy, edge).and_then(|known| known.seams.last().copied());
        let length = covered(player, copy, edge, seam.is_none());
        match bound.iter_mut().find(|(known, _)| known.is_some() && *known == seam) {
            Some((_, known)) => *known = known.max(length),
            None => bound.push((seam, length)),
        }
    }
    let ends = strips().map(|strip| folded_ends(player, strip, deed.moment.step)).sum::<usize>();
    let ends = if deed.work.work.ends_in { ends.max(2) } else { ends };
    let turned = ends as f64 * turned_in(player, strip);
    let needed = bound.iter().map(|(_, length)| length).sum::<f64>() + turned;
    if needed > long + TOLERANCE {
        let strip = player.edition.cast[strip].name.clone();
        player.faults.push(Fault::StripTooShort { strip, long, needed, bound: deed.moment });
    }
}
