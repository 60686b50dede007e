//! What to buy and to cut in all sizes: the sizes as columns.

use super::order::{Group, together};
use super::prose::{Row, blocks};
use crate::book::amount::{Amount, Value};
use crate::book::prose::Block;
use crate::book::volume::{
    Book, CutList, CutRow, FabricNeed, FinishedRow, Layout, NotionNeed, PieceDrawing, PieceDrawings, WidthNeed,
};

type Sized<'a, T> = Vec<(usize, &'a [T])>;

fn sized<'a, T>(books: &'a [Book], of: impl Fn(&'a Book) -> &'a Vec<T>) -> Sized<'a, T> {
    books.iter().map(|book| (book.shown[0], of(book).as_slice())).collect()
}

/// Notes of all sizes that have a row.
fn note<T>(group: &Group<'_, T>, of: impl Fn(&T) -> &Vec<Block>) -> Vec<Block> {
    let sizes: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
    let rows: Vec<Row<'_, [Block]>> =
        group.own.iter().zip(&sizes).map(|((_, row), size)| (size.as_slice(), of(row).as_slice())).collect();
    blocks(&rows)
}

pub(super) fn finished(books: &[Book], shown: &[usize]) -> Vec<FinishedRow> {
    let rows = sized(books, |book| &book.finished);
    let place = |row: &FinishedRow| {
        // Every size has its rows in the order of the facts.
        books.iter().filter_map(|book| book.finished.iter().position(|one| one.name == row.name)).max().unwrap_or(0)
    };
    together(&rows, |row| row.name.as_str(), place)
        .into_iter()
        .map(|group| FinishedRow {
            name: group.first().name.clone(),
            values: flat(group.columns(shown, |row| row.values.first().cloned().flatten())),
        })
        .collect()
}

fn flat<T>(cells: Vec<Option<Option<T>>>) -> Vec<Option<T>> {
    cells.into_iter().map(Option::flatten).collect()
}

pub(super) fn fabrics(books: &[Book], shown: &[usize]) -> Vec<FabricNeed> {
    together(&sized(books, |book| &book.fabrics), |row| row.at, |row| row.at)
        .into_iter()
        .map(|group| {
            let first = group.first();
            let count = group.own.iter().map(|(_, row)| row.widths.len()).max().unwrap_or(0);
            FabricNeed {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                note: note(&group, |row| &row.note),
                widths: (0..count).map(|at| width(&group, at, shown)).collect(),
            }
        })
        .collect()
}

fn width(group: &Group<'_, FabricNeed>, at: usize, shown: &[usize]) -> WidthNeed {
    let amount = |row: &FabricNeed| -> Option<Amount> { row.widths.get(at)?.amounts.first()?.clone() };
    let sizes: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
    let widths: Option<Vec<Row<'_, Value>>> = group
        .own
        .iter()
        .zip(&sizes)
        .map(|((_, row), size)| Some((size.as_slice(), row.widths.get(at)?.width.as_ref()?)))
        .collect();
    WidthNeed { width: widths.map(|widths| Value::merge(&widths)), amounts: flat(group.columns(shown, amount)) }
}

pub(super) fn notions(books: &[Book], shown: &[usize]) -> Vec<NotionNeed> {
    together(&sized(books, |book| &book.notions), |row| row.at, |row| row.at)
        .into_iter()
        .map(|group| {
            let first = group.first();
            NotionNeed {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                note: note(&group, |row| &row.note),
                estimated: group.own.iter().any(|(_, row)| row.estimated),
                amounts: flat(group.columns(shown, |row| row.amounts.first().cloned().flatten())),
            }
        })
        .collect()
}

/// The pieces of all sizes at the scale of the largest, each in the largest size that has it; numbered
/// through.
pub(super) fn pieces(books: &[Book]) -> PieceDrawings {
    let rows: Sized<'_, PieceDrawing> =
        books.iter().map(|book| (book.shown[0], book.pieces.pieces.as_slice())).collect();
    // Sizes are drawn to a scale of their own; the middle one stands for all that have the piece.
    let middle = books.get(books.len() / 2);
    let scale = middle.map_or(1, |book| book.pieces.scale);
    let pieces = together(&rows, |row| row.at, |row| row.at)
        .into_iter()
        .enumerate()
        .map(|(at, group)| {
            let own = middle.and_then(|book| group.own.iter().find(|(size, _)| *size == book.shown[0]));
            let (size, drawing) = own.unwrap_or(&group.own[0]);
            PieceDrawing { number: at + 1, size: *size, ..(*drawing).clone() }
        })
        .collect();
    PieceDrawings { scale, pieces }
}

pub(super) fn cuts(books: &[Book], shown: &[usize]) -> Vec<CutList> {
    together(&sized(books, |book| &book.cuts), |list| list.at, |list| list.at)
        .into_iter()
        .map(|group| {
            let rows: Sized<'_, CutRow> = group.own.iter().map(|(size, list)| (*size, list.rows.as_slice())).collect();
            let first = group.first();
            CutList {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                rows: together(&rows, |row| row.at, |row| row.at).iter().map(|group| cut(group, shown)).collect(),
            }
        })
        .collect()
}

fn cut(group: &Group<'_, CutRow>, shown: &[usize]) -> CutRow {
    CutRow {
        dimensions: flat(group.columns(shown, |row| row.dimensions.first().cloned().flatten())),
        note: note(group, |row| &row.note),
        ..group.first().clone()
    }
}

/// The layouts of all sizes, size by size.
pub(super) fn layouts(books: &[Book]) -> Vec<Layout> {
    books.iter().flat_map(|book| book.layouts.iter().cloned()).collect()
}
