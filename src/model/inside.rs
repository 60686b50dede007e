//! What is shown on a piece: notches, darts, pleats and tucks, and the marks that a maker carries over to the
//! cloth.

use super::text::{Expression, Name, Text};
use crate::geometry::{Fold, Laid};

/// A point of a piece, as its author draws it: across and down.
pub type PointAt = (Expression, Expression);

/// A notch.
#[derive(Debug, Clone)]
pub struct Notch {
    /// The edge that it is on.
    pub edge: Name,
    /// Where on the edge.
    pub at: NotchAt,
    /// As written.
    pub text: Text,
}

/// Where on its edge a notch is.
#[derive(Debug, Clone)]
pub enum NotchAt {
    /// In the middle.
    Centre,
    /// At a length or a share (a plain number from 0 to 1) from the edge's beginning.
    FromStart(Expression),
    /// The same from its end.
    FromEnd(Expression),
}

/// A dart.
#[derive(Debug, Clone)]
pub struct Dart {
    /// Its name in the files.
    pub name: Name,
    /// Where it lies.
    pub place: DartPlace,
    /// What it takes out of the seam, or where it is widest.
    pub width: Expression,
    /// To which side it is laid; `None`: down or to the centre.
    pub laid: Option<Laid>,
}

/// Where a dart lies.
#[derive(Debug, Clone)]
#[allow(clippy::large_enum_variant, reason = "there are few darts")]
pub enum DartPlace {
    /// It opens at an edge.
    Edge {
        /// The edge.
        edge: Name,
        /// The middle of its mouth.
        at: NotchAt,
        /// Its point.
        tip: DartTip,
    },
    /// It has a point at each end.
    Inside {
        /// One point.
        from: PointAt,
        /// The other.
        to: PointAt,
    },
}

/// Where the point of a dart lies.
#[derive(Debug, Clone)]
pub enum DartTip {
    /// There.
    Point(PointAt),
    /// So far straight in from the stitching line.
    Straight(Expression),
}

/// Pleats or tucks.
#[derive(Debug, Clone)]
pub struct Pleat {
    /// Their name in the files.
    pub name: Name,
    /// The edge.
    pub edge: Name,
    /// The middle of the first, or of all.
    pub at: NotchAt,
    /// How deep each fold is.
    pub depth: Expression,
    /// How each is folded.
    pub fold: Fold,
    /// How many; `None`: one.
    pub count: Option<Expression>,
    /// From the middle of one to the middle of the next.
    pub apart: Option<Expression>,
    /// How far the lines run in.
    pub length: Option<Expression>,
    /// To which side they are laid.
    pub laid: Option<Laid>,
}

/// A mark.
#[derive(Debug, Clone)]
pub struct Mark {
    /// Its name in the files.
    pub name: Name,
    /// What is marked.
    pub place: MarkPlace,
    /// The copies that have it; empty for all.
    pub only: Vec<Name>,
}

/// What a mark marks.
#[derive(Debug, Clone)]
#[allow(clippy::large_enum_variant, reason = "there are few marks")]
pub enum MarkPlace {
    /// A point.
    Point(PointAt),
    /// A place on an edge, on its stitching line.
    Edge {
        /// The edge.
        edge: Name,
        /// Where on it.
        at: NotchAt,
    },
    /// The side that is up: the edge that it points to.
    Up(Name),
    /// Where another piece is laid: the upper left corner of its stitching line.
    Outline {
        /// The piece.
        piece: Name,
        /// That corner.
        at: PointAt,
    },
    /// A line.
    Line {
        /// Its two ends.
        ends: [PointAt; 2],
        /// The same places on it, evenly spread from end to end; `None` for a line to fold or to lay by.
        row: Option<Row>,
    },
}

/// Places along a line, for buttons or buttonholes.
#[derive(Debug, Clone)]
pub struct Row {
    /// How many.
    pub count: Expression,
    /// How long each is; `None` for dots.
    pub each: Option<Expression>,
    /// Whether they lie along the line; otherwise across it.
    pub along: bool,
}

impl NotchAt {
    fn formulas(&self) -> Option<&Expression> {
        match self {
            NotchAt::Centre => None,
            NotchAt::FromStart(formula) | NotchAt::FromEnd(formula) => Some(formula),
        }
    }
}

impl Notch {
    /// Every formula in it.
    pub fn formulas(&self) -> impl Iterator<Item = &Expression> {
        self.at.formulas().into_iter()
    }
}

impl Dart {
    /// Every formula in it.
    pub fn formulas(&self) -> impl Iterator<Item = &Expression> {
        let place: Vec<&Expression> = match &self.place {
            DartPlace::Edge { at, tip, .. } => {
                let tip = match tip {
                    DartTip::Point((across, down)) => vec![across, down],
                    DartTip::Straight(length) => vec![length],
                };
                at.formulas().into_iter().chain(tip).collect()
            }
            DartPlace::Inside { from, to } => {
                [from, to].into_iter().flat_map(|(across, down)| [across, down]).collect()
            }
        };
        place.into_iter().chain([&self.width])
    }
}

impl Pleat {
    /// Every formula in it.
    pub fn formulas(&self) -> impl Iterator<Item = &Expression> {
        let more = [&self.count, &self.apart, &self.length];
        self.at.formulas().into_iter().chain([&self.depth]).chain(more.into_iter().flatten())
    }
}

impl Mark {
    /// Whether a copy has it.
    pub fn is_on(&self, copy: &str) -> bool {
        self.only.is_empty() || self.only.iter().any(|name| name.text == copy)
    }

    /// Every formula in it.
    pub fn formulas(&self) -> impl Iterator<Item = &Expression> {
        let (points, more): (Vec<&PointAt>, Vec<&Expression>) = match &self.place {
            MarkPlace::Point(point) | MarkPlace::Outline { at: point, .. } => (vec![point], Vec::new()),
            MarkPlace::Up(_) => (Vec::new(), Vec::new()),
            MarkPlace::Edge { at, .. } => (Vec::new(), at.formulas().into_iter().collect()),
            MarkPlace::Line { ends, row } => {
                let row = row.iter().flat_map(|row| std::iter::once(&row.count).chain(&row.each));
                (ends.iter().collect(), row.collect())
            }
        };
        points.into_iter().flat_map(|(across, down)| [across, down]).chain(more)
    }
}
