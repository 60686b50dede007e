//! One choice of sizes on the page.

use crate::typeset::Sheaf;

/// The key of all sizes together; no size can be called so, since names have no dashes.
pub const EVERY: &str = "all-sizes";

/// What the page shows when one size is chosen, or all of them.
#[derive(Debug, Clone)]
pub struct Leaf {
    /// What the choice is called inside the page: the size's id; [`EVERY`] for all.
    pub key: String,
    /// Its name for makers.
    pub name: String,
    /// The thing that it is a size of, where the pattern is for several.
    pub group: Option<String>,
    /// The booklet of that choice, as for paper.
    pub sheaf: Sheaf,
}
