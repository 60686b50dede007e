//! Readers fed with what nobody means, for as long as one likes: `cargo bench --bench fuzz -- 15` spends fifteen minutes
//! on each reader, `cargo bench --bench fuzz -- 15 figures` on one.
//!
//! Each input is one of the demo booklets with a few changes in one sort of file, or with a damaged font. A panic, and an
//! input that takes more than ten seconds of the processor, is told with the number that makes it again
//! (`-- 0 figures 12345`), and the run ends with 1.

#[path = "fuzz/fonts.rs"]
mod fonts;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::Instant;

use fastrand::Rng;
use notchbook::measure::Formula;
use notchbook::pipeline::{Reach, Workshop};
use notchbook::sheets::SheetPaper;
use notchbook::source::{BookletFolder, Folder, find_booklets};
use notchbook::typeset::{Paper, Press};

/// An input that takes more of the processor, in seconds, is a find.
const SLOW: f64 = 10.0;

/// Pieces of the language, and numbers out of all measure, that changes put in.
const WORDS: &[&str] = &[
    "{",
    "}",
    "|",
    ":",
    "[",
    "]",
    "(",
    ")",
    "-",
    "\n",
    "\n- ",
    "  ",
    "\t",
    "\"",
    "'",
    "#",
    "*",
    "_",
    "`",
    "```",
    "<",
    ">",
    "/>",
    "&#x202e;",
    "\u{202e}",
    "\u{0}",
    "0",
    "-1",
    "1e30",
    "999999999999999999999999",
    "0.0000000001",
    "1 cm",
    "1 cm (1 in)",
    "mm",
    "in",
    "front",
    "front.top",
    "back.left",
    "size",
    "small",
    "all",
    "seam",
    "sew",
    "hem",
    "bind",
    "gather",
    "turn",
    "cut",
    "quilt",
    "box",
    "allowance: ",
    "stitch: ",
    "leave: ",
    "up(",
    "round(",
    "sqrt(",
    "min(",
    "else: ",
    "for=",
    "#id",
    "{#",
    "draw:work",
    "![",
    "](",
    "](#",
    "](piece:",
    "](term:",
    "viewBox=\"0 0 0 0\"",
    "transform=\"scale(0)\"",
    "width=\"{seam}\"",
    "d=\"M 0 0 C 1e9 0 0 1e9 0 0 Z\"",
    "<g>",
    "</g>",
    "<text>",
    "<use href=\"#a\"/>",
    "data-scale=\"1:0\"",
    "null",
    "yes",
    "no",
    "~",
    "!",
    "&a",
    "*a",
    "---",
];

/// A sort of files that is changed, and what each input is taken through.
struct Target {
    name: &'static str,
    /// Whether a file of a booklet is changed.
    changes: fn(&Path) -> bool,
    take: fn(&Folder, &BookletFolder),
}

const TARGETS: &[Target] = &[
    Target {
        name: "facts",
        changes: is_facts,
        take: values,
    },
    Target {
        name: "words",
        changes: is_words,
        take: values,
    },
    Target {
        name: "work",
        changes: is_words,
        take: checked,
    },
    Target {
        name: "figures",
        changes: is_figure,
        take: drawn,
    },
    Target {
        name: "outlines",
        changes: is_outline,
        take: checked,
    },
    Target {
        name: "booklets",
        changes: |_| true,
        take: printed,
    },
];

fn is_facts(path: &Path) -> bool {
    path.ends_with("booklet.yaml")
}

fn is_words(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "md")
}

fn is_figure(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "svg")
        && path.components().any(|part| part.as_os_str() == "figures")
}

fn is_outline(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "svg")
        && path.components().any(|part| part.as_os_str() == "pieces")
        || is_facts(path)
}

fn values(folder: &Folder, booklet: &BookletFolder) {
    drop(Workshop::open(folder, booklet, Reach::Values));
}

fn drawn(folder: &Folder, booklet: &BookletFolder) {
    drop(Workshop::open(folder, booklet, Reach::Figures));
}

fn checked(folder: &Folder, booklet: &BookletFolder) {
    drop(Workshop::open(folder, booklet, Reach::Checks));
}

