//! Outlines drawn elsewhere: paths at true scale out of SVG files, one id a size.

use std::collections::BTreeMap;
use std::path::Path;

use kurbo::Affine;
use roxmltree::{Document, Node};
use svgtypes::Transform;

use crate::diag::{Finding, Findings};
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
        let text = text(folder, booklet, file, sources);
        let document = text.and_then(|text| match Document::parse(&text) {
            Ok(_) => Ok(text),
            Err(error) => Err(OUTLINE_WRONG
                .at(file.span, format!("`{}` cannot be read: {error}", file.text))
                .hint("save it again as plain SVG")),
        });
        let text = document.unwrap_or_else(|fault| {
            findings.push(fault);
            String::new()
        });
        let document = Document::parse(&text).ok();
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
                Some(Some(node)) => outline(node, &id, file),
                None => Ok(Vec::new()),
            };
            outlines.insert(
                key,
                edges.unwrap_or_else(|fault| {
                    findings.push(fault);
                    Vec::new()
                }),
            );
        }
    }
    outlines
}

fn is(node: Node<'_, '_>, id: &str) -> bool {
    node.attribute("id") == Some(id)
}

/// The text of a drawing, taken down among the sources.
fn text(folder: &Folder, booklet: &BookletFolder, file: &Text, sources: &mut Sources) -> Result<String, Finding> {
    let path = booklet.path.join(Path::new(&file.text));
    let text = folder.text(&path).map_err(|fault| {
        FILE_UNREADABLE.at(file.span, format!("`{}` {}", file.text, fault.message())).hint(fault.hint())
    })?;
    let shown = folder.show(&path);
    if sources.by_path(&shown).is_none() {
        sources.add(shown, text.clone());
    }
    Ok(text)
}

/// The edges of a path or a group, in mm.
fn outline(node: Node<'_, '_>, id: &str, file: &Text) -> Result<Vec<(String, String)>, Finding> {
    let wrong = |message: String, hint: &str| OUTLINE_WRONG.at(file.span, message).hint(hint);
    let root = node.document().root_element();
    let Some(unit) = unit(root) else {
        return Err(wrong(
            format!("`{}` does not say how large it is", file.text),
            "give the root a viewBox and a width in mm, cm or in",
        ));
    };
    let paths: Vec<Node<'_, '_>> =
        node.descendants().filter(|child| child.tag_name().name() == "path" && child.has_attribute("d")).collect();
    if paths.is_empty() {
        return Err(wrong(
            format!("`{id}` in `{}` holds no path", file.text),
            "draw its edges as paths, or turn its shapes into paths in the drawing program",
        ));
    }
    let mut edges = Vec::new();
    for path in paths {
        let moved = transform(path).map_err(|written| {
            wrong(
                format!("`{id}` in `{}` is moved by `{written}`, which cannot be read", file.text),
                "apply the transform in the drawing program, so that the numbers of the path are the true ones",
            )
        })?;
        let data = path.attribute("d").unwrap_or_default();
        // What cannot be read is told by the geometry, with the edge's name.
        let data = moved_path(data, Affine::scale(unit) * moved).unwrap_or_else(|_| data.to_owned());
        edges.push((edge_name(path, node), data));
    }
    Ok(edges)
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
