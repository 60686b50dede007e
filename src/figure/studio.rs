//! What every drawing of a booklet is made with: its fonts and its style; and how a drawing that the
//! compiler made becomes a figure like any other.

use std::sync::Arc;

use usvg::fontdb;

use super::dress::{Dresser, with_paper_size};
use super::figures::BoundFigure;
use super::inspect::{self, Page};
use super::ruler::Ruler;
use super::{frame, markup, measure_tree, picture};
use crate::diag::Findings;
use crate::faults::FIGURE_NOT_DRAWABLE;
use crate::measure::Exact;
use crate::source::{House, Span};

/// Fonts and style of one booklet.
pub struct Studio {
    pub(super) database: Arc<fontdb::Database>,
    pub(super) families: Vec<String>,
    pub(super) dresser: Dresser,
}

impl Studio {
    /// The house's or the booklet's own fonts and style, in an accent colour (`#rrggbb`).
    pub fn new(house: &House, accent: &str) -> Studio {
        let (database, families) = picture::fonts(house);
        Studio { database, families, dresser: Dresser::new(house, accent) }
    }

    /// The style.
    pub fn dresser(&self) -> &Dresser {
        &self.dresser
    }

    /// A ruler for labels.
    pub(crate) fn ruler(&self) -> Ruler<'_> {
        Ruler::new(&self.dresser, &self.database)
    }

    /// Whether a dressed drawing keeps inside its frame.
    pub fn keeps_inside(&self, svg: &str) -> bool {
        frame::keeps_inside(svg, &self.database)
    }

    /// Dresses and measures a drawing that the compiler made for the mention at `span`; faults of its
    /// words are findings of the size. `None` when it is no drawing at all, which is a finding too.
    pub(crate) fn finish(
        &self,
        text: &str,
        path: String,
        span: Span,
        size: usize,
        findings: &mut Findings,
    ) -> Option<BoundFigure> {
        match self.dressed(text, path, span, size, findings) {
            Ok(figure) => Some(figure),
            Err(words) => {
                findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(span, format!("the drawing of this step cannot be read: {words}"))
                        .hint("take signs that are not on a keyboard out of the names of its pieces and fabrics")
                        .in_size(size, ""),
                );
                None
            }
        }
    }

    /// Dresses a drawing that the compiler made of a whole thing, and gives its width and height on paper in mm; `None`
    /// when it is no drawing at all.
    pub(crate) fn whole(&self, text: &str) -> Option<(String, (f64, f64))> {
        let document = markup::parse(text).ok()?;
        let (sized, end) = with_paper_size(text, document.root_element(), Exact::from_integer(1));
        let svg = self.dresser.dress_text(&sized, end);
        let tree = usvg::Tree::from_str(&svg, &picture::options(&self.database)).ok()?;
        let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
        Some((svg, (millimetres(tree.size().width()), millimetres(tree.size().height()))))
    }

    fn dressed(
        &self,
        text: &str,
        path: String,
        span: Span,
        size: usize,
        findings: &mut Findings,
    ) -> Result<BoundFigure, String> {
        let document = markup::parse(text).map_err(|complaint| complaint.words)?;
        let place = |_: std::ops::Range<usize>| span;
        let page = Page { text, place: &place, whole: span, bound: true };
        let found = inspect::inspect(&document, &page, &self.families, findings);
        let (sized, end) = with_paper_size(text, document.root_element(), Exact::from_integer(1));
        let svg = self.dresser.dress_text(&sized, end);
        let tree = usvg::Tree::from_str(&svg, &picture::options(&self.database)).map_err(|error| error.to_string())?;
        measure_tree::words(&tree, &document, &place, size, findings);
        let figure = BoundFigure::of(path, svg, &tree, &found.classes, &found.symbols);
        Ok(BoundFigure { drawn: Some(text.to_owned()), ..figure })
    }
}
