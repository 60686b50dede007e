//! Outlines that are no rectangles: they must save cloth over laying their boxes, keep their
//! distance, and stay on the fold where they belong.

use std::time::Instant;

use notchbook::nest::{Effort, Item, Strip, Turns, nest};

use crate::checker::wrongs;
use crate::{item, laid, rectangle};

/// The length when every outline is replaced by its box.
fn boxed(items: &[Item], strip: &Strip) -> f64 {
    let boxes: Vec<Item> = items
        .iter()
        .map(|item| {
            let most = |axis: usize| {
                item.outline
                    .iter()
                    .map(|point| point[axis])
                    .fold(0.0, f64::max)
            };
            Item {
                outline: rectangle(most(0), most(1), item.turns).outline,
                ..item.clone()
            }
        })
        .collect();
    laid(&boxes, strip, Effort::Quick).length
}

/// Lays by outline and by box; asserts that so many per cent are saved, and gives the length.
fn saves(items: &[Item], strip: &Strip, percent: f64) -> f64 {
    let (ours, boxes) = (
        laid(items, strip, Effort::Quick).length,
        boxed(items, strip),
    );
    let saved = (1.0 - ours / boxes) * 100.0;
    println!(
        "{} pieces: {ours:.2} mm, boxes {boxes:.2} mm, {saved:.1} % saved",
        items.len()
    );
    assert!(
        saved >= percent,
        "{saved} % saved: {ours} mm against {boxes} mm"
    );
    ours
}

fn strip(width: f64, gap: f64) -> Strip {
    Strip { width, gap }
}

const ANGLE: [[f64; 2]; 6] = [
    [0.0, 0.0],
    [200.0, 0.0],
    [200.0, 400.0],
    [600.0, 400.0],
    [600.0, 600.0],
    [0.0, 600.0],
];

#[test]
fn angles_interlock() {
    // Two of them, turned end for end, make a block 800 long where their boxes take 1200.
    let pair = vec![item(&ANGLE, Turns::Half); 2];
    let length = saves(&pair, &strip(600.0, 0.0), 33.0);
    assert!((length - 800.0).abs() < 0.01, "{length}");
    let four = vec![item(&ANGLE, Turns::Half); 4];
    saves(&four, &strip(600.0, 0.0), 33.0);
}

#[test]
fn angles_that_may_not_turn_save_less() {
    let four = vec![item(&ANGLE, Turns::Fixed); 4];
    let fixed = laid(&four, &strip(900.0, 0.0), Effort::Quick).length;
    let half = laid(
        &vec![item(&ANGLE, Turns::Half); 4],
        &strip(900.0, 0.0),
        Effort::Quick,
    )
    .length;
    assert!(half <= fixed, "{half} against {fixed}");
}

#[test]
fn triangles_pair_up_to_rectangles() {
    let triangle = [[0.0, 0.0], [300.0, 0.0], [0.0, 180.0]];
    let six = vec![item(&triangle, Turns::Half); 6];
    let length = saves(&six, &strip(300.0, 0.0), 49.0);
    assert!((length - 540.0).abs() < 0.05, "{length}");
}

#[test]
fn half_turned_trapezia_lie_side_by_side() {
    // A wide and a narrow end side by side are 600 across; two boxes would be 800.
    let skirt = [[100.0, 0.0], [300.0, 0.0], [400.0, 500.0], [0.0, 500.0]];
    let four = vec![item(&skirt, Turns::Half); 4];
    let length = saves(&four, &strip(705.0, 0.0), 49.0);
    assert!((length - 1000.0).abs() < 0.05, "{length}");
}

#[test]
fn a_small_piece_lies_in_a_hollow() {
    let hollow = [
        [0.0, 0.0],
        [500.0, 0.0],
        [500.0, 400.0],
        [350.0, 400.0],
        [350.0, 100.0],
        [150.0, 100.0],
        [150.0, 400.0],
        [0.0, 400.0],
    ];
    let items = [
        item(&hollow, Turns::Fixed),
        rectangle(185.0, 280.0, Turns::Fixed),
    ];
    let length = saves(&items, &strip(505.0, 5.0), 40.0);
    assert!((length - 400.0).abs() < 0.01, "{length}");
}

/// A front with a curved armhole, as a sewist would draw it: 300 by 560.
fn bodice() -> Vec<[f64; 2]> {
    let mut outline = vec![[0.0, 80.0], [70.0, 0.0], [190.0, 30.0]];
    for part in 1..=24 {
        // A quarter of an ellipse bulging into the piece, from the shoulder to the side.
        let angle = f64::from(part) / 24.0 * std::f64::consts::FRAC_PI_2;
        outline.push([300.0 - 110.0 * angle.cos(), 30.0 + 200.0 * angle.sin()]);
    }
    outline.extend([[285.0, 560.0], [0.0, 560.0]]);
    outline
}

/// A sleeve with a rounded head: 360 by 520.
fn sleeve() -> Vec<[f64; 2]> {
    let mut outline = Vec::new();
    for part in 0..=30 {
        let angle = f64::from(part) / 30.0 * std::f64::consts::PI;
        outline.push([180.0 - 180.0 * angle.cos(), 140.0 - 140.0 * angle.sin()]);
    }
    outline.extend([[300.0, 520.0], [60.0, 520.0]]);
    outline
}

