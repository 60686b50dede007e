//! What comes out, held against sources outside this project: standards, an independent reader of
//! PDF, and the CommonMark specification. Each source is named beside its check.

#[path = "outside/bench.rs"]
mod bench;
#[path = "outside/commonmark.rs"]
mod commonmark;
#[path = "outside/contrast.rs"]
mod contrast;
#[path = "outside/inert.rs"]
mod inert;
#[path = "outside/own_figures.rs"]
mod own_figures;
#[path = "outside/pdf.rs"]
mod pdf;
#[path = "outside/reader.rs"]
mod reader;
