//! The pages of the checks, one by one and gathered into the reference.

use super::table::CHECKS;
use crate::diag::Group;

/// The reference of all checks, as Markdown.
pub fn reference() -> String {
    let mut text =
        String::from("# The checks\n\nMade by `notchbook explain --all` from the pages of the checks themselves.\n");
    for group in Group::ALL {
        text.push_str(&format!("\n## {}\n", group.name()));
        for check in CHECKS.iter().filter(|check| check.group == *group) {
            let page = deeper(&check.explanation());
            text.push_str(&format!("\n{}\n", page.trim_end()));
        }
    }
    text
}

/// A page two levels down: its headings follow suit, `#` in its examples stays.
fn deeper(page: &str) -> String {
    let mut fence: Option<&str> = None;
    let mut lines = Vec::new();
    for line in page.lines() {
        let ticks = &line[..line.len() - line.trim_start_matches('`').len()];
        let heading = fence.is_none() && line.trim_start_matches('#').starts_with(' ') && line.starts_with('#');
        match fence {
            None if ticks.len() >= 3 => fence = Some(ticks),
            Some(open) if line == open => fence = None,
            _ => {}
        }
        lines.push(if heading { format!("##{line}") } else { line.to_owned() });
    }
    lines.join("\n")
}
