//! The questions of all sizes.

use super::order::together;
use super::prose::{Row, blocks, inlines};
use crate::book::help::Question;
use crate::book::prose::{Block, Inline};
use crate::book::volume::Book;

/// Each question once, with the words of every size that has it.
pub(super) fn help(books: &[Book]) -> Vec<Question> {
    let sizes: Vec<(usize, &[Question])> = books.iter().map(|book| (book.shown[0], book.help.as_slice())).collect();
    together(&sizes, |question| question.at, |question| question.at)
        .into_iter()
        .map(|group| {
            let one: Vec<[usize; 1]> = group.own.iter().map(|(size, _)| [*size]).collect();
            let own = || group.own.iter().zip(&one);
            let titles: Vec<Row<'_, [Inline]>> =
                own().map(|((_, question), size)| (size.as_slice(), question.title.as_slice())).collect();
            let answers: Vec<Row<'_, [Block]>> =
                own().map(|((_, question), size)| (size.as_slice(), question.answer.as_slice())).collect();
            Question { title: inlines(&titles), answer: blocks(&answers), ..group.first().clone() }
        })
        .collect()
}
