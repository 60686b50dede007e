//! What each part of the work costs, as shares of one run: times of a machine say little, ratios much.
//!
//! `cargo bench` prints a table. Nothing here passes or fails.

use std::hint::black_box;
use std::path::{Path, PathBuf};
use std::time::Instant;

use notchbook::construct::play;
use notchbook::pipeline::{Reach, Workshop};
use notchbook::resolve::Edition;
use notchbook::sheets::{SheetPaper, draw_sheets, plan_all_sizes, plan_one_size};
use notchbook::source::{BookletFolder, Folder, find_booklets};
use notchbook::typeset::{Paper, Press, Sheaf};
use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

/// How often each thing is done; the least time counts, since whatever else runs only adds to it.
const RUNS: usize = 5;

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = match Folder::open(&root.join("booklets")) {
        Ok(folder) => folder,
        Err(fault) => {
            eprintln!("the demo booklets: {}", fault.message());
            std::process::exit(1);
        }
    };
    let (booklets, _) = find_booklets(&folder);
    println!("{:<22}{:>12}{:>10}", "the demo booklets", "ms", "ratio");
    checks(&folder, &booklets);
    drawings(&folder, &booklets);
    sheets(&folder, &booklets);
    builds(&folder, &booklets);
}

/// The least time of several runs, in milliseconds.
fn least(mut work: impl FnMut()) -> f64 {
    let once = |work: &mut dyn FnMut()| {
        let start = Instant::now();
        work();
        start.elapsed().as_secs_f64() * 1000.0
    };
    (0..RUNS)
        .map(|_| once(&mut work))
        .fold(f64::INFINITY, f64::min)
}

fn line(what: &str, time: f64, whole: f64) {
    println!("{what:<22}{time:>12.2}{:>9.3}×", time / whole);
}

/// Checking a booklet, and how much of it the construction and the first look at the cloth take: both
/// are done once more by themselves, and taken off the whole.
fn checks(folder: &Folder, booklets: &[BookletFolder]) {
    let (mut whole, mut played, mut laid) = (0.0, 0.0, 0.0);
    for booklet in booklets {
        whole += least(|| {
            drop(black_box(
                Workshop::open(folder, booklet, Reach::Checks).report,
            ))
        });
        let compiled = Workshop::open(folder, booklet, Reach::Checks);
        played += least(|| {
            compiled
                .editions()
                .iter()
                .for_each(|edition| drop(black_box(play(edition, None))))
        });
        laid += least(|| lay(&compiled));
    }
    line("check", whole, whole);
    line("  without construction", whole - played, whole);
    line("  without cloth", whole - laid, whole);
}

/// The first look at the cloth of every size, as the checks take it.
fn lay(compiled: &Workshop) {
    use notchbook::cloth::{bolts, lay_within_stated};
    // Pieces are plain data once their bolts are made, so the sizes are laid side by side.
    let bolts: Vec<_> = compiled.editions().iter().flat_map(bolts).collect();
    let laid: Vec<_> = bolts.par_iter().map(lay_within_stated).collect();
    drop(black_box(laid));
}

/// Every step of every size drawn from its work, against the values alone, for which nothing is drawn or laid; and the
/// same with the pictures as the demos have them, of which many are read from files.
fn drawings(folder: &Folder, booklets: &[BookletFolder]) {
    let redrawn = folder.with_unsaved(with_drawings(folder.root()));
    let (mut bare, mut mixed, mut all, mut steps) = (0.0, 0.0, 0.0, 0);
    for booklet in booklets {
        let open =
            |folder: &Folder, reach: Reach| drop(black_box(Workshop::open(folder, booklet, reach)));
        bare += least(|| open(&redrawn, Reach::Values));
        mixed += least(|| open(folder, Reach::Figures));
        all += least(|| open(&redrawn, Reach::Figures));
        let compiled = Workshop::open(&redrawn, booklet, Reach::Figures);
        for size in 0..compiled.sizes.len() {
            steps += compiled.figures.of_size(size).count();
        }
    }
    line("values, nothing drawn", bare, bare);
    line("pictures as they are", mixed, bare);
    line(&format!("{steps} steps drawn"), all, bare);
    let each = (all - bare) / f64::from(u32::try_from(steps.max(1)).unwrap_or(1));
    line("  for one of them", each, bare);
}

