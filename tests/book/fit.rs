//! The tables of sizes: body, finished measurements with their ease, and notions, in one size and in all.

use notchbook::book::{Amount, Book, MeasureRow, Written};
use notchbook::measure::{Exact, read_measure};
use notchbook::sheets::SheetPaper;
use proptest::prelude::*;

use crate::bench::written;

/// The books of three sizes and the one of all.
fn books(facts: &str) -> (Vec<Book>, Book) {
    let head = "title: Meadow Frock\nedition: 1.0.0\nsizes: {8: \"8\", 10: \"10\", 12: \"12\"}\nparts: [make.md]\n";
    let facts = format!("{head}{facts}");
    let words = "# Make\n\n## Sew {#sew}\n\nSew it.\n";
    written(
        &[("booklet.yaml", &facts), ("make.md", words)],
        |compiled| {
            let editions = compiled.editions().iter();
            let books: Vec<Book> = editions
                .map(|edition| compiled.book(edition, SheetPaper::A4))
                .collect();
            let merged = compiled.book_of_all(&books, SheetPaper::A4);
            (books, merged.expect("a book of all sizes"))
        },
    )
}

/// The one figure of a row in a book of one size.
fn own(row: &MeasureRow) -> &Amount {
    row.values[0].as_ref().expect("a figure")
}

fn value(figure: &Written) -> Exact {
    let written = format!("{} {}", figure.number, figure.unit).replace('\u{a0}', " ");
    let measure = read_measure(&written).expect("a printed figure reads as a figure");
    measure.first.quantity.value
}

fn lengths(millimetres: [u32; 3]) -> String {
    let each = millimetres.map(|length| format!("{length} mm"));
    format!("[{}]", each.join(", "))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// A maker who knows one system alone adds the ease to the body and has the finished measurement; and
    /// the table of all sizes holds what the booklets of one size hold.
    #[test]
    fn ease_closes_in_each_system_and_in_all_sizes(
        body in prop::array::uniform3(500_u32..1500),
        more in prop::array::uniform3(0_u32..300),
    ) {
        let finished = [0, 1, 2].map(|at| body[at] + more[at]);
        let facts = format!(
            "body:\n  Waist: 70 cm (27 1/2 in)\n  Bust: {}\nfinished:\n  Chest: {{value: {}, over: Bust}}\n  Length: 1 m\n",
            lengths(body),
            lengths(finished),
        );
        let (books, merged) = books(&facts);
        for (at, book) in books.iter().enumerate() {
            let names: Vec<&str> = book.body.iter().map(|row| row.name.as_str()).collect();
            prop_assert_eq!(names, ["Waist", "Bust"]);
            let chest = &book.finished[0];
            let ease = chest.ease.as_ref().expect("ease over the bust");
            prop_assert_eq!(&ease.name, "Bust");
            prop_assert!(book.finished[1].ease.is_none());
            let [bust, whole, ease] = [&book.body[1], &chest.measure, ease].map(own);
            prop_assert_eq!(&ease.exact.value, &more[at].to_string());
            for system in [|one: &Amount| Some(one.first.clone()), |one: &Amount| one.second.clone()] {
                let [bust, whole, ease] = [bust, whole, ease].map(|one| system(one).map(|figure| value(&figure)));
                prop_assert_eq!(bust.zip(ease).and_then(|(bust, ease)| bust.checked_add(ease)), whole);
            }
            prop_assert_eq!(&merged.body[1].values[at], &book.body[1].values[0]);
            prop_assert_eq!(&merged.finished[0].measure.values[at], &chest.measure.values[0]);
            let merged = merged.finished[0].ease.as_ref().expect("ease in all sizes");
            prop_assert_eq!(merged.values[at].as_ref(), Some(ease));
        }
    }
}

#[test]
fn notions_keep_every_figure_in_all_sizes() {
    let facts = "measurements:\n  front: [30 cm, 35 cm, 42 cm]\nnotions:\n  \
        buttons: {kind: button, size: 18 mm (11/16 in), count: \"up(front / 8 cm, 1)\"}\n  \
        elastic: {kind: elastic, for: [10, 12], width: 2 cm, length: \"front * 2\", amount: 2 m, count: 1}\n";
    let (books, merged) = books(facts);
    let counts: Vec<Option<u32>> = merged.notions[0]
        .amounts
        .iter()
        .map(|amount| amount.as_ref().and_then(|amount| amount.count))
        .collect();
    assert_eq!(counts, [Some(4), Some(5), Some(6)]);
    assert_eq!(books[0].notions.len(), 1);
    assert!(merged.notions[1].amounts[0].is_none());
    for at in [1, 2] {
        let own = books[at].notions[1].amounts[0].as_ref();
        assert_eq!(merged.notions[1].amounts[at].as_ref(), own);
        let own = own.expect("elastic");
        let figures = [&own.length, &own.width, &own.amount, &own.size];
        assert_eq!(figures.map(Option::is_some), [true, true, true, false]);
    }
}
