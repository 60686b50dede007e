//! Laws that hold for every outline, tried on random ones.

use notchbook::geometry::{Allowances, Drawn, Run, RunKind, Shape, Spec};
use notchbook::measure::{Exact, to_f64};
use proptest::prelude::{Just, ProptestConfig, Strategy, prop_assert, prop_assert_eq, prop_oneof, proptest};

use super::{all, corner, exact, mm};

/// Rectangles with or without corners taken out, always wide enough for 20 mm of allowance.
fn panels() -> impl Strategy<Value = Spec> {
    let cut = || prop_oneof![Just(None), (25_i128..80, 25_i128..80).prop_map(Some)];
    (300_i128..900, 300_i128..900, cut(), cut()).prop_map(|(width, height, top, bottom)| {
        let side = |at_top, cut: Option<(i128, i128)>| cut.map(|(width, height)| corner(at_top, width, height));
        Spec::Rectangle {
            width: mm(width),
            height: mm(height),
            corners_out: [side(true, top), side(false, bottom)].into_iter().flatten().collect(),
        }
    })
}

/// A straight-sided or curved piece that hangs from a top edge, with a straight left edge.
fn hung() -> impl Strategy<Value = Vec<Run>> {
    let bend = -40_i128..40;
    (150_i128..400, 200_i128..500, -60_i128..60, bend.clone(), bend).prop_map(|(width, height, flare, one, other)| {
        let end = width + flare;
        let side = RunKind::Cubic([
            [mm(width + one), exact(height, 3)],
            [mm(end + other), exact(2 * height, 3)],
        ]);
        let run = |name: &str, to: Option<[Exact; 2]>, kind| Run { name: name.to_owned(), to, kind };
        vec![
            run("", Some([mm(0), mm(0)]), RunKind::Start),
            run("waist", Some([mm(width), mm(0)]), RunKind::Straight),
            run("side", Some([mm(end), mm(height)]), side),
            run("hem", Some([mm(0), mm(height)]), RunKind::Arc { radius: mm(900), left: false, large: false }),
            run("middle", None, RunKind::Straight),
        ]
    })
}

/// The same runs, every figure times `times`.
fn scaled(runs: &[Run], times: Exact) -> Vec<Run> {
    let point = |[x, y]: [Exact; 2]| [x * times, y * times];
    let kind = |kind: &RunKind| match kind {
        RunKind::Cubic(controls) => RunKind::Cubic(controls.map(point)),
        RunKind::Arc { radius, left, large } => RunKind::Arc { radius: *radius * times, left: *left, large: *large },
        plain => plain.clone(),
    };
    runs.iter().map(|run| Run { name: run.name.clone(), to: run.to.map(point), kind: kind(&run.kind) }).collect()
}

fn on_fold(width: Exact) -> Allowances {
    Allowances { fold: Some("middle".to_owned()), ..all(width) }
}

/// The stitching line of a panel as a description of its own.
fn as_path(shape: &Shape) -> Spec {
    let points = shape.stitching().flatten(0.01);
    // Figures of these panels are whole mm, so rounding only takes the binary places off.
    let to = |point: &[f64; 2]| Some([mm(point[0].round() as i128), mm(point[1].round() as i128)]);
    let start = Run { name: String::new(), to: to(&points[0]), kind: RunKind::Start };
    let side = |(index, to)| Run { name: format!("edge_{index}"), to, kind: RunKind::Straight };
    let rest = points[1..].iter().map(to).chain([None]).enumerate().map(side);
    Spec::Path([start].into_iter().chain(rest).collect())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn scaling_scales_every_length(runs in hung(), times in 1_i128..40, width in 0_i128..15) {
        let times = exact(times, 8);
        let allowances = all(mm(width));
        let grown = all(mm(width) * times);
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
