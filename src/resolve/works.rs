//! Work facts of one size: lengths worked out, names led to what they stand for.

use super::names::{Catalogue, NameKind};
use super::scope::Scope;
use super::shown::{Shown, stitch_figures};
use super::values::Worked;
use crate::diag::{Finding, Findings, did_you_mean, in_sentence};
use crate::faults::{OUT_OF_RANGE, UNIT_MISMATCH, UNKNOWN_NAME};
use crate::measure::{Dimension, Exact};
use crate::model::{Draft, Expression, Name, Text, Verb, Work};

/// A work fact of one size.
#[derive(Debug, Clone)]
pub struct EditionWork<'a> {
    /// The fact as written.
    pub work: &'a Work,
    /// What is done.
    pub verb: Verb,
    /// What it touches, parameters filled in: pieces, copies, edges, notions; `all` for everything.
    pub touches: Vec<Name>,
    /// How far from the edge.
    pub allowance: Option<Worked>,
    /// How long a stitch.
    pub stitch: Option<Worked>,
    /// How long a gap is left.
    pub leave: Option<Worked>,
    /// How much is eased in.
    pub ease: Option<Worked>,
    /// How long a gathered edge becomes.
    pub gather: Option<Worked>,
}

impl<'a> EditionWork<'a> {
    /// Works a fact out; unknown names and faulty lengths are findings.
    pub(super) fn new(
        work: &'a Work,
        draft: &Draft,
        catalogue: &Catalogue,
        scope: &Scope<'_>,
        findings: &mut Findings,
    ) -> EditionWork<'a> {
        let touches = touches(work, scope, findings);
        for name in &touches {
            check_name(name, work, draft, catalogue, findings);
        }
        for words in &work.words {
            check_words(words, draft, catalogue, scope, findings);
        }
        let mut length = |formula: &Option<Expression>| scope.work_out_fact(formula.as_ref()?, findings);
        let stitch = length(&work.stitch);
        let mut length = |formula: &Option<Expression>| {
            let worked = length(formula)?;
            scope.values.note_printed(formula.as_ref()?, worked);
            Some(worked)
        };
        let (allowance, leave, ease, gather) =
            (length(&work.allowance), length(&work.leave), length(&work.ease), length(&work.gather));
        let mut sane = |key: &str, formula: &Option<Expression>, worked: Option<Worked>, most: i128| {
            let (formula, worked) = (formula.as_ref()?, worked?);
            match fault(key, formula, worked, most, scope.values.size()) {
                Some(finding) => {
                    findings.push(finding);
                    None
                }
                None => Some(worked),
            }
        };
        EditionWork {
            work,
            verb: work.verb,
            touches,
            allowance: sane("allowance", &work.allowance, allowance, 150),
            stitch: sane("stitch", &work.stitch, stitch, 12),
            leave: sane("leave", &work.leave, leave, 3000),
            ease: sane("ease", &work.ease, ease, 3000),
            gather: sane("gather", &work.gather, gather, 100_000),
        }
    }

    /// The seam facts as printed: allowance and stitch.
    pub fn allowance_figures(&self, draft: &Draft) -> Option<Shown> {
        self.allowance.map(|worked| Shown::of(&worked, &draft.facts.show))
    }

    /// The stitch length as printed.
    pub fn stitch_figures(&self, draft: &Draft) -> Option<Shown> {
        self.stitch.map(|worked| stitch_figures(&worked, &draft.facts.show))
    }

    /// What it touches, in words: "front top, zip tape a".
    pub fn spoken(&self, draft: &Draft, catalogue: &Catalogue) -> String {
        let mut names: Vec<String> = Vec::new();
        for name in &self.touches {
            let spoken = speak(&name.text, draft, catalogue);
            if !names.contains(&spoken) {
                names.push(spoken);
            }
        }
        names.join(", ")
    }
}

/// What is wrong with a length of a work fact: no length at all, or none that a maker could mean.
fn fault(key: &str, formula: &Expression, worked: Worked, most: i128, size: usize) -> Option<Finding> {
    let quantity = worked.quantity;
    let text = formula.formula.text.trim();
    let finding = if quantity.dimension != Dimension::Length {
        UNIT_MISMATCH
            .at(formula.span(), format!("`{key}` is a length, not {}", quantity.dimension.name()))
            .hint(format!("give it a unit, such as `{key}: {text} cm`, or name a measurement"))
    } else if quantity.value < Exact::from_integer(0) || quantity.value > Exact::from_integer(most) {
        let usual = if key == "stitch" { "2.5 mm" } else { "1 cm" };
        OUT_OF_RANGE
            .at(formula.span(), format!("`{text}` cannot be meant as `{key}`"))
            .hint(format!("see whether the unit is right: `{key}: {usual}` is usual"))
    } else {
        return None;
    };
    Some(finding.in_size(size, ""))
}

