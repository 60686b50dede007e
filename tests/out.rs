//! Whatever happens while an edition is put in its place, the old one or the new one is there, whole; and nothing that
//! this program did not make is lost.

#[path = "out/journal.rs"]
mod journal;
#[path = "out/kept.rs"]
mod kept;
#[path = "out/kills.rs"]
mod kills;
#[path = "out/shares.rs"]
mod shares;
#[path = "out/shop.rs"]
mod shop;
#[path = "out/traced.rs"]
mod traced;

use std::fs;

use shop::Shop;

#[test]
fn files_of_others_stay_and_are_never_replaced() {
    let shop = Shop::open();
    assert!(shop.build(&[]).contains("tide-pouch-small-a4.pdf"));
    // What is of somebody else stays through a build.
    shop.write("out/tide-pouch/notes.txt", "mine");
    shop.write("out/tide-pouch/more/notes.txt", "mine, too");
    shop.build(&[]);
    assert_eq!(shop.text("out/tide-pouch/notes.txt"), "mine");
    assert_eq!(shop.text("out/tide-pouch/more/notes.txt"), "mine, too");
    // What was made by the program and changed since is somebody's work.
    shop.write("out/tide-pouch/tide-pouch-small-a4.pdf", "with my remarks");
    shop.change("title: Tide Pouch", "title: Ebb Pouch");
    let told = shop.refused(&["build", "tide-pouch"]);
    assert!(
        told.contains("was changed after this program wrote it"),
        "{told}"
    );
    assert_eq!(
        shop.text("out/tide-pouch/tide-pouch-small-a4.pdf"),
        "with my remarks"
    );
    // So is a file in a folder that the program never wrote.
    let shop = Shop::open();
    shop.write("out/tide-pouch/tide-pouch-small-a4.pdf", "another's");
    let told = shop.refused(&["build", "tide-pouch"]);
    assert!(told.contains("was not made by this program"), "{told}");
    assert_eq!(shop.names("out/tide-pouch"), ["tide-pouch-small-a4.pdf"]);
}

#[test]
fn what_stands_in_the_way_is_told_before_anything_is_written() {
    for (place, says) in [
        (
            "out/tide-pouch/tide-pouch-large-a4.pdf/a.txt",
            "is a folder",
        ),
        ("out/tide-pouch/sheets", "is a file"),
        ("out/tide-pouch", "is no folder of this program's making"),
        ("out", "cannot be written"),
    ] {
        let shop = Shop::open();
        shop.write(place, "in the way");
        let told = shop.refused(&["build", "tide-pouch"]);
        assert!(told.contains(says), "{place}: {told}");
        assert_eq!(shop.text(place), "in the way");
    }
}

#[cfg(unix)]
#[test]
fn no_link_leads_out_of_the_folder() {
    let elsewhere = tempfile::tempdir().expect("a folder");
    fs::write(elsewhere.path().join("letter.pdf"), "private").expect("a file");
    // The edition's folder is a link; then a file in it is one; then a folder in it.
    for place in [
        "out/tide-pouch",
        "out/tide-pouch/tide-pouch-small-a4.pdf",
        "out/tide-pouch/sheets",
    ] {
        let shop = Shop::open();
        let from = shop.path(place);
        fs::create_dir_all(from.parent().expect("a folder")).expect("a folder");
        std::os::unix::fs::symlink(elsewhere.path(), &from).expect("a link");
        let told = shop.refused(&["build", "tide-pouch"]);
        assert!(
            told.contains("link") || told.contains("lead elsewhere"),
            "{place}: {told}"
        );
        let left: Vec<_> = fs::read_dir(elsewhere.path())
            .expect("the folder")
            .collect();
        assert_eq!(left.len(), 1, "{place}: something was written elsewhere");
    }
}

