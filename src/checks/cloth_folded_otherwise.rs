//! The words of a step fold the cloth in another way than its cutting layout.
//!
//! ## Why it matters
//! The layout is drawn on cloth that lies in one way, and the amount to buy is reckoned for it. Cloth that the maker
//! folds otherwise has other edges, and pieces find no room on it or come out as two of one hand.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Fold the fabric in half, right sides together, and cut both tabs at once. Press them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab: {name: Tab, outline: {rectangle: [5 cm, 5 cm]}, raw: all, cut: {outer: [tab_one, tab_two]}}
//! ```
//! ````md
//! ## Make the tabs {#tabs}
//!
//! ```work
//! - cut: tab
//! - press: [tab_one, tab_two]
//! ```
//!
//! Lay the fabric in a single layer, right side up, and cut both tabs. Press them.
//! ````
//!
//! ## Limits
//! Looks at steps that cut, and at sentences that fold the cloth, lay it in one layer, or cut a piece on the fold; those
//! that forbid something or leave a choice are passed over. A layout is folded, along its length and with the right sides
//! together, where one of its pieces is cut on the fold. The words stand in `templates/vocabulary-en.json`.

use super::judge::{Judge, Subject};
use super::passage::{Passage, Stands, Token, any_of, length, one_of, place};
use super::printed_words::each_step;
use crate::cloth::{ClothLayout, Laid, lies_at_fold};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{ReferenceKind, Verb, Vocabulary};
use crate::resolve::{Edition, EditionStep, FabricId, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("cloth-folded-otherwise", Group::Words, include_str!("cloth_folded_otherwise.rs"))
        .waivable_in(Home::Words),
    run,
);

/// How many words may stand between folding and the cloth.
const REACH: usize = 3;

/// Looks at every step of every size that cuts from cloth.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    each_step(subject, &mut |edition, step, passages| {
        let Some(laid) = subject.cloth.get(edition.size()) else { return };
        let fabrics = cut_from(edition, step);
        if fabrics.is_empty() || step.works.iter().any(|work| work.verb == Verb::Fold) {
            return;
        }
        let sentences = passages.iter().filter(|passage| passage.stands == Stands::Body).flat_map(Passage::sentences);
        for sentence in sentences {
            let open = [&subject.vocabulary.forbids, &subject.vocabulary.alternatives];
            if Passage::points_away(sentence) || open.iter().any(|words| any_of(sentence, words)) {
                continue;
            }
            let told = Told { sentence, edition, vocabulary: subject.vocabulary };
            let wrong = told.cloth(&layouts(laid, told.named(&fabrics))).or_else(|| told.on_fold());
            let Some((tokens, message, hint)) = wrong else { continue };
            let Some(span) = place(tokens) else { continue };
            findings.push(CHECK.at(span, message).hint(hint).in_size(edition.size(), ""));
        }
    });
}

/// The fabrics that a step cuts from.
fn cut_from(edition: &Edition<'_>, step: &EditionStep<'_>) -> Vec<FabricId> {
    let cuts = step.works.iter().filter(|work| work.verb == Verb::Cut);
    let mut found: Vec<FabricId> = Vec::new();
    for touched in cuts.flat_map(|work| work.touched()) {
        let fabric = match touched {
            Touched::Copy(copy) => edition.cast[copy].fabric,
            _ => None,
        };
        found.extend(fabric.filter(|fabric| !found.contains(fabric)));
    }
    found
}

fn layouts(laid: &Laid, fabrics: Vec<FabricId>) -> Vec<&ClothLayout> {
    let whole = laid.iter().filter_map(|layout| layout.as_ref().ok());
    whole.filter(|layout| fabrics.contains(&layout.bolt.fabric)).collect()
}

/// Words, what is wrong with them, and what to do.
type Wrong<'a, 't> = (&'a [Token<'t>], String, &'static str);

/// A sentence of a step that cuts.
struct Told<'a, 't> {
    sentence: &'a [Token<'t>],
    edition: &'a Edition<'a>,
    vocabulary: &'a Vocabulary,
}

impl<'a, 't> Told<'a, 't> {
    /// The fabrics that it names, or else all that are cut from.
    fn named(&self, all: &[FabricId]) -> Vec<FabricId> {
        let facts = &self.edition.draft.facts;
        let leads = self.sentence.iter().filter_map(|token| token.leads);
        let fabrics: Vec<&str> =
            leads.filter(|leads| leads.kind == ReferenceKind::Fabric).map(|leads| leads.target.as_str()).collect();
        let is_named =
            |fabric: &&FabricId| fabrics.is_empty() || fabrics.contains(&facts.fabrics[**fabric].id.text.as_str());
        all.iter().filter(is_named).copied().collect()
    }

