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
use super::upright::upright;
use super::{bounds, frame, markup, measure_tree, picture};
use crate::diag::Findings;
use crate::faults::{FIGURE_MISSING, FIGURE_NOT_DRAWABLE, FIGURE_TOO_WIDE};
use crate::model::Size;
use crate::resolve::{Edition, Scope, Uses};
use crate::source::{Folder, Sources, Span};

/// What a path begins with that no file stands behind: the compiler draws it.
pub const DRAW: &str = "draw:";
/// What tells the drawing for the cover from the diagrams of steps.
pub const COVER: &str = "cover";

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
        let named = edition
            .figure_uses()
            .into_iter()
            .map(|(mention, scope)| (mention.path.clone(), mention.key.clone(), mention.span, scope));
        let cover =
            cover(edition, folder).map(|(path, span)| (path, COVER.to_owned(), span, Scope::plain(&edition.values)));
        for (path, key, span, scope) in named.chain(cover) {
            if path.starts_with(DRAW) || figures.get(edition.size(), &key).is_some() {
                continue;
            }
            if !drawings.contains_key(&path) {
                let drawing = reader.read(&path, span, sources, findings);
                if let Some(drawing) = &drawing {
                    figures.waivers.extend(drawing.waivers.iter().cloned());
                    figures.words.extend(drawing.words.iter().cloned());
                    figures.systems.push(drawing.systems(reader.sizes));
                    figures.choices.extend(drawing.choices(reader.sizes));
                }
                drawings.insert(path.clone(), drawing);
            }
            let Some(Some(drawing)) = drawings.get(&path) else { continue };
            let uses = figures.uses.entry(edition.size()).or_default();
            if let Some(figure) = reader.bind(drawing, &path, edition, &scope, findings, uses) {
                figures.add(edition.size(), &key, figure);
            }
        }
    }
    figures
}

/// The drawing for the cover of one size and where it is named, where it is a diagram like any other: one that holds
/// formulas, or has a size in its name. `None` for a picture that is printed as it is, and where there is none.
pub fn cover(edition: &Edition<'_>, folder: &Folder) -> Option<(String, Span)> {
    let draft = edition.draft;
    let named = draft.facts.style.cover.as_ref()?;
    let own = draft.figure_path(&named.text, edition.size());
    let path = draft.folder.join(&own).to_string_lossy().replace('\\', "/");
    let drawing = path.to_lowercase().ends_with(".svg");
    let sized = own != named.text;
    let bound = || folder.text(Path::new(&path)).is_ok_and(|text| has_formulas(&text));
    (drawing && (sized || bound())).then_some((path, named.span))
}

/// Whether braces stand in a drawing outside its style sheets.
fn has_formulas(text: &str) -> bool {
    let mut rest = text;
    while let Some((before, sheet)) = rest.split_once("<style") {
        if before.contains('{') {
            return true;
        }
        rest = sheet.split_once("</style>").map_or("", |(_, after)| after);
    }
    rest.contains('{')
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
        let svg = upright(&self.studio.dresser.dress_text(&sized, end), end);
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
