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
    /// Whether the seam line names it even without figures.
    pub always_told: bool,
    /// The file that opens with its page.
    source: &'static str,
}

impl VerbEntry {
    /// A verb; `source` is the text of the file whose first comment is the page.
    pub(super) const fn new(verb: Verb, source: &'static str, play: fn(&mut Player<'_>, &Deed<'_, '_>)) -> VerbEntry {
        VerbEntry { verb, play, always_told: false, source }
    }

    /// The same, told below the words of its step even where it has no figures.
    pub(super) const fn always_told(self) -> VerbEntry {
        VerbEntry { always_told: true, ..self }
    }

    /// The page that explains it.
    pub fn page(&self) -> Page {
        Page::of(self.source)
    }
}

/// The play of a verb that leaves the state as it is.
pub(super) fn nothing(_: &mut Player<'_>, _: &Deed<'_, '_>) {}