    /// Cloth folded that its layout has flat, or the other way round, or along another line.
    fn cloth(&self, layouts: &[&ClothLayout]) -> Option<Wrong<'a, 't>> {
        let words = &self.vocabulary.cloth_lies;
        let folded = !layouts.is_empty() && layouts.iter().all(|layout| layout.bolt.folded);
        let flat = !layouts.is_empty() && layouts.iter().all(|layout| !layout.bolt.folded);
        if let Some(tokens) = self.folding() {
            if flat {
                return Some((
                    tokens,
                    "the words fold the cloth, which its cutting layout has in a single layer".to_owned(),
                    "let it lie flat, or give a piece of it a `fold:` so that the layout folds it too",
                ));
            }
            if folded && any_of(self.sentence, &words.across) {
                return Some((
                    tokens,
                    "the words fold the cloth across, which its cutting layout folds along its length".to_owned(),
                    "fold it along its length, selvedge on selvedge",
                ));
            }
            if folded && any_of(self.sentence, &self.vocabulary.together[1]) {
                return Some((
                    tokens,
                    "the words fold the cloth wrong sides together, which its cutting layout folds right sides together".to_owned(),
                    "fold it right sides together",
                ));
            }
            return None;
        }
        let single = |layout: &&ClothLayout| {
            layout.opened_from.is_some() || layout.pieces.iter().any(|laid| layout.single_layer(laid))
        };
        if !folded || layouts.iter().any(single) || !self.is_of_cloth() {
            return None;
        }
        let tokens = self.phrase(&words.flat)?;
        Some((
            tokens,
            "the words lay the cloth in one layer, which its cutting layout folds in half".to_owned(),
            "fold it along its length, right sides together; a piece that is cut on the fold needs it",
        ))
    }

    /// A piece cut on the fold that is laid away from it.
    fn on_fold(&self) -> Option<Wrong<'a, 't>> {
        let tokens = self.phrase(&self.vocabulary.cloth_lies.on_fold)?;
        let leads = self.sentence.iter().filter_map(|token| token.leads);
        let mut pieces: Vec<&str> =
            leads.filter(|leads| leads.kind == ReferenceKind::Piece).map(|leads| leads.target.as_str()).collect();
        pieces.dedup();
        let [name] = pieces[..] else { return None };
        let edition = self.edition;
        let facts = &edition.draft.facts;
        let of = |piece: crate::resolve::PieceId| facts.pieces[piece].id.text == name;
        let rows: Vec<_> = edition.cuts.iter().filter(|row| of(row.piece) && row.fabric().is_some()).collect();
        let at_fold =
            rows.iter().any(|row| row.fabric().is_some_and(|fabric| lies_at_fold(edition, row.piece, fabric)));
        (!rows.is_empty() && !at_fold).then(|| {
            let message = format!("`{name}` lies away from the fold in its cutting layout");
            (
                tokens,
                message,
                "say under `fold:` which edge of it lies on the fold, along the grain, or take the words out",
            )
        })
    }

    /// Where the cloth, and not a piece of it, is folded.
    fn folding(&self) -> Option<&'a [Token<'t>]> {
        let words = &self.vocabulary.cloth_lies;
        (0..self.sentence.len()).find_map(|at| {
            let long = one_of(self.sentence, at, &words.fold).map(length)?;
            let end = (at + long..self.sentence.len().min(at + long + REACH)).find(|to| self.is_cloth(*to))?;
            self.ends(end + 1).then(|| &self.sentence[at..=end])
        })
    }

    /// Whether the cloth itself is spoken of.
    fn is_of_cloth(&self) -> bool {
        (0..self.sentence.len()).any(|at| self.is_cloth(at))
    }

    fn is_cloth(&self, at: usize) -> bool {
        let leads = self.sentence[at].leads.is_some_and(|leads| leads.kind == ReferenceKind::Fabric);
        leads || one_of(self.sentence, at, &self.vocabulary.cloth_lies.cloth).is_some()
    }

    /// Whether a noun ends here: "the fabric strip" is no cloth.
    fn ends(&self, at: usize) -> bool {
        let Some(token) = self.sentence.get(at) else { return true };
        let more = token.leads.is_some_and(|leads| leads.kind == ReferenceKind::Fabric);
        let follows = one_of(self.sentence, at, &self.vocabulary.cloth_lies.after).is_some();
        more && self.ends(at + 1) || token.gap.contains(',') || follows
    }

    fn phrase(&self, words: &[String]) -> Option<&'a [Token<'t>]> {
        (0..self.sentence.len()).find_map(|at| {
            let long = one_of(self.sentence, at, words).map(length)?;
            Some(&self.sentence[at..at + long])
        })
    }
}
