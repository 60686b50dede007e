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

/// What is found when a band, folded or not, lies in a row with a panel against a facing.
fn ended(high: u32, folded: bool, facing: u32) -> Vec<&'static str> {
    let piece = |name: &str, wide: u32, high: u32| {
        format!(
            "  {name}:\n    outline: {{rectangle: [{wide} mm, {high} mm]}}\n    allowance: {{all: 10 mm}}\n    \
             raw: all\n    cut: {{outer: 1}}\n"
        )
    };
    let pieces =
        piece("panel", 400, 300) + &piece("band", 400, high) + &piece("facing", 60, facing);
    let fold = if folded {
        "- fold: [band, in half lengthwise]\n"
    } else {
        ""
    };
    let sew =
        "- sew: [[panel.right, band.right], facing.left]\n  allowance: 10 mm\n  stitch: 2.5 mm\n";
    sewn_up(
        "",
        &pieces,
        &["- cut: all\n".to_owned(), format!("{fold}{sew}")],
        codes,
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn a_folded_band_behaves_as_one_cut_to_what_is_left(
        half in 20_u32..60, longer in select(vec![0_u32, 0, 9]),
    ) {
        // The panel loses an allowance at both ends; so does a band, folded at one end of its half only.
        let facing = 280 + half + 20 + longer;
        let folded = ended(2 * half + 20, true, facing);
        prop_assert_eq!(&folded, &ended(half + 20, false, facing));
        prop_assert_eq!(folded.contains(&"seam-lengths-differ"), longer > 0);
    }
}
