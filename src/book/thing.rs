//! The thing that a book is for, drawn from its facts.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

/// The drawing of a thing made up in one size, by its name among the drawings of that size; with its measurements in
/// the first, without them in the second.
pub const MADE_UP: [&str; 2] = ["thing/measured", "thing/plain"];

/// The author's drawing for the cover, by its name among the drawings.
pub const OWN_COVER: &str = "cover/drawn";

/// A thing as it looks in one size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ThingDrawing {
    /// The size that is drawn, by its place among the sizes.
    pub size: usize,
    /// The drawing, by its name among the drawings.
    pub drawing: String,
}

/// Of the drawings of several sizes of each thing, that of the size in the middle.
pub fn one_of_each(views: &[Vec<usize>], all: &[ThingDrawing]) -> Vec<ThingDrawing> {
    let of_view = |size: usize| views.iter().position(|sizes| sizes.contains(&size));
    let kinds: BTreeSet<Option<usize>> = all.iter().map(|one| of_view(one.size)).collect();
    let middle = |kind: &Option<usize>| {
        let own: Vec<&ThingDrawing> = all.iter().filter(|one| of_view(one.size) == *kind).collect();
        own.get(own.len() / 2).copied().cloned()
    };
    kinds.iter().filter_map(middle).collect()
}
