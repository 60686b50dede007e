//! What can be wrong with a dart or a pleat, in words that a sewist understands.

/// One fault. Distances are in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum ShapingFault {
    /// The outline has no such edge; those that it has.
    NoSuchEdge {
        /// What was written.
        edge: String,
        /// What there is.
        known: Vec<String>,
    },
    /// Some of it lies beyond the end of its edge.
    OffEdge {
        /// The edge.
        edge: String,
    },
    /// A width, a depth, a length or a distance is nothing or less.
    NotAboveZero {
        /// What it is.
        what: &'static str,
    },
    /// Its point or a leg lies off the piece.
    OffPiece,
    /// It runs along its edge more than into the piece.
    AlongEdge {
        /// The edge.
        edge: String,
    },
    /// It lies over another one.
    OverAnother {
        /// The edge of both.
        edge: String,
    },
    /// Its mouth cannot be folded before the edge ends.
    NearCorner {
        /// The edge.
        edge: String,
    },
    /// It cannot be laid the way that is said.
    CannotLie,
}

impl ShapingFault {
    /// The fact; `what` is "this dart" or "this pleat".
    pub fn message(&self, what: &str) -> String {
        match self {
            Self::NoSuchEdge { edge, .. } => format!("the outline has no edge called `{edge}`"),
            Self::OffEdge { edge } => format!("{what} reaches beyond the end of the edge `{edge}`"),
            Self::NotAboveZero { what: figure } => format!("the {figure} of {what} is not above 0"),
            Self::OffPiece => format!("{what} does not lie on the piece"),
            Self::AlongEdge { edge } => format!("{what} runs along the edge `{edge}` more than into the piece"),
            Self::OverAnother { edge } => format!("{what} lies over another dart or pleat of `{edge}`"),
            Self::NearCorner { edge } => {
                format!("{what} lies so near the end of `{edge}` that its mouth cannot be cut as it is folded")
            }
            Self::CannotLie => format!("{what} cannot be laid that way: it would lie along itself"),
        }
    }

    /// The act that mends it.
    pub fn hint(&self) -> &'static str {
        match self {
            Self::NoSuchEdge { .. } => "name an edge of this piece",
            Self::OffEdge { .. } => {
                "`at:` is the middle of its mouth: move it along the edge, or take less, until all of it lies on the edge in this size"
            }
            Self::NotAboveZero { .. } => "give a length above 0",
            Self::OffPiece => {
                "points are counted in the outline’s own drawing, across and down: check its points in this size"
            }
            Self::AlongEdge { .. } => "move its point to lie more nearly straight in from `at:`",
            Self::OverAnother { .. } => "move it along the edge, or take less",
            Self::NearCorner { .. } => "move it away from the corner, or lay it the other way",
            Self::CannotLie => {
                "one whose legs run up and down is laid `to centre`, `to side`, `left` or `right`; one that runs across, `down` or `up`"
            }
        }
    }
}
