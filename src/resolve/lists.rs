//! What to buy and what to cut in one size.

use super::ids::{FabricId, NotionId, PieceId};
use super::printed::Block;
use super::prose::Printer;
use super::references::Ends;
use super::scope::Scope;
use super::shown::{Shown, bought_figures, width_figures};
use super::uses::Told;
use super::values::Values;
use super::without::Without;
use super::worked::Worked;
use crate::diag::{Findings, did_you_mean};
use crate::faults::{OUT_OF_RANGE, UNIT_MISMATCH, UNKNOWN_NAME, VALUE_UNREADABLE};
use crate::limits::COPIES;
use crate::measure::{Dimension, Exact, Quantity};
use crate::model::{BySize, CutCopies, Draft, Expression, Facts, Name, Outline, Piece, is_for};

/// A fabric to buy.
#[derive(Debug, Clone)]
pub struct FabricRow {
    /// The fabric.
    pub fabric: FabricId,
    /// The widths that it is sold in.
    pub widths: Vec<Shown>,
    /// How much to buy, where the author states it.
    pub amount: Option<Shown>,
    /// How much it may shrink, in the author's words for it.
    pub shrinkage: Option<Shown>,
    /// More to know.
    pub note: Vec<Block>,
    /// What serves where it cannot be had.
    pub instead: Vec<Block>,
}

/// A piece to cut from one fabric.
#[derive(Debug, Clone)]
pub struct CutRow {
    /// The piece.
    pub piece: PieceId,
    /// What it is cut from.
    pub from: CutFrom,
    /// The names of the copies; empty when they are only counted.
    pub copies: Vec<String>,
    /// How many.
    pub count: u32,
    /// Width and height of the cutting line overall, of its half for a piece cut on the fold; `None`
    /// where its outline has a fault.
    pub dimensions: Option<(Shown, Shown)>,
    /// More to know.
    pub note: Vec<Block>,
}

/// What a piece is cut from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CutFrom {
    /// Cloth.
    Fabric(FabricId),
    /// Tape, webbing or elastic.
    Notion(NotionId),
}

impl CutRow {
    /// The cloth that it is cut from; `None` for a length of tape.
    pub fn fabric(&self) -> Option<FabricId> {
        match self.from {
            CutFrom::Fabric(fabric) => Some(fabric),
            CutFrom::Notion(_) => None,
        }
    }
}

/// Works the lists of one size out.
pub(super) struct Lister<'a> {
    pub draft: &'a Draft,
    pub ends: &'a Ends,
    pub values: &'a Values<'a>,
    /// What this way through the booklet does without.
    pub without: &'a Without,
}

