//! What the tests of the checks lean on: cases read from Markdown, small booklets compiled.

pub mod booklet;
pub mod chapter;
