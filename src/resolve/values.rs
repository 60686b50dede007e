//! Every value of one size, worked out once, in whatever order the facts define them.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use super::ids::PieceId;
use super::names::{Catalogue, NameKind};
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{FORMULA_RING, NESTED_TOO_DEEP, UNIT_MISMATCH};
use crate::geometry::Shape;
use crate::measure::{ExprKind, Lookup, Measure, Names, Outcome, Problem, ProblemKind, Quantity, Unit, evaluate};
use crate::model::{BySize, Draft, Expression, is_for};
use crate::source::Span;
use crate::syntax::problem_to_finding;

/// The longest chain of formulas that lean on one another.
const LONGEST_CHAIN: usize = 100;

/// A value and, when its formula is one figure, the figure as stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Worked {
    /// The exact value.
    pub quantity: Quantity,
    /// The figure as the author wrote it; `None` for a formula.
    pub stated: Option<Measure>,
}

/// The values of one size.
pub struct Values<'a> {
    pub(super) draft: &'a Draft,
    catalogue: &'a Catalogue,
    size: usize,
    pub(super) shapes: RefCell<BTreeMap<PieceId, Option<Rc<Shape>>>>,
    pub(super) building: RefCell<Vec<PieceId>>,
    known: RefCell<BTreeMap<String, Option<Worked>>>,
    open: RefCell<Vec<(String, Span)>>,
    pub(super) findings: RefCell<Findings>,
    used: RefCell<BTreeSet<String>>,
    printed: RefCell<Vec<(Span, Worked)>>,
}

