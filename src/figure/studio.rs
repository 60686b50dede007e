//! What every drawing of a booklet is made with: its fonts and its style; and how a drawing that the
//! compiler made becomes a figure like any other.

use std::collections::BTreeSet;
use std::sync::Arc;

use usvg::fontdb;

use super::classes::{CLASSES, SYMBOLS};
use super::drawing::tag_length;
use super::dress::Dresser;
use super::gather::{BoundFigure, with_paper_size};
use super::ruler::Ruler;
use super::{inspect, measure_tree, picture};
use crate::diag::Findings;
use crate::measure::Exact;
use crate::model::Text;
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
        measure_tree::keeps_inside(svg, &self.database)
    }

    /// Dresses and measures a drawing that the compiler made for the mention at `span`; faults of its
    /// words are findings of the size. `None` when it is no drawing at all.
    pub(crate) fn finish(
        &self,
        text: &str,
        path: String,
        span: Span,
        size: usize,
        findings: &mut Findings,
    ) -> Option<BoundFigure> {
        let document = roxmltree::Document::parse(text).ok()?;
        let place = Text { text: text.to_owned(), span, verbatim: false };
        let found = inspect::inspect(&document, &place, &self.families, findings);
        let dressed = self.dresser.dress_text(text, tag_length(text));
        let svg = with_paper_size(&dressed, document.root_element(), Exact::from_integer(1));
        let tree = usvg::Tree::from_str(&svg, &picture::options(&self.database)).ok()?;
        measure_tree::words(&tree, &document, &|_| span, size, findings);
        let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
        let known = |names: &mut dyn Iterator<Item = &'static str>, used: &BTreeSet<String>| {
            names.filter(|name| used.contains(*name)).collect()
        };
        Some(BoundFigure {
            path,
            width: millimetres(tree.size().width()),
            height: millimetres(tree.size().height()),
            classes: known(&mut CLASSES.iter().map(|class| class.name), &found.classes),
            symbols: known(&mut SYMBOLS.iter().map(|(name, _)| *name), &found.symbols),
            svg,
        })
    }
}
