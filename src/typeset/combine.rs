//! All sizes in one booklet: `20 (26, 32) cm`, sizes in the same order everywhere.
//!
//! The editions of all sizes are made first, each by itself; here their data are laid over one
//! another. What is the same stands once. Figures that differ stand in a row, a choice by size says
//! each size's words, and a step that only some sizes have says which. Where two sizes differ in more
//! than figures and choices, both are printed, each under its size's name.

use std::collections::BTreeMap;

use serde_json::{Map, Value, json};

use super::data::Sheaf;
use super::drawings::merge_drawings;
use super::rows::{figures, holders, is_figures, list, listed, order, side_by_side, union};

/// A size's name and its edition.
pub type Sized<'a> = (&'a str, &'a Sheaf);

/// Lays the editions of all sizes over one another; `name` is what the cover says instead of a size.
/// `fits` tells whether a drawing keeps inside its frame. `None` when there is no edition.
pub fn combine(editions: &[Sized<'_>], name: &str, fits: &dyn Fn(&str) -> bool) -> Option<Sheaf> {
    let (_, first) = editions.first()?;
    let names: Vec<&str> = editions.iter().map(|(name, _)| *name).collect();
    let data: Vec<&Value> = editions.iter().map(|(_, sheaf)| &sheaf.data).collect();
    let mut merged = first.data.clone();
    let merger = Merger { names: &names };
    let numbers = merger.parts(&data, &mut merged);
    for key in ["read_first", "care", "terms"] {
        merged[key] = merger.blocks(&data.iter().map(|one| &one[key]).collect::<Vec<_>>());
    }
    merged["cautions"] = Value::Array(merger.rows(&data, |one| &one["cautions"], |rows| merger.blocks(rows)));
    for key in ["words", "editions"] {
        merged[key] = merger.any(&data.iter().map(|one| &one[key]).collect::<Vec<_>>());
    }
    merged["child_caution"] = json!(data.iter().any(|one| one["child_caution"] == json!(true)));
    merged["key"] = union(&data, |one| &one["key"], "class");
    merged["columns"] = side_by_side(&data, "columns");
    merged["size"] = json!({ "id": "all", "name": name, "index": 0, "wearer": "adult" });
    merged["finished"]["rows"] = merger.columns(&data, |one| &one["finished"]["rows"], &["values"], "name");
    merged["needs"]["fabrics"] = merger.columns(&data, |one| &one["needs"]["fabrics"], &["amounts"], "id");
    merged["needs"]["notions"] = merger.columns(&data, |one| &one["needs"]["notions"], &["amounts"], "id");
    merged["pieces"]["fabrics"] = merger.pieces(&data);
    merged["allowances"] = merger.allowances(&data);
    // Layouts and maps are one size's: they stand in the booklets of the sizes.
    merged["layouts"] = json!([]);
    merged["sheets"] = Value::Null;
    renumber(&mut merged, &numbers);
    let mut sheaf = Sheaf { data: merged, files: first.files.clone(), origins: first.origins.clone() };
    let sheaves: Vec<&Sheaf> = editions.iter().map(|(_, sheaf)| *sheaf).collect();
    merge_drawings(&mut sheaf, &sheaves, fits);
    Some(sheaf)
}

struct Merger<'a> {
    names: &'a [&'a str],
}

