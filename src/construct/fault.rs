//! What is wrong with the order of the work, as facts.

use crate::model::{Name, Together, Verb};
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork, FabricId, NotionId, PieceId};
use crate::source::Span;

/// One work fact in its step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    /// The step's number in this size.
    pub step: usize,
    /// The work fact's place in its step.
    pub work: usize,
    /// The verb.
    pub verb: Span,
    /// The step's heading.
    pub heading: Span,
}

impl Moment {
    /// The work fact of a moment.
    pub(super) fn work_of<'a, 'e>(edition: &'a Edition<'e>, moment: Moment) -> Option<&'a EditionWork<'e>> {
        edition.steps().find(|step| step.number == moment.step)?.works.get(moment.work)
    }

    /// The work fact of a step at a place.
    pub(super) fn of(step: &EditionStep<'_>, at: usize) -> Moment {
        let verb = step.works.get(at).map_or(step.step.span, |work| work.work.verb_span);
        Moment { step: step.number, work: at, verb, heading: step.step.span }
    }
}

/// What a raw edge belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "the names say what they hold")]
pub enum RawOf {
    Piece(PieceId),
    Zip(NotionId),
}

/// What tells the step in which an edge was missed; edges as authors write them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cause {
    /// Another edge of the same piece is sewn a second time there.
    SewnTwice(String),
    /// It is topstitched there, and folded later.
    StitchedEarly,
    /// Only a part of it is sewn there.
    InPart,
    /// Its like is sewn there.
    LikeSewn(String),
    /// It was pinned, at this place, for the seam that is sewn there.
    Pinned(Span),
    /// Nothing but that it is the last work on the piece.
    LastWork,
}

/// Why a finished measurement cannot be reckoned; edges as authors write them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unreckoned {
    /// This size cuts no such copy.
    NotCut,
    /// The outline is no rectangle.
    Shaped,
    /// Corners are taken out elsewhere than at the bottom of a piece that is not cut on the fold.
    CornersOut,
    /// A depth, and no corner is boxed.
    NotBoxed,
    /// The two sides of the boxed corner differ in length.
    CrookedCorner,
    /// An edge is neither sewn, finished, folded nor declared raw.
    Open(String),
    /// Nothing says how much is sewn or turned in.
    NoAllowance(String),
    /// An edge is gathered.
    Gathered(String),
    /// A copy is folded, and nothing tells how far.
    FoldedSmall(String),
    /// Something has a fault that is told by itself.
    Follows,
}

/// Why a place lies on no edge.
#[derive(Debug, Clone, PartialEq)]
pub enum OffEdge {
    /// The edge is only so long, in mm.
    TooFar(f64),
    /// The edge meets others at its ends.
    NotBeside(Vec<String>),
    /// The edge has only so many notches.
    NoNotch(usize),
    /// The mark lies elsewhere.
    MarkElsewhere,
    /// Something has a fault that is told by itself.
    Follows,
}

/// Why nothing passes into a casing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shut {
    /// The edge is not sewn yet.
    NoCasing(String),
    /// It is sewn all round; the moment at which a gap was closed too soon.
    Sewn(Option<Moment>),
}

/// Why something takes no stuffing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unfilled {
    /// Nothing of it is sewn yet.
    Unsewn,
    /// Nothing is open; the moment at which a gap was closed too soon.
    Shut(Option<Moment>),
    /// It is turned when it is full.
    TurnedLater(Moment),
}

/// What tells that pieces are of one hand; edges as authors write them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Alike {
    /// Two copies of one piece.
    Copies(PieceId),
    /// Ends of their edges, by the edges beside them, would meet that are not called alike.
    Ends {
        /// The two that would meet.
        met: (String, String),
        /// An edge that is named, and one that would fit instead.
        instead: Option<(String, String)>,
    },
    /// Both rows run the same way round their pieces.
    Rows,
}

/// How two tubes lie that were put together: a piece of each, and whether it is right side out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnEachOther {
    /// The inner one.
    pub inner: (String, bool),
    /// The outer one.
    pub outer: (String, bool),
    /// Which sides lie on each other; `None` for a right one on a wrong one.
    pub lies: Option<Together>,
}

