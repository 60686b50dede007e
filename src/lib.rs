//! notchbook: a compiler for the instruction booklets of sewing patterns.
pub mod diag;
pub mod measure;
pub mod model;
pub mod source;
pub mod syntax;
pub mod resolve;
pub mod figure;
pub mod checks;
