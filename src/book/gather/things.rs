//! The thing of one size made up, and at the end of each part.

use super::gatherer::Gatherer;
use crate::book::thing::{MADE_UP, ThingDrawing};

impl Gatherer<'_> {
    /// The thing made up, where the facts tell what it looks like.
    pub fn made_up(&mut self) -> Vec<ThingDrawing> {
        let things = self.supplies.things;
        let both = [&things.measured, &things.plain];
        for (name, thing) in MADE_UP.into_iter().zip(both) {
            if let Some(thing) = thing {
                self.draw(name, &thing.svg, thing.size, None);
            }
        }
        let drawn = things.measured.is_some() && things.plain.is_some();
        if drawn { vec![ThingDrawing { size: self.size, drawing: MADE_UP[0].to_owned() }] } else { Vec::new() }
    }

    /// The state at the end of a part, by its place among those of the size.
    pub fn state(&mut self, nth: usize, id: &str) -> Vec<ThingDrawing> {
        let Some(Some(thing)) = self.supplies.things.states.get(nth) else { return Vec::new() };
        let name = format!("thing/part-{id}");
        self.draw(&name, &thing.svg, thing.size, None);
        vec![ThingDrawing { size: self.size, drawing: name }]
    }
}
