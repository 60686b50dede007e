//! Lengths that are cut from tape, webbing or elastic: each is a piece like any other, with two ends and two sides.

use super::cut;
use super::fields::{self, Fields};
use super::measures;
use super::reader::Room;
use super::sizes::only_for;
use super::things::{name_of, prose};
use super::yaml::Node;
use crate::diag::Findings;
use crate::faults::{KEY_MISSING, KEY_UNKNOWN};
use crate::model::{BySize, Cut, CutCopies, Kind, Name, Notion, NotionFigure, Outline, Piece, Size};

/// The keys of a length.
pub(super) const KEYS: &[&str] = &["name", "length", "count", "raw", "for", "note"];

/// Reads what is cut from a notion, as pieces.
pub(super) fn read(node: &Node, notion: &Notion, sizes: &[Size], findings: &mut Findings) -> Vec<Piece> {
    if !matches!(notion.kind, Kind::Tape | Kind::Elastic) {
        let finding = KEY_UNKNOWN.at(node.span, "only tape and elastic are cut to length");
        findings
            .push(finding.hint("write `kind: tape` or `kind: elastic`, or describe a piece of cloth under `pieces:`"));
        return Vec::new();
    }
    let Some(width) = notion.figures.get(&NotionFigure::Width) else {
        let finding =
            KEY_MISSING.at(node.span, format!("`{}` is cut to length and does not say how wide it is", notion.id.text));
        findings.push(finding.hint("add a line such as `width: 38 mm (1 1/2 in)`"));
        return Vec::new();
    };
    let mut pieces = Vec::new();
    for (key, node) in fields::named(node, "what is cut from a notion", findings) {
        let id = fields::name(key, findings);
        let Some(record) = Fields::open_needing(&["length"], node, "a length", KEYS, findings) else { continue };
        let length = record.need("length", "40 cm", findings);
        let only = only_for(&record, sizes, findings).or_else(|| notion.sizes.clone());
        let length = length.and_then(|node| measures::by_size_for(node, "`length`", only.as_ref(), sizes, findings));
        let count = record.get("count").map(|node| cut::of_one(&notion.id, node, sizes, findings));
        let (mut cut, copy_names) = count.unwrap_or_default();
        if cut.is_empty() {
            cut.push(Cut { fabric: notion.id.clone(), copies: CutCopies::Count(1), sizes: None });
        }
        let mut raw = record.get("raw").map(|node| cut::edges(node, findings)).unwrap_or_default();
        // The sides are woven.
        raw.extend(["side_a", "side_b"].map(|side| Name { text: side.into(), span: key.span }));
        pieces.push(Piece {
            name: name_of(&record, key, findings),
            sizes: only,
            outline: length.map(|length| strip(length, width.clone())),
            tape: Some(notion.id.clone()),
            raw,
            cut,
            copy_names,
            note: prose(&record, "note", sizes, Room::Cell, findings),
            ..Piece::bare(id)
        });
    }
    pieces
}

fn strip(length: BySize, width: BySize) -> Outline {
    Outline::Rectangle { width: length, height: width, corners_out: Vec::new() }
}
