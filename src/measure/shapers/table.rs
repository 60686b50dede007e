//! All formulas of the trade in one table: help pages and formulas of authors walk it.

use super::bias::{bias_joins, bias_length, bias_square};
use super::circle::{circle_hem, circle_radius};
use super::garments::{
    arc_length, bias_round, button_gap, buttonhole_length, casing_depth, dart_leg, dart_width, elastic_length,
    facing_edge, pleat_depth, pleated,
};
use super::strips::{
    binding_double, binding_single, boxed_corner, boxed_depth, boxed_side, gathered, joined_strips, lining_within,
    zip_tape,
};
use crate::measure::exact::Exact;
use crate::measure::unit::Dimension;

/// One formula: how it is written, what it gives, where it comes from.
#[derive(Debug, Clone, Copy)]
pub struct ShaperDoc {
    /// Its name.
    pub name: &'static str,
    /// How it is written, with a word for each argument.
    pub signature: &'static str,
    /// The sum behind it.
    pub formula: &'static str,
    /// Where the sum comes from.
    pub source: &'static str,
    /// What it gives, in one line.
    pub meaning: &'static str,
    /// A use of it that holds, as an expectation is written.
    pub example: &'static str,
    /// What it is given, in order.
    pub arguments: &'static [Argument],
    /// What it gives.
    pub gives: Dimension,
    run: Run,
}

/// One argument of a formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Argument {
    /// The word for it in the signature.
    pub name: &'static str,
    /// A length in mm, an angle in degrees, or a plain number.
    pub dimension: Dimension,
}

#[derive(Debug, Clone, Copy)]
enum Run {
    One(fn(Exact) -> Option<Exact>),
    Two(fn(Exact, Exact) -> Option<Exact>),
    Three(fn(Exact, Exact, Exact) -> Option<Exact>),
}

impl ShaperDoc {
    /// How many values it is given.
    pub fn arity(&self) -> usize {
        self.arguments.len()
    }

    /// Works it out, lengths in mm. `None` when the number of values is wrong, when they make no
    /// sense, or when the result cannot be held.
    pub fn work_out(&self, values: &[Exact]) -> Option<Exact> {
        match (self.run, values) {
            (Run::One(run), [a]) => run(*a),
            (Run::Two(run), [a, b]) => run(*a, *b),
            (Run::Three(run), [a, b, c]) => run(*a, *b, *c),
            _ => None,
        }
    }
}

const fn length(name: &'static str) -> Argument {
    Argument { name, dimension: Dimension::Length }
}

const fn angle(name: &'static str) -> Argument {
    Argument { name, dimension: Dimension::Angle }
}

const fn count(name: &'static str) -> Argument {
    Argument { name, dimension: Dimension::Count }
}

const PRACTICE: &str = "common practice, no source";
const CIRCLE: &str = "the length round a circle is twice pi times its radius (elementary geometry); its use for a waistline is common practice, no source";
const ARC: &str =
    "an arc is as great a share of the length round its circle as its turn is of 360° (elementary geometry)";
const PARALLEL: &str = "a line at a constant distance outside a curve is longer by the distance times the turn in radians (Steiner, parallel curves); its use for facings is common practice, no source";
const PYTHAGORAS: &str =
    "the theorem of Pythagoras on half a dart; that both legs are as long is common practice, no source";
const AREA: &str =
    "the strip has the area of the square (elementary geometry); its use for bias strips is common practice, no source";

