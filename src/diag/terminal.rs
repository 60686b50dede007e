//! Findings for people: the excerpt with its marks, the fact, the act, the sizes.

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level as Shade, Origin, Renderer, Snippet};

use super::finding::Finding;
use super::level::Level;
use super::sink::Report;
use super::spoken::listed;
use super::visible::visible;
use crate::limits::thousands;
use crate::source::{Sources, Span};

/// The longest line that is shown whole, in bytes; of a longer one only its neighbourhood.
const LONG_LINE: usize = 400;
/// The most lines of one excerpt.
const MOST_LINES: usize = 6;

/// How findings are drawn.
pub struct Terminal {
    renderer: Renderer,
}

impl Terminal {
    /// Marks in plain characters when `colour` is false.
    pub fn new(colour: bool) -> Terminal {
        let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
        Terminal { renderer: renderer.decor_style(DecorStyle::Unicode).term_width(100) }
    }

    /// One finding with its excerpt; ends without a line end.
    pub fn show(&self, finding: &Finding, sources: &Sources, sizes: &[String]) -> String {
        let shade = match finding.level() {
            Level::Error => Shade::ERROR,
            Level::Warning => Shade::WARNING,
        };
        let title = shade.primary_title(visible(&finding.message)).id(finding.code());
        let mut group = excerpt(Group::with_title(title), sources, finding);
        for detail in details(finding, sizes) {
            group = group.element(Shade::NOTE.with_name(Some("size")).message(visible(&detail).into_owned()));
        }
        if !finding.sizes.is_empty() && details(finding, sizes).is_empty() {
            group = group
                .element(Shade::NOTE.with_name(Some("in")).message(visible(&name_sizes(finding, sizes)).into_owned()));
        }
        if !finding.hint.is_empty() {
            group = group.element(Shade::HELP.with_name(Some("do")).message(visible(&finding.hint)));
        }
        self.renderer.render(&[group])
    }
}

/// What differs by size, a line each: "small: 20 cm is less than 22 cm".
pub(super) fn details(finding: &Finding, sizes: &[String]) -> Vec<String> {
    finding
        .sizes
        .iter()
        .filter(|(_, detail)| !detail.is_empty())
        .map(|(index, detail)| match sizes.get(*index) {
            Some(name) => format!("{name}: {detail}"),
            None => detail.clone(),
        })
        .collect()
}

fn name_sizes(finding: &Finding, sizes: &[String]) -> String {
    let names: Vec<&str> =
        finding.sizes.iter().filter_map(|(index, _)| sizes.get(*index).map(String::as_str)).collect();
    format!("{} {}", if names.len() > 1 { "sizes" } else { "size" }, listed(&names))
}

fn excerpt<'a>(group: Group<'a>, sources: &'a Sources, finding: &'a Finding) -> Group<'a> {
    let file = sources.file(finding.span.file);
    let place = sources.place(finding.span);
    if file.text.is_empty() {
        return group.element(Origin::path(visible(&file.path)));
    }
    let Some(window) = Window::around(sources, finding.span) else {
        let origin = Origin::path(visible(&file.path)).line(place.line).char_column(place.column);
        return group.element(origin);
    };
    // A cut line would be counted from where it is cut: then the true place is named by itself.
    let mut group = group;
    let mut snippet = Snippet::source(visible(window.text)).line_start(window.line).fold(true);
    if window.cut {
        group = group.element(Origin::path(visible(&file.path)).line(place.line).char_column(place.column));
    } else {
        snippet = snippet.path(visible(&file.path));
    }
    snippet =
        snippet.annotation(AnnotationKind::Primary.span(window.range(finding.span)).label(visible(&finding.label)));
    let (near, far): (Vec<_>, Vec<_>) = finding.notes.iter().partition(|(span, _)| window.covers(*span));
    for (span, label) in near {
        snippet = snippet.annotation(AnnotationKind::Context.span(window.range(*span)).label(visible(label)));
    }
    group = group.element(snippet);
    for (span, label) in far {
        if let Some(window) = Window::around(sources, *span) {
            let snippet = Snippet::source(visible(window.text))
                .line_start(window.line)
                .path(visible(&sources.file(span.file).path))
                .annotation(AnnotationKind::Context.span(window.range(*span)).label(visible(label)));
            group = group.element(snippet);
        }
    }
    group
}

/// The lines round a span.
struct Window<'a> {
    text: &'a str,
    start: usize,
    file: crate::source::FileId,
    line: usize,
    cut: bool,
}

impl<'a> Window<'a> {
    fn around(sources: &'a Sources, span: Span) -> Option<Window<'a>> {
        let file = sources.file(span.file);
        let place = sources.place(span);
        let first = file.line_range(place.line)?;
        let last_line = place.end_line.min(place.line + MOST_LINES - 1);
        let last = file.line_range(last_line)?;
        let (mut start, mut end) = (first.start, last.end.max(first.end));
        let cut = end - start > LONG_LINE * MOST_LINES || first.len() > LONG_LINE;
        if cut {
            start = floor_char(&file.text, (span.start as usize).saturating_sub(40).max(start));
            end = floor_char(&file.text, (span.start as usize + 80).min(end));
        }
        let text = file.text.get(start..end)?;
        (!text.is_empty()).then_some(Window { text, start, file: span.file, line: place.line, cut })
    }

    fn covers(&self, span: Span) -> bool {
        span.file == self.file && span.start as usize >= self.start && span.end as usize <= self.start + self.text.len()
    }

    fn range(&self, span: Span) -> std::ops::Range<usize> {
        let start = (span.start as usize).clamp(self.start, self.start + self.text.len()) - self.start;
        let end = (span.end as usize).clamp(self.start, self.start + self.text.len()) - self.start;
        // Places in the text as it is shown, which is longer where hidden letters are made visible.
        let shown = |at: usize| self.text.get(..at).map_or(at, |before| visible(before).len());
        shown(start)..shown(end.max(start))
    }
}

fn floor_char(text: &str, mut at: usize) -> usize {
    while at > 0 && !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// The last line of a run: how many findings of which level.
pub fn summary(report: &Report) -> String {
    let count = |number: usize, one: &str, many: &str| match number {
        1 => format!("1 {one}"),
        number => format!("{} {many}", thousands(number)),
    };
    let mut line =
        format!("{}, {}", count(report.errors(), "error", "errors"), count(report.warnings(), "warning", "warnings"));
    if !report.waived.is_empty() {
        line = format!("{line}, {} waived", report.waived.len());
    }
    line
}
