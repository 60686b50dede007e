//! Contrast of colours: WCAG 2.2 (W3C Recommendation), "relative luminance" and "contrast ratio".

use notchbook::checks::{LEAST, contrast, luminance};

use crate::bench::written;

fn colour(hex: &str) -> [u8; 3] {
    [0, 2, 4].map(|at| u8::from_str_radix(&hex[at..at + 2], 16).expect("two hexadecimal digits"))
}

/// Contrast against white. The ends of the scale are WCAG 2.2's own words ("1 to 21"); the others
/// were worked out by the library wcag-contrast-ratio (PyPI, 0.9), rounded to four places.
const ON_WHITE: &[(&str, f64)] = &[
    ("000000", 21.0),
    ("ffffff", 1.0),
    ("767676", 4.5422),
    ("777777", 4.4781),
    ("ff0000", 3.9985),
    ("008000", 5.1374),
    ("0000ff", 8.5925),
    ("ffff00", 1.0738),
    ("808080", 3.9494),
    ("949494", 3.0335),
    // Dark enough to stand on the straight piece of the curve.
    ("0a0a0a", 19.7981),
];

#[test]
fn contrast_is_that_of_wcag() {
    for (hex, expected) in ON_WHITE {
        let found = contrast(colour(hex), [255; 3]);
        assert!(
            (found - expected).abs() < 0.0001,
            "#{hex}: {found}, not {expected}"
        );
        assert!(
            (contrast([255; 3], colour(hex)) - found).abs() < 1e-12,
            "#{hex}: it hangs on the order"
        );
    }
}

/// WCAG 2.2, "relative luminance": 0 for black, 1 for white, and the weights of the three lights.
#[test]
fn luminance_is_that_of_wcag() {
    for (hex, expected) in [
        ("000000", 0.0),
        ("ffffff", 1.0),
        ("ff0000", 0.2126),
        ("00ff00", 0.7152),
        ("0000ff", 0.0722),
    ] {
        assert!((luminance(colour(hex)) - expected).abs() < 1e-9, "#{hex}");
    }
}

/// WCAG 2.2, success criterion 1.4.3: 4.5 to 1. #767676 is the palest grey that passes on white.
#[test]
fn the_check_draws_the_line_where_wcag_does() {
    assert!((LEAST - 4.5).abs() < 1e-12);
    for (accent, fires) in [("#767676", false), ("#777777", true)] {
        let facts = format!(
            "title: Pouch\nedition: 1.0.0\nsizes: {{one: One size}}\nstyle: {{accent: \"{accent}\"}}\nparts: [make.md]\n"
        );
        let part = "# Make it\n\n## Look at it {#look}\n\nIt is done.\n";
        written(&[("booklet.yaml", &facts), ("make.md", part)], |compiled| {
            let found = compiled
                .report
                .findings
                .iter()
                .any(|finding| finding.code() == "contrast-too-low");
            assert_eq!(found, fires, "{accent}");
        });
    }
}
