//! How the commands that make files begin: each chosen booklet is opened, its findings are told, and only one without
//! what stops is worked on.

use std::path::Path;

use super::apart::{self, Bounds};
use super::args::{Form, Strictness};
use super::{Outcome, Refusal, choose, output};
use crate::pipeline::{Reach, Workshop};
use crate::source::BookletFolder;

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
}

impl Opening<'_> {
    /// Works on each booklet that nothing stops.
    pub fn each(
        &self,
        mut work: impl FnMut(&BookletFolder, &mut Workshop) -> Result<Outcome, Refusal>,
    ) -> Result<Outcome, Refusal> {
        let choice = choose::booklets(self.folder, self.booklets)?;
        choose::distinct(&choice.booklets)?;
        apart::each(&choice, self.bounds, |booklet| {
            let mut workshop = Workshop::open(&choice.folder, booklet, Reach::Checks);
            output::report(&workshop.report, &workshop, Form::People);
            let stands = output::outcome(&workshop.report, self.strictness) == Outcome::Clean;
            let outcome = match stands {
                true => work(booklet, &mut workshop)?,
                false => {
                    output::verdict(&booklet.name, &workshop, &workshop.report);
                    nothing(&booklet.name, self.done);
                    Outcome::Findings
                }
            };
            // What Typst remembers of one booklet is of little use to the next.
            comemo::evict(0);
            Ok(outcome)
        })
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
