//! What is bought, on its way to the templates.

use serde_json::{Value as Json, json};

use super::prose::{amount, value};
use super::setter::Setter;
use crate::book::{Amount, FabricNeed, NotionNeed};

/// Something to look for, with its address where it is one.
fn sought(line: &str) -> Json {
    let web = line.starts_with("https://") || line.starts_with("http://");
    json!({ "text": line, "url": web.then_some(line) })
}

impl Setter<'_> {
    pub fn fabric(&self, fabric: &FabricNeed) -> Json {
        let widths = fabric.widths.iter().map(|width| {
            json!({
                "width": width.width.as_ref().map(value),
                "amounts": width.amounts.iter().map(|one| one.as_ref().map(amount)).collect::<Vec<_>>(),
            })
        });
        json!({
            "id": fabric.id,
            "name": fabric.name,
            "notes": self.notes(&fabric.note),
            "search": fabric.search.iter().map(|line| sought(line)).collect::<Vec<_>>(),
            "instead": self.notes(&fabric.instead),
            "widths": widths.collect::<Vec<_>>(),
            "sizes": fabric.needed().iter().map(|needs| needs.then_some(true)).collect::<Vec<_>>(),
        })
    }

    pub fn notion(&self, notion: &NotionNeed) -> Json {
        let amounts = notion.amounts.iter().map(|need| {
            let figure = |one: &Option<Amount>| one.as_ref().map(amount);
            need.as_ref().map(|need| {
                json!({
                    "count": need.count,
                    "length": figure(&need.length),
                    "amount": figure(&need.amount),
                    "width": figure(&need.width),
                    "size": figure(&need.size),
                })
            })
        });
        json!({
            "id": notion.id,
            "name": notion.name,
            "notes": self.notes(&notion.note),
            "search": notion.search.iter().map(|line| sought(line)).collect::<Vec<_>>(),
            "instead": self.notes(&notion.instead),
            "estimated": notion.estimated,
            "amounts": amounts.collect::<Vec<_>>(),
        })
    }
}
