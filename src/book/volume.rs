//! The finished booklet as plain data: everything that any output prints, and nothing of how.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::amount::Amount;
use super::cutting::{CutList, Layout, PieceDrawings, SheetMap};
use super::film::Film;
use super::help::Question;
use super::needs::{FabricNeed, NotionNeed};
use super::offer::Offer;
use super::prose::{Block, Inline, Picture};
use super::seam::SeamFact;
use super::thing::ThingDrawing;

/// A booklet of one size, or of all. Words of the house are keys; each part, step, piece, fabric and
/// notion has an id that stays the same when others come and go.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "named as in the facts where nothing else is said")]
pub struct Book {
    pub title: String,
    pub designer: String,
    pub edition: String,
    /// The date of the edition, as `YYYY-MM-DD`; `None` where it is not stated.
    pub date: Option<String>,
    pub language: String,
    pub skill: Option<String>,
    /// How long the work takes; empty where it is not stated.
    #[serde(default)]
    pub time: Vec<Block>,
    pub summary: Option<String>,
    pub contact: Option<String>,
    /// All sizes of the booklet.
    pub sizes: Vec<Size>,
    /// The things that the pattern is for, each with its sizes; none where it is for one alone.
    pub views: Vec<PatternView>,
    /// The sizes that this book is for, by their places in `sizes`; in their order.
    pub shown: Vec<usize>,
    pub accent: String,
    /// The designer's mark, by its name among the pictures.
    pub logo: Option<String>,
    pub cover: Option<String>,
    pub cover_alt: Option<String>,
    /// The author's drawing for the cover where it is a diagram: for each thing that the book is of.
    pub cover_drawn: Vec<ThingDrawing>,
    pub read_first: Vec<Block>,
    pub cautions: Vec<Caution>,
    /// Whether any size shown is worn by a child.
    pub child_caution: bool,
    /// The seam allowances in use, narrowest first.
    pub allowances: Vec<AllowanceUse>,
    /// The key to the diagrams.
    pub key: Vec<KeyEntry>,
    /// The body's measurements by which a size is chosen.
    pub body: Vec<MeasureRow>,
    pub finished: Vec<FinishedRow>,
    pub fabrics: Vec<FabricNeed>,
    pub notions: Vec<NotionNeed>,
    pub tools: Vec<Tool>,
    /// The thing made up: for each thing that the book is of, where it can be drawn.
    pub things: Vec<ThingDrawing>,
    /// The pieces, drawn to one scale.
    pub pieces: PieceDrawings,
    /// What to cut from what.
    pub cuts: Vec<CutList>,
    /// What is left to the maker, with what each thing alone needs: the lists hold what is needed in any case.
    pub offers: Vec<Offer>,
    /// Cloth with its pieces.
    pub layouts: Vec<Layout>,
    /// The map of the pattern sheets; `None` where there are no pieces.
    pub map: Option<SheetMap>,
    pub parts: Vec<Part>,
    /// The questions that makers ask, in the author's order.
    pub help: Vec<Question>,
    pub words: Vec<Word>,
    pub care: Vec<Block>,
    pub terms: Vec<Block>,
    pub record: Vec<Release>,
    /// The video that goes with it.
    pub film: Option<Film>,
    /// Every drawing, by its name.
    pub drawings: BTreeMap<String, Drawing>,
    /// Logo and cover, by their names.
    #[serde(skip)]
    pub pictures: BTreeMap<String, Photo>,
}

impl Book {
    /// The sizes shown, thing by thing; all together where the pattern is for one alone.
    pub fn shown_by_view(&self) -> Vec<(Option<&PatternView>, Vec<usize>)> {
        let shown = |sizes: &[usize]| -> Vec<usize> {
            self.shown.iter().copied().filter(|size| sizes.contains(size)).collect()
        };
        if self.views.is_empty() {
            return vec![(None, self.shown.clone())];
        }
        let views = self.views.iter().map(|view| (Some(view), shown(&view.sizes)));
        views.filter(|(_, sizes)| !sizes.is_empty()).collect()
    }
}

/// A caution beyond the usual ones.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// Its place in the facts.
    pub at: usize,
    /// What is said.
    pub content: Vec<Block>,
    /// The sizes that its author wrote it for, shown here or not.
    pub sizes: Vec<usize>,
}

