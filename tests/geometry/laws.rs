//! Laws that hold for every outline, tried on random ones.

use notchbook::geometry::{Allowances, Drawn, Run, RunKind, Shape, Spec};
use notchbook::measure::{Exact, to_f64};
use proptest::prelude::{
    Just, ProptestConfig, Strategy, prop_assert, prop_assert_eq, prop_oneof, proptest,
};

use super::{all, corner, exact, mm};

/// Rectangles with or without corners taken out, always wide enough for 20 mm of allowance.
fn panels() -> impl Strategy<Value = Spec> {
    let cut = || prop_oneof![Just(None), (25_i128..80, 25_i128..80).prop_map(Some)];
    (300_i128..900, 300_i128..900, cut(), cut()).prop_map(|(width, height, top, bottom)| {
        let side = |at_top, cut: Option<(i128, i128)>| {
            cut.map(|(width, height)| corner(at_top, width, height))
        };
        Spec::Rectangle {
            width: mm(width),
            height: mm(height),
            corners_out: [side(true, top), side(false, bottom)]
                .into_iter()
                .flatten()
                .collect(),
        }
    })
}

/// A straight-sided or curved piece that hangs from a top edge, with a straight left edge.
fn hung() -> impl Strategy<Value = Vec<Run>> {
    let bend = -40_i128..40;
    (
        150_i128..400,
        200_i128..500,
        -60_i128..60,
        bend.clone(),
        bend,
    )
        .prop_map(|(width, height, flare, one, other)| {
            let end = width + flare;
            let side = RunKind::Cubic([
                [mm(width + one), exact(height, 3)],
                [mm(end + other), exact(2 * height, 3)],
            ]);
            let run = |name: &str, to: Option<[Exact; 2]>, kind| Run {
                name: name.to_owned(),
                to,
                kind,
            };
            vec![
                run("", Some([mm(0), mm(0)]), RunKind::Start),
                run("waist", Some([mm(width), mm(0)]), RunKind::Straight),
                run("side", Some([mm(end), mm(height)]), side),
                run(
                    "hem",
                    Some([mm(0), mm(height)]),
                    RunKind::Arc {
                        radius: mm(900),
                        left: false,
                        large: false,
                    },
                ),
                run("middle", None, RunKind::Straight),
            ]
        })
}

/// The same runs, every figure times `times`.
fn product(one: Exact, other: Exact) -> Exact {
    one.checked_mul(other).expect("small numbers are held")
}

fn scaled(runs: &[Run], times: Exact) -> Vec<Run> {
    let point = |point: [Exact; 2]| point.map(|at| product(at, times));
    let kind = |kind: &RunKind| match kind {
        RunKind::Cubic(controls) => RunKind::Cubic(controls.map(point)),
        RunKind::Arc {
            radius,
            left,
            large,
        } => RunKind::Arc {
            radius: product(*radius, times),
            left: *left,
            large: *large,
        },
        plain => plain.clone(),
    };
    runs.iter()
        .map(|run| Run {
            name: run.name.clone(),
            to: run.to.map(point),
            kind: kind(&run.kind),
        })
        .collect()
}

fn on_fold(width: Exact) -> Allowances {
    Allowances {
        fold: Some("middle".to_owned()),
        ..all(width)
    }
}

/// The stitching line of a panel as a description of its own.
fn as_path(shape: &Shape) -> Spec {
    let points = shape.stitching().flatten(0.01);
    // Figures of these panels are whole mm, so rounding only takes the binary places off.
    let to = |point: &[f64; 2]| Some([mm(point[0].round() as i128), mm(point[1].round() as i128)]);
    let start = Run {
        name: String::new(),
        to: to(&points[0]),
        kind: RunKind::Start,
    };
    let side = |(index, to)| Run {
        name: format!("edge_{index}"),
        to,
        kind: RunKind::Straight,
    };
    let rest = points[1..]
        .iter()
        .map(to)
        .chain([None])
        .enumerate()
        .map(side);
    Spec::Path([start].into_iter().chain(rest).collect())
}

/// The corners of a convex polygon inside the six lines that lie so far within its sides: a large
/// square, cut by one line after the other.
fn within_lines(corners: &[[f64; 2]], widths: &[f64]) -> Vec<[f64; 2]> {
    let mut kept = vec![[-1e4, -1e4], [1e4, -1e4], [1e4, 1e4], [-1e4, 1e4]];
    for (index, width) in widths.iter().enumerate() {
        let (a, b) = (corners[index], corners[(index + 1) % corners.len()]);
        let size = (b[0] - a[0]).hypot(b[1] - a[1]);
        let depth = |p: [f64; 2]| {
            ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / size - width
        };
        let mut cut = Vec::new();
        for (k, p) in kept.iter().enumerate() {
            let q = kept[(k + 1) % kept.len()];
            let (here, there) = (depth(*p), depth(q));
            if here >= 0.0 {
                cut.push(*p);
            }
            if (here > 0.0) != (there > 0.0) {
                let t = here / (here - there);
                cut.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
            }
        }
        kept = cut;
    }
    kept
}

fn area_of(corners: &[[f64; 2]]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    corners
        .iter()
        .zip(next)
        .map(|(a, b)| (a[0] * b[1] - a[1] * b[0]) / 2.0)
        .sum()
}

