//! Reference pictures: pages of the demo booklets as an independent reader draws them, and diagrams
//! as `notchbook figures --png` writes them, against the pictures in `tests/pictures/`.
//!
//! Typefaces and edges may fall a little differently on another machine, so a small difference is
//! let through. Where more differs, the picture as made and a picture of the differences are put
//! into `target/pictures/`. `NOTCHBOOK_BLESS=1 cargo test --test pictures` takes the new ones over;
//! look at them first.

#[path = "outside/bench.rs"]
mod bench;
#[path = "pictures/folded.rs"]
mod folded;
#[path = "pictures/letters.rs"]
mod letters;
#[path = "pictures/white.rs"]
mod white;

use std::path::PathBuf;
use std::sync::Arc;

use bench::{demo, print, root};
use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{RenderCache, RenderSettings, render};
use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder, Rgb, RgbImage};
use notchbook::figure::{fonts, to_png};
use notchbook::pipeline::Workshop;
use notchbook::typeset::Paper;

/// Dots to the point of a page: large enough to see a shifted line, small enough to keep.
const PAGE_SCALE: f32 = 0.6;
/// Dots to the millimetre of a diagram on paper.
const FIGURE_SCALE: f32 = 5.0;
/// The most bytes of a reference picture.
const LARGEST: u64 = 60_000;
/// The largest mean difference of a colour, of 255.
const MEAN: f64 = 0.6;
/// A dot differs when one of its colours is further off than this, of 255.
const NOTICED: u8 = 48;
/// The largest share of dots that may differ.
const SHARE: f64 = 0.0002;

/// Draws the first page behind the cover that holds `words`, or the cover where there are none.
fn page(compiled: &Workshop, size: usize, words: &str) -> RgbImage {
    let pdf = print(compiled, size, Paper::A4);
    let text = lopdf::Document::load_mem(&pdf).expect("a PDF that another library reads");
    let holds = |number: &u32| {
        text.extract_text(&[*number])
            .expect("its text")
            .contains(words)
    };
    let behind = text.get_pages().into_keys().skip(1).find(holds);
    let number = if words.is_empty() {
        1
    } else {
        behind.expect("a page that holds the words") as usize
    };
    draw(pdf, PAGE_SCALE).swap_remove(number - 1)
}

/// Draws all pages, at some dots to the point.
fn draw(pdf: Vec<u8>, scale: f32) -> Vec<RgbImage> {
    let pdf = Pdf::new(pdf).expect("a PDF that another library reads");
    let settings = InterpreterSettings::default();
    let scale = RenderSettings {
        x_scale: scale,
        y_scale: scale,
        bg_color: WHITE,
        ..RenderSettings::default()
    };
    let one = |page| {
        let drawn = render(page, &RenderCache::new(), &settings, &scale);
        let (width, height) = (u32::from(drawn.width()), u32::from(drawn.height()));
        // On a white ground every dot is opaque, so the colours stand as they are.
        let dots = drawn.data_as_u8_slice();
        RgbImage::from_fn(width, height, |x, y| {
            let at = 4 * (y * width + x) as usize;
            Rgb([dots[at], dots[at + 1], dots[at + 2]])
        })
    };
    pdf.pages().iter().map(one).collect()
}

/// Draws a diagram of one size by its file's name, or by its step's where the compiler draws it.
fn figure(compiled: &Workshop, size: usize, file: &str) -> RgbImage {
    let (database, _) = fonts(&compiled.house);
    let mut found = compiled.figures.of_size(size).map(|(_, figure)| figure);
    let figure = found
        .find(|figure| figure.path.ends_with(file))
        .expect("the diagram");
    let png = to_png(&figure.svg, &Arc::clone(&database), FIGURE_SCALE).expect("a picture");
    image::load_from_memory(&png).expect("a PNG").to_rgb8()
}

fn write(path: &PathBuf, picture: &RgbImage) {
    std::fs::create_dir_all(path.parent().expect("a folder above the picture")).expect("a folder");
    let file = std::fs::File::create(path).expect("a file");
    let encoder = PngEncoder::new_with_quality(file, CompressionType::Best, FilterType::Adaptive);
    encoder
        .write_image(
            picture,
            picture.width(),
            picture.height(),
            ExtendedColorType::Rgb8,
        )
        .expect("a PNG");
}