impl Lister<'_> {
    /// A value as the booklet prints it.
    pub fn figures(&self, worked: Worked) -> Shown {
        Shown::of(&worked, &self.draft.facts.show)
    }

    /// Prose of the facts in this size.
    pub fn prose(&self, blocks: &[crate::model::Block], told: &mut Told) -> Vec<Block> {
        let (findings, uses) = (&mut told.findings, &mut told.uses);
        Printer { draft: self.draft, ends: self.ends, part: None, scope: Scope::plain(self.values), findings, uses }
            .blocks(blocks)
    }

    pub fn fabrics(&self, told: &mut Told) -> Vec<FabricRow> {
        let mut rows = Vec::new();
        for (id, fabric) in FabricId::each(&self.draft.facts.fabrics) {
            if !is_for(fabric.sizes.as_ref(), self.values.size()) {
                continue;
            }
            let widths = fabric
                .widths
                .iter()
                .filter_map(|width| self.width(width, &mut told.findings))
                .map(|worked| width_figures(&worked, &self.draft.facts.show))
                .collect();
            let amount = fabric.amount.as_ref().and_then(|amount| amount.get(self.values.size()));
            let amount =
                amount.and_then(|amount| self.above_nothing(amount, "an amount of fabric", &mut told.findings));
            let shrinkage = fabric.shrinkage.as_ref().and_then(|value| self.share(value, &mut told.findings));
            rows.push(FabricRow {
                fabric: id,
                widths,
                amount: amount.map(|worked| bought_figures(&worked, &self.draft.facts.show)),
                shrinkage: shrinkage.map(|worked| self.figures(worked)),
                note: self.prose(&fabric.note, told),
                instead: self.prose(&fabric.sourcing.instead, told),
            });
        }
        rows
    }

    /// A value that must be a length.
    pub fn length(&self, formula: &Expression, what: &str, findings: &mut Findings) -> Option<Worked> {
        let worked = self.values.work_out(formula, self.values, findings)?;
        if worked.quantity.dimension == Dimension::Length {
            return Some(worked);
        }
        findings.push(
            UNIT_MISMATCH
                .at(formula.span(), format!("{what} is a length, not {}", worked.quantity.dimension.name()))
                .hint(format!("give it a unit: `{} cm`", formula.formula.text.trim()))
                .in_size(self.values.size(), ""),
        );
        None
    }

    /// A length that must be above nothing.
    fn above_nothing(&self, formula: &Expression, what: &str, findings: &mut Findings) -> Option<Worked> {
        let worked = self.length(formula, what, findings)?;
        if worked.quantity.value > Exact::from_integer(0) {
            return Some(worked);
        }
        let text = formula.formula.text.trim();
        findings.push(
            OUT_OF_RANGE
                .at(formula.span(), format!("{what} is above nothing, not `{text}`"))
                .hint("write how long it is, such as `110 cm`, or look at what its formula comes to")
                .in_size(self.values.size(), ""),
        );
        None
    }

    /// The width of a cloth, of which the selvedges must leave something to cut from.
    fn width(&self, formula: &Expression, findings: &mut Findings) -> Option<Worked> {
        let worked = self.above_nothing(formula, "a width", findings)?;
        let facts = &self.draft.facts;
        let selvedge = facts.sheets.selvedge;
        if selvedge.checked_add(selvedge).is_some_and(|both| worked.quantity.value > both) {
            return Some(worked);
        }
        let shown = |value: Exact| {
            let quantity = Quantity { value, dimension: Dimension::Length };
            self.figures(Worked { quantity, stated: None }).first.to_string().replace('\u{a0}', " ")
        };
        findings.push(
            OUT_OF_RANGE
                .at(
                    formula.span(),
                    format!(
                        "two selvedges of {} leave nothing to cut from on cloth {} wide",
                        shown(selvedge),
                        shown(worked.quantity.value)
                    ),
                )
                .hint("make `selvedge:` under `sheets:` smaller: it is what is not used along one edge of the cloth")
                .in_size(self.values.size(), ""),
        );
        None
    }

    /// A value that must be a share, from nothing to less than the whole.
    fn share(&self, formula: &Expression, findings: &mut Findings) -> Option<Worked> {
        let worked = self.values.work_out(formula, self.values, findings)?;
        let value = worked.quantity.value;
        let right = worked.quantity.dimension == Dimension::Count
            && value >= Exact::from_integer(0)
            && value < Exact::from_integer(1);
        if right {
            return Some(worked);
        }
        let text = formula.formula.text.trim();
        findings.push(
            OUT_OF_RANGE
                .at(formula.span(), format!("cloth cannot shrink by `{text}`"))
                .hint("write a share of its length, such as `3 %`")
                .in_size(self.values.size(), ""),
        );
        None
    }

    /// A value that is printed.
    pub fn by_size(&self, value: &BySize, told: &mut Told) -> Option<Worked> {
        value
            .get(self.values.size())
            .iter()
            .for_each(|formula| told.uses.print(formula, true, &Scope::plain(self.values)));
        self.values.by_size(value, &mut told.findings)
    }

    pub fn cuts(&self, told: &mut Told) -> Vec<CutRow> {
        let facts = &self.draft.facts;
        let mut rows = Vec::new();
        for (id, piece) in PieceId::each(&facts.pieces) {
            if !is_for(piece.sizes.as_ref(), self.values.size()) {
                continue;
            }
            let note = self.prose(&piece.note, told);
            let stated = match &piece.outline {
                Some(Outline::Rectangle { width, height, .. }) => {
                    self.by_size(width, told).zip(self.by_size(height, told))
                }
                _ => None,
            };
            let larger = piece.cut_larger.as_ref();
            let larger = larger.and_then(|larger| self.above_nothing(larger, "`cut_larger`", &mut told.findings));
            let dimensions = self.values.cut_size(id, stated, larger.map(|worked| worked.quantity.value));
            for cut in piece.cut_in(self.values.size()) {
                self.reckon(&cut.copies, told);
                let Some(from) = cut_from(facts, piece, &cut.fabric) else {
                    let fabrics = facts.fabrics.iter().map(|fabric| fabric.id.text.as_str());
                    told.findings.push(
                        UNKNOWN_NAME
                            .at(cut.fabric.span, format!("no fabric is called `{}`", cut.fabric.text))
                            .hint(did_you_mean(&cut.fabric.text, fabrics, "add it under `fabrics:`")),
                    );
                    continue;
                };
                let Some((copies, count)) = self.kept(piece, &cut.copies) else { continue };
                rows.push(CutRow {
                    piece: id,
                    from,
                    copies,
                    count,
                    dimensions: dimensions.map(|size| (self.figures(size.width), self.figures(size.height))),
                    note: note.clone(),
                });
            }
        }
        rows
    }
}

