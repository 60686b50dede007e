//! One edition for each size: every name, formula, choice and reference worked out, steps numbered.
//!
//! What cannot be worked out is a finding in that size. Whether the result is right is not judged
//! here: that is the work of the checks.

mod edition;
mod lists;
mod names;
mod printed;
mod prose;
mod scope;
mod shapes;
mod shown;
mod values;
mod works;

pub use edition::{Edition, EditionPart, EditionStep, FrontMatter, resolve};
pub use lists::{CutRow, FabricRow, NotionRow};
pub use names::{Catalogue, NameKind};
pub use printed::{Block, FigureUse, Inline, ListItem};
pub use prose::{Said, handed_words, phrase_sizes, say};
pub use scope::Scope;
pub use shown::{Shown, ShownFigure, in_system, rounded_in, stitch_figures};
pub use values::{Values, Worked};
pub use works::EditionWork;
