//! Where a figure is stated that stands under a name: the line that an editor would mend.

use crate::measure::ExprKind;
use crate::model::Expression;
use crate::resolve::Edition;

/// The formula behind a bare name, and behind that one's; the formula itself where it is no bare name.
pub(super) fn cause<'a>(edition: &Edition<'a>, formula: &'a Expression) -> &'a Expression {
    let mut here = formula;
    // A ring of names is told elsewhere, and would have no value.
    for _ in 0..20 {
        let ExprKind::Name(name) = &here.formula.root.kind else { return here };
        match edition.values.expression(name) {
            Some(next) => here = next,
            None => return here,
        }
    }
    here
}
