//! The page map and the cutting layouts as data for the templates.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use crate::cloth::{ClothLayout, LaidPiece, Layers};
use crate::measure::{Dimension, Quantity};
use crate::measure::{Exact, NumberStyle, Unit, convert, show};
use crate::resolve::{CutRow, Edition, FabricRow, Shown, ShownFigure};
use crate::sheets::PageMap;

/// The map of the sheets, its drawing put among the files.
pub(super) fn map(map: &PageMap, files: &mut BTreeMap<String, Vec<u8>>) -> Value {
    let path = "/sheets/map.svg".to_owned();
    files.insert(path.clone(), map.svg.clone().into_bytes());
    json!({
        "path": path,
        "width": map.size.0,
        "height": map.size.1,
        "sheets": map.sheets,
        "rows": map.grid.0,
        "columns": map.grid.1,
        "naive": map.naive,
    })
}

/// Every layout, its drawing put among the files.
pub(super) fn layouts(
    edition: &Edition<'_>,
    cloth: &[(ClothLayout, String, (f64, f64))],
    files: &mut BTreeMap<String, Vec<u8>>,
) -> Vec<Value> {
    let facts = &edition.draft.facts;
    cloth
        .iter()
        .enumerate()
        .map(|(at, (layout, svg, size))| {
            let path = format!("/layouts/{at}.svg");
            files.insert(path.clone(), svg.clone().into_bytes());
            let fabric = &facts.fabrics[layout.bolt.fabric];
            json!({
                "fabric": fabric.name.text,
                "id": fabric.id.text,
                "width": edition.cloth_width(layout.bolt.fabric, layout.bolt.width_at),
                "folded": layout.bolt.folded,
                "single_layer": named(edition, layout, |piece| layout.single_layer(piece)),
                "turned_over": named(edition, layout, |piece| piece.turned_over && piece.layers == Layers::One),
                "opened": named(edition, layout, |piece| piece.opened),
                // What the author states to buy goes before what is reckoned.
                "buy": stated(edition, layout).unwrap_or_else(|| amount(layout)),
                "path": path,
                "drawn_width": size.0,
                "drawn_height": size.1,
            })
        })
        .collect()
}

/// The names of the pieces that something holds for, each once.
fn named(edition: &Edition<'_>, layout: &ClothLayout, holds: impl Fn(&LaidPiece) -> bool) -> Vec<String> {
    let mut pieces: Vec<usize> = layout.pieces.iter().filter(|one| holds(one)).map(|one| one.piece).collect();
    pieces.sort_unstable();
    pieces.dedup();
    pieces.into_iter().map(|piece| edition.draft.facts.pieces[piece].name.text.clone()).collect()
}

/// How many copies of a row are cut from a single layer of folded cloth, whatever its width.
pub(super) fn on_single_layer(row: &CutRow, cloth: &[(ClothLayout, String, (f64, f64))]) -> usize {
    let layouts = cloth.iter().map(|(layout, ..)| layout).filter(|layout| layout.bolt.fabric == row.fabric);
    let singles = |layout: &ClothLayout| {
        let pieces = layout.pieces.iter().filter(|one| one.piece == row.piece);
        pieces.filter(|one| layout.single_layer(one)).count()
    };
    layouts.map(singles).min().unwrap_or(0)
}

fn stated(edition: &Edition<'_>, layout: &ClothLayout) -> Option<Shown> {
    edition.fabrics.iter().find(|row| row.fabric == layout.bolt.fabric)?.amount.clone()
}

/// The length to buy, for each width of a fabric; the author's own amount goes before it.
pub(super) fn by_width(
    edition: &Edition<'_>,
    row: &FabricRow,
    cloth: &[(ClothLayout, String, (f64, f64))],
) -> Vec<Option<Shown>> {
    let fabric = &edition.draft.facts.fabrics[row.fabric];
    (0..fabric.widths.len())
        .map(|width_at| {
            let layout =
                cloth.iter().find(|(layout, ..)| layout.bolt.fabric == row.fabric && layout.bolt.width_at == width_at);
            row.amount.clone().or_else(|| layout.map(|(layout, ..)| amount(layout)))
        })
        .collect()
}

/// A length of cloth as shops cut it: tenths of a metre, eighths of a yard.
fn amount(layout: &ClothLayout) -> Shown {
    let figure = |value: Exact, unit: Unit, style: NumberStyle| {
        let quantity = Quantity { value, dimension: Dimension::Length };
        let shown = show(convert(quantity, unit).unwrap_or(value), unit, style);
        ShownFigure { number: shown.number, unit: shown.unit.to_owned(), quantity }
    };
    Shown {
        first: figure(layout.buy.0, Unit::M, NumberStyle::Decimal),
        second: Some(figure(layout.buy.1, Unit::Yd, NumberStyle::Fraction)),
    }
}
