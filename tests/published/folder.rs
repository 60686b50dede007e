//! The folder for the shop: whole, the same every time, never replaced.

use std::collections::BTreeMap;
use std::fs;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use notchbook::manifest::read;
use notchbook::source::sha256;
use notchbook::typeset::{Paper, Press, WantedPage};

use super::shop::Shop;

fn run(shop: &Shop, arguments: &[&str]) -> (i32, String) {
    let output = shop.command(arguments).output().expect("the program runs");
    let told =
        [output.stdout, output.stderr].map(|bytes| String::from_utf8_lossy(&bytes).into_owned());
    (output.status.code().unwrap_or(-1), told.concat())
}

const PUBLISH: &[&str] = &["publish", "tide-pouch", "--paper", "a4"];

fn publish(shop: &Shop) -> String {
    let (exit, told) = run(shop, PUBLISH);
    assert_eq!(exit, 0, "{told}");
    told
}

/// Every file below a folder, with what it holds.
fn held(shop: &Shop, path: &str) -> BTreeMap<String, Vec<u8>> {
    let folder = shop.path(path);
    let entries = walkdir::WalkDir::new(&folder)
        .into_iter()
        .map(|entry| entry.expect("an entry"));
    let files = entries.filter(|entry| entry.file_type().is_file());
    files
        .map(|entry| {
            let name = entry.path().strip_prefix(&folder).expect("below it");
            (
                name.to_string_lossy().into_owned(),
                fs::read(entry.path()).expect("a file"),
            )
        })
        .collect()
}

#[test]
fn the_folder_is_whole() {
    let shop = Shop::open();
    publish(&shop);
    let files = held(&shop, "published/tide-pouch/1.0.0");
    let names: Vec<&str> = files.keys().map(String::as_str).collect();
    let mut wanted = vec![
        "booklets/tide-pouch-all-a4.pdf",
        "booklets/tide-pouch-large-a4.pdf",
        "booklets/tide-pouch-small-a4.pdf",
        "checksums.txt",
        "licence.md",
        "licence.txt",
        "manifest.json",
        "manifest.schema.json",
        "page/tide-pouch.html",
        "sheets/tide-pouch-large-sheets-a4.pdf",
        "sheets/tide-pouch-nested-sheets-a4.pdf",
        "sheets/tide-pouch-small-sheets-a4.pdf",
        "shop-text.md",
        "shop-text.txt",
    ];
    let pictures: Vec<&str> = names
        .iter()
        .copied()
        .filter(|name| name.starts_with("preview/"))
        .collect();
    assert_eq!(pictures.len(), 3, "{names:?}");
    wanted.extend(&pictures);
    wanted.sort_unstable();
    assert_eq!(names, wanted);
    for name in &pictures {
        let picture = image::load_from_memory(&files[*name])
            .expect("a picture")
            .to_rgb8();
        // A4 at 120 dots to the inch; something is on it, and not all of it is.
        assert_eq!((picture.width(), picture.height()), (992, 1403), "{name}");
        let white = picture
            .pixels()
            .filter(|dot| dot.0 == [255, 255, 255])
            .count();
        let all = (picture.width() * picture.height()) as usize;
        assert!(
            white < all * 995 / 1000 && white > all / 10,
            "{name}: {white} of {all} dots are white"
        );
    }
    // Another program agrees with the checksums.
    let sums = String::from_utf8(files["checksums.txt"].clone()).expect("text");
    assert_eq!(sums.lines().count(), files.len() - 1);
    for line in sums.lines() {
        let (sum, name) = line.split_once("  ").expect("two columns");
        assert_eq!(sum, sha256(&files[name]), "{name}");
    }
    let checked = Command::new("sha256sum")
        .args(["--check", "--quiet", "checksums.txt"])
        .current_dir(shop.path("published/tide-pouch/1.0.0"))
        .status();
    assert!(checked.is_err() || checked.is_ok_and(|status| status.success()));
    let manifest = read(&String::from_utf8_lossy(&files["manifest.json"])).expect("a manifest");
    assert_eq!(manifest.all.title, "Tide Pouch");
    let text = String::from_utf8_lossy(&files["shop-text.txt"]).into_owned();
    for says in [
        "Tide Pouch",
        "Small, Large, all sizes in one",
        "Width: Small 15 cm (5 7/8 in); Large 21 cm (8 1/4 in)",
        "Sewing machine",
        "beginner",
        "English",
    ] {
        assert!(text.contains(says), "{says}: {text}");
    }
    assert!(String::from_utf8_lossy(&files["licence.txt"]).contains("For home sewing."));
}

