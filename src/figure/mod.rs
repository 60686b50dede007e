//! Diagrams: read, checked, bound to each size, dressed in the house style, and made into pictures.
//!
//! The only stage that names usvg and resvg. Every fault is led back to the author's line in the
//! author's file: the bound text, which nobody has written, is never shown.

mod bind;
mod classes;
mod draw;
mod drawing;
mod drawn;
mod dress;
mod gather;
mod inspect;
mod key;
mod measure_tree;
mod numbers;
mod overview;
mod picture;
mod plan;

pub use classes::{CLASSES, SYMBOLS};
pub use drawing::Drawing;
pub use dress::Dresser;
pub use gather::{BoundFigure, Figures, draw_all};
pub use key::{KeyEntry, key};
pub use measure_tree::keeps_inside;
pub(crate) use overview::svg_data;
pub use overview::{Overview, PieceDrawing};
pub use picture::{PictureFault, fonts, letters, to_png};
pub use plan::Plan;
