//! The gauge on the first sheet: squares and rulers in centimetres and in inches, and the words that
//! say to print it first.

use kurbo::{BezPath, Point};

/// The room that the gauge takes on the plan: width and height in mm.
pub(super) const SIZE: (f64, f64) = (150.0, 98.0);

/// A centimetre square of five and an inch square of two.
pub(super) const SQUARES: [(f64, f64, f64, &str); 2] = [(2.0, 22.0, 50.0, "5 cm"), (58.0, 22.0, 50.8, "2 in")];

/// The rulers' upper left ends, and their lengths: 10 cm and 4 in.
const CENTIMETRES: (f64, f64) = (2.0, 79.0);
const INCHES: (f64, f64) = (2.0, 92.0);

/// The lines of the gauge, its upper left corner at `at`.
pub(super) fn lines(at: (f64, f64)) -> BezPath {
    let mut path = BezPath::new();
    let mut line = |x0: f64, y0: f64, x1: f64, y1: f64| {
        path.move_to(Point::new(at.0 + x0, at.1 + y0));
        path.line_to(Point::new(at.0 + x1, at.1 + y1));
    };
    for (x, y, side, _) in SQUARES {
        line(x, y, x + side, y);
        line(x + side, y, x + side, y + side);
        line(x + side, y + side, x, y + side);
        line(x, y + side, x, y);
    }
    let (x, y) = CENTIMETRES;
    line(x, y, x + 100.0, y);
    for millimetre in 0..=100 {
        let length = match millimetre {
            at if at % 10 == 0 => 4.0,
            at if at % 5 == 0 => 2.8,
            _ => 1.8,
        };
        let place = x + f64::from(millimetre);
        line(place, y, place, y - length);
    }
    let (x, y) = INCHES;
    line(x, y, x + 101.6, y);
    for eighth in 0..=32 {
        let length = match eighth {
            at if at % 8 == 0 => 4.0,
            at if at % 4 == 0 => 3.2,
            at if at % 2 == 0 => 2.5,
            _ => 1.8,
        };
        let place = x + f64::from(eighth) * 25.4 / 8.0;
        line(place, y, place, y - length);
    }
    path
}

/// The words of the gauge: place from its corner, the words, whether they are strong.
pub(super) fn words(sheets: usize) -> Vec<(f64, f64, String, bool)> {
    let rest = if sheets > 1 { "Then print the rest in the same way." } else { "Then lay it on the cloth." };
    let plain = |y: f64, text: &str| (2.0, y, text.to_owned(), false);
    let mut words = vec![
        (2.0, 4.4, "Print this sheet first, at 100 %, on one side of the paper.".to_owned(), true),
        plain(9.4, "Choose “actual size”; never “fit” or “shrink”. Measure both squares from line to line:"),
        plain(14.0, "5 cm and 2 in each way. If they are not, change the printer’s scale."),
        plain(18.6, rest),
        (105.0, 79.0, "10 cm".to_owned(), false),
        (106.6, 92.0, "4 in".to_owned(), false),
    ];
    for (x, y, side, name) in SQUARES {
        words.push((x + side / 2.0 - 7.0, y + side / 2.0 + 1.2, format!("{name} × {name}"), false));
    }
    words
}
