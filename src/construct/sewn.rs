//! How large the sewn thing is, where the construction determines it: rectangles that are joined, and
//! boxed corners.
//!
//! With the allowances a at the sides, b at the base, t at the top and x at the boxed corners, and a
//! rectangle of width w and height h (cutting line) from whose lower corners c across and d up are
//! taken out (plane geometry; common practice, no source: a corner taken out at half the depth, with
//! one allowance throughout, boxes to the whole depth):
//!
//! - width at the base: w − 2c − 2x
//! - depth: 2 (d − b + x), which must equal 2 (c − a + x)
//! - height: h − t − d − x
//!
//! and without boxed corners the width is w less both side allowances, the height h less those at the
//! top and the base; a piece cut on the fold counts twice from the fold. Where the stitching line is drawn,
//! the corner is taken out of that: its c grows by the piece's own a and loses its own x, its d by b and x.
//! A corner that is boxed by measuring u up its seams from the stitching takes u from the width at its side and from the
//! height, and makes a depth of 2u.
//! A strip that is sewn to an edge and laid round it takes nothing away either: the edge keeps its place inside.
//! An edge that is declared raw takes nothing away. What lies folded is as wide as its wider side, of which the
//! allowance at its edge is sewn away.

use super::fault::{Fault, Unreckoned};
use super::history::History;
use super::state::{BOUND, State};
use super::wrapped::{self, Wrapped};
use crate::measure::{Dimension, to_f64};
use crate::model::{BySize, Outline, Piece};
use crate::resolve::{CopyId, EdgeId, Edition, SewnMeasure, SewnRow};

/// How far a stated measurement may differ from what the sewing gives, in mm.
const TOLERANCE: f64 = 1.0;

/// A measure of a sewn copy in mm; `None` where the construction does not determine it, or where no copy
/// is called so.
pub fn sewn(edition: &Edition<'_>, history: &History, copy: &str, measure: SewnMeasure) -> Option<f64> {
    let (copy, _) = edition.cast.copies().find(|(_, member)| member.name == copy)?;
    SewnCopy::new(edition, &history.state, copy).and_then(|sewn| sewn.measure(measure)).ok()
}

/// Holds the stated finished measurements against the sewing.
pub(super) fn compare(edition: &Edition<'_>, state: &State) -> Vec<Fault> {
    edition.sewn.iter().filter_map(|row| one(edition, state, row)).collect()
}

/// What is wrong with one row: another size than stated at any of its copies, or none that can be told.
fn one(edition: &Edition<'_>, state: &State, row: &SewnRow) -> Option<Fault> {
    let stated = row.stated.filter(|stated| stated.quantity.dimension == Dimension::Length)?;
    let stated = to_f64(stated.quantity.value);
    let told = |why| Fault::SewnNotReckoned { row: row.row, said: row.span, why };
    if row.copies.is_empty() {
        return Some(told(Unreckoned::NotCut));
    }
    let mut unclear = None;
    for copy in &row.copies {
        let copy = SewnCopy::new(edition, state, *copy);
        let fits = |sewn: f64| (stated - sewn).abs() <= TOLERANCE;
        // Nothing but the maker's hands may tell whether a strip lies round its edge.
        let other = copy.as_ref().ok().map(|sewn| SewnCopy { enclosed: true, ..*sewn });
        match copy.and_then(|sewn| sewn.measure(row.measure)) {
            Ok(sewn) if !fits(sewn) && !other.and_then(|other| other.measure(row.measure).ok()).is_some_and(fits) => {
                return Some(Fault::SewnDiffers { row: row.row, stated, sewn });
            }
            Ok(_) => {}
            Err(why) => unclear = unclear.or(Some(told(why))),
        }
    }
    unclear
}

/// A copy whose outline is a rectangle, sewn.
struct SewnCopy<'a> {
    edition: &'a Edition<'a>,
    state: &'a State,
    copy: CopyId,
    piece: &'a Piece,
    /// On the cutting line, in mm; of a piece cut on the fold, of its half.
    size: (f64, f64),
    /// What is taken out of its lower corners, across and up, as written.
    corners: Option<(&'a BySize, &'a BySize)>,
    /// Whether strips that may be laid round its edges are.
    enclosed: bool,
}

