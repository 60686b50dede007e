//! Drawn steps handed to their author: named in the step as files of hers they check clean in every size and look the
//! same, and what is a measurement in them is a formula.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use notchbook::draw::{Sketch, sketches};
use notchbook::figure::{fonts, to_png};
use notchbook::pipeline::{Reach, Workshop};
use notchbook::source::{BookletFolder, Folder, find_booklets};

use crate::bench::{root, written};

/// How much two pictures of one drawing may differ in a dot, of 255: formulas are rounded a digit later.
const DOT: u8 = 24;
/// How many dots of ten thousand may differ by more.
const DOTS: usize = 8;

/// The sketches of every size.
fn all(compiled: &Workshop) -> Vec<(usize, Sketch)> {
    let of = |edition: &notchbook::resolve::Edition<'_>| {
        let own = sketches(edition, &compiled.figures);
        let size = edition.size();
        own.into_iter()
            .map(move |sketch| (size, sketch))
            .collect::<Vec<_>>()
    };
    compiled.editions().iter().flat_map(of).collect()
}

/// The booklet's texts with every drawn step named as a file, and those files.
fn taken(compiled: &Workshop, sketches: &[(usize, Sketch)]) -> Vec<(PathBuf, String)> {
    let mut texts: BTreeMap<PathBuf, String> = BTreeMap::new();
    let mut asked: BTreeMap<PathBuf, Vec<(usize, String)>> = BTreeMap::new();
    for (size, sketch) in sketches {
        let file = compiled.sources.file(sketch.mention.file);
        let path = PathBuf::from(&file.path);
        let beside = path.parent().unwrap_or(Path::new(""));
        let folder = beside.join("figures").join(&compiled.sizes[*size]);
        texts.insert(
            folder.join(format!("{}.svg", sketch.name)),
            sketch.svg.clone(),
        );
        let range = sketch.mention.range();
        let at = range.start + file.text[range].find("draw:work").expect("the mention");
        let own = asked.entry(path).or_default();
        if !own.iter().any(|(known, _)| *known == at) {
            own.push((at, format!("figures/{{size}}/{}.svg", sketch.name)));
        }
    }
    for (path, mut own) in asked {
        let file = compiled.sources.by_path(&path.to_string_lossy());
        let mut text = compiled.sources.file(file.expect("the part")).text.clone();
        own.sort();
        for (at, name) in own.into_iter().rev() {
            text.replace_range(at..at + "draw:work".len(), &name);
        }
        texts.insert(path, text);
    }
    texts.into_iter().collect()
}

/// What two pictures of one drawing differ in: the dots of ten thousand.
fn differing(one: &[u8], two: &[u8]) -> usize {
    let read = |png: &[u8]| image::load_from_memory(png).expect("a picture").to_luma8();
    let (one, two) = (read(one), read(two));
    if one.dimensions() != two.dimensions() {
        return 10_000;
    }
    let pairs = one.as_raw().iter().zip(two.as_raw());
    let far = pairs.filter(|(one, two)| one.abs_diff(**two) > DOT).count();
    far * 10_000 / one.as_raw().len()
}

