//! How sheets are printed and cloth is laid.

use crate::measure::Exact;

/// The record `sheets:`; all lengths in mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SheetSettings {
    /// What a printer leaves white at every edge of the paper.
    pub margin: Exact,
    /// How far two neighbouring sheets lie over each other.
    pub overlap: Exact,
    /// What is not used of the cloth at each selvedge.
    pub selvedge: Exact,
    /// What is bought beyond the length that the pieces need.
    pub spare: Exact,
}

impl Default for SheetSettings {
    /// Common practice, no source: home printers reach to 8 mm and less from the edge; 1 cm of
    /// overlap takes glue; 1 cm at a selvedge is often puckered; 5 cm straighten a torn end.
    fn default() -> SheetSettings {
        let length = Exact::from_integer;
        SheetSettings { margin: length(8), overlap: length(10), selvedge: length(10), spare: length(50) }
    }
}
