//! The chapters of the video as words to paste below it.

use super::prose::Inline;
use super::volume::Book;
use crate::model::written_moment;

/// The chapters of the video as lines to paste below it, the first at 0:00; `None` where there is no video, or no time in it.
pub fn chapters(book: &Book) -> Option<String> {
    let film = book.film.as_ref()?;
    if book.parts.iter().all(|part| part.watch.is_none()) {
        return None;
    }
    let opening = film.opening.iter().map(|words| (0, words.clone()));
    let parts = book.parts.iter().filter_map(|part| Some((part.watch?, plain(&part.title))));
    Some(opening.chain(parts).map(|(at, words)| format!("{} {words}\n", written_moment(at))).collect())
}

/// Words without their looks.
fn plain(content: &[Inline]) -> String {
    let words = |inline: &Inline| match inline {
        Inline::Text { text } | Inline::Code { text } => text.clone(),
        Inline::Strong { content } | Inline::Emphasis { content } | Inline::Choice { content, .. } => plain(content),
        Inline::BySize { branches } => {
            let each: Vec<String> = branches.iter().map(|branch| plain(&branch.content)).collect();
            each.join(" / ")
        }
        _ => String::new(),
    };
    content.iter().map(words).collect()
}
