//! What is left to the maker: work that she may leave out, and ways of doing one thing of which she takes one.

use super::text::Name;

/// What the braces of a heading leave to the maker.
#[derive(Debug, Clone)]
pub enum Stake {
    /// `optional`: it may be left out.
    Optional,
    /// `or=NAME`: one way of the choice of that name.
    Way(Name),
    /// `of=ID`: it belongs to what another heading offers.
    Of(Name),
}

/// Work that may be left out, or one way of a choice: one heading's, with all that says `of=` it.
#[derive(Debug, Clone)]
pub struct Offer {
    /// The id of the heading.
    pub id: Name,
    /// The choice that it is a way of; `None` for what may be left out.
    pub choice: Option<String>,
}

impl Offer {
    /// Whether a maker who takes this one cannot take the other.
    pub fn is_rival(&self, other: &Offer) -> bool {
        self.choice.is_some() && self.choice == other.choice && self.id.text != other.id.text
    }
}
