//! Pieces on a page that is as long as it has to be.

use super::arrange::{GAP, Oblong, Spot};
use crate::nest::{Effort, Item, NestFault, Strip, Turns, nest};

/// A page as long as it has to be: the pieces are laid one behind the other by their boxes. Gives the
/// places, the page's part of the plan, and the pieces that are too wide for it.
pub(super) fn endless(boxes: &[Oblong], width: f64) -> (Vec<Spot>, (f64, f64), Vec<usize>) {
    let mut kept: Vec<usize> = (0..boxes.len()).collect();
    let mut too_large = Vec::new();
    let mut spots = vec![Spot { x: 0.0, y: 0.0, turned: false }; boxes.len()];
    loop {
        let items: Vec<Item> = kept
            .iter()
            .map(|at| {
                let one = boxes[*at];
                Item {
                    outline: vec![[0.0, 0.0], [one.width, 0.0], [one.width, one.height], [0.0, one.height]],
                    turns: if one.may_turn { Turns::Quarter } else { Turns::Fixed },
                    may_flip: false,
                    on_fold: one.fixed,
                }
            })
            .collect();
        match nest(&items, &Strip { width, gap: GAP }, Effort::Quick) {
            Ok(layout) => {
                for place in &layout.places {
                    spots[kept[place.item]] = Spot { x: place.x, y: place.y, turned: place.quarter_turns % 2 == 1 };
                }
                return (spots, (width, layout.length + 0.01), too_large);
            }
            Err(faults) => {
                let wide: Vec<usize> = faults
                    .iter()
                    .filter_map(|fault| match fault {
                        NestFault::TooWide { item, .. } | NestFault::NoArea { item } => Some(kept[*item]),
                        NestFault::NoStrip => None,
                    })
                    .collect();
                if wide.is_empty() {
                    return (spots, (width, 0.0), too_large);
                }
                kept.retain(|at| !wide.contains(at));
                // The first box is the gauge; pieces are counted from nought.
                too_large.extend(wide.iter().filter_map(|at| at.checked_sub(1)));
            }
        }
    }
}
