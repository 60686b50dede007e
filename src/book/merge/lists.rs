//! What to buy and to cut in all sizes: the sizes as columns.

use super::order::{Group, together};
use super::prose::{Row, blocks};
use crate::book::amount::{Amount, Value};
use crate::book::cutting::{CutList, CutRow, Layout, PieceDrawing, PieceDrawings};
use crate::book::needs::{FabricNeed, NotionNeed, WidthNeed};
use crate::book::offer::Offer;
use crate::book::prose::Block;
use crate::book::volume::{Book, FinishedRow, MeasureRow};

pub(super) type Sized<'a, T> = Vec<(usize, &'a [T])>;

pub(super) fn sized<'a, T>(books: &'a [Book], of: impl Fn(&'a Book) -> &'a Vec<T>) -> Sized<'a, T> {
    books.iter().map(|book| (book.shown[0], of(book).as_slice())).collect()
}

/// Notes of all sizes that have a row.
fn note<T>(group: &Group<'_, T>, of: impl Fn(&T) -> &Vec<Block>) -> Vec<Block> {
    let sizes: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
    let rows: Vec<Row<'_, [Block]>> =
        group.own.iter().zip(&sizes).map(|((_, row), size)| (size.as_slice(), of(row).as_slice())).collect();
    blocks(&rows)
}

pub(super) fn body(books: &[Book], shown: &[usize]) -> Vec<MeasureRow> {
    let rows = sized(books, |book| &book.body);
    together(&rows, |row| row.name.as_str(), |row| place(&rows, |one| one.name == row.name))
        .into_iter()
        .map(|group| measure(&group, shown, |row| Some(row)).unwrap_or_else(|| group.first().clone()))
        .collect()
}

pub(super) fn finished(books: &[Book], shown: &[usize]) -> Vec<FinishedRow> {
    let rows = sized(books, |book| &book.finished);
    let place = |row: &FinishedRow| place(&rows, |one| one.measure.name == row.measure.name);
    together(&rows, |row| row.measure.name.as_str(), place)
        .into_iter()
        .map(|group| FinishedRow {
            measure: measure(&group, shown, |row| Some(&row.measure)).unwrap_or_else(|| group.first().measure.clone()),
            ease: measure(&group, shown, |row| row.ease.as_ref()),
        })
        .collect()
}

/// Every size has its rows in the order of the facts.
fn place<T>(rows: &Sized<'_, T>, is: impl Fn(&T) -> bool) -> usize {
    rows.iter().filter_map(|(_, rows)| rows.iter().position(&is)).max().unwrap_or(0)
}

/// A measurement of every size that has it, as one row; `None` where none has.
fn measure<T>(group: &Group<'_, T>, shown: &[usize], of: impl Fn(&T) -> Option<&MeasureRow>) -> Option<MeasureRow> {
    let name = group.own.iter().find_map(|(_, row)| of(row))?.name.clone();
    let values = flat(group.columns(shown, |row| of(row)?.values.first().cloned().flatten()));
    Some(MeasureRow { name, values })
}

fn flat<T>(cells: Vec<Option<Option<T>>>) -> Vec<Option<T>> {
    cells.into_iter().map(Option::flatten).collect()
}

