//! What stands on a cutting layout, so that cloth can be laid by it alone: its width and the length that the pieces
//! take, its fold and its selvedges, which side lies up, and the name or the number of every piece.

use notchbook::sheets::SheetPaper;

use crate::bench::demos;

#[test]
fn a_layout_says_how_the_cloth_lies() {
    let (mut looked, mut folded, mut wrong) = (0, 0, Vec::new());
    demos(|name, compiled| {
        let facts = &compiled.draft().expect("a booklet").facts;
        for edition in compiled.editions() {
            let book = compiled.book(edition, SheetPaper::A4);
            for layout in &book.layouts {
                looked += 1;
                let drawing = &book.drawings[&layout.drawing];
                let document = roxmltree::Document::parse(&drawing.svg).expect("a drawing");
                let nodes = document.descendants();
                let texts: Vec<&str> = nodes.filter_map(|node| node.text()).collect();
                let says = |words: &str| texts.iter().any(|text| text.contains(words));
                let fabric = facts.fabrics.iter().find(|one| one.id.text == layout.id);
                let mut needed = vec!["selvedge"];
                if !fabric.expect("a fabric").grainless {
                    needed.push("grain");
                    needed.push(if layout.folded {
                        "wrong side up"
                    } else {
                        "right side up"
                    });
                }
                if layout.folded {
                    folded += 1;
                    needed.push("fold of the cloth");
                }
                let missing = needed.into_iter().filter(|words| !says(words));
                wrong.extend(missing.map(|words| format!("{name}, {}: no “{words}”", layout.name)));
                let width = layout.width.as_ref().expect("a width");
                let number = width.first.number.replace('\u{a0}', " ");
                if !says(&number) {
                    wrong.push(format!(
                        "{name}, {}: its width of {number} is not told",
                        layout.name
                    ));
                }
            }
        }
    });
    assert!(
        looked > 20 && folded > 2,
        "{looked} layouts, {folded} folded"
    );
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}
