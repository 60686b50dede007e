//! Random pieces on random strips: every layout is sound.

use notchbook::nest::{Effort, Item, Strip, Turns};
use proptest::prelude::{Strategy, prop, proptest};
use proptest::test_runner::Config;

use crate::{laid, rectangle};

/// A star-shaped outline of 3 to 12 corners, up to 300 across.
fn outline() -> impl Strategy<Value = Vec<[f64; 2]>> {
    prop::collection::vec(20.0f64..150.0, 3..12).prop_map(|reaches| {
        let count = reaches.len() as f64;
        let corner = |(index, reach): (usize, f64)| {
            let angle = index as f64 / count * std::f64::consts::TAU;
            [reach * angle.cos(), reach * angle.sin()]
        };
        reaches.into_iter().enumerate().map(corner).collect()
    })
}

fn turns() -> impl Strategy<Value = Turns> {
    prop::sample::select(vec![Turns::Fixed, Turns::Half, Turns::Quarter])
}

fn piece() -> impl Strategy<Value = Item> {
    (
        outline(),
        turns(),
        prop::bool::ANY,
        prop::bool::weighted(0.2),
    )
        .prop_map(|(outline, turns, may_flip, on_fold)| Item {
            outline,
            turns,
            may_flip,
            on_fold,
        })
}

fn oblong() -> impl Strategy<Value = Item> {
    (
        10.0f64..290.0,
        10.0f64..290.0,
        turns(),
        prop::bool::weighted(0.2),
    )
        .prop_map(|(width, height, turns, on_fold)| Item {
            on_fold,
            ..rectangle(width, height, turns)
        })
}

proptest! {
    #![proptest_config(Config { cases: 12, failure_persistence: None, ..Config::default() })]

    #[test]
    fn outlines_never_overlap(
        items in prop::collection::vec(piece(), 1..7),
        width in 301.0f64..900.0,
        gap in prop::sample::select(vec![0.0, 3.0, 12.5]),
    ) {
        laid(&items, &Strip { width, gap }, Effort::Quick);
    }

    #[test]
    fn rectangles_never_overlap(
        items in prop::collection::vec(oblong(), 1..25),
        width in 301.0f64..900.0,
        gap in prop::sample::select(vec![0.0, 3.0, 12.5]),
    ) {
        laid(&items, &Strip { width, gap }, Effort::Quick);
    }
}
