//! The PDFs of all demo booklets, held against ISO 32000-1 (PDF), ISO 14289-1 (PDF/UA-1), ISO 216
//! and ANSI/ASME Y14.1 (papers), as lopdf reads them back.

use std::sync::LazyLock;

use notchbook::model::Size;
use notchbook::typeset::Paper;

use crate::bench::{demo, demos, print};
use crate::reader::Read;

/// A booklet as printed, and what the data says of it.
struct Made {
    name: String,
    paper: Paper,
    title: String,
    language: String,
    /// The headings of parts and steps, in order.
    headings: Vec<String>,
    /// How many diagrams the steps show.
    diagrams: usize,
    pdf: Read,
}

static MADE: LazyLock<Vec<Made>> = LazyLock::new(|| {
    let mut made = Vec::new();
    demos(|name, compiled| {
        for edition in compiled.editions() {
            let facts = &edition.draft.facts;
            let plain = notchbook::resolve::Inline::plain;
            let headings = edition.parts.iter().flat_map(|part| {
                let steps = part.steps.iter().map(|step| plain(&step.title));
                std::iter::once(plain(&part.title)).chain(steps)
            });
            let headings: Vec<String> = headings.collect();
            for paper in [Paper::A4, Paper::Letter] {
                made.push(Made {
                    name: format!("{name}, {}, {}", edition.size_facts().name, paper.name()),
                    paper,
                    title: [facts.title.text.as_str()]
                        .into_iter()
                        .chain(named(edition.size_facts()))
                        .collect::<Vec<_>>()
                        .join(", "),
                    language: facts.language.text.clone(),
                    headings: headings.clone(),
                    diagrams: edition.figure_uses().len(),
                    pdf: Read::of(&print(compiled, edition.size(), paper)),
                });
            }
        }
    });
    made
});

/// A size by its own name, behind that of its thing where the pattern is for several.
fn named(size: &Size) -> Vec<&str> {
    let view = size.view.as_ref().map(|view| view.name.text.as_str());
    let view = view.filter(|view| *view != size.name);
    view.into_iter().chain([size.name.as_str()]).collect()
}

