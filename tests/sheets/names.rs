//! Nests in grey: the line of each size is named wherever it is seen, what sizes share is drawn once, sizes lie on
//! their fold, and joints bear one number on both of their sheets.

use std::collections::BTreeMap;

use kurbo::{Point, Rect, Shape as _};
use notchbook::sheets::{SheetPaper, draw_sheets};

use crate::drawn::Drawn;
use crate::{Set, TILED, each_set};

/// A line shorter than this on a sheet needs no name, in mm.
const LEAST: f64 = 2.0;

/// The pages of a set with their names.
fn pages(set: &Set<'_>) -> Vec<(String, Drawn)> {
    let facts = &set.editions[0].draft.facts;
    let sheets = draw_sheets(&set.plan, &set.editions, &facts.title.text, "1");
    let pages = sheets.expect("pages that readers open").pages;
    pages
        .iter()
        .map(|page| (page.name.clone(), Drawn::of(&page.svg)))
        .collect()
}

/// The cutting lines of a page in connected runs, by their classes.
fn runs(page: &Drawn) -> Vec<(&str, Vec<(Point, Point)>)> {
    let mut runs: Vec<(&str, Vec<(Point, Point)>)> = Vec::new();
    for (class, from, to) in &page.lines {
        if !class.starts_with("nb-cut ") {
            continue;
        }
        match runs.last_mut() {
            Some((own, run))
                if *own == class && run.last().expect("a stretch").1.distance(*from) < 0.006 =>
            {
                run.push((*from, *to))
            }
            _ => runs.push((class, vec![(*from, *to)])),
        }
    }
    // A closed line begins somewhere: there one of its runs goes on as another.
    let mut at = 0;
    while at < runs.len() {
        let (class, end) = (runs[at].0, runs[at].1.last().expect("a stretch").1);
        let next = runs
            .iter()
            .position(|(other, run)| *other == class && run[0].0.distance(end) < 0.006);
        match next.filter(|next| *next != at) {
            Some(next) => {
                let (_, tail) = runs.remove(next);
                let own = if next < at { at - 1 } else { at };
                runs[own].1.extend(tail);
                at = own;
            }
            None => at += 1,
        }
    }
    runs
}

fn distance(run: &[(Point, Point)], to: Point) -> f64 {
    let from = |(one, other): &(Point, Point)| {
        let along = *other - *one;
        let share = ((to - *one).dot(along) / along.hypot2()).clamp(0.0, 1.0);
        (*one + along * share).distance(to)
    };
    run.iter().map(from).fold(f64::INFINITY, f64::min)
}

/// The name that a run needs: `None` where its line is no size's.
fn names(set: &Set<'_>, class: &str) -> Vec<String> {
    let sizes = &set.editions[0].draft.facts.sizes;
    let nth = |at: usize| {
        sizes[..at]
            .iter()
            .filter(|one| one.shares_view(&sizes[at]))
            .count()
    };
    let of = |pattern: &str| -> Vec<String> {
        let own = (0..sizes.len()).filter(|at| format!("nb-size-{}", nth(*at)) == pattern);
        own.map(|at| sizes[at].name.clone()).collect()
    };
    let patterns: Vec<&str> = class
        .split(' ')
        .filter(|one| one.starts_with("nb-size-"))
        .collect();
    match patterns.as_slice() {
        [one] => of(one),
        several => {
            let all: Vec<String> = several.iter().filter_map(|one| of(one).pop()).collect();
            vec![all.join(", "), "all sizes".to_owned()]
        }
    }
}

#[test]
fn every_line_of_a_nest_is_named_on_every_sheet() {
    let mut looked = 0;
    each_set(&TILED, |set| {
        let mut wrong = Vec::new();
        if set.editions.len() < 2 {
            return wrong;
        }
        for (name, page) in pages(set) {
            let leaders: Vec<(Point, Point)> = page.class("nb-leader").collect();
            for (class, run) in runs(&page) {
                if run.iter().map(|(a, b)| a.distance(*b)).sum::<f64>() < LEAST {
                    continue;
                }
                looked += 1;
                let wanted = names(set, class);
                let told = page.words.iter().filter(|(text, _)| wanted.contains(text));
                // A name is 2.5 mm high. It stands at its line, or a leader comes from the line to it.
                let is_named = told.into_iter().any(|(text, at)| {
                    let wide = text.chars().count() as f64 * 2.5 * 0.68;
                    let room = Rect::new(at.x, at.y - 2.0, at.x + wide, at.y + 0.5);
                    let corners = [room.x0, room.center().x, room.x1]
                        .into_iter()
                        .flat_map(|x| {
                            [room.y0, room.center().y, room.y1].map(|y| Point::new(x, y))
                        });
                    let near = corners
                        .into_iter()
                        .any(|corner| distance(&run, corner) < 2.0);
                    let led = leaders.iter().any(|(from, to)| {
                        distance(&run, *from) < 0.05 && room.inflate(1.0, 1.0).contains(*to)
                    });
                    near || led
                });
                if !is_named {
                    wrong.push(format!(
                        "{name}: a line of {class} from {} has no name {wanted:?}",
                        run[0].0
                    ));
                }
            }
        }
        wrong
    });
    assert!(looked > 200, "only {looked} lines of nests");
}

