//! Outlines, edges, allowances and areas of `notchbook::geometry`, seen from outside.

#[path = "geometry/closed_forms.rs"]
mod closed_forms;
#[path = "geometry/darts.rs"]
mod darts;
#[path = "geometry/faults.rs"]
mod faults;
#[path = "geometry/folds.rs"]
mod folds;
#[path = "geometry/laws.rs"]
mod laws;
#[path = "geometry/places.rs"]
mod places;
#[path = "geometry/reference.rs"]
mod reference;
#[path = "geometry/shapers.rs"]
mod shapers;

use notchbook::geometry::{
    Allowances, CornerOut, Drawn, Edge, Run, RunKind, Shape, ShapeFault, Spec,
};
use notchbook::measure::{Exact, ratio};

/// A ratio of two whole numbers.
fn exact(numer: i128, denom: i128) -> Exact {
    ratio(numer, denom).expect("a denominator above 0")
}

/// So many whole mm.
fn mm(whole: i128) -> Exact {
    exact(whole, 1)
}

/// A decimal figure such as `-12.5`, read exactly.
fn decimal(figure: &str) -> Exact {
    let (whole, part) = figure.split_once('.').unwrap_or((figure, ""));
    let digits: i128 = format!("{whole}{part}").parse().expect("a decimal figure");
    exact(digits, 10_i128.pow(part.len() as u32))
}

fn rectangle(width: i128, height: i128) -> Spec {
    Spec::Rectangle {
        width: mm(width),
        height: mm(height),
        corners_out: Vec::new(),
    }
}

fn corner(at_top: bool, width: i128, height: i128) -> CornerOut {
    CornerOut {
        at_top,
        width: mm(width),
        height: mm(height),
    }
}

/// A straight line to a point; `None` closes.
fn line(name: &str, to: Option<(i128, i128)>) -> Run {
    Run {
        name: name.to_owned(),
        to: to.map(|(x, y)| [mm(x), mm(y)]),
        kind: RunKind::Straight,
    }
}

fn start(x: i128, y: i128) -> Run {
    Run {
        name: String::new(),
        to: Some([mm(x), mm(y)]),
        kind: RunKind::Start,
    }
}

fn arc(name: &str, to: Option<(i128, i128)>, radius: i128, left: bool, large: bool) -> Run {
    Run {
        kind: RunKind::Arc {
            radius: mm(radius),
            left,
            large,
        },
        ..line(name, to)
    }
}

fn cubic(name: &str, controls: [(i128, i128); 2], to: Option<(i128, i128)>) -> Run {
    Run {
        kind: RunKind::Cubic(controls.map(|(x, y)| [mm(x), mm(y)])),
        ..line(name, to)
    }
}

/// A polygon with the edges `a`, `b`, `c` and so on.
fn polygon(corners: &[(i128, i128)]) -> Spec {
    let names = "abcdefghijklmnopqrstuvwxyz";
    let ends = corners
        .iter()
        .skip(1)
        .map(|corner| Some(*corner))
        .chain([None]);
    let runs = names
        .chars()
        .zip(ends)
        .map(|(name, to)| line(&name.to_string(), to));
    Spec::Path(
        [start(corners[0].0, corners[0].1)]
            .into_iter()
            .chain(runs)
            .collect(),
    )
}

/// One allowance for every edge.
fn all(allowance: Exact) -> Allowances {
    Allowances {
        all: allowance,
        by_edge: Vec::new(),
        fold: None,
    }
}

fn built(spec: &Spec, drawn: Drawn, allowances: &Allowances) -> Shape {
    match Shape::build(spec, drawn, allowances) {
        Ok(shape) => shape,
        Err(faults) => panic!("{spec:?} was not built: {faults:?}"),
    }
}

fn plain(spec: &Spec) -> Shape {
    built(spec, Drawn::Cutting, &all(mm(0)))
}

fn faults_of(spec: &Spec, drawn: Drawn, allowances: &Allowances) -> Vec<ShapeFault> {
    match Shape::build(spec, drawn, allowances) {
        Ok(shape) => panic!("{spec:?} was built: {shape:?}"),
        Err(faults) => faults,
    }
}

fn edge<'a>(shape: &'a Shape, name: &str) -> &'a Edge {
    shape
        .edge(name)
        .unwrap_or_else(|| panic!("there is no edge {name}"))
}

#[track_caller]
fn close(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not within {within} of {wanted}"
    );
}
