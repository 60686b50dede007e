//! What is kept between runs saves time and changes nothing: not what is made, and not what is told.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::time::SystemTime;

use super::shop::Shop;

/// When each file of the edition was put in its place.
fn times(shop: &Shop) -> BTreeMap<String, SystemTime> {
    let time = |path: &String| {
        fs::metadata(shop.path("out/tide-pouch").join(path))
            .and_then(|about| about.modified())
            .expect("a time")
    };
    shop.edition()
        .keys()
        .map(|path| (path.clone(), time(path)))
        .collect()
}

/// The same booklet, built where nothing is kept.
fn anew(shop: &Shop) -> (String, BTreeMap<String, Vec<u8>>) {
    let other = Shop::open();
    for file in fs::read_dir(shop.path("tide-pouch")).expect("a folder") {
        let file = file.expect("an entry");
        if file.file_type().expect("a sort").is_file() {
            let name = file.file_name().into_string().expect("a name");
            other.write(
                &format!("tide-pouch/{name}"),
                &fs::read_to_string(file.path()).expect("a text"),
            );
        }
    }
    (other.build(&[]), other.edition())
}

#[test]
fn a_build_of_what_has_not_changed_tells_the_same_and_touches_nothing() {
    let shop = Shop::open();
    let first = shop.build(&[]);
    assert!(first.contains("tide-pouch-all-a4.pdf"), "{first}");
    let before = times(&shop);
    assert_eq!(shop.build(&[]), first);
    assert_eq!(times(&shop), before);
    // Other papers, other sizes and other places are other runs.
    assert!(shop.build(&["--paper", "letter"]).contains("letter.pdf"));
    assert!(shop.build(&["--size", "small"]).contains("small-a4.pdf"));
    assert!(shop.build(&["--out", "elsewhere"]).contains("elsewhere"));
    assert!(
        shop.path("elsewhere/tide-pouch/tide-pouch-small-a4.pdf")
            .exists()
    );
}

#[test]
fn warnings_are_told_each_time() {
    let shop = Shop::open();
    let before = shop.text("tide-pouch/booklet.yaml");
    shop.write(
        "tide-pouch/booklet.yaml",
        &(before + "waive:\n  - check: seam-lengths-differ\n    because: a trial\n"),
    );
    let first = shop.build(&[]);
    assert!(first.contains("warning"), "{first}");
    assert_eq!(shop.build(&[]), first);
}

#[test]
fn whatever_changes_is_made_anew() {
    let shop = Shop::open();
    shop.build(&[]);
    // A word, a file more, a file less, and what a link leads to.
    shop.change("title: Tide Pouch", "title: Ebb Pouch");
    shop.build(&[]);
    let (_, whole) = anew(&shop);
    assert!(shop.edition() == whole, "a changed title");
    shop.write(
        "tide-pouch/templates/labels-en.json",
        "{ \"what-you-need\": \"Needed\" }\n",
    );
    let told = shop
        .command(&["build", "tide-pouch"])
        .output()
        .expect("the program runs");
    assert!(
        !told.status.success() || shop.edition() != whole,
        "labels of its own"
    );
    fs::remove_dir_all(shop.path("tide-pouch/templates")).expect("a folder");
    shop.build(&[]);
    assert!(shop.edition() == whole, "without its own labels");
}

#[test]
fn what_is_gone_or_damaged_is_made_anew() {
    let shop = Shop::open();
    let told = shop.build(&[]);
    let whole = shop.edition();
    fs::remove_file(shop.path("out/tide-pouch/tide-pouch-small-a4.pdf")).expect("a file");
    assert_eq!(shop.build(&[]), told);
    assert!(shop.edition() == whole, "a file that was gone");
    // Each entry with a byte turned, cut short, empty.
    type Harm = fn(&mut Vec<u8>);
    let harms: [Harm; 3] = [
        |bytes| *bytes.last_mut().expect("a byte") ^= 1,
        |bytes| bytes.truncate(70),
        |bytes| bytes.clear(),
    ];
    for harm in harms {
        for entry in shop.entries() {
            let mut bytes = fs::read(&entry).expect("an entry");
            harm(&mut bytes);
            fs::write(&entry, bytes).expect("an entry");
        }
        fs::remove_dir_all(shop.path("out/tide-pouch")).expect("an edition");
        assert_eq!(shop.build(&[]), told);
        assert!(
            shop.edition() == whole,
            "a damaged entry was taken for a good one"
        );
    }
    shop.forget();
    assert_eq!(shop.build(&[]), told);
    assert!(shop.edition() == whole, "without a cache");
}

#[test]
fn two_programs_at_once_do_no_harm() {
    let shop = Shop::open();
    let start = |out: &str| {
        let mut command = shop.command(&["build", "tide-pouch", "--out", out, "--cache", "kept"]);
        command
            .stdout(std::process::Stdio::null())
            .spawn()
            .expect("the program starts")
    };
    for child in &mut [start("one"), start("two"), start("three")] {
        assert!(child.wait().expect("a child").success());
    }
    let read = |out: &str| {
        fs::read(shop.path(&format!("{out}/tide-pouch/tide-pouch-all-a4.pdf"))).expect("a file")
    };
    assert!(read("one") == read("two") && read("one") == read("three"));
}

#[test]
fn a_cache_that_cannot_be_written_costs_time_alone() {
    let shop = Shop::open();
    shop.write("kept", "a file");
    let told = shop.build(&["--cache", "kept"]);
    assert!(told.contains("the cache is of no use"), "{told}");
    assert!(Path::new(&shop.path("out/tide-pouch/tide-pouch-small-a4.pdf")).exists());
    assert_eq!(shop.text("kept"), "a file");
}
