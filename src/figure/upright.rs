//! The patterns of cloth kept upright: a shape that is turned or mirrored keeps the pattern of its class as the key shows
//! it, since a hatch that leans the other way is another cloth.

use std::collections::BTreeSet;

use kurbo::Affine;
use roxmltree::Node;

use super::markup::{parse, tag_length};

/// What is drawn only where something else uses it.
const HELD: &[&str] = &["defs", "symbol", "pattern", "marker", "mask", "clipPath"];

/// A dressed drawing, whose root's start tag ends at byte `end`, with the patterns of turned and mirrored shapes upright.
pub(super) fn upright(svg: &str, end: usize) -> String {
    let Ok(document) = parse(svg) else { return svg.to_owned() };
    let patterns: BTreeSet<&str> = document
        .descendants()
        .filter(|node| node.tag_name().name() == "pattern")
        .filter_map(|node| node.attribute("id"))
        .filter(|id| svg.contains(&format!("url(#{id})")))
        .collect();
    let mut turned: BTreeSet<String> = BTreeSet::new();
    let mut styles: Vec<(usize, String)> = Vec::new();
    for node in document.descendants().filter(Node::is_element) {
        let own = node.attribute("class").unwrap_or("").split_ascii_whitespace();
        let Some(pattern) = own.map(|class| format!("nb-{class}")).find(|id| patterns.contains(id.as_str())) else {
            continue;
        };
        // An author's own style goes before the house's.
        if node.has_attribute("style") || node.ancestors().any(|above| HELD.contains(&above.tag_name().name())) {
            continue;
        }
        let Some(back) = back(&lying(node)) else { continue };
        let matrix = back.map(number).join(" ");
        let id = format!("{pattern}-{}", matrix.replace('-', "n").replace('.', "p").replace(' ', "-"));
        turned.insert(format!("<pattern id=\"{id}\" href=\"#{pattern}\" patternTransform=\"matrix({matrix} 0 0)\"/>"));
        let start = node.range().start;
        let tag = start + tag_length(&svg[start..]);
        let close = if svg[..tag].ends_with("/>") { tag - 2 } else { tag - 1 };
        styles.push((close, format!(" style=\"fill: url(#{id})\"")));
    }
    if turned.is_empty() {
        return svg.to_owned();
    }
    let all: String = turned.into_iter().collect();
    styles.push((end, format!("<defs>{all}</defs>")));
    styles.sort_by_key(|(at, _)| *at);
    let mut out = svg.to_owned();
    for (at, words) in styles.iter().rev() {
        out.insert_str(*at, words);
    }
    out
}

/// How a shape lies in its drawing.
fn lying(node: Node<'_, '_>) -> Affine {
    let transforms = node.ancestors().filter_map(|above| above.attribute("transform"));
    let transforms = transforms.filter_map(|written| written.parse::<svgtypes::Transform>().ok());
    transforms.fold(Affine::IDENTITY, |inner, own| Affine::new([own.a, own.b, own.c, own.d, own.e, own.f]) * inner)
}

/// What brings a pattern back upright and to its size, but for where it begins; `None` where it stands so already.
fn back(lying: &Affine) -> Option<[f64; 4]> {
    let [a, b, c, d, ..] = lying.as_coeffs();
    let area = a * d - b * c;
    let size = area.abs().sqrt();
    let level = b.abs() + c.abs() < 1e-6 * size;
    if size < 1e-6 || (level && a > 0.0 && d > 0.0) {
        return None;
    }
    Some([d, -b, -c, a].map(|part| part / area * size))
}

fn number(value: f64) -> String {
    let written = format!("{value:.4}");
    let written = written.trim_end_matches('0').trim_end_matches('.');
    if written == "-0" { "0".to_owned() } else { written.to_owned() }
}
