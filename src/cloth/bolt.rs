//! Cloth as it is bought, and what is cut from it.
//!
//! Cloth that holds a piece cut on the fold is folded in half along its length. Other cloth lies flat,
//! and every copy is laid by itself.

use super::cut_out::{CutOut, cut_outs};
use crate::measure::{Dimension, Exact, to_f64};
use crate::model::{Expression, is_for};
use crate::resolve::{Edition, FabricId};

/// How much more than is stated the pieces may take, in mm: less than anyone measures.
const STATED_SPARE: f64 = 0.5;

/// Cloth of one width, and what is cut from it in one size.
#[derive(Debug, Clone)]
pub struct Bolt {
    /// The fabric, by its place in the facts.
    pub fabric: FabricId,
    /// Which of its widths, by its place among them.
    pub width_at: usize,
    /// The cloth's whole width, in mm.
    pub width: f64,
    /// What is not used at each selvedge, in mm; the two leave something of the width.
    pub selvedge: f64,
    /// Whether it is folded in half along its length.
    pub folded: bool,
    /// What the cloth loses in the wash, as a share of its length from 0 to below 1.
    pub shrinkage: Exact,
    /// What is bought beyond the pieces' length, in mm.
    pub spare: Exact,
    /// The amount that the author states, in mm; `None` where it is reckoned.
    pub stated: Option<Exact>,
    pub(super) cuts: Vec<CutOut>,
}

impl Bolt {
    /// The usable width of the cloth laid flat or opened out, in mm.
    pub fn flat_room(&self) -> f64 {
        self.width - 2.0 * self.selvedge
    }

    /// The length, in mm, that the pieces may take of what the author states, before the wash.
    pub(super) fn stated_length(&self) -> Option<f64> {
        Some((to_f64(self.stated?) + STATED_SPARE) * (1.0 - to_f64(self.shrinkage)))
    }

    /// The usable width from the fold to the selvedges, in mm.
    pub fn folded_room(&self) -> f64 {
        self.width / 2.0 - self.selvedge
    }
}

/// The bolts of one size: each fabric that is bought, in each width that it is sold in. A width of which
/// the selvedges leave nothing is left out; it has been reported.
pub fn bolts(edition: &Edition<'_>) -> Vec<Bolt> {
    let facts = &edition.draft.facts;
    let mut bolts = Vec::new();
    for (id, fabric) in FabricId::each(&facts.fabrics) {
        if !is_for(fabric.sizes.as_ref(), edition.size()) {
            continue;
        }
        let (nought, one) = (Exact::from_integer(0), Exact::from_integer(1));
        let shrinkage = fabric.shrinkage.as_ref().and_then(|share| value(edition, share, Dimension::Count));
        let amount = fabric.amount.as_ref().and_then(|amount| amount.get(edition.size()));
        let stated = amount.and_then(|amount| value(edition, amount, Dimension::Length));
        let (cuts, folded) = cut_outs(edition, id);
        if cuts.is_empty() {
            continue;
        }
        for (width_at, width) in fabric.widths.iter().enumerate() {
            let Some(width) = value(edition, width, Dimension::Length) else { continue };
            let bolt = Bolt {
                fabric: id,
                width_at,
                width: to_f64(width),
                selvedge: to_f64(facts.sheets.selvedge),
                folded,
                // Any other share has been reported.
                shrinkage: shrinkage.filter(|share| *share >= nought && *share < one).unwrap_or(nought),
                spare: facts.sheets.spare,
                stated: stated.filter(|stated| *stated > nought),
                cuts: cuts.clone(),
            };
            if bolt.flat_room() > 0.0 {
                bolts.push(bolt);
            }
        }
    }
    bolts
}

/// A formula's value, where it has the dimension that it should have.
pub(super) fn value(edition: &Edition<'_>, formula: &Expression, dimension: Dimension) -> Option<Exact> {
    let quantity = edition.values.quiet(formula)?.quantity;
    (quantity.dimension == dimension).then_some(quantity.value)
}
