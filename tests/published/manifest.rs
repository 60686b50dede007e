//! A manifest holds an edition whole: it is valid by its schema, is read back into the same, and comes out the same.

use notchbook::manifest::{SCHEMA, read, write};
use serde_json::{Value, json};

use super::schema::faults;
use super::{bench, edited, issued};

fn schema() -> Value {
    serde_json::from_str(SCHEMA).expect("the schema is JSON")
}

/// The same value with the keys of every record in another order, written without spaces.
fn shuffled(value: &Value) -> String {
    match value {
        Value::Object(record) => {
            let mut keys: Vec<&String> = record.keys().collect();
            keys.sort_by_key(|key| (key.len() % 3, std::cmp::Reverse(key.as_str())));
            let entries = keys
                .iter()
                .map(|key| format!("{}:{}", json!(key), shuffled(&record[key.as_str()])));
            format!("{{{}}}", entries.collect::<Vec<_>>().join(","))
        }
        Value::Array(items) => {
            format!(
                "[{}]",
                items.iter().map(shuffled).collect::<Vec<_>>().join(",")
            )
        }
        other => other.to_string(),
    }
}

#[test]
fn every_demo_is_held_whole() {
    let schema = schema();
    bench::demos(|name, workshop| {
        let manifest = issued(workshop);
        let text = write(&manifest).expect("JSON");
        assert_eq!(
            text,
            write(&issued(workshop)).expect("JSON"),
            "{name}: other bytes"
        );
        let value: Value = serde_json::from_str(&text).expect("JSON");
        let faults = faults(&schema, &value);
        assert!(faults.is_empty(), "{name}: {faults:#?}");
        let back = read(&text).unwrap_or_else(|fault| panic!("{name}: {fault:?}"));
        assert!(back == manifest, "{name}: read back into another edition");
        let turned = read(&shuffled(&value)).expect("the order of keys says nothing");
        assert!(
            turned == manifest,
            "{name}: the order of keys says something"
        );
        // The books of the sizes are those that the booklets are set from.
        assert_eq!(back.sizes.len(), workshop.sizes.len());
        let steps: usize = back.all.parts.iter().map(|part| part.steps.len()).sum();
        assert!(steps > 3 && !back.pieces.is_empty(), "{name}");
        println!("{name}: {} bytes", text.len());
    });
}

#[test]
fn fractions_are_exact_and_outlines_true() {
    let manifest = edited(&[("height: [12 cm (4 3/4 in),", "height: [37 cm / 3,")]);
    let height = manifest
        .values
        .iter()
        .find(|value| value.name == "height")
        .expect("a value");
    let exact = height.each[0].as_ref().expect("of the small size");
    assert_eq!(
        (exact.value.as_str(), exact.dimension.as_str()),
        ("370/3", "length")
    );
    let pocket = manifest.pieces[1].outlines[1].as_ref().expect("the pocket");
    let side = pocket
        .edges
        .iter()
        .find(|edge| edge.id == "side")
        .expect("its curve");
    // The author's own control points, in mm, in the direction in which they were drawn.
    assert_eq!(side.cut, "M100 0C100 70 60 120 0 120");
    assert_eq!(side.allowance.value, "0");
    let body = manifest.pieces[0].outlines[0].as_ref().expect("the side");
    let allowances: Vec<&str> = body
        .edges
        .iter()
        .map(|edge| edge.allowance.value.as_str())
        .collect();
    assert_eq!(allowances, ["10", "15", "10", "15"]);
}

/// Calls `see` with each value that lies in another, and a way to put something else in its place.
fn each_record(
    value: &Value,
    path: &str,
    see: &mut dyn FnMut(&str, &serde_json::Map<String, Value>),
) {
    match value {
        Value::Object(record) => {
            see(path, record);
            for (key, inner) in record {
                let key = key.replace('~', "~0").replace('/', "~1");
                each_record(inner, &format!("{path}/{key}"), see);
            }
        }
        Value::Array(items) => {
            for (at, inner) in items.iter().enumerate() {
                each_record(inner, &format!("{path}/{at}"), see);
            }
        }
        _ => {}
    }
}

#[test]
fn the_schema_and_the_reader_refuse_what_is_missing_and_what_is_unknown() {
    let schema = schema();
    let value: Value = serde_json::from_str(&write(&edited(&[])).expect("JSON")).expect("JSON");
    // Records whose keys are names, not keys of the format.
    let named = [
        "/words",
        "/pictures",
        "/all/drawings",
        "/sizes/0/drawings",
        "/sizes/1/drawings",
    ];
    let mut places: Vec<(String, Vec<String>)> = Vec::new();
    each_record(&value, "", &mut |path, record| {
        if !named.contains(&path) {
            places.push((path.to_owned(), record.keys().cloned().collect()));
        }
    });
    // One place of each sort is enough.
    let mut known = std::collections::BTreeSet::new();
    places.retain(|(path, keys)| {
        let last = path.rsplit('/').find(|part| part.parse::<usize>().is_err());
        known.insert((last.map(str::to_owned), keys.clone()))
    });
    assert!(places.len() > 40, "{}", places.len());
    for (path, keys) in &places {
        let mut more = value.clone();
        let record = more.pointer_mut(path).and_then(Value::as_object_mut);
        record.expect("a record").insert("stray".into(), json!(1));
        assert!(
            !faults(&schema, &more).is_empty(),
            "{path}: a stray key is valid"
        );
        assert!(
            read(&more.to_string()).is_err(),
            "{path}: a stray key is read"
        );
        for key in keys.iter().filter(|key| *key != "$schema") {
            let mut less = value.clone();
            let record = less.pointer_mut(path).and_then(Value::as_object_mut);
            record.expect("a record").remove(key);
            assert!(
                !faults(&schema, &less).is_empty(),
                "{path}: valid without `{key}`"
            );
            assert!(
                read(&less.to_string()).is_err(),
                "{path}: read without `{key}`"
            );
        }
    }
}
