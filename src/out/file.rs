//! A file to make, and what it belongs to.

use serde::{Deserialize, Serialize};

/// A file to make.
#[derive(Debug, Clone)]
pub struct NewFile {
    /// Where it goes, from the folder of the edition, with `/` between names.
    pub path: String,
    /// What it holds.
    pub bytes: Vec<u8>,
    /// What it belongs to.
    pub origin: Origin,
}

/// What a file belongs to: of two files with one origin, the later takes the place of the earlier.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Origin {
    /// What it is: a booklet on one paper, its sheets, its diagrams.
    pub kind: String,
    /// The size, view or set of all that it is for.
    pub of: String,
}
