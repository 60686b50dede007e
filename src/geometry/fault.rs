//! What can be wrong with an outline or its allowances, in words that a sewist understands.

use crate::diag::listed;
use crate::limits::SEGMENTS;

/// One fault. Places and distances are in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum ShapeFault {
    /// The end of the outline does not reach its start.
    NotClosed {
        /// From the end to the start.
        gap: f64,
    },
    /// A path has no start, a start that is not its first run, or a run after the one that closes.
    StartMisplaced,
    /// The outline crosses or touches itself.
    SelfCrossing {
        /// The edge that comes first as one goes round.
        first: String,
        /// The edge that it meets; the same when an edge crosses itself.
        second: String,
        /// Where.
        at: [f64; 2],
    },
    /// The allowance is so wide that nothing is left of the edge on the other line.
    AllowanceEatsPiece {
        /// The edge.
        edge: String,
    },
    /// The allowances of two edges run into each other across the gap between them.
    AllowancesMeet {
        /// The edge that comes first as one goes round.
        first: String,
        /// The edge that it meets.
        second: String,
    },
    /// An allowance is below 0.
    AllowanceBelowZero {
        /// The edge. `None`: the allowance for every edge.
        edge: Option<String>,
    },
    /// An allowance or the fold names an edge that the outline has not.
    NoSuchEdge {
        /// The name that was written.
        name: String,
        /// The edges that there are.
        known: Vec<String>,
    },
    /// Two separate stretches of the outline bear one name.
    NameTwice {
        /// The name.
        edge: String,
    },
    /// The edge on the fold bends.
    FoldNotStraight {
        /// The edge.
        edge: String,
        /// How far it leaves the straight line.
        by: f64,
    },
    /// The piece reaches over the fold, so that its two halves would overlap.
    FoldCrossed {
        /// The edge on the fold.
        edge: String,
        /// How far it reaches over.
        by: f64,
    },
    /// An edge, or a whole outline, without any length or width.
    Degenerate(String),
    /// A corner taken out leaves nothing of an edge beside it.
    CornerTooLarge {
        /// The edge of which nothing is left.
        edge: String,
    },
    /// The radius of an arc is too small to span its two ends.
    ArcTooShort {
        /// The edge.
        edge: String,
        /// The least radius that spans them.
        needed: f64,
    },
    /// Path data that cannot be read.
    UnreadablePath {
        /// The entry, from 0.
        index: usize,
        /// The edge it draws.
        edge: String,
        /// What is wrong with it.
        message: String,
    },
    /// A piece of a drawn outline does not begin where the one before it ends.
    NotJoined {
        /// The entry, from 0.
        index: usize,
        /// The edge it draws.
        edge: String,
        /// From the end of the entry before to its start.
        gap: f64,
    },
    /// A measurement of the outline or an allowance is over 50 m.
    TooFar {
        /// The edge.
        edge: String,
    },
    /// More lines and curves than [`SEGMENTS`](crate::limits::SEGMENTS).
    TooManyLines {
        /// The edge at which there are too many.
        edge: String,
    },
}

impl ShapeFault {
    /// The fact, in plain words, without a full stop.
    pub fn message(&self) -> String {
        match self {
            Self::NotClosed { gap } => {
                format!("the outline does not close: it ends {} from its start", mm(*gap))
            }
            Self::StartMisplaced => {
                "the outline does not begin with one start point and end where it closes".to_owned()
            }
            Self::SelfCrossing { first, second, at } if first == second => {
                format!("the edge `{first}` crosses or touches itself {}", place(*at))
            }
            Self::SelfCrossing { first, second, at } => {
                format!("the edge `{first}` crosses or touches `{second}` {}", place(*at))
            }
            Self::AllowanceEatsPiece { edge } => {
                format!("the allowances leave nothing of the edge `{edge}`")
            }
            Self::AllowancesMeet { first, second } => {
                format!("the allowances of `{first}` and `{second}` run into each other")
            }
            Self::AllowanceBelowZero { edge: Some(edge) } => {
                format!("the allowance at `{edge}` is below 0")
            }
            Self::AllowanceBelowZero { edge: None } => "the allowance is below 0".to_owned(),
            Self::NoSuchEdge { name, .. } => format!("the outline has no edge called `{name}`"),
            Self::NameTwice { edge } => {
                format!("two separate stretches of the outline are called `{edge}`")
            }
            Self::FoldNotStraight { edge, by } => {
                format!("`{edge}` lies on the fold but bends by {}", mm(*by))
            }
            Self::FoldCrossed { edge, by } => {
                format!("the piece reaches {} over the fold at `{edge}`", mm(*by))
            }
            Self::Degenerate(edge) => format!("`{edge}` has no length"),
            Self::CornerTooLarge { edge } => {
                format!("the corners taken out leave nothing of the edge `{edge}`")
            }
            Self::ArcTooShort { edge, .. } => {
                format!("the radius of `{edge}` is too small to reach from end to end")
            }
            Self::UnreadablePath { edge, message, .. } => {
                format!("the line drawn for `{edge}` cannot be read: {message}")
            }
            Self::NotJoined { edge, gap, .. } => {
                format!("`{edge}` begins {} from the end of the line before it", mm(*gap))
            }
            Self::TooFar { edge } => format!("a figure of `{edge}` is over 50 m"),
            Self::TooManyLines { .. } => SEGMENTS.fact(),
        }
    }

