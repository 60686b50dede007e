//! Every value of one size, worked out; asked by all later stages, and changed by none.

use std::collections::BTreeMap;

use super::ids::PieceId;
use super::mark::MarkAt;
use super::names::{Catalogue, NameKind};
use super::shown::can_be_shown;
use super::worked::Worked;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{NUMBER_TOO_LARGE, SIZE_MISSING, UNIT_MISMATCH};
use crate::geometry::Shape;
use crate::measure::{ExprKind, Lookup, Measure, Names, Outcome, Problem, ProblemKind, Unit, evaluate};
use crate::model::{BySize, Draft, Expression, NotionFigure, is_for};
use crate::source::Span;
use crate::syntax::problem_to_finding;

/// The values of one size.
pub struct Values<'a> {
    pub(super) draft: &'a Draft,
    pub(super) catalogue: &'a Catalogue,
    pub(super) size: usize,
    /// Each piece that was tried; without a shape where it could not be built.
    pub(super) shapes: BTreeMap<PieceId, Option<Shape>>,
    /// The marks of each piece that this size has, in the order of the facts; without a place where one has a
    /// fault.
    pub(super) marks: BTreeMap<PieceId, Vec<Option<MarkAt>>>,
    /// Each name that was tried; without a value where it has a fault.
    pub(super) known: BTreeMap<String, Option<Worked>>,
    /// The names of formulas that lean on other views, each with the sizes of those.
    pub(super) absent: BTreeMap<String, Vec<usize>>,
    /// What is wrong with pieces that this size does not have.
    pub(super) elsewhere: Vec<Finding>,
}

impl<'a> Values<'a> {
    /// The size, by its place in `sizes`.
    pub fn size(&self) -> usize {
        self.size
    }

    /// The marks of a piece, in the order of the facts; `None` where one could not be placed.
    pub fn marks(&self, piece: PieceId) -> &[Option<MarkAt>] {
        self.marks.get(&piece).map_or(&[], Vec::as_slice)
    }

    /// The worked value of a name; `None` when it is unknown or broken.
    pub fn get(&self, name: &str) -> Option<Worked> {
        self.known.get(name).copied().flatten()
    }

