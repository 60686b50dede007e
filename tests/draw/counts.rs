//! How many steps of the demos the compiler can draw, whether they use the drawing or not, held to a recorded table.
//!
//! `NOTCHBOOK_BLESS=1` records it anew; `NOTCHBOOK_PICTURES=DIR` writes the drawings there, to be looked at.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use notchbook::figure::{DRAW, fonts, to_png};
use notchbook::pipeline::{Reach, Workshop};
use notchbook::source::{Folder, find_booklets};

use crate::bench::{recorded, root};

/// Every text of the demos, with the compiler's drawing in the place of each author's.
fn redrawn() -> Vec<(PathBuf, String)> {
    let home = root().join("booklets");
    let mut texts = Vec::new();
    for folder in std::fs::read_dir(&home).expect("the demo booklets") {
        let folder = folder.expect("a demo booklet").path();
        for file in std::fs::read_dir(&folder).expect("its files") {
            let file = file.expect("a file").path();
            if file.extension().is_some_and(|end| end == "md") {
                let text = std::fs::read_to_string(&file).expect("a text");
                let path = file.strip_prefix(&home).expect("below the booklets");
                texts.push((path.to_owned(), with_drawings(&text)));
            }
        }
    }
    texts
}

/// A text whose pictures are all drawn from the work.
fn with_drawings(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("](") {
        let (before, after) = rest.split_at(at + 2);
        out.push_str(before);
        let end = after.find(')').expect("the end of a link");
        let target = &after[..end];
        out.push_str(if target.ends_with(".svg") {
            "draw:work"
        } else {
            target
        });
        rest = &after[end..];
    }
    out.push_str(rest);
    out
}

/// Hands over each demo with the compiler's drawings everywhere.
pub fn each_redrawn(see: impl FnMut(&str, &Workshop)) {
    redrawn_where(|_| true, see);
}

/// The same with some of them.
pub fn redrawn_where(wanted: impl Fn(&str) -> bool, mut see: impl FnMut(&str, &Workshop)) {
    let folder = Folder::open(&root().join("booklets")).expect("the demo booklets");
    let (booklets, _) = find_booklets(&folder);
    let folder = folder.with_unsaved(redrawn());
    for booklet in booklets.iter().filter(|booklet| wanted(&booklet.name)) {
        see(
            &booklet.name,
            &Workshop::open(&folder, booklet, Reach::Figures),
        );
    }
}

/// A step: in how many of its sizes it is drawn, and why not in the first of the others.
#[derive(Default)]
struct Counted {
    drawn: usize,
    sizes: usize,
    why: String,
}

fn count(compiled: &Workshop) -> Vec<(String, Counted)> {
    let mut steps: Vec<(String, Counted)> = Vec::new();
    for edition in compiled.editions() {
        for step in edition.steps() {
            let id = step.step.id.as_ref().map_or("?", |id| id.text.as_str());
            let name = format!("{id}@{}", step.step.span.start);
            let at = steps.iter().position(|(known, _)| *known == name);
            let at = at.unwrap_or_else(|| {
                steps.push((name, Counted::default()));
                steps.len() - 1
            });
            let counted = &mut steps[at].1;
            counted.sizes += 1;
            let Some(figure) = &step.figure else {
                counted.why = "no picture at all".into();
                continue;
            };
            assert!(figure.path.starts_with(DRAW), "{}", figure.path);
            if compiled.figures.get(edition.size(), &figure.key).is_some() {
                counted.drawn += 1;
            } else if counted.why.is_empty() {
                let found = compiled.report.findings.iter().find(|finding| {
                    let here = finding
                        .sizes
                        .iter()
                        .any(|(size, _)| *size == edition.size());
                    finding.code() == "figure-not-drawable"
                        && finding.span == figure.span
                        && (here || finding.sizes.is_empty())
                });
                counted.why = found.map_or_else(
                    || "follows from another finding".into(),
                    |finding| finding.message.clone(),
                );
            }
        }
    }
    for (name, _) in &mut steps {
        name.truncate(name.find('@').unwrap_or(name.len()));
    }
    steps
}

fn write_pictures(name: &str, compiled: &Workshop, into: &Path) {
    let (database, _) = fonts(&compiled.house);
    for size in [0, compiled.sizes.len() - 1] {
        for (_, figure) in compiled.figures.of_size(size) {
            let Some(step) = figure.path.strip_prefix("draw:work/") else {
                continue;
            };
            let png = to_png(&figure.svg, &database, 6.0).expect("a picture");
            let file = format!("{name}-{}-{step}", compiled.sizes[size]);
            std::fs::write(into.join(format!("{file}.png")), png).expect("a place for pictures");
            std::fs::write(into.join(format!("{file}.svg")), &figure.svg).expect("a place");
        }
    }
}

#[test]
fn as_many_steps_are_drawn_as_recorded() {
    let mut rows = vec!["booklet,step,sizes drawn,sizes,why not".to_owned()];
    let mut totals: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    let pictures = std::env::var_os("NOTCHBOOK_PICTURES").map(PathBuf::from);
    each_redrawn(|name, compiled| {
        for (step, counted) in count(compiled) {
            let (drawn, all) = totals.entry(name.to_owned()).or_default();
            *all += 1;
            *drawn += usize::from(counted.drawn == counted.sizes);
            let why = counted.why.replace('"', "'");
            let (drawn, sizes) = (counted.drawn, counted.sizes);
            rows.push(format!("{name},{step},{drawn},{sizes},\"{why}\""));
        }
        if let Some(into) = &pictures {
            write_pictures(name, compiled, into);
        }
    });
    for (name, (drawn, all)) in &totals {
        println!("{name}: {drawn} of {all} steps are drawn in every size");
        rows.push(format!("{name},all steps,{drawn},{all},\"\""));
    }
    recorded(
        "tests/draw/counts.csv",
        &rows,
        "the drawings (NOTCHBOOK_PICTURES)",
    );
}
