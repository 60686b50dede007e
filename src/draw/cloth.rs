//! What a copy looks like from either side, and what it is called on a drawing.

use std::collections::BTreeSet;

use super::Desk;
use super::past::{copies, targets};
use crate::construct::Cast;
use crate::diag::in_sentence;
use crate::model::Verb;
use crate::resolve::Edition;

/// Which side of the cloth is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Face {
    Right,
    Wrong,
}

impl Face {
    pub fn over(self) -> Face {
        match self {
            Face::Right => Face::Wrong,
            Face::Wrong => Face::Right,
        }
    }
}

/// What a fabric is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Cloth {
    Outer,
    /// Outer fabric with wadding quilted to its wrong side.
    Quilted,
    Lining,
    Wadding,
    Interfacing,
    Binding,
}

/// What each fabric of the facts is for: by its name, or by being fused to others.
pub(super) fn sort(edition: &Edition<'_>, cast: &Cast) -> Vec<Cloth> {
    let facts = &edition.draft.facts;
    let mut cloths: Vec<Cloth> = facts
        .fabrics
        .iter()
        .map(|fabric| {
            let words = format!("{} {}", fabric.id.text, fabric.name.text).to_lowercase();
            let says = |known: &[&str]| known.iter().any(|word| words.contains(word));
            match () {
                () if fabric.from.is_some() => Cloth::Outer,
                () if says(&["interfacing", "interlining"]) => Cloth::Interfacing,
                () if says(&["wadding", "batting"]) => Cloth::Wadding,
                () if says(&["lining"]) => Cloth::Lining,
                () if says(&["binding", "bias"]) => Cloth::Binding,
                () => Cloth::Outer,
            }
        })
        .collect();
    let fused: Vec<Vec<usize>> = edition
        .steps()
        .flat_map(|step| &step.works)
        .filter(|work| matches!(work.verb, Verb::Fuse | Verb::Quilt))
        .map(|work| copies(&targets(work, edition, cast)))
        .collect();
    let fabric_of = |copy: &usize| cast.members[*copy].fabric;
    for at in 0..cloths.len() {
        let all: BTreeSet<usize> = (0..cast.members.len()).filter(|copy| fabric_of(copy) == Some(at)).collect();
        let layer = |group: &Vec<usize>| {
            group.iter().any(|copy| all.contains(copy)) && group.iter().any(|copy| fabric_of(copy) != Some(at))
        };
        // A cloth that does nothing but back another is a layer, whatever it is called. In a pair of
        // two such, the first-named fabric is the one that is seen.
        let always =
            !all.is_empty() && all.iter().all(|copy| fused.iter().any(|group| layer(group) && group.contains(copy)));
        let behind = fused
            .iter()
            .filter(|group| layer(group))
            .all(|group| group.iter().filter_map(fabric_of).any(|other| other < at && cloths[other] == Cloth::Outer));
        if cloths[at] == Cloth::Outer && always && behind && at > 0 {
            cloths[at] = Cloth::Interfacing;
        }
    }
    for at in 0..cloths.len() {
        let Some(from) = &facts.fabrics[at].from else { continue };
        let made = |copy: &usize| facts.pieces[cast.members[*copy].piece].id.text == from.text;
        let padded = fused.iter().any(|group| {
            group.iter().any(made)
                && group.iter().any(|copy| fabric_of(copy).is_some_and(|fabric| cloths[fabric] == Cloth::Wadding))
        });
        if padded {
            cloths[at] = Cloth::Quilted;
        }
    }
    cloths
}

impl Desk<'_, '_> {
    /// What a copy is made of.
    pub fn cloth(&self, copy: usize) -> Cloth {
        self.cast.members[copy].fabric.and_then(|fabric| self.cloths.get(fabric)).copied().unwrap_or(Cloth::Outer)
    }

    /// The class of a copy seen from one side, with what was fused to it.
    pub fn class(&self, copy: usize, face: Face) -> &'static str {
        match (self.cloth(copy), face) {
            (Cloth::Wadding, _) => "wadding",
            (Cloth::Interfacing, _) => "interfacing",
            (Cloth::Binding, _) => "binding",
            (Cloth::Lining, Face::Right) => "lining",
            (Cloth::Quilted, Face::Wrong) => "wadding",
            (Cloth::Outer | Cloth::Quilted, Face::Right) => "right-side",
            (Cloth::Outer | Cloth::Lining, Face::Wrong) => match self.backing(copy) {
                Some(Cloth::Wadding) => "wadding",
                Some(_) => "interfacing",
                None if self.cloth(copy) == Cloth::Lining => "lining-wrong",
                None => "wrong-side",
            },
        }
    }

    /// What lies on the wrong side of a copy since it was fused or quilted.
    fn backing(&self, copy: usize) -> Option<Cloth> {
        let group = self.past.layers.iter().rev().find(|group| group.contains(&copy))?;
        group
            .iter()
            .filter(|other| **other != copy)
            .map(|other| self.cloth(*other))
            .find(|cloth| matches!(cloth, Cloth::Wadding | Cloth::Interfacing))
    }

    /// Which side is up, in words; empty for layers without sides.
    pub fn side(&self, copy: usize, face: Face) -> &'static str {
        match (self.class(copy, face), face) {
            (_, Face::Right) if matches!(self.cloth(copy), Cloth::Wadding | Cloth::Interfacing) => "",
            ("wadding", Face::Wrong) if self.cloth(copy) != Cloth::Wadding => "wadding side up",
            (_, Face::Wrong) if matches!(self.cloth(copy), Cloth::Wadding | Cloth::Interfacing) => "",
            (_, Face::Right) => "right side up",
            (_, Face::Wrong) => "wrong side up",
        }
    }

    /// What a copy is called: its own name, or its piece's where copies are only counted.
    pub fn name(&self, copy: usize) -> String {
        let member = &self.cast.members[copy];
        let piece = &self.edition.draft.facts.pieces[member.piece];
        if member.name == piece.id.text { in_sentence(&piece.name.text) } else { member.name.replace('_', " ") }
    }

    /// A copy and the side that is up: `front, right side up`.
    pub fn name_and_side(&self, copy: usize, face: Face) -> String {
        match self.side(copy, face) {
            "" => self.name(copy),
            side => format!("{}, {side}", self.name(copy)),
        }
    }
}
