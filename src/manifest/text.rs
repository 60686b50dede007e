//! A manifest as text, and back. What is damaged, hostile or of another shape is told, and never guessed at.

use serde_json::{Value, json};

use super::fault::ManifestFault;
use super::record::Manifest;
use super::sound;
use crate::limits::{MANIFEST, thousands};

/// Which shape manifests have that this program writes.
pub const FORMAT: u32 = 1;
/// The schema of a manifest (JSON Schema, draft 2020-12).
pub const SCHEMA: &str = include_str!("manifest.schema.json");
/// What the schema's file is called, beside a manifest.
pub const SCHEMA_NAME: &str = "manifest.schema.json";

/// A manifest as JSON, with a line end; the same bytes for the same edition.
///
/// # Errors
/// When something in it cannot be written as JSON.
pub fn write(manifest: &Manifest) -> Result<String, ManifestFault> {
    let mut record = json!({ "$schema": SCHEMA_NAME });
    if let (Value::Object(record), Value::Object(own)) = (&mut record, as_json(manifest)?) {
        record.extend(own);
    }
    Ok(format!("{record:#}\n"))
}

/// A manifest as JSON, in which nothing is left out.
fn as_json(manifest: &Manifest) -> Result<Value, ManifestFault> {
    serde_json::to_value(manifest).map_err(|error| {
        ManifestFault::new(format!("the manifest cannot be written as JSON: {error}"))
            .act("take out what was changed last; this is a fault of the program")
    })
}

/// Reads a manifest back.
///
/// # Errors
/// When the text is not what [`write()`] makes: cut off, too large or too deep, with keys that this program does not know,
/// or with figures and places that do not fit together.
pub fn read(text: &str) -> Result<Manifest, ManifestFault> {
    if text.len() > MANIFEST.most {
        let fact = format!("it has {} bytes: {} are the most", thousands(text.len()), thousands(MANIFEST.most));
        return Err(ManifestFault::new(fact));
    }
    let value: Value = serde_json::from_str(text).map_err(|error| unreadable(&error))?;
    match value.get("format").and_then(Value::as_u64) {
        Some(format) if format == u64::from(FORMAT) => {}
        Some(format) => {
            let fact = format!("its format is {format}, and this program reads format {FORMAT}");
            return Err(ManifestFault::new(fact).act("use the program that wrote it, or a newer one"));
        }
        None => return Err(ManifestFault::new("it is no manifest of an edition: it has no `format`")),
    }
    let mut reader = serde_json::Deserializer::from_str(text);
    let manifest: Manifest = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string();
        ManifestFault::new(format!("`{path}` cannot be read: {}", unreadable(error.inner()).fact))
    })?;
    // What was not taken over is not known.
    let mut given = value;
    if let Value::Object(given) = &mut given {
        given.remove("$schema");
    }
    let taken = as_json(&manifest)?;
    if let Some(path) = differs(&given, &taken, String::new()) {
        return Err(ManifestFault::new(format!("`{path}` is nothing that this program knows")));
    }
    sound::look(&manifest, &taken)?;
    Ok(manifest)
}

/// A fault of JSON with its place, in words.
fn unreadable(error: &serde_json::Error) -> ManifestFault {
    let words = error.to_string();
    let words = words.split(" at line ").next().unwrap_or("");
    ManifestFault::new(format!("line {}, column {}: {words}", error.line(), error.column()))
}

/// The first place at which two values differ; `None` where they mean the same. A number that is written otherwise is
/// the same number.
fn differs(one: &Value, other: &Value, path: String) -> Option<String> {
    match (one, other) {
        (Value::Object(one), Value::Object(other)) => {
            let stray = one.iter().find_map(|(key, value)| match other.get(key) {
                Some(known) => differs(value, known, format!("{path}/{key}")),
                None => Some(format!("{path}/{key}")),
            });
            stray.or_else(|| other.keys().find(|key| !one.contains_key(*key)).map(|key| format!("{path}/{key}")))
        }
        (Value::Array(one), Value::Array(other)) if one.len() == other.len() => {
            let pairs = one.iter().zip(other).enumerate();
            pairs.into_iter().find_map(|(at, (one, other))| differs(one, other, format!("{path}/{at}")))
        }
        (Value::Number(one), Value::Number(other)) if one.as_f64() == other.as_f64() => None,
        _ => (one != other).then_some(path),
    }
}