pub(super) fn fabrics(rows: &Sized<'_, FabricNeed>, shown: &[usize]) -> Vec<FabricNeed> {
    together(rows, |row| row.at, |row| row.at)
        .into_iter()
        .map(|group| {
            let first = group.first();
            let count = group.own.iter().map(|(_, row)| row.widths.len()).max().unwrap_or(0);
            FabricNeed {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                note: note(&group, |row| &row.note),
                search: first.search.clone(),
                instead: note(&group, |row| &row.instead),
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

pub(super) fn notions(rows: &Sized<'_, NotionNeed>, shown: &[usize]) -> Vec<NotionNeed> {
    together(rows, |row| row.at, |row| row.at)
        .into_iter()
        .map(|group| {
            let first = group.first();
            NotionNeed {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                note: note(&group, |row| &row.note),
                search: first.search.clone(),
                instead: note(&group, |row| &row.instead),
                estimated: group.own.iter().any(|(_, row)| row.estimated),
                amounts: flat(group.columns(shown, |row| row.amounts.first().cloned().flatten())),
            }
        })
        .collect()
}

/// The pieces of all sizes at the scale of the largest, each in the largest size that has it; numbered
/// through, and in the order in which the steps first use them.
pub(super) fn pieces(books: &[Book]) -> PieceDrawings {
    let rows: Sized<'_, PieceDrawing> =
        books.iter().map(|book| (book.shown[0], book.pieces.pieces.as_slice())).collect();
    // Sizes are drawn to a scale of their own; the middle one stands for all that have the piece.
    let middle = books.get(books.len() / 2);
    // A pattern for several things has its pieces numbered through in every size.
    let through = books.iter().any(|book| !book.views.is_empty());
    let scale = middle.map_or(1, |book| book.pieces.scale);
    let mut pieces: Vec<PieceDrawing> = together(&rows, |row| row.at, |row| row.at)
        .into_iter()
        .enumerate()
        .map(|(at, group)| {
            let own = middle.and_then(|book| group.own.iter().find(|(size, _)| *size == book.shown[0]));
            let (size, drawing) = own.unwrap_or(&group.own[0]);
            let sizes = group.own.iter().map(|(size, _)| *size).collect();
            let number = if through { drawing.number } else { at + 1 };
            PieceDrawing { number, size: *size, sizes, ..(*drawing).clone() }
        })
        .collect();
    pieces.sort_by_key(|piece| place(&rows, |row| row.at == piece.at));
    PieceDrawings { scale, pieces }
}

pub(super) fn cuts(lists: &Sized<'_, CutList>, shown: &[usize]) -> Vec<CutList> {
    together(lists, |list| list.at, |list| list.at)
        .into_iter()
        .map(|group| {
            let rows: Sized<'_, CutRow> = group.own.iter().map(|(size, list)| (*size, list.rows.as_slice())).collect();
            let first = group.first();
            CutList {
                id: first.id.clone(),
                at: first.at,
                name: first.name.clone(),
                rows: together(&rows, |row| (row.at, row.count, row.copies.as_slice()), |row| row.at)
                    .iter()
                    .map(|group| cut(group, shown))
                    .collect(),
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

/// What is left to the maker in any size, with what it needs in each.
pub(super) fn offers(books: &[Book], shown: &[usize]) -> Vec<Offer> {
    together(&sized(books, |book| &book.offers), |offer| offer.at, |offer| offer.at)
        .into_iter()
        .map(|group| {
            let first = group.first();
            let cloth = with_it(&group, books, |offer| &offer.fabrics, |book| &book.fabrics, |row| row.at);
            let other = with_it(&group, books, |offer| &offer.notions, |book| &book.notions, |row| row.at);
            Offer {
                id: first.id.clone(),
                at: first.at,
                choice: first.choice.clone(),
                fabrics: fabrics(&as_lists(&cloth), shown),
                notions: notions(&as_lists(&other), shown),
                cuts: cuts(&within(&group, |offer| &offer.cuts), shown),
            }
        })
        .collect()
}

/// What is bought with an offer in every size that has it. Where one size has a row, one in which the offer adds nothing
/// to it buys what it buys in any case.
fn with_it<'a, T: Clone + 'a>(
    group: &Group<'a, Offer>,
    books: &'a [Book],
    own: impl Fn(&'a Offer) -> &'a Vec<T>,
    always: impl Fn(&'a Book) -> &'a Vec<T>,
    at: impl Fn(&T) -> usize,
) -> Vec<(usize, Vec<T>)> {
    let wanted: Vec<usize> = group.own.iter().flat_map(|(_, offer)| own(offer)).map(&at).collect();
    let filled = |(size, offer): &(usize, &'a Offer)| {
        let mut rows = own(offer).clone();
        let known: Vec<usize> = rows.iter().map(&at).collect();
        let missing = |row: &&T| wanted.contains(&at(row)) && !known.contains(&at(row));
        let book = books.iter().filter(|book| book.shown == [*size]);
        rows.extend(book.flat_map(&always).filter(missing).cloned());
        rows.sort_by_key(&at);
        (*size, rows)
    };
    group.own.iter().map(filled).collect()
}

fn as_lists<T>(rows: &[(usize, Vec<T>)]) -> Sized<'_, T> {
    rows.iter().map(|(size, rows)| (*size, rows.as_slice())).collect()
}

/// A list of every size that has a thing.
fn within<'a, T, L>(group: &Group<'a, T>, of: impl Fn(&'a T) -> &'a Vec<L>) -> Sized<'a, L> {
    group.own.iter().map(|(size, thing)| (*size, of(thing).as_slice())).collect()
}

/// The layouts of all sizes, size by size.
pub(super) fn layouts(books: &[Book]) -> Vec<Layout> {
    books.iter().flat_map(|book| book.layouts.iter().cloned()).collect()
}
