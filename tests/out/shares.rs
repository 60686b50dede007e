//! Shares of a catalogue made apart come to what one run makes, byte for byte.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use super::shop::Shop;

const NAMES: &[&str] = &[
    "ebb-pouch",
    "flood-pouch",
    "slack-pouch",
    "spring-pouch",
    "tide-pouch",
];

/// Every PDF and page below a folder, by its path.
fn made(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    // A share without booklets makes nothing, not even a folder.
    if !folder.exists() {
        return BTreeMap::new();
    }
    let files = walkdir::WalkDir::new(folder)
        .into_iter()
        .map(|entry| entry.expect("an entry"));
    let files = files.filter(|entry| {
        let ending = entry.path().extension();
        ending.is_some_and(|ending| ending == "pdf" || ending == "html")
    });
    files
        .map(|entry| {
            let path = entry.path().strip_prefix(folder).expect("below it");
            (
                path.to_string_lossy().into_owned(),
                fs::read(entry.path()).expect("a file"),
            )
        })
        .collect()
}

#[test]
fn shares_together_make_what_one_run_makes() {
    let shop = Shop::open();
    for name in NAMES.iter().filter(|name| **name != "tide-pouch") {
        shop.told(&["new", name], 0);
    }
    shop.told(&["build"], 0);
    let whole = made(&shop.path("out"));
    assert!(
        NAMES
            .iter()
            .all(|name| whole.contains_key(&format!("{name}/{name}-all-a4.pdf")))
    );
    for (shares, counts) in [
        (2, vec![3, 2]),
        (3, vec![2, 2, 1]),
        (7, vec![1, 1, 1, 1, 1, 0, 0]),
    ] {
        let mut together = BTreeMap::new();
        for (share, count) in (1..).zip(counts) {
            let out = format!("of-{shares}/{share}");
            let told = shop.told(
                &[
                    "build",
                    "--share",
                    &format!("{share}/{shares}"),
                    "--out",
                    &out,
                ],
                0,
            );
            let own = made(&shop.path(&out));
            assert_eq!(
                own.keys()
                    .filter(|path| path.ends_with("-all-a4.pdf"))
                    .count(),
                count,
                "{out}: {told}"
            );
            assert_eq!(
                told.contains("more shares than booklets"),
                count == 0,
                "{out}: {told}"
            );
            for (path, bytes) in own {
                assert!(together.insert(path, bytes).is_none(), "{out}: made twice");
            }
        }
        assert!(together == whole, "{shares} shares");
    }
    // All into one folder, one after the other: what another share made stays.
    for share in 1..=3 {
        shop.told(
            &["build", "--share", &format!("{share}/3"), "--out", "one"],
            0,
        );
    }
    assert!(made(&shop.path("one")) == whole);
}
