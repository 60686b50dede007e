//! What a verb is done to, copy by copy.

use super::desk::Desk;
use super::part::Part;
use super::past::{Held, held};
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionWork};

/// A copy with the edges that a fact names; none at all when it names the whole copy.
pub(super) struct Handled<'a, 'e> {
    pub copy: CopyId,
    pub edges: Vec<String>,
    pub work: &'a EditionWork<'e>,
}

impl Handled<'_, '_> {
    /// The edges that the fact names; of a copy named as a whole, all of its part.
    pub fn edges_of<'p>(&'p self, part: &'p Part) -> Vec<&'p str> {
        match self.edges.is_empty() {
            true => part.rims.iter().map(|rim| rim.name.as_str()).collect(),
            false => self.edges.iter().map(String::as_str).collect(),
        }
    }
}

/// Every copy that a verb of the step names, with its edges.
pub(super) fn handled<'a, 'e>(desk: &Desk<'a, 'e>, verb: Verb) -> Vec<Handled<'a, 'e>> {
    let mut found: Vec<Handled<'a, 'e>> = Vec::new();
    let inside = matches!(verb, Verb::Dart | Verb::Pleat | Verb::Tuck | Verb::Mark | Verb::Slash) || verb.counts();
    for work in desk.step.works.iter().filter(|work| work.verb == verb) {
        for target in drawn_of(work, desk.edition) {
            match target {
                // Several darts of one copy are shown on it together.
                Held::Copy(copy)
                    if inside && found.iter().any(|one| one.copy == copy && std::ptr::eq(one.work, work)) => {}
                Held::Copy(copy) => found.push(Handled { copy, edges: Vec::new(), work }),
                Held::Edge(copy, edge) => {
                    // Snips are alike, whichever fact asks for them; so are edges to which the same is done.
                    let same = |one: &Handled<'_, '_>| {
                        verb == Verb::Clip
                            || std::ptr::eq(one.work, work)
                            || (!one.edges.is_empty() && alike(one.work, work))
                    };
                    let known = found.iter_mut().find(|one| one.copy == copy && same(one));
                    match known {
                        Some(one) if one.edges.contains(&edge) => {}
                        Some(one) => one.edges.push(edge),
                        None => found.push(Handled { copy, edges: vec![edge], work }),
                    }
                }
                Held::Notion(_) | Held::ZipEdge(..) => {}
            }
        }
    }
    found
}

/// Whether two facts do the same in the same way, so that one drawing of a piece shows both.
fn alike(one: &EditionWork<'_>, other: &EditionWork<'_>) -> bool {
    let way = |work: &EditionWork<'_>| {
        let figures = [work.allowance, work.gather, work.leave].map(|figure| figure.map(|figure| figure.quantity));
        let words: Vec<String> = work.work.words.iter().map(|words| words.text.clone()).collect();
        (figures, words, work.work.by_hand, work.work.finish)
    };
    way(one) == way(other)
}

/// What a fact names, but for the strips that bind the edges beside them: these are drawn as the binding.
pub(super) fn drawn_of(work: &EditionWork<'_>, edition: &Edition<'_>) -> Vec<Held> {
    let mut named = held(work, edition);
    if work.verb == Verb::Bind && named.iter().any(|target| matches!(target, Held::Edge(..))) {
        named.retain(|target| !matches!(target, Held::Copy(_)));
    }
    named
}
