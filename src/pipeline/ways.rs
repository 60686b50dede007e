//! What is left to the maker: every way through a booklet worked out and played, and what each choice adds to buy and cut.

use crate::construct::{Played, play};
use crate::model::Draft;
use crate::resolve::{Catalogue, Edition, Values, Without, resolve, ways, without};

/// One size of a booklet that leaves something to the maker: what all need, and what each choice adds.
pub(super) struct Apart<'a> {
    /// What is bought and cut whatever is chosen.
    pub always: Edition<'a>,
    /// The same with one thing that is left to the maker: that, by its place in the draft.
    pub each: Vec<(usize, Edition<'a>)>,
}

/// A size worked out with some things left out. Its findings are those of the whole, which have been told.
fn again<'a>(draft: &'a Draft, names: &'a Catalogue, size: usize, without: &Without) -> Edition<'a> {
    let (values, _) = Values::of(draft, names, size);
    resolve(draft, names, values, without).0
}

/// Every way through one size; none where nothing is left to the maker.
pub(super) fn played<'a>(whole: &Edition<'a>, names: &'a Catalogue) -> Vec<Played<'a>> {
    let each = ways(whole).into_iter().map(|way| {
        let edition = again(whole.draft, names, whole.size(), &without(whole, way.out));
        let history = play(&edition, None);
        Played { edition, history, told: way.told }
    });
    each.collect()
}

/// What one size needs whatever is chosen, and with each choice; `None` where nothing is left to the maker.
pub(super) fn apart<'a>(whole: &Edition<'a>, names: &'a Catalogue) -> Option<Apart<'a>> {
    let offered = whole.offered();
    let with = |kept: Option<usize>| {
        let out = offered.iter().copied().filter(|offer| Some(*offer) != kept).collect();
        again(whole.draft, names, whole.size(), &without(whole, out))
    };
    let each = || offered.iter().map(|offer| (*offer, with(Some(*offer)))).collect();
    (!offered.is_empty()).then(|| Apart { always: with(None), each: each() })
}
