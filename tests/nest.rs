//! Laying pieces on cloth: published sets of rectangles and of outlines, outlines that must nest into
//! each other, and a checker of its own for every layout.

#[path = "nest/checker.rs"]
mod checker;
#[path = "nest/cutting_sets.rs"]
mod cutting_sets;
#[path = "nest/faults.rs"]
mod faults;
#[path = "nest/outlines.rs"]
mod outlines;
#[path = "nest/random.rs"]
mod random;
#[path = "nest/rectangles.rs"]
mod rectangles;

use notchbook::nest::{Effort, Item, Layout, Strip, Turns, nest};

/// A piece that may be turned, not flipped, and does not lie on the fold.
fn item(outline: &[[f64; 2]], turns: Turns) -> Item {
    Item {
        outline: outline.to_vec(),
        turns,
        may_flip: false,
        on_fold: false,
    }
}

/// A rectangle of a width and a height.
fn rectangle(width: f64, height: f64, turns: Turns) -> Item {
    item(
        &[[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]],
        turns,
    )
}

/// Lays the items and checks the layout.
fn laid(items: &[Item], strip: &Strip, effort: Effort) -> Layout {
    let layout = nest(items, strip, effort).expect("pieces that fit the strip");
    let wrong = checker::wrongs(items, strip, &layout);
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    layout
}
