//! What there is to know of a thing at a glance, on its way to the templates.

use serde_json::{Value as Json, json};

use super::setter::{Setter, path};
use crate::book::ThingDrawing;

impl Setter<'_> {
    /// Gives the data the drawings of the thing, those of the cover, and how long the work takes.
    pub fn glance(&self, data: &mut Json) {
        let drawn = |things: &[ThingDrawing]| things.iter().map(|thing| self.thing(thing)).collect::<Json>();
        data["things"] = drawn(&self.book.things);
        // An author's own drawing goes before the compiler's.
        let own = &self.book.cover_drawn;
        data["cover"] = drawn(if own.is_empty() { &self.book.things } else { own });
        data["time"] = self.blocks(&self.book.time);
    }

    pub(super) fn thing(&self, thing: &ThingDrawing) -> Json {
        let drawing = self.book.drawings.get(&thing.drawing);
        let view = self.book.views.iter().find(|view| view.sizes.contains(&thing.size));
        let of_it = |size: &&usize| view.is_none_or(|view| view.sizes.contains(*size));
        let several = self.book.shown.iter().filter(of_it).count() > 1;
        json!({
            "path": path(&thing.drawing),
            "width": drawing.map_or(0.0, |drawing| drawing.width),
            "height": drawing.map_or(0.0, |drawing| drawing.height),
            // A thing that is shown in one size alone need not say which.
            "size": self.book.sizes.get(thing.size).filter(|_| several).map(|size| size.name.clone()),
            "view": view.map(|view| view.name.clone()),
        })
    }
}
