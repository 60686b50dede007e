//! The page for a screen, read as its text stands in the file: all of the booklet in each choice of sizes, nothing that an
//! author writes as marks, and nothing that asks for anything outside. `.ci/page.mjs` drives it in a browser.

#[path = "outside/bench.rs"]
mod bench;
#[path = "web/proof.rs"]
mod proof;
#[path = "outside/reader.rs"]
#[allow(dead_code, reason = "other tests ask more of a PDF")]
mod reader;
#[path = "web/tags.rs"]
mod tags;
#[path = "web/told.rs"]
mod told;
#[path = "web/unheard.rs"]
mod unheard;

use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;
use notchbook::typeset::PressFault;
use notchbook::web::Leaf;

/// The choices of sizes of a booklet.
fn leaves(workshop: &Workshop) -> Vec<Leaf> {
    let books: Vec<_> = workshop
        .editions()
        .iter()
        .map(|edition| workshop.book(edition, SheetPaper::A4))
        .collect();
    workshop.leaves(&books, SheetPaper::A4)
}

/// The page of a booklet.
fn page(name: &str, workshop: &Workshop) -> Result<String, PressFault> {
    workshop.screen(name, &leaves(workshop))
}

/// The base booklet of the checks' cases, with files laid over it.
fn pouch<R>(over: &[(&str, &str)], then: impl FnOnce(&Workshop) -> R) -> R {
    let base = |name: &str| {
        let path = bench::root().join("tests/checks/_base").join(name);
        std::fs::read_to_string(path).expect("a file of the base booklet")
    };
    let mut files: Vec<(&str, String)> = ["booklet.yaml", "make.md", "figures/sew.svg"]
        .map(|name| (name, base(name)))
        .into();
    for (name, text) in over {
        files.retain(|(known, _)| known != name);
        files.push((name, (*text).to_owned()));
    }
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(name, text)| (*name, text.as_str()))
        .collect();
    bench::written(&files, then)
}

/// The base booklet's facts, with lines exchanged.
fn facts(changes: &[(&str, &str)]) -> String {
    let path = bench::root().join("tests/checks/_base/booklet.yaml");
    let mut text = std::fs::read_to_string(path).expect("the base's facts");
    for (from, to) in changes {
        assert!(text.contains(from), "the base does not say `{from}`");
        text = text.replacen(from, to, 1);
    }
    text
}
