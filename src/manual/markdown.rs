//! Markdown as far as pages need it: headings outside fenced examples, and the first paragraph.

/// The lines of a text, each with whether it stands outside fenced examples.
fn lines(text: &str) -> impl Iterator<Item = (&str, bool)> {
    let mut fence = "";
    text.lines().map(move |line| {
        let ticks = &line[..line.len() - line.trim_start_matches('`').len()];
        let outside = fence.is_empty();
        if outside && ticks.len() >= 3 {
            fence = ticks;
            return (line, false);
        }
        if !outside && line == fence {
            fence = "";
        }
        (line, outside)
    })
}

/// What stands under each heading that begins with `mark`, up to the next such heading.
pub(super) fn under(text: &str, mark: &str) -> Vec<(String, String)> {
    let mut found: Vec<(String, String)> = Vec::new();
    for (line, outside) in lines(text) {
        match line.strip_prefix(mark).filter(|_| outside) {
            Some(heading) => found.push((heading.to_owned(), String::new())),
            None => {
                if let Some((_, body)) = found.last_mut() {
                    body.push_str(line);
                    body.push('\n');
                }
            }
        }
    }
    for (_, body) in &mut found {
        *body = body.trim().to_owned();
    }
    found
}

/// A page further down, by the marks of `levels`: its headings follow suit, `#` in its examples stays.
pub(super) fn deeper(page: &str, levels: &str) -> String {
    let heading = |line: &str| line.starts_with('#') && line.trim_start_matches('#').starts_with(' ');
    let lines: Vec<String> = lines(page)
        .map(|(line, outside)| if outside && heading(line) { format!("{levels}{line}") } else { line.to_owned() })
        .collect();
    lines.join("\n")
}

/// The first paragraph on one line.
pub(super) fn first_paragraph(text: &str) -> String {
    let lines = text.trim_start().lines().take_while(|line| !line.trim().is_empty() && !line.starts_with("```"));
    lines.map(str::trim).collect::<Vec<_>>().join(" ")
}
