//! Laws of the construction, held on small booklets made at random: what does not matter to the work
//! does not change what is found, and what comes out is as large as plane geometry says.

#[path = "construct/bags.rs"]
mod bags;
#[path = "outside/bench.rs"]
#[allow(dead_code, reason = "no demo is compiled and nothing is printed here")]
mod bench;
#[path = "construct/laws.rs"]
mod laws;
#[path = "construct/rows.rs"]
mod rows;
#[path = "construct/scale.rs"]
mod scale;
#[path = "construct/thread.rs"]
mod thread;

use notchbook::pipeline::Workshop;

use bench::written;

/// A finding without its place: its name, what it says, and what it says of each size.
type Found = (&'static str, String, Vec<(usize, String)>);

/// Everything found, in an order that hangs on no place in the text.
fn found(compiled: &Workshop) -> Vec<Found> {
    let findings = compiled.report.findings.iter();
    let mut all: Vec<Found> = findings
        .map(|one| (one.code(), one.message.clone(), one.sizes.clone()))
        .collect();
    all.sort();
    all
}

/// Only the names of what was found.
fn codes(compiled: &Workshop) -> Vec<&'static str> {
    found(compiled).into_iter().map(|(code, ..)| code).collect()
}

/// The head of a booklet whose cloth is not laid, since it is sold in no width.
const HEAD: &str = "title: Sample\nedition: 1.0.0\nsizes: {one: One size}\n\
    show: {first: metric, metric_step: 0.01 mm}\n\
    fabrics: {outer: {name: Cotton}}\nnotions: {thread: {kind: thread, name: Thread}}\n";

/// Compiles pieces, and the work of each step in its order.
fn sewn_up<R>(facts: &str, pieces: &str, steps: &[String], then: impl FnOnce(&Workshop) -> R) -> R {
    let facts = format!("{HEAD}{facts}pieces:\n{pieces}parts: [make.md]\n");
    let mut part = "# Make it\n".to_owned();
    for (at, work) in steps.iter().enumerate() {
        part.push_str(&format!(
            "\n## Do it {at} {{#step-{at}}}\n\n```work\n{work}```\n\nDo it.\n"
        ));
    }
    written(
        &[("booklet.yaml", &facts), ("make.md", &part)],
        |compiled| {
            let broken = [
                "yaml-unreadable",
                "work-unreadable",
                "value-unreadable",
                "key-unknown",
                "outline-wrong",
                "edge-unknown",
                "unknown-name",
            ];
            let broken = compiled
                .report
                .findings
                .iter()
                .find(|one| broken.contains(&one.code()));
            assert!(
                broken.is_none(),
                "the booklet of the test is broken: {broken:?}\n{facts}\n{part}"
            );
            then(compiled)
        },
    )
}
