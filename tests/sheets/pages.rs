//! What stands on each page: lines inside the printable window, joints that name each other, the
//! gauge, and the words that a piece needs when it lies loose on a table.

use std::collections::{BTreeMap, BTreeSet};

use kurbo::{Point, Rect};
use notchbook::measure::to_f64;
use notchbook::model::{Size, is_for};
use notchbook::resolve::PieceId;
use notchbook::sheets::{PlacedPiece, SheetPaper, draw_sheets};

use crate::bench::written;
use crate::drawn::Drawn;
use crate::{Set, TILED, each_set, sets};

/// Roundings of coordinates in the drawing, in mm.
const ROUNDED: f64 = 0.005;

/// The pages of a set, by name.
fn pages(set: &Set<'_>) -> Vec<(String, Drawn)> {
    let facts = &set.editions[0].draft.facts;
    let sheets = draw_sheets(
        &set.plan,
        &set.editions,
        &facts.title.text,
        &facts.edition.text,
    )
    .expect("pages that readers open");
    sheets
        .pages
        .iter()
        .map(|page| {
            let mut drawn = Drawn::of(&page.svg);
            let notes = page.notes.iter();
            let notes = notes.map(|note| (note.text.clone(), Point::new(note.at.0, note.at.1)));
            drawn.words.extend(notes);
            (page.name.clone(), drawn)
        })
        .collect()
}

/// Row and column of a sheet's name: letters, then a number from 1.
fn grid(name: &str) -> Option<(usize, usize)> {
    let digits = name.find(|letter: char| letter.is_ascii_digit())?;
    let (letters, number) = name.split_at(digits);
    let mut row = 0;
    for letter in letters.chars() {
        row = row * 26 + (letter as usize).checked_sub('A' as usize)? + 1;
    }
    Some((
        row.checked_sub(1)?,
        number.parse::<usize>().ok()?.checked_sub(1)?,
    ))
}

#[test]
fn every_line_stays_inside_the_margin() {
    let all = SheetPaper::ALL;
    each_set(all, |set| {
        let margin = match set.plan.paper {
            SheetPaper::Projector => 5.0,
            _ => to_f64(set.editions[0].draft.facts.sheets.margin),
        };
        let mut wrong = Vec::new();
        for (name, page) in pages(set) {
            let window = Rect::new(
                margin - ROUNDED,
                margin - ROUNDED,
                page.size.0 - margin + ROUNDED,
                page.size.1 - margin + ROUNDED,
            );
            let out = page
                .lines
                .iter()
                .find(|(_, from, to)| !window.contains(*from) || !window.contains(*to));
            if let Some((class, from, to)) = out {
                wrong.push(format!(
                    "{name}: a line of {class} from {from} to {to} leaves the window"
                ));
            }
            for (words, at) in page.words.iter().filter(|(_, at)| !window.contains(*at)) {
                wrong.push(format!(
                    "{name}: “{words}” begins at {at}, outside the window"
                ));
            }
        }
        wrong
    });
}

#[test]
fn neighbours_name_each_other() {
    each_set(&TILED, |set| {
        let pages = pages(set);
        let mut wrong = Vec::new();
        let names = |page: &Drawn| -> Vec<String> {
            let words = page.words.iter();
            words
                .filter_map(|(words, _)| words.strip_prefix("joins ").map(str::to_owned))
                .collect()
        };
        for (name, page) in &pages {
            let Some((row, column)) = grid(name) else {
                wrong.push(format!("{name} is no name of a sheet"));
                continue;
            };
            let mut told = names(page);
            told.sort();
            // The four sheets beside it, where they exist, and no other.
            let mut beside: Vec<String> = pages
                .iter()
                .map(|(other, _)| other.clone())
                .filter(|other| {
                    grid(other).is_some_and(|(r, c)| r.abs_diff(row) + c.abs_diff(column) == 1)
                })
                .collect();
            beside.sort();
            if told != beside {
                wrong.push(format!(
                    "{name} joins {told:?}, and beside it lie {beside:?}"
                ));
            }
            for other in &told {
                let back = pages.iter().find(|(known, _)| known == other);
                if !back.is_some_and(|(_, page)| names(page).contains(name)) {
                    wrong.push(format!("{name} joins {other}, which does not name it back"));
                }
            }
            if !page.says(name) {
                wrong.push(format!("{name} does not bear its own name"));
            }
            let joints = page.class("nb-joint").count();
            if joints != beside.len() {
                wrong.push(format!(
                    "{name} has {joints} joints and {} neighbours",
                    beside.len()
                ));
            }
        }
        wrong
    });
}

