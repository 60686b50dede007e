//! Thread, from the lengths of the edges alone.

use notchbook::construct::thread;

use crate::sewn_up;

/// A pocket 20 cm by 10 cm and a front 60 cm by 40 cm, without allowances.
const PIECES: &str = "  pocket: {outline: {rectangle: [20 cm, 10 cm]}, raw: all, cut: {outer: 1}}\n  \
    front: {outline: {rectangle: [60 cm, 40 cm]}, raw: all, cut: {outer: 1}}\n";

/// The length of the seams in metres.
fn seams(work: &str) -> f64 {
    let steps = [
        "- cut: all\n".to_owned(),
        format!("- {work}\n  stitch: 3 mm\n"),
    ];
    sewn_up("", PIECES, &steps, |compiled| {
        thread(&compiled.editions()[0])
            .expect("something is sewn")
            .seams
    })
}

#[test]
fn an_edge_stitched_onto_a_piece_takes_the_thread_of_the_edge() {
    let near = |work: &str, metres: f64| {
        let found = seams(work);
        assert!(
            (found - metres).abs() < 1e-9,
            "{work}: {found} m, not {metres} m"
        );
    };
    near("topstitch: [pocket.left, front]", 0.1);
    near("topstitch: [pocket.left, pocket.right, front]", 0.2);
    near("sew: [pocket.top, front]\n  allowance: 1 cm", 0.2);
    near("topstitch: pocket", 0.6);
    near("topstitch: [front.top, front.bottom]", 1.2);
}