#[test]
fn a_size_that_is_gone_takes_its_files_along() {
    let shop = Shop::open();
    shop.build(&[]);
    assert!(
        shop.names("out/tide-pouch")
            .contains(&"tide-pouch-large-a4.pdf".to_owned())
    );
    shop.build(&["--paper", "letter", "--size", "small", "--no-sheets"]);
    let names = shop.names("out/tide-pouch");
    // What is of another paper or size that is still there stays.
    for name in [
        "tide-pouch-large-a4.pdf",
        "tide-pouch-small-a4.pdf",
        "tide-pouch-small-letter.pdf",
    ] {
        assert!(names.contains(&name.to_owned()), "{names:?}");
    }
    shop.change("  large: Large\n", "  tall: Tall\n");
    let told = shop.build(&[]);
    assert!(
        told.contains("tide-pouch-large-a4.pdf was of before, and is taken out"),
        "{told}"
    );
    let names = shop.names("out/tide-pouch");
    assert!(
        !names.iter().any(|name| name.contains("large")),
        "{names:?}"
    );
    assert!(
        names.contains(&"tide-pouch-small-letter.pdf".to_owned()),
        "{names:?}"
    );
    assert!(
        !shop
            .names("out")
            .iter()
            .any(|name| name.starts_with(".notchbook") && name != ".notchbook-cache"),
        "leftovers"
    );
}

#[test]
fn diagrams_of_a_size_that_is_gone_are_told() {
    let shop = Shop::open();
    shop.figures();
    assert_eq!(shop.names("out/tide-pouch/figures"), ["large", "small"]);
    shop.change("  large: Large\n", "  tall: Tall\n");
    let told = shop.figures();
    assert!(
        told.contains("figures/large/cut.svg was of before, and is taken out"),
        "{told}"
    );
    assert_eq!(shop.names("out/tide-pouch/figures"), ["small", "tall"]);
}

#[test]
fn facts_that_cannot_be_read_take_nothing_away() {
    let shop = Shop::open();
    shop.build(&[]);
    let before = shop.names("out/tide-pouch");
    shop.change("sizes:", "sizes: [");
    let output = shop.command(&["figures", "tide-pouch"]).output();
    assert_eq!(output.expect("the program runs").status.code(), Some(1));
    assert_eq!(shop.names("out/tide-pouch"), before);
}

#[cfg(target_os = "linux")]
#[test]
fn what_cannot_be_told_ends_with_2() {
    let shop = Shop::open();
    for arguments in [
        &["values", "tide-pouch", "--format", "csv"][..],
        &["check", "tide-pouch", "--format", "json"],
        &["completions", "bash"],
    ] {
        if arguments[0] == "check" {
            shop.change("skill: beginner", "skil: beginner");
        }
        let full = fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .expect("a full disk");
        let output = shop
            .command(arguments)
            .stdout(full)
            .output()
            .expect("the program runs");
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {output:?}");
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(told.contains("standard output cannot be written"), "{told}");
    }
}

#[cfg(unix)]
#[test]
fn few_open_files_are_enough() {
    let shop = Shop::open();
    let mut command = std::process::Command::new("sh");
    command.args([
        "-c",
        "ulimit -n 16; exec \"$0\" \"$@\"",
        env!("CARGO_BIN_EXE_notchbook"),
        "build",
        "tide-pouch",
    ]);
    let output = command
        .current_dir(shop.path(""))
        .output()
        .expect("the program runs");
    assert!(output.status.success(), "{output:?}");
}

#[cfg(unix)]
#[test]
fn a_reader_that_goes_away_is_nobodys_fault() {
    let shop = Shop::open();
    let line = format!(
        "'{}' completions bash | head -1",
        env!("CARGO_BIN_EXE_notchbook")
    );
    let output = std::process::Command::new("bash")
        .args(["-o", "pipefail", "-c", &line])
        .current_dir(shop.path(""))
        .output();
    let output = output.expect("a shell");
    let told = String::from_utf8_lossy(&output.stderr);
    assert!(!told.contains("panicked"), "{told}");
}
