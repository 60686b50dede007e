//! How sheets are printed and cloth is laid: the record `sheets:`.

use serde::Deserialize;

use super::fields::{self, Fields};
use super::measures;
use super::yaml::Node;
use crate::diag::Findings;
use crate::faults::OUT_OF_RANGE;
use crate::measure::{Dimension, Exact, read_measure};
use crate::model::SheetSettings;

/// The keys of `sheets:`.
pub(super) const KEYS: &[&str] = &["margin", "overlap", "selvedge", "spare"];

/// The record before its lengths are read.
#[derive(Deserialize)]
struct Record {
    margin: Option<String>,
    overlap: Option<String>,
    selvedge: Option<String>,
    spare: Option<String>,
}

/// Reads the settings; what is left out has its usual value.
pub(super) fn read(node: Option<&Node>, findings: &mut Findings) -> SheetSettings {
    let mut settings = SheetSettings::default();
    let Some(node) = node else { return settings };
    if Fields::open(node, "`sheets`", KEYS, findings).is_none() {
        return settings;
    }
    let Some(record) = fields::record::<Record>(node, "`sheets`", findings) else { return settings };
    let mut length = |key: &str, written: Option<String>, into: &mut Exact| {
        match written {
            // Paper may be printed to its edge, and cloth used to its last thread.
            Some(written) if is_nought(&written) => *into = Exact::from_integer(0),
            Some(written) => measures::plain_length(node, key, &written, into, findings),
            None => {}
        }
    };
    length("margin", record.margin, &mut settings.margin);
    length("overlap", record.overlap, &mut settings.overlap);
    length("selvedge", record.selvedge, &mut settings.selvedge);
    length("spare", record.spare, &mut settings.spare);
    if settings.margin > Exact::from_integer(40) || settings.overlap > Exact::from_integer(60) {
        findings.push(
            OUT_OF_RANGE
                .at(node.span, "these margins leave no room on the paper")
                .hint("keep `margin` at 4 cm or less and `overlap` at 6 cm or less"),
        );
        settings = SheetSettings::default();
    }
    settings
}

/// Whether a length is none at all; a nought needs no unit.
fn is_nought(written: &str) -> bool {
    read_measure(written).is_ok_and(|measure| {
        let quantity = measure.first.quantity;
        quantity.value == Exact::from_integer(0) && matches!(quantity.dimension, Dimension::Length | Dimension::Count)
    })
}
