//! What belongs to a piece, said with the piece's name: words that both would say stand once.

use super::names::{Catalogue, NameKind};
use crate::diag::in_sentence;
use crate::model::Facts;

/// A piece, a copy, a notion or a fabric by its name on the page.
pub(super) fn owner(facts: &Facts, catalogue: &Catalogue, id: &str) -> String {
    match catalogue.get(id) {
        Some(NameKind::Piece(piece)) => in_sentence(&facts.pieces[piece].name.text),
        Some(NameKind::Copy(piece)) => facts.pieces[piece].copy_called(id),
        Some(NameKind::Notion(notion)) => in_sentence(&facts.notions[notion].name.text),
        Some(NameKind::Fabric(fabric)) => in_sentence(&facts.fabrics[fabric].name.text),
        _ => id.replace('_', " "),
    }
}

/// What a name means, in words: whose it is, and what of it, which is empty for the whole. `lining_front.top` is the
/// "top edge" of "lining front"; what has a name on the page is called by that name.
pub(super) fn name(facts: &Facts, catalogue: &Catalogue, name: &str) -> (String, String) {
    let Some((id, edge)) = name.split_once('.') else { return (owner(facts, catalogue, name), String::new()) };
    let owner = owner(facts, catalogue, id);
    let piece = catalogue.get(id).and_then(NameKind::piece).map(|piece| &facts.pieces[piece]);
    let words = edge.replace('_', " ");
    let called = match piece.and_then(|piece| piece.edge_called(edge)) {
        Some(called) => called,
        None if edge.contains("tape") || edge.contains("corner") => words,
        // The ends of a strap are no edges to a sewist.
        None if piece.is_some_and(|piece| piece.tape.is_some()) && matches!(edge, "start" | "end") => words,
        None => format!("{words} edge"),
    };
    (owner, called)
}

/// The name of a piece with that of something on it: "right front" and "front edge" as "right front edge", "collar"
/// and "collar outer edge" as the latter alone.
pub(super) fn joined(owner: &str, own: &str) -> String {
    let (whose, what): (Vec<&str>, Vec<&str>) = (owner.split(' ').collect(), own.split(' ').collect());
    let alike = |one: &str, other: &str| one.to_lowercase() == other.to_lowercase();
    if whose.iter().all(|word| what.iter().any(|other| alike(word, other))) {
        return own.to_owned();
    }
    // The end of one name that the other begins with, as long as it goes.
    let most = whose.len().min(what.len());
    let over = (1..=most)
        .rev()
        .find(|count| whose[whose.len() - count..].iter().zip(&what[..*count]).all(|(one, other)| alike(one, other)));
    let rest = what[over.unwrap_or(0)..].join(" ");
    format!("{owner} {rest}").trim_end().to_owned()
}