    /// The formula behind a name in this size; `None` when nothing with a value is called so.
    pub fn expression(&self, name: &str) -> Option<&'a Expression> {
        let (value, _) = self.definition(name)?;
        value.get(self.size)
    }

    /// Works out a formula with `names`; faults go into `findings`, marked with the size.
    pub fn work_out(&self, expression: &Expression, names: &dyn Names, findings: &mut Findings) -> Option<Worked> {
        let outcome = self.outcome(expression, names, findings)?;
        match outcome {
            Outcome::Quantity(quantity) => {
                let worked = Worked { quantity, stated: self.stated(expression) };
                if can_be_shown(&worked, &self.draft.facts.show) {
                    return Some(worked);
                }
                findings.push(
                    NUMBER_TOO_LARGE
                        .at(expression.span(), "this is too large, or too finely divided, to be printed")
                        .hint("use smaller numbers, or round a part of the formula: round(x, 1 mm)")
                        .in_size(self.size, ""),
                );
                None
            }
            Outcome::Truth(_) => {
                findings.push(
                    UNIT_MISMATCH
                        .at(expression.span(), "a comparison stands where a figure should")
                        .hint(
                            "write a figure or a formula without `<`, `=` or `>`; what must hold goes under `expect:`",
                        )
                        .in_size(self.size, ""),
                );
                None
            }
            Outcome::List(_) => None,
        }
    }

    /// The figure as the author stated it, which a bare name keeps: `{seam}` prints both figures of
    /// `seam: 1 cm (3/8 in)`. `None` where a formula makes a new figure.
    fn stated(&self, expression: &Expression) -> Option<Measure> {
        match &expression.formula.root.kind {
            ExprKind::Name(name) => self.get(name)?.stated,
            _ => expression.formula.as_measure().copied(),
        }
    }

    /// Works out anything, comparisons too.
    pub fn outcome(&self, expression: &Expression, names: &dyn Names, findings: &mut Findings) -> Option<Outcome> {
        match evaluate(&expression.formula, names) {
            Ok(outcome) => Some(outcome),
            Err(problems) => {
                // What this size does not have is worked out for those alone that name it all the same.
                if expression.formula.names().iter().any(|(name, _)| self.is_elsewhere(name)) {
                    findings.extend(self.elsewhere.iter().cloned());
                }
                let names = expression.formula.names();
                findings.extend(names.iter().filter_map(|(name, range)| self.not_here(name, expression, range)));
                for problem in problems.into_iter().filter(|problem| !self.is_not_here(problem)) {
                    let unknown = matches!(problem.kind, ProblemKind::UnknownName(_));
                    let finding = problem_to_finding(&self.guess(problem), &expression.source).in_size(self.size, "");
                    findings.push(if unknown { finding.everywhere() } else { finding });
                }
                None
            }
        }
    }

    /// The value of a [`BySize`] in this size.
    pub fn by_size(&self, value: &BySize, findings: &mut Findings) -> Option<Worked> {
        let expression = value.get(self.size)?;
        self.work_out(expression, self, findings)
    }

    /// Adds "did you mean" to an unknown name.
    fn guess(&self, mut problem: Problem) -> Problem {
        if let ProblemKind::UnknownName(name) = &problem.kind {
            if Unit::parse(name).is_some() {
                return problem;
            }
            let mut names = self.catalogue.in_formulas(self.draft);
            names.extend(self.piece_names(name));
            let (owner, field) = name.split_once('.').unwrap_or((name.as_str(), ""));
            let otherwise = match self.catalogue.get(owner) {
                Some(NameKind::Notion(_)) if NotionFigure::parse(field).is_some() => {
                    format!("give the notion `{owner}` a `{field}:`, or name another value")
                }
                Some(kind) if field.is_empty() => {
                    format!("`{name}` is {}, which has no value of its own: name a measurement", kind.word())
                }
                _ => "write a measurement of booklet.yaml, or add this one there".to_owned(),
            };
            problem.hint = did_you_mean(name, names.iter().map(String::as_str), &otherwise);
        }
        problem
    }

    /// What could have been meant behind the dot of a piece's name.
    fn piece_names(&self, name: &str) -> Vec<String> {
        let Some((owner, _)) = name.split_once('.') else { return Vec::new() };
        let Some(piece) = self.catalogue.get(owner).and_then(|kind| kind.piece()) else { return Vec::new() };
        let Some(shape) = self.whole(piece) else { return Vec::new() };
        let edges = shape.edges().iter().map(|edge| edge.name.clone());
        edges.chain(["width", "height", "area"].map(str::to_owned)).map(|field| format!("{owner}.{field}")).collect()
    }

    /// Whether all that a thing belongs to are sizes of other views.
    pub(super) fn is_of_other_view(&self, sizes: Option<&Vec<usize>>) -> bool {
        let all = &self.draft.facts.sizes;
        sizes.is_some_and(|sizes| sizes.iter().all(|size| !all[*size].shares_view(&all[self.size])))
    }

    /// The sizes that have what a name stands for, where only other views have it.
    pub(super) fn of_other_view(&self, name: &str) -> Option<&Vec<usize>> {
        let facts = &self.draft.facts;
        let owner = name.split_once('.').map_or(name, |(owner, _)| owner);
        let own = match self.catalogue.get(owner) {
            Some(NameKind::Measurement(at)) => facts.measurements[at].sizes.as_ref(),
            Some(NameKind::Notion(at)) => facts.notions[at].sizes.as_ref(),
            Some(NameKind::Piece(at) | NameKind::Copy(at)) => facts.pieces[at].sizes.as_ref(),
            Some(NameKind::Fabric(_)) | None => None,
        };
        self.absent.get(name).or(own.filter(|own| self.is_of_other_view(Some(own))))
    }

    fn is_not_here(&self, problem: &Problem) -> bool {
        matches!(&problem.kind, ProblemKind::UnknownName(name) if self.of_other_view(name).is_some())
    }

    /// The finding for a name in a formula whose value belongs to other views.
    fn not_here(&self, name: &str, expression: &Expression, range: &std::ops::Range<usize>) -> Option<Finding> {
        let sizes = &self.draft.facts.sizes;
        let view = |size: usize| sizes.get(size).and_then(|size| size.view.as_ref()).map(|view| view.id.text.as_str());
        let (here, there) = (view(self.size)?, view(*self.of_other_view(name)?.first()?)?);
        let finding =
            SIZE_MISSING.at(expression.source.at(range.clone()), format!("`{name}` has no value in the view `{here}`"));
        let hint = format!(
            "keep this to the view that has it, with `for: {there}` or, in words, `{{{there}: … | else: …}}`; or give \
             it a value in `{here}`"
        );
        Some(finding.hint(hint).in_size(self.size, ""))
    }

    /// Whether a name belongs to a piece that this size does not have.
    fn is_elsewhere(&self, name: &str) -> bool {
        let owner = name.split_once('.').and_then(|(owner, _)| self.catalogue.get(owner)?.piece());
        owner.is_some_and(|piece| !is_for(self.draft.facts.pieces[piece].sizes.as_ref(), self.size))
    }

    /// The formula behind a name.
    pub(super) fn definition(&self, name: &str) -> Option<(&'a BySize, Span)> {
        let facts = &self.draft.facts;
        match name.split_once('.') {
            None => match self.catalogue.get(name)? {
                NameKind::Measurement(at) => {
                    let measurement = &facts.measurements[at];
                    Some((&measurement.value, measurement.name.span))
                }
                _ => None,
            },
            Some((owner, field)) => match self.catalogue.get(owner)? {
                NameKind::Notion(at) => {
                    let notion = &facts.notions[at];
                    let value = notion.figures.get(&NotionFigure::parse(field)?);
                    value.map(|value| (value, notion.id.span))
                }
                _ => None,
            },
        }
    }

    /// Whether a name stands for something with a value, whether or not that could be worked out.
    fn is_defined(&self, name: &str) -> bool {
        let piece = || {
            let (owner, _) = name.split_once('.')?;
            self.catalogue.get(owner)?.piece()
        };
        self.definition(name).is_some() || piece().is_some_and(|piece| self.shape(piece).is_none())
    }
}

impl Names for Values<'_> {
    fn value(&self, name: &str) -> Lookup {
        match self.known.get(name) {
            Some(Some(worked)) => Lookup::Found(worked.quantity),
            Some(None) => Lookup::Broken,
            None if self.is_defined(name) => Lookup::Broken,
            None => Lookup::Unknown,
        }
    }
}
