//! Pattern sheets, page maps and cutting layouts, looked at from outside: drawings and PDFs are read
//! back as another program would, and held against the pieces and against the rules of the paper.
//!
//! The same sheets are measured once more by `tests/sheets/measure.py`, which reads the PDFs with
//! libraries of another language.

#[path = "outside/bench.rs"]
#[allow(dead_code, reason = "printing a booklet is for other tests")]
mod bench;
#[path = "support/caddies.rs"]
mod caddies;
#[path = "sheets/cloth.rs"]
mod cloth;
#[path = "sheets/counts.rs"]
mod counts;
#[path = "support/crossed.rs"]
mod crossed;
#[path = "sheets/drawn.rs"]
mod drawn;
#[path = "sheets/dump.rs"]
mod dump;
#[path = "sheets/hands.rs"]
mod hands;
#[path = "sheets/language.rs"]
mod language;
#[path = "sheets/lengths.rs"]
mod lengths;
#[path = "sheets/names.rs"]
mod names;
#[path = "sheets/pages.rs"]
mod pages;
#[path = "sheets/printed.rs"]
mod printed;
#[path = "outside/reader.rs"]
#[allow(dead_code, reason = "only bookmarks and pages are looked at here")]
mod reader;
#[path = "sheets/refusals.rs"]
mod refusals;
#[path = "sheets/tables.rs"]
mod tables;
#[path = "sheets/views.rs"]
mod views;

use notchbook::pipeline::Workshop;
use notchbook::resolve::Edition;
use notchbook::sheets::{SheetPaper, SheetPlan, plan_all_sizes, plan_one_size};

/// The papers that are cut into tiles.
const TILED: [SheetPaper; 3] = [SheetPaper::A4, SheetPaper::Letter, SheetPaper::A0];

/// One set of sheets: what it is called, its plan, and the sizes on it.
struct Set<'a> {
    name: String,
    plan: SheetPlan,
    editions: Vec<&'a Edition<'a>>,
}

/// Every set of a booklet on some papers: each size, and all of them nested.
fn sets<'a>(name: &str, compiled: &'a Workshop, papers: &[SheetPaper]) -> Vec<Set<'a>> {
    let mut found = Vec::new();
    for paper in papers {
        for edition in compiled.editions() {
            found.push(Set {
                name: format!("{name},{},{}", compiled.sizes[edition.size()], paper.name()),
                plan: plan_one_size(edition, *paper),
                editions: vec![edition],
            });
        }
        found.push(Set {
            name: format!("{name},nested,{}", paper.name()),
            plan: plan_all_sizes(compiled.editions(), *paper),
            editions: compiled.editions().iter().collect(),
        });
    }
    found
}

/// Looks at every set of every demo booklet and fails with all that is wrong.
fn each_set(papers: &[SheetPaper], mut wrongs: impl FnMut(&Set<'_>) -> Vec<String>) {
    let mut wrong = Vec::new();
    let mut looked = 0;
    bench::demos(|name, compiled| {
        for set in sets(name, compiled, papers) {
            looked += 1;
            wrong.extend(
                wrongs(&set)
                    .into_iter()
                    .map(|fault| format!("{}: {fault}", set.name)),
            );
        }
    });
    // Three booklets of at least three sizes, and the nested sets.
    assert!(looked >= 12 * papers.len(), "only {looked} sets");
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}
