//! Outlines drawn elsewhere: paths at true scale out of SVG files, one id a size.

use std::collections::BTreeMap;
use std::path::Path;

use kurbo::Affine;
use roxmltree::{Document, Node};
use svgtypes::Transform;

use crate::diag::Findings;
use crate::faults::{FILE_UNREADABLE, OUTLINE_WRONG};
use crate::geometry::moved_path;
use crate::model::{Facts, Outline, Text};
use crate::source::{BookletFolder, Folder, Sources};

/// Edges by file and id; none at all where a fault of the drawing is told here.
type Outlines = BTreeMap<(String, String), Vec<(String, String)>>;

/// Reads every outline that a piece names, for each size.
pub(super) fn read(
    folder: &Folder,
    booklet: &BookletFolder,
    facts: &Facts,
    sources: &mut Sources,
    findings: &mut Findings,
) -> Outlines {
    let mut outlines = Outlines::new();
    for piece in &facts.pieces {
        let Some(Outline::Drawing { file, id }) = &piece.outline else { continue };
        let text = text(folder, booklet, file, sources, findings);
        let document = text.as_ref().and_then(|text| document(text, file, findings));
        for size in &facts.sizes {
            let id = id.text.replace("{size}", &size.id.text);
            let key = (file.text.clone(), id.clone());
            if outlines.contains_key(&key) {
                continue;
            }
            let node = document.as_ref().map(|document| document.descendants().find(|node| is(*node, &id)));
            let edges = match node {
                // An id that is not there is told where its size is worked out.
                Some(None) => continue,
                Some(Some(node)) => outline(node, &id, file, findings),
                None => None,
            };
            outlines.insert(key, edges.unwrap_or_default());
        }
    }
    outlines
}

/// The drawing as a tree; `None` when it cannot be read, which is a finding.
fn document<'t>(text: &'t str, file: &Text, findings: &mut Findings) -> Option<Document<'t>> {
    match Document::parse(text) {
        Ok(document) => Some(document),
        Err(error) => {
            findings.push(
                OUTLINE_WRONG
                    .at(file.span, format!("`{}` cannot be read: {error}", file.text))
                    .hint("save it again as plain SVG"),
            );
            None
        }
    }
}

fn is(node: Node<'_, '_>, id: &str) -> bool {
    node.attribute("id") == Some(id)
}

/// The text of a drawing, taken down among the sources; `None` when it cannot be had, which is a finding.
fn text(
    folder: &Folder,
    booklet: &BookletFolder,
    file: &Text,
    sources: &mut Sources,
    findings: &mut Findings,
) -> Option<String> {
    let path = booklet.path.join(Path::new(&file.text));
    let text = match folder.text(&path) {
        Ok(text) => text,
        Err(fault) => {
            findings
                .push(FILE_UNREADABLE.at(file.span, format!("`{}` {}", file.text, fault.message())).hint(fault.hint()));
            return None;
        }
    };
    let shown = folder.show(&path);
    if sources.by_path(&shown).is_none() {
        sources.add(shown, text.clone());
    }
    Some(text)
}

/// The edges of a path or a group, in mm; `None` when they cannot be had, which is a finding.
fn outline(node: Node<'_, '_>, id: &str, file: &Text, findings: &mut Findings) -> Option<Vec<(String, String)>> {
    let mut wrong = |message: String, hint: &str| {
        findings.push(OUTLINE_WRONG.at(file.span, message).hint(hint));
        None
    };
    let Some(unit) = unit(node.document().root_element()) else {
        return wrong(
            format!("`{}` does not say how large it is", file.text),
            "give the root a viewBox and a width in mm, cm or in",
        );
    };
    let paths: Vec<(Node<'_, '_>, &str)> = node
        .descendants()
        .filter(|child| child.tag_name().name() == "path")
        .filter_map(|child| Some((child, child.attribute("d")?)))
        .collect();
    if paths.is_empty() {
        return wrong(
            format!("`{id}` in `{}` holds no path", file.text),
            "draw its edges as paths, or turn its shapes into paths in the drawing program",
        );
    }
    let mut edges = Vec::new();
    for (path, data) in paths {
        let moved = match transform(path) {
            Ok(moved) => moved,
            Err(written) => {
                return wrong(
                    format!("`{id}` in `{}` is moved by `{written}`, which cannot be read", file.text),
                    "apply the transform in the drawing program, so that the numbers of the path are the true ones",
                );
            }
        };
        // What cannot be read is told by the geometry, with the edge's name.
        let data = moved_path(data, Affine::scale(unit) * moved).unwrap_or_else(|_| data.to_owned());
        edges.push((edge_name(path, node), data));
    }
    Some(edges)
}

/// Ids are unique in a file: `yoke-small.top` is the edge `top`. A path that is the whole outline has no
/// name.
fn edge_name(path: Node<'_, '_>, outline: Node<'_, '_>) -> String {
    let id = path.attribute("id").filter(|_| path != outline).unwrap_or("");
    id.rsplit('.').next().unwrap_or(id).to_owned()
}

/// How everything from the root down to a node moves it; `Err` with a transform that cannot be read.
fn transform(node: Node<'_, '_>) -> Result<Affine, String> {
    let mut whole = Affine::IDENTITY;
    for node in node.ancestors() {
        let style = node.attribute("style").filter(|style| style.contains("transform"));
        if let Some(styled) = style.or_else(|| node.attribute("transform-origin")) {
            return Err(styled.to_owned());
        }
        if let Some(written) = node.attribute("transform") {
            let Transform { a, b, c, d, e, f } = written.parse().map_err(|_| written.to_owned())?;
            whole = Affine::new([a, b, c, d, e, f]) * whole;
        }
    }
    Ok(whole)
}

/// How many millimetres one unit of the drawing is; `None` when the root does not say.
fn unit(root: Node<'_, '_>) -> Option<f64> {
    let width = root.attribute("width")?.trim();
    let (number, factor) = [("mm", 1.0), ("cm", 10.0), ("in", 25.4)]
        .into_iter()
        .find_map(|(unit, factor)| Some((width.strip_suffix(unit)?, factor)))?;
    let view = root.attribute("viewBox")?;
    let wide: f64 = view.split([' ', ',']).filter(|part| !part.is_empty()).nth(2)?.parse().ok()?;
    let number: f64 = number.trim().parse().ok()?;
    (wide > 0.0 && number > 0.0).then(|| number * factor / wide)
}