/// Something needed at hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tool {
    /// Its name on the page.
    pub name: String,
    /// Its place in the facts.
    pub at: usize,
    /// The sizes that its author wrote it for, shown here or not.
    pub sizes: Vec<usize>,
}

/// One size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Size {
    /// Its stable id.
    pub id: String,
    /// Its name on the page.
    pub name: String,
    /// Whether a child wears it.
    pub child: bool,
}

/// One of several things in one pattern.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PatternView {
    /// Its stable id.
    pub id: String,
    /// Its name on the page.
    pub name: String,
    /// Its sizes, by their places in `sizes`; in their order.
    pub sizes: Vec<usize>,
}

/// A seam allowance and the steps that use it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AllowanceUse {
    /// How wide it is.
    pub value: Amount,
    /// The ids of the steps.
    pub steps: Vec<String>,
    /// The sizes that use it.
    pub sizes: Vec<usize>,
}

/// An entry of the key to the diagrams.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct KeyEntry {
    /// The class or the symbol: the key of its meaning.
    pub class: String,
    /// A sample, by its name among the drawings.
    pub drawing: String,
}

/// A measurement in a table of sizes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MeasureRow {
    /// What is measured, in the author's words.
    pub name: String,
    /// One for each size shown; `None` where a size has no such measurement.
    pub values: Vec<Option<Amount>>,
}

/// A finished measurement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FinishedRow {
    /// The measurement.
    pub measure: MeasureRow,
    /// The ease over a measure of the body, by that one's name; `None` where it goes over none.
    pub ease: Option<MeasureRow>,
}

/// A part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Part {
    /// Its stable id.
    pub id: String,
    /// Its place under `parts:`.
    pub at: usize,
    /// The heading.
    pub title: Vec<Inline>,
    /// When the video shows it, in seconds; its own time, or that of its first step.
    pub watch: Option<u32>,
    /// What stands before the first step.
    pub intro: Vec<Block>,
    /// The id of what it belongs to of all that is left to the maker.
    pub offer: Option<String>,
    /// The steps.
    pub steps: Vec<Step>,
    /// The state of the work at its end, where it can be drawn.
    pub state: Vec<ThingDrawing>,
    /// The sizes that its author wrote it for, shown here or not.
    pub sizes: Vec<usize>,
}

/// A step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Step {
    /// Its stable id.
    pub id: String,
    /// Its place in its part.
    pub at: usize,
    /// Its number through the whole booklet, from 1.
    pub number: usize,
    /// The heading.
    pub title: Vec<Inline>,
    /// The words, with every diagram but the first.
    pub body: Vec<Block>,
    /// When the video shows it, in seconds.
    pub watch: Option<u32>,
    /// The first diagram.
    pub figure: Option<Picture>,
    /// The id of what it belongs to of all that is left to the maker.
    pub offer: Option<String>,
    /// What is sewn, at which allowance and with which stitch.
    pub seam: Vec<SeamFact>,
    /// The sizes that its author wrote it for, shown here or not.
    pub sizes: Vec<usize>,
}

/// A word that the booklet explains.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Word {
    /// Its stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// The word.
    pub term: String,
    /// What it means.
    pub meaning: Vec<Block>,
}

/// An entry in the record of editions.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Release {
    /// Which edition.
    pub edition: String,
    /// When, as `YYYY-MM-DD`.
    pub date: Option<String>,
    /// What changed.
    pub changes: Vec<Block>,
}

/// A drawing in the house style.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Drawing {
    /// The drawing itself.
    pub svg: String,
    /// Its width on paper, in mm.
    pub width: f64,
    /// Its height on paper, in mm.
    pub height: f64,
    /// The author's file behind it, from the folder that the command was given; `None` for what the
    /// compiler drew.
    pub origin: Option<String>,
}

impl Drawing {
    /// A drawing with its width and height on paper, to a thousandth of a millimetre.
    pub fn new(svg: String, (width, height): (f64, f64), origin: Option<String>) -> Drawing {
        let thousandths = |length: f64| (length * 1000.0).round() / 1000.0;
        Drawing { svg, width: thousandths(width), height: thousandths(height), origin }
    }
}

/// A picture that is no drawing of ours.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// The ending of its file name, in small letters.
    pub ending: String,
    /// The file.
    pub bytes: Vec<u8>,
}
