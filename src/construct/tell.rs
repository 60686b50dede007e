//! The state of the work in words, for those who want to look over the player's shoulder.

use super::cast::Target;
use super::play::History;
use crate::resolve::Edition;

/// What is cut, sewn, open and raw after the last step that was played, a line each.
pub fn tell(edition: &Edition<'_>, history: &History) -> Vec<String> {
    let state = &history.state;
    let name = |copy: usize| history.cast.members[copy].name.clone();
    let facts = &edition.draft.facts;
    let spoken = |target: &Target| match target {
        Target::Copy(copy) => name(*copy),
        Target::Edge(copy, edge) => format!("{}.{edge}", name(*copy)),
        Target::Notion(notion) => facts.notions[*notion].id.text.clone(),
        Target::NotionEdge(notion, edge) => format!("{}.{edge}", facts.notions[*notion].id.text),
        Target::Unknown => "something unknown".into(),
    };
    let mut lines = Vec::new();
    let mut cut: Vec<String> = Vec::new();
    for (at, copy) in state.copies.iter().enumerate() {
        if copy.cut.is_some() && !cut.contains(&name(at)) {
            cut.push(name(at));
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
            lines.push(format!("{word} in step {}: {}.{edge}", moment.step, name(*copy)));
        }
    }
    for (at, notion) in facts.notions.iter().enumerate() {
        if state.notion_edges.keys().any(|(known, _)| *known == at) {
            let shut = if state.open_zips.contains(&at) { "open" } else { "shut" };
            lines.push(format!("{}: {shut}", notion.id.text));
        }
    }
    let turned: Vec<String> =
        state.copies.iter().enumerate().filter(|(_, copy)| copy.turned.is_some()).map(|(at, _)| name(at)).collect();
    if !turned.is_empty() {
        lines.push(format!("turned: {}", turned.join(", ")));
    }
    let mut raw: Vec<String> = Vec::new();
    for (at, _) in state.copies.iter().enumerate().filter(|(_, copy)| copy.cut.is_some() && copy.handled) {
        let Some(shape) = edition.values.shape(history.cast.members[at].piece) else { continue };
        for edge in shape.edges() {
            if !state.is_settled(at, &edge.name) {
                raw.push(format!("{}.{}", name(at), edge.name));
            }
        }
    }
    lines.push(format!("still raw: {}", or_nothing(&raw)));
    lines
}

fn or_nothing(names: &[String]) -> String {
    if names.is_empty() { "nothing".into() } else { names.join(", ") }
}
