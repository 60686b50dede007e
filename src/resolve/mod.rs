//! One edition for each size: every name, formula, choice and reference worked out, steps numbered.
//!
//! What cannot be worked out is a finding in that size. Whether the result is right is not judged
//! here: that is the work of the checks.

mod cut_size;
mod edition;
mod lists;
mod names;
mod printed;
mod prose;
mod scope;
mod shapes;
mod shown;
mod stable;
mod values;
mod worked;
mod works;

pub use edition::{Edition, EditionPart, EditionStep, FrontMatter, resolve};
pub use lists::{CutRow, FabricRow, NotionRow};
pub use names::{Catalogue, NameKind};
pub use printed::{Aim, Block, FigureUse, Inline, ListItem, Pointer};
pub use scope::Scope;
pub use shown::{STITCHES_PER_INCH, Shown, ShownFigure, in_system, rounded_in, stitch_figures};
pub use stable::{Ids, slug};
pub use values::{Printed, Values};
pub use worked::Worked;
pub use works::EditionWork;
