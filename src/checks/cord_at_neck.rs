//! A size for a child has a tie, a strap or a cord at the neck.
//!
//! ## Why it matters
//! A cord at the neck catches on a handle, a slide or a door, and strangles. This is an error that only the author's own
//! reason takes away: how it is made, and the rule that she has looked up.
//!
//! ## Wrong
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! notions:
//!   neck_cord: {kind: tape, name: Neck cord, length: 60 cm (23 5/8 in)}
//! ```
//!
//! ## Right
//! ```yaml
//! sizes:
//!   small: {name: Small, wearer: child}
//!   large: {name: Large, wearer: adult}
//! ```
//!
//! ## Limits
//! Goes by names, of pieces, copies and notions, that hold both a word for a cord and one for the neck or a hood, and by
//! work that sews such a thing to an edge with such a name, and by the headings of the steps. A binding or a facing is no cord. The words stand in
//! `templates/needs-en.json`. EN 14682 is a standard on cords and drawstrings on children's clothing (from memory): look up
//! the rule of your place, and name it in the waiver. A waiver says that you looked, never that the thing is safe. English
//! booklets alone.

use super::house_words_english::is_english;
use super::judge::{Judge, Subject};
use super::needed::{says, stems};
use super::passage::{Stands, passages, place};
use crate::diag::{Check, Finding, Findings, Group};
use crate::model::{Kind, Wearer, is_for};
use crate::resolve::{CopyId, Edition, EditionStep, NameKind};
use crate::source::Span;
use crate::syntax::Harm;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("cord-at-neck", Group::Facts, include_str!("cord_at_neck.rs")).waivable(), run);

/// Looks at the names and the work of every size for a child.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    if !is_english(&subject.draft.facts.language.text) {
        return;
    }
    let harm = &subject.needs.harm;
    for edition in subject.editions.iter().filter(|edition| edition.size_facts().wearer == Wearer::Child) {
        let mut owners: Vec<String> = Vec::new();
        for (id, names, span) in things(edition) {
            if names.iter().any(|name| ties_the_neck(name, harm)) {
                findings.push(told(edition, &id, span));
                owners.push(id);
            }
        }
        for work in edition.steps().flat_map(|step| &step.works) {
            let owner = |name: &str| name.split('.').next().unwrap_or("").to_owned();
            let at_neck =
                |name: &str| name.split_once('.').is_some_and(|(_, edge)| says(&edge.replace('_', " "), &harm.neck));
            let neck = work.targets.iter().any(|target| at_neck(&target.name.text));
            let tied = work.named().map(|target| owner(&target.name.text)).find(|id| is_cord(edition, id, harm));
            let Some(id) = tied.filter(|id| neck && work.verb.lasts() && !owners.contains(id)) else { continue };
            findings.push(told(edition, &id, work.work.verb_span));
            owners.push(id);
        }
        for step in edition.steps() {
            findings.extend(headed(edition, step, harm));
        }
    }
}

/// A step of a child's size whose heading speaks of a tie at the neck.
fn headed(edition: &Edition<'_>, step: &EditionStep<'_>, harm: &Harm) -> Option<Finding> {
    let title =
        passages(step.step, Some(edition.size())).into_iter().find(|passage| passage.stands == Stands::Title)?;
    let text = stems(&title.tokens).join(" ");
    let ties = says(&text, &harm.ties) && says(&text, &harm.neck);
    let span = place(&title.tokens).filter(|_| ties && !says(&text, &harm.no_cords) && !says(&text, &harm.denials))?;
    Some(
        CHECK
            .at(span, "this step is for a size for a child, and has a tie or a cord at the neck")
            .hint("keep the step to the sizes for adults with `for=`, or waive it with your reason and the rule that you looked up, such as EN 14682")
            .in_size(edition.size(), ""),
    )
}

/// Whether a size has a cord, a tie or a strap at the neck.
pub(super) fn is_tied(edition: &Edition<'_>, harm: &Harm) -> bool {
    things(edition).iter().any(|(_, names, _)| names.iter().any(|name| ties_the_neck(name, harm)))
}

/// Whether a name is that of a cord, a tie or a strap at the neck.
fn ties_the_neck(name: &str, harm: &Harm) -> bool {
    says(name, &harm.cords) && says(name, &harm.neck) && !says(name, &harm.no_cords)
}

/// Whether a copy bears the name of a cord, a tie or a strap at the neck.
pub(super) fn is_neck_tie(edition: &Edition<'_>, copy: CopyId, harm: &Harm) -> bool {
    names_of(edition, copy).iter().any(|name| ties_the_neck(name, harm))
}

/// Whether a copy bears the name of a cord, a tie or a strap.
pub(super) fn is_tie(edition: &Edition<'_>, copy: CopyId, harm: &Harm) -> bool {
    names_of(edition, copy).iter().any(|name| says(name, &harm.cords))
}

fn names_of(edition: &Edition<'_>, copy: CopyId) -> [String; 3] {
    let piece = &edition.draft.facts.pieces[edition.cast[copy].piece];
    [piece.id.text.replace('_', " "), piece.name.text.clone(), edition.copy_name(copy)]
}

fn told(edition: &Edition<'_>, id: &str, span: Span) -> Finding {
    CHECK
        .at(span, format!("`{id}` is a cord, a tie or a strap at the neck of a size for a child"))
        .hint("leave it out of the sizes for children, or waive it with your reason and the rule that you looked up, such as EN 14682")
        .in_size(edition.size(), "")
}

/// Pieces and notions of a size: the name in the files, all names, and where it stands.
fn things(edition: &Edition<'_>) -> Vec<(String, Vec<String>, Span)> {
    let facts = &edition.draft.facts;
    let size = edition.size();
    let mut things = Vec::new();
    for piece in facts.pieces.iter().filter(|piece| is_for(piece.sizes.as_ref(), size)) {
        let copies = piece.copies_in(size).map(|copy| piece.copy_called(&copy.text));
        let names = [piece.id.text.replace('_', " "), piece.name.text.clone()].into_iter().chain(copies);
        things.push((piece.id.text.clone(), names.collect(), piece.id.span));
    }
    for notion in facts.notions.iter().filter(|notion| is_for(notion.sizes.as_ref(), size)) {
        let names = vec![notion.id.text.replace('_', " "), notion.name.text.clone()];
        things.push((notion.id.text.clone(), names, notion.id.span));
    }
    things
}

/// Whether a name is that of a cord, a tie or a strap, or of a ribbon among the notions.
fn is_cord(edition: &Edition<'_>, id: &str, harm: &Harm) -> bool {
    let facts = &edition.draft.facts;
    let names = match edition.catalogue.get(id) {
        Some(NameKind::Piece(piece)) => vec![id.replace('_', " "), facts.pieces[piece].name.text.clone()],
        Some(NameKind::Copy(piece)) => {
            vec![id.replace('_', " "), facts.pieces[piece].copy_called(id), facts.pieces[piece].name.text.clone()]
        }
        Some(NameKind::Notion(notion)) if facts.notions[notion].kind != Kind::Zip => {
            vec![id.replace('_', " "), facts.notions[notion].name.text.clone()]
        }
        _ => return false,
    };
    names.iter().any(|name| says(name, &harm.cords)) && !names.iter().any(|name| says(name, &harm.no_cords))
}
