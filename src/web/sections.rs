//! The sections of the page: those of every choice of sizes laid over one another, and what several share said once.

use std::collections::BTreeSet;

use minijinja::value::Serde;
use minijinja::{Value, context};
use serde::Serialize;
use serde_json::Value as Json;

use super::fault::PageFault;
use super::press::Press;

/// A section of the page.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Section {
    /// Its name in addresses: `step-turn`.
    pub id: String,
    /// What it is.
    pub kind: &'static str,
    /// Its line in the contents; `None` for a step.
    pub chapter: Option<Value>,
    /// The choices that have it; empty where all do.
    pub r#for: String,
    /// What it says, to each choice.
    pub variants: Vec<Variant>,
}

/// What a section says to some choices.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Variant {
    /// The choices; empty where all that have the section are told the same.
    pub r#for: String,
    /// The marked-up words, which the templates have escaped.
    pub html: Value,
    #[serde(skip)]
    keys: Vec<String>,
}

/// A section of one choice, before it is printed.
struct Sketch<'a> {
    id: String,
    kind: &'static str,
    /// The word of the house that stands in the contents; empty for a part, whose name does, and for a step.
    word: &'static str,
    part: Option<(usize, &'a Json)>,
    step: Option<&'a Json>,
}

impl Sketch<'_> {
    fn plain(id: &'static str, word: &'static str) -> Self {
        Sketch { id: id.to_owned(), kind: id, word, part: None, step: None }
    }
}

/// The sections of all choices, by their keys and data; in the order of the first that has all, the others' where they
/// come. The first choice's words stand in the contents.
pub(super) fn sections(press: &Press<'_>, leaves: &[(&str, Json)]) -> Result<Vec<Section>, PageFault> {
    let mut out: Vec<Section> = Vec::new();
    for (key, data) in leaves {
        let sketches = sketches(data);
        let ids: Vec<String> = sketches.iter().map(|sketch| sketch.id.clone()).collect();
        let shared = Value::from(Serde(data));
        let mut after = 0;
        for sketch in &sketches {
            let about = context! {
                d => shared.clone(),
                ids => ids.clone(),
                part => sketch.part.map(|(_, part)| Value::from(Serde(part))),
                part_number => sketch.part.map(|(at, _)| at),
                step => sketch.step.map(|step| Value::from(Serde(step))),
            };
            let html = press.print("page-section.html", context! { kind => sketch.kind, ..about.clone() })?;
            let at = match out.iter().position(|section| section.id == sketch.id) {
                Some(at) => at,
                None => {
                    let chapter = match sketch.kind {
                        "step" => None,
                        _ => {
                            let line = context! { kind => "chapter", named => sketch.word, ..about };
                            Some(Value::from_safe_string(press.print("page-section.html", line)?))
                        }
                    };
                    let section = Section {
                        id: sketch.id.clone(),
                        kind: sketch.kind,
                        chapter,
                        r#for: String::new(),
                        variants: Vec::new(),
                    };
                    out.insert(after, section);
                    after
                }
            };
            out[at].say(key, html);
            after = at + 1;
        }
    }
    let every: BTreeSet<&str> = leaves.iter().map(|(key, _)| *key).collect();
    out.iter_mut().for_each(|section| section.settle(&every));
    Ok(out)
}

impl Section {
    /// Notes what the section says to a choice.
    fn say(&mut self, key: &str, html: String) {
        let same = self.variants.iter_mut().find(|variant| variant.html.as_str() == Some(html.as_str()));
        match same {
            Some(variant) => variant.keys.push(key.to_owned()),
            None => {
                let html = Value::from_safe_string(html);
                self.variants.push(Variant { r#for: String::new(), html, keys: vec![key.to_owned()] });
            }
        }
    }

    /// Writes down whom it is for, where it is not for all.
    fn settle(&mut self, every: &BTreeSet<&str>) {
        let own: Vec<&String> = self.variants.iter().flat_map(|variant| &variant.keys).collect();
        if own.len() < every.len() {
            self.r#for = own.iter().map(|key| key.as_str()).collect::<Vec<_>>().join(" ");
        }
        if self.variants.len() > 1 {
            self.variants.iter_mut().for_each(|variant| variant.r#for = variant.keys.join(" "));
        }
    }
}

/// What the page of one choice holds, in the order in which it is used.
fn sketches(data: &Json) -> Vec<Sketch<'_>> {
    let has = |key: &str| data[key].as_array().is_some_and(|list| !list.is_empty());
    let mut out = vec![Sketch::plain("start", "before_you_begin")];
    let tables = [
        ("body", has("body"), "body"),
        ("finished", has("finished"), "finished"),
        ("needs", has("fabrics") || has("notions") || has("tools") || has("offers"), "needs"),
        ("sheets", !data["sheets"].is_null(), "sheets"),
        ("pieces", has("cuts") || has("offers"), "pieces"),
        ("layouts", has("layouts"), "layouts"),
    ];
    out.extend(tables.into_iter().filter(|(_, has, _)| *has).map(|(id, _, word)| Sketch::plain(id, word)));
    for (at, part) in data["parts"].as_array().into_iter().flatten().enumerate() {
        let id = |of: &Json, kind: &str| format!("{kind}-{}", of["id"].as_str().unwrap_or_default());
        out.push(Sketch { id: id(part, "part"), kind: "part", word: "", part: Some((at + 1, part)), step: None });
        for step in part["steps"].as_array().into_iter().flatten() {
            out.push(Sketch { id: id(step, "step"), kind: "step", word: "", part: None, step: Some(step) });
        }
    }
    let told = |key: &str| !data[key].is_null() && data[key] != "";
    let back = [
        ("help", has("help"), "help"),
        ("words", has("words"), "words"),
        ("end", has("care") || has("terms") || told("contact"), "care_terms"),
        ("editions", has("editions"), "editions"),
    ];
    out.extend(back.into_iter().filter(|(_, has, _)| *has).map(|(id, _, word)| Sketch::plain(id, word)));
    out
}
