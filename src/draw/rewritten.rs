//! Lines of a drawn step that are as long as a formula says, written by it.

use kurbo::{BezPath, PathEl, Point, Vec2};
use roxmltree::Node;

use super::digits::number;

/// How far a drawn length may be from its formula, in mm on paper: both are rounded.
const NEAR: f64 = 0.0011;

/// A formula and its length, in mm on paper.
type Length<'a> = (&'a str, f64);

/// A dimension line, level or upright, as long as a formula.
pub(super) fn dimension(node: Node<'_, '_>, lengths: &[Length<'_>]) -> Option<String> {
    let at = |name: &str| node.attribute(name).and_then(|value| value.parse::<f64>().ok());
    let (from, to) = (Point::new(at("x1")?, at("y1")?), Point::new(at("x2")?, at("y2")?));
    let run = run(to - from, lengths, true)?;
    Some(format!("<path class=\"dimension\" d=\"M{} {} {run}\"/>", number(from.x), number(from.y)))
}

/// An outline of straight lines with sides as long as formulas; `None` where no side is.
pub(super) fn outline(node: Node<'_, '_>, lengths: &[Length<'_>]) -> Option<String> {
    let class = node.attribute("class")?;
    let path = BezPath::from_svg(node.attribute("d")?).ok()?;
    let [PathEl::MoveTo(start), lines @ .., PathEl::ClosePath] = path.elements() else { return None };
    let mut runs = Vec::new();
    let mut at = *start;
    for line in lines {
        let PathEl::LineTo(to) = line else { return None };
        // What leads back to the start is drawn by closing the line.
        if to.distance(*start) > 1e-9 {
            let slanting = || format!("L {} {}", number(to.x), number(to.y));
            runs.push(run(*to - at, lengths, false).unwrap_or_else(slanting));
        }
        at = *to;
    }
    let known = runs.iter().any(|run| run.contains('{'));
    let (x, y) = (number(start.x), number(start.y));
    known.then(|| format!("<path class=\"{class}\" d=\"M{x} {y} {} Z\"/>", runs.join(" ")))
}

/// A level or upright stroke; `None` where it slants, and where no formula is so long although one must be.
fn run(side: Vec2, lengths: &[Length<'_>], must: bool) -> Option<String> {
    let (way, long) = match (side.x.abs() < 1e-9, side.y.abs() < 1e-9) {
        (false, true) => ('h', side.x),
        (true, false) => ('v', side.y),
        _ => return None,
    };
    let sign = if long < 0.0 { "-" } else { "" };
    match lengths.iter().find(|(_, length)| (length - long.abs()).abs() <= NEAR) {
        Some((formula, _)) => Some(format!("{way} {sign}{{{}}}", crate::figure::escape(formula))),
        None => (!must).then(|| format!("{way} {}", number(long))),
    }
}
