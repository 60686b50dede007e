//! SVG path data as runs. The arcs are turned into cubics here, because readers of path data do so
//! to a tenth of a unit, which is enough for a screen and not for cloth.

use crate::limits::SEGMENTS;
use kurbo::{Affine, Arc, CubicBez, Line, PathSeg, Point, QuadBez, SvgArc, Vec2};
use svgtypes::{PathParser, PathSegment};

use super::super::ring::to_path;
use super::edges::ARC_WITHIN;

/// Runs shorter than this, in mm, are left out: programs that draw leave such crumbs behind.
const CRUMB: f64 = 1e-6;

/// The words for path data that draws two lines.
const TWO_LINES: &str = "it holds more than one line";

/// Where the pen is, and what the shortened commands refer back to.
#[derive(Default)]
struct Pen {
    runs: Vec<PathSeg>,
    /// How far a cubic may leave its arc.
    arc_within: f64,
    start: Option<Point>,
    at: Point,
    /// The last control point, when the last command was a cubic.
    cubic: Option<Point>,
    /// The last control point, when the last command was a quadratic.
    quadratic: Option<Point>,
    closed: bool,
}

/// Path data that holds one unbroken line, moved: with `to_mm` from the units of a drawing into mm. Arcs
/// come back as cubics, true to the same hundred-thousandth of a millimetre as everywhere.
///
/// # Errors
/// What is wrong with the data, in words.
pub fn moved_path(data: &str, to_mm: Affine) -> Result<String, String> {
    let [a, b, c, d, ..] = to_mm.as_coeffs();
    // No length grows by more than this on its way.
    let most = (a * a + b * b + c * c + d * d).sqrt();
    let runs = runs_within(data, ARC_WITHIN / most.max(f64::MIN_POSITIVE))?;
    let moved: Vec<PathSeg> = runs.into_iter().map(|run| to_mm * run).collect();
    Ok(to_path(moved.iter(), false).to_svg())
}

/// The runs of path data that holds one unbroken line, or what is wrong with it.
pub(super) fn one_line(data: &str) -> Result<Vec<PathSeg>, String> {
    runs_within(data, ARC_WITHIN)
}

fn runs_within(data: &str, arc_within: f64) -> Result<Vec<PathSeg>, String> {
    let mut pen = Pen { arc_within, ..Pen::default() };
    for segment in PathParser::from(data) {
        pen.draw(segment.map_err(|error| error.to_string())?)?;
        if pen.runs.len() > SEGMENTS.most {
            return Err(SEGMENTS.fact());
        }
    }
    Ok(pen.runs)
}

impl Pen {
    fn draw(&mut self, segment: PathSegment) -> Result<(), String> {
        let (cubic, quadratic) = (self.cubic.take(), self.quadratic.take());
        // What follows the closing would be a second line.
        if self.closed {
            return Err(TWO_LINES.to_owned());
        }
        let at = self.at;
        let place = |abs: bool, x: f64, y: f64| {
            if abs { Point::new(x, y) } else { at + Vec2::new(x, y) }
        };
        match segment {
            PathSegment::MoveTo { abs, x, y } => {
                if !self.runs.is_empty() {
                    return Err(TWO_LINES.to_owned());
                }
                self.at = place(abs, x, y);
                self.start = Some(self.at);
            }
            PathSegment::LineTo { abs, x, y } => self.line(place(abs, x, y)),
            PathSegment::HorizontalLineTo { abs, x } => {
                self.line(Point::new(place(abs, x, 0.0).x, at.y));
            }
            PathSegment::VerticalLineTo { abs, y } => {
                self.line(Point::new(at.x, place(abs, 0.0, y).y));
            }
            PathSegment::CurveTo { abs, x1, y1, x2, y2, x, y } => {
                self.curve(place(abs, x1, y1), place(abs, x2, y2), place(abs, x, y));
            }
            PathSegment::SmoothCurveTo { abs, x2, y2, x, y } => {
                let first = mirrored(at, cubic);
                self.curve(first, place(abs, x2, y2), place(abs, x, y));
            }
            PathSegment::Quadratic { abs, x1, y1, x, y } => {
                self.bow(place(abs, x1, y1), place(abs, x, y));
            }
            PathSegment::SmoothQuadratic { abs, x, y } => {
                self.bow(mirrored(at, quadratic), place(abs, x, y));
            }
            PathSegment::EllipticalArc { abs, rx, ry, x_axis_rotation, large_arc, sweep, x, y } => {
                let to = place(abs, x, y);
                self.arc(SvgArc {
                    from: at,
                    to,
                    radii: Vec2::new(rx.abs(), ry.abs()),
                    x_rotation: x_axis_rotation.to_radians(),
                    large_arc,
                    sweep,
                });
            }
            PathSegment::ClosePath { .. } => {
                self.closed = true;
                self.line(self.start.unwrap_or(at));
            }
        }
        Ok(())
    }

    fn push(&mut self, run: PathSeg, to: Point) {
        let cubic = run.to_cubic();
        let size = (cubic.p1 - cubic.p0).hypot() + (cubic.p2 - cubic.p1).hypot() + (cubic.p3 - cubic.p2).hypot();
        if size > CRUMB {
            self.runs.push(run);
            self.at = to;
        }
    }

    fn line(&mut self, to: Point) {
        self.push(PathSeg::Line(Line::new(self.at, to)), to);
    }

    fn curve(&mut self, first: Point, second: Point, to: Point) {
        self.push(PathSeg::Cubic(CubicBez::new(self.at, first, second, to)), to);
        self.cubic = Some(second);
    }

    fn bow(&mut self, control: Point, to: Point) {
        self.push(PathSeg::Cubic(QuadBez::new(self.at, control, to).raise()), to);
        self.quadratic = Some(control);
    }

    fn arc(&mut self, drawn: SvgArc) {
        // Without a radius the arc is a straight line (SVG 2, section 9.5.1).
        let Some(arc) = Arc::from_svg_arc(&drawn) else {
            self.line(drawn.to);
            return;
        };
        arc.to_cubic_beziers(self.arc_within, |first, second, end| self.curve(first, second, end));
        self.cubic = None;
    }
}

/// The first control point of a smooth curve: the last one of the curve before, on the other side.
fn mirrored(at: Point, control: Option<Point>) -> Point {
    control.map_or(at, |control| at + (at - control))
}
