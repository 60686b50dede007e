//! Notions to buy in one size, with the figures that each states.

use std::collections::BTreeMap;

use super::ids::NotionId;
use super::lists::Lister;
use super::printed::Block;
use super::shown::{Shown, bought_figures};
use super::uses::Told;
use super::worked::Worked;
use crate::diag::Finding;
use crate::faults::{OUT_OF_RANGE, UNIT_MISMATCH, VALUE_UNREADABLE};
use crate::measure::{Dimension, Exact, Quantity, up_to};
use crate::model::{BySize, Expression, Kind, Name, Notion, NotionFigure, Outline, Piece, is_for};

/// A notion to buy.
#[derive(Debug, Clone)]
pub struct NotionRow {
    /// The notion.
    pub notion: NotionId,
    /// How many.
    pub count: Option<u32>,
    /// How much of it is needed for all that is cut from it; `None` where nothing is.
    pub needed: Option<Worked>,
    /// The other figures that are stated of it.
    pub figures: BTreeMap<NotionFigure, Shown>,
    /// More to know.
    pub note: Vec<Block>,
    /// What serves where it cannot be had.
    pub instead: Vec<Block>,
}

impl NotionRow {
    /// How long one is, or how much of it is needed.
    pub fn long(&self) -> Option<&Shown> {
        self.figures.get(&NotionFigure::Length).or(self.figures.get(&NotionFigure::Amount))
    }
}

impl Lister<'_> {
    pub fn notions(&self, told: &mut Told) -> Vec<NotionRow> {
        let mut rows = Vec::new();
        for (id, notion) in NotionId::each(&self.draft.facts.notions) {
            if !is_for(notion.sizes.as_ref(), self.values.size()) || self.without.leaves(&notion.id) {
                continue;
            }
            let mut row = NotionRow {
                notion: id,
                count: None,
                needed: None,
                figures: BTreeMap::new(),
                note: self.prose(&notion.note, told),
                instead: self.prose(&notion.sourcing.instead, told),
            };
            row.needed = self.needed(&notion.id, told);
            for (figure, value) in &notion.figures {
                let Some(formula) = value.get(self.values.size()) else { continue };
                let Some(worked) = self.sold(value, formula, told) else { continue };
                if let Some(finding) = fault(*figure, notion.kind, formula, worked) {
                    told.findings.push(finding.in_size(self.values.size(), ""));
                    continue;
                }
                match figure {
                    NotionFigure::Count => row.count = worked.whole(),
                    _ => {
                        row.figures.insert(*figure, self.figures(worked));
                    }
                }
            }
            self.in_all(notion, &mut row);
            // What is not stated is reckoned: the lengths in all and some to spare, up to the next decimetre.
            let stated = row.count.is_some() || row.long().is_some();
            if let Some(needed) = row.needed.filter(|_| !stated) {
                let (spare, step) = (self.draft.facts.sheets.spare, Exact::from_integer(100));
                let whole = needed.quantity.value.checked_add(spare).and_then(|length| up_to(length, step));
                let value = whole.unwrap_or(needed.quantity.value);
                let worked = Worked { quantity: Quantity { value, ..needed.quantity }, stated: None };
                row.figures.insert(NotionFigure::Amount, bought_figures(&worked, &self.draft.facts.show));
            }
            rows.push(row);
        }
        rows
    }

    /// Several lengths of tape or elastic are bought in one: what they come to in all, up to the next decimetre, where the
    /// author does not say it.
    fn in_all(&self, notion: &Notion, row: &mut NotionRow) {
        let sold_by_length = matches!(notion.kind, Kind::Tape | Kind::Elastic);
        let (count, length) = (row.count.filter(|count| *count > 1), row.figures.get(&NotionFigure::Length));
        let (Some(count), Some(length)) = (count.filter(|_| sold_by_length), length) else { return };
        let all = length.exact.value.checked_mul(Exact::from_integer(i64::from(count)));
        let Some(value) = all.and_then(|all| up_to(all, Exact::from_integer(100))) else { return };
        let worked = Worked { quantity: Quantity { value, dimension: Dimension::Length }, stated: None };
        let shown = bought_figures(&worked, &self.draft.facts.show);
        row.figures.entry(NotionFigure::Amount).or_insert(shown);
    }

    /// A figure of what shops sell: a pair is named by round figures, and held against each other by a check of its own.
    fn sold(&self, value: &BySize, formula: &Expression, told: &mut Told) -> Option<Worked> {
        match formula.formula.as_measure().is_some_and(|measure| measure.other.is_some()) {
            true => self.values.by_size(value, &mut told.findings),
            false => self.by_size(value, told),
        }
    }

    /// The lengths of all that is cut from a notion, laid end to end.
    fn needed(&self, notion: &Name, told: &mut Told) -> Option<Worked> {
        let size = self.values.size();
        let mut sum: Option<Exact> = None;
        let own = |piece: &&Piece| piece.tape.as_ref().is_some_and(|tape| tape.text == notion.text);
        for piece in self.draft.facts.pieces.iter().filter(own).filter(|piece| is_for(piece.sizes.as_ref(), size)) {
            let Some(Outline::Rectangle { width, .. }) = &piece.outline else { continue };
            let length = self.by_size(width, told)?.quantity.value;
            for cut in piece.cut_in(size) {
                let Some((_, count)) = self.kept(piece, &cut.copies) else { continue };
                let count = Exact::from_integer(i64::from(count));
                sum = Some(sum.unwrap_or(Exact::ZERO).checked_add(length.checked_mul(count)?)?);
            }
        }
        sum.map(|value| Worked { quantity: Quantity { value, dimension: Dimension::Length }, stated: None })
    }
}

/// What is wrong with a figure of a notion: another sort than it should be, or nothing at all.
fn fault(figure: NotionFigure, kind: Kind, formula: &Expression, worked: Worked) -> Option<Finding> {
    let (word, text, dimension) = (figure.word(), formula.formula.text.trim(), worked.quantity.dimension);
    if figure == NotionFigure::Count {
        let hint = match formula.formula.as_measure() {
            Some(_) => format!("write how many: `{word}: 2`"),
            None => format!("round the formula to whole ones: `{word}: \"up({text}, 1)\"`"),
        };
        let finding = VALUE_UNREADABLE.at(formula.span(), "a number of notions is a whole number above nothing");
        return worked.whole().is_none().then(|| finding.hint(hint));
    }
    let fits = match figure {
        NotionFigure::Amount => {
            matches!(dimension, Dimension::Length | Dimension::Area | Dimension::Mass | Dimension::Count)
        }
        // Hooks, snaps and zips are known by numbers.
        NotionFigure::Size if kind != Kind::Button => matches!(dimension, Dimension::Length | Dimension::Count),
        _ => dimension == Dimension::Length,
    };
    if !fits {
        let what = match figure {
            NotionFigure::Amount => "a length, an area, a weight or a number",
            NotionFigure::Size if kind != Kind::Button => "a length or the trade's number",
            _ => "a length",
        };
        let finding =
            UNIT_MISMATCH.at(formula.span(), format!("`{word}` of a notion is {what}, not {}", dimension.name()));
        return Some(finding.hint(match dimension {
            Dimension::Count => format!("give it a unit, such as `{text} cm`"),
            _ => "name another value, or tell it under `note:`".to_owned(),
        }));
    }
    let finding = OUT_OF_RANGE.at(formula.span(), format!("`{word}` of a notion is above nothing, not `{text}`"));
    let hint =
        "write what is bought, or look at what its formula comes to; a notion that some sizes do without says `for:`";
    (!worked.quantity.value.is_positive()).then(|| finding.hint(hint))
}