/// The texts of the demos, with the compiler's drawing in the place of each author's.
fn with_drawings(home: &Path) -> Vec<(PathBuf, String)> {
    let mut texts = Vec::new();
    let folders = std::fs::read_dir(home).into_iter().flatten().flatten();
    let files = folders.flat_map(|folder| std::fs::read_dir(folder.path()).into_iter().flatten());
    for file in files.flatten().map(|file| file.path()) {
        let Ok(text) = std::fs::read_to_string(&file) else {
            continue;
        };
        let Ok(path) = file.strip_prefix(home) else {
            continue;
        };
        if file.extension().is_some_and(|end| end == "md") {
            let drawn = text.split("](").map(|part| match part.split_once(')') {
                Some((target, rest)) if target.ends_with(".svg") => format!("draw:work){rest}"),
                _ => part.to_owned(),
            });
            let drawn: Vec<String> = drawn.collect();
            texts.push((path.to_owned(), drawn.join("](")));
        }
    }
    texts
}

/// Sheets on every tiled paper, and cutting layouts with the effort of a build, against one check.
fn sheets(folder: &Folder, booklets: &[BookletFolder]) {
    let (mut check, mut planned, mut drawn, mut laid) = (0.0, 0.0, 0.0, 0.0);
    for booklet in booklets {
        check += least(|| {
            drop(black_box(
                Workshop::open(folder, booklet, Reach::Checks).report,
            ))
        });
        let mut compiled = Workshop::open(folder, booklet, Reach::Checks);
        for paper in [SheetPaper::A4, SheetPaper::Letter, SheetPaper::A0] {
            let all: Vec<&Edition<'_>> = compiled.editions().iter().collect();
            let plans = || {
                let mut plans: Vec<_> = all
                    .iter()
                    .map(|edition| plan_one_size(edition, paper))
                    .collect();
                plans.push(plan_all_sizes(compiled.editions(), paper));
                plans
            };
            planned += least(|| drop(black_box(plans())));
            let plans = plans();
            drawn += least(|| {
                for (at, plan) in plans.iter().enumerate() {
                    let shown = all.get(at..=at).unwrap_or(&all);
                    drop(black_box(draw_sheets(plan, shown, "Title", "1.0.0")));
                }
            });
        }
        laid += least(|| compiled.lay_cloth_well());
    }
    line("sheets: planned", planned, check);
    line("sheets: drawn", drawn, check);
    line("cutting layouts", laid, check);
}

/// Three editions set side by side against one after another. Typst remembers what it has set, so its
/// memory is emptied before each run.
fn builds(folder: &Folder, booklets: &[BookletFolder]) {
    let Some(booklet) = booklets.first() else {
        return;
    };
    let compiled = Workshop::open(folder, booklet, Reach::Checks);
    let press = Press::new(&compiled.house);
    let sheaves: Vec<Sheaf> = compiled
        .editions()
        .iter()
        .take(3)
        .map(|edition| compiled.sheaf(&compiled.book(edition, SheetPaper::A4), Paper::A4))
        .collect();
    let one_by_one = least(|| {
        comemo::evict(0);
        sheaves
            .iter()
            .for_each(|sheaf| drop(black_box(press.print(sheaf))));
    });
    let side_by_side = least(|| {
        comemo::evict(0);
        sheaves
            .par_iter()
            .for_each(|sheaf| drop(black_box(press.print(sheaf))));
    });
    let many = sheaves.len();
    line(&format!("{many} one after another"), one_by_one, one_by_one);
    line(&format!("{many} side by side"), side_by_side, one_by_one);
}
