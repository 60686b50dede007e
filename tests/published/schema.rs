//! The part of JSON Schema (draft 2020-12) that the manifest's schema uses, so that it can be held against manifests
//! without a library; `.ci/run` has it done once more by a validator that is not ours.

use serde_json::Value;

/// What a schema may say here; a word that this file does not know would be passed over, and is a fault instead.
const KNOWN: &[&str] = &[
    "$schema",
    "$ref",
    "$defs",
    "title",
    "description",
    "type",
    "properties",
    "required",
    "additionalProperties",
    "items",
    "prefixItems",
    "minItems",
    "minimum",
    "maximum",
    "minLength",
    "maxLength",
    "oneOf",
    "const",
    "enum",
    "pattern",
];

/// The places at which a value is not what the schema says; none where it is valid.
pub fn faults(root: &Value, value: &Value) -> Vec<String> {
    let mut faults = Vec::new();
    check(root, root, value, "", &mut faults);
    faults
}

fn check(root: &Value, schema: &Value, value: &Value, path: &str, faults: &mut Vec<String>) {
    let Value::Object(rules) = schema else {
        if *schema == Value::Bool(false) {
            faults.push(format!("{path}: nothing may stand here"));
        }
        return;
    };
    for (word, rule) in rules {
        assert!(KNOWN.contains(&word.as_str()), "the schema says `{word}`");
        let list = || rule.as_array().expect("a list").iter();
        let number = || rule.as_f64().expect("a number");
        let fits = match word.as_str() {
            "$ref" => {
                let place = rule.as_str().expect("a place").trim_start_matches('#');
                check(
                    root,
                    root.pointer(place).expect("a definition"),
                    value,
                    path,
                    faults,
                );
                true
            }
            "type" => match rule.as_str().expect("a type") {
                "object" => value.is_object(),
                "array" => value.is_array(),
                "string" => value.is_string(),
                "boolean" => value.is_boolean(),
                "null" => value.is_null(),
                "integer" => value.is_i64() || value.is_u64(),
                "number" => value.is_number(),
                other => panic!("the type `{other}`"),
            },
            "const" => value == rule,
            "enum" => list().any(|one| one == value),
            "minimum" => value.as_f64().is_none_or(|own| own >= number()),
            "maximum" => value.as_f64().is_none_or(|own| own <= number()),
            "minLength" => value
                .as_str()
                .is_none_or(|own| own.chars().count() as f64 >= number()),
            "maxLength" => value
                .as_str()
                .is_none_or(|own| own.chars().count() as f64 <= number()),
            "minItems" => value
                .as_array()
                .is_none_or(|own| own.len() as f64 >= number()),
            "required" => list().all(|key| {
                value
                    .as_object()
                    .is_none_or(|own| own.contains_key(key.as_str().expect("a key")))
            }),
            "oneOf" => {
                let valid = list().filter(|one| {
                    let mut found = Vec::new();
                    check(root, one, value, path, &mut found);
                    found.is_empty()
                });
                valid.count() == 1
            }
            _ => true,
        };
        if !fits {
            faults.push(format!("{path}: `{word}` is not met"));
        }
    }
    if let (Some(own), Some(known)) = (
        value.as_object(),
        rules
            .get("properties")
            .or(rules.get("additionalProperties")),
    ) {
        let named = rules
            .contains_key("properties")
            .then(|| known.as_object().expect("keys"));
        for (key, inner) in own {
            let rule = named
                .and_then(|named| named.get(key))
                .or(rules.get("additionalProperties"));
            if let Some(rule) = rule {
                check(root, rule, inner, &format!("{path}/{key}"), faults);
            }
        }
    }
    if let Some(own) = value.as_array() {
        let first = rules
            .get("prefixItems")
            .and_then(Value::as_array)
            .map_or(&[][..], Vec::as_slice);
        for (at, inner) in own.iter().enumerate() {
            if let Some(rule) = first.get(at).or(rules.get("items")) {
                check(root, rule, inner, &format!("{path}/{at}"), faults);
            }
        }
    }
}