/// Every formula there is.
#[rustfmt::skip]
pub const SHAPERS: &[ShaperDoc] = &[
    ShaperDoc { name: "boxed_corner", signature: "boxed_corner(depth)", formula: "depth / 2", source: PRACTICE, meaning: "the side of the square to take out of each lower corner, on the stitching lines, for a base of this depth", example: "boxed_corner(6 cm) = 3 cm", arguments: &[length("depth")], gives: Dimension::Length, run: Run::One(boxed_corner) },
    ShaperDoc { name: "boxed_depth", signature: "boxed_depth(up)", formula: "2 * up", source: PRACTICE, meaning: "the depth of a base whose corner seam is sewn so far up the side seam", example: "boxed_depth(3 cm) = 6 cm", arguments: &[length("up")], gives: Dimension::Length, run: Run::One(boxed_depth) },
    ShaperDoc { name: "boxed_side", signature: "boxed_side(width, depth, allowance)", formula: "width + depth + 2 * allowance", source: PRACTICE, meaning: "the width to cut a panel with this finished width, base and seam allowance", example: "boxed_side(20 cm, 6 cm, 1 cm) = 28 cm", arguments: &[length("width"), length("depth"), length("allowance")], gives: Dimension::Length, run: Run::Three(boxed_side) },
    ShaperDoc { name: "bias_length", signature: "bias_length(side, width)", formula: "side * side / width", source: AREA, meaning: "the length of bias strip of this width that a square of this side gives", example: "bias_length(50 cm, 4 cm) = 625 cm", arguments: &[length("side"), length("width")], gives: Dimension::Length, run: Run::Two(bias_length) },
    ShaperDoc { name: "bias_square", signature: "bias_square(length, width)", formula: "sqrt(length * width)", source: AREA, meaning: "the side of the square that gives this length of bias strip of this width", example: "bias_square(625 cm, 4 cm) = 50 cm", arguments: &[length("length"), length("width")], gives: Dimension::Length, run: Run::Two(bias_square) },
    ShaperDoc { name: "bias_joins", signature: "bias_joins(length, longest)", formula: "up(length / longest, 1) - 1", source: PRACTICE, meaning: "the seams in a strip of this length pieced from strips of the longest length", example: "bias_joins(2 m, 60 cm) = 3", arguments: &[length("length"), length("longest")], gives: Dimension::Count, run: Run::Two(bias_joins) },
    ShaperDoc { name: "joined_strips", signature: "joined_strips(length, strip, allowance)", formula: "up((length - 2 * allowance) / (strip - 2 * allowance), 1), at least 1", source: PRACTICE, meaning: "how many strips make up this length when every seam between them takes an allowance from both", example: "joined_strips(2 m, 60 cm, 1 cm) = 4", arguments: &[length("length"), length("strip"), length("allowance")], gives: Dimension::Count, run: Run::Three(joined_strips) },
    ShaperDoc { name: "gathered", signature: "gathered(finished, fullness)", formula: "finished * fullness", source: PRACTICE, meaning: "the length of a strip before it is gathered at this fullness", example: "gathered(60 cm, 2) = 120 cm", arguments: &[length("finished"), count("fullness")], gives: Dimension::Length, run: Run::Two(gathered) },
    ShaperDoc { name: "circle_radius", signature: "circle_radius(waist, part)", formula: "waist / (2 * pi * part)", source: CIRCLE, meaning: "the radius of the waistline of a skirt that is this part of a circle", example: "round(circle_radius(80 cm, 1/2), 1 mm) = 255 mm", arguments: &[length("waist"), count("part")], gives: Dimension::Length, run: Run::Two(circle_radius) },
    ShaperDoc { name: "circle_hem", signature: "circle_hem(waist, part, length)", formula: "2 * pi * part * (circle_radius(waist, part) + length)", source: CIRCLE, meaning: "the length of the hem of such a skirt", example: "round(circle_hem(80 cm, 1/2, 50 cm), 1 cm) = 237 cm", arguments: &[length("waist"), count("part"), length("length")], gives: Dimension::Length, run: Run::Three(circle_hem) },
    ShaperDoc { name: "binding_single", signature: "binding_single(finished)", formula: "4 * finished", source: PRACTICE, meaning: "the width to cut a binding folded in four that shows this much", example: "binding_single(1 cm) = 4 cm", arguments: &[length("finished")], gives: Dimension::Length, run: Run::One(binding_single) },
    ShaperDoc { name: "binding_double", signature: "binding_double(finished)", formula: "6 * finished", source: PRACTICE, meaning: "the width to cut a binding folded in half and sewn through two layers that shows this much", example: "binding_double(1 cm) = 6 cm", arguments: &[length("finished")], gives: Dimension::Length, run: Run::One(binding_double) },
    ShaperDoc { name: "lining_within", signature: "lining_within(outer, less)", formula: "outer - less", source: PRACTICE, meaning: "the size of a lining a little smaller than what it lines", example: "lining_within(24 cm, 4 mm) = 236 mm", arguments: &[length("outer"), length("less")], gives: Dimension::Length, run: Run::Two(lining_within) },
    ShaperDoc { name: "zip_tape", signature: "zip_tape(opening, tab)", formula: "opening - 2 * tab", source: PRACTICE, meaning: "the length of zip between two tabs that show this much", example: "zip_tape(24 cm, 2 cm) = 20 cm", arguments: &[length("opening"), length("tab")], gives: Dimension::Length, run: Run::Two(zip_tape) },
    ShaperDoc { name: "dart_width", signature: "dart_width(wide, narrow, darts)", formula: "(wide - narrow) / darts", source: PRACTICE, meaning: "the width of each dart when so many darts take a wide edge in to a narrow one", example: "dart_width(98 cm, 74 cm, 8) = 3 cm", arguments: &[length("wide"), length("narrow"), count("darts")], gives: Dimension::Length, run: Run::Three(dart_width) },
    ShaperDoc { name: "dart_leg", signature: "dart_leg(width, length)", formula: "sqrt(width / 2 * (width / 2) + length * length)", source: PYTHAGORAS, meaning: "the length of a leg of a dart of this width at the edge and this length down its middle", example: "dart_leg(6 cm, 4 cm) = 5 cm", arguments: &[length("width"), length("length")], gives: Dimension::Length, run: Run::Two(dart_leg) },
    ShaperDoc { name: "pleated", signature: "pleated(finished, pleats, depth)", formula: "finished + 2 * pleats * depth", source: PRACTICE, meaning: "the length of an edge before it is laid in so many pleats of this depth", example: "pleated(30 cm, 4, 2 cm) = 46 cm", arguments: &[length("finished"), count("pleats"), length("depth")], gives: Dimension::Length, run: Run::Three(pleated) },
    ShaperDoc { name: "pleat_depth", signature: "pleat_depth(length, finished, pleats)", formula: "(length - finished) / (2 * pleats)", source: PRACTICE, meaning: "the depth of each pleat when so many take an edge in to the finished length", example: "pleat_depth(46 cm, 30 cm, 4) = 2 cm", arguments: &[length("length"), length("finished"), count("pleats")], gives: Dimension::Length, run: Run::Three(pleat_depth) },
    ShaperDoc { name: "arc_length", signature: "arc_length(radius, turn)", formula: "radius * pi * turn / 180°", source: ARC, meaning: "the length of an arc of this radius that turns through this angle", example: "round(arc_length(10 cm, 180°), 1 mm) = 314 mm", arguments: &[length("radius"), angle("turn")], gives: Dimension::Length, run: Run::Two(arc_length) },
    ShaperDoc { name: "facing_edge", signature: "facing_edge(neckline, width, turn)", formula: "neckline + width * pi * turn / 180°", source: PARALLEL, meaning: "the length of the outer edge of a facing this wide, along a neckline or armhole that turns through this angle, 360° for a whole round", example: "round(facing_edge(44 cm, 6 cm, 360°), 1 mm) = 817 mm", arguments: &[length("neckline"), length("width"), angle("turn")], gives: Dimension::Length, run: Run::Three(facing_edge) },
    ShaperDoc { name: "bias_round", signature: "bias_round(edge, shorter, allowance)", formula: "edge * (1 - shorter) + 2 * allowance", source: PRACTICE, meaning: "the length of bias strip for a round edge: this share shorter, so that it lies flat, with an allowance at both ends", example: "bias_round(40 cm, 5 %, 1 cm) = 40 cm", arguments: &[length("edge"), count("shorter"), length("allowance")], gives: Dimension::Length, run: Run::Three(bias_round) },
    ShaperDoc { name: "elastic_length", signature: "elastic_length(body, shorter, overlap)", formula: "body * (1 - shorter) + overlap", source: PRACTICE, meaning: "the length of elastic for this measure of the body: this share shorter, with its overlap", example: "elastic_length(70 cm, 10 %, 2 cm) = 65 cm", arguments: &[length("body"), count("shorter"), length("overlap")], gives: Dimension::Length, run: Run::Three(elastic_length) },
    ShaperDoc { name: "casing_depth", signature: "casing_depth(elastic, spare, turned)", formula: "elastic + spare + turned", source: PRACTICE, meaning: "how much deeper to cut an edge that becomes a casing for elastic of this width: with room to slip through and what is turned under", example: "casing_depth(2 cm, 4 mm, 6 mm) = 3 cm", arguments: &[length("elastic"), length("spare"), length("turned")], gives: Dimension::Length, run: Run::Three(casing_depth) },
    ShaperDoc { name: "buttonhole_length", signature: "buttonhole_length(width, thickness)", formula: "width + thickness", source: PRACTICE, meaning: "the length of a buttonhole for a button of this width and thickness", example: "buttonhole_length(18 mm, 3 mm) = 21 mm", arguments: &[length("width"), length("thickness")], gives: Dimension::Length, run: Run::Two(buttonhole_length) },
    ShaperDoc { name: "button_gap", signature: "button_gap(length, buttons)", formula: "length / (buttons - 1)", source: PRACTICE, meaning: "how far apart buttons lie when the first and the last lie at the ends of this length", example: "button_gap(32 cm, 5) = 8 cm", arguments: &[length("length"), count("buttons")], gives: Dimension::Length, run: Run::Two(button_gap) },
];
