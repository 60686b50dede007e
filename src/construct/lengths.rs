//! Whether the two sides of a seam are as long as each other, and a gap shorter than both.

use super::deed::{Deed, Side};
use super::fault::Fault;
use super::player::Player;
use crate::geometry::Kept;
use crate::measure::{Dimension, to_f64};
use crate::resolve::{CopyId, EdgeId, Worked};

/// How far two edges may differ and still be sewn without ease, in mm: what a hand does not notice.
pub(super) const TOLERANCE: f64 = 1.0;

/// How much less than the ease that is stated edges may differ, in mm (common practice, no source).
const EASED: f64 = 2.0;

/// A side's length on the stitching line, and as its cloth was cut; the latter only of one edge, since in a
/// row allowances lie between. In mm.
#[derive(Debug, Clone, Copy)]
struct Lengths {
    seam: f64,
    cut: Option<f64>,
}

impl Lengths {
    /// Two edges meet when they agree on either line: the allowances beside them may differ.
    fn apart(self, other: Lengths) -> f64 {
        let seam = (self.seam - other.seam).abs();
        self.cut.zip(other.cut).map_or(seam, |(one, two)| seam.min((one - two).abs()))
    }
}

impl Player<'_> {
    /// Whether all sides fit.
    pub fn check_lengths(&mut self, deed: &Deed<'_, '_>) -> bool {
        let sides = deed.sides();
        let lengths: Vec<(&Side, Lengths)> =
            sides.iter().filter_map(|side| Some((side, self.reckoned(side)?))).collect();
        let eased = millimetres(deed.work.ease).unwrap_or(0.0);
        // A gathered seam meets at the length that it is gathered to.
        let gather = millimetres(deed.work.gather);
        let Some((first, length)) = lengths.first() else { return true };
        if sides.iter().all(|side| side.len() == 1) && joined_end_to_end(&lengths) {
            return true;
        }
        let part = self.part_of(deed);
        // A part whose place lies on no edge is told by itself.
        if part.is_none() && deed.work.part.iter().any(Option::is_some) {
            return true;
        }
        let mut faults = Vec::new();
        for (side, other) in &lengths[1..] {
            let in_part = part.as_ref().is_some_and(|part| {
                let (against, other) = if part.side == **side { (*first, length) } else { (*side, other) };
                let (long, laid) = (part.to - part.from, [self.left_length(against), self.laid_length(against)]);
                let apart = laid.map(|laid| long - laid).into_iter().chain([long - other.seam, part.sewn - other.seam]);
                apart.into_iter().any(|apart| apart.abs() <= eased + TOLERANCE)
            });
            let fits = in_part
                || match gather {
                    Some(to) => (length.seam.min(other.seam) - to).abs() <= TOLERANCE,
                    None => length.apart(*other) <= eased + TOLERANCE,
                }
                || self.may_fit_open((first, side), eased);
            if !fits {
                faults.push(self.differ(deed, (first, length.seam), (side, other.seam), eased));
            }
        }
        let all_fit = faults.is_empty();
        self.faults.extend(faults);
        if all_fit && gather.is_none() && part.is_none() && lengths.len() == sides.len() {
            self.check_ease(deed, &lengths, eased);
        }
        all_fit
    }

    /// Ease that is more than what any side is longer than the first.
    fn check_ease(&mut self, deed: &Deed<'_, '_>, lengths: &[(&Side, Lengths)], eased: f64) {
        let Some(ease) = &deed.work.work.ease else { return };
        // What is folded may count in two ways.
        let may = |(side, _): &(&Side, Lengths)| side.iter().any(|(copy, _)| self.may_count_open(*copy));
        let Some(((first, length), others)) = lengths.split_first().filter(|_| !lengths.iter().any(may)) else {
            return;
        };
        let apart = |other: &Lengths| {
            let cut = length.cut.zip(other.cut).map_or(0.0, |(one, two)| (one - two).abs());
            (length.seam - other.seam).abs().max(cut)
        };
        let longest = others.iter().map(|(side, other)| (side, apart(other)));
        let Some((side, apart)) = longest.max_by(|one, other| one.1.total_cmp(&other.1)) else { return };
        if eased - apart > EASED {
            let edges = (self.side_name(first), self.side_name(side));
            self.faults.push(Fault::EaseTooLarge { edges, stated: eased, apart, ease: ease.span(), sewn: deed.moment });
        }
    }

    /// How long the stitching line of a side is, in mm; `None` where nothing tells.
    pub fn sewn_length(&self, side: &[(CopyId, EdgeId)]) -> Option<f64> {
        self.reckoned(side).map(|lengths| lengths.seam)
    }

    /// The fault of two sides in mm that differ.
    fn differ(
        &self,
        deed: &Deed<'_, '_>,
        first: (&[(CopyId, EdgeId)], f64),
        second: (&[(CopyId, EdgeId)], f64),
        eased: f64,
    ) -> Fault {
        let piece = |side: &[(CopyId, EdgeId)]| side.first().map(|(copy, _)| self.edition.cast[*copy].piece);
        let of = |side: &[(CopyId, EdgeId)]| piece(side).unwrap_or_else(|| self.edition.cast[first.0[0].0].piece);
        let (one, two) = (of(first.0), of(second.0));
        Fault::LengthsDiffer {
            pieces: (one.min(two), one.max(two)),
            first: (self.side_name(first.0), first.1),
            second: (self.side_name(second.0), second.1),
            eased,
            both: self.meant_once(deed, |one, other| {
                let lengths = self.lengths_of(one, true).zip(self.lengths_of(other, true));
                lengths.is_some_and(|(one, other)| one.apart(other) <= eased + TOLERANCE)
            }),
            sewn: deed.moment,
        }
    }

    /// The edges of a side as authors write them.
    pub fn side_name(&self, side: &[(CopyId, EdgeId)]) -> String {
        let names: Vec<String> = side.iter().map(|(copy, edge)| self.edition.edge_name(*copy, *edge)).collect();
        names.join(" + ")
    }

    /// How long the stitching line of a side is, laps taken off; `None` where an edge is drawn up to whatever
    /// it has to fit or is folded nobody knows how far, or its outline is not known.
    fn reckoned(&self, side: &[(CopyId, EdgeId)]) -> Option<Lengths> {
        let drawn_up = |(copy, edge): &(CopyId, EdgeId)| {
            let gathered = self.state.known_edge(*copy, *edge).is_some_and(|edge| edge.gathered);
            gathered || self.state.copies[*copy].folded_small
        };
        if side.iter().any(drawn_up) {
            return None;
        }
        self.lengths_of(side, true)
    }

    /// The same of edges that lie as they are folded, or opened.
    fn lengths_of(&self, side: &[(CopyId, EdgeId)], folded: bool) -> Option<Lengths> {
        let kept = |copy: CopyId, edge: EdgeId| match folded || !self.may_count_open(copy) {
            true => self.kept(copy, edge),
            false => Kept::WHOLE,
        };
        let mut seam = 0.0;
        for (copy, edge) in side {
            seam += self.edition.edge(*copy, *edge)?.seam_length * kept(*copy, *edge).seam;
        }
        let lapped = self.state.laps.iter().map(|(edges, by)| {
            let held = edges.iter().filter(|edge| side.contains(edge)).count();
            *by * held.saturating_sub(1) as f64
        });
        let lapped: f64 = lapped.sum();
        let cut = match side {
            [(copy, edge)] => Some(self.edition.edge(*copy, *edge)?.cut_length * kept(*copy, *edge).cut),
            _ => None,
        };
        Some(Lengths { seam: seam - lapped, cut })
    }

    /// Whether two sides fit when what is folded counts opened, where it may.
    fn may_fit_open(&self, (first, second): (&Side, &Side), eased: f64) -> bool {
        let may = |side: &Side| side.iter().any(|(copy, _)| self.may_count_open(*copy));
        let fits = |(one, two): (bool, bool)| {
            let lengths = self.lengths_of(first, one).zip(self.lengths_of(second, two));
            lengths.is_some_and(|(one, two)| one.apart(two) <= eased + TOLERANCE)
        };
        (may(first) || may(second)) && [(true, false), (false, true), (false, false)].into_iter().any(fits)
    }

    /// The length of a side as drawn, but for what lies folded, in mm.
    fn left_length(&self, side: &[(CopyId, EdgeId)]) -> f64 {
        let left = |(copy, edge): &(CopyId, EdgeId)| {
            Some(self.edition.edge(*copy, *edge)?.length * self.kept(*copy, *edge).cut)
        };
        side.iter().filter_map(left).sum()
    }

    /// The length of a side as drawn, in mm.
    pub fn drawn_length(&self, side: &[(CopyId, EdgeId)]) -> f64 {
        side.iter().filter_map(|(copy, edge)| Some(self.edition.edge(*copy, *edge)?.length)).sum()
    }

    /// A gap that is as long as the seam that it is left in, or reaches past its end.
    pub fn check_gap(&mut self, deed: &Deed<'_, '_>) {
        let Some((gap, formula)) = millimetres(deed.work.leave).zip(deed.work.work.leave.as_ref()) else { return };
        if gap < LEAST {
            self.faults.push(Fault::GapTooShort { gap, leave: formula.span() });
            return;
        }
        let sides = deed.sides();
        let Some(first) = sides.first() else { return };
        let behind = deed.work.leave_at.as_ref().and_then(|place| self.behind(deed, first, place));
        let shortest = sides.iter().filter_map(|side| Some((side, self.reckoned(side)?.seam)));
        let Some((side, length)) = shortest.min_by(|one, other| one.1.total_cmp(&other.1)) else { return };
        let room = behind.unwrap_or(length).min(length);
        if gap > room - TOLERANCE {
            let edge = self.side_name(side);
            self.faults.push(Fault::GapTooLong { edge, room, gap, leave: formula.span() });
        }
    }
}

/// Through less than this nothing passes, in mm (common practice, no source).
const LEAST: f64 = 3.0;

/// A worked length in mm.
pub(super) fn millimetres(worked: Option<Worked>) -> Option<f64> {
    worked.filter(|one| one.quantity.dimension == Dimension::Length).map(|one| to_f64(one.quantity.value))
}

/// One edge against several in a row: the long one is as long as the others together.
fn joined_end_to_end(lengths: &[(&Side, Lengths)]) -> bool {
    if lengths.len() < 3 {
        return false;
    }
    let longest = lengths.iter().map(|(_, length)| length.seam).fold(0.0, f64::max);
    let total: f64 = lengths.iter().map(|(_, length)| length.seam).sum();
    (total - 2.0 * longest).abs() <= TOLERANCE
}
