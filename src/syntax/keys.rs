//! Every record of keys that a booklet may hold, with the pages that explain its keys: the manual and
//! its tests walk this table.
//!
//! The lists of keys are those of the readers. A page stands beside its reader: a heading `#` names the
//! record as messages do, a heading `##` each of its keys.

use super::{facts, fit, gaps, inside, lengths, notions, pieces, sheets, sizes, things, views, waive, work};
use super::{shop, video};

/// A set of keys that stand together.
#[derive(Debug, Clone, Copy)]
pub struct Record {
    /// What messages call it: "a piece".
    pub what: &'static str,
    /// Its keys.
    pub keys: &'static [&'static str],
    /// The pages of its keys, among those of other records.
    pub page: &'static str,
    /// The file of the pages.
    pub file: &'static str,
}

const FACTS: (&str, &str) = ("src/syntax/facts.md", include_str!("facts.md"));
const THINGS: (&str, &str) = ("src/syntax/things.md", include_str!("things.md"));
const PIECES: (&str, &str) = ("src/syntax/pieces.md", include_str!("pieces.md"));
const INSIDE: (&str, &str) = ("src/syntax/inside.md", include_str!("inside.md"));
const WORK: (&str, &str) = ("src/syntax/work.md", include_str!("work.md"));

const fn record(what: &'static str, keys: &'static [&'static str], page: (&'static str, &'static str)) -> Record {
    Record { what, keys, page: page.1, file: page.0 }
}

/// Every record, in the order of the manual.
pub static RECORDS: &[Record] = &[
    record("a booklet", facts::KEYS, FACTS),
    record("a size", sizes::KEYS, FACTS),
    record("a view", views::KEYS, FACTS),
    record("`show`", facts::SHOW, FACTS),
    record("`style`", facts::STYLE, FACTS),
    record("an expectation", facts::EXPECTATION, FACTS),
    record("a finished measurement", fit::FINISHED, FACTS),
    record("a shared part", facts::PART, FACTS),
    record("an entry in the record of editions", things::RELEASE, FACTS),
    record("`sheets`", sheets::KEYS, FACTS),
    record("`shop`", shop::KEYS, FACTS),
    record("`video`", video::KEYS, FACTS),
    record("a waiver", waive::KEYS, FACTS),
    record("a tool, a caution or a meaning", things::SAID, FACTS),
    record("a fabric", things::FABRIC, THINGS),
    record("a notion", notions::KEYS, THINGS),
    record("a length", lengths::KEYS, THINGS),
    record("a kind of notion", notions::WORDS, THINGS),
    record("a piece", pieces::KEYS, PIECES),
    record("an outline", pieces::OUTLINE, PIECES),
    record("an edge", pieces::EDGE, PIECES),
    record("a dart", inside::DART, INSIDE),
    record("a pleat", inside::PLEAT, INSIDE),
    record("a mark", inside::MARK, INSIDE),
    record("a work fact", work::KEYS, WORK),
    record("a gap", gaps::GAP, WORK),
];
