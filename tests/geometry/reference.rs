//! Hundreds of random outlines against Shapely and svgpathtools: lengths, areas, and the areas after
//! an allowance outwards and inwards, as recorded by `make.py`.
//!
//! Lengths agree within 0.01 mm, which is under the width of a thread by a factor of ten and what
//! the module promises. Areas agree within one part in 100 000 of the larger of the two lines: the
//! curves of the reference are chords within a ten-thousandth of a millimetre, and the rest is less
//! than what a shift of 0.01 mm would change.

use notchbook::geometry::{Drawn, Run, RunKind, Shape, ShapeFault, Spec};

use super::{all, close, decimal};

const LENGTH_WITHIN: f64 = 0.01;
const AREA_SHARE: f64 = 1e-5;

struct Row {
    name: &'static str,
    path: &'static str,
    allowance: &'static str,
    length: f64,
    area: f64,
    out: (usize, f64),
    within: (usize, f64),
}

fn rows() -> Vec<Row> {
    let number = |field: &str| -> f64 { field.parse().expect("a number in the reference") };
    let row = |line: &'static str| -> Row {
        let fields: Vec<&'static str> = line.split(',').collect();
        let [
            name,
            path,
            allowance,
            length,
            area,
            out_parts,
            out_area,
            in_parts,
            in_area,
        ] = fields[..]
        else {
            panic!("nine fields in {line}");
        };
        Row {
            name,
            path,
            allowance,
            length: number(length),
            area: number(area),
            out: (number(out_parts) as usize, number(out_area)),
            within: (number(in_parts) as usize, number(in_area)),
        }
    };
    include_str!("reference.csv")
        .lines()
        .skip(1)
        .map(row)
        .collect()
}

/// The path data as runs with an edge for each: the reader of the test, not of the module.
fn runs(path: &str) -> Spec {
    let mut words = path.split_whitespace();
    let mut runs: Vec<Run> = Vec::new();
    let mut first = None;
    while let Some(word) = words.next() {
        let mut next = || decimal(words.next().expect("another figure"));
        let name = format!("edge_{}", runs.len());
        let (to, kind) = match word {
            "M" => (Some([next(), next()]), RunKind::Start),
            "L" => (Some([next(), next()]), RunKind::Straight),
            "C" => {
                let controls = [[next(), next()], [next(), next()]];
                (Some([next(), next()]), RunKind::Cubic(controls))
            }
            "A" => {
                let radius = next();
                let (_, _, large, sweep) = (next(), next(), next(), next());
                let kind = RunKind::Arc {
                    radius,
                    left: sweep == decimal("0"),
                    large: large == decimal("1"),
                };
                (Some([next(), next()]), kind)
            }
            "Z" => (None, RunKind::Straight),
            other => panic!("{other} in the reference"),
        };
        first = first.or(to);
        // Some outlines reach their start before they close.
        if to.is_some() || runs.last().is_some_and(|run| run.to != first) {
            runs.push(Run { name, to, kind });
        }
    }
    Spec::Path(runs)
}

/// The path data as one edge: then allowances may swallow any part of it but not the whole.
fn drawing(path: &str) -> Spec {
    Spec::Drawing(vec![(String::new(), path.to_owned())])
}

#[test]
fn lengths_and_areas_agree_however_the_outline_is_written() {
    let rows = rows();
    assert!(rows.len() >= 400, "{} outlines are too few", rows.len());
    for row in &rows {
        for spec in [runs(row.path), drawing(row.path)] {
            let shape = super::plain(&spec);
            let length: f64 = shape.edges().iter().map(|edge| edge.length).sum();
            close(length, row.length, LENGTH_WITHIN);
            close(shape.cutting().length(), row.length, LENGTH_WITHIN);
            close(shape.area(), row.area, row.area * AREA_SHARE);
        }
    }
}

/// What Shapely finds on one side of an outline, against the line that is not drawn.
fn compare(row: &Row, drawn: Drawn, (parts, area): (usize, f64)) {
    let allowances = all(decimal(row.allowance));
    let within = area.max(row.area) * AREA_SHARE;
    let other = |shape: &Shape| match drawn {
        Drawn::Cutting => shape.stitching().area(),
        Drawn::Stitching => shape.cutting().area(),
    };
    match Shape::build(&drawing(row.path), drawn, &allowances) {
        Ok(shape) => {
            assert_eq!(parts, 1, "{} falls into {parts} and was built", row.name);
            let found = other(&shape);
            assert!(
                (found - area).abs() <= within,
                "{}: {found} is not {area}",
                row.name
            );
        }
        Err(faults) => {
            let met = faults
                .iter()
                .any(|fault| matches!(fault, ShapeFault::AllowancesMeet { .. }));
            let eaten = faults
                .iter()
                .any(|fault| matches!(fault, ShapeFault::AllowanceEatsPiece { .. }));
            assert!(
                (met && parts > 1) || (eaten && parts == 0),
                "{} in {parts}: {faults:?}",
                row.name
            );
        }
    }
    // With an edge for each run the line is the same, unless one of them is swallowed.
    if let Ok(shape) = Shape::build(&runs(row.path), drawn, &allowances) {
        close(other(&shape), area, within);
    }
}

#[test]
fn allowances_outwards_agree() {
    for row in &rows() {
        compare(row, Drawn::Stitching, row.out);
    }
}

#[test]
fn allowances_inwards_agree() {
    for row in &rows() {
        compare(row, Drawn::Cutting, row.within);
    }
}
