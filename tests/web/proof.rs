//! The proof for an editor: every figure in every size, waivers with their reasons, faults and all; the page and the
//! pages on paper hold the same, and the page is as quiet as the booklet's.

use std::collections::BTreeSet;

use notchbook::book::{Block, Book, Plain, Value, each_inline, in_blocks};
use notchbook::pipeline::Workshop;
use notchbook::proof::Record;
use notchbook::sheets::SheetPaper;
use notchbook::typeset::{Paper, Press};
use serde_json::Value as Json;

use super::reader::Read;
use super::tags::{Bit, attribute, bits, words};
use super::{bench, facts, pouch};

/// The proof's page.
fn page(workshop: &Workshop) -> String {
    let proof = workshop.proof(None).expect("facts to work with");
    workshop.proof_page(&proof).expect("a page")
}

fn paper(workshop: &Workshop) -> Vec<u8> {
    let proof = workshop.proof(None).expect("facts to work with");
    let press = Press::new(&workshop.house);
    let printed = workshop.proof_pdf(&press, &proof, Paper::A4);
    printed.expect("a PDF").pdf
}

fn record(workshop: &Workshop) -> Record {
    workshop.proof(None).expect("facts to work with").record
}

/// All rows of a proof: the JSON of each.
fn rows(data: &Json, found: &mut Vec<Json>) {
    match data {
        Json::Array(items) => items.iter().for_each(|item| rows(item, found)),
        Json::Object(fields) => {
            if fields.contains_key("cells") && fields.contains_key("same") {
                found.push(data.clone());
            }
            fields.values().for_each(|value| rows(value, found));
        }
        _ => {}
    }
}

/// What the rows of a proof say of one size.
fn cells(record: &Record, size: usize) -> BTreeSet<String> {
    let data = serde_json::to_value(record).expect("plain data");
    let mut all = Vec::new();
    rows(&data, &mut all);
    let cell = |row: &Json| row["cells"][size].as_str().map(str::to_owned);
    all.iter().filter_map(cell).collect()
}

/// The figures in the words of a book of one size, as they are printed.
fn figures(book: &Book, plain: &Plain<'_>) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut take = |value: &Value| match value {
        Value::Same(amount) => found.extend([plain.amount(amount)]),
        Value::Each(each) => found.extend([plain.amount(&each[0].amount)]),
    };
    let mut blocks: Vec<&[Block]> = vec![&book.read_first, &book.care, &book.terms];
    blocks.extend(book.cautions.iter().map(|one| one.content.as_slice()));
    blocks.extend(book.words.iter().map(|one| one.meaning.as_slice()));
    blocks.extend(book.record.iter().map(|one| one.changes.as_slice()));
    blocks.extend(
        book.fabrics
            .iter()
            .flat_map(|one| [one.note.as_slice(), &one.instead]),
    );
    blocks.extend(
        book.notions
            .iter()
            .flat_map(|one| [one.note.as_slice(), &one.instead]),
    );
    blocks.extend(
        book.cuts
            .iter()
            .flat_map(|list| list.rows.iter().map(|row| row.note.as_slice())),
    );
    let mut see = |inline: &notchbook::book::Inline| {
        if let notchbook::book::Inline::Value { value } = inline {
            take(value);
        }
    };
    for part in &book.parts {
        each_inline(&part.title, &mut see);
        blocks.push(&part.intro);
        for step in &part.steps {
            each_inline(&step.title, &mut see);
            step.figure
                .iter()
                .for_each(|picture| each_inline(&picture.alt, &mut see));
            blocks.push(&step.body);
            blocks.extend(step.seam.iter().map(|fact| fact.note.as_slice()));
        }
    }
    blocks
        .into_iter()
        .for_each(|blocks| in_blocks(blocks, &mut see));
    for fact in book
        .parts
        .iter()
        .flat_map(|part| &part.steps)
        .flat_map(|step| &step.seam)
    {
        let own = [
            &fact.allowance,
            &fact.stitch,
            &fact.leave,
            &fact.ease,
            &fact.gather,
            &fact.gap,
            &fact.up,
            &fact.lap,
        ];
        own.into_iter().flatten().for_each(&mut take);
    }
    found
}

#[test]
fn every_figure_is_in_the_proof_with_its_value_in_each_size_and_where_it_comes_from() {
    let mut compared = 0;
    let mut wrong = Vec::new();
    bench::demos(|name, workshop| {
        let record = record(workshop);
        let house = workshop.house_words();
        for row in rootless(&record, workshop) {
            wrong.push(format!("{name}: where does it come from? {row}"));
        }
        for edition in workshop.editions() {
            let book = workshop.book(edition, SheetPaper::A4);
            let plain = Plain {
                book: &book,
                house: &house,
            };
            let told = cells(&record, edition.size());
            let wanted = figures(&book, &plain);
            compared += wanted.len();
            let missing: Vec<_> = wanted.difference(&told).collect();
            if !missing.is_empty() {
                wrong.push(format!("{name}, {}: {missing:?}", edition.size_name()));
            }
        }
    });
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(compared > 300, "{compared} figures compared");
}

