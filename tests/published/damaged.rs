//! Manifests that are damaged, or meant to do harm: each is answered with what is wrong.

use notchbook::manifest::{read, write};
use serde_json::{Value, json};

use super::edited;

fn told(text: &str) -> String {
    read(text).expect_err("it is no manifest").fact
}

/// The pouch's manifest with one value put in the place of another.
fn with(path: &str, put: Value) -> String {
    let mut value: Value = serde_json::from_str(&write(&edited(&[])).expect("JSON")).expect("JSON");
    *value
        .pointer_mut(path)
        .unwrap_or_else(|| panic!("no {path}")) = put;
    value.to_string()
}

#[test]
fn a_manifest_that_breaks_off_anywhere_is_told() {
    let text = write(&edited(&[])).expect("JSON");
    for share in 0..40 {
        let mut end = text.len() * share / 40;
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        told(&text[..end]);
    }
}

#[test]
fn what_nobody_means_is_told_in_no_time() {
    let start = std::time::Instant::now();
    for (text, says) in [
        ("[".repeat(1_000_000), "recursion limit"),
        ("{\"all\":".repeat(100_000), "recursion limit"),
        ("{}".to_owned(), "no `format`"),
        ("null".to_owned(), "no `format`"),
        ("{\"format\": 99}".to_owned(), "format is 99"),
        (
            format!("{{\"format\": 1, \"booklet\": {}}}", "9".repeat(1_000_000)),
            "number",
        ),
        (" ".repeat(60_000_001), "60,000,000 are the most"),
        ("\u{feff}\0\0".to_owned(), "line 1"),
    ] {
        let told = told(&text);
        assert!(told.contains(says), "{says}: {told}");
        assert!(told.len() < 500, "{}", told.len());
    }
    // Far more than any of them takes; a reader that doubles its work with each level would never end.
    assert!(start.elapsed().as_secs() < 120);
}

#[test]
fn what_does_not_fit_together_is_told() {
    let value: Value = serde_json::from_str(&write(&edited(&[])).expect("JSON")).expect("JSON");
    let size = value["sizes"][0].clone();
    for (path, put, says) in [
        ("/values/0/each/0/value", json!("2/4"), "lowest terms"),
        ("/values/0/each/0/value", json!("1/0"), "lowest terms"),
        (
            "/values/0/each/0/value",
            json!("-170141183460469231731687303715884105728"),
            "lowest terms",
        ),
        ("/values/0/each", json!([]), "one value for each size"),
        (
            "/pieces/0/outlines",
            json!([null]),
            "one outline for each size",
        ),
        ("/sizes", json!([size.clone()]), "names 2 sizes"),
        ("/sizes/1", size, "is not the book of that size"),
        ("/all/shown", json!([7, 8]), "one column for each size"),
        ("/sheets/0/sizes", json!([9]), "a size that there is not"),
        ("/pieces/1/id", json!("side"), "stands twice"),
        ("/all/sizes", json!([]), "0 sizes"),
        ("/booklet", json!(7), "`booklet` cannot be read"),
    ] {
        let told = told(&with(path, put));
        assert!(told.contains(says), "{path}: {told}");
    }
}

#[test]
fn a_key_that_stands_twice_is_told() {
    let text = write(&edited(&[])).expect("JSON");
    let twice = text.replacen("\"booklet\":", "\"booklet\": \"other\", \"booklet\":", 1);
    assert_ne!(text, twice);
    assert!(told(&twice).contains("duplicate"), "{}", told(&twice));
}
