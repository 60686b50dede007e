//! Stitch lengths as they are printed in the words of a step.

use notchbook::resolve::{Block as Printed, Inline};

use crate::support::booklet::with_compiled;
use crate::support::chapter::Block;

/// The words of the last step in the first size.
fn last_step(words: &str) -> String {
    with_compiled(&[&Block::new("+make.md", words)], |compiled| {
        let steps = compiled
            .editions()
            .iter()
            .flat_map(|edition| &edition.parts)
            .flat_map(|part| &part.steps);
        let step = steps.last().expect("a step");
        let paragraphs = step.body.iter().filter_map(|block| match block {
            Printed::Paragraph { content } => Some(Inline::plain(content)),
            _ => None,
        });
        paragraphs
            .collect::<Vec<_>>()
            .join("\n")
            .replace('\u{a0}', " ")
    })
}

#[test]
fn a_typed_stitch_length_is_told_in_stitches_and_a_distance_in_inches() {
    let words = last_step(
        "## Finish the edge {#edge}\n\n```work\n- {topstitch: front.top, stitch: 3 mm}\n```\n\n\
         Sew with stitches of {3 mm}, {3 mm} from the edge, trimmed to {3 mm}, then with a {4 mm} stitch.\n",
    );
    // 25.4 mm to the inch by definition: 25.4 / 3 is 8.47 stitches.
    assert_eq!(
        words,
        "Sew with stitches of 3 mm (8 stitches per inch), 3 mm (1/8 in) from the edge, trimmed to 3 mm (1/8 in), then with a 4 mm (6 stitches per inch) stitch."
    );
}
