//! The state of the work in words, for those who want to look over the player's shoulder.

use super::history::History;
use crate::resolve::{CopyId, Edition, NotionId, Touched};

/// What is cut, sewn, open and raw after the last step that was played, a line each.
pub fn tell(edition: &Edition<'_>, history: &History) -> Vec<String> {
    let state = &history.state;
    let name = |copy: CopyId| edition.cast[copy].name.clone();
    let facts = &edition.draft.facts;
    let spoken = |target: &Touched| match target {
        Touched::Copy(copy) => name(*copy),
        Touched::Edge(copy, edge) => edition.edge_name(*copy, *edge),
        Touched::Inside(copy, inside) => edition.inside_name(*copy, *inside),
        Touched::Notion(notion) => facts.notions[*notion].id.text.clone(),
        Touched::ZipEdge(notion, edge) => format!("{}.{}", facts.notions[*notion].id.text, edge.word()),
        Touched::Unknown => "something unknown".into(),
    };
    let mut lines = Vec::new();
    let mut cut: Vec<String> = Vec::new();
    for (copy, member) in edition.cast.copies() {
        if state.copies[copy].cut.is_some() && !cut.contains(&member.name) {
            cut.push(member.name.clone());
        }
    }
    lines.push(format!("cut: {}", or_nothing(&cut)));
    for seam in &state.seams {
        let members: Vec<String> = seam.members.iter().map(&spoken).collect();
        let gap = match seam.gap {
            Some(None) => ", with a gap that is open",
            Some(Some(_)) => ", its gap closed",
            None => "",
        };
        let pressed = if seam.pressed { ", pressed" } else { "" };
        lines.push(format!("sewn in step {}: {}{gap}{pressed}", seam.sewn.step, members.join(" + ")));
    }
    for ((copy, edge), known) in &state.edges {
        if let Some((moment, word)) = known.finished {
            lines.push(format!("{word} in step {}: {}", moment.step, edition.edge_name(*copy, *edge)));
        }
    }
    for (id, notion) in NotionId::each(&facts.notions) {
        if state.zip_edges.keys().any(|(known, _)| *known == id) {
            let shut = if state.open_zips.contains(&id) { "open" } else { "shut" };
            lines.push(format!("{}: {shut}", notion.id.text));
        }
    }
    let turned: Vec<String> = edition
        .cast
        .copies()
        .map(|(copy, _)| copy)
        .filter(|copy| state.copies[*copy].turned.is_some())
        .map(name)
        .collect();
    if !turned.is_empty() {
        lines.push(format!("turned: {}", turned.join(", ")));
    }
    let mut raw: Vec<String> = Vec::new();
    for (copy, _) in edition.cast.copies() {
        if state.copies[copy].cut.is_none() || !state.copies[copy].handled {
            continue;
        }
        for edge in edition.edges_of(copy) {
            if !state.is_settled(copy, edge) {
                raw.push(edition.edge_name(copy, edge));
            }
        }
    }
    lines.push(format!("still raw: {}", or_nothing(&raw)));
    lines
}

fn or_nothing(names: &[String]) -> String {
    if names.is_empty() { "nothing".into() } else { names.join(", ") }
}