/// Six corners on a circle of 300 mm, clockwise, none near another.
fn hexagons() -> impl Strategy<Value = Vec<(i128, i128)>> {
    proptest::collection::vec(-12_i32..12, 6).prop_map(|shifts| {
        let corner = |(index, shift): (usize, i32)| {
            let angle = (60.0 * index as f64 + f64::from(shift)).to_radians();
            let round = |value: f64| (300.0 * value).round() as i128;
            (round(angle.cos()), round(angle.sin()))
        };
        shifts.into_iter().enumerate().map(corner).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn scaling_scales_every_length(runs in hung(), times in 1_i128..40, width in 0_i128..15) {
        let times = exact(times, 8);
        let allowances = all(mm(width));
        let grown = all(product(mm(width), times));
        for drawn in [Drawn::Cutting, Drawn::Stitching] {
            let one = super::built(&Spec::Path(runs.clone()), drawn, &allowances);
            let other = super::built(&Spec::Path(scaled(&runs, times)), drawn, &grown);
            let times = to_f64(times);
            for (a, b) in one.edges().iter().zip(other.edges()) {
                for (a, b) in [(a.length, b.length), (a.seam_length, b.seam_length), (a.cut_length, b.cut_length)] {
                    prop_assert!((a * times - b).abs() < 0.01, "{a} x {times} is not {b}");
                }
            }
            let (a, b) = (one.area() * times * times, other.area());
            prop_assert!((a - b).abs() < 1e-5 * b, "{a} is not {b}");
        }
    }

    #[test]
    fn unequal_allowances_lie_along_their_own_lines(
        corners in hexagons(),
        widths in proptest::collection::vec(0_i128..30, 6),
    ) {
        let named = ["a", "b", "c", "d", "e", "f"].map(str::to_owned);
        let by_edge = named.iter().cloned().zip(widths.iter().map(|width| mm(*width))).collect();
        let allowances = Allowances { by_edge, ..all(mm(0)) };
        let spec = super::polygon(&corners);
        let corners: Vec<[f64; 2]> = corners.iter().map(|(x, y)| [*x as f64, *y as f64]).collect();
        for (drawn, sign) in [(Drawn::Cutting, 1.0), (Drawn::Stitching, -1.0)] {
            let shape = super::built(&spec, drawn, &allowances);
            let widths: Vec<f64> = widths.iter().map(|width| sign * *width as f64).collect();
            let wanted = area_of(&within_lines(&corners, &widths));
            let line = if drawn == Drawn::Cutting { shape.stitching() } else { shape.cutting() };
            prop_assert!((line.area() - wanted).abs() < 1e-6 * wanted, "{} is not {wanted}", line.area());
        }
    }

    #[test]
    fn in_and_out_again_gives_the_panel(panel in panels(), width in 1_i128..20) {
        let inside = super::built(&panel, Drawn::Cutting, &all(mm(width)));
        let again = super::built(&as_path(&inside), Drawn::Stitching, &all(mm(width)));
        prop_assert_eq!(again.exact_area(), inside.exact_area());
        prop_assert_eq!(again.exact_box(), inside.exact_box());
        let bounds = (again.cutting().bounds(), inside.cutting().bounds());
        prop_assert_eq!(bounds.0, bounds.1);
    }

    #[test]
    fn unfolding_doubles_the_area(runs in hung(), width in 0_i128..15) {
        for drawn in [Drawn::Cutting, Drawn::Stitching] {
            let shape = super::built(&Spec::Path(runs.clone()), drawn, &on_fold(mm(width)));
            let (cutting, stitching) = shape.unfolded();
            prop_assert!((cutting.area() - 2.0 * shape.cutting().area()).abs() < 1e-6);
            prop_assert!((stitching.area() - 2.0 * shape.stitching().area()).abs() < 1e-6);
            prop_assert!((cutting.area() - shape.area()).abs() < 1e-6);
        }
    }

    #[test]
    fn writing_a_path_backwards_changes_no_figure(runs in hung(), width in 0_i128..15) {
        let mut back: Vec<Run> = vec![runs[0].clone()];
        for (index, run) in runs.iter().enumerate().skip(1).rev() {
            let kind = match &run.kind {
                RunKind::Cubic([first, second]) => RunKind::Cubic([*second, *first]),
                RunKind::Arc { radius, left, large } => RunKind::Arc { radius: *radius, left: !left, large: *large },
                plain => plain.clone(),
            };
            let to = (index > 1).then(|| runs[index - 1].to).flatten();
            back.push(Run { name: run.name.clone(), to, kind });
        }
        for drawn in [Drawn::Cutting, Drawn::Stitching] {
            let one = super::built(&Spec::Path(runs.clone()), drawn, &all(mm(width)));
            let other = super::built(&Spec::Path(back.clone()), drawn, &all(mm(width)));
            for edge in one.edges() {
                let same = super::edge(&other, &edge.name);
                prop_assert!((edge.length - same.length).abs() < 1e-4);
                prop_assert!((edge.seam_length - same.seam_length).abs() < 1e-3);
                prop_assert!((edge.cut_length - same.cut_length).abs() < 1e-3);
            }
        }
    }
}
