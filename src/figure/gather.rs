//! All diagrams of all sizes: read once, bound for each size, validated.

use std::collections::BTreeMap;
use std::path::Path;

use super::bind::bind;
use super::drawing::{Drawing, tag_length};
use super::studio::Studio;
use super::{measure_tree, picture};
use crate::diag::{Findings, Waiver};
use crate::faults::{FIGURE_MISSING, FIGURE_NOT_DRAWABLE, FIGURE_TOO_WIDE};
use crate::measure::{Exact, to_f64};
use crate::resolve::{Edition, Scope, Uses};
use crate::source::{Folder, Sources};

/// A diagram of one size, ready to be set.
#[derive(Debug, Clone)]
pub struct BoundFigure {
    /// The path of the author's drawing; of one that the compiler draws, `draw:work` and the step.
    pub path: String,
    /// The drawing in the house style, every formula worked out.
    pub svg: String,
    /// Its width on paper, in mm.
    pub width: f64,
    /// Its height on paper, in mm.
    pub height: f64,
    /// The classes in use, in the order of the house.
    pub classes: Vec<&'static str>,
    /// The symbols in use.
    pub symbols: Vec<&'static str>,
}

/// The diagrams of a booklet.
#[derive(Debug, Clone, Default)]
pub struct Figures {
    bound: BTreeMap<(usize, String), BoundFigure>,
    /// What authors waived inside drawings.
    pub waivers: Vec<Waiver>,
    /// What the formulas in drawings name and print, by size.
    pub uses: BTreeMap<usize, Uses>,
    /// The words that stand in drawings, with their places, for the checks of prose.
    pub words: Vec<crate::model::Text>,
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

/// What a path begins with that no file stands behind: the compiler draws it.
pub const DRAW: &str = "draw:";

/// Reads, binds and validates every diagram of an author's that the editions mention.
pub fn read_all(
    editions: &[Edition<'_>],
    folder: &Folder,
    studio: &Studio,
    sources: &mut Sources,
    findings: &mut Findings,
) -> Figures {
    let mut figures = Figures { samples: super::key::samples(&studio.dresser), ..Figures::default() };
    let reader = Reader { folder, studio };
    let mut drawings: BTreeMap<String, Option<Drawing>> = BTreeMap::new();
    for edition in editions {
        for (mention, scope) in edition.figure_uses() {
            if mention.path.starts_with(DRAW) || figures.get(edition.size(), &mention.key).is_some() {
                continue;
            }
            if !drawings.contains_key(&mention.path) {
                let drawing = reader.read(&mention.path, mention.span, sources, findings);
                if let Some(drawing) = &drawing {
                    figures.waivers.extend(drawing.waivers.iter().cloned());
                    figures.words.extend(words(drawing));
                }
                drawings.insert(mention.path.clone(), drawing);
            }
            let Some(Some(drawing)) = drawings.get(&mention.path) else { continue };
            let uses = figures.uses.entry(edition.size()).or_default();
            if let Some(mut figure) = reader.bind(drawing, edition, &scope, findings, uses) {
                figure.path.clone_from(&mention.path);
                figures.add(edition.size(), &mention.key, figure);
            }
        }
    }
    figures
}

/// Reads drawings below one folder.
struct Reader<'a> {
    folder: &'a Folder,
    studio: &'a Studio,
}

impl Reader<'_> {
    fn read(
        &self,
        path: &str,
        mention: crate::source::Span,
        sources: &mut Sources,
        findings: &mut Findings,
    ) -> Option<Drawing> {
        let shown = self.folder.show(Path::new(path));
        match self.folder.text(Path::new(path)) {
            Ok(text) => {
                let file = sources.by_path(&shown).unwrap_or_else(|| sources.add(shown, text));
                Drawing::read(file, sources, &self.studio.families, findings)
            }
            Err(fault) => {
                findings.push(
                    FIGURE_MISSING.at(mention, format!("the diagram `{shown}` {}", fault.message())).hint(fault.hint()),
                );
                None
            }
        }
    }

    fn bind(
        &self,
        drawing: &Drawing,
        edition: &Edition<'_>,
        scope: &Scope<'_>,
        findings: &mut Findings,
        uses: &mut Uses,
    ) -> Option<BoundFigure> {
        let facts = &edition.draft.facts;
        let size = edition.size();
        let before = findings.iter().count();
        let bound = bind(drawing, scope, &facts.sizes, &facts.show, findings, uses)?;
        let document = roxmltree::Document::parse(&bound.text).ok()?;
        let locate = |range: std::ops::Range<usize>| drawing.text.at(bound.source(range));
        measure_tree::shapes(&document, &locate, size, findings);
        // What follows from a fault is not told beside it.
        if findings.iter().count() > before {
            return None;
        }
        let root = document.root_element();
        let start = root.range().start;
        let end = start + tag_length(&bound.text[start..]);
        let svg = with_paper_size(&self.studio.dresser.dress_text(&bound.text, end), root, drawing.unit);
        let tree = match usvg::Tree::from_str(&svg, &picture::options(&self.studio.database)) {
            Ok(tree) => tree,
            Err(error) => {
                findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(drawing.root, format!("the diagram cannot be drawn: {error}"))
                        .hint("give the root a viewBox with a width and a height above nothing")
                        .in_size(size, ""),
                );
                return None;
            }
        };
        measure_tree::words(&tree, &document, &locate, size, findings);
        let scaled = root.attribute("data-scale").is_some();
        measure_tree::frame(&tree, drawing.root, scaled, size, findings);
        let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
        let (width, height) = (millimetres(tree.size().width()), millimetres(tree.size().height()));
        if width > measure_tree::WIDEST + 0.5 || height > 200.5 {
            findings.push(
                FIGURE_TOO_WIDE
                    .at(
                        drawing.root,
                        format!("this diagram is {width:.0} mm wide and {height:.0} mm high, more than the page takes"),
                    )
                    .hint(format!(
                        "keep it within {:.0} by 200 mm; 76 mm wide it stands beside its words",
                        measure_tree::WIDEST
                    ))
                    .in_size(size, ""),
            );
        }
        let (classes, symbols) = (drawing.classes.clone(), drawing.symbols.clone());
        Some(BoundFigure { path: String::new(), svg, width, height, classes, symbols })
    }
}

/// States both sides on paper where the author left one out: the viewBox is then taken in the
/// drawing's unit, and its proportion is kept.
pub(super) fn with_paper_size(svg: &str, root: roxmltree::Node<'_, '_>, unit: Exact) -> String {
    let view = root.attribute("viewBox").and_then(|view| view.parse::<svgtypes::ViewBox>().ok());
    let Some(view) = view else { return svg.to_owned() };
    let unit = to_f64(unit);
    let mut sides = String::new();
    for (side, length) in [("width", view.w), ("height", view.h)] {
        if root.attribute(side).is_none() {
            sides.push_str(&format!(" {side}=\"{:.4}mm\"", length * unit));
        }
    }
    svg.replacen("<svg", &format!("<svg{sides}"), 1)
}

/// The words of a drawing that stand outside braces.
fn words(drawing: &Drawing) -> Vec<crate::model::Text> {
    let Ok(document) = roxmltree::Document::parse(&drawing.text.text) else { return Vec::new() };
    document
        .descendants()
        .filter(|node| node.is_text())
        .filter(|node| node.parent().is_some_and(|parent| matches!(parent.tag_name().name(), "text" | "tspan")))
        .map(|node| {
            let range = node.range();
            let text = drawing.text.text[range.clone()].to_owned();
            crate::model::Text { text, span: drawing.text.at(range), verbatim: true }
        })
        .collect()
}
