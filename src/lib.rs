//! notchbook compiles the instruction booklets of sewing patterns: annotated Markdown and YAML facts
//! in, checked and typeset booklets out, one for each size.
//!
//! Data goes one way, and imports run only from a later stage to an earlier one:
//!
//! 1. [`source`] finds and reads files, and knows what place a byte is: [`source::Sources`].
//! 2. [`diag`] holds what is wrong, and merges, waives and shows it: [`diag::Finding`].
//! 3. [`measure`] reckons exactly, with units: [`measure::Quantity`], [`measure::Formula`].
//! 4. [`geometry`] builds true outlines with named edges: [`geometry::Shape`].
//! 5. [`model`] is the booklet as written: [`model::Draft`].
//! 6. [`syntax`] reads YAML, Markdown and work blocks into it: [`syntax::read_booklet`].
//! 7. [`resolve`] works one size out: [`resolve::Edition`].
//! 8. [`construct`] plays the steps over the cut pieces: [`construct::History`].
//! 9. [`figure`] binds diagrams to a size and validates them: [`figure::Figures`].
//! 10. [`sheets`] lays pieces on paper and on cloth: [`sheets::SheetPlan`], [`sheets::ClothLayout`].
//! 11. [`checks`] judges: [`checks::CHECKS`].
//! 12. [`typeset`] sets the pages and writes PDF: [`typeset::Press`].
//!
//! [`pipeline`] leads one booklet through all of them, and [`cli`] is the command line.

pub mod checks;
pub mod cli;
pub mod construct;
pub mod diag;
pub mod figure;
pub mod geometry;
pub mod measure;
pub mod model;
pub mod pipeline;
pub mod resolve;
pub mod sheets;
pub mod source;
pub mod syntax;
pub mod typeset;
