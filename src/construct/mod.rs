//! The steps played in order over the cut pieces: what is cut, joined, open, turned, left raw.
//!
//! A play never stops at a fault: it takes the step as meant and goes on, so that one slip is one
//! fault. Faults are facts without words; the checks put them into messages. Layers that are fused or
//! quilted to another piece and sewn nowhere by themselves move with it and have no edges of their
//! own to finish.

mod caught;
mod causes;
mod corners;
mod creases;
mod curves;
mod deed;
mod end;
mod facings;
mod fault;
mod forgotten;
mod hands;
mod history;
mod joins;
mod layers;
mod lengths;
mod log;
mod looked_back;
mod notches;
mod order;
mod outside;
mod parts;
mod pins;
mod places;
mod play;
mod player;
mod pockets;
mod rows;
mod sewn;
mod shaped;
mod slits;
mod spread;
mod state;
mod stitched;
mod strips;
mod tell;
mod thread;
mod twice;
mod unfinished;
mod unturned;
mod verbs;
mod ways;
mod wrapped;
mod zips;

pub use creases::LONG;
pub use fault::{Alike, Cause, Fault, Moment, OffEdge, OnEachOther, RawOf, Shut, Unfilled, Unreckoned};
pub use history::{History, SewnSeam};
pub use play::play;
pub use sewn::sewn;
pub use tell::tell;
pub use thread::{ThreadEstimate, thread};
pub use verbs::{VERBS, VerbEntry, entry};
pub use ways::Played;
