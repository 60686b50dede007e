//! One edition for each size: every name, formula, choice and reference worked out, steps numbered.
//!
//! What cannot be worked out is a finding in that size. Whether the result is right is not judged
//! here: that is the work of the checks.

mod absent;
mod bought;
mod cast;
mod counted;
mod cut_size;
mod edition;
mod fit;
mod glossary;
mod handed;
mod help;
mod ids;
mod inside;
mod lists;
mod mark;
mod names;
mod offers;
mod printed;
mod prose;
mod reckoning;
mod references;
mod scope;
mod sewn;
mod shapes;
mod shown;
mod spoken;
mod stable;
mod target;
mod uses;
mod values;
mod within;
mod without;
mod worked;
mod works;

pub use bought::NotionRow;
pub use cast::{Cast, CopyId, Member};
pub use edition::{Edition, EditionPart, EditionStep, FrontMatter, resolve};
pub use fit::{Ease, FitRow};
pub use help::Answer;
pub use ids::{EdgeId, FabricId, NotionId, PieceId, ZipEdge};
pub use lists::{CutFrom, CutRow, FabricRow};
pub use mark::MarkAt;
pub use names::{Catalogue, NameKind};
pub use offers::{Way, needed_by, notion_needed_by, ways, without};
pub use printed::{Aim, Block, FigureUse, Inline, ListItem, Pointer};
pub use prose::{Said, handed_words, say};
pub use scope::Scope;
pub use sewn::{SewnMeasure, SewnRow};
pub use shown::{STITCHES_PER_INCH, Shown, ShownFigure, allowed_apart, in_system, rounded_in, stitch_figures};
pub use stable::{Ids, slug};
pub use target::{EdgeRef, Meant, Owner, Target, Touched};
pub use uses::{PrintedValue, Uses};
pub use values::Values;
pub use within::Inside;
pub use without::Without;
pub use worked::Worked;
pub use works::{EditionWork, Filler, Placed};
