//! What a copy looks like from either side, and what it is called on a drawing.

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use crate::resolve::CopyId;

impl Desk<'_, '_> {
    /// What a copy is made of.
    pub fn cloth(&self, copy: CopyId) -> Cloth {
        self.edition.cast[copy].fabric.and_then(|fabric| self.cloths.get(fabric.at())).copied().unwrap_or(Cloth::Outer)
    }

    /// The class of a copy seen from one side, with what was fused to it.
    pub fn class(&self, copy: CopyId, face: Face) -> &'static str {
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
    fn backing(&self, copy: CopyId) -> Option<Cloth> {
        let group = self.past.layers.iter().rev().find(|group| group.contains(&copy))?;
        group
            .iter()
            .filter(|other| **other != copy)
            .map(|other| self.cloth(*other))
            .find(|cloth| matches!(cloth, Cloth::Wadding | Cloth::Interfacing))
    }

    /// Which side is up, in words; empty for layers without sides.
    pub fn side(&self, copy: CopyId, face: Face) -> &'static str {
        match (self.class(copy, face), face) {
            (_, Face::Right) if matches!(self.cloth(copy), Cloth::Wadding | Cloth::Interfacing) => "",
            ("wadding", Face::Wrong) if self.cloth(copy) != Cloth::Wadding => "wadding side up",
            (_, Face::Wrong) if matches!(self.cloth(copy), Cloth::Wadding | Cloth::Interfacing) => "",
            (_, Face::Right) => "right side up",
            (_, Face::Wrong) => "wrong side up",
        }
    }

    /// What a copy is called: its own name, or its piece's where copies are only counted.
    pub fn name(&self, copy: CopyId) -> String {
        self.edition.copy_name(copy)
    }

    /// A copy and the side that is up: `front, right side up`.
    pub fn name_and_side(&self, copy: CopyId, face: Face) -> String {
        match self.side(copy, face) {
            "" => self.name(copy),
            side => format!("{}, {side}", self.name(copy)),
        }
    }
}