impl Lister<'_> {
    /// A number of pieces that is a formula and comes to no number is a finding.
    fn reckon(&self, copies: &CutCopies, told: &mut Told) {
        let CutCopies::Reckoned(formula) = copies else { return };
        let scope = Scope::plain(self.values);
        told.uses.read(formula, &scope);
        if scope.work_out(formula, &mut told.findings).is_some() && self.values.pieces_cut(copies).is_none() {
            told.findings.push(
                VALUE_UNREADABLE
                    .at(formula.span(), format!("a number of pieces is a whole number from 1 to {}", COPIES.most))
                    .hint("write a formula that gives one, such as `joined_strips(round, 90 cm, seam)`, or round it: `up(length / 90 cm, 1)`")
                    .in_size(self.values.size(), ""),
            );
        }
    }

    /// The names of the copies that are cut, and how many they are; `None` where all are left out.
    pub fn kept(&self, piece: &Piece, copies: &CutCopies) -> Option<(Vec<String>, u32)> {
        let is_left = |name: &Name| self.without.leaves(name);
        match copies {
            CutCopies::Named(names) => {
                let kept: Vec<&Name> = names.iter().filter(|name| !is_left(name)).collect();
                let called = kept.iter().map(|name| piece.copy_called(&name.text)).collect();
                (names.is_empty() || !kept.is_empty()).then_some((called, kept.len() as u32))
            }
            CutCopies::Count(_) | CutCopies::Reckoned(_) => {
                let count = self.values.pieces_cut(copies)?;
                (!is_left(&piece.id)).then_some((Vec::new(), count))
            }
        }
    }
}

/// What a piece is cut from, by its name.
fn cut_from(facts: &Facts, piece: &Piece, name: &Name) -> Option<CutFrom> {
    if piece.tape.is_some() {
        let mut notions = NotionId::each(&facts.notions);
        return notions.find(|(_, notion)| notion.id.text == name.text).map(|(id, _)| CutFrom::Notion(id));
    }
    let mut fabrics = FabricId::each(&facts.fabrics);
    fabrics.find(|(_, fabric)| fabric.id.text == name.text).map(|(id, _)| CutFrom::Fabric(id))
}
