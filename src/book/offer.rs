//! What is left to the maker: work that she may leave out, and ways of which she takes one.

use serde::{Deserialize, Serialize};

use super::cutting::CutList;
use super::needs::{FabricNeed, NotionNeed};

/// Work that may be left out, or one way of a choice, with what it alone needs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Offer {
    /// The id of the part or the step whose heading offers it.
    pub id: String,
    /// Its place among all that is left to the maker.
    pub at: usize,
    /// The choice that it is a way of; `None` for what may be left out.
    pub choice: Option<String>,
    /// Fabrics of which more is bought for it: how much in all, whatever else is left out.
    pub fabrics: Vec<FabricNeed>,
    /// Notions that are bought for it, and those of which more is; how much in all.
    pub notions: Vec<NotionNeed>,
    /// The pieces that are cut for it alone.
    pub cuts: Vec<CutList>,
}