/// Mean difference and share of differing dots; and a picture of the differences, dark where they are.
fn compare(made: &RgbImage, kept: &RgbImage) -> (f64, f64, RgbImage) {
    let mut sum = 0u64;
    let mut differing = 0u32;
    let differences = RgbImage::from_fn(made.width(), made.height(), |x, y| {
        let (one, other) = (made.get_pixel(x, y), kept.get_pixel(x, y));
        let apart: Vec<u8> = one
            .0
            .iter()
            .zip(other.0)
            .map(|(one, other)| one.abs_diff(other))
            .collect();
        sum += apart.iter().map(|part| u64::from(*part)).sum::<u64>();
        let most = apart.into_iter().max().unwrap_or(0);
        differing += u32::from(most > NOTICED);
        if most > NOTICED {
            Rgb([200, 0, 0])
        } else {
            Rgb([255 - most; 3])
        }
    });
    let dots = f64::from(made.width() * made.height());
    (
        sum as f64 / (3.0 * dots),
        f64::from(differing) / dots,
        differences,
    )
}

/// Holds a picture against the one that is kept, or takes it over.
fn hold(name: &str, made: &RgbImage) {
    let kept = root().join("tests/pictures").join(format!("{name}.png"));
    if std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1") {
        write(&kept, made);
    }
    let size = kept.metadata().map(|about| about.len());
    let size = size.unwrap_or_else(|_| {
        panic!(
            "{}: it is missing; NOTCHBOOK_BLESS=1 makes it",
            kept.display()
        )
    });
    assert!(
        size <= LARGEST,
        "{}: {size} bytes, more than {LARGEST}: show a smaller page or diagram",
        kept.display()
    );
    let picture = image::open(&kept).expect("a PNG").to_rgb8();
    let out = root().join("target/pictures");
    if picture.dimensions() != made.dimensions() {
        write(&out.join(format!("{name}-made.png")), made);
        panic!(
            "{name}: {:?} dots, not {:?}; see target/pictures/{name}-made.png",
            made.dimensions(),
            picture.dimensions()
        );
    }
    let (mean, share, differences) = compare(made, &picture);
    if mean > MEAN || share > SHARE {
        write(&out.join(format!("{name}-made.png")), made);
        write(&out.join(format!("{name}-differences.png")), &differences);
        panic!(
            "{name}: {:.2} % of the dots differ, by {mean:.2} of 255 on the whole; look at \
             target/pictures/{name}-made.png and {name}-differences.png, and where the change is meant, \
             run the test with NOTCHBOOK_BLESS=1",
            share * 100.0
        );
    }
}

#[test]
fn a_cover() {
    demo("orchard-apron", |compiled| {
        hold("cover-orchard-apron", &page(compiled, 3, ""))
    });
}

#[test]
fn a_need_list() {
    demo("harbour-lunch-bag", |compiled| {
        hold(
            "needs-harbour-lunch-bag",
            &page(compiled, 0, "What you need"),
        )
    });
}

#[test]
fn a_page_of_steps() {
    demo("harbour-lunch-bag", |compiled| {
        hold(
            "steps-harbour-lunch-bag",
            &page(compiled, 2, "Sew the tabs to the zip"),
        )
    });
}

#[test]
fn diagrams() {
    demo("harbour-lunch-bag", |compiled| {
        hold("figure-zip-front-small", &figure(compiled, 0, "zip-front"));
        hold("figure-zip-front-large", &figure(compiled, 2, "zip-front"));
    });
    demo("orchard-apron", |compiled| {
        hold("figure-cut-child", &figure(compiled, 0, "cut.svg"))
    });
}

/// The comparison itself: a line drawn elsewhere is seen, a breath of grey is not.
#[test]
fn the_comparison_sees_a_line_and_lets_a_breath_through() {
    let white = RgbImage::from_pixel(200, 200, Rgb([255; 3]));
    let mut line = white.clone();
    (0..200).for_each(|x| line.put_pixel(x, 100, Rgb([0; 3])));
    let (_, share, differences) = compare(&line, &white);
    assert!(
        share > SHARE && differences.get_pixel(7, 100).0 == [200, 0, 0],
        "{share}"
    );
    let breath = RgbImage::from_fn(200, 200, |x, _| {
        Rgb([if x % 20 == 0 { 250 } else { 255 }; 3])
    });
    let (mean, share, _) = compare(&breath, &white);
    assert!(mean < MEAN && share <= SHARE, "{mean} {share}");
}
