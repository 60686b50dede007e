//! Values of one size on the way: each name is worked out after those that it leans on, in whatever
//! order the facts define them.

use super::ids::PieceId;
use super::names::Catalogue;
use super::values::Values;
use super::worked::Worked;
use crate::diag::{Finding, Findings};
use crate::faults::{FORMULA_RING, NESTED_TOO_DEEP};
use crate::model::{BySize, Draft, Expression, NotionFigure, is_for};
use crate::source::Span;

/// The longest chain of formulas that lean on one another.
const LONGEST_CHAIN: usize = 100;

/// What is known so far.
pub(super) struct Reckoning<'a> {
    pub values: Values<'a>,
    pub findings: Findings,
    /// The pieces whose outlines are being built.
    pub building: Vec<PieceId>,
    /// The names that are being worked out, each leaning on the next, with their places.
    open: Vec<(String, Span)>,
}

impl<'a> Values<'a> {
    /// Works out every measurement, and every measure of a notion or a piece, of a size; with the faults,
    /// marked with the size.
    pub fn of(draft: &'a Draft, catalogue: &'a Catalogue, size: usize) -> (Values<'a>, Findings) {
        let values = Values {
            draft,
            catalogue,
            size,
            shapes: Default::default(),
            marks: Default::default(),
            known: Default::default(),
            absent: Default::default(),
            elsewhere: Vec::new(),
        };
        let mut reckoning = Reckoning { values, findings: Findings::default(), building: Vec::new(), open: Vec::new() };
        let facts = &draft.facts;
        for measurement in &facts.measurements {
            reckoning.name(&measurement.name.text);
        }
        let here = |sizes: Option<&Vec<usize>>| is_for(sizes, size);
        for (id, _) in PieceId::each(&facts.pieces).filter(|(_, piece)| here(piece.sizes.as_ref())) {
            reckoning.piece(id);
        }
        for (id, _) in PieceId::each(&facts.pieces).filter(|(_, piece)| here(piece.sizes.as_ref())) {
            reckoning.place_marks(id);
        }
        for notion in facts.notions.iter().filter(|notion| here(notion.sizes.as_ref())) {
            reckoning.notion(&notion.id.text);
        }
        let findings = std::mem::take(&mut reckoning.findings);
        // What the size does not have can be named all the same; its faults count only then.
        for notion in &facts.notions {
            if !reckoning.values.is_of_other_view(notion.sizes.as_ref()) {
                reckoning.notion(&notion.id.text);
            }
        }
        for (id, piece) in PieceId::each(&facts.pieces) {
            if !reckoning.values.is_of_other_view(piece.sizes.as_ref()) {
                reckoning.piece(id);
            }
        }
        let mut values = reckoning.values;
        values.elsewhere = reckoning.findings.into_iter().collect();
        (values, findings)
    }
}

impl Reckoning<'_> {
    /// Works out a formula, once the names in it are; a fault is a finding of the size.
    pub fn work_out(&mut self, formula: &Expression) -> Option<Worked> {
        for (name, _) in formula.formula.names() {
            self.name(name);
        }
        self.values.work_out(formula, &self.values, &mut self.findings)
    }

    fn notion(&mut self, id: &str) {
        for (field, _) in NotionFigure::ALL {
            self.name(&format!("{id}.{field}"));
        }
    }

    /// Works a name out; one that stands for nothing is left unknown.
    fn name(&mut self, name: &str) {
        if self.values.known.contains_key(name) || self.values.of_other_view(name).is_some() {
            return;
        }
        let owner = name.split_once('.').and_then(|(owner, _)| self.values.catalogue.get(owner)?.piece());
        if let Some(piece) = owner {
            self.piece(piece);
            return;
        }
        let Some((value, span)) = self.values.definition(name) else { return };
        if let Some(ring) = self.ring(name) {
            self.findings.push(ring.in_size(self.values.size, ""));
            return;
        }
        self.open.push((name.to_owned(), span));
        let worked = value.get(self.values.size).and_then(|formula| self.valued(name, value, formula));
        self.open.pop();
        if self.values.absent.contains_key(name) {
            return;
        }
        self.values.known.insert(name.to_owned(), worked);
    }

    /// The value of a name by its formula. What one formula says of every size, and what leans on another view
    /// alone, has no value here: a fault only where it is named.
    fn valued(&mut self, name: &str, value: &BySize, formula: &Expression) -> Option<Worked> {
        let names = formula.formula.names();
        names.iter().for_each(|(name, _)| self.name(name));
        let leans = names.iter().find_map(|(name, _)| self.values.of_other_view(name)).cloned();
        if let (Some(sizes), BySize::Same(_), false) = (leans, value, name.contains('.')) {
            self.values.absent.insert(name.to_owned(), sizes);
            return None;
        }
        self.work_out(formula)
    }

    /// What is wrong with leaning on a name here: it leans on itself, or on too many others.
    fn ring(&self, name: &str) -> Option<Finding> {
        let open = &self.open;
        if let Some(at) = open.iter().position(|(known, _)| known == name) {
            let ring = &open[at..];
            // The ring is told from its first name in the file, whichever way it was met.
            let first = (0..ring.len()).min_by_key(|&at| ring[at].1.start).unwrap_or(0);
            let turned: Vec<&(String, Span)> = (0..ring.len()).map(|at| &ring[(first + at) % ring.len()]).collect();
            let mut names: Vec<&str> = turned.iter().map(|(name, _)| name.as_str()).collect();
            names.push(turned[0].0.as_str());
            let mut finding = FORMULA_RING
                .at(turned[0].1, format!("these formulas go round in a ring: {}", names.join(" → ")))
                .hint("give one of them a figure of its own, such as `20 cm`");
            for (name, span) in turned.iter().skip(1) {
                finding = finding.note(*span, format!("`{name}` is in the ring"));
            }
            return Some(finding);
        }
        (open.len() >= LONGEST_CHAIN).then(|| {
            let span = open.last().map_or(Span::new(self.values.draft.file, 0..0), |(_, span)| *span);
            NESTED_TOO_DEEP
                .at(span, format!("more than {LONGEST_CHAIN} formulas lean on one another here"))
                .hint("give one of them a figure of its own")
        })
    }
}
