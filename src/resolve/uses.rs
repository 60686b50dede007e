//! What formulas name and what they print, taken down for the checks: from the formulas themselves,
//! whatever becomes of them.

use std::collections::BTreeSet;

use super::scope::Scope;
use super::worked::Worked;
use crate::diag::Findings;
use crate::measure::ExprKind;
use crate::model::{Bend, BySize, Dart, Expression, Facts, Mark, Notch, Outline, Param, Piece, Pleat};
use crate::source::Span;

/// What comes of working out, beside the result.
#[derive(Debug, Default)]
pub(super) struct Told {
    pub findings: Findings,
    pub uses: Uses,
}

/// Names that are used, and values that are printed.
#[derive(Debug, Clone, Default)]
pub struct Uses {
    /// Measurements and other names, and the owners of dotted ones.
    pub names: BTreeSet<String>,
    /// What was handed to a shared part and is used in it: where its names stand.
    pub handed: Vec<Span>,
    /// The values that formulas of their own print in both systems, and where those stand. A bare name is
    /// left out: its figures are judged where it is defined.
    pub printed: Vec<PrintedValue>,
    /// The measurements whose figures are printed by their bare names.
    pub shown: BTreeSet<String>,
}

/// A value that a formula of its own printed.
#[derive(Debug, Clone, Copy)]
pub struct PrintedValue {
    /// The formula.
    pub span: Span,
    /// What it comes to.
    pub worked: Worked,
}

impl Uses {
    /// Every name that a formula of the facts uses.
    pub fn of_facts(facts: &Facts) -> Uses {
        let mut uses = Uses::default();
        let by_size = |value: &'_ BySize| value.all().into_iter().cloned().collect::<Vec<_>>();
        let mut all: Vec<Expression> = Vec::new();
        facts.measurements.iter().for_each(|one| all.extend(by_size(&one.value)));
        facts.body.iter().for_each(|one| all.extend(by_size(&one.value)));
        facts.finished.iter().for_each(|one| all.extend(by_size(&one.value)));
        facts.expect.iter().for_each(|one| all.push(one.that.clone()));
        for fabric in &facts.fabrics {
            all.extend(fabric.widths.iter().chain(&fabric.shrinkage).cloned());
            fabric.amount.iter().for_each(|value| all.extend(by_size(value)));
        }
        for notion in &facts.notions {
            notion.figures.values().for_each(|value| all.extend(by_size(value)));
        }
        facts.pieces.iter().for_each(|piece| of_piece(piece, &mut |formula| all.push(formula.clone())));
        all.iter().for_each(|formula| uses.formula(formula));
        uses
    }

    /// Takes down the names of a formula that stands among words or work facts.
    pub fn read(&mut self, formula: &Expression, scope: &Scope<'_>) {
        for (name, _) in formula.formula.names() {
            match scope.params.iter().find(|param| param.name.text == name) {
                Some(param) => {
                    self.take(param);
                    param.expression.iter().for_each(|formula| self.formula(formula));
                }
                None => {
                    let behind = scope.params.iter().find_map(|param| Some((param, param.behind_dot(name)?)));
                    behind.iter().for_each(|(param, _)| self.take(param));
                    self.name(behind.as_ref().map_or(name, |(_, whole)| whole.as_str()));
                }
            }
        }
    }

    /// Takes down that a shared part uses what it was handed.
    pub fn take(&mut self, param: &Param) {
        if !self.handed.contains(&param.name.span) {
            self.handed.push(param.name.span);
        }
    }

    /// Takes down a formula that is printed; `both` says whether it is in both systems.
    pub fn print(&mut self, formula: &Expression, both: bool, scope: &Scope<'_>) {
        self.read(formula, scope);
        let bare = matches!(formula.formula.root.kind, ExprKind::Name(_));
        if bare {
            self.show(formula, scope);
        } else if both && let Some(worked) = scope.work_out(formula, &mut Findings::default()) {
            self.printed.push(PrintedValue { span: formula.span(), worked });
        }
    }

    /// A parameter stands for the name that was handed over.
    fn show(&mut self, formula: &Expression, scope: &Scope<'_>) {
        let ExprKind::Name(name) = &formula.formula.root.kind else { return };
        let handed = scope.params.iter().find(|param| param.name.text == *name);
        let shown = match handed.map(|param| param.expression.as_ref().map(|handed| &handed.formula.root.kind)) {
            Some(Some(ExprKind::Name(handed))) => handed,
            Some(_) => return,
            None => name,
        };
        self.shown.insert(shown.clone());
    }

    fn formula(&mut self, formula: &Expression) {
        formula.formula.names().iter().for_each(|(name, _)| self.name(name));
    }

    fn name(&mut self, name: &str) {
        self.names.insert(name.to_owned());
        if let Some((owner, _)) = name.split_once('.') {
            self.names.insert(owner.to_owned());
        }
    }
}

/// Every formula of a piece.
fn of_piece(piece: &Piece, see: &mut dyn FnMut(&Expression)) {
    piece.allowance.iter().for_each(|(_, formula)| see(formula));
    piece.cut_larger.iter().for_each(&mut *see);
    let darts = piece.darts.iter().flat_map(Dart::formulas);
    let pleats = piece.pleats.iter().flat_map(Pleat::formulas);
    let marks = piece.marks.iter().flat_map(Mark::formulas);
    piece.notches.iter().flat_map(Notch::formulas).chain(darts).chain(pleats).chain(marks).for_each(&mut *see);
    match &piece.outline {
        Some(Outline::Rectangle { width, height, corners_out }) => {
            let corners = corners_out.iter().flat_map(|(_, across, down)| [across, down]);
            [width, height].into_iter().chain(corners).for_each(|value| value.all().into_iter().for_each(&mut *see));
        }
        Some(Outline::Path(segments)) => {
            for segment in segments {
                let bends: Vec<&(Expression, Expression)> = match &segment.bend {
                    Bend::Cubic(points) => points.iter().collect(),
                    Bend::Arc { radius, .. } => {
                        see(radius);
                        Vec::new()
                    }
                    Bend::Straight => Vec::new(),
                };
                segment.to.iter().chain(bends).for_each(|(across, down)| {
                    see(across);
                    see(down);
                });
            }
        }
        Some(Outline::Drawing { .. }) | None => {}
    }
}
