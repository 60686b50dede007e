//! The one hand that writes markup: words made safe for it, and lines as path data.

/// Words as they may stand in markup, between tags and inside quotes alike.
pub(crate) fn escape(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&apos;"),
            letter => out.push(letter),
        }
    }
    out
}

/// Path data with a thousandth of a millimetre.
pub(crate) fn svg_data(path: &kurbo::BezPath) -> String {
    use kurbo::PathEl::{ClosePath, CurveTo, LineTo, MoveTo, QuadTo};
    let point = |point: kurbo::Point| format!("{} {}", number(point.x), number(point.y));
    path.elements()
        .iter()
        .map(|element| match element {
            MoveTo(to) => format!("M{}", point(*to)),
            LineTo(to) => format!("L{}", point(*to)),
            QuadTo(first, to) => format!("Q{} {}", point(*first), point(*to)),
            CurveTo(first, second, to) => format!("C{} {} {}", point(*first), point(*second), point(*to)),
            ClosePath => "Z".to_owned(),
        })
        .collect::<Vec<_>>()
        .join("")
}

fn number(value: f64) -> String {
    let written = format!("{value:.3}");
    let written = written.trim_end_matches('0').trim_end_matches('.');
    if written == "-0" { "0".to_owned() } else { written.to_owned() }
}