/// A fault in the construction.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Fault {
    /// Copies are used before the step that cuts them.
    UsedBeforeCut { copies: Vec<String>, used: Moment, cut: Moment },
    /// A piece is cut from cloth that is not made yet.
    ClothNotMade { piece: PieceId, fabric: FabricId, cut: Moment, made: Option<Moment> },
    /// A piece is cut fewer times than it is used.
    CutTooFew { missing: Vec<String>, piece: PieceId, cut: Moment, used: Moment },
    /// A piece or a zip has no such edge.
    NoSuchEdge { name: Name, owner: String, edge: String, known: Vec<String> },
    /// Two edges that are sewn together differ in length (mm); `both` is the piece whose name means several copies
    /// where one would fit.
    LengthsDiffer {
        pieces: (PieceId, PieceId),
        first: (String, f64),
        second: (String, f64),
        eased: f64,
        both: Option<String>,
        sewn: Moment,
    },
    /// Two edges differ less (mm) than the ease that their seam states (mm).
    EaseTooLarge { edges: (String, String), stated: f64, apart: f64, ease: Span, sewn: Moment },
    /// A zip (mm) is shorter than its opening, or than what its tape is sewn to (mm); the edges, where they have names.
    ZipTooShort { notion: NotionId, long: f64, wanted: f64, edges: Option<String>, place: Span },
    /// The notches of two edges that are sewn together do not meet.
    NotchesDiffer { edges: (String, String), notch: Span, places: (Vec<f64>, Vec<f64>), sewn: Moment },
    /// Something is fused to a piece that is sewn, quilted or folded already.
    FusedTooLate { copy: String, fused: Moment, earlier: Moment },
    /// An edge is topstitched before it is sewn.
    TopstitchedTooSoon { edge: String, stitched: Moment, sewn: Moment },
    /// A seam is topstitched without having been pressed.
    NotPressed { edge: String, stitched: Moment, sewn: Moment },
    /// Pieces of one hand are sewn right sides together.
    HandsAlike { copies: (CopyId, CopyId), edges: (String, String), why: Alike, sewn: Moment },
    /// The same is done a second time; of an end that is caught, which.
    DoneTwice { caught: Option<String>, first: Moment, again: Moment },
    /// Edges are finished and never sewn to each other, though two others like them are.
    SeamForgotten { edges: (String, String), like: (String, String), finished: Moment, sewn: Moment },
    /// What was sewn right sides together is closed, or caught by another seam, and was not turned.
    NeverTurned { edges: Vec<String>, sewn: Moment, at: Moment },
    /// Two edges that follow each other in a row are joined by nothing there, and the order in which all would be.
    RowParted { apart: (String, String), order: Vec<String>, sewn: Moment },
    /// Edges are pinned after they are sewn.
    PinnedTooLate { edges: (String, String), pinned: Moment, sewn: Moment },
    /// A corner is boxed before the seams beside it are sewn.
    BoxedTooSoon { corner: String, edge: String, boxed: Moment, sewn: Moment },
    /// Nothing is open to turn through; the moment at which a gap was closed too soon.
    NothingOpen { turned: Moment, closed: Option<Moment> },
    /// A buttonhole is made before its edge is sewn or hemmed.
    HoleTooSoon { edge: String, holed: Moment, sewn: Moment },
    /// The edges of a slit stay raw: it is cut open and never bound, or bound before it is cut open.
    SlitRaw { name: String, slashed: Option<Moment>, bound: Option<Moment> },
    /// Something is passed into a casing that is not there or that is shut.
    CasingShut { inserted: Moment, why: Shut },
    /// A strip is shorter than the edges that it binds (mm).
    /// `laid` where it would be long enough if edges that are called alike lay on each other.
    StripTooShort { strip: String, long: f64, needed: f64, laid: bool, bound: Moment },
    /// A strip is much longer than all that it binds (mm).
    StripTooLong { strip: String, long: f64, needed: f64, bound: Moment },
    /// A strip goes all round, and its ends are neither sewn to each other nor turned in.
    StripNotClosed { strip: String, bound: Moment },
    /// An edge is bound before it is sewn.
    BoundTooSoon { edge: String, bound: Moment, sewn: Moment },
    /// A corner to box by measuring is not named by the two edges that meet in it.
    NoCorner { copy: String, edges: usize, boxed: Moment },
    /// A copy is cut and no work names it, though its fellows are used.
    CopyIdle { copy: String, piece: PieceId, cut: Moment },
    /// What was basted to an edge is in no seam at the end.
    NeverCaught { edges: Vec<String>, basted: Moment },
    /// A seam is sewn with the wrong sides together, and its raw allowances show outside to the end.
    ShowsOutside { edges: Vec<String>, sewn: Moment },
    /// Something is put into another, and one of the two, by one of its pieces, is no tube.
    NoTube { copy: String, put: Moment },
    /// Other sides are to lie on each other than do.
    PutTheOtherWay { wanted: Together, why: OnEachOther, put: Moment },
    /// A seam holds other sides together than were put on each other.
    SewnTheOtherWay { wanted: Together, put: Moment, sewn: Moment },
    /// Of what a seam catches nothing is left outside it: how long it is and how much is caught at its ends (mm).
    CaughtTooShort { edge: String, long: f64, taken: f64, caught: Moment },
    /// Something is stuffed that cannot be, or that is turned later.
    StuffedOutOfOrder { stuffed: Moment, why: Unfilled },
    /// A gap stays open.
    GapOpen { edges: Vec<String>, sewn: Moment, leave: Span, filler: Option<NotionId> },
    /// A gap (mm) is longer than what there is for it (mm).
    GapTooLong { edge: String, room: f64, gap: f64, leave: Span },
    /// A place lies on no edge.
    PlaceOff { edge: String, place: Span, why: OffEdge },
    /// Work on a seam comes before the seam; `None` where the edge is never sewn.
    SeamNotSewnYet { edge: String, done: Moment, sewn: Option<Moment> },
    /// An edge is prepared for a seam after what it prepares for.
    PreparedTooLate { edge: String, done: Moment, earlier: Moment },
    /// A tight inward curve is turned and its allowances were never cut.
    CurveNotClipped { edges: Vec<String>, sewn: Moment, turned: Moment },
    /// Allowances stay raw inside where every edge is to be finished.
    NotFinished { edges: Vec<String>, sewn: Moment },
    /// A thing is turned while its zip is shut.
    ZipShut { notion: NotionId, turned: Moment },
    /// Edges are never sewn, finished or declared raw; each with what it belongs to, the step in which they were
    /// missed.
    EdgesRaw { edges: Vec<(RawOf, String)>, cause: Option<(Cause, Moment)> },
    /// A dart, a pleat or a tuck is still open when its edge is sewn, or to the end. The word for it, its name, its
    /// edge and when that is sewn; when its like of another copy is closed.
    LeftOpen {
        sort: &'static str,
        name: String,
        place: Span,
        edge: Option<String>,
        joined: Option<Moment>,
        like: Option<Moment>,
    },
    /// Two edges, or pieces, are pinned to each other, and one of them is sewn to something else; what it is sewn to,
    /// and whether the pinned are of one cloth, and that is of another.
    PinnedOtherwise { pinned: (String, String), at: Moment, instead: Option<String>, sewn: Moment, alike: bool },
    /// Pieces are pinned, and a seam takes another one along with them that was not.
    NotPinned { names: Vec<String>, pinned: Moment, sewn: Moment },
    /// One layer is fused to two things.
    FusedToTwo { layer: String, to: (String, String), first: Moment, again: Moment },
    /// Buttons are sewn on where buttonholes are made.
    HolesUnderButtons { name: String, holed: Moment, buttoned: Moment },
    /// A facing is understitched, or a seam trimmed, clipped or graded, after it was turned.
    TurnedTooSoon { verb: Verb, edge: String, done: Moment, turned: Moment },
    /// Something is turned right side out, and is sewn to nothing yet.
    TurnedUnsewn { name: String, turned: Moment, sewn: Moment },
    /// A seam is closed that has no gap; an edge whose gap is open elsewhere, when it is sewn, and whether it is a hem.
    NothingToClose { edge: String, closed: Moment, open: Option<String>, sewn: Moment, hemmed: bool },
    /// What was basted to one edge is caught in the seam of another.
    BastedElsewhere { edge: String, to: String, basted: Moment, caught: Moment },
    /// A thing is attached over an edge that is hemmed or bound later.
    HemmedOver { edge: String, attached: Moment, hemmed: Moment },
    /// A mark is made after it was worked to.
    MarkedTooLate { name: String, marked: Moment, used: Moment },
    /// One end of a zip is sewn twice, the other never; the ends as authors write them.
    EndTwice { twice: String, never: String, again: Moment },
    /// A gap (mm) through which nothing passes.
    GapTooShort { gap: f64, leave: Span },
    /// A thing is sewn onto a piece whose sides are closed to a tube already.
    OnTube { name: String, ground: String, stitched: Moment, sewn: Moment },
    /// A seam's allowance is not the piece's own (both in mm).
    AllowanceDiffers { edge: String, piece: PieceId, own: f64, taken: f64, sewn: Moment, stated: Span },
    /// A finished measurement that the construction does not determine; where it says what it measures.
    SewnNotReckoned { row: usize, said: Span, why: Unreckoned },
    /// A finished measurement is not what the sewing gives (both in mm).
    SewnDiffers { row: usize, stated: f64, sewn: f64 },
}
