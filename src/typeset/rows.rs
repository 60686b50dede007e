//! Rows of several sizes' data, matched and laid side by side: the small change of a combined booklet.

use serde_json::{Value, json};

/// Figures in a row: `20 (26, 32) cm`, in each system.
pub(super) fn figures(all: &[&Value]) -> Value {
    let system = |key: &str| -> Value {
        let parts: Vec<&Value> = all.iter().map(|one| &one[key]).collect();
        if parts.iter().any(|part| part.is_null()) {
            return Value::Null;
        }
        if parts.iter().all(|part| *part == parts[0]) {
            return parts[0].clone();
        }
        let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
        let one_unit = parts.iter().all(|part| part["unit"] == parts[0]["unit"]);
        let numbers: Vec<String> = parts
            .iter()
            .map(|part| match one_unit {
                true => text(&part["number"]),
                false => format!("{}\u{a0}{}", text(&part["number"]), text(&part["unit"])),
            })
            .collect();
        let (first, rest) = (numbers[0].clone(), numbers[1..].join(", "));
        let unit = if one_unit { text(&parts[0]["unit"]) } else { String::new() };
        json!({ "number": format!("{first} ({rest})"), "unit": unit })
    };
    json!({ "first": system("first"), "second": system("second"), "row": true })
}

pub(super) fn is_figures(value: &Value) -> bool {
    value["first"].get("number").is_some()
}

pub(super) fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// The ids of all sizes' rows, in an order that keeps each size's own.
pub(super) fn order<'v>(data: &[&'v Value], of: impl Fn(&'v Value) -> &'v [Value], key: &str) -> Vec<String> {
    let mut ids: Vec<String> = Vec::new();
    for one in data {
        let mut after = 0;
        for row in of(one) {
            let id = row[key].as_str().unwrap_or_default().to_owned();
            match ids.iter().position(|known| *known == id) {
                Some(at) => after = at + 1,
                None => {
                    ids.insert(after, id);
                    after += 1;
                }
            }
        }
    }
    ids
}

/// The sizes that have a row, each with it.
pub(super) fn holders<'v>(
    data: &[&'v Value],
    of: impl Fn(&'v Value) -> &'v [Value],
    key: &str,
    id: &str,
) -> Vec<(usize, &'v Value)> {
    data.iter()
        .enumerate()
        .filter_map(|(size, one)| Some((size, of(one).iter().find(|row| row[key] == json!(id))?)))
        .collect()
}

pub(super) fn union(data: &[&Value], of: impl Fn(&Value) -> &Value, key: &str) -> Value {
    let mut found: Vec<Value> = Vec::new();
    for row in data.iter().flat_map(|one| list(of(one))) {
        if !found.iter().any(|known| known[key] == row[key]) {
            found.push(row.clone());
        }
    }
    json!(found)
}

pub(super) fn side_by_side(data: &[&Value], key: &str) -> Value {
    let columns: Vec<Value> = data
        .iter()
        .flat_map(|one| list(&one[key]))
        .map(|column| {
            let mut column = column.clone();
            column["own"] = json!(false);
            column
        })
        .collect();
    json!(columns)
}

/// "Small", "Small and Medium", "Small, Medium and Large".
pub(super) fn listed(names: &[&str]) -> String {
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => names.concat(),
    }
}
