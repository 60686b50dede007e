//! The page as one file.

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use minijinja::value::Serde;
use minijinja::{Value, context};
use serde_json::{Map, Value as Json};
use sha2::{Digest, Sha256};

use super::colour::on_dark;
use super::drawn::with_files;
use super::fault::PageFault;
use super::leaf::Leaf;
use super::press::Press;
use super::sections::sections;
use crate::source::House;

/// What a page is made of.
#[derive(Debug, Clone)]
pub struct Page<'a> {
    /// The booklet's name, under which a device keeps what is ticked.
    pub booklet: &'a str,
    /// The choices of sizes; the first is shown until another is chosen, and its words stand in the contents.
    pub leaves: &'a [Leaf],
    /// The systems of units, by their keys, in the order in which figures state them.
    pub systems: &'a [&'static str],
}

/// The whole file.
///
/// # Errors
/// When a template, the house's or the booklet's own, cannot be used; with its place.
pub fn page(page: &Page<'_>, house: &House, labels: &Map<String, Json>) -> Result<String, PageFault> {
    let press = Press::new(house, labels)?;
    let leaves: Vec<(&str, Json)> =
        page.leaves.iter().map(|leaf| (leaf.key.as_str(), with_files(&leaf.sheaf.data, &leaf.sheaf.files))).collect();
    let Some((first, data)) = leaves.first() else { return Ok(String::new()) };
    let accent = data["style"]["accent"].as_str().unwrap_or_default();
    let mut style = house.template("page.css").replace("ACCENT-DARK", &on_dark(accent)).replace("ACCENT", accent);
    for (key, _) in &leaves {
        style.push_str(&format!(
            "\nhtml[data-size=\"{key}\"] [data-for]:not([data-for~=\"{key}\"]) {{ display: none; }}"
        ));
    }
    // The house's own script, whatever the booklet brings: nothing that an author writes runs.
    let plain = House::plain();
    let script = plain.template("page.js");
    let body = press.print(
        "page.html",
        context! {
            d => Value::from(Serde(data)),
            title => data["title"].as_str().unwrap_or_default(),
            logo => data["style"]["logo"].as_str(),
            cover => data["style"]["cover"].as_str(),
            groups => groups(page.leaves),
            leaves => page.leaves.len(),
            systems => page.systems.to_vec(),
            sections => Value::from(Serde(sections(&press, &leaves)?)),
            style => Value::from_safe_string(style.clone()),
            script => Value::from_safe_string(script.to_owned()),
        },
    )?;
    guard(house, &body)?;
    let language = data["language"].as_str().unwrap_or_default();
    Ok(format!(
        "<!doctype html>\n<html lang=\"{}\" data-booklet=\"{}\" data-size=\"{first}\" data-units=\"both\">\n<head>\n\
         <meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n{body}",
        attribute(language),
        attribute(page.booklet),
        policy(&style, script),
    ))
}

/// Words as they stand between the quotes of an attribute.
pub(super) fn attribute(text: &str) -> String {
    text.replace('&', "&amp;").replace('"', "&quot;").replace('<', "&lt;")
}

/// Holds a booklet's own templates to the one policy of the page: what else could send a reader elsewhere is a fault.
pub(super) fn guard(house: &House, body: &str) -> Result<(), PageFault> {
    let own = house.templates.iter().find(|asset| asset.own.is_some() && asset.name.ends_with(".html"));
    match own {
        Some(own) if body.to_ascii_lowercase().contains("http-equiv") => Err(PageFault {
            message: "a template writes `http-equiv`, which is for the policy of the page alone".to_owned(),
            place: Some((own.name.clone(), 0..0)),
        }),
        _ => Ok(()),
    }
}

/// What the file may do: show pictures that it holds, and run the house's script (Content Security Policy Level 3).
pub(super) fn policy(style: &str, script: &str) -> String {
    let hash = |text: &str| format!("'sha256-{}'", BASE64_STANDARD.encode(Sha256::digest(text.as_bytes())));
    format!(
        "default-src 'none'; img-src data:; style-src {}; script-src {}; base-uri 'none'; form-action 'none'",
        hash(style),
        hash(script)
    )
}

/// The choices, those of one thing together.
fn groups(leaves: &[Leaf]) -> Vec<Value> {
    let mut groups: Vec<(Option<&str>, Vec<Value>)> = Vec::new();
    for leaf in leaves {
        let one = context! { key => leaf.key.clone(), name => leaf.name.clone() };
        match groups.last_mut() {
            Some((name, own)) if *name == leaf.group.as_deref() => own.push(one),
            _ => groups.push((leaf.group.as_deref(), vec![one])),
        }
    }
    groups.into_iter().map(|(name, leaves)| context! { name, leaves }).collect()
}