/// What serves where something cannot be had stands in the text for the shop, which has its limit all the same; and the
/// chapters of a video lie in the folder.
#[test]
fn the_shop_text_tells_where_to_find_things_and_chapters_lie_beside_it() {
    let shop = Shop::open();
    shop.change(
        "{kind: thread, name: Sewing thread}",
        "{kind: thread, name: Sewing thread, search: [polyester thread, \"https://thread.example/all\"], instead: \"Buttonhole thread, with seams {seam} wide.\"}",
    );
    shop.change(
        "outer: {name: Cotton, widths: [110 cm]}",
        "outer: {name: Cotton, widths: [110 cm], search: quilting cotton, instead: [Linen, Canvas]}",
    );
    shop.change(
        "parts: [make.md]",
        "parts: [make.md]\nvideo: {url: \"https://video.example/pouch\", length: 12:00}",
    );
    let steps = shop.path("tide-pouch/make.md");
    let text = fs::read_to_string(&steps).expect("the steps");
    let heading = text.lines().next().expect("a heading").to_owned();
    let timed = text.replacen(&heading, "# Make the pouch {#make watch=0:00}", 1);
    fs::write(&steps, timed).expect("the steps");
    publish(&shop);
    let files = held(&shop, "published/tide-pouch/1.0.0");
    let text = |name: &str| String::from_utf8_lossy(&files[name]).into_owned();
    let plain = text("shop-text.txt");
    for says in [
        " long\n  - Look for: polyester thread; https://thread.example/all\n",
        "  - Instead: Buttonhole thread, with seams 1.5 cm (5/8 in) wide.\n",
        "  - Look for: quilting cotton\n  - Instead: Linen\n  - Instead: Canvas\n",
    ] {
        assert!(plain.contains(says), "{says}: {plain}");
    }
    let marked = text("shop-text.md");
    assert!(
        marked.contains("\n  - Look for: quilting cotton\n"),
        "{marked}"
    );
    assert_eq!(
        text("video/tide-pouch-chapters.txt"),
        "0:00 Make the pouch\n"
    );
    // What is found counts among the letters.
    let letters = plain.trim_end().chars().count();
    shop.change(
        "parts: [make.md]",
        &format!("shop: {{letters: {}}}\nparts: [make.md]", letters - 20),
    );
    let (exit, told) = run(&shop, &["publish", "tide-pouch", "--out", "again"]);
    assert_eq!(exit, 1, "{told}");
    assert!(told.contains("error[shop-text-too-long]"), "{told}");
}

#[test]
fn a_page_that_cannot_be_shown_is_a_fault() {
    super::bench::demo("lantern-cushion", |workshop| {
        let book = workshop.book(&workshop.editions()[0], Paper::A4.of_sheets());
        let sheaf = workshop.sheaf(&book, Paper::A4);
        let press = Press::new(&workshop.house);
        let shown = |page| press.pictures(&sheaf, &[WantedPage::Number(1), page], 20.0);
        let many = shown(WantedPage::Number(900)).expect_err("no such page");
        assert_eq!(many[0].message, "there is no page 900 to show");
        let lost = shown(WantedPage::Step("no-such-step".into())).expect_err("no such step");
        assert_eq!(lost[0].message, "no page shows the step `no-such-step`");
        assert_eq!(shown(WantedPage::Number(2)).expect("pages").len(), 2);
    });
}

