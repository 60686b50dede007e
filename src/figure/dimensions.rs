//! Whether the figure beside a dimension line is the length that is drawn.

use std::ops::Range;

use kurbo::{Affine, BezPath, Line, ParamCurveArclen, ParamCurveNearest, PathEl, Point};
use roxmltree::{Document, Node};

use super::bind::Bound;
use super::drawing::Drawing;
use super::markup::tag_length;
use crate::diag::Findings;
use crate::faults::LABEL_DIFFERS;
use crate::measure::{Dimension, Exact, Quantity, ratio, to_f64};
use crate::model::{Brace, Size};
use crate::resolve::{Edition, Scope, Worked};
use crate::source::Span;
use crate::syntax::{brace_groups, read_brace};

/// How far the drawn length may be from the stated one, as a share of it and in mm of cloth: what a drawing is
/// rounded to.
const SHARE: f64 = 0.005;
const LEAST: f64 = 0.6;
/// How far a label may stand from its line, in units of the drawing.
const REACH: f64 = 8.0;
/// How far the two labels of a pair may be from each other.
const PAIR: f64 = 5.0;
/// How wide a letter of a label is, roughly, in units of the drawing.
const LETTER: f64 = 1.5;

/// One diagram bound to one size.
pub(super) struct Ruled<'a, 'b> {
    /// As its author drew it.
    pub drawing: &'a Drawing,
    /// Its text with all formulas worked out.
    pub bound: &'a Bound,
    /// The names that its formulas use.
    pub scope: &'a Scope<'b>,
    /// The sizes.
    pub sizes: &'a [Size],
    /// The size.
    pub edition: &'a Edition<'b>,
}

/// A length that stands alone on a drawing.
struct Label {
    /// Their middle.
    at: Point,
    /// The length in mm.
    stated: f64,
    /// Its place.
    span: Span,
    /// Whether they print it in one system alone.
    of_pair: bool,
}

/// A length that is printed, and the braces that print it.
type Printed = (f64, Span);

impl Ruled<'_, '_> {
    /// Compares each dimension line whose ends are formulas with the figures written right after it; with those
    /// right before it too, since some write the label first.
    pub fn compare(&self, document: &Document<'_>, findings: &mut Findings) {
        let lines = document.descendants().filter(|node| has_class(*node, "dimension") && self.follows_sizes(*node));
        for line in lines {
            let Some((from, to)) = ends(line) else { continue };
            let drawn = from.distance(to) * to_f64(self.drawing.unit) * to_f64(self.drawing.scale(self.edition.size()));
            let after = self.figures(line, |node| node.next_sibling_element());
            let before = self.figures(line, |node| node.prev_sibling_element());
            let near = |(stated, _): &Printed| (stated - drawn).abs() <= LEAST.max(SHARE * drawn);
            // A slanting line that is drawn by the very names of its figure is foreshortened on purpose.
            let slants = (to.x - from.x).abs().min((to.y - from.y).abs()) > 0.01 * from.distance(to);
            let own = if slants { self.names(line) } else { Vec::new() };
            let meant = |(_, span): &Printed| {
                let names = words(self.drawing.text.text.get(span.range()).unwrap_or(""));
                !names.is_empty() && names.iter().all(|name| own.contains(name))
            };
            let fits = after.iter().chain(&before).any(|figure| near(figure) || meant(figure));
            let alone = after.is_empty() && before.is_empty() && !slants;
            let beside = || self.beside(document, line, drawn).filter(|_| alone);
            let Some((stated, span)) = after.first().copied().filter(|_| !fits).or_else(beside) else { continue };
            let told = |millimetres: f64| {
                // A figure to look at: to a tenth of a millimetre, and far below what could not be held.
                let value = ratio((millimetres * 10.0).round() as i128, 10).unwrap_or(Exact::ONE);
                let quantity = Quantity { value, dimension: Dimension::Length };
                self.edition.figures(&Worked { quantity, stated: None }).first.to_string()
            };
            findings.push(
                LABEL_DIFFERS
                    .at(
                        span,
                        format!(
                            "the line beside this figure is {} long, and the figure says {}",
                            told(drawn),
                            told(stated)
                        ),
                    )
                    .hint("name in the figure what the line measures, or draw the line as long as the figure says")
                    .in_size(self.edition.size(), ""),
            );
        }
    }

