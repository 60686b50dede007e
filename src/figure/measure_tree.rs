//! What a bound diagram comes to on paper: its size, its smallest words, and shapes that cannot be
//! drawn.

use roxmltree::Document;

use crate::diag::Findings;
use crate::faults::{FIGURE_CUT_OFF, FIGURE_NOT_DRAWABLE, LABEL_TOO_SMALL};
use crate::source::Span;

/// The smallest type that is still read beside a machine, in points.
pub(super) const SMALLEST_TYPE: f64 = 7.0;
/// The widest diagram that the narrower of the two papers takes without shrinking it, in mm: A4,
/// 210 mm (ISO 216), less the margins and the column of step numbers.
pub(super) const WIDEST: f64 = 156.0;

/// How a place in the text that was looked at leads to the author's file.
pub(super) type Locate<'a> = dyn Fn(std::ops::Range<usize>) -> Span + 'a;

/// Looks for shapes whose attributes cannot be read, which would silently be left out; whether there
/// are none.
pub(super) fn shapes(document: &Document<'_>, locate: &Locate<'_>, size: usize, findings: &mut Findings) -> bool {
    let mut sound = true;
    for node in document.descendants().filter(roxmltree::Node::is_element) {
        for attribute in node.attributes() {
            let value = attribute.value();
            let fault = match attribute.name() {
                "d" => path_fault(value),
                "points" => points_fault(value),
                "transform" | "patternTransform" | "gradientTransform" => {
                    value.parse::<svgtypes::Transform>().err().map(|_| "this transform cannot be read".to_owned())
                }
                "x" | "y" | "x1" | "x2" | "y1" | "y2" | "cx" | "cy" | "dx" | "dy" => {
                    lengths_fault(value).then(|| format!("`{value}` is no place"))
                }
                "width" | "height" | "r" | "rx" | "ry" => {
                    let auto = value == "auto";
                    let wrong = lengths_fault(value) || value.trim_start().starts_with('-');
                    (wrong && !auto).then(|| format!("`{value}` is no length above nothing"))
                }
                "viewBox" => value
                    .parse::<svgtypes::ViewBox>()
                    .err()
                    .map(|_| "this viewBox has no width or no height".to_owned()),
                _ => None,
            };
            if let Some(message) = fault {
                sound = false;
                findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(locate(attribute.range_value()), message)
                        .hint("mend it; where a formula stands there, see what it comes to in this size")
                        .in_size(size, ""),
                );
            }
        }
    }
    sound
}

fn path_fault(value: &str) -> Option<String> {
    if value.trim().is_empty() || value.trim() == "none" {
        return None;
    }
    let mut commands = svgtypes::PathParser::from(value);
    let fault = commands.by_ref().position(|segment| segment.is_err())?;
    Some(match fault {
        0 => "this path does not begin with `M` and a place".to_owned(),
        at => format!("this path cannot be read after its command number {at}"),
    })
}

fn points_fault(value: &str) -> Option<String> {
    let numbers: Vec<_> = svgtypes::NumberListParser::from(value).collect();
    if numbers.iter().any(Result::is_err) {
        return Some("these points cannot be read".into());
    }
    (numbers.len() % 2 == 1).then(|| "a point is missing its second number".into())
}

fn lengths_fault(value: &str) -> bool {
    svgtypes::LengthListParser::from(value).any(|length| length.is_err())
}

/// Measures words as printed; words that are too small are findings. The order of texts is that of
/// the drawing, which is how each is led back to its place.
pub(super) fn words(
    tree: &usvg::Tree,
    document: &Document<'_>,
    locate: &Locate<'_>,
    size: usize,
    findings: &mut Findings,
) {
    let mut printed: Vec<f64> = Vec::new();
    collect(tree.root(), &mut printed);
    let texts: Vec<_> = document
        .descendants()
        .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")))
        .filter(|node| !node.ancestors().any(|above| matches!(above.tag_name().name(), "defs" | "symbol")))
        .filter(|node| {
            node.descendants().any(|inner| inner.is_text() && inner.text().is_some_and(|text| !text.trim().is_empty()))
        })
        .collect();
    // A drawing wider than the page is shrunk to it, and its words with it.
    let width = f64::from(tree.size().width()) * 25.4 / 96.0;
    let shrink = if width > WIDEST { WIDEST / width } else { 1.0 };
    for (at, points) in printed.iter().enumerate() {
        let points = points * shrink;
        if points + 0.05 >= SMALLEST_TYPE {
            continue;
        }
        let node = if texts.len() == printed.len() { texts.get(at) } else { None };
        let span = node.map_or_else(|| locate(0..1), |node| locate(node.range()));
        findings.push(
            LABEL_TOO_SMALL
                .at(span, format!("these words are printed in {points:.1} pt, too small to read beside a machine"))
                .hint(format!(
                    "make them at least {SMALLEST_TYPE} pt: the class `label` does, at one unit for one millimetre"
                ))
                .in_size(size, ""),
        );
    }
}

/// Drawings that reach over their own frame: what lies outside is cut off on the page.
pub(super) fn frame(tree: &usvg::Tree, root: Span, scaled: bool, size: usize, findings: &mut Findings) {
    let (side, most) = overhang(tree);
    if most <= FRAME_TOLERANCE {
        return;
    }
    let hint = match scaled {
        true => "make the viewBox larger, or draw at a smaller scale",
        false => {
            "state a scale on the root, such as `data-scale=\"1:5\"`: without it lengths are drawn at true size; or make the viewBox larger"
        }
    };
    findings.push(
        FIGURE_CUT_OFF
            .at(root, format!("the drawing reaches {most:.0} mm over its frame at the {side}"))
            .hint(hint)
            .in_size(size, ""),
    );
}

/// The side at which a drawing reaches furthest over its frame, and how far, in mm; below nothing
/// where it keeps inside.
fn overhang(tree: &usvg::Tree) -> (&'static str, f64) {
    let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
    let drawn = tree.root().abs_bounding_box();
    let (width, height) = (millimetres(tree.size().width()), millimetres(tree.size().height()));
    let over = [
        ("left", -millimetres(drawn.left())),
        ("top", -millimetres(drawn.top())),
        ("right", millimetres(drawn.right()) - width),
        ("bottom", millimetres(drawn.bottom()) - height),
    ];
    over.into_iter().fold(("left", f64::NEG_INFINITY), |most, one| if one.1 > most.1 { one } else { most })
}

/// Whether a dressed drawing keeps inside its frame; a drawing that cannot be read does not.
pub fn keeps_inside(svg: &str, database: &std::sync::Arc<usvg::fontdb::Database>) -> bool {
    usvg::Tree::from_str(svg, &super::picture::options(database)).is_ok_and(|tree| overhang(&tree).1 <= FRAME_TOLERANCE)
}

/// How far a drawing may reach over its frame, in mm: the rim of a line, the tail of a letter.
const FRAME_TOLERANCE: f64 = 1.5;

fn collect(group: &usvg::Group, printed: &mut Vec<f64>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) => collect(inner, printed),
            usvg::Node::Text(text) => {
                let transform = text.abs_transform();
                let scale = f64::from(transform.sx.hypot(transform.ky).min(transform.kx.hypot(transform.sy)));
                let smallest = text
                    .chunks()
                    .iter()
                    .flat_map(|chunk| chunk.spans())
                    .map(|span| f64::from(span.font_size().get()))
                    .fold(f64::INFINITY, f64::min);
                // usvg counts in pixels of 1/96 inch, the viewBox laid on the page; a point is 1/72 inch.
                printed.push(smallest * scale * 72.0 / 96.0);
            }
            _ => {}
        }
    }
}
