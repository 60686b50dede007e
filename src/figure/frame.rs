//! Whether a drawing keeps inside its frame: what lies outside is cut off on the page.

use roxmltree::Document;

use super::measure_tree::{Locate, texts};
use crate::diag::Findings;
use crate::faults::FIGURE_CUT_OFF;
use crate::source::Span;

/// How far lines and areas may reach over their frame, in mm: the rim of a line.
const TOLERANCE: f64 = 1.5;
/// How much of a letter may be cut off, in mm: less than what tells a comma from a full stop.
const OF_LETTERS: f64 = 0.25;

/// A side of the frame, and how far a drawing reaches over it, in mm; below nothing where it keeps inside.
type Over = (&'static str, f64);

/// Drawings that reach over their own frame, and words that do so by less than all else may.
pub(super) fn frame(
    tree: &usvg::Tree,
    document: &Document<'_>,
    (root, scaled): (Span, bool),
    locate: &Locate<'_>,
    size: usize,
    findings: &mut Findings,
) {
    let (side, most) = over(tree, tree.root().abs_bounding_box());
    if most > TOLERANCE {
        let hint = match scaled {
            true => "make the viewBox larger, or draw at a smaller scale",
            false => {
                "state a scale on the root, such as `data-scale=\"1:5\"`: without it lengths are drawn at true size; or make the viewBox larger"
            }
        };
        let message = format!("the drawing reaches {most:.0} mm over its frame at the {side}");
        findings.push(FIGURE_CUT_OFF.at(root, message).hint(hint).in_size(size, ""));
        return;
    }
    let words = words(tree);
    let written = texts(document);
    for (at, (side, most)) in words.iter().enumerate().filter(|(_, (_, most))| *most > OF_LETTERS) {
        // The order of texts leads each back to its place.
        let node = if written.len() == words.len() { written.get(at) } else { None };
        let span = node.map_or(root, |node| locate(node.range()));
        findings.push(
            FIGURE_CUT_OFF
                .at(span, format!("these words reach {most:.1} mm over the frame at the {side}"))
                .hint("move them inwards, or make the viewBox larger")
                .in_size(size, ""),
        );
    }
}

/// Whether a dressed drawing keeps inside its frame, its letters whole; a drawing that cannot be read does not.
pub(super) fn keeps_inside(svg: &str, database: &std::sync::Arc<usvg::fontdb::Database>) -> bool {
    usvg::Tree::from_str(svg, &super::picture::options(database)).is_ok_and(|tree| {
        let whole = over(&tree, tree.root().abs_bounding_box()).1 <= TOLERANCE;
        whole && words(&tree).iter().all(|(_, most)| *most <= OF_LETTERS)
    })
}

/// How far each text reaches, by its ink and not by the height of its line, in the order in which they are drawn.
fn words(tree: &usvg::Tree) -> Vec<Over> {
    let mut boxes = Vec::new();
    inked(tree.root(), &mut boxes);
    boxes.into_iter().map(|inked| over(tree, inked)).collect()
}

fn inked(group: &usvg::Group, boxes: &mut Vec<usvg::Rect>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(inner) => inked(inner, boxes),
            usvg::Node::Text(text) => {
                // The outlines of letters lie where their text does.
                let own = text.flattened().bounding_box();
                boxes.push(own.transform(text.abs_transform()).unwrap_or(text.abs_bounding_box()));
            }
            _ => {}
        }
    }
}

/// The side at which something reaches furthest over the frame.
fn over(tree: &usvg::Tree, drawn: usvg::Rect) -> Over {
    let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
    let (width, height) = (millimetres(tree.size().width()), millimetres(tree.size().height()));
    let sides = [
        ("left", -millimetres(drawn.left())),
        ("top", -millimetres(drawn.top())),
        ("right", millimetres(drawn.right()) - width),
        ("bottom", millimetres(drawn.bottom()) - height),
    ];
    sides.into_iter().fold(("left", f64::NEG_INFINITY), |most, one| if one.1 > most.1 { one } else { most })
}
