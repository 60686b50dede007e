//! A letter cannot be seen, moves what is seen, or looks like another.
//!
//! ## Why it matters
//! Control codes can wipe a line off a terminal; marks of direction turn words round; signs of no width, and letters
//! of another script that look like Latin ones, make two names out of what reads as one. An editor would sign for
//! words that she has not seen. Most come in by copying from a page or a chat.
//!
//! ## Wrong
//! ```yaml
//! tools: [Sewing machine, Overlocker, Iron, "Sciss\u200bors", Pins, Chalk, Hand needle]
//! ```
//!
//! ## Right
//! ```yaml
//! tools: [Sewing machine, Overlocker, Iron, Scissors, Pins, Chalk, Hand needle]
//! ```
//!
//! ## Limits
//! Looks at every file of the booklet that was read. One word may not hold letters of Latin, Greek and Cyrillic
//! together; words of one script each may stand side by side. Joiners are left alone where the letters beside them
//! are not Latin, as scripts of India and Arabic need them, and so are marks of direction (U+200E, U+200F, U+061C) where
//! the word before or behind is written from right to left.

use crate::diag::{Check, Group};

/// A letter cannot be seen, moves what is seen, or looks like another.
pub static DECEIVING_LETTERS: Check =
    Check::error("deceiving-letters", Group::Words, include_str!("deceiving_letters.rs"));
