//! What cannot be printed is refused, with nothing written: a page longer than readers open, a piece
//! wider than the roll.

use std::process::{Command, Output};

/// A booklet with one rectangle of a width and a height, in mm.
fn booklet(width: u32, height: u32) -> String {
    format!(
        "title: Flag\nedition: 1.0.0\nsizes: {{one: One size}}\n\
         fabrics: {{outer: {{name: Cotton, widths: [300 cm]}}}}\n\
         pieces:\n  flag:\n    outline: {{rectangle: [{width} mm, {height} mm]}}\n    \
         allowance: {{all: 0 mm}}\n    raw: [all]\n    grain: vertical\n    cut: {{outer: 1}}\n\
         parts: [make.md]\n"
    )
}

const PART: &str = "# Make it\n\n## Cut it {#cut}\n\n```work\n- cut: flag\n```\n\nCut it out.\n";

/// Runs `sheets` on a paper; gives what it said and how many files it wrote.
fn sheets(width: u32, height: u32, paper: &str) -> (Output, usize) {
    let home = tempfile::tempdir().expect("a folder of our own");
    let folder = home.path().join("flag");
    std::fs::create_dir(&folder).expect("a folder");
    std::fs::write(folder.join("booklet.yaml"), booklet(width, height)).expect("a file");
    std::fs::write(folder.join("make.md"), PART).expect("a file");
    let out = home.path().join("made");
    let output = Command::new(env!("CARGO_BIN_EXE_notchbook"))
        .arg("--folder")
        .arg(home.path())
        .args(["sheets", "--paper", paper, "--out"])
        .arg(&out)
        .output()
        .expect("the program runs");
    let written =
        std::fs::read_dir(out.join("flag").join("sheets")).map_or(0, |files| files.count());
    (output, written)
}

#[track_caller]
fn refused(width: u32, height: u32, paper: &str, fact: &str) {
    let (output, written) = sheets(width, height, paper);
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(said.contains(fact), "it says {said}");
    assert!(said.contains("--paper a4"), "no act in {said}");
    assert_eq!(written, 0, "files were written all the same");
}

#[track_caller]
fn made(width: u32, height: u32, paper: &str) {
    let (output, written) = sheets(width, height, paper);
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(0), "{said}");
    assert_eq!(written, 1, "{said}");
}

/// ISO 32000-1, annex C: a page is no longer than 14,400 units, 5080 mm at 72 to the inch.
#[test]
fn a_page_longer_than_readers_open_is_refused() {
    refused(850, 5080, "roll", "longer than readers open");
    refused(1150, 5080, "projector", "longer than readers open");
    made(850, 4800, "roll");
}

/// A roll of 914 mm has room for 898 mm between margins of 8 mm.
#[test]
fn a_piece_wider_than_the_roll_is_refused() {
    refused(899, 900, "roll", "too wide for the paper `roll`");
    refused(
        1191,
        1192,
        "projector",
        "too wide for the paper `projector`",
    );
    made(897, 900, "roll");
    // Turned by a quarter it fits.
    made(1200, 800, "roll");
}
