//! What a comparison of two editions comes to.

/// What a change means to a maker whose cloth is already cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Matter {
    /// The pieces that she cut are not those of the newer edition.
    Cut,
    /// The pieces stay; what she bought may not fit.
    Buy,
    /// The pieces stay; she sews otherwise.
    Sew,
    /// Nothing that she cut, bought or sews.
    Read,
}

impl Matter {
    /// The key of the words that say it.
    pub(super) fn key(self) -> &'static str {
        match self {
            Matter::Cut => "errata_if_cut",
            Matter::Buy => "errata_if_bought",
            Matter::Sew => "errata_if_sewn",
            Matter::Read => "errata_if_read",
        }
    }
}

/// One thing that has changed, in the words of the booklet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The thing: `Closed-end zip, length`.
    pub what: String,
    /// What became of it, as a sentence that begins with the thing.
    pub text: String,
    /// What it means to whoever has cut.
    pub matter: Matter,
    /// The sizes that it is for, by their places in the newer edition.
    pub sizes: Vec<usize>,
    /// Where it stands in the sheet.
    pub(super) place: (usize, usize),
}

/// The sheets of one set that are to be printed again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reprint {
    /// The set, by its name on the page.
    pub of: String,
    /// The paper, as files call it.
    pub paper: String,
    /// The sheets to print again, or for the first time.
    pub again: Vec<String>,
    /// The sheets that there are no longer.
    pub away: Vec<String>,
}

/// All that has changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Errata {
    /// The older edition and the newer one.
    pub editions: (String, String),
    /// What has changed, in the order of the booklet.
    pub changes: Vec<Change>,
    /// The sheets to print again.
    pub reprints: Vec<Reprint>,
    /// Whether anything differs that buyers need not know: words, pictures, the record.
    pub otherwise: bool,
}

impl Errata {
    /// Whether there is anything to tell.
    pub fn tells(&self) -> bool {
        !self.changes.is_empty() || !self.reprints.is_empty()
    }
}
