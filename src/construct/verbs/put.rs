//! A tube or a bag is put into another, or drawn over it.
//!
//! ## How to write it
//! Name a piece of what is moved, and below it `into:` or `over:` with a piece of the other; `with:` says which sides lie on
//! each other then.
//!
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [20 cm, 6 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//!   sleeve: {outline: {rectangle: [20 cm, 12 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Draw the cuff over the sleeve {#cuff}
//!
//! ```work
//! - cut: [cuff, sleeve]
//! - {sew: [cuff.left, cuff.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [sleeve.left, sleeve.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [sleeve, right side out]
//! - {put: cuff, over: sleeve, with: right sides together}
//! - {sew: [cuff.bottom, sleeve.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew both to tubes, turn the sleeve right side out, put the cuff over it, and sew them together at the bottom.
//! ````
//!
//! ## What it needs
//! Both are sewn to tubes or bags. With the right sides together the inner one is right side out and the outer one wrong
//! side out; with the wrong sides together it is the other way round. What hangs together already, such as a lining that is
//! pushed down into its bag, needs nothing.
//!
//! ## What it changes
//! The next seams between the two hold the sides together that lie on each other now.

use std::collections::BTreeSet;

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::{Fault, Moment, OnEachOther};
use crate::construct::player::Player;
use crate::construct::state::Nested;
use crate::model::{Around, Together, Verb};
use crate::resolve::{CopyId, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Put, include_str!("put.rs"), put);

fn put(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let sides = deed.work.sides();
    let ([moved, other], Some(around)) = (sides.as_slice(), deed.work.work.around) else { return };
    let copies = |side: &[&crate::resolve::Target]| -> BTreeSet<CopyId> {
        let named = side.iter().flat_map(|target| &target.touched).filter_map(Touched::copy).collect();
        player.state.held_with(&named).0
    };
    let (moved, other) = (copies(moved), copies(other));
    if moved.is_empty() || other.is_empty() || !moved.is_disjoint(&other) {
        return;
    }
    for one in [&moved, &other].into_iter().filter(|one| !is_tube(player, one)).collect::<Vec<_>>() {
        let name = first_name(player, one);
        player.faults.push(Fault::NoTube { copy: name, put: deed.moment });
    }
    let (inner, outer) = match around {
        Around::Into => (moved, other),
        Around::Over => (other, moved),
    };
    let faces = right_side_out(player, &inner).zip(right_side_out(player, &outer));
    let lies = faces.and_then(|(inner, outer)| match (inner, outer) {
        (true, false) => Some(Together::RightSides),
        (false, true) => Some(Together::WrongSides),
        _ => None,
    });
    if let (Some(wanted), Some((inner_out, outer_out))) = (deed.work.work.with, faces)
        && lies != Some(wanted)
    {
        let names = (first_name(player, &inner), first_name(player, &outer));
        let why = OnEachOther { inner: (names.0, inner_out), outer: (names.1, outer_out), lies };
        player.faults.push(Fault::PutTheOtherWay { wanted, why, put: deed.moment });
        return;
    }
    player.state.nested.push(Nested { inner, outer, lies: deed.work.work.with.or(lies), put: deed.moment });
}

fn first_name(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> String {
    copies.first().map_or(String::new(), |copy| player.edition.cast[*copy].name.clone())
}

/// Whether pieces are joined round: by as many joins as there are pieces, since a flat row of them has one fewer.
fn is_tube(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> bool {
    let mut notions = BTreeSet::new();
    let mut joins = 0;
    for seam in &player.state.seams {
        let held: Vec<CopyId> =
            seam.members.iter().filter_map(Touched::copy).filter(|copy| copies.contains(copy)).collect();
        let other = seam.members.iter().filter_map(|member| match member {
            Touched::Notion(notion) | Touched::ZipEdge(notion, _) => Some(*notion),
            _ => None,
        });
        let other: BTreeSet<_> = other.collect();
        if !held.is_empty() {
            joins += (held.len() + other.len()).saturating_sub(1);
            notions.extend(other);
        }
    }
    joins >= copies.len() + notions.len()
}

/// Whether something sewn is right side out: as its seams left it, and as it was turned since. `None` where no seam and
/// no turning tells.
fn right_side_out(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> Option<bool> {
    let mut seams = player
        .state
        .seams
        .iter()
        .filter(|seam| seam.members.iter().filter_map(Touched::copy).any(|copy| copies.contains(&copy)));
    let work = |moment: Moment| Moment::work_of(player.edition, moment);
    let sewn = seams.find_map(|seam| work(seam.sewn).filter(|work| work.verb == Verb::Sew));
    let mut out = sewn.map(|work| work.work.wrong_sides);
    for (turned, _) in player.turns.iter().filter(|(_, turned)| !turned.is_disjoint(copies)) {
        let Some(work) = work(*turned) else { continue };
        let says = |words: &str| work.work.words.iter().any(|known| known.text.contains(words));
        // What is turned through an opening comes out of it right side out.
        out = if says("right side out") || says("right sides out") || says("through") {
            Some(true)
        } else if says("wrong side out") || says("wrong sides out") || says("inside out") {
            Some(false)
        } else {
            out.map(|out| !out)
        };
    }
    out
}

/// A seam that holds other sides together than those that lie on each other since one was put into the other.
pub(super) fn check_seam(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let wanted = if deed.work.work.wrong_sides { Together::WrongSides } else { Together::RightSides };
    let joins = |nested: &&Nested| !deed.touched.is_disjoint(&nested.inner) && !deed.touched.is_disjoint(&nested.outer);
    let turned = |nested: &Nested| player.turns.iter().any(|(turned, _)| *turned > nested.put);
    let found = player.state.nested.iter().rfind(joins).filter(|nested| !turned(nested));
    if let Some(put) = found.filter(|nested| nested.lies.is_some_and(|lies| lies != wanted)).map(|nested| nested.put) {
        player.faults.push(Fault::SewnTheOtherWay { wanted, put, sewn: deed.moment });
    }
}
