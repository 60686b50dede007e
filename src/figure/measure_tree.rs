//! What a bound diagram comes to on paper: its size, its smallest words, and shapes that cannot be
//! drawn.

use roxmltree::Document;

use crate::diag::Findings;
use crate::faults::{FIGURE_NOT_DRAWABLE, LABEL_TOO_SMALL};
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

/// The texts of a drawing that are printed, in the order in which they are drawn.
pub(super) fn texts<'d, 'i>(document: &'d Document<'i>) -> Vec<roxmltree::Node<'d, 'i>> {
    document
        .descendants()
        .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")))
        .filter(|node| !node.ancestors().any(|above| matches!(above.tag_name().name(), "defs" | "symbol")))
        .filter(|node| {
            node.descendants().any(|inner| inner.is_text() && inner.text().is_some_and(|text| !text.trim().is_empty()))
        })
        .collect()
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
    let texts = texts(document);
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
