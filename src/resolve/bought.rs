//! Notions to buy in one size, with the figures that each states.

use std::collections::BTreeMap;

use super::ids::NotionId;
use super::lists::Lister;
use super::printed::Block;
use super::shown::Shown;
use super::uses::Told;
use super::worked::Worked;
use crate::diag::Finding;
use crate::faults::{OUT_OF_RANGE, UNIT_MISMATCH, VALUE_UNREADABLE};
use crate::measure::Dimension;
use crate::model::{Expression, Kind, NotionFigure, is_for};

/// A notion to buy.
#[derive(Debug, Clone)]
pub struct NotionRow {
    /// The notion.
    pub notion: NotionId,
    /// How many.
    pub count: Option<u32>,
    /// The other figures that are stated of it.
    pub figures: BTreeMap<NotionFigure, Shown>,
    /// More to know.
    pub note: Vec<Block>,
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
            if !is_for(notion.sizes.as_ref(), self.values.size()) {
                continue;
            }
            let mut row =
                NotionRow { notion: id, count: None, figures: BTreeMap::new(), note: self.prose(&notion.note, told) };
            for (figure, value) in &notion.figures {
                let Some(formula) = value.get(self.values.size()) else { continue };
                let Some(worked) = self.by_size(value, told) else { continue };
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
            rows.push(row);
        }
        rows
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
