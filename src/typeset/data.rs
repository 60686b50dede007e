//! An edition as the data that the templates walk.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::cutting;
use super::paper::Paper;
use crate::cloth::ClothLayout;
use crate::construct::{History, thread};
use crate::draw::Overview;
use crate::figure::{Figures, key};
use crate::measure::{Exact, Quantity};
use crate::model::{Date, Kind, Verb, Wearer};
use crate::resolve::{Block, Edition, EditionStep, EditionWork, Inline, Shown, ShownFigure, phrase_sizes};
use crate::sheets::PageMap;

/// Everything that one booklet file is set from.
#[derive(Debug, Clone)]
pub struct Sheaf {
    /// The data of the edition.
    pub data: Value,
    /// Drawings and pictures, by the path at which the templates find them.
    pub files: BTreeMap<String, Vec<u8>>,
    /// Which author's file stands behind such a path.
    pub origins: BTreeMap<String, String>,
}

/// What an edition is set with beside its own words.
pub struct Supplies<'a> {
    /// The paper.
    pub paper: Paper,
    /// The play of its steps.
    pub history: &'a History,
    /// The diagrams.
    pub figures: &'a Figures,
    /// The pieces, drawn to one scale.
    pub overview: &'a Overview,
    /// The words of the house.
    pub labels: &'a Value,
    /// The logo and the cover, by the names the data gives them: path and bytes.
    pub pictures: &'a BTreeMap<&'static str, (String, Vec<u8>)>,
    /// The map of its pattern sheets; `None` where there are no pieces.
    pub map: Option<PageMap>,
    /// The cloth laid, each layout with its drawing and the drawing's size in mm.
    pub cloth: Vec<(ClothLayout, String, (f64, f64))>,
}