/// Parameters of a shared part stand for what was handed over: one name, or several with commas.
fn touches(work: &Work, scope: &Scope<'_>, findings: &mut Findings) -> Vec<Name> {
    let mut names = Vec::new();
    for name in &work.touches {
        match scope.params.iter().find(|param| param.name.text == name.text) {
            Some(param) => {
                for word in param.text.text.split(',').map(str::trim).filter(|word| !word.is_empty()) {
                    if word.contains(' ') {
                        findings.push(
                            UNKNOWN_NAME
                                .at(param.text.span, format!("`{word}` is no piece, edge or notion"))
                                .hint("hand over names, with commas between them")
                                .note(name.span, "used here as a name"),
                        );
                        continue;
                    }
                    let at = param.text.text.find(word).unwrap_or(0);
                    names.push(Name { text: word.to_owned(), span: param.text.at(at..at + word.len()) });
                }
            }
            None => names.push(name.clone()),
        }
    }
    names
}

/// `back right` is two words, and most likely meant as the edge `back.right`.
fn check_words(words: &Text, draft: &Draft, catalogue: &Catalogue, scope: &Scope<'_>, findings: &mut Findings) {
    let Some((owner, edge)) = words.text.split_once(' ') else { return };
    let Some(piece) = catalogue.get(owner).and_then(|kind| kind.piece()) else { return };
    let edge = edge.trim();
    let known = scope.values.shape(piece).is_some_and(|shape| shape.edge(edge).is_some());
    if known {
        let piece = &draft.facts.pieces[piece].id.text;
        findings.push(
            UNKNOWN_NAME
                .at(
                    words.span,
                    format!("`{}` is read as plain words, but `{edge}` is an edge of `{piece}`", words.text),
                )
                .hint(format!("join them with a dot: `{owner}.{edge}`")),
        );
    }
}

fn check_name(name: &Name, work: &Work, draft: &Draft, catalogue: &Catalogue, findings: &mut Findings) {
    if name.text == "all" && work.verb == Verb::Cut {
        return;
    }
    let owner = name.text.split('.').next().unwrap_or("");
    let stands_for = catalogue.get(owner);
    if matches!(stands_for, Some(NameKind::Piece(_) | NameKind::Copy(_) | NameKind::Notion(_) | NameKind::Fabric(_))) {
        return;
    }
    let names: Vec<&str> =
        catalogue.all().filter(|name| !matches!(catalogue.get(name), Some(NameKind::Measurement(_)))).collect();
    let message = match stands_for {
        Some(kind) => format!("`{owner}` is {}, not a piece or a notion", kind.word()),
        None => format!("no piece, copy or notion is called `{owner}`"),
    };
    let end = name.span.start as usize + owner.len();
    let span = crate::source::Span::new(name.span.file, name.span.start as usize..end.min(name.span.end as usize));
    let pieces = draft.facts.pieces.iter().map(|piece| piece.id.text.as_str()).collect::<Vec<_>>().join(", ");
    findings.push(
        UNKNOWN_NAME.at( span, message)
            .hint(did_you_mean(
                owner,
                names,
                &format!("the pieces are: {pieces}; a copy's name stands under its piece's `cut:`; plain words have a space between them"),
            ))
            .everywhere(),
    );
}

/// `lining_front.top` as "lining front, top edge"; a piece or a notion by its name on the page.
fn speak(name: &str, draft: &Draft, catalogue: &Catalogue) -> String {
    if name == "all" {
        return "all pieces".into();
    }
    let (owner, edge) = name.split_once('.').map_or((name, None), |(owner, edge)| (owner, Some(edge)));
    let facts = &draft.facts;
    let owner = match catalogue.get(owner) {
        Some(NameKind::Piece(at)) => in_sentence(&facts.pieces[at].name.text),
        Some(NameKind::Notion(at)) => in_sentence(&facts.notions[at].name.text),
        Some(NameKind::Fabric(at)) => in_sentence(&facts.fabrics[at].name.text),
        _ => owner.replace('_', " "),
    };
    match edge {
        None => owner,
        Some(edge) if edge.contains("tape") || edge.contains("corner") => format!("{owner} {}", edge.replace('_', " ")),
        Some(edge) => format!("{owner} {} edge", edge.replace('_', " ")),
    }
}
