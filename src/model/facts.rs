//! The facts of `booklet.yaml`.

use super::inside::{Dart, Mark, Notch, Pleat};
use super::looks::{Booklets, Show, Style};
use super::matter::Matter;
use super::notion::Notion;
use super::prose::Block;
use super::sheet::SheetSettings;
use super::shop::Shop;
use super::size::{BySize, Size, is_for};
use super::sourcing::Sourcing;
use super::text::{Expression, Name, Text};
use super::video::Video;
use crate::diag::in_sentence;
use crate::source::Span;

/// Everything that `booklet.yaml` states.
#[derive(Debug, Clone)]
pub struct Facts {
    /// The booklet's title.
    pub title: Text,
    /// Who sells it.
    pub designer: Option<Text>,
    /// The edition, such as `1.0.0`.
    pub edition: Text,
    /// The date of the edition, as `YYYY-MM-DD`.
    pub date: Option<Text>,
    /// A language tag, such as `en-GB`.
    pub language: Text,
    /// What a maker should be able to do.
    pub skill: Option<Text>,
    /// How long the work takes.
    pub time: Vec<Block>,
    /// A sentence for the cover.
    pub summary: Option<Text>,
    /// What to read before anything else.
    pub read_first: Vec<Block>,
    /// Cautions beyond the usual ones.
    pub cautions: Vec<Caution>,
    /// How to look after the finished thing.
    pub care: Vec<Block>,
    /// The terms of use.
    pub terms: Vec<Block>,
    /// Where to ask for help.
    pub contact: Option<Text>,
    /// The sizes, in order; never empty.
    pub sizes: Vec<Size>,
    /// Which booklets are made.
    pub booklets: Booklets,
    /// How figures are shown.
    pub show: Show,
    /// The look.
    pub style: Style,
    /// Whether every allowance that stays inside is to be finished or enclosed.
    pub finishing_required: bool,
    /// Named figures.
    pub measurements: Vec<Measurement>,
    /// What must hold.
    pub expect: Vec<Expectation>,
    /// The measures of the body by which a size is chosen.
    pub body: Vec<BodyRow>,
    /// What the maker ends up with.
    pub finished: Vec<FinishedRow>,
    /// Terms that the booklet explains.
    pub words: Vec<Word>,
    /// What is cut from.
    pub fabrics: Vec<Fabric>,
    /// What is bought beside fabric.
    pub notions: Vec<Notion>,
    /// Where the lists of notions and of tools are named; `None` for one that the booklet does not have.
    pub lists_at: [Option<Span>; 2],
    /// What is needed at hand.
    pub tools: Vec<Tool>,
    /// What is cut.
    pub pieces: Vec<Piece>,
    /// How sheets are printed and cloth is laid.
    pub sheets: SheetSettings,
    /// What a seller uploads.
    pub shop: Shop,
    /// The video that goes with it.
    pub video: Option<Video>,
    /// The record of editions, newest first.
    pub editions: Vec<Release>,
}

impl Facts {
    /// Where to find each fabric and each notion.
    pub fn sourcing(&self) -> impl Iterator<Item = &Sourcing> {
        let cloth = self.fabrics.iter().map(|fabric| &fabric.sourcing);
        cloth.chain(self.notions.iter().map(|notion| &notion.sourcing))
    }
}

