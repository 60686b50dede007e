//! The one space of names: measurements, fabrics, notions, pieces and their copies.

use std::collections::BTreeMap;

use super::ids::{FabricId, NotionId, PieceId};
use crate::diag::Findings;
use crate::faults::NAME_TWICE;
use crate::measure::PI;
use crate::model::{Draft, Facts, Name, is_for};
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

/// Every name of a booklet and what it stands for in one size. What other sizes have keeps its name where nothing
/// of this size bears it.
#[derive(Debug, Clone, Default)]
pub struct Catalogue {
    names: BTreeMap<String, (NameKind, Span)>,
}

/// A name as written: what it stands for, and in which sizes.
type Entry<'a> = (&'a Name, NameKind, Option<Vec<usize>>);

impl Catalogue {
    /// Gathers the names, for each size; one that two things have in one size is a finding, and keeps its first
    /// meaning there.
    pub fn gather(draft: &Draft) -> (Vec<Catalogue>, Findings) {
        let mut findings = Findings::default();
        let (pi, all): (Vec<_>, Vec<_>) = entries(&draft.facts).into_iter().partition(|(name, ..)| name.text == PI);
        for (name, ..) in pi {
            findings.push(
                NAME_TWICE
                    .at(name.span, format!("`{PI}` is already the length round a circle over its width, 3.14159…"))
                    .hint("use it in formulas as it is, and give this another name"),
            );
        }
        told_twice(&all, &mut findings);
        let of_size = |size: usize| {
            let here = |entry: &&Entry<'_>| is_for(entry.2.as_ref(), size);
            let mut catalogue = Catalogue::default();
            for (name, kind, _) in all.iter().filter(here).chain(all.iter().filter(|entry| !here(entry))) {
                catalogue.names.entry(name.text.clone()).or_insert((*kind, name.span));
            }
            catalogue
        };
        ((0..draft.facts.sizes.len()).map(of_size).collect(), findings)
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

/// Every name, in the order in which the kinds of things take theirs.
fn entries(facts: &Facts) -> Vec<Entry<'_>> {
    let mut all: Vec<Entry<'_>> = Vec::new();
    let measurements = facts.measurements.iter().enumerate();
    all.extend(measurements.map(|(at, one)| (&one.name, NameKind::Measurement(at), one.sizes.clone())));
    all.extend(FabricId::each(&facts.fabrics).map(|(id, one)| (&one.id, NameKind::Fabric(id), one.sizes.clone())));
    all.extend(NotionId::each(&facts.notions).map(|(id, one)| (&one.id, NameKind::Notion(id), one.sizes.clone())));
    all.extend(PieceId::each(&facts.pieces).map(|(id, one)| (&one.id, NameKind::Piece(id), one.sizes.clone())));
    for (id, piece) in PieceId::each(&facts.pieces) {
        for cut in &piece.cut {
            let all_sizes = 0..facts.sizes.len();
            let both = |size: &usize| is_for(piece.sizes.as_ref(), *size) && is_for(cut.sizes.as_ref(), *size);
            let sizes: Vec<usize> = all_sizes.filter(both).collect();
            all.extend(cut.names().iter().map(|name| (name, NameKind::Copy(id), Some(sizes.clone()))));
        }
    }
    all
}

/// Tells of names that two things have in one size.
fn told_twice(all: &[Entry<'_>], findings: &mut Findings) {
    let meet = |one: &Entry<'_>, other: &Entry<'_>| match (&one.2, &other.2) {
        (Some(own), other) => own.iter().any(|size| is_for(other.as_ref(), *size)),
        (None, Some(other)) => !other.is_empty(),
        (None, None) => true,
    };
    for (at, entry) in all.iter().enumerate() {
        let (name, ..) = entry;
        let twin = all[..at].iter().find(|other| other.0.text == name.text && meet(other, entry));
        if let Some((named, first, _)) = twin {
            findings.push(
                NAME_TWICE
                    .at(name.span, format!("`{}` is already the name of {}", name.text, first.word()))
                    .hint("measurements, fabrics, notions, pieces and copies share one space of names: give this one another")
                    .note(named.span, "the first one"),
            );
        }
    }
}
