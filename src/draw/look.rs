//! What a copy looks like from either side, and what it is called on a drawing.

use kurbo::{Affine, BezPath, Shape as _};

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use crate::resolve::CopyId;

/// How much smaller a layer is drawn no smaller, in mm of cloth.
const SAME: f64 = 2.0;

impl Desk<'_, '_> {
    /// What a copy is made of.
    pub fn cloth(&self, copy: CopyId) -> Cloth {
        // Lengths of tape are drawn as the binding that they are cut beside.
        if self.is_tape(copy) {
            return Cloth::Binding;
        }
        self.edition.cast[copy].fabric.and_then(|fabric| self.cloths.get(fabric.at())).copied().unwrap_or(Cloth::Outer)
    }

    /// The class of a copy seen from one side, with what was fused to it.
    pub fn class(&self, copy: CopyId, face: Face) -> &'static str {
        let face = if self.past.is_folded(copy) { Face::Right } else { face };
        match (self.cloth(copy), face) {
            (Cloth::Wadding, _) => "wadding",
            (Cloth::Interfacing, _) => "interfacing",
            (Cloth::Binding, _) => "binding",
            (Cloth::Lining, Face::Right) => "lining",
            (Cloth::Quilted, Face::Wrong) => "wadding",
            (Cloth::Outer | Cloth::Quilted, Face::Right) => "right-side",
            (Cloth::Outer | Cloth::Lining, Face::Wrong) => match self.backing(copy) {
                Some((_, Cloth::Wadding)) => "wadding",
                Some(_) => "interfacing",
                None => self.bare(copy),
            },
        }
    }

    /// The class of the wrong side of a copy where nothing lies on it.
    pub fn bare(&self, copy: CopyId) -> &'static str {
        if self.cloth(copy) == Cloth::Lining { "lining-wrong" } else { "wrong-side" }
    }

    fn is_tape(&self, copy: CopyId) -> bool {
        self.edition.draft.facts.pieces[self.edition.cast[copy].piece].tape.is_some()
    }

    /// What lies on the wrong side of a copy since it was fused or quilted.
    fn backing(&self, copy: CopyId) -> Option<(CopyId, Cloth)> {
        let group = self.past.layers.iter().rev().find(|group| group.contains(&copy))?;
        group
            .iter()
            .filter(|other| **other != copy)
            .map(|other| (*other, self.cloth(*other)))
            .find(|(_, cloth)| matches!(cloth, Cloth::Wadding | Cloth::Interfacing))
    }

    /// The outline of what lies on the wrong side of a copy, in the middle of it, in the author's drawing; `None` where
    /// nothing does, or it is as large.
    pub fn smaller_layer(&self, copy: CopyId) -> Option<BezPath> {
        if !matches!(self.cloth(copy), Cloth::Outer | Cloth::Lining) {
            return None;
        }
        let (layer, _) = self.backing(copy)?;
        let outline = |copy: CopyId| {
            let shape = self.edition.values.shape(self.edition.cast[copy].piece)?;
            Some(shape.whole().cutting().path.clone())
        };
        let (own, on) = (outline(copy)?, outline(layer)?);
        let (room, size) = (own.bounding_box(), on.bounding_box());
        let smaller = size.width() < room.width() - SAME || size.height() < room.height() - SAME;
        smaller.then(|| Affine::translate(room.center() - size.center()) * on)
    }

    /// Which side is up, in words; empty for layers without sides.
    pub fn side(&self, copy: CopyId, face: Face) -> &'static str {
        match (self.class(copy, face), face) {
            _ if self.is_tape(copy) || self.past.is_folded(copy) => "",
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
