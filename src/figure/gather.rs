//! All diagrams of all sizes: read once, bound for each size, validated.

use std::collections::BTreeMap;
use std::ops::Range;
use std::path::Path;

use super::bind::{Bound, bind};
use super::dimensions::Ruled;
use super::drawing::Drawing;
use super::dress::with_paper_size;
use super::figures::{BoundFigure, Figures};
use super::inspect::{self, Found, Page};
use super::studio::Studio;
use super::{bounds, frame, markup, measure_tree, picture};
use crate::diag::Findings;
use crate::faults::{FIGURE_MISSING, FIGURE_NOT_DRAWABLE, FIGURE_TOO_WIDE};
use crate::model::Size;
use crate::resolve::{Edition, Scope, Uses};
use crate::source::{Folder, Sources};

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
    let mut figures = Figures::default();
    figures.samples = super::key::samples(&studio.dresser);
    let Some(first) = editions.first() else { return figures };
    let reader = Reader { folder, studio, sizes: &first.draft.facts.sizes };
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
                    figures.words.extend(drawing.words.iter().cloned());
                    figures.systems.push(drawing.systems(reader.sizes));
                    figures.choices.extend(drawing.choices(reader.sizes));
                }
                drawings.insert(mention.path.clone(), drawing);
            }
            let Some(Some(drawing)) = drawings.get(&mention.path) else { continue };
            let uses = figures.uses.entry(edition.size()).or_default();
            if let Some(figure) = reader.bind(drawing, &mention.path, edition, &scope, findings, uses) {
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
    sizes: &'a [Size],
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
                Drawing::read(file, sources, &self.studio.families, self.sizes, findings)
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
        path: &str,
        edition: &Edition<'_>,
        scope: &Scope<'_>,
        findings: &mut Findings,
        uses: &mut Uses,
    ) -> Option<BoundFigure> {
        let facts = &edition.draft.facts;
        let size = edition.size();
        let bound = bind(drawing, scope, &facts.sizes, &facts.show, findings, uses)?;
        let locate = |range: Range<usize>| drawing.text.at(bound.source(range));
        let document = match markup::parse(&bound.text) {
            Ok(document) => document,
            Err(error) => {
                let (at, words) = (error.at, error.words);
                findings.push(
                    FIGURE_NOT_DRAWABLE
                        .at(
                            locate(at..at + 1),
                            format!("the drawing cannot be read with its formulas worked out: {words}"),
                        )
                        .hint("look at what the braces here come to in this size")
                        .in_size(size, ""),
                );
                return None;
            }
        };
        if let Some(refused) = bounds::refused(&document, &bound.text, true) {
            let finding = FIGURE_NOT_DRAWABLE.at(locate(refused.range), refused.message).hint(refused.hint);
            findings.push(finding.in_size(size, ""));
            return None;
        }
        // What follows from a fault is not told beside it.
        let found = self.look_again(drawing, &bound, &document, size, findings);
        let sound = measure_tree::shapes(&document, &locate, size, findings);
        if found.undrawable || !sound {
            return None;
        }
        Ruled { drawing, bound: &bound, scope, sizes: &facts.sizes, edition }.compare(&document, findings);
        let root = document.root_element();
        let (sized, end) = with_paper_size(&bound.text, root, drawing.unit);
        let svg = self.studio.dresser.dress_text(&sized, end);
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
        frame::frame(&tree, &document, (drawing.root, scaled), &locate, size, findings);
        let figure = BoundFigure::of(path.to_owned(), svg, &tree, &found.classes, &found.symbols);
        fits(&figure, drawing, size, findings);
        Some(figure)
    }

    /// Looks at a drawing once more with its formulas worked out, which may have brought in what an
    /// author's own text did not hold.
    fn look_again(
        &self,
        drawing: &Drawing,
        bound: &Bound,
        document: &roxmltree::Document<'_>,
        size: usize,
        findings: &mut Findings,
    ) -> Found {
        let place = |range: Range<usize>| drawing.text.at(bound.source(range));
        let page = Page { text: &bound.text, place: &place, whole: drawing.text.span, bound: true };
        let mut own = Findings::default();
        let found = inspect::inspect(document, &page, &self.studio.families, &mut own);
        let new = own.iter().filter(|finding| !drawing.told.contains(&(finding.check, finding.span)));
        findings.extend(new.map(|finding| finding.clone().in_size(size, "")));
        found
    }
}

/// Reports a diagram that the page has no room for.
fn fits(figure: &BoundFigure, drawing: &Drawing, size: usize, findings: &mut Findings) {
    let (width, height) = (figure.width, figure.height);
    if width <= measure_tree::WIDEST + 0.5 && height <= 200.5 {
        return;
    }
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