/// Rows that do not say where their figures come from, or name a file or a line that there is not.
fn rootless(record: &Record, workshop: &Workshop) -> Vec<String> {
    let data = serde_json::to_value(record).expect("plain data");
    let mut all = Vec::new();
    rows(&data, &mut all);
    let known = |origin: &Json| {
        let place = origin["place"].as_str().expect("a place");
        let (file, line) = place.rsplit_once(':').unwrap_or((place, "1"));
        let mut files = workshop.sources.ids().map(|id| workshop.sources.file(id));
        let file = files.find(|known| known.path.ends_with(file));
        let line = line.parse::<usize>().ok().zip(file);
        line.is_some_and(|(line, file)| file.line_range(line).is_some())
    };
    let rooted = |row: &Json| {
        let from = row["from"].as_array().expect("origins");
        !from.is_empty() && from.iter().all(known)
    };
    let rootless = all.iter().filter(|row| !rooted(row));
    rootless.map(Json::to_string).collect()
}

/// Words without spaces, since lines of cells end where they may.
fn run_on(text: &str) -> String {
    text.split_whitespace().collect()
}

#[test]
fn the_page_and_the_pages_on_paper_hold_the_same() {
    let same = |name: &str, workshop: &Workshop| {
        let html = run_on(&words(&bits(&page(workshop))));
        let read = Read::of(&paper(workshop));
        let pdf = run_on(&read.text());
        let record = record(workshop);
        let mut missing = Vec::new();
        for size in 0..workshop.sizes.len() {
            for cell in cells(&record, size) {
                let cell = run_on(&cell);
                if !html.contains(&cell) || !pdf.contains(&cell) {
                    missing.push((html.contains(&cell), pdf.contains(&cell), cell));
                }
            }
        }
        assert!(
            missing.is_empty(),
            "{name}: on the page, on paper: {missing:?}"
        );
        for row in &record.unchecked {
            assert!(html.contains(&run_on(&row.what)), "{name}: {}", row.what);
            assert!(pdf.contains(&run_on(&row.what)), "{name}: {}", row.what);
        }
    };
    bench::demo("orchard-apron", |workshop| same("orchard-apron", workshop));
    pouch(&[], |workshop| same("pouch", workshop));
}

#[test]
fn a_waiver_stands_with_its_reason_and_what_it_takes_away() {
    let path = bench::root().join("tests/checks/_base/make.md");
    let base = std::fs::read_to_string(path).expect("the base's steps");
    let steps = base.replace(
        "Hem the top edges.",
        "<!-- waive loose-measurement: a thumb is near enough -->\n\nHem the top edges by 5 mm.",
    );
    pouch(&[("make.md", &steps)], |workshop| {
        let record = record(workshop);
        let waiver = record
            .waivers
            .iter()
            .find(|one| one.code == "loose-measurement");
        let waiver = waiver.expect("the waiver");
        assert_eq!(waiver.reason, "a thumb is near enough");
        assert_eq!(waiver.findings.len(), 1, "{waiver:?}");
        assert!(waiver.findings[0].message.contains("5 mm"), "{waiver:?}");
        assert!(waiver.place.starts_with("make.md:"), "{}", waiver.place);
        let html = words(&bits(&page(workshop)));
        assert!(html.contains("a thumb is near enough"));
        let pdf = run_on(&Read::of(&paper(workshop)).text());
        assert!(pdf.contains("athumbisnearenough"));
        // A figure that is typed by hand is marked as such.
        let typed = record.steps.iter().flat_map(|step| &step.sentences);
        let typed = typed
            .flat_map(|one| &one.readings)
            .flat_map(|one| &one.rows);
        assert!(typed.clone().any(|row| row.typed && row.name == "5 mm"));
    });
}

#[test]
fn errors_stand_in_the_proof_and_do_not_stop_it() {
    let own = facts(&[(
        "  width: [15 cm (5 7/8 in), 20 cm",
        "  width: [15 cm (9 in), 20 cm",
    )]);
    pouch(&[("booklet.yaml", &own)], |workshop| {
        assert!(workshop.report.errors() > 0);
        let record = record(workshop);
        assert_eq!(record.counts.errors, workshop.report.errors());
        let found = record
            .findings
            .iter()
            .find(|one| one.code == "both-systems-disagree");
        assert_eq!(found.expect("the finding").sizes, ["Small"]);
        assert!(words(&bits(&page(workshop))).contains("both-systems-disagree"));
        assert!(!paper(workshop).is_empty());
    });
}