fn printed(folder: &Folder, booklet: &BookletFolder) {
    let workshop = Workshop::open(folder, booklet, Reach::Checks);
    if workshop.report.errors() > 0 {
        return;
    }
    let press = Press::new(&workshop.house);
    for edition in workshop.editions().iter().take(1) {
        let book = workshop.book(edition, SheetPaper::A4);
        if let Err(faults) = press.print(&workshop.sheaf(&book, Paper::A4)) {
            panic!("checked clean, and not set: {faults:?}");
        }
    }
    comemo::evict(0);
}

fn main() {
    // `cargo bench` hands its own switch over too.
    let arguments: Vec<String> = std::env::args()
        .skip(1)
        .filter(|argument| argument != "--bench")
        .collect();
    let minutes: f64 = arguments
        .first()
        .and_then(|minutes| minutes.parse().ok())
        .unwrap_or(0.05);
    let only = arguments.get(1);
    let seed = arguments.get(2).and_then(|seed| seed.parse().ok());
    let home = Path::new(env!("CARGO_MANIFEST_DIR"));
    // The small booklet of the checks' cases is read nine times while one of the demos is read once.
    let shelves = [
        Shelf::open(&home.join("tests/checks")),
        Shelf::open(&home.join("booklets")),
    ];
    println!(
        "{:<12}{:>10}{:>10}{:>8}",
        "reader", "inputs", "minutes", "finds"
    );
    let mut finds = 0;
    for target in TARGETS
        .iter()
        .filter(|target| only.is_none_or(|only| only == target.name))
    {
        finds += fuzz(target, &shelves, minutes, seed);
    }
    if only.is_none_or(|only| only == "formulas") {
        finds += formulas(minutes, seed);
    }
    if only.is_none_or(|only| only == "fonts") {
        let fonts = fonts::Fonts::open(&home.join("tests/checks/_base"), &home.join("fonts"));
        finds += repeat("fonts", minutes, seed, |seed| {
            fonts.run(&mut Rng::with_seed(seed));
        });
    }
    std::process::exit(i32::from(finds > 0));
}

/// Booklets that are read, and their texts.
struct Shelf {
    folder: Folder,
    booklets: Vec<BookletFolder>,
    texts: Vec<(PathBuf, String)>,
}

impl Shelf {
    fn open(root: &Path) -> Shelf {
        let folder = Folder::open(root).expect("a folder of booklets");
        let (booklets, _) = find_booklets(&folder);
        Shelf {
            folder,
            booklets,
            texts: texts(root),
        }
    }
}

/// Every text below a folder, by its path from it.
fn texts(root: &Path) -> Vec<(PathBuf, String)> {
    let files = walkdir::WalkDir::new(root)
        .sort_by_file_name()
        .into_iter()
        .filter_map(Result::ok);
    files
        .filter_map(|entry| {
            let path = entry.path().strip_prefix(root).ok()?.to_path_buf();
            Some((path, std::fs::read_to_string(entry.path()).ok()?))
        })
        .collect()
}

fn fuzz(target: &Target, shelves: &[Shelf; 2], minutes: f64, seed: Option<u64>) -> usize {
    let run = |seed: u64| {
        let mut rng = Rng::with_seed(seed);
        let shelf = &shelves[usize::from(rng.u8(..10) == 0)];
        let booklet = &shelf.booklets[rng.usize(..shelf.booklets.len())];
        let own = |path: &Path| path.starts_with(&booklet.path) && (target.changes)(path);
        let own: Vec<&(PathBuf, String)> =
            shelf.texts.iter().filter(|(path, _)| own(path)).collect();
        let mut changed = Vec::new();
        for _ in 0..1 + rng.usize(..2) {
            if let Some((path, text)) = own.get(rng.usize(..own.len().max(1))) {
                changed.push((path.clone(), change(text, &mut rng)));
            }
        }
        (target.take)(&shelf.folder.with_unsaved(changed), booklet);
    };
    repeat(target.name, minutes, seed, run)
}

