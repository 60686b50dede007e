//! `figures`: the diagrams of a booklet as they are printed, as SVG and as PNG.

use std::collections::BTreeSet;
use std::path::Path;

use super::apart::Bounds;
use super::args::{FiguresArgs, Form};
use super::{Outcome, Refusal, apart, choose, output, sets};
use crate::draw::{Sketch, sketches};
use crate::figure::{PictureFault, fonts, to_png};
use crate::out::{self, NewFile, Origin};
use crate::pipeline::{Reach, Workshop};

pub(super) fn run(folder: Option<&Path>, args: &FiguresArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let choice = choose::booklets(folder, std::slice::from_ref(&args.booklet))?;
    apart::each(&choice, bounds, |booklet| {
        let workshop = Workshop::open(&choice.folder, booklet, Reach::Figures);
        let target = args.out.join(&booklet.name);
        if target.canonicalize().is_ok_and(|target| target == choice.folder.root().join(&booklet.path)) {
            return Err(Refusal::new(
                format!("`{}` is the booklet's own folder", target.display()),
                "name another folder with --out, so that no drawing of yours is replaced",
            ));
        }
        write(&booklet.name, &workshop, args)
    })
}

fn write(name: &str, workshop: &Workshop, args: &FiguresArgs) -> Result<Outcome, Refusal> {
    output::report(&workshop.report, workshop, Form::People);
    let sizes = choose::sizes(workshop, &args.size, name)?;
    let (database, _) = fonts(&workshop.house);
    let mut count = 0;
    let mut files = Vec::new();
    for size in sizes.iter().copied().filter(|_| !args.svg) {
        let of = &workshop.sizes[size];
        let mut taken = BTreeSet::new();
        let mut add = |name: String, bytes: Vec<u8>| {
            let origin = Origin { kind: "figures".into(), of: of.clone() };
            files.push(NewFile { path: format!("figures/{of}/{name}"), bytes, origin });
        };
        // One diagram in several steps is one file, as long as it shows the same figures.
        let mut known = BTreeSet::new();
        let figures = workshop.figures.of_size(size).map(|(_, figure)| figure);
        for figure in figures.filter(|figure| known.insert((&figure.path, &figure.svg))) {
            let stem = Path::new(&figure.path).file_stem().and_then(|stem| stem.to_str()).unwrap_or("figure");
            let mut file = stem.to_owned();
            let mut again = 2;
            while !taken.insert(file.clone()) {
                file = format!("{stem}-{again}");
                again += 1;
            }
            add(format!("{file}.svg"), figure.svg.clone().into_bytes());
            if args.png {
                let dots = f32::from(args.dpi) / 25.4;
                let png = to_png(&figure.svg, &database, dots).map_err(|fault| refusal(&figure.path, fault))?;
                add(format!("{file}.png"), png);
            }
            count += 1;
        }
    }
    let (kind, place) = if args.svg { ("drawn steps", "drawn") } else { ("diagrams", "figures") };
    for size in sizes.into_iter().filter(|_| args.svg) {
        count += drawn(workshop, size, &mut files);
    }
    let folder = args.out.join(name);
    let mut gone = Vec::new();
    // Facts that cannot be read say nothing of the sizes that there are: what was made of them stays.
    if workshop.draft().is_some() {
        gone = out::put(&folder, &files, &sets::known(workshop))?;
    }
    output::line(&format!("{count} {kind} in {}", folder.join(place).display()));
    if args.svg && count > 0 {
        output::line(
            "next: put these folders into `figures` beside the part, and name `figures/{size}/STEP.svg` in the step",
        );
    }
    output::gone(&folder, &gone);
    Ok(if workshop.report.errors() > 0 { Outcome::Findings } else { Outcome::Clean })
}

/// The drawn steps of a size as their author may go on with them; how many.
fn drawn(workshop: &Workshop, size: usize, files: &mut Vec<NewFile>) -> usize {
    let of = &workshop.sizes[size];
    let edition = workshop.editions().iter().find(|edition| edition.size() == size);
    let sketches = edition.map(|edition| sketches(edition, &workshop.figures)).unwrap_or_default();
    let file = |sketch: &Sketch| NewFile {
        path: format!("drawn/{of}/{}.svg", sketch.name),
        bytes: sketch.svg.clone().into_bytes(),
        origin: Origin { kind: "drawn".into(), of: of.clone() },
    };
    files.extend(sketches.iter().map(file));
    sketches.len()
}

fn refusal(path: &str, fault: PictureFault) -> Refusal {
    match fault {
        PictureFault::TooLarge => {
            Refusal::new(format!("the picture of `{path}` would be too large"), "ask for fewer dots with --dpi")
        }
        PictureFault::Unreadable(words) => {
            Refusal::new(format!("`{path}` cannot be made into a picture: {words}"), "run `notchbook check`")
        }
    }
}
