//! Pieces: outlines, allowances, notches, and what is cut from which fabric.

use super::cut;
use super::fields::{self, Fields, spoken, yes};
use super::inside;
use super::markdown;
use super::measures;
use super::places::{self, point};
use super::reader::Room;
use super::ruled;
use super::yaml::{Node, Value};
use crate::diag::{Findings, did_you_mean};
use crate::faults::{KEY_MISSING, KEY_UNKNOWN, VALUE_UNREADABLE};
use crate::model::{Bend, BySize, Expression, Notch, Outline, Piece, Segment, Size, Text};

/// The sizes that a piece is for; `None` for all.
type Only<'a> = Option<&'a Vec<usize>>;

/// The keys of a piece.
pub(super) const KEYS: &[&str] = &[
    "name",
    "for",
    "drawn",
    "outline",
    "allowance",
    "fold",
    "sheet",
    "grain",
    "notches",
    "darts",
    "pleats",
    "marks",
    "up",
    "raw",
    "mirrored",
    "cut_larger",
    "cut",
    "edges",
    "note",
];

/// The keys of an outline.
pub(super) const OUTLINE: &[&str] = &["rectangle", "corners_out", "path", "svg", "id"];

/// The keys of an edge that is more than a corner to go to.
pub(super) const EDGE: &[&str] = &["to", "curve", "arc", "turn", "large"];

/// Reads the pieces of `booklet.yaml`.
pub(super) fn read(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    for (key, node) in fields::named(node, "pieces", findings) {
        let id = fields::name(key, findings);
        let Some(record) = Fields::open_needing(&["outline"], node, "a piece", KEYS, findings) else { continue };
        let name = record.text("name", findings).unwrap_or_else(|| Text {
            text: spoken(&id.text),
            span: key.span,
            verbatim: false,
        });
        let (cut, copy_names) = record.get("cut").map(|node| cut::read(node, sizes, findings)).unwrap_or_default();
        let outline = record.need("outline", "{rectangle: [width, height]}", findings);
        let only = super::sizes::only_for(&record, sizes, findings);
        pieces.push(Piece {
            outline: outline.and_then(|node| self::outline(node, only.as_ref(), sizes, findings)),
            sizes: only,
            drawn_stitching: drawn(record.text("drawn", findings), findings),
            allowance: record.get("allowance").map(|node| allowance(node, findings)).unwrap_or_default(),
            tape: None,
            fold: record.text("fold", findings).map(|text| fields::name(&text, findings)),
            cut_larger: record.get("cut_larger").and_then(|node| measures::expression(node, "`cut_larger`", findings)),
            by_ruler: record.text("sheet", findings).is_some_and(|text| !yes(&text, findings)),
            grain: record.text("grain", findings).filter(|text| is_grain(text, findings)),
            notches: record.get("notches").map(|node| notches(node, findings)).unwrap_or_default(),
            darts: record.get("darts").map(|node| inside::darts(node, findings)).unwrap_or_default(),
            pleats: record.get("pleats").map(|node| inside::pleats(node, findings)).unwrap_or_default(),
            marks: {
                let marks = record.get("marks").map(|node| inside::marks(node, findings)).unwrap_or_default();
                marks.into_iter().chain(inside::up(&record, findings)).collect()
            },
            raw: record.get("raw").map(|node| cut::edges(node, findings)).unwrap_or_default(),
            mirrored: record.text("mirrored", findings).is_some_and(|text| yes(&text, findings)),
            edge_names: record
                .get("edges")
                .map(|node| cut::page_names(node, "names of edges", findings))
                .unwrap_or_default(),
            copy_names,
            cut,
            note: record
                .text("note", findings)
                .map(|text| markdown::read_value(&text, sizes, Room::Cell, findings))
                .unwrap_or_default(),
            id,
            name,
        });
        if let (Some(piece), Some(node)) = (pieces.last_mut(), record.get("sheet")) {
            ruled::only_rectangles(piece, node.span, findings);
        }
    }
    pieces
}