    /// The figure of a label that no line explains and that lies nearest to a line that no label explains: how they belong
    /// together where they do not stand side by side in the file.
    fn beside(&self, document: &Document<'_>, line: Node<'_, '_>, drawn: f64) -> Option<Printed> {
        let of_cloth = to_f64(self.drawing.unit) * to_f64(self.drawing.scale(self.edition.size()));
        let lines: Vec<(Node<'_, '_>, Line)> = document
            .descendants()
            .filter(|node| has_class(*node, "dimension"))
            .filter_map(|node| Some((node, placed(node, ends(node)?)?)))
            .collect();
        let (_, own) = lines.iter().find(|(node, _)| *node == line)?;
        let labels = document.descendants().filter(|node| node.tag_name().name() == "text");
        let labels: Vec<Label> = labels.filter_map(|node| self.label(node)).collect();
        let near = |stated: f64, length: f64| (stated - length).abs() <= LEAST.max(SHARE * length);
        let far = |line: &Line, point: Point| line.nearest(point, 1e-3).distance_sq.sqrt();
        let unexplained = |label: &&Label| {
            let explained = lines.iter().any(|(_, line)| near(label.stated, line.arclen(1e-3) * of_cloth));
            let nearer = lines.iter().any(|(node, other)| *node != line && far(other, label.at) < far(own, label.at));
            !explained && !nearer
        };
        let reached = || labels.iter().filter(|label| far(own, label.at) <= REACH);
        // Of a pair that is written in two lines, one in each system, one may be of another length.
        if let Some(fits) = reached().find(|label| near(label.stated, drawn)) {
            let twin = |label: &&Label| fits.of_pair && label.of_pair && (label.at - fits.at).hypot() <= PAIR;
            return labels.iter().filter(twin).find(unexplained).map(|label| (label.stated, label.span));
        }
        let nearest = reached().min_by(|one, other| far(own, one.at).total_cmp(&far(own, other.at)))?;
        unexplained(&nearest).then_some((nearest.stated, nearest.span))
    }

    /// A label with one length in it, and nothing else.
    fn label(&self, node: Node<'_, '_>) -> Option<Label> {
        let range = node.descendants().find(Node::is_text)?.range();
        let source = self.drawing.text.text.get(self.bound.source(range.clone()))?;
        let groups = brace_groups(source).ok()?;
        let [group] = groups.as_slice() else { return None };
        let start = self.bound.source(range).start;
        let place = start + group.start..start + group.end;
        let span = self.drawing.text.at(place.clone());
        let mut told = Findings::default();
        let Brace::Print { value, filter, .. } = read_brace(&self.drawing.text, place, self.sizes, &mut told) else {
            return None;
        };
        let worked = self.scope.work_out(&value, &mut told)?;
        let stated = (worked.quantity.dimension == Dimension::Length).then(|| to_f64(worked.quantity.value))?;
        let mut rest = source.to_owned();
        rest.replace_range(group.clone(), "");
        let number = |name: &str| node.attribute(name).map_or(Some(0.0), |value| value.trim().parse::<f64>().ok());
        // Its words run to one side of the point that it is anchored at.
        let written = node.text().unwrap_or("").trim().chars().count();
        let half = f64::from(u32::try_from(written).unwrap_or(0)) * LETTER / 2.0;
        let shift = match node.attribute("text-anchor") {
            Some("middle") => 0.0,
            Some("end") => -half,
            _ => half,
        };
        let at = moved(node)? * Point::new(number("x")? + shift, number("y")?);
        // "Fold {seam}" may be said of anything.
        let plain = !rest.chars().any(char::is_alphanumeric);
        plain.then(|| Label { at, stated, span, of_pair: filter.is_some() })
    }

    /// Whether the author drew it by formulas; what is drawn by hand may be broken off or out of scale.
    fn follows_sizes(&self, node: Node<'_, '_>) -> bool {
        let start = node.range().start;
        let tag = start..start + tag_length(&self.bound.text[start..]);
        let scaled = node.ancestors().filter_map(|node| node.attribute("transform"));
        let plain = scaled
            .into_iter()
            .all(|transform| !["scale", "matrix", "skew"].iter().any(|word| transform.contains(word)));
        plain && self.source(tag).contains('{')
    }

    /// The names in the formulas of an element's attributes.
    fn names(&self, node: Node<'_, '_>) -> Vec<String> {
        let start = node.range().start;
        words(self.source(start..start + tag_length(&self.bound.text[start..])))
    }

    fn source(&self, range: Range<usize>) -> &str {
        self.drawing.text.text.get(self.bound.source(range)).unwrap_or("")
    }

