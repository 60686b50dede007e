//! Lengths that are stated size by size, as rows that checks of grading look along and hold against each other.

use super::judge::Subject;
use crate::measure::{Dimension, Exact, Quantity, to_f64};
use crate::model::{BySize, Outline, Size, Wearer, by_view};
use crate::resolve::{Edition, PieceId, Worked};
use crate::source::Span;

/// A length with a value for each size.
pub(super) struct Row {
    /// What it is called in a message.
    pub name: String,
    /// Where its name stands.
    pub place: Span,
    /// The value of each size, with the place where it is stated; `None` in sizes that do without.
    pub values: Vec<Option<(Exact, Span)>>,
}

impl Row {
    /// Its values in mm over some sizes; `None` where one of them has none, or nothing.
    pub fn over(&self, sizes: &[usize]) -> Option<Vec<f64>> {
        let value = |size: &usize| self.values.get(*size)?.as_ref().map(|(value, _)| to_f64(*value));
        let all: Vec<f64> = sizes.iter().map(value).collect::<Option<_>>()?;
        all.iter().all(|value| *value > 0.0).then_some(all)
    }

    /// Where the value of a size is stated.
    pub fn at(&self, size: usize) -> Span {
        self.values.get(size).and_then(Option::as_ref).map_or(self.place, |(_, span)| *span)
    }

    /// Its values side by side: "small 15 cm, medium 18 cm, large 21 cm".
    pub fn side_by_side(&self, subject: &Subject<'_>, sizes: &[usize]) -> String {
        let one = |size: &usize| {
            let (value, _) = self.values.get(*size)?.as_ref()?;
            Some(format!("{} {}", subject.draft.facts.sizes[*size].id.text, told(&subject.editions[*size], *value)))
        };
        sizes.iter().filter_map(one).collect::<Vec<_>>().join(", ")
    }
}

/// A length in mm as the booklet shows it in its first system.
pub(super) fn told(edition: &Edition<'_>, value: Exact) -> String {
    let quantity = Quantity { value, dimension: Dimension::Length };
    super::words::length_of(edition, Worked { quantity, stated: None })
}

/// The sizes that are graded from one another: those of one view that follow each other and have one sort of wearer.
pub(super) fn graded(sizes: &[Size]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for own in by_view(sizes) {
        let mut last: Option<Wearer> = None;
        for size in own {
            match groups.last_mut().filter(|_| last == Some(sizes[size].wearer)) {
                Some(group) => group.push(size),
                None => groups.push(vec![size]),
            }
            last = Some(sizes[size].wearer);
        }
    }
    groups
}

/// Every row: measurements, the body's and the finished ones, sides of rectangles, and edges that are drawn for each size.
pub(super) fn rows(subject: &Subject<'_>) -> Vec<Row> {
    let facts = &subject.draft.facts;
    let mut rows = Vec::new();
    for measurement in &facts.measurements {
        let (name, place) = (format!("`{}`", measurement.name.text), measurement.name.span);
        rows.extend(stated(subject, name, place, &measurement.value));
    }
    let body = facts.body.iter().map(|row| (&row.name, &row.value));
    for (name, value) in body.chain(facts.finished.iter().map(|row| (&row.name, &row.value))) {
        rows.extend(stated(subject, format!("“{}”", name.text), name.span, value));
    }
    for (id, piece) in PieceId::each(&facts.pieces) {
        match &piece.outline {
            Some(Outline::Rectangle { width, height, .. }) => {
                for (value, side) in [(width, "width"), (height, "height")] {
                    let name = format!("the {side} of `{}`", piece.id.text);
                    rows.extend(stated(subject, name, piece.id.span, value));
                }
            }
            Some(Outline::Drawing { id: path, .. }) if path.text.contains("{size}") => {
                rows.extend(drawn(subject, id, &piece.id.text, path.span));
            }
            _ => {}
        }
    }
    rows
}

fn stated(subject: &Subject<'_>, name: String, place: Span, value: &BySize) -> Option<Row> {
    if !matches!(value, BySize::Each(_)) {
        return None;
    }
    let here = |edition: &Edition<'_>| {
        let formula = value.get(edition.size())?;
        let quantity = edition.values.quiet(formula)?.quantity;
        (quantity.dimension == Dimension::Length).then(|| (quantity.value, formula.span()))
    };
    let values: Vec<_> = subject.editions.iter().map(here).collect();
    values.iter().any(Option::is_some).then_some(Row { name, place, values })
}

/// The edges of a piece with a drawing of its own for each size.
fn drawn(subject: &Subject<'_>, id: PieceId, piece: &str, place: Span) -> Vec<Row> {
    let shape = |edition: &Edition<'_>| edition.values.shape(id).map(|shape| shape.edges().len());
    let most = subject.editions.iter().filter_map(shape).max().unwrap_or(0);
    let row = |at: usize| {
        let edge = |edition: &Edition<'_>| {
            let edge = edition.values.shape(id)?.edges().get(at)?;
            Some((edge.name.clone(), super::apart::millimetres(edge.length).value))
        };
        let found: Vec<_> = subject.editions.iter().map(edge).collect();
        let name = found.iter().flatten().next()?.0.clone();
        let values = found.into_iter().map(|found| found.map(|(_, value)| (value, place))).collect();
        Some(Row { name: format!("the edge `{piece}.{name}`"), place, values })
    };
    (0..most).filter_map(row).collect()
}
