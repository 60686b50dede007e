//! Sheets of a pattern for several things: what they share is printed once, each thing is nested by itself, and what a
//! ruler cuts is on none.

use std::collections::BTreeSet;
use std::process::Command;

use kurbo::Shape as _;
use notchbook::pipeline::Workshop;
use notchbook::resolve::Edition;
use notchbook::sheets::{
    SheetPaper, SheetPlan, draw_sheets, plan_all_sizes, plan_sizes, plan_with_all,
};

use crate::TILED;
use crate::bench::written;
use crate::caddies::{CADDIES, FIGURE};

/// The sizes of each thing, by their places.
const VIEWS: [&[usize]; 2] = [&[0, 1], &[2]];

fn planned<R>(then: impl Fn(&Workshop, &SheetPlan) -> R) -> Vec<R> {
    let files: Vec<(&str, &str)> = CADDIES.iter().copied().chain([FIGURE]).collect();
    written(&files, |compiled| {
        let plan = |paper: &SheetPaper| plan_all_sizes(compiled.editions(), *paper);
        TILED
            .iter()
            .map(|paper| then(compiled, &plan(paper)))
            .collect()
    })
}

fn names(compiled: &Workshop, plan: &SheetPlan) -> Vec<(String, Vec<usize>)> {
    let facts = &compiled.draft().expect("a booklet").facts;
    plan.pieces
        .iter()
        .map(|piece| {
            let sizes = piece.outlines.iter().map(|(size, _)| *size).collect();
            (facts.pieces[piece.piece].id.text.clone(), sizes)
        })
        .collect()
}

#[test]
fn what_is_equal_is_printed_once_and_each_thing_is_nested_by_itself() {
    planned(|compiled, plan| {
        let found = names(compiled, plan);
        let expected: Vec<(String, Vec<usize>)> = vec![
            ("flat".into(), vec![0, 1]),
            ("boxed".into(), vec![2]),
            ("tag".into(), vec![0, 1, 2]),
        ];
        assert_eq!(found, expected);
        let numbers: BTreeSet<usize> = plan.pieces.iter().map(|piece| piece.number).collect();
        assert_eq!(numbers, BTreeSet::from([1, 2, 3]));
    });
}

#[test]
fn every_sheet_that_shows_a_piece_is_in_the_list_of_its_thing() {
    planned(|_, plan| {
        let all: Vec<String> = plan.sheets_of(&[0, 1, 2]);
        assert_eq!(all.len(), plan.tiles.len());
        for own in VIEWS {
            let list = plan.sheets_of(own);
            assert_eq!(list.first(), all.first(), "the sheet with the squares");
            for (tile, name) in plan.tiles.iter().zip(&all) {
                let room = plan.tile(tile.0, tile.1);
                let shows = plan.pieces.iter().any(|piece| {
                    let mine = |(size, lines): &(usize, notchbook::draw::Plan)| {
                        own.contains(size)
                            && lines.cutting.bounding_box().intersect(room).area() > 0.0
                    };
                    piece.outlines.iter().any(mine)
                });
                assert!(
                    !shows || list.contains(name),
                    "{name} is missing in {list:?}"
                );
            }
        }
    });
}

#[test]
fn the_lines_of_a_shared_piece_are_drawn_once() {
    planned(|compiled, plan| {
        let editions: Vec<&Edition<'_>> = compiled.editions().iter().collect();
        let set = draw_sheets(plan, &editions, "Peg Caddies", "1.0.0").expect("sheets");
        let tag: Vec<&str> = set
            .pages
            .iter()
            .filter(|page| page.svg.contains("3  Tag"))
            .map(|page| page.svg.as_str())
            .collect();
        let [page] = tag.as_slice() else {
            panic!("the tag stands on {} sheets", tag.len());
        };
        assert_eq!(page.matches("class=\"nb-cut\"").count(), 1);
        assert!(page.contains("Flat sleeve: cut 1 of canvas"));
        assert!(page.contains("Deep caddy: cut 2 of canvas"));
    });
}

#[test]
fn what_a_ruler_cuts_is_on_no_sheet_and_saves_some() {
    planned(|compiled, plan| {
        let editions: Vec<&Edition<'_>> = compiled.editions().iter().collect();
        assert!(
            names(compiled, plan)
                .iter()
                .all(|(name, _)| name != "lining")
        );
        let whole = plan_with_all(&editions, plan.paper);
        assert!(
            names(compiled, &whole)
                .iter()
                .any(|(name, _)| name == "lining")
        );
        // 40 × 28 cm do not lie on one sheet of the smaller papers, which show at most 20 × 28 cm each.
        let more = if plan.paper == SheetPaper::A0 { 0 } else { 2 };
        assert!(whole.tiles.len() >= plan.tiles.len() + more);
        let deep = plan_sizes(&editions[2..], plan.paper);
        assert!(
            names(compiled, &deep)
                .iter()
                .all(|(name, _)| name != "lining")
        );
    });
}

/// What the command says about the booklet, line by line.
fn said(arguments: &[&str]) -> Vec<String> {
    let home = tempfile::tempdir().expect("a folder of our own");
    for (name, text) in CADDIES.iter().chain([&FIGURE]) {
        let path = home.path().join("caddies").join(name);
        std::fs::create_dir_all(path.parent().expect("a folder above it")).expect("a folder");
        std::fs::write(path, text).expect("a file");
    }
    let output = Command::new(env!("CARGO_BIN_EXE_notchbook"))
        .args(arguments)
        .current_dir(home.path())
        .output()
        .expect("the command");
    let words = String::from_utf8(output.stdout).expect("words");
    assert!(output.status.success(), "{words}");
    words.lines().map(str::to_owned).collect()
}

#[test]
fn the_command_tells_the_sheets_of_each_thing_and_what_a_ruler_saves() {
    let said = said(&["sheets", "--paper", "a4", "--size", "nested"]);
    let at = |start: &str| {
        let line = said.iter().find(|line| line.starts_with(start));
        line.unwrap_or_else(|| panic!("no line begins {start:?}: {said:?}"))
            .clone()
    };
    assert!(at("  Flat sleeve: A1, ").len() > "  Flat sleeve: ".len());
    assert!(at("  Deep caddy: A1, ").len() > "  Deep caddy: ".len());
    let saves = at("  cut with a ruler, which saves ");
    assert!(saves.ends_with(" sheets: Base lining"), "{saves}");
}

#[test]
fn there_is_a_booklet_and_a_set_of_sheets_for_each_size_each_thing_and_all() {
    let files: BTreeSet<String> = said(&["build"])
        .iter()
        .filter_map(|line| Some(line.rsplit('/').next()?.split(" (").next()?.to_owned()))
        .collect();
    // A thing of one size has that size's booklet.
    let names = ["short", "tall", "deep", "sleeve"];
    let booklets = names
        .iter()
        .chain(&["all"])
        .map(|name| format!("caddies-{name}-a4.pdf"));
    let sheets = names
        .iter()
        .chain(&["nested"])
        .map(|name| format!("caddies-{name}-sheets-a4.pdf"));
    let page = "caddies.html".to_owned();
    assert_eq!(files, booklets.chain(sheets).chain([page]).collect());
}
