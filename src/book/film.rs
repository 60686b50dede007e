//! The video that goes with a booklet.

use serde::{Deserialize, Serialize};

/// A video that makers watch while they sew.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Film {
    /// Where it is.
    pub url: String,
    /// What it opens with, before the first part.
    pub opening: Option<String>,
    /// The square of dots that leads a camera there, by its name among the drawings; `None` where the address is too long
    /// for one.
    pub code: Option<String>,
}
