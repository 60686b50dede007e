//! What is bought is what is cut, and what is cut is what the steps use: in every size of every view, and in the booklet
//! of all.

use notchbook::book::Book;
use notchbook::pipeline::Workshop;
use proptest::prelude::*;

use crate::bench::written;

/// A pattern of two things made at random: the first in two sizes, the second in one.
#[derive(Debug, Clone)]
struct Pattern {
    /// How long a strap is in each size, in mm.
    strap: [u32; 3],
    straps: u32,
    /// How long a tie is, which the second thing has alone.
    tie: u32,
    ties: u32,
    /// How many tags each of the two has.
    tags: [u32; 2],
}

fn patterns() -> impl Strategy<Value = Pattern> {
    (
        [60_u32..900, 60..900, 60..900],
        1_u32..5,
        60_u32..900,
        1_u32..4,
        [1_u32..5, 1..5],
    )
        .prop_map(|(strap, straps, tie, ties, tags)| Pattern {
            strap,
            straps,
            tie,
            ties,
            tags,
        })
}

impl Pattern {
    fn facts(&self) -> String {
        let [one, two, three] = self.strap;
        let [first, second] = self.tags;
        format!(
            "title: Sample\nedition: 1.0.0\nsizes: {{one: One, two: Two, three: Three}}\n\
             views:\n  a: {{name: First, sizes: [one, two]}}\n  b: {{name: Second, sizes: [three]}}\n\
             measurements:\n  long: {{one: {one} mm, two: {two} mm, three: {three} mm}}\n\
             fabrics: {{outer: {{name: Cotton, widths: [110 cm]}}}}\n\
             notions:\n  thread: {{kind: thread, name: Thread}}\n  webbing:\n    kind: tape\n    name: Webbing\n    width: 3 cm\n    cut:\n      \
             strap: {{length: long, count: {}, raw: all}}\n  \
             tape: {{kind: tape, name: Tape, for: b, width: 2 cm, cut: {{tie: {{length: {} mm, count: {}, raw: all}}}}}}\n\
             pieces:\n  body: {{outline: {{rectangle: [40 cm, 30 cm]}}, raw: all, cut: {{outer: 2}}}}\n  \
             tag: {{outline: {{rectangle: [6 cm, 4 cm]}}, raw: all, cut: {{outer: {{a: {first}, b: {second}}}}}}}\n\
             parts: [make.md]\n",
            self.straps, self.tie, self.ties
        )
    }

    /// How many of each piece a size needs, and of which length its tapes are, in mm.
    fn needs(&self, size: usize) -> Vec<(&'static str, u32, Option<u32>)> {
        let mut needs = vec![
            ("body", 2, None),
            ("tag", self.tags[usize::from(size == 2)], None),
            ("strap", self.straps, Some(self.strap[size])),
        ];
        if size == 2 {
            needs.push(("tie", self.ties, Some(self.tie)));
        }
        needs
    }
}

const WORK: &str = "# Make it\n\n## Make it {#make}\n\n```work\n- cut: all\n- {topstitch: [strap, body], stitch: 3 mm}\n\
    - {topstitch: [tag, body], stitch: 3 mm}\n```\n\nCut it and sew it.\n\n## Tie it {#tie for=b}\n\n```work\n\
    - {topstitch: [tie, body], stitch: 3 mm}\n```\n\nSew the tie on.\n";

/// How much of a notion one column says, in mm; `None` where it has none.
fn bought(book: &Book, id: &str, column: usize) -> Option<u32> {
    let need = book.notions.iter().find(|need| need.id == id)?;
    let amount = need.amounts[column].as_ref()?.amount.as_ref()?;
    Some(amount.exact.value.parse().expect("whole millimetres"))
}

/// How many of a piece one column says.
fn cut(book: &Book, id: &str, column: usize) -> u32 {
    let rows = book.cuts.iter().flat_map(|list| &list.rows);
    let own = rows.filter(|row| row.id == id && row.dimensions[column].is_some());
    own.map(|row| row.count).sum()
}

/// What a size buys of tape: all lengths end to end and 5 cm to spare, up to the next decimetre.
fn with_spare(pattern: &Pattern, size: usize, id: &str) -> Option<u32> {
    let needs = pattern.needs(size);
    let (_, count, long) = needs.iter().find(|(own, ..)| *own == id)?;
    Some((long.expect("a length of tape") * count + 50).div_ceil(100) * 100)
}

fn checked(compiled: &Workshop, pattern: &Pattern) -> Result<(), TestCaseError> {
    let told: Vec<&str> = compiled
        .report
        .findings
        .iter()
        .map(|finding| finding.code())
        .collect();
    let broken = told
        .iter()
        .any(|code| ["piece-not-cut", "copy-unused", "reference-left-out"].contains(code));
    prop_assert!(!broken, "{told:?}");
    let (books, all) = crate::shelf::books(compiled);
    for (size, book) in books.iter().enumerate() {
        let needs = pattern.needs(size);
        let copies = compiled.editions()[size].cast.copies().count();
        let wanted: u32 = needs.iter().map(|(_, count, _)| count).sum();
        prop_assert_eq!(copies, wanted as usize, "copies in size {}", size);
        for (id, count, _) in &needs {
            prop_assert_eq!(cut(book, id, 0), *count, "{} in size {}", id, size);
            prop_assert_eq!(
                cut(&all, id, size),
                *count,
                "{} in the column of {}",
                id,
                size
            );
        }
        prop_assert_eq!(
            cut(&all, "tie", size),
            if size == 2 { pattern.ties } else { 0 }
        );
        for (notion, piece) in [("webbing", "strap"), ("tape", "tie")] {
            let wanted = with_spare(pattern, size, piece);
            prop_assert_eq!(
                bought(book, notion, 0),
                wanted,
                "{} in size {}",
                notion,
                size
            );
            prop_assert_eq!(
                bought(&all, notion, size),
                wanted,
                "{} in the column of {}",
                notion,
                size
            );
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn what_is_bought_is_what_is_cut_and_used(pattern in patterns()) {
        let facts = pattern.facts();
        written(&[("booklet.yaml", &facts), ("make.md", WORK)], |compiled| checked(compiled, &pattern))?;
    }
}
