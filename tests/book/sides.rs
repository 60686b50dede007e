//! The line of a seam: all sides of a piece are told in one word, and fewer by their names.

use notchbook::sheets::SheetPaper;

use crate::bench::written;

/// How many sides a topstitched square is said to have, and the edges that are named.
fn told(edges: &str) -> (usize, Vec<String>) {
    let facts = "title: Mat\nedition: 1.0.0\nsizes: {one: One size}\n\
        measurements: {seam: 1 cm}\nfabrics: {outer: {name: Cotton, width: 110 cm}}\n\
        pieces:\n  mat:\n    name: Mat\n    outline: {rectangle: [20 cm, 20 cm]}\n    allowance: {all: seam}\n    \
        grain: vertical\n    cut: {outer: 1}\nparts: [make.md]\n";
    let words = format!(
        "# Make\n\n## Sew {{#sew}}\n\n```work\n- cut: mat\n- topstitch: [{edges}]\n```\n\nSew it.\n"
    );
    written(
        &[("booklet.yaml", facts), ("make.md", &words)],
        |compiled| {
            let book = compiled.book(&compiled.editions()[0], SheetPaper::A4);
            let seam = book.parts[0].steps[0].seam.last().expect("a seam line");
            let done = &seam.what[0][0];
            (done.sides, done.parts.clone())
        },
    )
}

#[test]
fn all_sides_are_told_in_one_word_and_fewer_by_name() {
    let (sides, parts) = told("mat.top, mat.right, mat.bottom, mat.left");
    assert_eq!((sides, parts.len()), (4, 4));
    let (sides, parts) = told("mat.top, mat.right, mat.bottom");
    assert_eq!((sides, parts.len()), (0, 3));
}
