//! The true outlines of all pieces, for the reader in another language: straight from the geometry,
//! which is itself held against Shapely, so that nothing of the sheets' drawing goes into them.

use notchbook::geometry::{Fold, Outline as Line, Shape};
use notchbook::measure::to_f64;
use notchbook::model::{BySize, Outline, by_view, is_for};
use notchbook::resolve::{Edition, MarkAt, PieceId};
use serde_json::{Value, json};

use crate::bench::{demos, root};

/// How far the dumped corners may leave a curve, in mm: a hundredth of what is measured.
const TOLERANCE: f64 = 0.001;

fn formula(value: &BySize, size: usize) -> Option<String> {
    value.get(size).map(|one| one.source.text.trim().to_owned())
}

/// A rectangle as its author wrote it, so that its corners can be worked out anew.
fn rectangle(outline: Option<&Outline>, size: usize) -> Value {
    let Some(Outline::Rectangle {
        width,
        height,
        corners_out,
    }) = outline
    else {
        return Value::Null;
    };
    let corners: Vec<Value> = corners_out
        .iter()
        .map(|(at, across, up)| json!([at.text, formula(across, size), formula(up, size)]))
        .collect();
    json!({ "width": formula(width, size), "height": formula(height, size), "corners_out": corners })
}

fn pieces(edition: &Edition<'_>) -> Vec<Value> {
    let facts = &edition.draft.facts;
    let mut found = Vec::new();
    for (at, piece) in PieceId::each(&facts.pieces) {
        // Lengths of tape, and what a ruler cuts, are on no sheet.
        let by_ruler = piece.tape.is_some() || piece.by_ruler;
        if by_ruler || !is_for(piece.sizes.as_ref(), edition.size()) {
            continue;
        }
        let shape = edition.values.shape(at).expect("a piece without faults");
        let edges: Vec<Value> = shape
            .edges()
            .iter()
            .map(|edge| {
                let path = Line {
                    path: edge.cut.clone(),
                };
                // As it is cut, with the mouths of its darts and pleats; `cut_length` has them closed.
                json!({ "name": edge.name, "length": path.length(), "cut": path.flatten(TOLERANCE) })
            })
            .collect();
        let sewn = shape.stitching().flatten(TOLERANCE);
        found.push(json!({
            "id": piece.id.text,
            "cutting": shape.cutting().flatten(TOLERANCE),
            "stitching": (edges_differ(shape)).then_some(sewn),
            "edges": edges,
            "fold": piece.fold.as_ref().and_then(|fold| shape.edge(&fold.text)).map(|fold| {
                Line { path: fold.cut.clone() }.flatten(TOLERANCE)
            }),
            "sewn": sewn_inside(shape),
            "dots": dots(shape, edition.values.marks(at)),
            // A drawing to the stitching line has its rectangle there, not on the cutting line.
            "rectangle": if piece.drawn_stitching { Value::Null } else { rectangle(piece.outline.as_ref(), edition.size()) },
        }));
    }
    found
}

/// The legs of darts, and the lines along which tucks are stitched.
fn sewn_inside(shape: &Shape) -> Vec<[[f64; 2]; 2]> {
    let legs = shape
        .darts()
        .iter()
        .flatten()
        .flat_map(|dart| dart.legs.clone());
    let tucks = shape
        .pleats()
        .iter()
        .flatten()
        .filter(|pleat| pleat.fold == Fold::Tuck)
        .flat_map(|pleat| pleat.folds.concat());
    legs.chain(tucks)
        .map(|line| [[line.p0.x, line.p0.y], [line.p1.x, line.p1.y]])
        .collect()
}

/// The points of darts, the ends of their legs on the stitching line, and marked points.
fn dots(shape: &Shape, marks: &[Option<MarkAt>]) -> Vec<[f64; 2]> {
    let darts = shape.darts().iter().flatten();
    let ends = darts.flat_map(|dart| dart.points.iter().chain(&dart.mouth).copied());
    let marked = marks.iter().flatten().filter_map(|mark| match mark {
        MarkAt::Point(point) => Some(*point),
        _ => None,
    });
    ends.chain(marked).map(|point| [point.x, point.y]).collect()
}

/// Whether any edge has an allowance, so that there are two lines to draw.
fn edges_differ(shape: &Shape) -> bool {
    shape
        .edges()
        .iter()
        .any(|edge| to_f64(edge.allowance) > 0.0)
}

#[test]
fn the_true_outlines_are_written_for_the_outside_reader() {
    let mut all = serde_json::Map::new();
    demos(|name, compiled| {
        let mut sizes = serde_json::Map::new();
        for edition in compiled.editions() {
            let found = pieces(edition);
            assert!(!found.is_empty(), "{name} has no pieces");
            sizes.insert(compiled.sizes[edition.size()].clone(), json!(found));
        }
        let facts = &compiled.draft().expect("a booklet").facts;
        let views: Vec<Value> = by_view(&facts.sizes)
            .into_iter()
            .map(|own| {
                let view = facts.sizes[own[0]].view.as_ref();
                json!({
                    "name": view.map(|view| view.id.text.clone()),
                    "sizes": own.iter().map(|at| compiled.sizes[*at].clone()).collect::<Vec<_>>(),
                })
            })
            .collect();
        let settings = facts.sheets;
        let (margin, overlap) = (to_f64(settings.margin), to_f64(settings.overlap));
        let entry = json!({ "margin": margin, "overlap": overlap, "sizes": sizes, "views": views, "of_views": facts.booklets.views });
        all.insert(name.to_owned(), entry);
    });
    let text = serde_json::to_string(&Value::Object(all)).expect("JSON");
    let place = root().join("target").join("sheets-outlines.json");
    std::fs::write(place, text).expect("a file below target");
}
