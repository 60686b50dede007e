//! How the booklets look: which of them are made, how figures are shown, and the designer's own colour and pictures.

use super::text::Text;
use crate::measure::{Exact, System};
use crate::source::Span;

/// Which booklets are made, each with its set of pattern sheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Booklets {
    /// One for each size.
    pub sizes: bool,
    /// One for each view, of all its sizes.
    pub views: bool,
    /// One of all sizes.
    pub all: bool,
}

/// How figures are shown.
#[derive(Debug, Clone, Copy)]
pub struct Show {
    /// The system that comes first; the other follows in brackets.
    pub first: System,
    /// The system in brackets; `None` for one system alone.
    pub second: Option<System>,
    /// What a metric length is rounded to, in mm.
    pub metric_step: Exact,
    /// What an imperial length is rounded to, in mm.
    pub imperial_step: Exact,
    /// How far two figures for one length may stand apart, in mm.
    pub tolerance: Exact,
    /// Where the author states them.
    pub places: ShowPlaces,
}

/// Where steps and tolerance are stated; `None` for the usual ones.
#[derive(Debug, Clone, Copy, Default)]
#[allow(missing_docs, reason = "named as in the facts")]
pub struct ShowPlaces {
    pub metric_step: Option<Span>,
    pub imperial_step: Option<Span>,
    pub tolerance: Option<Span>,
}

/// The look of one designer.
#[derive(Debug, Clone)]
pub struct Style {
    /// The one colour, as `#rrggbb`.
    pub accent: Text,
    /// The designer's mark: a path from the booklet's folder.
    pub logo: Option<Text>,
    /// The picture on the cover.
    pub cover: Option<Text>,
    /// What that picture shows.
    pub cover_alt: Option<Text>,
}
