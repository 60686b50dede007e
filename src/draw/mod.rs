//! Steps that the compiler draws itself, from their work facts and the true pieces of the size.
//!
//! One scale holds for everything on a drawing: the largest round one at which all of it fits. What
//! the facts do not say is not drawn; a step that cannot be drawn truly is not drawn at all.

mod alone;
mod bag;
mod bands;
mod bent;
mod cloth;
mod corner;
mod cutting;
mod desk;
mod digits;
mod drawn;
mod edges;
mod fits;
mod folding;
mod formulas;
mod frames;
mod handled;
mod hoop;
mod hung;
mod inside;
mod laid;
mod laid_on;
mod lap;
mod layers;
mod lens;
mod lies;
mod look;
mod opened;
mod overview;
mod page;
mod paint;
mod part;
mod past;
mod patch;
mod pile;
mod placed;
mod plan;
mod rewritten;
mod rows;
mod said;
mod seen;
mod shaping;
mod shut;
mod sides;
mod single;
mod sized;
mod sketch;
mod stack;
mod step;
mod stood;
mod strap;
mod strips;
mod thing;
mod told;
mod torn;
mod trace;
mod trimmings;
mod turned;

pub use drawn::draw_steps;
pub use inside::Detail;
pub use overview::{Overview, PieceDrawing, overview};
pub use plan::Plan;
pub use sketch::{Sketch, sketches};
pub use thing::{Thing, Things};
