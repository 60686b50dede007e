//! Places on paper in the words of SVG.

use kurbo::{BezPath, PathEl, Point};

/// A path of a class.
pub(super) fn shape(class: &str, path: &BezPath) -> String {
    format!("<path class=\"{class}\" d=\"{}\"/>", data(path))
}

/// Path data with absolute places.
fn data(path: &BezPath) -> String {
    let at = |point: &Point| format!("{} {}", number(point.x), number(point.y));
    let parts = path.elements().iter().map(|element| match element {
        PathEl::MoveTo(to) => format!("M{}", at(to)),
        PathEl::LineTo(to) => format!("L{}", at(to)),
        PathEl::QuadTo(by, to) => format!("Q{} {}", at(by), at(to)),
        PathEl::CurveTo(by, then, to) => format!("C{} {} {}", at(by), at(then), at(to)),
        PathEl::ClosePath => "Z".to_owned(),
    });
    parts.collect::<Vec<_>>().join(" ")
}

/// A place to a thousandth of a millimetre.
pub(super) fn number(value: f64) -> String {
    let written = format!("{value:.3}");
    let written = written.trim_end_matches('0').trim_end_matches('.');
    if written == "-0" { "0".into() } else { written.to_owned() }
}
