//! The page map and the cutting layouts as data for the templates.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use crate::cloth::ClothLayout;
use crate::measure::{Dimension, Quantity};
use crate::measure::{Exact, NumberStyle, Unit, convert, show};
use crate::resolve::{Edition, FabricRow, Shown, ShownFigure};
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
                "width": width(edition, layout),
                "folded": layout.bolt.folded,
                // What the author states to buy goes before what is reckoned.
                "buy": stated(edition, layout).or_else(|| amount(layout)),
                "path": path,
                "drawn_width": size.0,
                "drawn_height": size.1,
            })
        })
        .collect()
}

fn stated(edition: &Edition<'_>, layout: &ClothLayout) -> Option<Shown> {
    edition.fabrics.iter().find(|row| row.fabric == layout.bolt.fabric)?.amount.clone()
}

fn width(edition: &Edition<'_>, layout: &ClothLayout) -> Option<Shown> {
    let fabric = &edition.draft.facts.fabrics[layout.bolt.fabric];
    let width = fabric.widths.get(layout.bolt.width_at)?;
    Some(edition.figures(&edition.values.quiet(width)?))
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
            row.amount.clone().or_else(|| amount(&layout?.0))
        })
        .collect()
}

/// A length of cloth as shops cut it: tenths of a metre, eighths of a yard. `None` where it could not be
/// held, which a check tells.
fn amount(layout: &ClothLayout) -> Option<Shown> {
    let figure = |value: Exact, unit: Unit, style: NumberStyle| {
        let quantity = Quantity { value, dimension: Dimension::Length };
        let shown = show(convert(quantity, unit)?, unit, style);
        Some(ShownFigure { number: shown.number, unit: shown.unit.to_owned(), quantity })
    };
    let (metres, yards) = layout.buy?;
    Some(Shown {
        first: figure(metres, Unit::M, NumberStyle::Decimal)?,
        second: Some(figure(yards, Unit::Yd, NumberStyle::Fraction)?),
    })
}
