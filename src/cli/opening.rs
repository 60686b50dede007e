//! How the commands that make files begin: each chosen booklet is opened, its findings are told, and only one without
//! what stops is worked on.

use std::path::Path;

use super::apart::{self, Bounds};
use super::args::Strictness;
use super::remembered::{Made, Memory};
use super::share::Share;
use super::{Outcome, Refusal, choose, output};
use crate::pipeline::{Reach, Workshop};
use crate::source::{BookletFolder, Folder};

/// What a command is asked for.
pub(super) struct Opening<'a> {
    /// The folder with the booklets; `None` for the usual one.
    pub folder: Option<&'a Path>,
    /// The booklets by their names; none for all.
    pub booklets: &'a [String],
    /// What stops.
    pub strictness: &'a Strictness,
    /// How a booklet with files of its own is worked on.
    pub bounds: Bounds,
    /// What becomes of a booklet, as one tells it: "built".
    pub done: &'static str,
    /// What earlier runs did, where the same is not done again; `None` where it is.
    pub memory: Option<&'a Memory<'a>>,
    /// Which share of the booklets is worked on; `None` for all.
    pub share: Option<Share>,
}

/// What came of a booklet.
pub(super) struct Worked {
    /// How it ended.
    pub outcome: Outcome,
    /// What was made; `None` where a later run is to do it all again.
    pub made: Option<Made>,
}

impl From<Outcome> for Worked {
    fn from(outcome: Outcome) -> Worked {
        Worked { outcome, made: None }
    }
}

impl Opening<'_> {
    /// Works on each booklet that nothing stops.
    pub fn each<W: Into<Worked>>(
        &self,
        mut work: impl FnMut(&BookletFolder, &mut Workshop) -> Result<W, Refusal>,
    ) -> Result<Outcome, Refusal> {
        let mut choice = choose::booklets(self.folder, self.booklets)?;
        choose::distinct(&choice.booklets)?;
        if let Some(share) = self.share {
            let all = std::mem::take(&mut choice.booklets).into_iter().enumerate();
            choice.booklets = all.filter(|(place, _)| share.has(*place)).map(|(_, booklet)| booklet).collect();
            if choice.booklets.is_empty() {
                output::line(&format!("nothing was {}: there are more shares than booklets", self.done));
            }
        }
        let outcome = apart::each(&choice, self.bounds, |booklet| {
            let known = self.memory.map(|memory| memory.recall(&choice.folder, booklet)).transpose()?.flatten();
            if let Some(made) = known {
                output::again(&made.told);
                return Ok(Outcome::Clean);
            }
            self.one(&choice.folder, booklet, &mut work)
        })?;
        self.memory.iter().for_each(|memory| memory.kept.settle());
        Ok(outcome)
    }

    fn one<W: Into<Worked>>(
        &self,
        folder: &Folder,
        booklet: &BookletFolder,
        work: &mut impl FnMut(&BookletFolder, &mut Workshop) -> Result<W, Refusal>,
    ) -> Result<Outcome, Refusal> {
        let (recording, ledger) = folder.recording();
        let mut workshop = Workshop::open(&recording, booklet, Reach::Checks);
        let told = output::to_people(&workshop.report, &workshop.sources, &workshop.sizes);
        output::again(&told);
        if output::outcome(&workshop.report, self.strictness) != Outcome::Clean {
            output::verdict(&booklet.name, &workshop, &workshop.report);
            nothing(&booklet.name, self.done);
            return Ok(Outcome::Findings);
        }
        let Worked { outcome, made } = work(booklet, &mut workshop)?.into();
        if let (Some(memory), Some(made)) = (self.memory, made) {
            let made = Made { told: [told, made.told].concat(), ..made };
            memory.keep(folder, booklet, ledger.looks(), made);
        }
        Ok(outcome)
    }
}

/// Papers, each once, in their order.
pub(super) fn each_once<P: Ord>(papers: impl Iterator<Item = P>) -> Vec<P> {
    let mut papers: Vec<P> = papers.collect();
    papers.sort_unstable();
    papers.dedup();
    papers
}

/// Tells that nothing of a booklet was made.
pub(super) fn nothing(name: &str, done: &str) {
    output::line(&format!("{name}: nothing was {done}; what was {done} before is untouched"));
}
