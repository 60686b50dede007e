//! A check and how it runs.

use std::collections::BTreeSet;
use std::ops::Deref;

use crate::cloth::Laid;
use crate::construct::{History, Played};
use crate::diag::{Check, Findings};
use crate::figure::Figures;
use crate::model::{Draft, Text, Vocabulary};
use crate::resolve::Edition;
use crate::syntax::Needs;

use super::step_words::StepWords;

/// Everything that checks of a whole booklet may look at.
pub struct Subject<'a> {
    /// The booklet as written.
    pub draft: &'a Draft,
    /// Every size, worked out.
    pub editions: &'a [Edition<'a>],
    /// Every size, played; in the order of the editions.
    pub histories: &'a [History],
    /// The ways through each size where something is left to the maker, the first with all that may be done; none
    /// where nothing is.
    pub ways: &'a [Vec<Played<'a>>],
    /// The cloth of every size with each thing that is left to the maker, by its place in the draft.
    pub cloth_with: &'a [Vec<(usize, Laid)>],
    /// The diagrams.
    pub figures: &'a Figures,
    /// The words of the house that the booklet brought itself.
    pub labels: &'a [Text],
    /// What work needs at hand, by the words that makers know it by.
    pub needs: &'a Needs,
    /// What the words of the booklet's language mean; empty for a language that the house does not know.
    pub vocabulary: &'a Vocabulary,
    /// Every letter and sign that the fonts hold.
    pub letters: &'a BTreeSet<char>,
    /// The cloth of every size, laid or too narrow; in the order of the editions.
    pub cloth: &'a [Laid],
    /// The words of every step, once a check has asked for them.
    pub read: StepWords<'a>,
}

/// How a check runs.
#[derive(Clone, Copy)]
pub enum Run {
    /// The fault is met while the booklet is read, worked out, drawn or set.
    Elsewhere,
    /// Once for a booklet.
    Booklet(fn(&Subject<'_>, &mut Findings)),
    /// Once for each size.
    Edition(fn(&Edition<'_>, &mut Findings)),
    /// Once for each size, over the steps as they were played.
    Construction(fn(&Edition<'_>, &History, &mut Findings)),
}

/// A check with its function, if it has one.
#[derive(Clone, Copy)]
pub struct Judge {
    /// The check.
    pub check: &'static Check,
    /// How it runs.
    pub run: Run,
}

impl Judge {
    /// A check whose fault is met by an earlier stage.
    pub const fn elsewhere(check: &'static Check) -> Judge {
        Judge { check, run: Run::Elsewhere }
    }

    /// A check of a whole booklet.
    pub const fn booklet(check: &'static Check, run: fn(&Subject<'_>, &mut Findings)) -> Judge {
        Judge { check, run: Run::Booklet(run) }
    }

    /// A check of one size.
    pub const fn edition(check: &'static Check, run: fn(&Edition<'_>, &mut Findings)) -> Judge {
        Judge { check, run: Run::Edition(run) }
    }

    /// A check of the steps as they were played.
    pub const fn construction(check: &'static Check, run: fn(&Edition<'_>, &History, &mut Findings)) -> Judge {
        Judge { check, run: Run::Construction(run) }
    }
}

impl Deref for Judge {
    type Target = Check;

    fn deref(&self) -> &Check {
        self.check
    }
}
