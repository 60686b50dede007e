//! The ways through a booklet in one size, each with its play.

use super::history::History;
use crate::resolve::Edition;

/// One way through a booklet in one size, played.
pub struct Played<'a> {
    /// What is done and cut on this way.
    pub edition: Edition<'a>,
    /// Its play.
    pub history: History,
    /// What makes it another than the first way, as findings tell it; empty for the first.
    pub told: String,
}