#[test]
fn what_sizes_share_is_drawn_once() {
    let mut shared = 0;
    each_set(&[SheetPaper::A0], |set| {
        let mut wrong = Vec::new();
        for (name, page) in pages(set) {
            let runs = runs(&page);
            shared += runs
                .iter()
                .filter(|(class, _)| class.contains("nb-shared"))
                .count();
            for (at, (class, run)) in runs.iter().enumerate() {
                for (other_class, other) in &runs[at + 1..] {
                    for (from, to) in run.iter().filter(|(a, b)| a.distance(*b) > 1.0) {
                        let inner = [0.3, 0.5, 0.7].map(|share| from.lerp(*to, share));
                        if inner.iter().all(|point| distance(other, *point) < 0.015) {
                            wrong.push(format!(
                                "{name}: {class} and {other_class} both run from {from} to {to}"
                            ));
                        }
                    }
                }
            }
        }
        wrong
    });
    assert!(shared > 5, "only {shared} shared lines");
}

#[test]
fn sizes_of_a_nest_lie_on_their_fold() {
    let mut folds = 0;
    each_set(&[SheetPaper::A0], |set| {
        let mut wrong = Vec::new();
        for piece in set.plan.pieces.iter().filter(|piece| !piece.once) {
            let boxes: Vec<Rect> = piece
                .outlines
                .iter()
                .filter_map(|(_, plan)| Some(plan.fold.as_ref()?.bounding_box()))
                .collect();
            if boxes.len() < 2 {
                continue;
            }
            folds += 1;
            let first = boxes[0];
            let upright = boxes.iter().all(|one| (one.x0 - first.x0).abs() < 0.01);
            let level = boxes.iter().all(|one| (one.y0 - first.y0).abs() < 0.01);
            if !(upright && first.width() < 0.01 || level && first.height() < 0.01) {
                wrong.push(format!(
                    "piece {}: its folds lie apart: {boxes:?}",
                    piece.number
                ));
            }
        }
        wrong
    });
    assert!(folds > 2, "only {folds} folded pieces in nests");
}

#[test]
fn a_joint_has_one_number_on_both_sheets() {
    each_set(&TILED, |set| {
        let mut wrong = Vec::new();
        let mut told: BTreeMap<usize, Vec<String>> = BTreeMap::new();
        for (name, page) in pages(set) {
            for (words, _) in &page.words {
                if let Ok(number) = words.parse::<usize>() {
                    told.entry(number).or_default().push(name.clone());
                }
            }
        }
        let sizes: Vec<&str> = set
            .editions
            .iter()
            .map(|edition| edition.size_facts().name.as_str())
            .collect();
        told.retain(|number, _| !sizes.contains(&number.to_string().as_str()));
        let mut seen = Vec::new();
        for (number, sheets) in &told {
            // Two marks of a joint, on either sheet.
            let [one, same, other, again] = sheets.as_slice() else {
                wrong.push(format!("joint {number} is on {sheets:?}"));
                continue;
            };
            if one != same || other != again || one == other {
                wrong.push(format!("joint {number} is on {sheets:?}"));
            }
            seen.push(*number);
        }
        if !seen.iter().copied().eq(1..=seen.len()) {
            wrong.push(format!("joints are numbered {seen:?}"));
        }
        wrong
    });
}

#[test]
fn a_beam_has_broad_lines_large_words_and_none_of_paper() {
    each_set(&[SheetPaper::Projector], |set| {
        let mut wrong = Vec::new();
        let facts = &set.editions[0].draft.facts;
        let sheets = draw_sheets(&set.plan, &set.editions, "Cushion", "1").expect("a page");
        assert!(facts.pieces.len() > 1);
        let page = &sheets.pages[0];
        let sizes = page.svg.split("font-size=\"").skip(1);
        let read = |text: &str| text.split('"').next().and_then(|text| text.parse().ok());
        let mut sizes: Vec<f64> = sizes.map(|text| read(text).expect("a number")).collect();
        sizes.extend(page.notes.iter().map(|note| note.size));
        if sizes.iter().any(|size| *size < 10.0) {
            wrong.push(format!("words of {sizes:?} mm"));
        }
        let broad = page.svg.split("stroke-width:").skip(1);
        let broad = broad.map(|text| text.split([';', '}']).next().expect("a breadth"));
        // The white rim of words is no line.
        let broad: Vec<f64> = broad.filter_map(|text| text.parse().ok()).collect();
        let lines = broad
            .iter()
            .filter(|one| !(1.0..=2.0).contains(*one))
            .count();
        if lines > 1 {
            wrong.push(format!("lines of {broad:?} mm"));
        }
        let drawn = Drawn::of(&page.svg);
        if drawn.class("nb-grid").count() < 8 {
            wrong.push("no grid".to_owned());
        }
        let words = drawn.words.iter().map(|(words, _)| words);
        for words in words.chain(page.notes.iter().map(|note| &note.text)) {
            let low = words.to_lowercase();
            let of_paper = [
                "paper",
                "sheet",
                "print this",
                "page ",
                "joins",
                "trim the left",
            ];
            if of_paper.iter().any(|word| low.contains(word)) {
                wrong.push(format!("it says “{words}”"));
            }
        }
        wrong
    });
}