impl<'a> Values<'a> {
    /// Works out every measurement of a size; faults go into `findings`, marked with the size.
    pub fn new(draft: &'a Draft, catalogue: &'a Catalogue, size: usize, findings: &mut Findings) -> Values<'a> {
        let values = Values {
            draft,
            catalogue,
            size,
            shapes: RefCell::default(),
            building: RefCell::default(),
            known: RefCell::default(),
            open: RefCell::default(),
            findings: RefCell::default(),
            used: RefCell::default(),
            printed: RefCell::default(),
        };
        for measurement in &draft.facts.measurements {
            values.named(&measurement.name.text);
        }
        for (id, piece) in PieceId::each(&draft.facts.pieces) {
            if is_for(piece.sizes.as_ref(), size) {
                values.shape(id);
            }
        }
        findings.extend(values.findings.take().iter().cloned());
        values
    }

    /// The size, by its place in `sizes`.
    pub fn size(&self) -> usize {
        self.size
    }

    /// The worked value of a name; `None` when it is unknown or broken.
    pub fn get(&self, name: &str) -> Option<Worked> {
        self.known.borrow().get(name).copied().flatten()
    }

    /// The formula behind a name in this size; `None` when nothing with a value is called so.
    pub fn expression(&self, name: &str) -> Option<&'a Expression> {
        let (value, _) = self.definition(name)?;
        value.get(self.size)
    }

    /// The names that any formula so far has used.
    pub fn used(&self) -> BTreeSet<String> {
        self.used.borrow().clone()
    }

    /// Takes down that a value was printed by a formula of its own, for the checks of both systems.
    /// A bare name is left out: its figures are judged where it is defined.
    pub fn note_printed(&self, expression: &Expression, worked: Worked) {
        if !matches!(expression.formula.root.kind, ExprKind::Name(_)) {
            self.printed.borrow_mut().push((expression.span(), worked));
        }
    }

    /// The values that formulas of their own printed, and where those stand.
    pub fn printed(&self) -> Vec<(Span, Worked)> {
        self.printed.borrow().clone()
    }

    /// Works out a formula with `names`; faults go into `findings`, marked with the size.
    pub fn work_out(&self, expression: &Expression, names: &dyn Names, findings: &mut Findings) -> Option<Worked> {
        let outcome = self.outcome(expression, names, findings)?;
        match outcome {
            Outcome::Quantity(quantity) => Some(Worked { quantity, stated: self.stated(expression) }),
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
                // A fault met while a name was worked out on the way belongs to that name.
                findings.extend(self.findings.take().iter().cloned());
                for problem in problems {
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
        let worked = self.work_out(expression, self, findings)?;
        self.note_printed(expression, worked);
        Some(worked)
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
                Some(NameKind::Notion(_)) if matches!(field, "length" | "amount" | "count") => {
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
        let Some(shape) = self.shape(piece) else { return Vec::new() };
        let edges = shape.edges().iter().map(|edge| edge.name.clone());
        edges.chain(["width", "height", "area"].map(str::to_owned)).map(|field| format!("{owner}.{field}")).collect()
    }

    fn named(&self, name: &str) -> Lookup {
        if let Some(known) = self.known.borrow().get(name) {
            return known.map_or(Lookup::Broken, |worked| Lookup::Found(worked.quantity));
        }
        if let Some(measure) = self.of_piece(name) {
            let worked = measure.map(|quantity| Worked { quantity, stated: None });
            self.known.borrow_mut().insert(name.to_owned(), worked);
            return worked.map_or(Lookup::Broken, |worked| Lookup::Found(worked.quantity));
        }
        let Some((value, span)) = self.definition(name) else { return Lookup::Unknown };
        if let Some(ring) = self.ring(name) {
            self.findings.borrow_mut().push(ring.in_size(self.size, ""));
            return Lookup::Broken;
        }
        self.open.borrow_mut().push((name.to_owned(), span));
        let worked = value.get(self.size).and_then(|expression| {
            let mut own = Findings::default();
            let worked = self.work_out(expression, self, &mut own);
            self.findings.borrow_mut().extend(own.iter().cloned());
            worked
        });
        self.open.borrow_mut().pop();
        self.known.borrow_mut().insert(name.to_owned(), worked);
        worked.map_or(Lookup::Broken, |worked| Lookup::Found(worked.quantity))
    }

    /// A dotted name that belongs to a piece: its value, or nothing where the piece is faulty; `None`
    /// when the name is no measure of a piece.
    fn of_piece(&self, name: &str) -> Option<Option<Quantity>> {
        let (owner, field) = name.split_once('.')?;
        let piece = self.catalogue.get(owner)?.piece()?;
        match self.shape(piece) {
            None => Some(None),
            Some(_) => self.piece_measure(piece, field).map(Some),
        }
    }

    /// The formula behind a name.
    fn definition(&self, name: &str) -> Option<(&'a BySize, Span)> {
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
                    let value = match field {
                        "length" => notion.length.as_ref(),
                        "amount" => notion.amount.as_ref(),
                        "count" => notion.count.as_ref(),
                        _ => None,
                    };
                    value.map(|value| (value, notion.id.span))
                }
                _ => None,
            },
        }
    }

    fn ring(&self, name: &str) -> Option<Finding> {
        let open = self.open.borrow();
        if let Some(at) = open.iter().position(|(known, _)| known == name) {
            let ring = &open[at..];
            // The ring is told from its first name in the file, whichever way it was met.
            let first = (0..ring.len()).min_by_key(|&at| ring[at].1.start).unwrap_or(0);
            let turned: Vec<&(String, Span)> = (0..ring.len()).map(|at| &ring[(first + at) % ring.len()]).collect();
            let mut names: Vec<&str> = turned.iter().map(|(name, _)| name.as_str()).collect();
            names.push(turned[0].0.as_str());
            let mut finding = FORMULA_RING
                .at(turned[0].1, format!("these formulas go round in a ring: {}", names.join(" → ")))
                .hint("give one of them a figure of its own, such as `20 cm`");
            for (name, span) in turned.iter().skip(1) {
                finding = finding.note(*span, format!("`{name}` is in the ring"));
            }
            return Some(finding);
        }
        (open.len() >= LONGEST_CHAIN).then(|| {
            let span = open.last().map_or(Span::new(self.draft.file, 0..0), |(_, span)| *span);
            NESTED_TOO_DEEP
                .at(span, format!("more than {LONGEST_CHAIN} formulas lean on one another here"))
                .hint("give one of them a figure of its own")
        })
    }
}

impl Names for Values<'_> {
    fn value(&self, name: &str) -> Lookup {
        let lookup = self.named(name);
        if lookup != Lookup::Unknown {
            self.used.borrow_mut().insert(name.to_owned());
            if let Some((owner, _)) = name.split_once('.') {
                self.used.borrow_mut().insert(owner.to_owned());
            }
        }
        lookup
    }
}