impl Merger<'_> {
    /// Parts and steps of all sizes, numbered anew; gives the numbers by the steps' ids.
    fn parts(&self, data: &[&Value], merged: &mut Value) -> BTreeMap<String, usize> {
        let mut numbers = BTreeMap::new();
        let mut parts = Vec::new();
        let mut number = 0;
        for part_id in order(data, |one| list(&one["parts"]), "id") {
            let held: Vec<(usize, &Value)> = holders(data, |one| list(&one["parts"]), "id", &part_id);
            let all: Vec<&Value> = held.iter().map(|(_, part)| *part).collect();
            let mut part = all.first().map(|part| (*part).clone()).unwrap_or_default();
            part["title"] = self.inline(&all.iter().map(|part| &part["title"]).collect::<Vec<_>>(), &held);
            part["intro"] = self.some_blocks(&all.iter().map(|part| &part["intro"]).collect::<Vec<_>>(), &held);
            let mut steps = Vec::new();
            for step_id in order(&all, |part| list(&part["steps"]), "id") {
                number += 1;
                numbers.insert(step_id.clone(), number);
                let own: Vec<(usize, &Value)> = held
                    .iter()
                    .filter_map(|(size, part)| {
                        Some((*size, list(&part["steps"]).iter().find(|step| step["id"] == json!(step_id))?))
                    })
                    .collect();
                steps.push(self.step(&own, number));
            }
            part["steps"] = json!(steps);
            parts.push(part);
        }
        merged["parts"] = json!(parts);
        numbers
    }

    fn step(&self, own: &[(usize, &Value)], number: usize) -> Value {
        let all: Vec<&Value> = own.iter().map(|(_, step)| *step).collect();
        let mut step = all.first().map(|step| (*step).clone()).unwrap_or_default();
        let of = |key: &str| all.iter().map(|step| &step[key]).collect::<Vec<_>>();
        step["number"] = json!(number);
        step["title"] = self.inline(&of("title"), own);
        step["body"] = self.some_blocks(&of("body"), own);
        step["seam"] = match self.try_merge(&of("seam")) {
            Some(seam) => seam,
            None => json!(all.iter().flat_map(|step| list(&step["seam"]).to_vec()).collect::<Vec<_>>()),
        };
        if own.len() < self.names.len() {
            let names: Vec<&str> = own.iter().map(|(size, _)| self.names[*size]).collect();
            step["sizes_note"] = json!(format!("{} only", listed(&names)));
        }
        step
    }

    fn blocks(&self, all: &[&Value]) -> Value {
        let held: Vec<(usize, &Value)> = all.iter().copied().enumerate().collect();
        self.some_blocks(all, &held)
    }

    /// Blocks of some sizes, one over the other; where one differs in its build, each size's in turn.
    fn some_blocks(&self, all: &[&Value], held: &[(usize, &Value)]) -> Value {
        if let Some(merged) = self.try_merge(all) {
            return merged;
        }
        let longest = all.iter().map(|blocks| list(blocks).len()).max().unwrap_or(0);
        let same_length = all.iter().all(|blocks| list(blocks).len() == longest);
        let mut out = Vec::new();
        if same_length {
            for at in 0..longest {
                let row: Vec<&Value> = all.iter().map(|blocks| &list(blocks)[at]).collect();
                match self.try_merge(&row) {
                    Some(block) => out.push(block),
                    None => {
                        out.extend(self.each_in_turn(&row.iter().map(|block| vec![*block]).collect::<Vec<_>>(), held))
                    }
                }
            }
        } else {
            let rows: Vec<Vec<&Value>> = all.iter().map(|blocks| list(blocks).iter().collect()).collect();
            out.extend(self.each_in_turn(&rows, held));
        }
        json!(out)
    }

    /// Each size's blocks under its name; sizes that say the same share one.
    fn each_in_turn(&self, rows: &[Vec<&Value>], held: &[(usize, &Value)]) -> Vec<Value> {
        let mut groups: Vec<(Vec<&str>, &Vec<&Value>)> = Vec::new();
        for (row, (size, _)) in rows.iter().zip(held) {
            match groups.iter_mut().find(|(_, known)| *known == row) {
                Some((names, _)) => names.push(self.names[*size]),
                None => groups.push((vec![self.names[*size]], row)),
            }
        }
        let mut out = Vec::new();
        for (names, row) in groups {
            let name =
                json!({ "kind": "strong", "content": [{ "kind": "text", "text": format!("{}:", listed(&names)) }] });
            out.push(json!({ "kind": "paragraph", "content": [name] }));
            out.extend(row.iter().map(|block| (*block).clone()));
        }
        out
    }

    fn inline(&self, all: &[&Value], held: &[(usize, &Value)]) -> Value {
        self.try_merge(all).unwrap_or_else(|| self.choice(all, held.iter().map(|(size, _)| *size)))
    }

    /// Values laid over one another; the first one where they cannot be.
    fn any(&self, all: &[&Value]) -> Value {
        self.try_merge(all).unwrap_or_else(|| all.first().map(|one| (*one).clone()).unwrap_or_default())
    }

    /// Values of one build laid over one another; `None` where they differ in more than figures and
    /// choices.
    fn try_merge(&self, all: &[&Value]) -> Option<Value> {
        let first = *all.first()?;
        if all.iter().all(|one| *one == first) {
            return Some(first.clone());
        }
        let kind = first["kind"].as_str();
        if kind == Some("choice") && all.iter().all(|one| one["kind"].as_str() == kind) {
            let contents: Vec<&Value> = all.iter().map(|one| &one["content"]).collect();
            return Some(match self.try_merge(&contents) {
                Some(content) => json!({ "kind": "choice", "content": content }),
                None => json!({ "kind": "choice", "content": self.choice(&contents, 0..self.names.len()) }),
            });
        }
        if is_figures(first) && all.iter().all(|one| is_figures(one)) {
            return Some(figures(all));
        }
        if kind == Some("reference") && all.iter().all(|one| one["to"] == first["to"]) {
            return Some(first.clone());
        }
        match first {
            Value::Array(items) => {
                let length = items.len();
                if all.iter().any(|one| list(one).len() != length || !one.is_array()) {
                    return None;
                }
                let merged: Option<Vec<Value>> = (0..length)
                    .map(|at| self.try_merge(&all.iter().map(|one| &list(one)[at]).collect::<Vec<_>>()))
                    .collect();
                merged.map(Value::Array)
            }
            Value::Object(fields) => {
                let mut merged = Map::new();
                for key in fields.keys() {
                    let values: Vec<&Value> = all.iter().map(|one| &one[key.as_str()]).collect();
                    // A diagram is one size's until the drawings themselves are merged.
                    let value = match key.as_str() {
                        "path" | "width" | "height" => first[key.as_str()].clone(),
                        "alt" | "extra" if values.iter().all(|one| one.is_string()) => {
                            let words: Vec<&str> = values.iter().filter_map(|one| one.as_str()).collect();
                            json!(super::drawings::in_a_row(&words))
                        }
                        _ => self.try_merge(&values)?,
                    };
                    merged.insert(key.clone(), value);
                }
                Some(Value::Object(merged))
            }
            _ => None,
        }
    }

    /// "Small: twice; Medium and Large: three times", as runs of words.
    fn choice(&self, contents: &[&Value], sizes: impl Iterator<Item = usize>) -> Value {
        let mut groups: Vec<(Vec<&str>, &Value)> = Vec::new();
        for (content, size) in contents.iter().copied().zip(sizes) {
            match groups.iter_mut().find(|(_, known)| *known == content) {
                Some((names, _)) => names.push(self.names[size]),
                None => groups.push((vec![self.names[size]], content)),
            }
        }
        let mut out = Vec::new();
        for (at, (names, content)) in groups.iter().enumerate() {
            let before = if at > 0 { "; " } else { "" };
            out.push(json!({ "kind": "text", "text": format!("{before}{}: ", listed(names)) }));
            if list(content).is_empty() {
                out.push(json!({ "kind": "text", "text": "–" }));
            }
            out.extend(list(content).iter().cloned());
        }
        json!(out)
    }

    /// Rows of a list, the nth of each size together.
    fn rows(&self, data: &[&Value], of: impl Fn(&Value) -> &Value, merge: impl Fn(&[&Value]) -> Value) -> Vec<Value> {
        let longest = data.iter().map(|one| list(of(one)).len()).max().unwrap_or(0);
        (0..longest).map(|at| merge(&data.iter().filter_map(|one| list(of(one)).get(at)).collect::<Vec<_>>())).collect()
    }

    /// Table rows, matched by a key, with the sizes as columns.
    fn columns(&self, data: &[&Value], of: impl Fn(&Value) -> &Value, wide: &[&str], key: &str) -> Value {
        let mut rows = Vec::new();
        for id in order(data, |one| list(of(one)), key) {
            let mut row = Value::Null;
            for one in data {
                if let Some(found) = list(of(one)).iter().find(|row| row[key] == json!(id)) {
                    row = found.clone();
                    break;
                }
            }
            for field in wide {
                let cells: Vec<Value> = data
                    .iter()
                    .map(|one| {
                        let found = list(of(one)).iter().find(|row| row[key] == json!(id));
                        found.map_or(Value::Null, |row| {
                            let cell = row[*field][0].clone();
                            // What is reckoned from a layout stands by its first width.
                            if cell.is_null() { row["by_width"][0].clone() } else { cell }
                        })
                    })
                    .collect();
                row[*field] = json!(cells);
            }
            rows.push(row);
        }
        json!(rows)
    }

    fn pieces(&self, data: &[&Value]) -> Value {
        let mut fabrics = Vec::new();
        for id in order(data, |one| list(&one["pieces"]["fabrics"]), "id") {
            let held = holders(data, |one| list(&one["pieces"]["fabrics"]), "id", &id);
            let mut fabric = held.first().map(|(_, fabric)| (*fabric).clone()).unwrap_or_default();
            let all: Vec<Value> = (0..data.len())
                .map(|size| {
                    held.iter().find(|(at, _)| *at == size).map_or(json!({ "rows": [] }), |(_, one)| (*one).clone())
                })
                .collect();
            let all: Vec<&Value> = all.iter().collect();
            fabric["rows"] = self.columns(&all, |one| &one["rows"], &["dimensions"], "id");
            fabrics.push(fabric);
        }
        json!(fabrics)
    }

    /// Allowances that all sizes share, and those of some.
    fn allowances(&self, data: &[&Value]) -> Value {
        let mut found: Vec<Value> = Vec::new();
        for entry in data.iter().flat_map(|one| list(&one["allowances"])) {
            match found.iter_mut().find(|known| known["value"] == entry["value"]) {
                Some(known) => {
                    let mut steps = list(&known["steps"]).to_vec();
                    for step in list(&entry["steps"]) {
                        if !steps.iter().any(|known| known["id"] == step["id"]) {
                            steps.push(step.clone());
                        }
                    }
                    known["steps"] = json!(steps);
                }
                None => found.push(entry.clone()),
            }
        }
        json!(found)
    }
}

/// References and lists of steps with the numbers of this edition.
fn renumber(value: &mut Value, numbers: &BTreeMap<String, usize>) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(|item| renumber(item, numbers)),
        Value::Object(fields) => {
            let to = fields.get("to").and_then(Value::as_str).map(str::to_owned);
            if let (Some(to), Some(Value::String(text))) = (to, fields.get_mut("text")) {
                let id = to.strip_prefix("step-").or(to.strip_prefix("figure-"));
                if let Some(number) = id.and_then(|id| numbers.get(id)) {
                    let digits = text.trim_end_matches(|letter: char| letter.is_ascii_digit()).len();
                    // Only the usual words end in the step's number after a no-break space.
                    if text[..digits].ends_with('\u{a0}') {
                        *text = format!("{}{number}", &text[..digits]);
                    }
                }
            }
            let known = fields.get("id").and_then(Value::as_str).and_then(|id| numbers.get(id)).copied();
            if let (Some(number), Some(old)) = (known, fields.get_mut("number")) {
                *old = json!(number);
            }
            fields.values_mut().for_each(|value| renumber(value, numbers));
        }
        _ => {}
    }
}