#[test]
fn the_first_sheet_alone_carries_the_gauge() {
    each_set(SheetPaper::ALL, |set| {
        let mut wrong = Vec::new();
        for (at, (name, page)) in pages(set).iter().enumerate() {
            let lines = page.class("nb-gauge").count();
            // Two squares, two rulers, 101 marks of a millimetre and 33 of an eighth of an inch; a beam has squares.
            let beam = set.plan.paper == SheetPaper::Projector;
            let whole = if beam { 8 } else { 8 + 2 + 101 + 33 };
            if lines != if at == 0 { whole } else { 0 } {
                wrong.push(format!("{name}: {lines} lines of a gauge"));
            }
            if at > 0 {
                continue;
            }
            let beam_needs = ["true size, 1:1", "20 cm × 20 cm", "8 in × 8 in", "10 cm"];
            let needed = [
                "Print this sheet first",
                "100 %",
                "actual size",
                "5 cm × 5 cm",
                "2 in × 2 in",
                "10 cm",
                "4 in",
            ];
            let needed = if beam { &beam_needs[..] } else { &needed[..] };
            let missing = needed.iter().filter(|words| !page.mentions(words));
            wrong.extend(missing.map(|words| format!("{name} does not say “{words}”")));
        }
        wrong
    });
}

/// The box round some stretches.
fn round(lines: impl Iterator<Item = (Point, Point)>) -> Option<Rect> {
    lines
        .map(|(from, to)| Rect::from_points(from, to))
        .reduce(|all, one| all.union(one))
}

/// What is wrong with where pieces lie: over each other, or over the gauge.
fn crowded(set: &Set<'_>) -> Vec<String> {
    let mut wrong = Vec::new();
    for (at, one) in set.plan.pieces.iter().enumerate() {
        for other in &set.plan.pieces[at + 1..] {
            if one.bounds.intersect(other.bounds).area() > 0.0 {
                wrong.push(format!(
                    "pieces {} and {} lie over each other",
                    one.number, other.number
                ));
            }
        }
    }
    let pages = pages(set);
    let (name, first) = &pages[0];
    let gauge = round(first.class("nb-gauge")).expect("a gauge");
    let over = first.class("nb-cut").find(|(from, to)| {
        Rect::from_points(*from, *to)
            .inflate(0.01, 0.01)
            .overlaps(gauge)
    });
    if let Some((from, to)) = over {
        wrong.push(format!(
            "{name}: a cutting line from {from} to {to} runs through the gauge"
        ));
    }
    if set.plan.paper.size().1.is_none() && pages.len() != 1 {
        wrong.push(format!("{} pages on one endless paper", pages.len()));
    }
    wrong
}

#[test]
fn nothing_lies_over_anything_else() {
    each_set(SheetPaper::ALL, crowded);
}

/// Strips nearly as wide as a roll, too narrow to hold their own words.
#[test]
fn a_strip_as_wide_as_the_roll_keeps_clear_of_the_gauge() {
    for (width, height) in [(700, 12), (880, 12), (895, 12), (12, 895), (12, 1500)] {
        let facts = format!(
            "title: Flag\nedition: 1.0.0\nsizes: {{one: One size, two: Two}}\n\
             fabrics: {{outer: {{name: Cotton}}}}\n\
             pieces:\n  flag:\n    outline: {{rectangle: [{width} mm, {height} mm]}}\n    allowance: {{all: 0 mm}}\n    \
             raw: all\n    grain: vertical\n    cut: {{outer: 1}}\nparts: [make.md]\n"
        );
        let part = "# Make it\n\n## Cut it {#cut}\n\n```work\n- cut: flag\n```\n\nCut it.\n";
        written(&[("booklet.yaml", &facts), ("make.md", part)], |compiled| {
            for set in sets("flag", compiled, SheetPaper::ALL) {
                let wrong = crowded(&set);
                assert!(
                    wrong.is_empty(),
                    "{width} × {height}, {}: {wrong:?}",
                    set.name
                );
            }
        });
    }
}

/// Sizes as makers read them, behind the name of their thing where the pattern is for several.
fn by_thing(sizes: &[Size], own: &[usize]) -> String {
    let mut things: Vec<(Option<&str>, Vec<&str>)> = Vec::new();
    for size in own.iter().map(|at| &sizes[*at]) {
        let view = size.view.as_ref().map(|view| view.name.text.as_str());
        match things.iter_mut().find(|(known, _)| *known == view) {
            Some((_, names)) => names.push(&size.name),
            None => things.push((view, vec![&size.name])),
        }
    }
    let words = things.into_iter().map(|(view, names)| match view {
        Some(view) if names != [view] => format!("{view}: {}", names.join(", ")),
        _ => names.join(", "),
    });
    words.collect::<Vec<_>>().join("; ")
}

