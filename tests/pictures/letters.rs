//! Words of a drawing with their edges beneath them: the same picture for a reader that paints a word whole, and no edge
//! left at a letter for one that paints letter by letter.

use std::sync::Arc;

use image::load_from_memory;
use notchbook::figure::{Letters, fonts, to_png};

use crate::bench::demo;
use crate::compare;

#[test]
fn edges_lie_beneath_whole_words() {
    demo("harbour-lunch-bag", |compiled| {
        let (database, _) = fonts(&compiled.house);
        let letters = Letters::new(&compiled.house);
        let mut words = 0;
        for (_, figure) in compiled.figures.of_size(0).take(12) {
            let made = letters.edges_beneath(&figure.svg);
            let [one, other] = [&figure.svg, &made].map(|svg| {
                let png = to_png(svg, &Arc::clone(&database), 5.0).expect("a picture");
                load_from_memory(&png).expect("a PNG").to_rgb8()
            });
            let (mean, share, _) = compare(&other, &one);
            assert!(mean < 0.05 && share < 0.0005, "{mean} {share}");
            let document = roxmltree::Document::parse(&made).expect("well-formed");
            for text in document
                .descendants()
                .filter(|node| node.has_tag_name("text"))
            {
                words += 1;
                let style = text.attribute("style").unwrap_or_default();
                assert!(style.ends_with("stroke:none"), "{style}");
                let edges = text.prev_sibling_element().expect("its edges");
                assert!(edges.children().all(|edge| edge.has_tag_name("path")));
            }
        }
        assert!(words > 20, "{words} words");
    });
}
