//! Pages laid on sheets that are folded in half, as an independent reader draws them: a maker who prints both sides, folds
//! the sheets and puts them in one another turns the pages in order, and blanks come last.

use image::RgbImage;
use lopdf::{Dictionary, Document, Object, Stream, dictionary};
use notchbook::typeset::fold;

use crate::draw;

/// A page of 100 × 140 mm, in points.
const PAGE: (f64, f64) = (283.465, 396.850);
const SHEET_MM: (f64, f64) = (200.0, 140.0);

/// A document whose page `n` is marked by `n` dark strips below each other, at its left edge.
fn counted(pages: usize) -> Vec<u8> {
    let mut document = Document::with_version("1.7");
    let tree = document.new_object_id();
    let kids: Vec<Object> = (1..=pages)
        .map(|number| {
            let strips = (0..number).map(|at| format!("30 {} 60 6 re f\n", 20 + 20 * at));
            let content = Stream::new(Dictionary::new(), strips.collect::<String>().into_bytes());
            let content = document.add_object(content);
            let page = dictionary! { "Type" => "Page", "Parent" => tree, "Contents" => content };
            Object::Reference(document.add_object(page))
        })
        .collect();
    let media = vec![
        0.0.into(),
        0.0.into(),
        (PAGE.0 as f32).into(),
        (PAGE.1 as f32).into(),
    ];
    let count = pages as i64;
    let pages =
        dictionary! { "Type" => "Pages", "Kids" => kids, "Count" => count, "MediaBox" => media };
    document.set_object(tree, pages);
    let catalog = document.add_object(dictionary! { "Type" => "Catalog", "Pages" => tree });
    document.trailer.set("Root", catalog);
    let mut bytes = Vec::new();
    document.save_to(&mut bytes).expect("a document");
    bytes
}

/// The number of a page on one half of a side, by its strips, and how far its left edge is from that of the half, in dots.
fn page_on(side: &RgbImage, right: bool) -> (usize, u32) {
    let half = side.width() / 2;
    let from = if right { half } else { 0 };
    let dark = |x: u32, y: u32| side.get_pixel(x, y).0[0] < 128;
    let across = |y: u32| (from..from + half).find(|x| dark(*x, y));
    let rows: Vec<Option<u32>> = (0..side.height()).map(across).collect();
    let strips = rows
        .windows(2)
        .filter(|pair| pair[0].is_none() && pair[1].is_some())
        .count();
    (
        strips,
        rows.into_iter().flatten().next().map_or(0, |x| x - from),
    )
}

/// The pages in the order in which they are turned: the sheets lie in one another, fronts outside.
fn turned(sides: &[RgbImage]) -> Vec<usize> {
    let sheets = sides.len() / 2;
    let (front, back) = (|at: usize| &sides[2 * at], |at: usize| &sides[2 * at + 1]);
    // Right-hand leaves from the outside in, then the left-hand ones from the inside out; turned over the short edge, the
    // back of a right half is a left half.
    let first = (0..sheets).flat_map(|at| [page_on(front(at), true), page_on(back(at), false)]);
    let last = (0..sheets)
        .rev()
        .flat_map(|at| [page_on(back(at), true), page_on(front(at), false)]);
    first.chain(last).map(|(number, _)| number).collect()
}

#[test]
fn pages_come_in_order_and_blanks_come_last() {
    for pages in [1, 4, 8, 12, 13, 14, 15, 16] {
        let sides = draw(
            fold(&counted(pages), SHEET_MM).expect("a folded document"),
            1.0,
        );
        let places = pages.div_ceil(4) * 4;
        assert_eq!(sides.len(), places / 2, "{pages} pages");
        let wanted: Vec<usize> = (1..=places)
            .map(|at| if at > pages { 0 } else { at })
            .collect();
        assert_eq!(turned(&sides), wanted, "{pages} pages");
    }
}

/// Each sheet pushes the next out by its own thickness, so that its pages lie nearer to the fold: on the left half further
/// right, on the right half further left.
#[test]
fn sheets_further_in_lie_nearer_to_the_fold() {
    let sides = draw(
        fold(&counted(40), SHEET_MM).expect("a folded document"),
        8.0,
    );
    let (left, right) = (
        |at: usize| page_on(&sides[at], false).1,
        |at: usize| page_on(&sides[at], true).1,
    );
    // Ten sheets: the innermost lies nine thicknesses of 0.1 mm further in, at 8 dots to the point.
    let wanted = 9.0 * 0.1 * 72.0 / 25.4 * 8.0;
    for moved in [left(18).abs_diff(left(0)), right(18).abs_diff(right(0))] {
        assert!(
            (f64::from(moved) - wanted).abs() <= 2.0,
            "{moved} dots, not {wanted}"
        );
    }
    assert!(left(18) > left(0) && right(18) < right(0));
}
