//! The tables of the booklet and the named figures, every cell with where it comes from.

use super::evidence::Evidence;
use super::origin::{Tracer, merged};
use super::record::Table;
use super::row::{Origin, Row};
use crate::book::{Amount, CutList, FabricNeed, MeasureRow, NotionAmount, NotionNeed};
use crate::model::{BySize, Expression, NotionFigure};
use crate::resolve::{Edition, Scope, Worked};
use crate::source::Span;

/// Every named figure of the facts, and every expectation.
pub(super) fn values(evidence: &Evidence<'_>) -> Vec<Row> {
    let facts = &evidence.draft.facts;
    let mut rows = Vec::new();
    for measurement in &facts.measurements {
        let name = &measurement.name.text;
        let cells = in_sizes(evidence, |edition| Some(figure(edition, &edition.values.get(name)?)));
        rows.push(Row::new(name, cells, defined(evidence, &measurement.value)));
    }
    for notion in &facts.notions {
        for (figure_of, value) in &notion.figures {
            let cells =
                in_sizes(evidence, |edition| Some(figure(edition, &edition.values.quiet(value.get(edition.size())?)?)));
            let name = format!("{}.{}", notion.id.text, figure_of.word());
            rows.push(Row::new(name, cells, defined(evidence, value)));
        }
    }
    for expectation in &facts.expect {
        let cells = in_sizes(evidence, |edition| {
            let own = edition.expectations.iter().find(|(own, _)| std::ptr::eq(*own, expectation));
            own.map(|(_, holds)| match holds {
                Some(true) => evidence.word("proof_holds"),
                Some(false) => evidence.word("proof_fails"),
                None => evidence.word("proof_broken"),
            })
        });
        let span = expectation.that.span();
        let because = expectation.because.as_ref().map_or_else(String::new, |because| because.text.clone());
        let origin = Origin { how: "expected", text: because, place: evidence.place(span) };
        rows.push(Row::new(expectation.that.formula.text.trim(), cells, vec![origin]));
    }
    rows
}

fn figure(edition: &Edition<'_>, worked: &Worked) -> String {
    edition.figures(worked).to_string().replace('\u{a0}', " ")
}

/// Something of each size; `None` where a size does not have it.
fn in_sizes(evidence: &Evidence<'_>, of: impl Fn(&Edition<'_>) -> Option<String>) -> Vec<Option<String>> {
    let mut cells = vec![None; evidence.count()];
    for edition in evidence.editions {
        if let Some(cell) = cells.get_mut(edition.size()) {
            *cell = of(edition);
        }
    }
    cells
}

/// Where a value of the facts comes from, over all sizes, with what its formula names.
fn from(evidence: &Evidence<'_>, value: &BySize) -> Vec<Origin> {
    merged(own(evidence, value))
}

/// The same without what its formula names, which stands in the same table.
fn defined(evidence: &Evidence<'_>, value: &BySize) -> Vec<Origin> {
    merged(own(evidence, value).map(|origins| origins.into_iter().take(1).collect()))
}

/// Where a value comes from in each size. What is typed there as a figure need not be quoted again.
fn own<'b>(evidence: &'b Evidence<'_>, value: &'b BySize) -> impl Iterator<Item = Vec<Origin>> + 'b {
    evidence.editions.iter().filter_map(move |edition| {
        let formula = value.get(edition.size())?;
        let stated = formula.formula.as_measure().is_some();
        let mut found = traced(evidence, edition, if stated { "stated" } else { "formula" }, formula);
        if stated {
            found.iter_mut().take(1).for_each(|origin| origin.text.clear());
        }
        Some(found)
    })
}

fn traced(evidence: &Evidence<'_>, edition: &Edition<'_>, how: &'static str, formula: &Expression) -> Vec<Origin> {
    let scope = Scope::plain(&edition.values);
    Tracer { evidence, edition, scope: &scope }.printed(how, formula, formula.span())
}

/// What is reckoned, and stated nowhere: the place of the thing itself.
fn reckoned(evidence: &Evidence<'_>, how: &'static str, span: Span) -> Vec<Origin> {
    vec![Origin { how, text: String::new(), place: evidence.place(span) }]
}

