//! Edges in a row: reckoned from either side, and in either order, they come to the same.

use proptest::prelude::{ProptestConfig, prop_assert, prop_assert_eq, proptest};
use proptest::sample::select;

use crate::{codes, sewn_up};

/// What is found when a row of panels is sewn to a band, its edges joined as `sides` names them.
fn told(lengths: &[u32], lapped: u32, band: u32, sides: &str) -> Vec<&'static str> {
    let piece = |name: &str, length: u32| {
        format!(
            "  {name}_piece:\n    outline: {{rectangle: [{length} mm, 90 mm]}}\n    allowance: {{all: 10 mm}}\n    \
             raw: all\n    cut: {{outer: [{name}]}}\n"
        )
    };
    let panels: String = lengths
        .iter()
        .enumerate()
        .map(|(at, length)| piece(&format!("panel_{at}"), *length))
        .collect();
    let lap = match lapped {
        0 => String::new(),
        by => format!("- lap: [panel_0.top, panel_1.top]\n  by: {by} mm\n"),
    };
    let sew = format!("- sew: [{sides}]\n  allowance: 10 mm\n  stitch: 2.5 mm\n");
    let steps = ["- cut: all\n".to_owned(), lap + &sew];
    sewn_up("", &(panels + &piece("band", band)), &steps, codes)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn a_row_reckoned_from_either_side_agrees(
        first in 80_u32..200, second in 80_u32..200, third in 80_u32..200,
        lapped in select(vec![0_u32, 15, 30]), longer in select(vec![0_u32, 0, 8]),
    ) {
        let lengths = [first, second, third];
        // Each panel and the band lose an allowance at both ends.
        let sewn: u32 = lengths.iter().map(|length| length - 20).sum::<u32>() - lapped;
        let band = sewn + 20 + longer;
        let row = "[panel_0.top, panel_1.top, panel_2.top]";
        let back = "[panel_2.top, panel_1.top, panel_0.top]";
        let one = told(&lengths, lapped, band, &format!("{row}, band.bottom"));
        prop_assert_eq!(&one, &told(&lengths, lapped, band, &format!("band.bottom, {row}")));
        prop_assert_eq!(&one, &told(&lengths, lapped, band, &format!("{back}, band.bottom")));
        prop_assert_eq!(one.contains(&"seam-lengths-differ"), longer > 0);
        prop_assert!(one.iter().all(|code| *code == "seam-lengths-differ"), "{:?}", one);
    }
}
