//! Where makers find what they need: what to ask for in a shop, and what else serves.

use super::prose::Block;
use super::text::Text;

/// Where to find what is bought, and what serves in its place.
#[derive(Debug, Clone, Default)]
pub struct Sourcing {
    /// Words that a shop knows, and addresses; printed as they stand.
    pub search: Vec<Text>,
    /// What serves where it cannot be had, with what changes.
    pub instead: Vec<Block>,
}
