//! Darts, pleats and marks by their names: which of them a work fact means.

use crate::geometry::Fold;
use crate::model::{Name, Piece, Verb};

/// Something inside a piece, by its place in its piece's list of its sort.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "the names say what they hold")]
pub enum Inside {
    Dart(usize),
    Pleat(usize),
    Mark(usize),
}

impl Inside {
    /// Its name, and the word for what it is.
    pub fn called(self, piece: &Piece) -> (&Name, &'static str) {
        match self {
            Inside::Dart(at) => (&piece.darts[at].name, "dart"),
            Inside::Pleat(at) if piece.pleats[at].fold == Fold::Tuck => (&piece.pleats[at].name, "tuck"),
            Inside::Pleat(at) => (&piece.pleats[at].name, "pleat"),
            Inside::Mark(at) => (&piece.marks[at].name, "mark"),
        }
    }

    /// All that lie inside a piece, darts first.
    pub fn all(piece: &Piece) -> impl Iterator<Item = Inside> + use<> {
        let (darts, pleats, marks) = (piece.darts.len(), piece.pleats.len(), piece.marks.len());
        (0..darts).map(Inside::Dart).chain((0..pleats).map(Inside::Pleat)).chain((0..marks).map(Inside::Mark))
    }
}

/// What a verb sews or lays, where it is made for that alone.
pub(super) fn sort(verb: Verb) -> Option<&'static str> {
    match verb {
        Verb::Dart => Some("dart"),
        Verb::Pleat => Some("pleat"),
        Verb::Tuck => Some("tuck"),
        _ => None,
    }
}

/// Those of one sort that are meant: the one of that name, or all where none is given. `Err` with the names that
/// there are.
pub(super) fn of_sort(piece: &Piece, sort: &str, name: Option<&str>) -> Result<Vec<Inside>, Vec<String>> {
    let own: Vec<Inside> = Inside::all(piece).filter(|one| one.called(piece).1 == sort).collect();
    let meant: Vec<Inside> =
        own.iter().copied().filter(|one| name.is_none_or(|name| one.called(piece).0.text == name)).collect();
    match meant.is_empty() {
        true => Err(own.iter().map(|one| one.called(piece).0.text.clone()).collect()),
        false => Ok(meant),
    }
}

/// The one of that name: a mark before a dart, a dart before a pleat.
pub(super) fn named(piece: &Piece, name: &str) -> Option<Inside> {
    let own = || Inside::all(piece).filter(|one| one.called(piece).0.text == name);
    own().find(|one| matches!(one, Inside::Mark(_))).or_else(|| own().next())
}

/// `front.bust` as "bust dart".
pub(super) fn speak(piece: &Piece, all: &[Inside]) -> String {
    let spoken = |one: &Inside| {
        let (name, sort) = one.called(piece);
        let name = name.text.replace('_', " ");
        match sort {
            "mark" => name,
            sort if name.ends_with(sort) => name,
            sort => format!("{name} {sort}"),
        }
    };
    let names: Vec<String> = all.iter().map(spoken).collect();
    crate::diag::listed(&names)
}
