//! As many pictures as the words ask for, in every edition of every demo, down to the tagged figures of
//! the PDF (ISO 32000-1, 14.8.4.5: a structure element `Figure` with an `Alt`).

use notchbook::book::{Block, Book, Picture};
use notchbook::model;
use notchbook::pipeline::Workshop;
use notchbook::sheets::SheetPaper;
use notchbook::typeset::{Paper, Press};

use crate::bench::demos;
use crate::reader::Read;

/// The diagrams that the author's words ask for, by size; `None` for all sizes together, where a step
/// counts once.
fn asked(compiled: &Workshop, size: Option<usize>) -> usize {
    let draft = compiled.draft().expect("a draft");
    let here = |sizes: Option<&Vec<usize>>| size.is_none_or(|size| model::is_for(sizes, size));
    let mut count = 0;
    for part in draft.parts.iter().filter(|part| here(part.sizes.as_ref())) {
        let steps = part.steps.iter().filter(|step| here(step.sizes.as_ref()));
        let bodies = steps.map(|step| &step.body);
        for block in std::iter::once(&part.intro).chain(bodies).flatten() {
            block.each_figure(&mut |_| count += 1);
        }
    }
    count
}

fn pictures(book: &Book) -> Vec<&Picture> {
    fn below<'b>(blocks: &'b [Block], found: &mut Vec<&'b Picture>) {
        for block in blocks {
            match block {
                Block::Figure(picture) => found.push(picture),
                Block::List { items, .. } | Block::Tasks { items } => {
                    items.iter().for_each(|item| below(item, found))
                }
                Block::Quote { content } | Block::Notice { content, .. } => below(content, found),
                Block::BySize { branches } => branches
                    .iter()
                    .for_each(|branch| below(&branch.content, found)),
                _ => {}
            }
        }
    }
    let mut found = Vec::new();
    for part in &book.parts {
        below(&part.intro, &mut found);
        for step in &part.steps {
            found.extend(&step.figure);
            below(&step.body, &mut found);
        }
    }
    found
}

/// The figures of a PDF that stand for drawings of steps: those whose words are the words of one of the
/// book's pictures.
fn printed(compiled: &Workshop, book: &Book) -> usize {
    let sheaf = compiled.sheaf(book, Paper::A4);
    let pdf = match Press::new(&compiled.house).print(&sheaf) {
        Ok(printed) => printed.pdf,
        Err(faults) => panic!("{faults:?}"),
    };
    let pdf = Read::of(&pdf);
    pdf.dictionaries()
        .filter(|one| pdf.name(one, "S") == Some(b"Figure".as_slice()) && one.has(b"Alt"))
        .count()
}

/// Every other picture of a booklet: logo, cover, the thing on the cover and at a glance, the work at the end of parts,
/// pieces, layouts, map, the samples of the key.
fn besides(book: &Book) -> usize {
    let cover = match (&book.cover, book.cover_drawn.len()) {
        (Some(_), _) => 1,
        (None, 0) => book.things.len(),
        (None, own) => own,
    };
    let states: usize = book.parts.iter().map(|part| part.state.len()).sum();
    let covers = usize::from(book.logo.is_some()) + cover + book.things.len() + states;
    covers
        + book.key.len()
        + book.pieces.pieces.len()
        + book.layouts.len()
        + usize::from(book.map.is_some())
}

#[test]
fn every_edition_prints_the_pictures_that_its_words_ask_for() {
    let mut wrong = Vec::new();
    let mut table = Vec::new();
    demos(|name, compiled| {
        let mut books: Vec<(String, Option<usize>, Book)> = compiled
            .editions()
            .iter()
            .map(|edition| {
                let size = edition.size();
                let book = compiled.book(edition, SheetPaper::A4);
                (compiled.sizes[size].clone(), Some(size), book)
            })
            .collect();
        let own: Vec<Book> = books.iter().map(|(.., book)| book.clone()).collect();
        let all = compiled
            .book_of_all(&own, SheetPaper::A4)
            .expect("a book of all sizes");
        books.push(("all".into(), None, all));
        for (id, size, book) in &books {
            let asked = asked(compiled, *size);
            let shown = pictures(book);
            let views: usize = shown.iter().map(|picture| picture.views.len()).sum();
            let printed = printed(compiled, book) - besides(book);
            table.push(format!(
                "{name} {id}: asked for {asked}, in the book {}, printed {printed}",
                shown.len()
            ));
            let drawn = shown
                .iter()
                .flat_map(|picture| &picture.views)
                .all(|view| book.drawings.contains_key(&view.drawing));
            if asked == 0 || shown.len() != asked || printed != views || !drawn {
                wrong.push(table.last().cloned().unwrap_or_default());
            }
        }
    });
    println!("{}", table.join("\n"));
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}
