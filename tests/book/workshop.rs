//! A workshop is owned: it outlives its folder and stands beside a later one, and it is given texts that
//! nobody has saved.

use notchbook::book::Book;
use notchbook::pipeline::{Reach, Workshop};
use notchbook::sheets::SheetPaper;
use notchbook::source::{BookletFolder, Folder};

const FACTS: &str = "title: Flag\nedition: 1.0.0\nsizes: {one: One size}\nmeasurements: {side: 30 cm (11 3/4 in)}\nparts: [make.md]\n";
const WORDS: &str = "# Make\n\n## Fold {#fold}\n\nFold at {side}.\n";

fn laid_out() -> (tempfile::TempDir, BookletFolder) {
    let home = tempfile::tempdir().expect("a folder of our own");
    let path = home.path().join("flag");
    std::fs::create_dir(&path).expect("a folder");
    std::fs::write(path.join("booklet.yaml"), FACTS).expect("the facts");
    std::fs::write(path.join("make.md"), WORDS).expect("the words");
    let booklet = BookletFolder {
        name: "flag".into(),
        path: "flag".into(),
    };
    (home, booklet)
}

#[test]
fn yesterday_s_good_one_stands_beside_today_s_findings() {
    let (home, booklet) = laid_out();
    let good = {
        let folder = Folder::open(home.path()).expect("the folder");
        Workshop::open(&folder, &booklet, Reach::Checks)
    };
    std::fs::write(
        home.path().join("flag/make.md"),
        "# Make\n\n## Fold {#fold}\n\nFold at {sdie}.\n",
    )
    .expect("the words");
    let folder = Folder::open(home.path()).expect("the folder");
    let broken = Workshop::open(&folder, &booklet, Reach::Checks);
    drop((folder, home));
    assert_eq!((good.report.errors(), broken.report.errors()), (0, 1));
    let book = good.book(&good.editions()[0], SheetPaper::A4);
    assert_eq!(book.parts[0].steps[0].id, "fold");
}

#[test]
fn a_text_that_is_not_saved_goes_before_the_disk() {
    let (home, booklet) = laid_out();
    let folder = Folder::open(home.path()).expect("the folder");
    let unsaved = [("flag/make.md".into(), WORDS.replace("{side}", "{sdie}"))];
    let edited = Workshop::open(&folder.with_unsaved(unsaved), &booklet, Reach::Checks);
    let saved = Workshop::open(&folder, &booklet, Reach::Checks);
    assert_eq!((edited.report.errors(), saved.report.errors()), (1, 0));
    let mut findings = edited.report.findings.iter();
    let finding = findings
        .find(|finding| finding.code() == "unknown-name")
        .expect("the slip");
    assert_eq!(edited.sources.place(finding.span).line, 5);
}

#[test]
fn a_command_is_given_what_it_asks_for() {
    let (home, booklet) = laid_out();
    let folder = Folder::open(home.path()).expect("the folder");
    let values = Workshop::open(&folder, &booklet, Reach::Values);
    assert!(values.histories().is_empty() && values.cloth.is_empty());
    assert!(values.editions()[0].values.get("side").is_some());
    let figures = Workshop::open(&folder, &booklet, Reach::Figures);
    assert!(figures.cloth.is_empty() && figures.histories().len() == 1);
}

#[test]
fn a_book_can_be_written_out_and_read_back() {
    crate::bench::demos(|name, compiled| {
        let (books, all) = crate::shelf::books(compiled);
        for book in books.iter().chain([&all]) {
            let written = serde_json::to_string(book).expect("plain data");
            let read: Book = serde_json::from_str(&written).expect("the same data");
            assert_eq!(read.parts, book.parts, "{name}");
            assert_eq!(read.fabrics, book.fabrics, "{name}");
            let again = serde_json::to_string(&read).expect("plain data");
            assert!(again == written, "{name}: what is read back differs");
        }
    });
}
