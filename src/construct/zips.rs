//! Zips: whether a shut one shuts the work, since its layers are open nowhere else; whether one is long enough.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::fault::Fault;
use super::lengths::millimetres;
use super::player::{Player, edges};
use super::state::{Seam, TapeSewn};
use crate::measure::{Dimension, to_f64};
use crate::model::{Kind, NotionFigure};
use crate::resolve::{CopyId, EdgeId, Filler, NotionId, Touched, ZipEdge};

/// How much longer than its zip an opening may be, in mm: room for a hook above it (common practice, no source).
const ROOM: f64 = 10.0;

/// How much longer than the teeth both ends of the tape are, in mm (common practice, no source).
const TAPE_ENDS: f64 = 30.0;

impl Player<'_> {
    /// An opening that is longer than the zip that is to fill it; the allowance above a zip is part of the opening.
    pub fn check_zip_opening(&mut self, deed: &Deed<'_, '_>) {
        let (Some(Filler::Notion(zip)), Some(formula)) = (deed.work.leave_for, &deed.work.work.leave) else { return };
        let (Some(opening), Some(long)) = (millimetres(deed.work.leave), self.zip_length(zip)) else { return };
        let taken = deed.sides().iter().flatten().map(|of| self.taken_at_ends(*of)).fold(0.0, f64::max);
        if opening > long + ROOM + taken {
            let place = formula.span();
            self.faults.push(Fault::ZipTooShort { notion: zip, long, wanted: opening, edges: None, place });
        }
    }

    /// Takes down what the tapes of zips are sewn to.
    pub fn sew_tapes(&mut self, deed: &Deed<'_, '_>) {
        let tape = |target: &Touched| match target {
            Touched::ZipEdge(zip, edge) if edge.is_tape() => Some(*zip),
            _ => None,
        };
        let Some(zip) = deed.targets.iter().find_map(tape) else { return };
        let part = self.part_of(deed);
        let in_part = deed.work.part.iter().any(Option::is_some);
        for side in deed.sides() {
            let long = match &part {
                Some(part) if part.side == side => Some(part.sewn),
                _ if in_part => None,
                _ => self.sewn_length(&side),
            };
            let place = deed.moment.verb;
            self.tapes.extend(long.map(|long| TapeSewn { zip, side, long, in_part, place }));
        }
    }

    fn zip_length(&self, zip: NotionId) -> Option<f64> {
        let row = self.edition.notions.iter().find(|row| row.notion == zip)?;
        let zips = self.edition.draft.facts.notions[zip].kind == Kind::Zip;
        let length = row.figures.get(&NotionFigure::Length).filter(|_| zips)?.exact;
        (length.dimension == Dimension::Length).then(|| to_f64(length.value))
    }
}

/// Tapes that do not reach along what they are sewn to, each zip once. An edge that another seam holds as well is
/// open for the zip in part; ends of a zip that are sewn to something make it longer.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut told = BTreeSet::new();
    let mut faults = Vec::new();
    for tape in &player.tapes {
        let at_zip = |seam: &usize| {
            let seam = player.state.seams.get(*seam);
            let holds = |member: &Touched| matches!(member, Touched::ZipEdge(zip, _) if *zip == tape.zip);
            seam.is_some_and(|seam| seam.members.iter().any(holds))
        };
        let alone = |(copy, edge): &(CopyId, EdgeId)| {
            player.state.known_edge(*copy, *edge).is_none_or(|known| known.seams.iter().all(at_zip))
        };
        let ends = [ZipEdge::Start, ZipEdge::End].map(|end| player.state.zip_edges.contains_key(&(tape.zip, end)));
        let Some(long) = player.zip_length(tape.zip) else { continue };
        let short = tape.long > long + TAPE_ENDS && !ends.contains(&true);
        if short && (tape.in_part || tape.side.iter().all(alone)) && told.insert(tape.zip) {
            let edges = Some(player.side_name(&tape.side));
            faults.push(Fault::ZipTooShort { notion: tape.zip, long, wanted: tape.long, edges, place: tape.place });
        }
    }
    player.faults.extend(faults);
}

/// Whether one of the layers at a zip, such as the outside or the lining of a bag, is open nowhere but there.
pub(super) fn shuts(player: &Player<'_>, zip: NotionId) -> bool {
    let at_zip = |seam: &Seam| {
        let tape =
            |member: &Touched| matches!(member, Touched::ZipEdge(notion, edge) if *notion == zip && edge.is_tape());
        seam.members.iter().any(tape)
    };
    let (sewn_in, others): (Vec<&Seam>, Vec<&Seam>) = player.state.seams.iter().partition(|seam| at_zip(seam));
    let tapes: BTreeSet<(CopyId, EdgeId)> = sewn_in.iter().flat_map(|seam| edges(&seam.members)).collect();
    let mut left: BTreeSet<CopyId> = tapes.iter().map(|(copy, _)| *copy).collect();
    while let Some(first) = left.pop_first() {
        let layer = layer(&others, first);
        left.retain(|copy| !layer.contains(copy));
        if !is_open(player, &layer, &tapes, &others, zip) {
            return true;
        }
    }
    false
}

/// The copies that seams hold together with one.
fn layer(seams: &[&Seam], first: CopyId) -> BTreeSet<CopyId> {
    let mut layer = BTreeSet::from([first]);
    loop {
        let held = seams.iter().map(|seam| copies(seam)).filter(|copies| !copies.is_disjoint(&layer));
        let more: BTreeSet<CopyId> = held.flatten().collect();
        if more.is_subset(&layer) {
            return layer;
        }
        layer.extend(more);
    }
}

fn copies(seam: &Seam) -> BTreeSet<CopyId> {
    edges(&seam.members).into_iter().map(|(copy, _)| copy).collect()
}

fn is_open(
    player: &Player<'_>,
    layer: &BTreeSet<CopyId>,
    tapes: &BTreeSet<(CopyId, EdgeId)>,
    others: &[&Seam],
    zip: NotionId,
) -> bool {
    let of = |seam: &&&Seam| !copies(seam).is_disjoint(layer);
    let gap = |seam: &&Seam| seam.gap == Some(None) && seam.leave_for != Some(Filler::Notion(zip));
    if others.iter().filter(of).any(gap) || player.has_slit(layer.iter()) {
        return true;
    }
    // What lies between two others, such as a pocket caught in the side seams, opens nothing.
    let caught = |copy: CopyId| {
        let mut own = others.iter().filter(|seam| copies(seam).contains(&copy)).peekable();
        own.peek().is_some() && own.all(|seam| copies(seam).len() > 2)
    };
    layer.iter().filter(|copy| !caught(**copy)).any(|copy| {
        let free = |edge: &EdgeId| player.stands_open(*copy, *edge) && !tapes.contains(&(*copy, *edge));
        player.edition.edges_of(*copy).iter().any(free)
    })
}
