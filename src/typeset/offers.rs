//! What the page says of parts and steps that are left to the maker.

use serde_json::{Value as Json, json};

use super::setter::Setter;
use crate::book::{Inline, Offer};

impl Setter<'_> {
    /// What a heading leaves to the maker: the key of its words, with the parts and steps that they name; `null` for
    /// what all do.
    pub fn stake(&self, heading: &str, offer: Option<&str>) -> Json {
        let Some(offer) = offer.and_then(|id| self.book.offers.iter().find(|offer| offer.id == id)) else {
            return Json::Null;
        };
        let rivals: Vec<&Offer> =
            self.book.offers.iter().filter(|other| other.choice.is_some() && other.choice == offer.choice).collect();
        let others = || rivals.iter().filter(|other| other.id != offer.id).map(|other| self.named(&other.id));
        match offer.id == heading {
            false => json!({ "key": "offer_of", "names": [self.named(&offer.id)] }),
            // A choice of which the sizes shown have one way is none.
            true if offer.choice.is_some() && rivals.len() < 2 => Json::Null,
            true if offer.choice.is_none() => json!({ "key": "offer_optional", "names": [] }),
            true if rivals.first().is_some_and(|first| first.id == offer.id) => {
                json!({ "key": "offer_either", "names": others().collect::<Vec<_>>() })
            }
            true => json!({ "key": "offer_or", "names": others().collect::<Vec<_>>() }),
        }
    }

    /// The heading that offers something; `None` where no size shown has it.
    pub fn offered_by(&self, id: &str) -> Option<&[Inline]> {
        let part = self.book.parts.iter().find(|part| part.id == id).map(|part| part.title.as_slice());
        let mut steps = self.book.parts.iter().flat_map(|part| &part.steps);
        part.or_else(|| steps.find(|step| step.id == id).map(|step| step.title.as_slice()))
    }

    /// A step by its number, a part by its place: what a reader looks for.
    fn named(&self, id: &str) -> Json {
        let steps = self.book.parts.iter().flat_map(|part| &part.steps);
        let step = steps.into_iter().find(|step| step.id == id).map(|step| json!({ "step": step.number }));
        let part = || self.book.parts.iter().position(|part| part.id == id).map(|at| json!({ "part": at + 1 }));
        step.or_else(part).unwrap_or(Json::Null)
    }
}
