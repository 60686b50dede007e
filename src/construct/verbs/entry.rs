//! What the play knows of a verb.

use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::diag::Page;
use crate::model::Verb;

/// What a verb does to the work, and the page that explains it.
pub struct VerbEntry {
    /// The verb.
    pub verb: Verb,
    /// What it needs and what it changes.
    pub(in crate::construct) play: fn(&mut Player<'_>, &Deed<'_, '_>),
    /// The file that opens with its page.
    source: &'static str,
}

impl VerbEntry {
    /// A verb; `source` is the text of the file whose first comment is the page.
    pub(super) const fn new(verb: Verb, source: &'static str, play: fn(&mut Player<'_>, &Deed<'_, '_>)) -> VerbEntry {
        VerbEntry { verb, play, source }
    }

    /// The page that explains it.
    pub fn page(&self) -> Page {
        Page::of(self.source)
    }
}

/// The play of a verb that leaves the state as it is.
pub(super) fn nothing(_: &mut Player<'_>, _: &Deed<'_, '_>) {}
