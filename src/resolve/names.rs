//! The one space of names: measurements, fabrics, notions, pieces and their copies.

use std::collections::BTreeMap;

use super::ids::{FabricId, NotionId, PieceId};
use crate::diag::Findings;
use crate::faults::NAME_TWICE;
use crate::measure::PI;
use crate::model::{Draft, Name};
use crate::source::Span;

/// What a name stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NameKind {
    /// A measurement, by its place in the facts.
    Measurement(usize),
    /// A fabric.
    Fabric(FabricId),
    /// A notion.
    Notion(NotionId),
    /// A piece.
    Piece(PieceId),
    /// A copy of a piece.
    Copy(PieceId),
}

impl NameKind {
    /// What it is, for messages.
    pub fn word(self) -> &'static str {
        match self {
            NameKind::Measurement(_) => "a measurement",
            NameKind::Fabric(_) => "a fabric",
            NameKind::Notion(_) => "a notion",
            NameKind::Piece(_) => "a piece",
            NameKind::Copy(_) => "a copy of a piece",
        }
    }

    /// The piece that the name belongs to.
    pub fn piece(self) -> Option<PieceId> {
        match self {
            NameKind::Piece(at) | NameKind::Copy(at) => Some(at),
            _ => None,
        }
    }
}

/// Every name of a booklet and what it stands for.
#[derive(Debug, Clone, Default)]
pub struct Catalogue {
    names: BTreeMap<String, (NameKind, Span)>,
}

impl Catalogue {
    /// Gathers the names; one that is used twice is a finding, and keeps its first meaning.
    pub fn gather(draft: &Draft) -> (Catalogue, Findings) {
        let mut findings = Findings::default();
        let facts = &draft.facts;
        let mut catalogue = Catalogue::default();
        let mut add = |name: &Name, kind: NameKind| {
            if name.text == PI {
                findings.push(
                    NAME_TWICE
                        .at(name.span, format!("`{PI}` is already the length round a circle over its width, 3.14159…"))
                        .hint("use it in formulas as it is, and give this another name"),
                );
                return;
            }
            if let Some((first, span)) = catalogue.names.get(&name.text) {
                findings.push(
                    NAME_TWICE.at( name.span, format!("`{}` is already the name of {}", name.text, first.word()))
                        .hint("measurements, fabrics, notions, pieces and copies share one space of names: give this one another")
                        .note(*span, "the first one"),
                );
                return;
            }
            catalogue.names.insert(name.text.clone(), (kind, name.span));
        };
        facts.measurements.iter().enumerate().for_each(|(at, one)| add(&one.name, NameKind::Measurement(at)));
        FabricId::each(&facts.fabrics).for_each(|(id, one)| add(&one.id, NameKind::Fabric(id)));
        NotionId::each(&facts.notions).for_each(|(id, one)| add(&one.id, NameKind::Notion(id)));
        PieceId::each(&facts.pieces).for_each(|(id, one)| add(&one.id, NameKind::Piece(id)));
        for (id, piece) in PieceId::each(&facts.pieces) {
            piece.copies().for_each(|copy| add(copy, NameKind::Copy(id)));
        }
        (catalogue, findings)
    }

    /// What a name stands for; `None` when nothing is called so.
    pub fn get(&self, name: &str) -> Option<NameKind> {
        self.names.get(name).map(|(kind, _)| *kind)
    }

    /// All names, sorted.
    pub fn all(&self) -> impl Iterator<Item = &str> {
        self.names.keys().map(String::as_str)
    }

    /// The names that formulas may use, with those behind a dot.
    pub fn in_formulas(&self, draft: &Draft) -> Vec<String> {
        let mut names = Vec::new();
        for (name, (kind, _)) in &self.names {
            match kind {
                NameKind::Measurement(_) => names.push(name.clone()),
                NameKind::Notion(at) => {
                    let notion = &draft.facts.notions[*at];
                    let given = notion.figures.keys();
                    names.extend(given.map(|figure| format!("{name}.{}", figure.word())));
                }
                _ => {}
            }
        }
        names
    }
}