/// Gathers one edition.
pub fn edition_data(edition: &Edition<'_>, supplies: Supplies<'_>) -> Sheaf {
    let Supplies { paper, history, figures, overview, labels, pictures, map, cloth } = supplies;
    let facts = &edition.draft.facts;
    let size = edition.size_facts();
    let mut sheaf = Sheaf { data: Value::Null, files: BTreeMap::new(), origins: BTreeMap::new() };
    let mut places: BTreeMap<String, Value> = BTreeMap::new();
    for (at, (name, figure)) in figures.of_size(edition.size()).enumerate() {
        let path = format!("/figures/{at}.svg");
        places.insert(name.to_owned(), json!({ "path": path, "width": figure.width, "height": figure.height }));
        sheaf.origins.insert(path.clone(), figure.path.clone());
        sheaf.files.insert(path, figure.svg.clone().into_bytes());
    }
    let entries: Vec<Value> = key(figures, edition.size())
        .into_iter()
        .map(|entry| {
            let path = format!("/key/{}.svg", entry.class);
            sheaf.files.insert(path.clone(), entry.swatch.into_bytes());
            json!({ "class": entry.class, "name": entry.name, "swatch": path })
        })
        .collect();
    let mut style = json!({
        "accent": facts.style.accent.text,
        "logo": null,
        "cover": null,
        "cover_alt": facts.style.cover_alt.as_ref().map(|text| text.text.clone()),
    });
    for (name, (path, bytes)) in pictures {
        style[*name] = json!(path);
        sheaf.files.insert(path.clone(), bytes.clone());
    }
    let drawings: Vec<Value> = overview
        .drawings
        .iter()
        .map(|drawing| {
            let piece = &facts.pieces[drawing.piece];
            let path = format!("/pieces/{}.svg", piece.id.text);
            sheaf.files.insert(path.clone(), drawing.svg.clone().into_bytes());
            let number = edition.piece_number(drawing.piece);
            json!({ "id": piece.id.text, "number": number, "name": piece.name.text, "path": path, "width": drawing.size.0, "height": drawing.size.1 })
        })
        .collect();
    let date = |written: Option<&str>| written.and_then(Date::parse).map(Date::spoken);
    let iso = facts.date.as_ref().map(|date| date.text.clone());
    let cutting = cutting::layouts(edition, &cloth, &mut sheaf.files);
    let mut data = json!({
        "paper": paper.typst_name(),
        "sheets": map.map(|map| cutting::map(&map, &mut sheaf.files)),
        "layouts": cutting,
        "title": facts.title.text,
        "designer": facts.designer.as_ref().map_or("", |text| &text.text),
        "edition": facts.edition.text,
        "date": date(iso.as_deref()),
        "date_iso": iso.filter(|written| Date::parse(written).is_some()),
        "language": facts.language.text,
        "skill": facts.skill.as_ref().map(|text| &text.text),
        "summary": facts.summary.iter().map(|text| json!({ "kind": "text", "text": text.text })).collect::<Vec<_>>(),
        "size": {
            "id": size.id.text,
            "name": size.name,
            "index": edition.size(),
            "wearer": if size.wearer == Wearer::Child { "child" } else { "adult" },
        },
        "sizes": facts.sizes.iter().map(|size| json!({ "id": size.id.text, "name": size.name })).collect::<Vec<_>>(),
        "columns": [{ "id": size.id.text, "name": size.name, "own": true }],
        "style": style,
        "labels": labels,
        "read_first": edition.front.read_first,
        "cautions": edition.front.cautions,
        "child_caution": size.wearer == Wearer::Child,
        "allowances": allowances(edition),
        "key": entries,
        "finished": finished(edition),
        "needs": needs(edition, history, labels, &cloth),
        "pieces": pieces(edition, drawings, overview.scale),
        "parts": edition.parts.iter().enumerate().map(|(at, part)| json!({
            "id": part.part.id.as_ref().map_or_else(|| format!("{}", at + 1), |id| id.text.clone()),
            "title": part.title,
            "intro": part.intro,
            "steps": part.steps.iter().map(|step| self::step(step, edition)).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "words": edition.front.words.iter().map(|(word, meaning)| json!({
            "id": word.chars().map(|letter| if letter.is_alphanumeric() { letter } else { '-' }).collect::<String>(),
            "word": word,
            "meaning": Block::as_line(meaning),
        })).collect::<Vec<_>>(),
        "care": edition.front.care,
        "terms": edition.front.terms,
        "contact": facts.contact.as_ref().map(|text| &text.text),
        "editions": edition.front.editions.iter().map(|(edition, written, changes)| json!({
            "edition": edition,
            "date": date(written.as_deref()),
            "changes": changes,
        })).collect::<Vec<_>>(),
    });
    place_figures(&mut data, &places);
    sheaf.data = data;
    sheaf
}

fn step(step: &EditionStep<'_>, edition: &Edition<'_>) -> Value {
    let draft = edition.draft;
    let mut figure = step.figure.as_ref().map_or(Value::Null, |figure| json!(figure));
    if let Value::Object(fields) = &mut figure {
        fields.insert("kind".into(), json!("figure"));
    }
    json!({
        "id": step.step.id.as_ref().map_or_else(|| format!("{}", step.number), |id| id.text.clone()),
        "number": step.number,
        "title": step.title,
        "body": step.body,
        "figure": figure,
        "seam": step.works.iter().filter_map(|work| seam(work, edition)).collect::<Vec<_>>(),
        "sizes_note": phrase_sizes(step.step.sizes.as_ref(), draft),
    })
}

/// The seam facts of one work; `None` when it has no figures to tell.
fn seam(work: &EditionWork<'_>, edition: &Edition<'_>) -> Option<Value> {
    let draft = edition.draft;
    let allowance = work.allowance_figures(draft);
    let stitch = work.stitch_figures(draft);
    let mut extra: Vec<String> = Vec::new();
    for (worked, words) in [(work.leave, "leave a gap of"), (work.ease, "ease in"), (work.gather, "gather to")] {
        extra.extend(worked.map(|worked| format!("{words} {}", edition.figures(&worked))));
    }
    extra.extend(work.work.note.iter().map(|note| note.text.clone()));
    if work.work.by_hand && work.verb.stitches() {
        extra.insert(0, "by hand".into());
    }
    if allowance.is_none() && stitch.is_none() && extra.is_empty() {
        return None;
    }
    let mut verb = work.verb.word().to_owned();
    if let Some(first) = verb.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    Some(json!({
        "verb": verb,
        "what": work.spoken(draft, edition.catalogue),
        "allowance": allowance,
        "stitch": stitch,
        "extra": if extra.is_empty() { Value::Null } else { json!(extra.join("; ")) },
    }))
}

/// The seam allowances in use, narrowest first, each with the steps that use it.
fn allowances(edition: &Edition<'_>) -> Vec<Value> {
    let mut found: Vec<(crate::measure::Exact, Shown, Vec<Value>)> = Vec::new();
    for step in edition.steps() {
        for work in &step.works {
            // Stitching that is only laid beside an edge has a distance, and no allowance.
            let beside = matches!(work.verb, Verb::Topstitch | Verb::Baste);
            let Some(worked) = work.allowance.filter(|_| work.verb.stitches() && !beside) else { continue };
            let figures = edition.figures(&worked);
            let at = found.iter().position(|(_, known, _)| *known == figures).unwrap_or_else(|| {
                found.push((worked.quantity.value, figures, Vec::new()));
                found.len() - 1
            });
            let id = step.step.id.as_ref().map_or_else(|| step.number.to_string(), |id| id.text.clone());
            let entry = json!({ "number": step.number, "id": id });
            if !found[at].2.contains(&entry) {
                found[at].2.push(entry);
            }
        }
    }
    found.sort_by_key(|(length, ..)| *length);
    found.into_iter().map(|(_, value, steps)| json!({ "value": value, "steps": steps })).collect()
}

fn finished(edition: &Edition<'_>) -> Value {
    let rows: Vec<Value> = edition
        .finished
        .iter()
        .map(|(name, worked)| json!({ "name": name, "values": [edition.figures(worked)] }))
        .collect();
    json!({ "rows": rows })
}

fn needs(
    edition: &Edition<'_>,
    history: &History,
    labels: &Value,
    cloth: &[(ClothLayout, String, (f64, f64))],
) -> Value {
    let facts = &edition.draft.facts;
    // A fabric without a width is made on the way, such as cloth quilted from two others.
    let fabrics: Vec<Value> = edition
        .fabrics
        .iter()
        .filter(|row| !row.widths.is_empty() || row.amount.is_some())
        .map(|row| {
            let fabric = &facts.fabrics[row.fabric];
            json!({
                "id": fabric.id.text,
                "name": fabric.name.text,
                "width": row.widths,
                "amounts": [row.amount],
                "by_width": cutting::by_width(edition, row, cloth),
                "note": Block::as_line(&row.note),
            })
        })
        .collect();
    let notions: Vec<Value> = edition
        .notions
        .iter()
        .map(|row| {
            let notion = &facts.notions[row.notion];
            let mut note = Block::as_line(&row.note);
            let mut value = row.value.clone();
            // What the author states about thread goes before what is estimated.
            if notion.kind == Kind::Thread && value.is_none() && row.count.is_none() {
                value = thread(edition, history).map(|estimate| whole_lengths(estimate.thread));
                if value.is_some() {
                    let words = labels["thread_note"].as_str().unwrap_or_default();
                    note.push(Inline::Text { text: format!(" {words}") });
                }
            }
            json!({
                "id": notion.id.text,
                "name": notion.name.text,
                "amounts": [{ "count": row.count, "value": value }],
                "note": note,
            })
        })
        .collect();
    json!({
        "fabrics": fabrics,
        "notions": notions,
        "tools": facts.tools.iter().map(|tool| tool.name.text.clone()).collect::<Vec<_>>(),
    })
}

/// Thread in whole metres and whole yards (1 yd = 0.9144 m, exactly).
fn whole_lengths(metres: f64) -> Shown {
    let figure = |number: f64, unit: &str| ShownFigure {
        number: format!("{number:.0}"),
        unit: unit.to_owned(),
        quantity: Quantity::count(Exact::from_integer(0)),
    };
    Shown { first: figure(metres, "m"), second: Some(figure((metres / 0.9144).ceil(), "yd")) }
}

fn pieces(edition: &Edition<'_>, drawings: Vec<Value>, scale: u32) -> Value {
    let facts = &edition.draft.facts;
    let mut fabrics: Vec<Value> = Vec::new();
    for (at, fabric) in facts.fabrics.iter().enumerate() {
        let rows: Vec<Value> = edition
            .cuts
            .iter()
            .filter(|row| row.fabric == at)
            .map(|row| {
                let piece = &facts.pieces[row.piece];
                json!({
                    "id": piece.id.text,
                    "name": piece.name.text,
                    "copies": row.copies,
                    "count": row.count,
                    "fold": piece.fold.is_some(),
                    "mirrored": piece.mirrored,
                    "dimensions": [row.dimensions.as_ref().map(|(width, height)| json!([width, height]))],
                    "note": Block::as_line(&row.note),
                })
            })
            .collect();
        if !rows.is_empty() {
            fabrics.push(json!({ "id": fabric.id.text, "name": fabric.name.text, "rows": rows }));
        }
    }
    json!({ "fabrics": fabrics, "drawings": drawings, "scale": format!("1:{scale}") })
}

/// Sets every diagram's place and size where it is mentioned; a diagram that could not be bound has
/// been reported, and is left out.
fn place_figures(data: &mut Value, places: &BTreeMap<String, Value>) {
    match data {
        Value::Array(items) => items.iter_mut().for_each(|item| place_figures(item, places)),
        Value::Object(fields) => {
            let known = fields.get("kind").and_then(Value::as_str) == Some("figure");
            if known && let Some(name) = fields.remove("key") {
                let place = name.as_str().and_then(|name| places.get(name));
                match place {
                    Some(Value::Object(place)) => {
                        fields.extend(place.iter().map(|(name, value)| (name.clone(), value.clone())));
                    }
                    _ => *data = Value::Null,
                }
                return;
            }
            fields.values_mut().for_each(|value| place_figures(value, places));
        }
        _ => {}
    }
}