    /// The lengths printed by the words beside a line, where these are nothing but figures.
    fn figures<'n>(&self, line: Node<'n, 'n>, step: impl Fn(Node<'n, 'n>) -> Option<Node<'n, 'n>>) -> Vec<Printed> {
        let mut found = Vec::new();
        let mut at = step(line);
        while let Some(node) = at.filter(|node| node.tag_name().name() == "text") {
            let Some(mut printed) = self.printed(node) else { break };
            found.append(&mut printed);
            at = step(node);
        }
        found
    }

    /// `None` where other words stand among the figures.
    fn printed(&self, node: Node<'_, '_>) -> Option<Vec<Printed>> {
        let mut found = Vec::new();
        for text in node.descendants().filter(Node::is_text) {
            let range = self.bound.source(text.range());
            let source = self.drawing.text.text.get(range.clone())?;
            let groups = brace_groups(source).ok()?;
            let mut rest = source.to_owned();
            for group in groups.iter().rev() {
                rest.replace_range(group.clone(), "");
                let place = range.start + group.start..range.start + group.end;
                let span = self.drawing.text.at(place.clone());
                // Faults of the braces are told where the diagram is bound.
                let mut told = Findings::default();
                let Brace::Print { value, .. } = read_brace(&self.drawing.text, place, self.sizes, &mut told) else {
                    return None;
                };
                let worked = self.scope.work_out(&value, &mut told)?;
                if worked.quantity.dimension != Dimension::Length {
                    return None;
                }
                found.push((to_f64(worked.quantity.value), span));
            }
            if rest.chars().any(char::is_alphanumeric) {
                return None;
            }
        }
        found.reverse();
        Some(found)
    }
}

/// The names inside the braces of a text, units and numbers left out.
fn words(text: &str) -> Vec<String> {
    let inside = text.split('{').skip(1).filter_map(|rest| rest.split('}').next());
    let formulas = inside.map(|formula| formula.split('|').next().unwrap_or(""));
    let words = formulas
        .flat_map(|formula| formula.split(|letter: char| !letter.is_alphanumeric() && !matches!(letter, '_' | '.')));
    let named = words.filter(|word| word.starts_with(char::is_alphabetic) && !["mm", "cm", "m", "in"].contains(word));
    named.map(str::to_owned).collect()
}

/// A line where it lies in the drawing.
fn placed(node: Node<'_, '_>, (from, to): (Point, Point)) -> Option<Line> {
    let moved = moved(node)?;
    Some(Line::new(moved * from, moved * to))
}

/// Where all `transform` above an element move it; `None` where one of them does more than move and turn.
fn moved(node: Node<'_, '_>) -> Option<Affine> {
    let all: Vec<&str> = node.ancestors().filter_map(|node| node.attribute("transform")).collect();
    let mut moved = Affine::IDENTITY;
    for transform in all.into_iter().rev() {
        for one in transform.split(')').map(str::trim).filter(|one| !one.is_empty()) {
            let (what, figures) = one.split_once('(')?;
            let figures = figures.split(|letter: char| letter == ',' || letter.is_whitespace());
            let figures: Vec<f64> =
                figures.filter(|figure| !figure.is_empty()).map(|figure| figure.parse().ok()).collect::<Option<_>>()?;
            moved *= match (what.trim(), figures.as_slice()) {
                ("translate", [across]) => Affine::translate((*across, 0.0)),
                ("translate", [across, down]) => Affine::translate((*across, *down)),
                ("rotate", [angle]) => Affine::rotate(angle.to_radians()),
                ("rotate", [angle, across, down]) => {
                    Affine::rotate_about(angle.to_radians(), Point::new(*across, *down))
                }
                _ => return None,
            };
        }
    }
    Some(moved)
}

fn has_class(node: Node<'_, '_>, class: &str) -> bool {
    node.attribute("class").is_some_and(|classes| classes.split_whitespace().any(|own| own == class))
}

/// The ends of a line or of a path that is one straight stroke, in units of the drawing.
fn ends(node: Node<'_, '_>) -> Option<(Point, Point)> {
    let number = |name: &str| node.attribute(name).map_or(Some(0.0), |value| value.trim().parse::<f64>().ok());
    match node.tag_name().name() {
        "line" => Some((Point::new(number("x1")?, number("y1")?), Point::new(number("x2")?, number("y2")?))),
        "path" => {
            let path = BezPath::from_svg(node.attribute("d")?).ok()?;
            let [PathEl::MoveTo(from), PathEl::LineTo(to)] = path.elements() else { return None };
            Some((*from, *to))
        }
        _ => None,
    }
}
