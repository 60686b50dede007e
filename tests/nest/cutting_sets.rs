//! The published cutting sets: every layout is sound, and as dense as it was when its bound was recorded.

use std::time::Instant;

use notchbook::nest::{Effort, Item, Strip, Turns, nest};

use crate::checker::wrongs;
use crate::item;

/// The pieces; who published them stands at the top.
const SETS: &str = include_str!("cutting-sets.csv");

/// The density that each set reached when the bounds were recorded, rounded down to a hundredth of a per cent.
const BOUNDS: &str = include_str!("densities.csv");

struct Set {
    name: &'static str,
    strip: Strip,
    best: f64,
    items: Vec<Item>,
}

impl Set {
    fn area(&self) -> f64 {
        let area = |item: &Item| {
            let next = item.outline.iter().cycle().skip(1);
            let twice = item
                .outline
                .iter()
                .zip(next)
                .map(|(from, to)| from[0] * to[1] - to[0] * from[1]);
            (twice.sum::<f64>() / 2.0).abs()
        };
        self.items.iter().map(area).sum()
    }

    /// How much of a strip so long is covered, in per cent.
    fn density(&self, length: f64) -> f64 {
        100.0 * self.area() / (length * self.strip.width)
    }
}

fn sets() -> Vec<Set> {
    let mut all: Vec<Set> = Vec::new();
    for row in SETS.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&'static str> = row.split(',').collect();
        let number = |cell: &str| cell.parse::<f64>().expect("a number");
        if all.last().is_none_or(|last| last.name != cells[0]) {
            let strip = Strip {
                width: number(cells[1]),
                gap: 0.0,
            };
            all.push(Set {
                name: cells[0],
                strip,
                best: number(cells[2]),
                items: Vec::new(),
            });
        }
        let turns = match cells[4] {
            "1" => Turns::Fixed,
            "2" => Turns::Half,
            _ => Turns::Quarter,
        };
        let numbers: Vec<f64> = cells[5].split(' ').map(number).collect();
        let outline: Vec<[f64; 2]> = numbers
            .chunks_exact(2)
            .map(|pair| [pair[0], pair[1]])
            .collect();
        let count: usize = cells[3].parse().expect("a count");
        let last = all.last_mut().expect("a set");
        last.items
            .extend(std::iter::repeat_n(item(&outline, turns), count));
    }
    all
}

/// The least density of a set, in per cent: with quick and with usual effort.
fn bounds(name: &str) -> [f64; 2] {
    let row = BOUNDS
        .lines()
        .find_map(|line| line.strip_prefix(name)?.strip_prefix(','));
    let (quick, usual) = row.and_then(|row| row.split_once(',')).expect("two bounds");
    [quick, usual].map(|cell| cell.parse().expect("a number"))
}

/// Counts as published, and no piece that overlaps itself or is lost: none covers more than its strip could.
#[test]
fn the_sets_are_whole() {
    let all = sets();
    let counts: Vec<(&str, usize)> = all.iter().map(|set| (set.name, set.items.len())).collect();
    let published = [
        ("albano", 24),
        ("blaz1", 28),
        ("dagli", 30),
        ("fu", 12),
        ("jakobs1", 25),
        ("mao", 20),
        ("marques", 24),
        ("shapes0", 43),
        ("shapes1", 43),
        ("shirts", 99),
        ("swim", 48),
        ("trousers", 64),
    ];
    assert_eq!(counts, published);
}

/// Lays every set, prints it beside the best that is known, and fails where one is less dense than it was.
fn compare(effort: Effort) {
    println!("{effort:?} effort\nset          n   best   ours  share   bound     ms");
    let (mut missed, mut shares) = (Vec::new(), 0.0);
    let all = sets();
    for set in &all {
        let start = Instant::now();
        let layout = nest(&set.items, &set.strip, effort).expect("pieces that fit");
        let time = start.elapsed().as_millis();
        let wrong = wrongs(&set.items, &set.strip, &layout);
        assert!(wrong.is_empty(), "{}: {}", set.name, wrong.join("\n"));
        let ours = set.density(layout.length);
        let bound = bounds(set.name)[usize::from(effort != Effort::Quick)];
        shares += ours / set.best / all.len() as f64;
        println!(
            "{:<10}{:>4}{:>7.2}{ours:>7.2}{:>7.3}{bound:>8.2}{time:>7}",
            set.name,
            set.items.len(),
            set.best,
            ours / set.best
        );
        if ours < bound {
            missed.push(set.name);
        }
        assert!(ours <= set.best * 1.005, "{} cannot be so dense", set.name);
    }
    println!("mean share of the best known: {shares:.3}");
    assert!(missed.is_empty(), "less dense than they were: {missed:?}");
}

#[test]
fn quick_layouts_keep_their_density() {
    compare(Effort::Quick);
}

#[test]
#[cfg_attr(
    debug_assertions,
    ignore = "takes a while without optimisation: run with --release"
)]
fn usual_layouts_keep_their_density() {
    compare(Effort::Usual);
}

/// Shown with `-- --ignored --nocapture thorough`.
#[test]
#[ignore = "takes minutes: run with --release"]
fn thorough_layouts_keep_their_density() {
    compare(Effort::Thorough);
}

/// A greater effort goes on where a smaller one ended.
#[test]
fn more_effort_never_lengthens_a_layout_of_outlines() {
    for set in sets()
        .iter()
        .filter(|set| ["fu", "mao"].contains(&set.name))
    {
        let length = |effort| {
            let layout = nest(&set.items, &set.strip, effort).expect("pieces that fit");
            layout.length
        };
        let (quick, usual) = (length(Effort::Quick), length(Effort::Usual));
        assert!(usual <= quick, "{}: {usual} against {quick}", set.name);
    }
}

/// A first look ends with the first layout that is short enough, and may then be longer than it need be.
#[test]
fn what_is_short_enough_ends_the_search() {
    for set in sets() {
        let enough = set.area() / set.strip.width / 0.5;
        let layout = notchbook::nest::nest_within(&set.items, &set.strip, Effort::Usual, enough)
            .expect("they fit");
        assert!(
            layout.length <= enough,
            "{}: {} of {enough}",
            set.name,
            layout.length
        );
        assert!(
            wrongs(&set.items, &set.strip, &layout).is_empty(),
            "{}",
            set.name
        );
    }
}
