//! How many layers of cloth a cut goes through.

/// The layers that a piece is cut through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Layers {
    /// One, right side up. Where the cloth is folded, it is opened out for such a piece, or the lower
    /// layer alone is cut.
    One,
    /// Both layers of folded cloth: the upper one gives the piece turned over.
    Both,
    /// Both layers, with an edge at the fold: one whole piece.
    Fold,
}