fn drawn(text: Option<Text>, findings: &mut Findings) -> bool {
    let Some(text) = text else { return false };
    match text.text.as_str() {
        "stitching" => true,
        "cutting" => false,
        other => {
            findings.push(
                VALUE_UNREADABLE.at( text.span, format!("an outline is not drawn as `{other}`"))
                    .hint("write `drawn: cutting` (the outline is the cutting line) or `drawn: stitching` (the allowance is added)"),
            );
            false
        }
    }
}

fn allowance(node: &Node, findings: &mut Findings) -> Vec<(crate::model::Name, Expression)> {
    if let Value::Scalar(text) = &node.value {
        let all = Text { text: "all".into(), span: text.span, verbatim: false };
        let value = measures::expression(node, "`allowance`", findings);
        return value.map(|value| (fields::name(&all, findings), value)).into_iter().collect();
    }
    fields::named(node, "allowances", findings)
        .into_iter()
        .filter_map(|(key, node)| {
            let value = measures::expression(node, "an allowance", findings)?;
            Some((fields::name(key, findings), value))
        })
        .collect()
}

fn texts(node: &Node, what: &str, findings: &mut Findings) -> Vec<Text> {
    fields::list(node).into_iter().filter_map(|item| fields::text(item, what, findings)).collect()
}

/// `top centre`, `top 1/3`, `top 5 cm`, `top 5 cm from end`.
fn notches(node: &Node, findings: &mut Findings) -> Vec<Notch> {
    texts(node, "a notch", findings).into_iter().filter_map(|text| notch(text, findings)).collect()
}

fn notch(text: Text, findings: &mut Findings) -> Option<Notch> {
    let whole = text.text.trim();
    let (edge, place) = whole.split_once(' ').unwrap_or((whole, ""));
    let place = place.trim();
    let edge_at = text.text.find(edge).unwrap_or(0);
    let edge_text =
        Text { text: edge.to_owned(), span: text.at(edge_at..edge_at + edge.len()), verbatim: text.verbatim };
    let name = fields::name(&edge_text, findings);
    if place.is_empty() {
        findings.push(
            VALUE_UNREADABLE
                .at(text.span, format!("this notch does not say where on `{edge}` it is"))
                .hint(format!("write `{edge} centre`, `{edge} 1/3`, `{edge} 5 cm` or `{edge} 5 cm from end`")),
        );
        return None;
    }
    let at = text.text.rfind(place).unwrap_or(0);
    let source = Text { text: place.to_owned(), span: text.at(at..at + place.len()), verbatim: text.verbatim };
    Some(Notch { edge: name, at: places::along(&source, findings)?, text })
}

fn outline(node: &Node, only: Only<'_>, sizes: &[Size], findings: &mut Findings) -> Option<Outline> {
    let record = Fields::open_needing(&["svg", "id"], node, "an outline", OUTLINE, findings)?;
    if let Some(node) = record.get("rectangle") {
        let (width, height) = pair(node, "a rectangle", only, sizes, findings)?;
        let corners = record.get("corners_out").map(|node| corners(node, only, sizes, findings)).unwrap_or_default();
        return Some(Outline::Rectangle { width, height, corners_out: corners });
    }
    if let Some(node) = record.get("path") {
        // Every edge is read for its faults; with one of them missing there is no outline.
        let segments: Vec<Option<Segment>> =
            fields::list(node).into_iter().map(|item| segment(item, findings)).collect();
        return segments.into_iter().collect::<Option<Vec<Segment>>>().map(Outline::Path);
    }
    if record.get("svg").is_some() {
        let file = record.need_text("svg", "pieces/yoke.svg", findings)?;
        let id = record.need_text("id", "\"yoke-{size}\"", findings)?;
        return Some(Outline::Drawing { file, id });
    }
    findings.push(
        KEY_MISSING
            .at(node.span, "this outline has no shape")
            .hint("give it a `rectangle: [width, height]`, a `path:` of edges, or an `svg:` drawing with an `id:`"),
    );
    None
}