/// Holds every booklet against one rule.
fn each(rule: impl Fn(&Made) -> Result<(), String>) {
    assert!(MADE.len() >= 22, "only {} booklets were made", MADE.len());
    let wrong: Vec<String> = MADE
        .iter()
        .filter_map(|made| {
            rule(made)
                .err()
                .map(|fault| format!("{}: {fault}", made.name))
        })
        .collect();
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

fn that(holds: bool, otherwise: impl Into<String>) -> Result<(), String> {
    if holds { Ok(()) } else { Err(otherwise.into()) }
}

/// ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: size A is 8.5 × 11 in; 1 in is 25.4 mm.
#[test]
fn pages_have_the_size_of_their_paper() {
    each(|made| {
        let [width, height] = match made.paper {
            Paper::A4 => [210.0, 297.0],
            Paper::Letter => [8.5 * 25.4, 11.0 * 25.4],
            other => return Err(format!("no size is known of {}", other.name())),
        };
        let pages = made.pdf.pages();
        that(pages.len() > 4, format!("only {} pages", pages.len()))?;
        let wrong = pages
            .iter()
            .find(|page| (page[0] - width).abs() > 0.01 || (page[1] - height).abs() > 0.01);
        that(
            wrong.is_none(),
            format!("a page of {wrong:?} mm, not {width} × {height}"),
        )
    });
}

/// ISO 32000-1, 12.2: `PrintScaling` `None` keeps a viewer from shrinking the page; `DisplayDocTitle`
/// shows the title instead of the file's name, which ISO 14289-1, 7.1, demands.
#[test]
fn the_viewer_is_told_not_to_scale_and_to_show_the_title() {
    each(|made| {
        let wishes = made
            .pdf
            .dictionary(made.pdf.catalog(), "ViewerPreferences")
            .ok_or("no viewer preferences")?;
        that(
            made.pdf.name(wishes, "PrintScaling") == Some(b"None"),
            "printers may scale it",
        )?;
        let shown = made
            .pdf
            .get(wishes, "DisplayDocTitle")
            .and_then(|shown| shown.as_bool().ok());
        that(shown == Some(true), "the title is not shown")
    });
}

/// ISO 14289-1, 5 and 7.1: it says that it is PDF/UA-1, is marked as tagged, and has a structure.
#[test]
fn it_is_tagged() {
    each(|made| {
        let catalog = made.pdf.catalog();
        let mark = made
            .pdf
            .dictionary(catalog, "MarkInfo")
            .ok_or("no MarkInfo")?;
        let marked = made
            .pdf
            .get(mark, "Marked")
            .and_then(|marked| marked.as_bool().ok());
        that(marked == Some(true), "it is not marked as tagged")?;
        let tree = made
            .pdf
            .dictionary(catalog, "StructTreeRoot")
            .ok_or("no structure")?;
        that(
            made.pdf.get(tree, "K").is_some() && made.pdf.get(tree, "ParentTree").is_some(),
            "the structure is empty",
        )?;
        let about = made
            .pdf
            .get(catalog, "Metadata")
            .and_then(|about| about.as_stream().ok())
            .ok_or("no metadata")?;
        let about = about
            .get_plain_content()
            .map_err(|error| error.to_string())?;
        let about = String::from_utf8_lossy(&about);
        that(
            about.contains("<pdfuaid:part>1</pdfuaid:part>"),
            "it does not say that it is PDF/UA-1",
        )
    });
}

/// ISO 14289-1, 7.2 (language), 7.1 (title), and ISO 32000-1, 14.3.3 (`Title` of the information).
#[test]
fn it_tells_its_language_and_its_title() {
    each(|made| {
        let language = made
            .pdf
            .words(made.pdf.catalog(), "Lang")
            .ok_or("no language")?;
        that(
            language == made.language,
            format!("its language is {language}"),
        )?;
        let about = made
            .pdf
            .dictionary(&made.pdf.document.trailer, "Info")
            .ok_or("no information")?;
        let title = made.pdf.words(about, "Title").ok_or("no title")?;
        that(title == made.title, format!("its title is “{title}”"))
    });
}

/// ISO 32000-1, 12.3.3: bookmarks lead to every part and every step, in order.
#[test]
fn bookmarks_lead_to_every_part_and_step() {
    each(|made| {
        let mut bookmarks = made.pdf.bookmarks().into_iter();
        for heading in &made.headings {
            let found = bookmarks
                .any(|(_, title)| title.replace('\u{a0}', " ").ends_with(heading.as_str()));
            that(
                found,
                format!("no bookmark for “{heading}”, or out of order"),
            )?;
        }
        Ok(())
    });
}

/// ISO 14289-1, 7.3: every figure in the structure has words that stand for it.
#[test]
fn every_diagram_has_words_that_stand_for_it() {
    each(|made| {
        let figures: Vec<_> = made
            .pdf
            .dictionaries()
            .filter(|dictionary| made.pdf.name(dictionary, "S") == Some(b"Figure"))
            .collect();
        that(
            figures.len() >= made.diagrams,
            format!(
                "{} of {} diagrams are in the structure",
                figures.len(),
                made.diagrams
            ),
        )?;
        let silent = figures.iter().filter(|figure| {
            made.pdf
                .words(figure, "Alt")
                .is_none_or(|alt| alt.trim().is_empty())
        });
        let silent = silent.count();
        that(silent == 0, format!("{silent} diagrams have no words"))
    });
}

/// ISO 14289-1, 7.21.4.1: every font is embedded.
#[test]
fn every_font_is_embedded() {
    each(|made| {
        let fonts: Vec<_> = made
            .pdf
            .dictionaries()
            .filter(|dictionary| made.pdf.name(dictionary, "Type") == Some(b"FontDescriptor"))
            .collect();
        let embedded = |font: &&lopdf::Dictionary| {
            ["FontFile", "FontFile2", "FontFile3"]
                .iter()
                .any(|key| made.pdf.get(font, key).is_some())
        };
        that(
            !fonts.is_empty() && fonts.iter().all(embedded),
            "a font is missing from the file",
        )
    });
}

/// ISO 32000-1, 12.6: nothing in the file runs, plays or opens anything but a link.
#[test]
fn nothing_in_the_file_runs() {
    each(|made| {
        let catalog = made.pdf.catalog();
        that(
            made.pdf.get(catalog, "OpenAction").is_none() && made.pdf.get(catalog, "AA").is_none(),
            "it acts when it is opened",
        )?;
        let runs = |dictionary: &&lopdf::Dictionary| {
            matches!(
                made.pdf.name(dictionary, "S"),
                Some(b"JavaScript" | b"Launch" | b"SubmitForm" | b"ImportData")
            )
        };
        that(
            !made.pdf.dictionaries().any(|dictionary| runs(&dictionary)),
            "it holds an action that runs",
        )
    });
}

/// The same booklet gives the same bytes: nothing of the day, the machine or the order of threads.
#[test]
fn the_same_bytes_twice() {
    let printed = || {
        demo("lantern-cushion", |compiled| {
            [0, 1, 2].map(|size| print(compiled, size, Paper::A4))
        })
    };
    let first = std::thread::spawn(printed);
    let second = printed();
    let first = first.join().expect("the other thread");
    assert!(first == second, "the bytes differ");
    assert!(first[0] != first[1], "two sizes give one file");
}