fn formulas(minutes: f64, seed: Option<u64>) -> usize {
    let starts = [
        "width + 2 * seam",
        "up(length / repeat, 1)",
        "round(sqrt(a * b) / 3, 1/8 in)",
        "min(2 cm, 3 1/2 in)",
    ];
    repeat("formulas", minutes, seed, |seed| {
        let mut rng = Rng::with_seed(seed);
        let start = starts[rng.usize(..starts.len())];
        let _ = Formula::parse(&change(start, &mut rng));
    })
}

/// The processor's time that this process has taken, in seconds; where the system does not tell it, the time since the
/// start.
fn spent(start: Instant) -> f64 {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    // Behind the name, which may hold blanks: user's and system's time in hundredths (proc(5), fields 14 and 15).
    let fields = stat
        .rsplit_once(')')
        .map_or("", |(_, rest)| rest)
        .split_whitespace();
    let ticks: Vec<f64> = fields
        .skip(11)
        .take(2)
        .filter_map(|field| field.parse().ok())
        .collect();
    match ticks.as_slice() {
        [user, system] => (user + system) / 100.0,
        _ => start.elapsed().as_secs_f64(),
    }
}

/// Runs one number after the other until the time is over; how many panicked or were slow.
fn repeat(name: &str, minutes: f64, seed: Option<u64>, run: impl Fn(u64)) -> usize {
    let start = Instant::now();
    let first = seed.unwrap_or_else(|| fastrand::u64(..1 << 48));
    // Where an input stops the whole program, it is one of those that follow.
    println!("{name:<12}from number {first} on");
    let (mut inputs, mut finds) = (0u64, 0);
    loop {
        let number = first + inputs;
        let began = spent(start);
        let ended = catch_unwind(AssertUnwindSafe(|| run(number)));
        inputs += 1;
        let seconds = spent(start) - began;
        if ended.is_err() || seconds > SLOW {
            finds += 1;
            println!(
                "{name}: number {number}: {:.1} s, panicked: {}",
                seconds,
                ended.is_err()
            );
        }
        if seed.is_some() || start.elapsed().as_secs_f64() > minutes * 60.0 {
            break;
        }
    }
    println!(
        "{name:<12}{inputs:>10}{:>10.2}{finds:>8}",
        start.elapsed().as_secs_f64() / 60.0
    );
    finds
}

/// A text with a few changes: words put in, taken out, doubled, moved, or a letter turned into another.
fn change(text: &str, rng: &mut Rng) -> String {
    let mut text = text.to_owned();
    for _ in 0..1 + rng.usize(..4) {
        let at = place(&text, rng);
        let end = place(&text[at..], rng).min(60) + at;
        let end = (end..=text.len())
            .find(|end| text.is_char_boundary(*end))
            .unwrap_or(text.len());
        match rng.u8(..7) {
            0 | 1 => text.insert_str(at, WORDS[rng.usize(..WORDS.len())]),
            2 => text.replace_range(at..end, ""),
            3 => {
                let copy = text[at..end].repeat(1 + rng.usize(..40));
                text.insert_str(at, &copy);
            }
            4 => text.replace_range(at..end, WORDS[rng.usize(..WORDS.len())]),
            5 => {
                let piece = text[at..end].to_owned();
                let to = place(&text, rng);
                text.insert_str(to, &piece);
            }
            _ => number(&mut text, at, rng),
        }
    }
    text
}

/// Puts another number in the place of the next one.
fn number(text: &mut String, at: usize, rng: &mut Rng) {
    const NUMBERS: &[&str] = &[
        "0",
        "-1",
        "1",
        "7",
        "1000000",
        "0.001",
        "99999999999999",
        "1/0",
        "3 1/3",
        "1e9",
    ];
    let Some(start) = text[at..]
        .find(|letter: char| letter.is_ascii_digit())
        .map(|found| at + found)
    else {
        return;
    };
    let digits = text[start..]
        .find(|letter: char| !letter.is_ascii_digit())
        .map_or(text.len(), |end| start + end);
    text.replace_range(start..digits, NUMBERS[rng.usize(..NUMBERS.len())]);
}

fn place(text: &str, rng: &mut Rng) -> usize {
    let at = rng.usize(..=text.len());
    (0..=at)
        .rev()
        .find(|at| text.is_char_boundary(*at))
        .unwrap_or(0)
}