/// A named figure.
#[derive(Debug, Clone)]
pub struct Measurement {
    /// Its name.
    pub name: Name,
    /// Its value.
    pub value: BySize,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// What must hold in every size.
#[derive(Debug, Clone)]
pub struct Expectation {
    /// A comparison.
    pub that: Expression,
    /// Why.
    pub because: Option<Text>,
    /// The sizes in which it must hold (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// A row of the table of body measurements.
#[derive(Debug, Clone)]
pub struct BodyRow {
    /// What is measured, in words.
    pub name: Text,
    /// How large it is.
    pub value: BySize,
}

/// A row of the finished measurements.
#[derive(Debug, Clone)]
pub struct FinishedRow {
    /// What is measured, in words.
    pub name: Text,
    /// How long it is.
    pub value: BySize,
    /// The measure of the sewn thing that it must agree with: a copy and `width`, `height` or
    /// `depth`; `None` where the construction does not determine it.
    pub sewn: Option<Text>,
    /// The row of the body measurements that it goes over; `None` where it goes over none.
    pub over: Option<Text>,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// A term of the trade and its meaning.
#[derive(Debug, Clone)]
pub struct Word {
    /// The term.
    pub term: Name,
    /// The meaning.
    pub meaning: Vec<Block>,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// A caution beyond the usual ones.
#[derive(Debug, Clone)]
pub struct Caution {
    /// What is said.
    pub content: Vec<Block>,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// A fabric.
#[derive(Debug, Clone)]
pub struct Fabric {
    /// Its name in the files.
    pub id: Name,
    /// Its name on the page.
    pub name: Text,
    /// The widths that it is sold in.
    pub widths: Vec<Expression>,
    /// How much it shrinks in the wash.
    pub shrinkage: Option<Expression>,
    /// The sizes that need it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// Where these are said; `None` for all.
    pub sizes_at: Option<Span>,
    /// The piece that becomes this cloth once it is quilted; `None` for cloth that is bought.
    pub from: Option<Name>,
    /// Whether its pile or print runs one way.
    pub nap: bool,
    /// How it is drawn, as the author says or by its name; `None` for plain cloth.
    pub look: Option<Matter>,
    /// Whether it has no grain, so that pieces may lie any way, as on wadding.
    pub grainless: bool,
    /// How much to buy, as the author states it.
    pub amount: Option<BySize>,
    /// More to know.
    pub note: Vec<Block>,
    /// Where to find it.
    pub sourcing: Sourcing,
}

/// Something needed at hand.
#[derive(Debug, Clone)]
pub struct Tool {
    /// Its name on the page.
    pub name: Text,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
}

/// A piece of the pattern.
#[derive(Debug, Clone)]
pub struct Piece {
    /// Its name in the files.
    pub id: Name,
    /// Its name on the page.
    pub name: Text,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// Its outline; `None` when it could not be read, which has been reported.
    pub outline: Option<Outline>,
    /// Whether the outline is the stitching line, to which the allowance is added.
    pub drawn_stitching: bool,
    /// The allowance of each edge; the name `all` stands for the rest.
    pub allowance: Vec<(Name, Expression)>,
    /// The tape, webbing or elastic that it is cut from by its length; `None` for a piece of cloth.
    pub tape: Option<Name>,
    /// The edge that lies on the fold.
    pub fold: Option<Name>,
    /// How much larger it is cut all round before it is quilted; `None` for a piece cut to its line.
    pub cut_larger: Option<Expression>,
    /// Whether it is left off the pattern sheets, and cut with a ruler from the table.
    pub by_ruler: bool,
    /// How the grain runs.
    pub grain: Option<Text>,
    /// Where notches are.
    pub notches: Vec<Notch>,
    /// Its darts.
    pub darts: Vec<Dart>,
    /// Its pleats and tucks.
    pub pleats: Vec<Pleat>,
    /// What is marked on it.
    pub marks: Vec<Mark>,
    /// The edges that are meant to stay raw; the name `all` stands for every one.
    pub raw: Vec<Name>,
    /// Whether every second copy is cut from the outline turned over.
    pub mirrored: bool,
    /// What is cut, fabric by fabric.
    pub cut: Vec<Cut>,
    /// What edges are called on the page, where the author says so.
    pub edge_names: Vec<(Name, Text)>,
    /// What copies are called on the page, where the author says so.
    pub copy_names: Vec<(Name, Text)>,
    /// More to know.
    pub note: Vec<Block>,
}

impl Piece {
    /// A piece of which nothing is known but its name.
    pub fn bare(id: Name) -> Piece {
        Piece {
            name: Text { text: id.text.clone(), span: id.span, verbatim: false },
            id,
            sizes: None,
            outline: None,
            drawn_stitching: false,
            allowance: Vec::new(),
            tape: None,
            by_ruler: false,
            fold: None,
            cut_larger: None,
            grain: None,
            notches: Vec::new(),
            darts: Vec::new(),
            pleats: Vec::new(),
            marks: Vec::new(),
            raw: Vec::new(),
            mirrored: false,
            cut: Vec::new(),
            edge_names: Vec::new(),
            copy_names: Vec::new(),
            note: Vec::new(),
        }
    }