/// The tables before the steps, as the booklet of all sizes prints them.
pub(super) fn tables(evidence: &Evidence<'_>) -> Vec<Table> {
    let (all, facts) = (evidence.all, &evidence.draft.facts);
    let cells = |row: &MeasureRow| amounts(evidence, &row.values);
    let body = all.body.iter().map(|row| {
        let written = facts.body.iter().find(|known| known.name.text == row.name);
        Row::new(&row.name, cells(row), written.map_or_else(Vec::new, |known| from(evidence, &known.value)))
    });
    let mut finished = Vec::new();
    for row in &all.finished {
        let written = facts.finished.iter().find(|known| known.name.text == row.measure.name);
        let origin = written.map_or_else(Vec::new, |known| from(evidence, &known.value));
        finished.push(Row::new(&row.measure.name, cells(&row.measure), origin));
        if let (Some(ease), Some(known)) = (&row.ease, written) {
            let name = format!("{}, {}", row.measure.name, evidence.plain().word("ease_over", &[("name", &ease.name)]));
            finished.push(Row::new(name, cells(ease), reckoned(evidence, "reckoned", known.name.span)));
        }
    }
    let mut tables = vec![
        Table { name: evidence.word("body"), rows: body.collect() },
        Table { name: evidence.word("finished"), rows: finished },
        Table { name: evidence.word("fabrics"), rows: fabrics(evidence, &all.fabrics) },
        Table { name: evidence.word("notions"), rows: notions(evidence, &all.notions) },
    ];
    tables.extend(cuts(evidence, &all.cuts));
    for offer in &all.offers {
        let mut rows = fabrics(evidence, &offer.fabrics);
        rows.extend(notions(evidence, &offer.notions));
        tables.push(Table { name: evidence.plain().word("proof_offer", &[("name", &offer.id)]), rows });
        tables.extend(cuts(evidence, &offer.cuts));
    }
    tables.retain(|table| !table.rows.is_empty());
    tables
}

fn amounts(evidence: &Evidence<'_>, amounts: &[Option<Amount>]) -> Vec<Option<String>> {
    amounts.iter().map(|one| one.as_ref().map(|amount| evidence.amount(amount))).collect()
}

fn fabrics(evidence: &Evidence<'_>, needs: &[FabricNeed]) -> Vec<Row> {
    let mut rows = Vec::new();
    for need in needs {
        let Some(fabric) = evidence.draft.facts.fabrics.get(need.at) else { continue };
        for (width, stated) in need.widths.iter().zip(0..) {
            let named = width.width.as_ref().map(|width| evidence.plain().value(width));
            let name = match &named {
                Some(width) => evidence.plain().word("errata_fabric", &[("name", &need.name), ("width", width)]),
                None => need.name.clone(),
            };
            let mut origin = match &fabric.amount {
                Some(amount) => from(evidence, amount),
                None => reckoned(evidence, "laid", fabric.id.span),
            };
            if let (Some(formula), Some(edition)) = (fabric.widths.get(stated), evidence.editions.first()) {
                origin.extend(traced(evidence, edition, "width", formula));
            }
            rows.push(Row::new(name, amounts(evidence, &width.amounts), origin));
        }
    }
    rows
}

/// A figure of a notion: its word in the facts, and the key of its word on the page.
const FIGURES: [(NotionFigure, &str); 4] = [
    (NotionFigure::Length, "errata_length"),
    (NotionFigure::Amount, "errata_amount"),
    (NotionFigure::Width, "errata_width"),
    (NotionFigure::Size, "errata_size"),
];