#[test]
fn an_edition_is_published_once_and_never_replaced() {
    let shop = Shop::open();
    publish(&shop);
    let first = held(&shop, "published");
    // The very same again is nothing to do.
    assert!(publish(&shop).contains("is this edition already, byte for byte"));
    assert!(first == held(&shop, "published"));
    // In another folder it comes out the same.
    let (exit, _) = run(&shop, &[PUBLISH, &["--out", "again"]].concat());
    assert_eq!(exit, 0);
    assert!(first == held(&shop, "again"), "other bytes");
    // What has changed needs a higher number, were it a word alone.
    for (find, put) in [
        (
            "summary: A small flat pouch",
            "summary: A little flat pouch",
        ),
        ("width: [15 cm (5 7/8 in)", "width: [16 cm (6 1/4 in)"),
    ] {
        shop.change(find, put);
        let (exit, told) = run(&shop, PUBLISH);
        assert_eq!(exit, 1, "{told}");
        assert!(told.contains("error[edition-not-raised]: edition 1.0.0 was published as `published/tide-pouch/1.0.0`"), "{told}");
        assert!(told.contains("nothing was published"), "{told}");
        assert!(first == held(&shop, "published"));
    }
    shop.change("edition: 1.0.0\n", "edition: 0.9.0\n");
    let (exit, told) = run(&shop, PUBLISH);
    assert!(
        exit == 1 && told.contains("edition 0.9.0 is older than edition 1.0.0"),
        "{told}"
    );
    shop.change("edition: 0.9.0\n", "edition: 1.1.0\n");
    shop.change(
        "editions:\n",
        "editions:\n  - {edition: 1.1.0, date: 2026-01-15, changes: The small pouch is wider.}\n",
    );
    publish(&shop);
    assert_eq!(shop.names("published/tide-pouch"), ["1.0.0", "1.1.0"]);
    let old = held(&shop, "published/tide-pouch/1.0.0");
    assert!(
        old.iter()
            .all(|(name, bytes)| first[&format!("tide-pouch/1.0.0/{name}")] == *bytes)
    );
    let (exit, told) = run(
        &shop,
        &[
            "errata",
            "published/tide-pouch/1.0.0",
            "published/tide-pouch/1.1.0",
        ],
    );
    assert_eq!(exit, 0, "{told}");
    assert!(
        told.contains("Width: 15 cm (5 7/8 in) before, now 16 cm (6 1/4 in)."),
        "{told}"
    );
    assert!(
        shop.text(
            "published/tide-pouch/changes-1.0.0-to-1.1.0/tide-pouch-changes-1.0.0-to-1.1.0.txt"
        )
        .contains("Small")
    );
}

#[test]
fn what_a_shop_does_not_take_is_told() {
    let shop = Shop::open();
    shop.change(
        "parts: [make.md]",
        "parts: [make.md]\nshop: {preview: [cover, sew, 99], letters: 100, largest: 20 kB}",
    );
    let (exit, told) = run(&shop, PUBLISH);
    assert_eq!(exit, 1, "{told}");
    assert!(told.contains("has no page 99"), "{told}");
    shop.change("sew, 99]", "sew]");
    let (exit, told) = run(&shop, PUBLISH);
    assert_eq!(exit, 1, "{told}");
    assert!(
        told.contains("error[file-too-large]") && told.contains("error[shop-text-too-long]"),
        "{told}"
    );
    assert!(!shop.path("published/tide-pouch").join("1.0.0").exists());
    shop.change(
        "letters: 100, largest: 20 kB",
        "letters: 3000, largest: 5 MB",
    );
    publish(&shop);
    let pictures = shop.names("published/tide-pouch/1.0.0/preview");
    assert!(
        pictures.len() == 2 && pictures[0] == "1-page-1.png",
        "{pictures:?}"
    );
    // Errors keep everything from being published.
    shop.change("edition: 1.0.0\n", "edition: 1.1.0\n");
    shop.change("allowance: {all: seam", "allowance: {all: seem");
    let (exit, told) = run(&shop, PUBLISH);
    assert!(
        exit == 1 && told.contains("nothing was published"),
        "{told}"
    );
    assert_eq!(shop.names("published/tide-pouch"), ["1.0.0"]);
}

