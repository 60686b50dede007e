//! What a copy looks like from either side, and what it is called on a drawing.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::cloth::{Cloth, Face};
use super::desk::Desk;
use super::page::Page;
use super::part::Part;
use super::past::millimetres;
use crate::model::{Matter, Notion, NotionFigure};
use crate::resolve::{CopyId, NotionId};

/// How much smaller a layer is drawn no smaller, in mm of cloth.
const SAME: f64 = 2.0;
/// How large the arrow along the pile is, in mm on paper.
const NAP: f64 = 7.0;

impl Desk<'_, '_> {
    /// What a copy is made of.
    pub fn cloth(&self, copy: CopyId) -> Cloth {
        // Lengths of tape are cut from no cloth; what they are made of is told by their class.
        if self.is_tape(copy) {
            return Cloth::Binding;
        }
        self.edition.cast[copy].fabric.and_then(|fabric| self.cloths.get(fabric.at())).copied().unwrap_or(Cloth::Outer)
    }

    /// The class of a copy seen from one side, with what was fused to it.
    pub fn class(&self, copy: CopyId, face: Face) -> &'static str {
        if let Some(tape) = &self.edition.draft.facts.pieces[self.edition.cast[copy].piece].tape {
            let notions = &self.edition.draft.facts.notions;
            return notions.iter().find(|notion| notion.id.text == tape.text).map_or("webbing", class_of);
        }
        let face = if self.past.is_folded(copy) { Face::Right } else { face };
        match (self.cloth(copy), face) {
            (Cloth::Wadding, _) => "wadding",
            (Cloth::Interfacing, _) => "interfacing",
            (Cloth::Binding, _) => "binding",
            (Cloth::Foam, _) => "foam",
            (Cloth::Felt, Face::Right) => "felt",
            (Cloth::Fur, Face::Right) => "fur",
            (Cloth::Leather, Face::Right) => "leather",
            (Cloth::Lining, Face::Right) => "lining",
            (Cloth::Quilted, Face::Wrong) => "wadding",
            (Cloth::Outer | Cloth::Quilted, Face::Right) => "right-side",
            (_, Face::Wrong) => match self.backing(copy) {
                Some((_, Cloth::Wadding)) => "wadding",
                Some((_, Cloth::Foam)) => "foam",
                Some(_) => "interfacing",
                None => self.bare(copy),
            },
        }
    }

    /// The class of a strip of a notion.
    pub fn strip(&self, notion: NotionId) -> &'static str {
        class_of(&self.edition.draft.facts.notions[notion])
    }

    /// The class of the wrong side of a copy where nothing lies on it.
    pub fn bare(&self, copy: CopyId) -> &'static str {
        match self.cloth(copy) {
            Cloth::Lining => "lining-wrong",
            Cloth::Felt => "felt",
            _ => "wrong-side",
        }
    }

    /// A length of a notion, in mm of cloth; `None` where it has none.
    pub fn figure(&self, notion: NotionId, figure: NotionFigure) -> Option<f64> {
        let value = self.edition.draft.facts.notions[notion].figures.get(&figure)?;
        self.edition.values.quiet(value.get(self.edition.size())?).and_then(millimetres)
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
            .find(|(_, cloth)| cloth.is_layer())
    }

    /// The outline of what lies on the wrong side of a copy, in the middle of it, in the author's drawing; `None` where
    /// nothing does, or it is as large.
    pub fn smaller_layer(&self, copy: CopyId) -> Option<BezPath> {
        if !self.cloth(copy).is_outer() && self.cloth(copy) != Cloth::Lining {
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
    pub fn side(&self, copy: CopyId, face: Face) -> String {
        let words = match (self.class(copy, face), face) {
            _ if self.is_tape(copy) || self.past.is_folded(copy) => return String::new(),
            _ if self.cloth(copy).is_layer() => return String::new(),
            ("felt", _) => return String::new(),
            ("wadding", Face::Wrong) => "draw_wadding_up",
            ("foam", Face::Wrong) => "draw_foam_up",
            (_, Face::Right) => "cloth_right_side",
            (_, Face::Wrong) => "cloth_wrong_side",
        };
        self.say(words, &[])
    }

    /// Which way the pile of a copy runs in its author's drawing: down a piece, along its grain (common practice, no
    /// source); `None` where it has none, or lies slanting.
    pub fn nap(&self, copy: CopyId) -> Option<Vec2> {
        if self.cloth(copy) != Cloth::Fur {
            return None;
        }
        match self.edition.draft.facts.pieces[self.edition.cast[copy].piece].grain.as_ref()?.text.as_str() {
            "vertical" => Some(Vec2::new(0.0, 1.0)),
            "horizontal" => Some(Vec2::new(1.0, 0.0)),
            _ => None,
        }
    }

    /// The arrow along the pile of a part whose right side is up, where there is room for it.
    pub fn nap_arrow(&self, page: &mut Page<'_>, part: &Part) {
        self.nap_arrows(page, &[part]);
    }

    /// The same for parts on each other, the lowest first: where it is seen under the others. Laid right sides together, the
    /// pile of all must run one way, so that the upper ones show on their wrong sides how it runs.
    pub fn nap_arrows(&self, page: &mut Page<'_>, parts: &[&Part]) {
        let napped = parts.iter().filter(|part| part.nap.is_some()).count();
        for (at, part) in parts.iter().enumerate().filter(|(_, part)| part.face == Face::Right || napped > 1) {
            self.arrow_along(page, part, &parts[at + 1..]);
        }
    }

    fn arrow_along(&self, page: &mut Page<'_>, part: &Part, over: &[&Part]) {
        let Some(way) = part.nap else { return };
        let bounds = part.bounds();
        let places = [
            (0.2, 0.25),
            (0.8, 0.25),
            (0.2, 0.75),
            (0.8, 0.75),
            (0.5, 0.2),
            (0.5, 0.8),
            (0.5, 0.5),
            (0.2, 0.5),
            (0.8, 0.5),
        ];
        let at = |(x, y): (f64, f64)| Point::new(bounds.x0 + bounds.width() * x, bounds.y0 + bounds.height() * y);
        let room = |middle: Point| Rect::from_center_size(middle, (NAP, NAP));
        let fits = |middle: &Point| {
            let room = room(*middle);
            let corners = [(room.x0, room.y0), (room.x1, room.y0), (room.x1, room.y1), (room.x0, room.y1)];
            let corners = corners.map(|(x, y)| Point::new(x, y));
            let hidden = |point: &Point| over.iter().any(|upper| upper.visible.contains(*point));
            page.is_free(room) && corners.iter().all(|point| part.visible.contains(*point) && !hidden(point))
        };
        if let Some(middle) = places.into_iter().map(at).find(fits) {
            // The symbol points downwards.
            page.symbol("nap", middle, NAP, way.atan2().to_degrees() - 90.0);
        }
    }
}

/// How a notion is drawn that lies as a strip.
fn class_of(notion: &Notion) -> &'static str {
    match notion.look {
        Some(Matter::Elastic) => "elastic",
        Some(Matter::HookLoop) => "hook-loop",
        Some(Matter::Foam) => "foam",
        Some(Matter::Felt) => "felt",
        Some(Matter::Leather) => "leather",
        Some(Matter::Wadding) => "wadding",
        Some(Matter::Interfacing) => "interfacing",
        Some(Matter::Webbing) => "webbing",
        _ => "binding",
    }
}
