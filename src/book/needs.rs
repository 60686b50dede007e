//! What to buy: fabrics and notions, and how much of each.

use serde::{Deserialize, Serialize};

use super::amount::{Amount, Value};
use super::prose::Block;

/// A fabric to buy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FabricNeed {
    /// Its stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// Its name on the page.
    pub name: String,
    /// More to know.
    pub note: Vec<Block>,
    /// Words that a shop knows, and addresses.
    pub search: Vec<String>,
    /// What serves where it cannot be had, with what changes.
    pub instead: Vec<Block>,
    /// How much to buy of each width that it is sold in; one row without a width where none is stated.
    pub widths: Vec<WidthNeed>,
}

impl FabricNeed {
    /// Whether each size shown needs some of it.
    pub fn needed(&self) -> Vec<bool> {
        let longest = self.widths.iter().map(|width| width.amounts.len()).max().unwrap_or(0);
        let any = |at: usize| self.widths.iter().any(|width| width.amounts.get(at).is_some_and(Option::is_some));
        (0..longest).map(any).collect()
    }
}

/// How much of a fabric to buy in one of its widths.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WidthNeed {
    /// The width; `None` where the author states none.
    pub width: Option<Value>,
    /// One for each size shown; `None` where a size needs none of it, or none that could be reckoned.
    pub amounts: Vec<Option<Amount>>,
}

/// A notion to buy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NotionNeed {
    /// Its stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// Its name on the page.
    pub name: String,
    /// More to know.
    pub note: Vec<Block>,
    /// Words that a shop knows, and addresses.
    pub search: Vec<String>,
    /// What serves where it cannot be had, with what changes.
    pub instead: Vec<Block>,
    /// Whether its length is thread that was estimated from the seams.
    pub estimated: bool,
    /// One for each size shown; `None` where a size needs none of it.
    pub amounts: Vec<Option<NotionAmount>>,
}

/// How much of a notion.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NotionAmount {
    /// How many.
    pub count: Option<u32>,
    /// How long one is.
    pub length: Option<Amount>,
    /// How much of it in all.
    pub amount: Option<Amount>,
    /// How wide it is.
    pub width: Option<Amount>,
    /// How large one is: a length across, or the trade's number.
    pub size: Option<Amount>,
}