    /// The act that mends it, without a full stop.
    pub fn hint(&self) -> String {
        match self {
            Self::NotClosed { .. } => "let the last edge end where the first begins".to_owned(),
            Self::StartMisplaced => "give the start point first and once, and close with the last edge".to_owned(),
            Self::SelfCrossing { .. } => "check the points of both edges, and their order, in this size".to_owned(),
            Self::AllowanceEatsPiece { .. } => {
                "make the allowance narrower there or beside it, or the piece larger".to_owned()
            }
            Self::AllowancesMeet { .. } => {
                "make the allowances narrower there, or the gap between the edges wider".to_owned()
            }
            Self::AllowanceBelowZero { .. } => "give 0 or more".to_owned(),
            Self::NoSuchEdge { known, .. } => match known.as_slice() {
                [] => "draw the outline first".to_owned(),
                [only] => format!("its only edge is {only}"),
                several => format!("its edges are {}", listed(several)),
            },
            Self::NameTwice { .. } => "give each of them a name of its own".to_owned(),
            Self::FoldNotStraight { .. } => {
                "draw the edge on the fold as one straight line, or take the fold away".to_owned()
            }
            Self::FoldCrossed { .. } => "keep the whole piece and its allowances on one side of the fold".to_owned(),
            Self::Degenerate(_) => "check the figures that it is worked out from".to_owned(),
            Self::CornerTooLarge { .. } => "take out smaller corners, or make the rectangle larger".to_owned(),
            Self::ArcTooShort { needed, .. } => {
                format!("give a radius of at least {}", mm(*needed))
            }
            Self::UnreadablePath { .. } => "draw one unbroken line for it and save the drawing again".to_owned(),
            Self::NotJoined { .. } => "draw the edges in order, each from the end of the one before".to_owned(),
            Self::TooFar { .. } => "check the unit of the figures".to_owned(),
            Self::TooManyLines { .. } => SEGMENTS.act.to_owned(),
        }
    }

    /// The edge at fault. `None` when it is the whole outline.
    pub fn edge(&self) -> Option<&str> {
        match self {
            Self::NotClosed { .. } | Self::StartMisplaced => None,
            Self::AllowanceBelowZero { edge } => edge.as_deref(),
            Self::SelfCrossing { first: edge, .. }
            | Self::AllowancesMeet { first: edge, .. }
            | Self::AllowanceEatsPiece { edge }
            | Self::NoSuchEdge { name: edge, .. }
            | Self::NameTwice { edge }
            | Self::FoldNotStraight { edge, .. }
            | Self::FoldCrossed { edge, .. }
            | Self::Degenerate(edge)
            | Self::CornerTooLarge { edge }
            | Self::ArcTooShort { edge, .. }
            | Self::UnreadablePath { edge, .. }
            | Self::NotJoined { edge, .. }
            | Self::TooFar { edge }
            | Self::TooManyLines { edge } => Some(edge),
        }
    }
}

/// A distance in words. Upwards in the last place where nothing would be left of it, and always
/// upwards for a least radius: the figure that is printed must itself suffice.
fn mm(distance: f64) -> String {
    let hundredths = (distance * 100.0 - 1e-6).ceil().max(1.0);
    format!("{} mm", hundredths / 100.0)
}

fn place([x, y]: [f64; 2]) -> String {
    format!("at {x:.0} mm from the left and {y:.0} mm from the top")
}
