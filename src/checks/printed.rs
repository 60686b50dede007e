//! Which figures a maker sees: what several checks of figures ask before they judge.

use crate::resolve::{Edition, NameKind, Uses};

/// Whether the figures of a name are printed: a measurement by its bare name, a notion's and a piece's in their tables.
pub(super) fn is_shown(edition: &Edition<'_>, printed: &[&Uses], name: &str) -> bool {
    match name.split_once('.').map(|(owner, figure)| (edition.catalogue.get(owner), figure)) {
        None => printed.iter().any(|uses| uses.shown.contains(name)),
        Some((Some(NameKind::Notion(_)), _)) => true,
        Some((Some(kind), figure)) => kind.piece().is_some() && matches!(figure, "width" | "height"),
        Some((None, _)) => false,
    }
}
