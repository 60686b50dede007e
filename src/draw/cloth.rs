//! Cloth and its two sides: what each fabric is for.

use std::collections::BTreeSet;

use super::past::{copies, held};
use crate::model::{Matter, Verb};
use crate::resolve::{CopyId, Edition, FabricId};

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
    Foam,
    /// Alike on both sides.
    Felt,
    Fur,
    Leather,
}

impl Cloth {
    /// Whether it does nothing but back another, so that it has no sides.
    pub fn is_layer(self) -> bool {
        matches!(self, Cloth::Wadding | Cloth::Interfacing | Cloth::Foam)
    }

    /// Whether it is seen from outside.
    pub fn is_outer(self) -> bool {
        matches!(self, Cloth::Outer | Cloth::Felt | Cloth::Fur | Cloth::Leather)
    }
}

/// What each fabric of the facts is for: by what it is made of, or by being fused to others.
pub(super) fn sort(edition: &Edition<'_>) -> Vec<Cloth> {
    let facts = &edition.draft.facts;
    let mut cloths: Vec<Cloth> = facts
        .fabrics
        .iter()
        .map(|fabric| match fabric.look {
            Some(Matter::Interfacing) => Cloth::Interfacing,
            Some(Matter::Wadding) => Cloth::Wadding,
            Some(Matter::Lining) => Cloth::Lining,
            Some(Matter::Binding) => Cloth::Binding,
            Some(Matter::Foam) => Cloth::Foam,
            Some(Matter::Felt) => Cloth::Felt,
            Some(Matter::Fur) => Cloth::Fur,
            Some(Matter::Leather) => Cloth::Leather,
            Some(Matter::Cloth | Matter::Webbing | Matter::Elastic | Matter::HookLoop) | None => Cloth::Outer,
        })
        .collect();
    let fused: Vec<Vec<CopyId>> = edition
        .steps()
        .flat_map(|step| &step.works)
        .filter(|work| matches!(work.verb, Verb::Fuse | Verb::Quilt))
        .map(|work| copies(&held(work, edition)))
        .collect();
    let fabric_of = |copy: &CopyId| edition.cast[*copy].fabric.map(FabricId::at);
    for at in 0..cloths.len() {
        let copies = edition.cast.copies().map(|(copy, _)| copy);
        let all: BTreeSet<CopyId> = copies.filter(|copy| fabric_of(copy) == Some(at)).collect();
        let layer = |group: &Vec<CopyId>| {
            group.iter().any(|copy| all.contains(copy)) && group.iter().any(|copy| fabric_of(copy) != Some(at))
        };
        // A cloth that does nothing but back another is a layer, whatever it is called. In a pair of
        // two such, the first-named fabric is the one that is seen.
        let always =
            !all.is_empty() && all.iter().all(|copy| fused.iter().any(|group| layer(group) && group.contains(copy)));
        let behind = fused
            .iter()
            .filter(|group| layer(group))
            .all(|group| group.iter().filter_map(fabric_of).any(|other| other < at && cloths[other].is_outer()));
        if cloths[at] == Cloth::Outer && always && behind && at > 0 {
            cloths[at] = Cloth::Interfacing;
        }
    }
    for at in 0..cloths.len() {
        let Some(from) = &facts.fabrics[at].from else { continue };
        let made = |copy: &CopyId| facts.pieces[edition.cast[*copy].piece].id.text == from.text;
        let padded = fused.iter().any(|group| {
            group.iter().any(made)
                && group.iter().any(|copy| {
                    fabric_of(copy).is_some_and(|fabric| matches!(cloths[fabric], Cloth::Wadding | Cloth::Foam))
                })
        });
        if padded {
            cloths[at] = Cloth::Quilted;
        }
    }
    cloths
}