/// The pieces of an invented shirt, on the fold and off it.
fn shirt() -> Vec<Item> {
    let on_fold = |outline: &[[f64; 2]]| Item {
        on_fold: true,
        ..item(outline, Turns::Half)
    };
    let free = |outline: &[[f64; 2]]| Item {
        may_flip: true,
        ..item(outline, Turns::Half)
    };
    vec![
        on_fold(&bodice()),
        free(&bodice()),
        free(&sleeve()),
        on_fold(&[[0.0, 0.0], [210.0, 0.0], [230.0, 70.0], [0.0, 60.0]]),
        free(&[[0.0, 0.0], [240.0, 0.0], [240.0, 70.0], [0.0, 70.0]]),
        free(&[
            [0.0, 0.0],
            [130.0, 0.0],
            [130.0, 110.0],
            [65.0, 150.0],
            [0.0, 110.0],
        ]),
    ]
}

#[test]
fn a_shirt_on_doubled_cloth_saves_over_boxes() {
    saves(&shirt(), &strip(700.0, 10.0), 3.0);
}

#[test]
fn pieces_on_the_fold_stay_there_and_turn_only_end_for_end() {
    let wedge = [[0.0, 0.0], [300.0, 0.0], [100.0, 400.0], [0.0, 400.0]];
    let on_fold = Item {
        on_fold: true,
        may_flip: true,
        ..item(&wedge, Turns::Half)
    };
    let layout = laid(
        &[on_fold.clone(), on_fold.clone()],
        &strip(320.0, 0.0),
        Effort::Quick,
    );
    // Both lie on the fold, so neither can slip beside the other.
    assert!((layout.length - 800.0).abs() < 0.01, "{}", layout.length);
    let with_nap = Item {
        turns: Turns::Fixed,
        ..on_fold
    };
    let layout = laid(
        &[with_nap.clone(), with_nap],
        &strip(320.0, 0.0),
        Effort::Quick,
    );
    assert!(
        layout
            .places
            .iter()
            .all(|place| place.quarter_turns == 0 && !place.flipped)
    );
}

#[test]
fn a_rectangle_on_the_fold_stays_there() {
    let mut items = vec![rectangle(300.0, 200.0, Turns::Quarter); 5];
    items[3].on_fold = true;
    items[4].on_fold = true;
    let layout = laid(&items, &strip(620.0, 10.0), Effort::Quick);
    assert!(layout.places[3].x == 0.0 && layout.places[4].x == 0.0);
}

#[test]
fn the_gap_is_kept_round_corners() {
    let kite = [[100.0, 0.0], [200.0, 150.0], [100.0, 200.0], [0.0, 150.0]];
    let items = vec![
        Item {
            may_flip: true,
            ..item(&kite, Turns::Quarter)
        };
        5
    ];
    let tight = laid(&items, &strip(420.0, 0.0), Effort::Quick).length;
    let apart = laid(&items, &strip(420.0, 12.0), Effort::Quick).length;
    assert!(apart > tight, "{apart} against {tight}");
}

#[test]
fn pieces_that_fill_the_width_exactly_lie_side_by_side() {
    // No column of the quick search begins where the second piece has to lie.
    let tab = [
        [0.0, 0.0],
        [70.3, 0.0],
        [70.3, 100.0],
        [35.0, 120.0],
        [0.0, 100.0],
    ];
    let items = vec![item(&tab, Turns::Fixed); 2];
    let length = laid(&items, &strip(140.6, 0.0), Effort::Quick).length;
    assert!((length - 120.0).abs() < 0.01, "{length}");
}

#[test]
fn the_same_pieces_get_the_same_layout() {
    let once = laid(&shirt(), &strip(700.0, 10.0), Effort::Quick);
    let again = laid(&shirt(), &strip(700.0, 10.0), Effort::Quick);
    assert_eq!(once, again);
}

/// Ten shirts, no two pieces alike: shown with `-- --ignored --nocapture sixty`.
#[test]
#[ignore = "prints a time, asserts nothing about it: run with --release"]
fn sixty_pieces_in_time() {
    let strip = strip(750.0, 10.0);
    let sized = |size: usize| {
        let scale = 1.0 + size as f64 / 100.0;
        shirt().into_iter().map(move |item| Item {
            outline: item
                .outline
                .iter()
                .map(|[x, y]| [x * scale, y * scale])
                .collect(),
            ..item
        })
    };
    let items: Vec<Item> = (0..10).flat_map(sized).collect();
    let boxes = boxed(&items, &strip);
    for effort in [Effort::Quick, Effort::Usual, Effort::Thorough] {
        let start = Instant::now();
        let layout = nest(&items, &strip, effort).expect("pieces that fit");
        let time = start.elapsed();
        assert!(wrongs(&items, &strip, &layout).is_empty());
        println!(
            "{effort:?}: {:.0} mm, boxes {boxes:.0} mm, {time:?}",
            layout.length
        );
    }
}
