//! The merged book as a whole.

use std::collections::BTreeMap;

use super::drawings::{Over, adopt};
use super::order::together;
use super::prose::{Row, blocks};
use super::{help, lists, steps};
use crate::book::cutting::SheetMap;
use crate::book::prose::Block;
use crate::book::thing::{ThingDrawing, one_of_each};
use crate::book::volume::{Book, Caution, Drawing, KeyEntry, Release, Tool, Word};

/// What the sizes have in common beside their books.
pub struct Shared<'a> {
    /// The map of the sheets with all sizes nested, and its drawing; `None` where there are no pieces.
    pub map: Option<(SheetMap, Drawing)>,
    /// Lays drawings of several sizes over one another; `None` where they cannot be.
    pub over: Over<'a>,
}

/// Lays the books of one size each over one another, in the order of the sizes; `None` when there is
/// none.
pub fn merge(books: &[Book], shared: Shared<'_>) -> Option<Book> {
    let first = books.first()?;
    let shown: Vec<usize> = books.iter().flat_map(|book| book.shown.iter().copied()).collect();
    let parts = steps::parts(books);
    let mut drawings = BTreeMap::new();
    let map = shared.map.map(|(map, drawing)| {
        drawings.insert(map.drawing.clone(), drawing);
        map
    });
    let mut book = Book {
        shown: shown.clone(),
        time: front(books, |book| &book.time),
        read_first: front(books, |book| &book.read_first),
        cautions: cautions(books),
        tools: tools(books),
        child_caution: books.iter().any(|book| book.child_caution),
        allowances: steps::allowances(books, &parts),
        key: key(books),
        body: lists::body(books, &shown),
        finished: lists::finished(books, &shown),
        fabrics: lists::fabrics(&lists::sized(books, |book| &book.fabrics), &shown),
        notions: lists::notions(&lists::sized(books, |book| &book.notions), &shown),
        things: things(books, |book| &book.things),
        cover_drawn: things(books, |book| &book.cover_drawn),
        pieces: lists::pieces(books),
        cuts: lists::cuts(&lists::sized(books, |book| &book.cuts), &shown),
        offers: lists::offers(books, &shown),
        layouts: lists::layouts(books),
        map,
        parts,
        help: help::help(books),
        words: words(books),
        care: front(books, |book| &book.care),
        terms: front(books, |book| &book.terms),
        record: record(books),
        drawings,
        ..first.clone()
    };
    adopt(&mut book, books, shared.over);
    Some(book)
}

/// One drawing of each thing.
fn things(books: &[Book], of: impl Fn(&Book) -> &Vec<ThingDrawing>) -> Vec<ThingDrawing> {
    let all: Vec<ThingDrawing> = books.iter().flat_map(|book| of(book).clone()).collect();
    one_of_each(&steps::views(books), &all)
}

/// Prose that every size has.
fn front(books: &[Book], of: impl Fn(&Book) -> &Vec<Block>) -> Vec<Block> {
    let rows: Vec<Row<'_, [Block]>> = books.iter().map(|book| (book.shown.as_slice(), of(book).as_slice())).collect();
    blocks(&rows)
}

fn cautions(books: &[Book]) -> Vec<Caution> {
    let sizes: Vec<(usize, &[Caution])> = books.iter().map(|book| (book.shown[0], book.cautions.as_slice())).collect();
    together(&sizes, |caution| caution.at, |caution| caution.at)
        .into_iter()
        .map(|group| {
            let one: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
            let own = group.own.iter().zip(&one);
            let rows: Vec<Row<'_, [Block]>> =
                own.map(|((_, caution), size)| (size.as_slice(), caution.content.as_slice())).collect();
            Caution { content: blocks(&rows), ..group.first().clone() }
        })
        .collect()
}

fn tools(books: &[Book]) -> Vec<Tool> {
    let sizes: Vec<(usize, &[Tool])> = books.iter().map(|book| (book.shown[0], book.tools.as_slice())).collect();
    together(&sizes, |tool| tool.at, |tool| tool.at).into_iter().map(|group| group.first().clone()).collect()
}

fn key(books: &[Book]) -> Vec<KeyEntry> {
    let mut found: Vec<KeyEntry> = Vec::new();
    for entry in books.iter().flat_map(|book| &book.key) {
        if !found.contains(entry) {
            found.push(entry.clone());
        }
    }
    let order = crate::figure::key_order();
    found.sort_by_key(|entry| order.iter().position(|class| *class == entry.class));
    found
}

fn words(books: &[Book]) -> Vec<Word> {
    let sizes: Vec<(usize, &[Word])> = books.iter().map(|book| (book.shown[0], book.words.as_slice())).collect();
    together(&sizes, |word| word.at, |word| word.at)
        .into_iter()
        .map(|group| {
            let one: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
            let rows: Vec<Row<'_, [Block]>> = group
                .own
                .iter()
                .zip(&one)
                .map(|((_, word), size)| (size.as_slice(), word.meaning.as_slice()))
                .collect();
            Word { meaning: blocks(&rows), ..group.first().clone() }
        })
        .collect()
}

fn record(books: &[Book]) -> Vec<Release> {
    let changes = nth_changes(books);
    books[0].record.iter().zip(changes).map(|(release, changes)| Release { changes, ..release.clone() }).collect()
}

fn nth_changes(books: &[Book]) -> Vec<Vec<Block>> {
    (0..books[0].record.len())
        .map(|at| {
            let rows: Vec<Row<'_, [Block]>> = books
                .iter()
                .filter_map(|book| Some((book.shown.as_slice(), book.record.get(at)?.changes.as_slice())))
                .collect();
            blocks(&rows)
        })
        .collect()
}
