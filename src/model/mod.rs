//! The booklet as plain data, before any size is chosen: what the author wrote, each thing with its place.
//!
//! Nothing here reads, works out or prints. [`Draft`] is what the parsing stage hands on.

mod date;
mod draft;
mod facts;
mod help;
mod house_words;
mod inside;
mod looks;
mod matter;
mod notion;
mod offer;
mod part;
mod prose;
mod sheet;
mod shop;
mod size;
mod sourcing;
mod text;
mod verb;
mod video;
mod vocabulary;
mod work;

pub use date::Date;
pub use draft::Draft;
pub use facts::{
    Bend, BodyRow, Caution, Cut, CutCopies, Expectation, Fabric, Facts, FinishedRow, Measurement, Outline, Piece,
    Release, Segment, Tool, Word,
};
pub use help::Question;
pub use house_words::HouseWords;
pub use inside::{Dart, DartPlace, DartTip, Mark, MarkPlace, Notch, NotchAt, Pleat, PointAt, Row};
pub use looks::{Booklets, Show, ShowPlaces, Style};
pub use matter::Matter;
pub use notion::{KINDS, Kind, KindDoc, Notion, NotionFigure};
pub use offer::{Offer, Stake};
pub use part::{Part, Step};
pub use prose::{
    Alignment, Block, Brace, Branch, Figure, Filter, Inline, ListItem, NoticeKind, PrintedText, Reference,
    ReferenceKind, Table,
};
pub use sheet::SheetSettings;
pub use shop::{Preview, Shop};
pub use size::{BySize, Size, View, Wearer, brief_sizes, by_view, is_for, spoken_sizes};
pub use sourcing::Sourcing;
pub use text::{Expression, Name, Text};
pub(crate) use verb::each_verb;
pub use verb::{Thread, Verb};
pub use video::{Moment, Video, read_moment, written_moment};
pub use vocabulary::{ClothLies, Hazard, Pair, Vocabulary, Words};
pub use work::{Around, EdgeFinish, Far, Handed, Param, Place, Together, Touch, Work};
