//! What a maker chooses a size by: the body's measures, and those of the finished thing.

use super::fields::{self, Fields};
use super::measures;
use super::sizes::only_for;
use super::yaml::{Node, Value};
use crate::diag::Findings;
use crate::model::{BodyRow, FinishedRow, Size, Text};

/// The keys of a finished measurement.
pub(super) const FINISHED: &[&str] = &["value", "for", "over", "sewn"];

/// Reads the body measurements.
pub(super) fn body(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<BodyRow> {
    let rows = fields::named(node, "body measurements", findings);
    let read = rows.into_iter().filter_map(|(key, node)| {
        let (value, _) = measures::by_view(node, &what(key), sizes, findings)?;
        Some(BodyRow { name: key.clone(), value })
    });
    read.collect()
}

/// Reads the finished measurements.
pub(super) fn finished(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<FinishedRow> {
    let rows = fields::named(node, "finished measurements", findings);
    rows.into_iter().filter_map(|(key, node)| finished_row(key, node, sizes, findings)).collect()
}

fn finished_row(key: &Text, node: &Node, sizes: &[Size], findings: &mut Findings) -> Option<FinishedRow> {
    // A record with `value:` also says what it goes over, and which measure of the sewn thing it is.
    let is_record = matches!(&node.value, Value::Map(entries) if entries.iter().any(|(key, _)| key.text == "value"));
    if !is_record {
        let (value, only) = measures::by_view(node, &what(key), sizes, findings)?;
        return Some(FinishedRow { name: key.clone(), value, sewn: None, over: None, sizes: only });
    }
    let record = Fields::open_needing(&["value"], node, "a finished measurement", FINISHED, findings)?;
    let node = record.need("value", "width", findings)?;
    let (value, only) = match only_for(&record, sizes, findings) {
        Some(only) => (measures::by_size_for(node, &what(key), Some(&only), sizes, findings)?, Some(only)),
        None => measures::by_view(node, &what(key), sizes, findings)?,
    };
    let (sewn, over) = (record.text("sewn", findings), record.text("over", findings));
    Some(FinishedRow { name: key.clone(), value, sewn, over, sizes: only })
}

fn what(key: &Text) -> String {
    format!("“{}”", key.text)
}
