//! notchbook compiles the instruction booklets of sewing patterns: annotated Markdown and YAML facts
//! in, checked and typeset booklets out, one for each size.
//!
//! Data goes one way, and imports run only from a later stage to an earlier one:
//!
//! 1. [`source`] finds and reads files, and knows what place a byte is: [`source::Sources`].
//! 2. [`diag`] holds what is wrong, and merges, waives and shows it: [`diag::Finding`].
//! 3. [`faults`] are the checks whose fault is met while a booklet is read or worked out.
//! 4. [`measure`] reckons exactly, with units: [`measure::Quantity`], [`measure::Formula`].
//! 5. [`geometry`] builds true outlines with named edges: [`geometry::Shape`].
//! 6. [`model`] is the booklet as written: [`model::Draft`].
//! 7. [`syntax`] reads YAML, Markdown and work blocks into it: [`syntax::read_booklet`].
//! 8. [`resolve`] works one size out: [`resolve::Edition`].
//! 9. [`construct`] plays the steps over the cut pieces: [`construct::History`].
//! 10. [`figure`] binds an author's diagrams to a size and validates them: [`figure::Figures`].
//! 11. [`draw`] makes pictures from the work and the pieces: [`draw::draw_steps`], [`draw::Plan`].
//! 12. [`nest`] lays outlines on a strip: [`nest::nest`].
//! 13. [`cloth`] lays pieces on cloth: [`cloth::ClothLayout`].
//! 14. [`sheets`] lays pieces on paper: [`sheets::SheetPlan`].
//! 15. [`checks`] judges: [`checks::CHECKS`].
//! 16. [`manual`] gathers the page of each word of the language: [`manual::find`].
//! 17. [`book`] gathers one size, or merges all, into plain data: [`book::Book`].
//! 18. [`typeset`] sets the pages and writes PDF: [`typeset::Press`].
//! 19. [`web`] sets the page for a screen: [`web::page`].
//! 20. [`manifest`] writes an edition as JSON and reads it back: [`manifest::Manifest`].
//! 21. [`errata`] holds one edition against another: [`errata::compare`].
//! 22. [`proof`] lays everything before an editor, size beside size: [`proof::proof`].
//! 23. [`publish`] makes the texts that go beside an edition: [`publish::shop_text`].
//! 24. [`out`] puts files on the disk, all of an edition or none: [`out::put`].
//!
//! [`pipeline`] leads one booklet through all of them, and [`cli`] is the command line. How much of anything a
//! booklet may hold stands in [`limits`].

pub mod book;
pub mod checks;
pub mod cli;
pub mod cloth;
pub mod construct;
pub mod diag;
pub mod draw;
pub mod errata;
pub mod faults;
pub mod figure;
pub mod geometry;
pub mod limits;
pub mod manifest;
pub mod manual;
pub mod measure;
pub mod model;
pub mod nest;
pub mod out;
pub mod pipeline;
pub mod proof;
pub mod publish;
pub mod resolve;
pub mod sheets;
pub mod source;
pub mod syntax;
pub mod typeset;
pub mod web;
