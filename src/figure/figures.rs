//! The diagrams of a booklet, ready to be set.

use std::collections::{BTreeMap, BTreeSet};

use super::classes::{CLASSES, SYMBOLS};
use crate::diag::Waiver;
use crate::model::Text;
use crate::resolve::Uses;
use crate::source::Span;

/// A diagram of one size, ready to be set.
#[derive(Debug, Clone)]
pub struct BoundFigure {
    /// The path of the author's drawing; of one that the compiler draws, `draw:work` and the step.
    pub path: String,
    /// The drawing in the house style, every formula worked out.
    pub svg: String,
    /// Of one that the compiler draws, the drawing before it was dressed; `None` for an author's own.
    pub drawn: Option<String>,
    /// Its width on paper, in mm.
    pub width: f64,
    /// Its height on paper, in mm.
    pub height: f64,
    /// The classes in use, in the order of the house.
    pub classes: Vec<&'static str>,
    /// The symbols in use.
    pub symbols: Vec<&'static str>,
}

impl BoundFigure {
    /// A drawing as usvg laid it out, with the classes and symbols that it uses.
    pub(super) fn of(
        path: String,
        svg: String,
        tree: &usvg::Tree,
        classes: &BTreeSet<String>,
        symbols: &BTreeSet<String>,
    ) -> BoundFigure {
        // usvg counts in pixels of 1/96 inch.
        let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
        let known = |names: &mut dyn Iterator<Item = &'static str>, used: &BTreeSet<String>| {
            names.filter(|name| used.contains(*name)).collect()
        };
        BoundFigure {
            path,
            svg,
            drawn: None,
            width: millimetres(tree.size().width()),
            height: millimetres(tree.size().height()),
            classes: known(&mut CLASSES.iter().map(|class| class.name), classes),
            symbols: known(&mut SYMBOLS.iter().map(|(name, _)| *name), symbols),
        }
    }
}

/// The diagrams of a booklet.
#[derive(Debug, Clone, Default)]
pub struct Figures {
    bound: BTreeMap<(usize, String), BoundFigure>,
    /// What authors waived inside drawings.
    pub waivers: Vec<Waiver>,
    /// What the formulas in drawings name and print, by size.
    pub uses: BTreeMap<usize, Uses>,
    /// The words that stand in drawings outside formulas, with their places, for the checks of words.
    pub words: Vec<Text>,
    /// The formulas that each drawing prints in one system alone: `first` or `second`, the formula, its place.
    pub systems: Vec<Vec<(String, String, Span)>>,
    /// The choices by size in drawings: the sizes of each branch, and the place.
    pub choices: Vec<(Vec<Option<Vec<usize>>>, Span)>,
    /// Samples of classes and symbols for the key, as drawings.
    pub samples: BTreeMap<&'static str, String>,
}

impl Figures {
    /// The diagram behind a mention, in a size.
    pub fn get(&self, size: usize, key: &str) -> Option<&BoundFigure> {
        self.bound.get(&(size, key.to_owned()))
    }

    /// Puts the diagram behind a mention.
    pub fn add(&mut self, size: usize, key: &str, figure: BoundFigure) {
        self.bound.insert((size, key.to_owned()), figure);
    }

    /// All diagrams of a size, by their keys.
    pub fn of_size(&self, size: usize) -> impl Iterator<Item = (&str, &BoundFigure)> {
        self.bound.iter().filter(move |((at, _), _)| *at == size).map(|((_, key), figure)| (key.as_str(), figure))
    }
}
