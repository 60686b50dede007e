//! How much cloth each layout of the demos takes, held to a recorded table.
//!
//! `NOTCHBOOK_BLESS=1` records the lengths anew.

use notchbook::measure::to_f64;

use crate::bench::{demos, root};

#[test]
fn no_layout_of_the_demos_changes_its_length_unseen() {
    let mut rows = vec!["booklet,size,fabric,width mm,length mm,buy m,buy yd".to_owned()];
    demos(|name, compiled| {
        let facts = &compiled.draft().expect("a booklet").facts;
        for (size, laid) in compiled.cloth.iter().enumerate() {
            for layout in laid {
                rows.push(format!(
                    "{name},{},{},{:.0},{:.1},{:.1},{:.3}",
                    compiled.sizes[size],
                    facts.fabrics[layout.bolt.fabric].id.text,
                    layout.bolt.width,
                    layout.length,
                    to_f64(layout.buy.expect("a length").0) / 1000.0,
                    to_f64(layout.buy.expect("a length").1) / 914.4,
                ));
            }
        }
    });
    let place = root().join("tests/sheets/lengths.csv");
    let found = format!("{}\n", rows.join("\n"));
    if std::env::var_os("NOTCHBOOK_BLESS").is_some_and(|value| value == "1") {
        std::fs::write(&place, &found).expect("the table of lengths");
    }
    let recorded = std::fs::read_to_string(&place).expect("the table of lengths");
    let lost = recorded
        .lines()
        .filter(|row| !found.lines().any(|other| other == *row))
        .map(|row| format!("- {row}"));
    let new = found
        .lines()
        .filter(|row| !recorded.lines().any(|other| other == *row))
        .map(|row| format!("+ {row}"));
    let changed: Vec<String> = lost.chain(new).collect();
    assert!(
        changed.is_empty(),
        "\n{}\nlook at the layouts, then record them with NOTCHBOOK_BLESS=1\n",
        changed.join("\n")
    );
}