    /// What a copy is called inside a sentence.
    pub fn copy_called(&self, copy: &str) -> String {
        let named = self.copy_names.iter().find(|(name, _)| name.text == copy);
        named.map_or_else(|| copy.replace('_', " "), |(_, called)| in_sentence(&called.text))
    }

    /// What an edge is called inside a sentence; `None` where the author does not say.
    pub fn edge_called(&self, edge: &str) -> Option<String> {
        let (_, called) = self.edge_names.iter().find(|(name, _)| name.text == edge)?;
        Some(in_sentence(&called.text))
    }

    /// What is cut of it in one size.
    pub fn cut_in(&self, size: usize) -> impl Iterator<Item = &Cut> {
        self.cut.iter().filter(move |cut| is_for(cut.sizes.as_ref(), size))
    }

    /// The names of its copies, over all fabrics and sizes.
    pub fn copies(&self) -> impl Iterator<Item = &Name> {
        self.cut.iter().flat_map(Cut::names)
    }

    /// The names of its copies in one size.
    pub fn copies_in(&self, size: usize) -> impl Iterator<Item = &Name> {
        self.cut_in(size).flat_map(Cut::names)
    }
}

/// The outline of a piece.
#[derive(Debug, Clone)]
pub enum Outline {
    /// A rectangle: width, height, and squares taken out of its bottom or top corners.
    Rectangle {
        /// From left to right.
        width: BySize,
        /// From top to bottom.
        height: BySize,
        /// Corners taken out: `bottom` or `top`, width, height.
        corners_out: Vec<(Name, BySize, BySize)>,
    },
    /// Named edges from corner to corner.
    Path(Vec<Segment>),
    /// A drawing at true scale: the file, and the id of the path (may hold `{size}`).
    Drawing {
        /// The file, from the booklet's folder.
        file: Text,
        /// The id in the file.
        id: Text,
    },
}

/// One edge of a drawn path.
#[derive(Debug, Clone)]
pub struct Segment {
    /// The edge's name; the first one is `start`.
    pub name: Name,
    /// Where it ends; `None` when it closes the outline.
    pub to: Option<(Expression, Expression)>,
    /// How it runs.
    pub bend: Bend,
}

/// How an edge of a drawn path runs.
#[derive(Debug, Clone)]
pub enum Bend {
    /// Straight.
    Straight,
    /// A cubic curve with two control points.
    Cubic([(Expression, Expression); 2]),
    /// A part of a circle.
    Arc {
        /// Its radius.
        radius: Expression,
        /// Whether it turns left as one walks along it.
        left: bool,
        /// Whether it is the longer of the two arcs.
        large: bool,
    },
}

/// How many of a piece are cut from one fabric.
#[derive(Debug, Clone)]
pub struct Cut {
    /// The fabric.
    pub fabric: Name,
    /// How many.
    pub copies: CutCopies,
    /// The sizes that cut these (by their place in `sizes`); `None` for all that have the piece.
    pub sizes: Option<Vec<usize>>,
}

impl Cut {
    /// The names of the copies; none where they are only counted.
    pub fn names(&self) -> &[Name] {
        match &self.copies {
            CutCopies::Named(names) => names,
            CutCopies::Count(_) | CutCopies::Reckoned(_) => &[],
        }
    }
}

/// Copies with names, or only counted.
#[derive(Debug, Clone)]
pub enum CutCopies {
    /// One for each name.
    Named(Vec<Name>),
    /// So many, without names.
    Count(u32),
    /// As many as a formula comes to, without names.
    Reckoned(Box<Expression>),
}

/// An entry in the record of editions.
#[derive(Debug, Clone)]
pub struct Release {
    /// Which edition.
    pub edition: Text,
    /// When, as `YYYY-MM-DD`.
    pub date: Option<Text>,
    /// What changed.
    pub changes: Vec<Block>,
    /// The whole entry.
    pub span: Span,
}
