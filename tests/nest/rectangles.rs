//! The published sets: every layout is sound, and near the best length that can be.

use std::time::Instant;

use notchbook::nest::{Effort, Item, Strip, Turns, nest};

use crate::checker::wrongs;
use crate::{laid, rectangle};

/// The two files of rectangles; each says at its top who published it and where it was read.
const SETS: [&str; 2] = [
    include_str!("hopper-turton.csv"),
    include_str!("burke-kendall-whitwell.csv"),
];

/// What this code reached when the bounds were recorded, rounded up to a hundredth of a per cent.
const BOUNDS: &str = include_str!("bounds.csv");

struct Instance {
    name: String,
    width: f64,
    best: f64,
    items: Vec<Item>,
}

fn instances() -> Vec<Instance> {
    let mut all: Vec<Instance> = Vec::new();
    let rows = SETS
        .iter()
        .flat_map(|set| set.lines().filter(|line| !line.starts_with('#')).skip(1));
    for row in rows {
        let cells: Vec<&str> = row.split(',').collect();
        let number = |index: usize| cells[index].parse::<f64>().expect("a number");
        if all.last().is_none_or(|last| last.name != cells[0]) {
            all.push(Instance {
                name: cells[0].to_owned(),
                width: number(1),
                best: number(2),
                items: Vec::new(),
            });
        }
        let last = all.last_mut().expect("an instance");
        // Both sources let a rectangle be turned by a quarter.
        last.items
            .push(rectangle(number(3), number(4), Turns::Quarter));
    }
    all
}

/// The most that an instance may miss the best length by, in per cent: with quick and with usual
/// effort.
fn bounds(name: &str) -> [f64; 2] {
    let row = BOUNDS
        .lines()
        .find_map(|line| line.strip_prefix(name)?.strip_prefix(','));
    let (quick, usual) = row.and_then(|row| row.split_once(',')).expect("two bounds");
    [quick, usual].map(|cell| cell.parse().expect("a number"))
}

/// A copied digit that is wrong would show here: the sets were cut from rectangles without waste.
#[test]
fn the_sets_are_whole() {
    let all = instances();
    assert_eq!(all.len(), 33);
    for each in &all {
        let area: f64 = each
            .items
            .iter()
            .map(|item| item.outline[2][0] * item.outline[2][1])
            .sum();
        assert_eq!(area, each.width * each.best, "{}", each.name);
    }
    let counts: Vec<usize> = all.iter().map(|each| each.items.len()).collect();
    let hopper_turton = [
        16, 17, 16, 25, 25, 25, 28, 29, 28, 49, 49, 49, 73, 73, 73, 97, 97, 97, 196, 197, 196,
    ];
    assert_eq!(counts[..21], hopper_turton);
    assert_eq!(
        counts[21..],
        [10, 20, 30, 40, 50, 60, 70, 80, 100, 200, 300, 500]
    );
}

/// Lays every instance, prints it with its bound, and fails when one is over.
fn compare(effort: Effort) {
    let mut lines = vec![
        format!("{effort:?} effort"),
        "instance    n    best    ours   gap %   bound %   ms".to_owned(),
    ];
    let mut missed = Vec::new();
    for each in instances() {
        let strip = Strip {
            width: each.width,
            gap: 0.0,
        };
        let start = Instant::now();
        let layout = nest(&each.items, &strip, effort).expect("rectangles that fit");
        let time = start.elapsed().as_millis();
        let wrong = wrongs(&each.items, &strip, &layout);
        assert!(wrong.is_empty(), "{}: {}", each.name, wrong.join("\n"));
        let length = layout.length;
        let gap = (length / each.best - 1.0) * 100.0;
        let bound = bounds(&each.name)[usize::from(effort != Effort::Quick)];
        let (name, count, best) = (&each.name, each.items.len(), each.best);
        lines.push(format!(
            "{name:<8}{count:>5}{best:>8}{length:>8.0}{gap:>8.2}{bound:>10.2}{time:>5}"
        ));
        assert!(gap > -1e-6, "{name} is shorter than can be");
        if gap > bound + 1e-6 {
            missed.push(each.name);
        }
    }
    println!("{}", lines.join("\n"));
    assert!(missed.is_empty(), "over their bounds: {missed:?}");
}

/// Shown with `cargo test --release --test nest -- --nocapture table`.
#[test]
fn quick_table() {
    compare(Effort::Quick);
}

#[test]
#[cfg_attr(
    debug_assertions,
    ignore = "takes minutes without optimisation: run with --release"
)]
fn usual_table() {
    compare(Effort::Usual);
}

#[test]
fn every_bound_is_five_per_cent_or_less() {
    for each in instances() {
        let [quick, usual] = bounds(&each.name);
        assert!(usual <= quick && quick <= 5.0, "{}", each.name);
    }
}

/// A greater budget goes on where a smaller one stopped.
#[test]
#[cfg_attr(
    debug_assertions,
    ignore = "takes minutes without optimisation: run with --release"
)]
fn more_effort_never_lengthens_a_layout_of_rectangles() {
    for each in instances() {
        let strip = Strip {
            width: each.width,
            gap: 0.0,
        };
        let quick = laid(&each.items, &strip, Effort::Quick).length;
        let usual = laid(&each.items, &strip, Effort::Usual).length;
        assert!(usual <= quick, "{}", each.name);
    }
}

/// Two pieces that fit side by side only when both are turned: no single turn makes the cloth shorter.
#[test]
fn two_that_must_both_be_turned() {
    let panel = Item {
        outline: vec![[0.0, 0.0], [510.0, 0.0], [510.0, 381.0], [0.0, 381.0]],
        turns: Turns::Quarter,
        may_flip: false,
        on_fold: false,
    };
    let strip = Strip {
        width: 880.0,
        gap: 4.0,
    };
    for effort in [Effort::Quick, Effort::Usual] {
        let layout = nest(&[panel.clone(), panel.clone()], &strip, effort).expect("both fit");
        assert!(
            (layout.length - 510.0).abs() < 1e-6,
            "{effort:?}: {}",
            layout.length
        );
    }
}
