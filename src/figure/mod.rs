//! Diagrams: read, checked, bound to each size, dressed in the house style, and made into pictures.
//!
//! The only stage that names usvg and resvg. Every fault is led back to the author's line in the
//! author's file: the bound text, which nobody has written, is never shown.

mod bind;
mod bounds;
mod classes;
mod code;
mod dimensions;
mod drawing;
mod dress;
mod figures;
mod frame;
mod gather;
mod halo;
mod inspect;
mod key;
mod label;
mod markup;
mod measure_tree;
pub(crate) mod numbers;
mod over;
mod picture;
mod ruler;
mod studio;
mod typeface;
mod upright;

pub use classes::{CLASSES, Class, SYMBOLS};
pub use code::code;
pub use drawing::Drawing;
pub use dress::Dresser;
pub use figures::{BoundFigure, Figures};
pub use gather::{COVER, DRAW, cover, read_all};
pub use halo::Letters;
pub use key::{KeyEntry, key, key_order};
pub use label::{labels, printed_labels};
pub(crate) use markup::{escape, svg_data};
pub use over::{LabelNote, LaidOver, lay_over};
pub use picture::{PictureFault, broken_fonts, fonts, letters, look_at_drawing, to_png};
pub(crate) use ruler::Ruler;
pub use studio::Studio;