#[test]
fn manifests_of_others_and_damaged_ones_are_findings() {
    let shop = Shop::open();
    publish(&shop);
    let manifest = shop.text("published/tide-pouch/1.0.0/manifest.json");
    shop.write("cut-off.json", &manifest[..manifest.len() / 2]);
    shop.write(
        "other.json",
        &manifest.replacen(
            "\"booklet\": \"tide-pouch\"",
            "\"booklet\": \"ebb-pouch\"",
            1,
        ),
    );
    for (new, says) in [
        ("cut-off.json", "`cut-off.json` cannot be read: line "),
        (
            "other.json",
            "is of the booklet `ebb-pouch`, not of `tide-pouch`",
        ),
    ] {
        let (exit, told) = run(&shop, &["errata", "published/tide-pouch/1.0.0", new]);
        assert_eq!(exit, 1, "{told}");
        assert!(
            told.contains("error[manifest-unreadable]") && told.contains(says),
            "{told}"
        );
    }
    let (exit, told) = run(&shop, &["errata", "nowhere", "tide-pouch"]);
    assert!(exit == 1 && told.contains("is not there"), "{told}");
    // A booklet as it stands now is held against what was published.
    shop.change("height: [12.5 cm (4 7/8 in)", "height: [13 cm (5 1/8 in)");
    let (exit, told) = run(
        &shop,
        &["errata", "published/tide-pouch/1.0.0", "tide-pouch"],
    );
    assert_eq!(exit, 1, "{told}");
    assert!(
        told.contains("edition-not-raised") && told.contains("next edition: 1.1.0"),
        "{told}"
    );
    // An earlier edition that cannot be read keeps a later one from being published.
    shop.write("published/tide-pouch/1.0.0/manifest.json", "{");
    let (exit, told) = run(&shop, PUBLISH);
    assert!(exit == 1 && told.contains("manifest-unreadable"), "{told}");
}

/// `NOTCHBOOK_KILLS=100` kills so many; by default a few.
#[test]
fn publishing_killed_at_any_moment_leaves_the_folder_whole_or_none() {
    let count: usize = std::env::var("NOTCHBOOK_KILLS")
        .ok()
        .and_then(|count| count.parse().ok())
        .unwrap_or(6);
    let shop = Shop::open();
    publish(&shop);
    let old = held(&shop, "published/tide-pouch/1.0.0");
    shop.change("title: Tide Pouch", "title: Ebb Pouch");
    shop.change("edition: 1.0.0\n", "edition: 1.1.0\n");
    let start = Instant::now();
    publish(&shop);
    let seconds = start.elapsed().as_secs_f64();
    let new = held(&shop, "published/tide-pouch/1.1.0");
    let mut random = fastrand::Rng::with_seed(14);
    let mut whole = 0;
    for kill in 0..count {
        fs::remove_dir_all(shop.path("published/tide-pouch/1.1.0")).expect("the new folder");
        // Half of them near the end, where files are put in their places.
        let share = if kill % 2 == 0 {
            random.f64()
        } else {
            1.0 - random.f64() * 0.1
        };
        let mut child = shop
            .command(PUBLISH)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("the program starts");
        std::thread::sleep(Duration::from_secs_f64(seconds * share));
        child.kill().expect("a child");
        child.wait().expect("a child");
        assert!(
            held(&shop, "published/tide-pouch/1.0.0") == old,
            "the old edition was touched"
        );
        let stands = shop.path("published/tide-pouch/1.1.0").exists();
        whole += usize::from(stands);
        assert!(
            !stands || held(&shop, "published/tide-pouch/1.1.0") == new,
            "half a folder at {share}"
        );
        // The next run makes it whole, and leaves nothing of what was broken off.
        publish(&shop);
        assert!(
            held(&shop, "published/tide-pouch/1.1.0") == new,
            "not mended by the next run"
        );
        assert_eq!(
            shop.names("published/tide-pouch"),
            ["1.0.0", "1.1.0"],
            "leftovers"
        );
    }
    println!(
        "{count} kills: the new folder stood whole after {whole}, was not there after {}",
        count - whole
    );
}