fn corners(
    node: &Node,
    only: Only<'_>,
    sizes: &[Size],
    findings: &mut Findings,
) -> Vec<(crate::model::Name, BySize, BySize)> {
    let mut found = Vec::new();
    for (key, node) in fields::named(node, "corners taken out", findings) {
        if !matches!(key.text.as_str(), "bottom" | "top") {
            findings.push(
                KEY_UNKNOWN
                    .at(key.span, format!("corners are taken out at the top or the bottom, not at `{}`", key.text))
                    .hint(did_you_mean(&key.text, ["top", "bottom"], "")),
            );
            continue;
        }
        if let Some((width, height)) = pair(node, "a corner taken out", only, sizes, findings) {
            found.push((fields::name(key, findings), width, height));
        }
    }
    found
}

fn pair(node: &Node, what: &str, only: Only<'_>, sizes: &[Size], findings: &mut Findings) -> Option<(BySize, BySize)> {
    match &node.value {
        Value::List(items) if items.len() == 2 => {
            let first = measures::by_size_for(&items[0], what, only, sizes, findings);
            let second = measures::by_size_for(&items[1], what, only, sizes, findings);
            first.zip(second)
        }
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(node.span, format!("{what} has two lengths, a width and a height"))
                    .hint("write both in brackets: `[20 cm, 30 cm]`"),
            );
            None
        }
    }
}

fn segment(node: &Node, findings: &mut Findings) -> Option<Segment> {
    let [(key, target)] = fields::named(node, "edges of a path", findings).try_into().ok().or_else(|| {
        findings.push(
            VALUE_UNREADABLE
                .at(node.span, "each line of a path names one edge")
                .hint("write `- top: [30 cm, 0 cm]`: the edge's name and the corner where it ends"),
        );
        None
    })?;
    let name = fields::name(key, findings);
    match &target.value {
        Value::Scalar(text) if text.text == "close" => Some(Segment { name, to: None, bend: Bend::Straight }),
        Value::List(_) => Some(Segment { name, to: Some(point(target, findings)?), bend: Bend::Straight }),
        _ => {
            let record = Fields::open_needing(&["to"], target, "an edge", EDGE, findings)?;
            let to = match record.need("to", "[30 cm, 0 cm]", findings)? {
                Node { value: Value::Scalar(text), .. } if text.text == "close" => None,
                node => Some(point(node, findings)?),
            };
            Some(Segment { name, to, bend: bend(&record, target, findings)? })
        }
    }
}

fn bend(record: &Fields<'_>, target: &Node, findings: &mut Findings) -> Option<Bend> {
    if let Some(node) = record.get("arc") {
        let radius = measures::expression(node, "`arc`", findings)?;
        let turn = record.text("turn", findings);
        let left = turn.as_ref().is_some_and(|turn| turn.text == "left");
        if let Some(turn) = turn.filter(|turn| !matches!(turn.text.as_str(), "left" | "right")) {
            findings.push(
                VALUE_UNREADABLE
                    .at(turn.span, format!("an arc cannot turn `{}`", turn.text))
                    .hint("write `turn: left` or `turn: right`, as one walks along the edge"),
            );
        }
        let large = record.text("large", findings).is_some_and(|text| yes(&text, findings));
        return Some(Bend::Arc { radius, left, large });
    }
    let controls: Vec<&Node> = record.get("curve").map(fields::list).unwrap_or_default();
    match controls.as_slice() {
        [] => Some(Bend::Straight),
        [first, second] => Some(Bend::Cubic([point(first, findings)?, point(second, findings)?])),
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(target.span, "a curve has two control points")
                    .hint("write `curve: [[30 cm, 5 cm], [28 cm, 10 cm]]`"),
            );
            None
        }
    }
}

fn is_grain(text: &Text, findings: &mut Findings) -> bool {
    let known = ["vertical", "horizontal", "bias"];
    let right = known.contains(&text.text.as_str());
    if !right {
        findings.push(
            VALUE_UNREADABLE.at(text.span, format!("the grain cannot run `{}`", text.text)).hint(did_you_mean(
                &text.text,
                known,
                "write `vertical`, `horizontal` or `bias`",
            )),
        );
    }
    right
}
