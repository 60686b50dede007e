//! White paper between what is printed: the share of each page's text area that lies in empty bands, as an independent
//! reader draws the demo booklets.
//!
//! A band is empty where nothing is printed from side to side over 10 mm and more; what is less parts two blocks. The
//! cover and the last page, which end where they end, are not counted. `cargo test --test pictures white -- --nocapture`
//! prints the table.

use image::RgbImage;
use notchbook::typeset::Paper;

use crate::bench::{demos, print};
use crate::draw;

/// Dots to the point: two to the millimetre.
const SCALE: f32 = 2.0 * 25.4 / 72.0;
/// Head, foot and the wider of the sides of a page that hold no text, in dots.
const MARGINS: (u32, u32, u32) = (36, 44, 36);
/// The least height of an empty band, in dots.
const BAND: usize = 20;
/// The largest share of a page that may be white, and the largest mean of a booklet and of all of them.
const PAGE: f64 = 0.5;
const BOOKLET: f64 = 0.16;
const MEAN: f64 = 0.12;

fn white(page: &RgbImage) -> f64 {
    let (top, foot, side) = MARGINS;
    let printed = |y: u32| {
        (side..page.width() - side).any(|x| page.get_pixel(x, y).0.iter().any(|tone| *tone < 235))
    };
    let rows: Vec<bool> = (top..page.height() - foot).map(printed).collect();
    let bands = rows
        .split(|printed| *printed)
        .map(<[bool]>::len)
        .filter(|rows| *rows >= BAND);
    bands.sum::<usize>() as f64 / rows.len() as f64
}

fn mean(shares: &[f64]) -> f64 {
    shares.iter().sum::<f64>() / shares.len().max(1) as f64
}

#[test]
fn pages_are_filled() {
    let mut all = Vec::new();
    let mut wrong = Vec::new();
    demos(|name, compiled| {
        let pages = draw(
            print(compiled, compiled.editions().len() / 2, Paper::A4),
            SCALE,
        );
        let shares: Vec<f64> = pages[1..pages.len() - 1].iter().map(white).collect();
        let told: Vec<String> = shares
            .iter()
            .map(|share| format!("{:.0}", share * 100.0))
            .collect();
        println!(
            "{name}: mean {:.1} %, pages from 2: {}",
            100.0 * mean(&shares),
            told.join(" ")
        );
        if mean(&shares) > BOOKLET || shares.iter().any(|share| *share > PAGE) {
            wrong.push(format!("{name}: {}", told.join(" ")));
        }
        all.extend(shares);
    });
    println!("mean of {} pages: {:.1} %", all.len(), 100.0 * mean(&all));
    assert!(
        wrong.is_empty() && mean(&all) < MEAN,
        "{:.3} {wrong:?}",
        mean(&all)
    );
}

/// The measure itself: a page printed half way down is half white, lines with common gaps are none.
#[test]
fn the_measure_sees_a_gap_and_no_line() {
    let page = |printed: &dyn Fn(u32) -> bool| {
        RgbImage::from_fn(420, 594, |_, y| {
            image::Rgb([if printed(y) { 0 } else { 255 }; 3])
        })
    };
    let half = white(&page(&|y| y < 36 + 257));
    assert!((half - 0.5).abs() < 0.01, "{half}");
    assert_eq!(white(&page(&|y| y % 16 == 0)), 0.0);
}