fn notions(evidence: &Evidence<'_>, needs: &[NotionNeed]) -> Vec<Row> {
    let mut rows = Vec::new();
    for need in needs {
        let Some(notion) = evidence.draft.facts.notions.get(need.at) else { continue };
        let origin = |figure: NotionFigure| match notion.figures.get(&figure) {
            Some(value) => from(evidence, value),
            None => reckoned(evidence, "reckoned", notion.id.span),
        };
        let named =
            |key: &str| evidence.plain().word("errata_of", &[("name", &need.name), ("figure", &evidence.word(key))]);
        let count = |amount: &NotionAmount| amount.count.map(|count| count.to_string());
        let of = |read: &dyn Fn(&NotionAmount) -> Option<String>| -> Vec<Option<String>> {
            need.amounts.iter().map(|amount| read(amount.as_ref()?)).collect()
        };
        let counts = of(&count);
        if counts.iter().any(Option::is_some) {
            rows.push(Row::new(named("errata_count"), counts, origin(NotionFigure::Count)));
        }
        for (figure, key) in FIGURES {
            let cells = of(&|amount| {
                let figure = match figure {
                    NotionFigure::Length => &amount.length,
                    NotionFigure::Width => &amount.width,
                    NotionFigure::Size => &amount.size,
                    NotionFigure::Amount | NotionFigure::Count => &amount.amount,
                };
                figure.as_ref().map(|amount| evidence.amount(amount))
            });
            if cells.iter().any(Option::is_some) {
                rows.push(Row::new(named(key), cells, origin(figure)));
            }
        }
    }
    rows
}

fn cuts(evidence: &Evidence<'_>, lists: &[CutList]) -> Vec<Table> {
    let plain = evidence.plain();
    let table = |list: &CutList| {
        let rows = list.rows.iter().flat_map(|row| {
            let piece = evidence.draft.facts.pieces.get(row.at);
            let origin = piece.map_or_else(Vec::new, |piece| reckoned(evidence, "outline", piece.id.span));
            let count = vec![Some(row.count.to_string()); evidence.count()];
            let sizes = row.dimensions.iter().map(|pair| {
                pair.as_ref().map(|(width, height)| format!("{} × {}", evidence.amount(width), evidence.amount(height)))
            });
            let name = match row.copies.is_empty() {
                true => row.name.clone(),
                false => format!("{} ({})", row.name, plain.listed(&row.copies)),
            };
            let counted = plain.word("errata_of", &[("name", &name), ("figure", &evidence.word("errata_count"))]);
            [Row::new(&name, sizes.collect(), origin.clone()), Row::new(counted, count, origin)]
        });
        let name = plain.word("proof_cut_from", &[("name", &list.name)]);
        Table { name, rows: rows.collect() }
    };
    lists.iter().map(table).collect()
}

/// The allowance of every edge of every piece as it is cut.
pub(super) fn allowances(evidence: &Evidence<'_>) -> Vec<Table> {
    let facts = &evidence.draft.facts;
    let mut tables = Vec::new();
    for (id, piece) in crate::resolve::PieceId::each(&facts.pieces).filter(|(_, piece)| piece.tape.is_none()) {
        let mut edges: Vec<String> = Vec::new();
        for edition in evidence.editions {
            let shape = edition.values.shape(id);
            for edge in shape.into_iter().flat_map(|shape| shape.edges()).filter(|edge| !edge.on_fold) {
                if !edges.contains(&edge.name) {
                    edges.push(edge.name.clone());
                }
            }
        }
        let rows = edges.iter().map(|edge| {
            let own = piece.allowance.iter().rev().find(|(name, _)| name.text == *edge);
            let stated = own.or_else(|| piece.allowance.iter().find(|(name, _)| name.text == "all"));
            let name = piece.edge_called(edge).unwrap_or_else(|| edge.replace('_', " "));
            let Some((_, formula)) = stated else {
                let none = vec![Some(evidence.word("proof_no_allowance")); evidence.count()];
                return Row::new(name, none, reckoned(evidence, "piece", piece.id.span));
            };
            let cells = in_sizes(evidence, |edition| {
                edition.values.shape(id)?.edge(edge)?;
                Some(figure(edition, &edition.values.quiet(formula)?))
            });
            let origin = merged(evidence.editions.iter().map(|edition| traced(evidence, edition, "piece", formula)));
            Row::new(name, cells, origin)
        });
        let rows: Vec<Row> = rows.collect();
        if !rows.is_empty() {
            tables.push(Table { name: piece.name.text.clone(), rows });
        }
    }
    tables
}