/// Faults of a booklet whose drawn steps are taken over by its author.
fn compare(folder: &Folder, booklet: &BookletFolder) -> (usize, Vec<String>) {
    let name = &booklet.name;
    let before = Workshop::open(folder, booklet, Reach::Checks);
    let sketches = all(&before);
    let with = folder.with_unsaved(taken(&before, &sketches));
    let after = Workshop::open(&with, booklet, Reach::Checks);
    let mut wrong: Vec<String> = after
        .report
        .findings
        .iter()
        .filter(|one| {
            !before
                .report
                .findings
                .iter()
                .any(|known| known.message == one.message)
        })
        .map(|one| {
            let path = &after.sources.file(one.span.file).path;
            let line = after.sources.place(one.span).line;
            format!("{name}, {path}:{line}: {}: {}", one.check.code, one.message)
        })
        .collect();
    let (database, _) = fonts(&before.house);
    let figure = |compiled: &Workshop, size: usize, path: &str| {
        let mut own = compiled.figures.of_size(size);
        own.find(|(_, figure)| figure.path.ends_with(path))
            .map(|(_, figure)| to_png(&figure.svg, &database, 4.0).expect("a picture"))
    };
    let mut seen = 0;
    for (size, sketch) in &sketches {
        let of = &after.sizes[*size];
        let drawn = before.editions()[*size]
            .figure_uses()
            .into_iter()
            .find(|(mention, _)| mention.span == sketch.mention)
            .and_then(|(mention, _)| before.figures.get(*size, &mention.key))
            .map(|figure| to_png(&figure.svg, &database, 4.0).expect("a picture"));
        let own = figure(&after, *size, &format!("figures/{of}/{}.svg", sketch.name));
        let (Some(drawn), Some(own)) = (drawn, own) else {
            wrong.push(format!("{name}, {of}: {} is not drawn", sketch.name));
            continue;
        };
        seen += 1;
        let off = differing(&drawn, &own);
        if off > DOTS {
            wrong.push(format!(
                "{name}, {of}: {} looks different in {off} of 10 000 dots",
                sketch.name
            ));
        }
    }
    (seen, wrong)
}

#[test]
fn drawn_steps_named_as_files_check_clean_and_look_the_same() {
    let folder = Folder::open(&root().join("booklets")).expect("the demo booklets");
    let (booklets, _) = find_booklets(&folder);
    let mut wrong = Vec::new();
    let mut seen = 0;
    for booklet in &booklets {
        let (own, faults) = compare(&folder, booklet);
        seen += own;
        wrong.extend(faults);
    }
    println!("{seen} drawn steps taken over");
    assert!(seen > 90, "{seen} drawn steps");
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

const POUCH: &str = "title: Pouch
edition: 1.0.0
sizes: {small: Small, large: Large}
measurements:
  seam: 1 cm (3/8 in)
  wide: [12 cm (4 3/4 in), 17 cm (6 3/4 in)]
  high: 10 cm (4 in)
  gap: 5 cm (2 in)
fabrics:
  outer: {name: \"Cotton {striped}\", widths: [110 cm]}
notions:
  thread: {kind: thread, name: Thread}
pieces:
  side: {name: \"Side {a}\", outline: {rectangle: [wide, high]}, allowance: seam, grain: vertical, cut: {outer: [front, back]}}
parts: [make.md]
";

const MAKE: &str = "# Make it

## Cut {#cut}

```work
- cut: side
```

Cut both sides.

![The side](draw:work)

## Sew round

```work
- {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm, leave: gap}
```

Sew the base.

![Both sides, right sides together](draw:work)
";

#[test]
fn what_is_measured_is_a_formula() {
    written(&[("booklet.yaml", POUCH), ("make.md", MAKE)], |compiled| {
        let sketches = all(compiled);
        let of = |size: usize, name: &str| -> String {
            let found = sketches
                .iter()
                .find(|(own, sketch)| *own == size && sketch.name == name);
            found.unwrap_or_else(|| panic!("no {name}")).1.svg.clone()
        };
        for size in 0..2 {
            let (cut, sew) = (of(size, "cut"), of(size, "sew-round"));
            // A figure on the page, a side of the piece, and the line that measures it.
            for wanted in ["{wide}", "h {wide}", "class=\"dimension\" d=\"M"] {
                assert!(cut.contains(wanted), "no {wanted} in\n{cut}");
            }
            for wanted in ["{allowance}", "leave {leave} open"] {
                assert!(sew.contains(wanted), "no {wanted} in\n{sew}");
            }
            for svg in [&cut, &sew] {
                assert!(!svg.contains("cm"), "a figure typed by hand in\n{svg}");
                for foreign in ["<style", "font", "notchbook", "metadata"] {
                    assert!(!svg.contains(foreign), "{foreign} in\n{svg}");
                }
            }
            // A brace of a name is no formula.
            assert!(cut.contains("\\{a\\}"), "the name lost its braces:\n{cut}");
        }
    });
}
