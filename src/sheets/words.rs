//! Where the words on sheets come from.

use crate::model::HouseWords;
use crate::resolve::Edition;

/// The words of the house in a booklet's language; of no sizes, none.
pub(super) fn house<'a>(editions: &[&'a Edition<'_>]) -> &'a HouseWords {
    match editions.first() {
        Some(edition) => &edition.draft.house,
        None => HouseWords::none(),
    }
}
