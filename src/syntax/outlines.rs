//! Outlines drawn elsewhere: paths at true scale out of SVG files, one id a size.

use std::collections::BTreeMap;
use std::path::Path;

use kurbo::{Affine, BezPath};

use crate::diag::Findings;
use crate::faults::{FILE_UNREADABLE, OUTLINE_WRONG};
use crate::model::{Facts, Outline, Text};
use crate::source::{BookletFolder, Folder, Sources};

/// Edges by file and id.
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
        let path = booklet.path.join(Path::new(&file.text));
        let text = match folder.text(&path) {
            Ok(text) => text,
            Err(fault) => {
                findings.push(
                    FILE_UNREADABLE.at(file.span, format!("`{}` {}", file.text, fault.message())).hint(fault.hint()),
                );
                continue;
            }
        };
        let shown = folder.show(&path);
        if sources.by_path(&shown).is_none() {
            sources.add(shown, text.clone());
        }
        let document = match roxmltree::Document::parse(&text) {
            Ok(document) => document,
            Err(error) => {
                findings.push(
                    OUTLINE_WRONG
                        .at(file.span, format!("`{}` cannot be read: {error}", file.text))
                        .hint("save it again as plain SVG"),
                );
                continue;
            }
        };
        for size in &facts.sizes {
            let id = id.text.replace("{size}", &size.id.text);
            let key = (file.text.clone(), id.clone());
            if !outlines.contains_key(&key)
                && let Some(edges) = outline(&document, &id, file, findings)
            {
                outlines.insert(key, edges);
            }
        }
    }
    outlines
}

/// The edges of the path or group with an id; `None` when there is none such.
fn outline(
    document: &roxmltree::Document<'_>,
    id: &str,
    file: &Text,
    findings: &mut Findings,
) -> Option<Vec<(String, String)>> {
    let node = document.descendants().find(|node| node.attribute("id") == Some(id))?;
    let moved = node.descendants().chain(node.ancestors()).find(|node| node.has_attribute("transform"));
    if moved.is_some() {
        findings.push(
            OUTLINE_WRONG
                .at(file.span, format!("`{id}` in `{}` is moved by a `transform`", file.text))
                .hint("apply the transform in the drawing program, so that the numbers of the path are the true ones"),
        );
        return None;
    }
    let Some(unit) = unit(document.root_element()) else {
        findings.push(
            OUTLINE_WRONG
                .at(file.span, format!("`{}` does not say how large it is", file.text))
                .hint("give the root a viewBox and a width in mm, cm or in"),
        );
        return None;
    };
    let path = |node: roxmltree::Node<'_, '_>| -> Option<String> {
        let data = node.attribute("d")?;
        // What cannot be read is told by the geometry, with the edge's name.
        let Ok(path) = BezPath::from_svg(data) else { return Some(data.to_owned()) };
        Some((Affine::scale(unit) * path).to_svg())
    };
    if node.tag_name().name() == "path" {
        return Some(vec![(String::new(), path(node)?)]);
    }
    let edges = node.descendants().filter(|child| child.tag_name().name() == "path").filter_map(|child| {
        // Ids are unique in a file: `yoke-small.top` is the edge `top`.
        let name = child.attribute("id").map_or("", |id| id.rsplit('.').next().unwrap_or(id));
        Some((name.to_owned(), path(child)?))
    });
    let edges: Vec<(String, String)> = edges.collect();
    (!edges.is_empty()).then_some(edges)
}

/// How many millimetres one unit of the drawing is; `None` when the root does not say.
fn unit(root: roxmltree::Node<'_, '_>) -> Option<f64> {
    let width = root.attribute("width")?.trim();
    let (number, factor) = [("mm", 1.0), ("cm", 10.0), ("in", 25.4)]
        .into_iter()
        .find_map(|(unit, factor)| Some((width.strip_suffix(unit)?, factor)))?;
    let view = root.attribute("viewBox")?;
    let wide: f64 = view.split([' ', ',']).filter(|part| !part.is_empty()).nth(2)?.parse().ok()?;
    let number: f64 = number.trim().parse().ok()?;
    (wide > 0.0 && number > 0.0).then(|| number * factor / wide)
}
