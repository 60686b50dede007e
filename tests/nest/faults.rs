//! What cannot be laid is named, every piece of it.

use notchbook::nest::{Effort, Item, NestFault, Strip, Turns, nest};

use crate::{item, laid, rectangle};

#[test]
fn pieces_that_are_too_wide_are_all_named() {
    let items = [
        rectangle(500.0, 100.0, Turns::Half),
        rectangle(500.0, 100.0, Turns::Quarter),
        rectangle(450.0, 420.0, Turns::Quarter),
    ];
    let faults = nest(
        &items,
        &Strip {
            width: 400.0,
            gap: 5.0,
        },
        Effort::Quick,
    );
    let expected = vec![
        NestFault::TooWide {
            item: 0,
            width: 500.0,
        },
        NestFault::TooWide {
            item: 2,
            width: 420.0,
        },
    ];
    assert_eq!(faults, Err(expected));
}

#[test]
fn a_quarter_turn_is_no_way_out_on_the_fold() {
    let wide = Item {
        on_fold: true,
        ..rectangle(500.0, 100.0, Turns::Quarter)
    };
    let faults = nest(
        &[wide],
        &Strip {
            width: 400.0,
            gap: 0.0,
        },
        Effort::Quick,
    );
    assert_eq!(
        faults,
        Err(vec![NestFault::TooWide {
            item: 0,
            width: 500.0
        }])
    );
}

#[test]
fn outlines_that_enclose_nothing_are_named() {
    let items = [
        item(&[], Turns::Half),
        item(&[[0.0, 0.0], [10.0, 0.0]], Turns::Half),
        item(&[[0.0, 0.0], [10.0, 0.0], [20.0, 0.0]], Turns::Half),
        item(&[[0.0, 0.0], [f64::NAN, 0.0], [20.0, 30.0]], Turns::Half),
        item(
            &[[0.0, 0.0], [f64::INFINITY, 0.0], [20.0, 30.0]],
            Turns::Half,
        ),
        rectangle(20.0, 20.0, Turns::Half),
    ];
    let faults = nest(
        &items,
        &Strip {
            width: 400.0,
            gap: 0.0,
        },
        Effort::Quick,
    );
    let expected: Vec<NestFault> = (0..5).map(|item| NestFault::NoArea { item }).collect();
    assert_eq!(faults, Err(expected));
}

#[test]
fn a_strip_without_width_is_refused() {
    for (width, gap) in [
        (0.0, 0.0),
        (-1.0, 0.0),
        (f64::NAN, 0.0),
        (100.0, -1.0),
        (100.0, f64::NAN),
    ] {
        let faults = nest(&[], &Strip { width, gap }, Effort::Quick);
        assert_eq!(faults, Err(vec![NestFault::NoStrip]), "{width} {gap}");
    }
}

#[test]
fn nothing_takes_no_cloth() {
    let layout = laid(
        &[],
        &Strip {
            width: 400.0,
            gap: 5.0,
        },
        Effort::Usual,
    );
    assert!(layout.length == 0.0 && layout.places.is_empty());
}

#[test]
fn a_piece_as_wide_as_the_strip_fits() {
    let layout = laid(
        &[rectangle(400.0, 70.0, Turns::Fixed)],
        &Strip {
            width: 400.0,
            gap: 25.0,
        },
        Effort::Quick,
    );
    assert!((layout.length - 70.0).abs() < 1e-6, "{}", layout.length);
}

#[test]
fn a_hair_too_wide_is_not_too_wide() {
    let width = 20.000_000_5;
    let flag = [
        [0.0, 0.0],
        [width, 0.0],
        [width - 4.0, 7.0],
        [width, 14.0],
        [0.0, 14.0],
    ];
    let items = vec![item(&flag, Turns::Half); 2];
    let strip = Strip {
        width: 20.0,
        gap: 0.0,
    };
    let layout = laid(&items, &strip, Effort::Quick);
    assert!((layout.length - 28.0).abs() < 0.01, "{}", layout.length);
}
