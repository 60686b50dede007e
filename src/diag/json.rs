//! Findings for other programs: one JSON object a line.

use serde_json::json;

use super::finding::Finding;
use super::visible::visible_json;
use crate::source::Sources;

/// One finding as a line of JSON, without the line end. Lines and columns count from 1, columns
/// in characters; `sizes` holds the ids of the sizes concerned and is empty when it is all.
pub fn to_json(finding: &Finding, sources: &Sources, sizes: &[String]) -> String {
    let place = sources.place(finding.span);
    let names: Vec<&str> =
        finding.sizes.iter().filter_map(|(index, _)| sizes.get(*index).map(String::as_str)).collect();
    let mut message = finding.message.clone();
    let details = super::terminal::details(finding, sizes);
    if !details.is_empty() {
        message = format!("{message} ({})", details.join("; "));
    }
    let line = json!({
        "code": finding.code(),
        "level": finding.level().word(),
        "message": message,
        "hint": finding.hint,
        "file": sources.file(finding.span.file).path,
        "line": place.line,
        "column": place.column,
        "end_line": place.end_line,
        "end_column": place.end_column,
        "sizes": names,
    });
    visible_json(&line.to_string())
}