#[test]
fn each_piece_says_what_it_is_and_what_is_cut() {
    each_set(SheetPaper::ALL, |set| {
        let facts = &set.editions[0].draft.facts;
        let pages = pages(set);
        let told = |words: &str| pages.iter().any(|(_, page)| page.says(words));
        let mentioned = |words: &str| pages.iter().any(|(_, page)| page.mentions(words));
        let mut wrong = Vec::new();
        for (at, piece) in facts.pieces.iter().enumerate() {
            let sizes: Vec<usize> = set
                .editions
                .iter()
                .map(|edition| edition.size())
                .filter(|size| is_for(piece.sizes.as_ref(), *size))
                .collect();
            if sizes.is_empty() {
                continue;
            }
            let name = format!("{}  {}", at + 1, piece.name.text);
            // Lengths of tape, and what a ruler cuts, are on no sheet.
            if piece.tape.is_some() || piece.by_ruler {
                if told(&name) {
                    wrong.push(format!("a sheet says “{name}”, which a ruler cuts"));
                }
                continue;
            }
            if !told(&name) {
                wrong.push(format!("no sheet says “{name}”"));
            }
            let laid = set.plan.pieces.iter();
            let laid = laid.filter(|laid| facts.pieces[laid.piece].id.text == piece.id.text);
            let mut drawn: Vec<usize> = Vec::new();
            for one in laid {
                let own: Vec<usize> = one.outlines.iter().map(|(size, _)| *size).collect();
                let all = own.len() > 2 && own.len() == set.editions.len();
                let words = match facts.sizes.iter().all(|size| size.view.is_none()) && all {
                    true => "all sizes".to_owned(),
                    false => by_thing(&facts.sizes, &own),
                };
                if !told(&words) {
                    wrong.push(format!("no sheet names the sizes “{words}”"));
                }
                drawn.extend(own);
            }
            drawn.sort_unstable();
            if drawn != sizes {
                wrong.push(format!("{name}: drawn in {drawn:?}, and cut in {sizes:?}"));
            }
            for cut in &piece.cut {
                let fabric = facts
                    .fabrics
                    .iter()
                    .find(|fabric| fabric.id.text == cut.fabric.text);
                let fabric = fabric
                    .expect("a fabric of the booklet")
                    .name
                    .text
                    .to_lowercase();
                let values = &set.editions[0].values;
                let count = values.pieces_cut(&cut.copies).expect("a number of pieces");
                let words = format!("cut {count} of {fabric}");
                if !mentioned(&words) {
                    wrong.push(format!("no sheet says “{words}”"));
                }
            }
            if piece.fold.is_some() && !mentioned("on the fold") {
                wrong.push(format!("{name}: no sheet speaks of the fold"));
            }
        }
        wrong
    });
}

#[test]
fn a_nested_set_holds_every_size() {
    each_set(SheetPaper::ALL, |set| {
        if set.editions.len() < 2 {
            return Vec::new();
        }
        let pages = pages(set);
        let facts = &set.editions[0].draft.facts;
        let mut wrong = Vec::new();
        // Each thing is nested by itself, so that the first sizes of all share a line pattern. What is
        // equal in several things has none.
        let mut drawn: BTreeMap<String, (f64, f64)> = BTreeMap::new();
        for edition in &set.editions {
            let size = edition.size_facts();
            let before = facts.sizes[..edition.size()].iter();
            let class = format!(
                "nb-size-{}",
                before.filter(|one| one.shares_view(size)).count()
            );
            let pieces = PieceId::each(&facts.pieces).filter(|(at, piece)| {
                let once = |laid: &PlacedPiece| laid.piece == *at && laid.once;
                piece.tape.is_none()
                    && !piece.by_ruler
                    && is_for(piece.sizes.as_ref(), edition.size())
                    && !set.plan.pieces.iter().any(once)
            });
            // An edge that lies on the fold is not cut.
            let true_length: f64 = pieces
                .map(|(at, piece)| {
                    let shape = edition.values.shape(at).expect("a piece");
                    let fold = piece.fold.as_ref();
                    let fold = fold.and_then(|fold| shape.edge(&fold.text));
                    shape.cutting().length() - fold.map_or(0.0, |fold| fold.cut_length)
                })
                .sum();
            drawn.entry(class).or_default().1 += true_length;
            if !pages.iter().any(|(_, page)| page.says(&size.name)) {
                wrong.push(format!("no line is marked “{}”", size.name));
            }
        }
        let patterns: BTreeSet<&str> = pages
            .iter()
            .flat_map(|(_, page)| &page.lines)
            .flat_map(|(class, ..)| class.split(' '))
            .filter(|class| class.starts_with("nb-size-"))
            .collect();
        if !patterns.iter().copied().eq(drawn.keys()) {
            wrong.push(format!("line patterns {patterns:?}"));
        }
        for (class, (shown, wanted)) in &mut drawn {
            let lines = pages.iter().flat_map(|(_, page)| page.class(class));
            *shown = lines.map(|(from, to)| from.distance(to)).sum();
            // What lies in an overlap is drawn twice, so the sum may be more and never less.
            if *shown < *wanted - 0.1 {
                wrong.push(format!("{class}: {shown:.2} mm drawn of {wanted:.2}"));
            }
        }
        wrong
    });
}