impl<'a> SewnCopy<'a> {
    fn new(edition: &'a Edition<'a>, state: &'a State, copy: CopyId) -> Result<SewnCopy<'a>, Unreckoned> {
        let id = edition.cast[copy].piece;
        let piece = &edition.draft.facts.pieces[id];
        let Some(shape) = edition.values.shape(id) else { return Err(Unreckoned::Follows) };
        let Some(Outline::Rectangle { corners_out, .. }) = &piece.outline else { return Err(Unreckoned::Shaped) };
        // What darts and pleats take away makes one end of the piece narrower than the other.
        if shape.edges().iter().any(|edge| edge.closed < edge.length) {
            return Err(Unreckoned::Shaped);
        }
        let (wide, high) = shape.exact_box().ok_or(Unreckoned::Shaped)?;
        let corners = match corners_out.as_slice() {
            [] => None,
            [(at, across, up)] if at.text == "bottom" && piece.fold.is_none() => Some((across, up)),
            _ => return Err(Unreckoned::CornersOut),
        };
        Ok(SewnCopy { edition, state, copy, piece, size: (to_f64(wide), to_f64(high)), corners, enclosed: false })
    }

    fn measure(&self, measure: SewnMeasure) -> Result<f64, Unreckoned> {
        match (self.corners, measure) {
            (Some(corners), measure) => self.boxed(corners, measure),
            (None, SewnMeasure::Width) => {
                let [left, right] = self.measured_up()?;
                Ok(self.between(self.size.0, "left", "right")? - left - right)
            }
            (None, SewnMeasure::Height) => {
                let [left, right] = self.measured_up()?;
                Ok(self.between(self.size.1, "top", "bottom")? - left.max(right))
            }
            (None, SewnMeasure::Depth) => match self.measured_up()? {
                [0.0, 0.0] => Err(Unreckoned::NotBoxed),
                [left, right] if (left - right).abs() > TOLERANCE => Err(Unreckoned::CrookedCorner),
                [left, _] => Ok(2.0 * left),
            },
        }
    }

    /// How far up the lower left and the lower right corner are boxed that were not cut out, in mm; nought where
    /// they are not.
    fn measured_up(&self) -> Result<[f64; 2], Unreckoned> {
        let mut found = [0.0; 2];
        for (_, edges, up) in self.state.boxed.iter().filter(|(copy, ..)| *copy == self.copy) {
            let words = edges.map(|edge| self.edition.edge_word(self.copy, edge));
            let has = |word: &str| words.iter().any(|known| known == word);
            match (has("left"), has("right")) {
                _ if !has("bottom") || self.piece.fold.is_some() => return Err(Unreckoned::CornersOut),
                (true, _) => found[0] = *up,
                (_, true) => found[1] = *up,
                _ => return Err(Unreckoned::CornersOut),
            }
        }
        Ok(found)
    }

    /// The cloth between two opposite edges; a fold is the middle of the piece.
    fn between(&self, cut: f64, one: &str, other: &str) -> Result<f64, Unreckoned> {
        let along = if matches!(one, "left" | "right") { ["top", "bottom"] } else { ["left", "right"] };
        for word in along {
            let edge = self.edge(word)?;
            if self.state.known_edge(self.copy, edge).is_some_and(|known| known.gathered) {
                return Err(Unreckoned::Gathered(self.edition.edge_name(self.copy, edge)));
            }
        }
        if self.state.copies[self.copy].folded_small {
            return Err(Unreckoned::FoldedSmall(self.edition.cast[self.copy].name.clone()));
        }
        let (whole, first, last) = match self.piece.fold.as_ref().map(|fold| fold.text.as_str()) {
            Some(fold) if fold == one => (2.0 * cut, self.taken(other)?, self.taken(other)?),
            Some(fold) if fold == other => (2.0 * cut, self.taken(one)?, self.taken(one)?),
            _ => (cut, self.taken(one)?, self.taken(other)?),
        };
        Ok(match self.creased(whole, matches!(one, "top" | "bottom")) {
            Some(far) => f64::max(far - first, whole - far - last),
            None => whole - first - last,
        })
    }

    /// How far from its upper or left edge the cloth lies folded, in mm; a ring that was folded crosswise for its
    /// seam counts opened.
    fn creased(&self, whole: f64, level: bool) -> Option<f64> {
        let creases = &self.state.copies[self.copy].creases;
        let here = creases.iter().filter(|folded| folded.crease.is_level() == Some(level));
        let lying = here.filter(|folded| folded.lengthwise != Some(false) || !self.state.is_ring(self.copy, folded));
        let bounds = self.edition.values.whole(self.edition.cast[self.copy].piece)?.cutting().bounds();
        lying.filter_map(|folded| Some(whole * folded.crease.share(bounds)?)).next_back()
    }

    fn boxed(&self, (across, up): (&BySize, &BySize), measure: SewnMeasure) -> Result<f64, Unreckoned> {
        let name = "bottom_left_corner";
        let across = self.length(across)? + self.added("left")? - self.added(name)?;
        let up = self.length(up)? + self.added("bottom")? - self.added(name)?;
        let corner = self.taken(name)?;
        match measure {
            SewnMeasure::Width => Ok(self.size.0 - 2.0 * across - 2.0 * corner),
            SewnMeasure::Height => Ok(self.size.1 - self.taken("top")? - up - corner),
            SewnMeasure::Depth => {
                let down_side = 2.0 * (up - self.taken("bottom")? + corner);
                let along_base = 2.0 * (across - self.taken("left")? + corner);
                // The two sides of a boxed corner are sewn to each other.
                if (down_side - along_base).abs() > TOLERANCE { Err(Unreckoned::CrookedCorner) } else { Ok(down_side) }
            }
        }
    }

    fn length(&self, value: &BySize) -> Result<f64, Unreckoned> {
        let worked = value.get(self.edition.size()).and_then(|value| self.edition.values.quiet(value));
        let length = worked.filter(|worked| worked.quantity.dimension == Dimension::Length);
        length.map(|worked| to_f64(worked.quantity.value)).ok_or(Unreckoned::Follows)
    }

    fn edge(&self, word: &str) -> Result<EdgeId, Unreckoned> {
        let mut edges = self.edition.edges_of(self.copy).into_iter();
        edges.find(|edge| self.edition.edge_word(self.copy, *edge) == word).ok_or(Unreckoned::Shaped)
    }

    /// The allowance that the piece adds to an edge as drawn, in mm: a corner is as deep as it is written on
    /// the line that the author drew.
    fn added(&self, word: &str) -> Result<f64, Unreckoned> {
        let edge = self.edition.edge(self.copy, self.edge(word)?).ok_or(Unreckoned::Follows)?;
        Ok(if self.piece.drawn_stitching { to_f64(edge.allowance) } else { 0.0 })
    }

    /// What the seam, hem or fold at an edge takes away, in mm.
    fn taken(&self, word: &str) -> Result<f64, Unreckoned> {
        let edge = self.edge(word)?;
        let raw = self.piece.raw.iter().any(|raw| raw.text == word || raw.text == "all");
        let Some(known) = self.state.known_edge(self.copy, edge) else {
            return if raw { Ok(0.0) } else { Err(self.open(edge)) };
        };
        let name = || self.edition.edge_name(self.copy, edge);
        if let Some(seam) = known.seams.first() {
            let seam = &self.state.seams[*seam];
            let taken = wrapped::taken(self.edition, seam).ok_or_else(|| Unreckoned::NoAllowance(name()))?;
            return Ok(match wrapped::wrapped(self.edition, self.state, (self.copy, edge), seam, taken) {
                Wrapped::Yes => 0.0,
                Wrapped::Perhaps if self.enclosed => 0.0,
                _ => taken,
            });
        }
        if known.finished.is_some_and(|(_, word)| word == BOUND) {
            return Ok(0.0);
        }
        if known.finished.is_some() || known.folded.is_some() {
            let own = self.edition.values.allowance(self.edition.cast[self.copy].piece, word);
            return own.map(to_f64).ok_or_else(|| Unreckoned::NoAllowance(name()));
        }
        if raw { Ok(0.0) } else { Err(self.open(edge)) }
    }

    fn open(&self, edge: EdgeId) -> Unreckoned {
        Unreckoned::Open(self.edition.edge_name(self.copy, edge))
    }
}
