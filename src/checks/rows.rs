//! Lengths that are stated size by size, as rows that checks of grading look along and hold against each other.

use super::judge::Subject;
use crate::measure::{Dimension, Exact, Quantity, to_f64};
use crate::model::{BySize, NotionFigure, Outline, Size, Wearer, by_view};
use crate::resolve::{Edition, PieceId, Worked};
use crate::source::Span;

/// A length, or a figure of what is bought, with a value for each size.
pub(super) struct Row {
    /// What it is called in a message.
    pub name: String,
    /// Where its name stands.
    pub place: Span,
    /// What is measured: a length, or of what is bought a weight or a number.
    pub dimension: Dimension,
    /// Whether it is a figure of what is bought.
    pub bought: bool,
    /// Whether it is a measurement, by its own name.
    pub named: bool,
    /// The value of each size, with the place where it is stated; `None` in sizes that do without.
    pub values: Vec<Option<(Exact, Span)>>,
}

impl Row {
    /// Its values, of lengths in mm, over some sizes; `None` where one of them has none, or nothing.
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
            let quantity = Quantity { value: *value, dimension: self.dimension };
            let told = super::words::length_of(&subject.editions[*size], Worked { quantity, stated: None });
            Some(format!("{} {told}", subject.draft.facts.sizes[*size].id.text))
        };
        sizes.iter().filter_map(one).collect::<Vec<_>>().join(", ")
    }
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

/// Every row: measurements, the body's and the finished ones, sides of rectangles, edges that are drawn for each size, and
/// the figures of what is bought.
pub(super) fn rows(subject: &Subject<'_>) -> Vec<Row> {
    let facts = &subject.draft.facts;
    let mut rows = Vec::new();
    for measurement in &facts.measurements {
        let (name, place) = (format!("`{}`", measurement.name.text), measurement.name.span);
        // A length that is bought as it stands comes as shops sell it.
        let own = measurement.name.text.as_str();
        let figures = || facts.notions.iter().flat_map(|notion| &notion.figures);
        let is_own = |value: &BySize| is_name(value, own, facts.sizes.len());
        let by_length = figures().any(|(figure, value)| *figure == NotionFigure::Length && is_own(value));
        // What is reckoned on by other measurements is made, and what is bought follows it.
        let made = || facts.measurements.iter().any(|other| leans_on(&other.value, own));
        let bought = by_length || (figures().any(|(_, value)| is_own(value)) && !made());
        rows.extend(stated(subject, name, place, &measurement.value).map(|row| Row { bought, named: true, ..row }));
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
    for notion in &facts.notions {
        for (figure, value) in &notion.figures {
            let name = format!("`{}.{}`", notion.id.text, figure.word());
            rows.extend(
                of_each(subject, name, notion.id.span, value, &|_| true).map(|row| Row { bought: true, ..row }),
            );
        }
    }
    rows
}

/// Whether a formula of a value names a measurement.
fn leans_on(value: &BySize, name: &str) -> bool {
    value.all().into_iter().any(|formula| formula.formula.names().iter().any(|(own, _)| *own == name))
}

/// Whether a value is a measurement and nothing else.
fn is_name(value: &BySize, name: &str, sizes: usize) -> bool {
    (0..sizes).filter_map(|size| value.get(size)).any(|formula| formula.source.text.trim() == name)
}

fn stated(subject: &Subject<'_>, name: String, place: Span, value: &BySize) -> Option<Row> {
    of_each(subject, name, place, value, &|dimension| dimension == Dimension::Length)
}

/// A row of what each size states, where all of that is of one sort which is looked at.
fn of_each(
    subject: &Subject<'_>,
    name: String,
    place: Span,
    value: &BySize,
    takes: &dyn Fn(Dimension) -> bool,
) -> Option<Row> {
    if !matches!(value, BySize::Each(_)) {
        return None;
    }
    let worked = |edition: &Edition<'_>| {
        let formula = value.get(edition.size())?;
        Some((edition.values.quiet(formula)?.quantity, formula.span()))
    };
    let all: Vec<Option<(Quantity, Span)>> = subject.editions.iter().map(worked).collect();
    let dimension = all.iter().flatten().map(|(quantity, _)| quantity.dimension).find(|dimension| takes(*dimension))?;
    let own = |(quantity, span): (Quantity, Span)| (quantity.dimension == dimension).then_some((quantity.value, span));
    let values = all.into_iter().map(|found| found.and_then(own)).collect();
    Some(Row { name, place, dimension, bought: false, named: false, values })
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
        Some(Row {
            name: format!("the edge `{piece}.{name}`"),
            place,
            dimension: Dimension::Length,
            named: false,
            bought: false,
            values,
        })
    };
    (0..most).filter_map(row).collect()
}