#[test]
fn a_fault_of_one_size_stands_in_that_size_alone() {
    let own = facts(&[
        (
            "  seam: 1 cm (3/8 in)\n",
            "  seam: 1 cm (3/8 in)\n  side_seam: [1 cm (3/8 in), 1.5 cm (5/8 in)]\n",
        ),
        (
            "allowance: {all: seam}",
            "allowance: {all: seam, left: side_seam}",
        ),
    ]);
    pouch(&[("booklet.yaml", &own)], |workshop| {
        let record = record(workshop);
        let side = record
            .allowances
            .iter()
            .find(|table| table.rows.iter().any(|row| row.name == "left"));
        let left = side
            .and_then(|table| table.rows.iter().find(|row| row.name == "left"))
            .expect("the edge");
        assert_eq!(left.same, None);
        assert_eq!(left.cells[0].as_deref(), Some("1 cm (3/8 in)"));
        assert_eq!(left.cells[1].as_deref(), Some("1.5 cm (5/8 in)"));
        let sew = record
            .steps
            .iter()
            .find(|step| step.id == "sew")
            .expect("the step");
        let edge = sew
            .edges
            .iter()
            .find(|row| row.edges.iter().any(|edge| edge.contains("left")))
            .expect("the edge at its step");
        assert!(edge.apart && edge.differs, "{edge:?}");
        // The checks found it in that size: so does the matrix.
        let row = record.matrix.iter().find(|row| {
            row.checks
                .iter()
                .any(|check| check.code == "allowance-differs")
        });
        let check = row.and_then(|row| {
            row.checks
                .iter()
                .find(|check| check.code == "allowance-differs")
        });
        let verdicts: Vec<usize> = check
            .expect("the check")
            .cells
            .iter()
            .flatten()
            .map(|one| one.found)
            .collect();
        assert_eq!(verdicts, [0, 1]);
    });
}

#[test]
fn a_proof_is_the_same_every_time() {
    let made = || pouch(&[], |workshop| (page(workshop), paper(workshop)));
    let (first, second) = (made(), made());
    assert!(first == second, "two proofs of one booklet differ");
}

/// Words that would do something if they were read as marks.
const LOUD: &str =
    "</script><script>alert(1)</script><img src=x onerror=alert(2)>\\\"'&lt;</style>";

#[test]
fn what_an_author_writes_is_words_in_the_proof_and_nothing_is_asked_for() {
    let made = |words: &str| {
        let own = facts(&[
            (
                "title: Tide Pouch",
                &format!("title: \"{words}\"\nsummary: \"{words} 7\""),
            ),
            ("name: Small", &format!("name: \"Small {words}\"")),
            ("name: Cotton", &format!("name: \"{words}\"")),
            ("  Width: width", &format!("  \"Width {words}\": width")),
            ("changes: First edition.", &format!("changes: \"{words}\"")),
        ]);
        pouch(&[("booklet.yaml", &own)], page)
    };
    let (plain, loud) = (made("Quiet words"), made(LOUD));
    assert!(
        loud.contains("&lt;script&gt;alert(1)"),
        "the words are not there"
    );
    let tags = |html: &str| -> Vec<String> {
        let name = |bit: Bit| match bit {
            Bit::Open(name, _) => Some(name),
            _ => None,
        };
        bits(html).into_iter().filter_map(name).collect()
    };
    let scripts = |html: &str| tags(html).iter().filter(|tag| *tag == "script").count();
    assert_eq!((scripts(&plain), scripts(&loud)), (1, 1));
    assert!(
        tags(&loud).iter().filter(|tag| *tag == "img").count()
            == tags(&plain).iter().filter(|tag| *tag == "img").count()
    );
    let mut policies = 0;
    for bit in bits(&loud) {
        let Bit::Open(tag, attributes) = bit else {
            continue;
        };
        for (key, value) in &attributes {
            assert!(!key.starts_with("on") && key != "style", "<{tag} {key}>");
            match key.as_str() {
                "src" => assert!(value.starts_with("data:image/"), "{value}"),
                "href" => assert!(value.starts_with('#'), "{value}"),
                _ => {}
            }
        }
        if attribute(&attributes, "http-equiv").is_some() {
            let policy = attribute(&attributes, "content").expect("a policy");
            assert!(
                policy.starts_with("default-src 'none'; img-src data:; "),
                "{policy}"
            );
            policies += 1;
        }
    }
    assert_eq!(policies, 1);
}
