//! A document for a screen that is no booklet, under the same policy as the booklet's page.

use std::collections::BTreeMap;

use minijinja::value::Serde;
use minijinja::{Value, context};
use serde_json::{Map, Value as Json};

use super::drawn::with_files;
use super::fault::PageFault;
use super::page::{attribute, guard, policy};
use super::press::Press;
use crate::source::House;

/// What a document is made of.
#[derive(Debug, Clone)]
pub struct Document<'a> {
    /// Its name, by which the house calls its template, its style and its script.
    pub name: &'a str,
    /// The name under which a device keeps what is ticked and filled in.
    pub kept: &'a str,
    /// What it tells: its `language` and its `accent` are read here, all else by the template.
    pub data: &'a Json,
    /// The pictures, by the paths in the data.
    pub files: &'a BTreeMap<String, Vec<u8>>,
}

/// The whole file.
///
/// # Errors
/// When a template, the house's or the booklet's own, cannot be used; with its place.
pub fn document(document: &Document<'_>, house: &House, labels: &Map<String, Json>) -> Result<String, PageFault> {
    let press = Press::new(house, labels)?;
    let name = document.name;
    let data = with_files(document.data, document.files);
    let text = |key: &str| data[key].as_str().unwrap_or_default();
    let style = house.template(&format!("{name}.css")).replace("ACCENT", text("accent"));
    // The house's own script, whatever the booklet brings: nothing that an author writes runs.
    let plain = House::plain();
    let script = plain.template(&format!("{name}.js"));
    let body = press.print(
        &format!("{name}.html"),
        context! {
            d => Value::from(Serde(&data)),
            style => Value::from_safe_string(style.clone()),
            script => Value::from_safe_string(script.to_owned()),
        },
    )?;
    guard(house, &body)?;
    Ok(format!(
        "<!doctype html>\n<html lang=\"{}\" data-kept=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{}\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n{body}",
        attribute(text("language")),
        attribute(document.kept),
        policy(&style, script),
    ))
}
