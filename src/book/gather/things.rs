//! The thing of one size made up, and at the end of each part.

use super::gatherer::Gatherer;
use crate::book::thing::{MADE_UP, OWN_COVER, ThingDrawing};
use crate::figure::COVER;

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

    /// The author's drawing for the cover, where it is a diagram.
    pub fn cover(&mut self) -> Vec<ThingDrawing> {
        let Some(figure) = self.supplies.figures.get(self.size, COVER) else { return Vec::new() };
        self.draw(OWN_COVER, &figure.svg, (figure.width, figure.height), Some(figure.path.clone()));
        vec![ThingDrawing { size: self.size, drawing: OWN_COVER.to_owned() }]
    }

    /// The state at the end of a part, by its place among those of the size.
    pub fn state(&mut self, nth: usize, id: &str) -> Vec<ThingDrawing> {
        let Some(Some(thing)) = self.supplies.things.states.get(nth) else { return Vec::new() };
        let name = format!("thing/part-{id}");
        self.draw(&name, &thing.svg, thing.size, None);
        vec![ThingDrawing { size: self.size, drawing: name }]
    }
}
