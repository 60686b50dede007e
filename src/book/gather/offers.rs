//! What each thing that is left to the maker needs beside all else.

use super::gatherer::{Gatherer, Lists};
use crate::book::cutting::{CutList, CutRow};
use crate::book::offer::Offer;

impl Gatherer<'_> {
    /// What is left to the maker in this size, with what it adds to the lists of what is always needed.
    pub fn offers(&mut self) -> Vec<Offer> {
        let supplies = self.supplies;
        let always = Lists::of(supplies.always, supplies.cloth.iter().map(|(layout, ..)| layout));
        let (fabrics, notions, cuts) = (self.fabrics(&always), self.notions(&always), self.cuts(&always));
        let mut offers = Vec::new();
        for (at, edition, laid) in &supplies.offers {
            let with = Lists::of(edition, laid.iter());
            let offer = &self.edition.draft.offers[*at];
            offers.push(Offer {
                id: offer.id.text.clone(),
                at: *at,
                choice: offer.choice.clone(),
                fabrics: self.fabrics(&with).into_iter().filter(|row| !fabrics.contains(row)).collect(),
                notions: self.notions(&with).into_iter().filter(|row| !notions.contains(row)).collect(),
                cuts: self.cuts(&with).into_iter().filter_map(|list| added(list, &cuts)).collect(),
            });
        }
        offers
    }
}

/// The pieces of a list that another does not have, or has fewer of.
fn added(list: CutList, cuts: &[CutList]) -> Option<CutList> {
    let known: Vec<&CutRow> = cuts.iter().filter(|other| other.id == list.id).flat_map(|other| &other.rows).collect();
    let more = |row: CutRow| {
        let Some(known) = known.iter().find(|known| known.at == row.at) else { return Some(row) };
        let count = row.count.saturating_sub(known.count);
        let copies: Vec<String> = row.copies.iter().filter(|copy| !known.copies.contains(copy)).cloned().collect();
        let single_layer = row.single_layer.min(count as usize);
        (count > 0).then_some(CutRow { count, copies, single_layer, ..row })
    };
    let rows: Vec<CutRow> = list.rows.into_iter().filter_map(more).collect();
    (!rows.is_empty()).then_some(CutList { rows, ..list })
}
