//! Cutting layouts: every piece on the cloth, none over another, the fold at the fold, and no less to
//! buy than is needed. Nothing of the nesting's own code is used to judge it.

use kurbo::{BezPath, PathEl, Point, Rect, Shape as _};
use notchbook::cloth::{ClothLayout, LaidPiece, Layers};
use notchbook::measure::to_f64;
use notchbook::pipeline::Workshop;
use notchbook::resolve::PieceId;

use crate::bench::{demos, written};

/// Room for the scissors, in mm, less what flattening a curve may take of it.
const APART: f64 = 4.0 - 0.5;

/// The corners of a path, curves flattened.
pub fn corners(path: &BezPath) -> Vec<Point> {
    let mut found = Vec::new();
    kurbo::flatten(path, 0.02, |element| match element {
        PathEl::MoveTo(to) | PathEl::LineTo(to) => found.push(to),
        _ => {}
    });
    found
}

fn stretches(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(from, to)| (*from, *to))
}

/// The distance of a point from a stretch.
fn away(point: Point, (from, to): (Point, Point)) -> f64 {
    let along = to - from;
    let share = match along.hypot2() {
        0.0 => 0.0,
        whole => ((point - from).dot(along) / whole).clamp(0.0, 1.0),
    };
    point.distance(from + along * share)
}

/// Whether two stretches cross.
fn cross(one: (Point, Point), two: (Point, Point)) -> bool {
    let side = |line: (Point, Point), point: Point| (line.1 - line.0).cross(point - line.0);
    side(one, two.0) * side(one, two.1) < 0.0 && side(two, one.0) * side(two, one.1) < 0.0
}

/// Whether a point lies inside corners: seen from there, they go once round.
fn inside(point: Point, corners: &[Point]) -> bool {
    let seen: f64 = stretches(corners)
        .map(|(from, to)| {
            let (from, to) = (from - point, to - point);
            from.cross(to).atan2(from.dot(to))
        })
        .sum();
    seen.abs() > std::f64::consts::PI
}

/// How far apart two outlines lie; 0 where one lies over the other.
fn apart(one: &BezPath, two: &BezPath) -> f64 {
    let (a, b) = (corners(one), corners(two));
    if inside(a[0], &b) || inside(b[0], &a) {
        return 0.0;
    }
    let mut least = f64::INFINITY;
    for first in stretches(&a) {
        for second in stretches(&b) {
            if cross(first, second) {
                return 0.0;
            }
            least = least.min(away(first.0, second)).min(away(second.0, first));
        }
    }
    least
}

/// Every layout of every demo, with its booklet.
fn each_layout(mut wrongs: impl FnMut(&Workshop, usize, &ClothLayout) -> Vec<String>) {
    let mut wrong = Vec::new();
    let mut looked = 0;
    demos(|name, compiled| {
        for (size, laid) in compiled.cloth.iter().enumerate() {
            for layout in laid {
                looked += 1;
                let fabric =
                    &compiled.draft().expect("a booklet").facts.fabrics[layout.bolt.fabric];
                let found = wrongs(compiled, size, layout);
                wrong.extend(found.into_iter().map(|fault| {
                    format!(
                        "{name}, {}, {}: {fault}",
                        compiled.sizes[size], fabric.id.text
                    )
                }));
            }
        }
    });
    assert!(looked >= 20, "only {looked} layouts");
    assert!(wrong.is_empty(), "\n{}\n", wrong.join("\n"));
}

fn boxed(path: &BezPath) -> Rect {
    path.bounding_box()
}

/// Where a piece may lie: on usable cloth, and on as many layers as it is cut through.
pub fn room(layout: &ClothLayout, piece: &LaidPiece) -> Rect {
    let bolt = &layout.bolt;
    let half = bolt.width / 2.0;
    let used = half - bolt.selvedge;
    let opened = layout
        .opened_from
        .filter(|from| boxed(&piece.outline).y0 >= *from - 0.01);
    let room = match (bolt.folded, opened) {
        (false, _) => Rect::new(half - used, 0.0, half + used, layout.length),
        (true, None) => Rect::new(0.0, 0.0, used, layout.opened_from.unwrap_or(layout.length)),
        (true, Some(_)) if piece.layers != Layers::One => Rect::ZERO,
        (true, Some(from)) => Rect::new(-used, from, used, layout.length),
    };
    room.inflate(0.01, 0.01)
}

#[test]
fn no_piece_lies_over_another_or_over_an_edge() {
    each_layout(|_, _, layout| {
        let mut wrong = Vec::new();
        for (at, piece) in layout.pieces.iter().enumerate() {
            let bounds = boxed(&piece.outline);
            let room = room(layout, piece);
            if bounds.union(room) != room {
                wrong.push(format!(
                    "piece {:?} lies at {bounds}, outside {room}",
                    piece.piece
                ));
            }
            for other in &layout.pieces[at + 1..] {
                let near = boxed(&other.outline)
                    .inflate(5.0, 5.0)
                    .intersect(bounds)
                    .area()
                    > 0.0;
                let apart = if near {
                    apart(&piece.outline, &other.outline)
                } else {
                    f64::INFINITY
                };
                if apart < APART {
                    wrong.push(format!(
                        "pieces {:?} and {:?} lie {apart:.2} mm apart, at {bounds:.1} and {:.1}",
                        piece.piece,
                        other.piece,
                        boxed(&other.outline)
                    ));
                }
            }
        }
        wrong
    });
}

#[test]
fn every_copy_is_laid_and_keeps_its_size() {
    each_layout(|compiled, size, layout| {
        let facts = &compiled.draft().expect("a booklet").facts;
        let fabric = &facts.fabrics[layout.bolt.fabric];
        let edition = &compiled.editions()[size];
        let mut wrong = Vec::new();
        for (at, piece) in PieceId::each(&facts.pieces) {
            let is_here = piece.sizes.as_ref().is_none_or(|own| own.contains(&size));
            let copies: u32 = piece
                .cut
                .iter()
                .filter(|cut| is_here && cut.fabric.text == fabric.id.text)
                .map(|cut| {
                    edition
                        .values
                        .pieces_cut(&cut.copies)
                        .expect("a number of pieces")
                })
                .sum();
            let laid: Vec<_> = layout.pieces.iter().filter(|one| one.piece == at).collect();
            // Both layers give two at once, save at the fold.
            let gives = |one: &&LaidPiece| if one.layers == Layers::Both { 2 } else { 1 };
            let given: u32 = laid.iter().map(gives).sum();
            if given != copies {
                wrong.push(format!(
                    "`{}` comes out {given} times, not {copies}",
                    piece.id.text
                ));
            }
            if piece.cut_larger.is_some() {
                continue;
            }
            let area = edition
                .values
                .shape(at)
                .map_or(0.0, |shape| shape.cutting().area());
            for one in laid {
                let found = one.outline.area().abs();
                if (found - area).abs() > area * 1e-6 {
                    wrong.push(format!(
                        "`{}` is laid with {found:.1} mm² of {area:.1}",
                        piece.id.text
                    ));
                }
            }
        }
        wrong
    });
}

#[test]
fn what_is_cut_on_the_fold_lies_at_the_fold() {
    let mut folded = 0;
    each_layout(|compiled, size, layout| {
        let facts = &compiled.draft().expect("a booklet").facts;
        let mut wrong = Vec::new();
        for one in &layout.pieces {
            let piece = &facts.pieces[one.piece];
            let Some(fold) = &piece.fold else { continue };
            folded += 1;
            let shape = compiled.editions()[size]
                .values
                .shape(one.piece)
                .expect("a piece");
            let length = shape.edge(&fold.text).expect("the fold").cut_length;
            let points = corners(&one.outline);
            let at_fold: f64 = stretches(&points)
                .filter(|(from, to)| from.x.abs() < 0.01 && to.x.abs() < 0.01)
                .map(|(from, to)| from.distance(to))
                .sum();
            if !layout.bolt.folded || (at_fold - length).abs() > 0.01 {
                wrong.push(format!(
                    "`{}` has {at_fold:.2} mm at the fold, of {length:.2}",
                    piece.id.text
                ));
            }
        }
        wrong
    });
    assert!(folded >= 5, "only {folded} pieces lie at a fold");
}

/// 1 yd is 914.4 mm (international yard and pound agreement, 1959).
#[test]
fn what_is_bought_is_enough_and_a_length_that_shops_cut() {
    each_layout(|_, _, layout| {
        let bolt = &layout.bolt;
        let keeps = 1.0 - to_f64(bolt.shrinkage);
        let needed = layout.length / keeps + to_f64(bolt.spare);
        let most = (layout.length + 0.1 + to_f64(bolt.spare)) / keeps;
        let mut wrong = Vec::new();
        let (metres, yards) = layout.buy.expect("a length that shops sell");
        for (buy, cut) in [(metres, 100.0), (yards, 914.4 / 8.0)] {
            let buy = to_f64(buy);
            let parts = buy / cut;
            if (parts - parts.round()).abs() > 1e-9 {
                wrong.push(format!("{buy} mm is no multiple of {cut} mm"));
            }
            if buy < needed - 1e-9 {
                wrong.push(format!("{buy} mm to buy, and {needed:.1} mm are needed"));
            }
            if buy - cut >= most {
                wrong.push(format!(
                    "{buy} mm to buy, and one part less would do for {most:.1} mm"
                ));
            }
        }
        let reach = layout
            .pieces
            .iter()
            .map(|one| boxed(&one.outline).y1)
            .fold(0.0, f64::max);
        if (reach - layout.length).abs() > 0.05 {
            wrong.push(format!(
                "the pieces reach to {reach:.2} mm, not {:.2}",
                layout.length
            ));
        }
        wrong
    });
}

/// A booklet that cuts four of a piece without any symmetry from one fabric.
fn lopsided(fabric: &str) -> String {
    format!(
        "title: Pennant\nedition: 1.0.0\nsizes: {{one: One size}}\nfabrics: {{outer: {{name: Velvet, {fabric}}}}}\n\
         pieces:\n  flag:\n    outline:\n      path:\n        - start: [0 mm, 0 mm]\n        - top: [310 mm, 0 mm]\n        \
         - side: [180 mm, 420 mm]\n        - foot: [60 mm, 260 mm]\n        - back: close\n    allowance: {{all: 0 mm}}\n    \
         raw: [all]\n    grain: vertical\n    cut: {{outer: 4}}\nparts: [make.md]\n"
    )
}

const CUT_FLAGS: &str = "# Make it\n\n## Cut it {#cut}\n\n```work\n- cut: flag\n```\n\nCut four.\n";

/// How each of the four lies: whether it stands as drawn.
fn upright(fabric: &str) -> Vec<bool> {
    let facts = lopsided(fabric);
    written(
        &[("booklet.yaml", &facts), ("make.md", CUT_FLAGS)],
        |compiled| {
            let edition = &compiled.editions()[0];
            let (piece, _) = PieceId::each(&edition.draft.facts.pieces)
                .next()
                .expect("a piece");
            let drawn = edition
                .values
                .shape(piece)
                .expect("a piece")
                .cutting()
                .path
                .clone();
            let drawn: Vec<Point> = corners(&drawn);
            let layout = compiled.cloth[0].first().expect("a layout");
            let same = |path: &BezPath| {
                let laid = corners(path);
                let shift = laid[0] - drawn[0];
                drawn
                    .iter()
                    .zip(&laid)
                    .all(|(one, two)| (*one + shift).distance(*two) < 0.01)
            };
            layout.pieces.iter().map(|one| same(&one.outline)).collect()
        },
    )
}

#[test]
fn cloth_with_a_nap_is_cut_one_way() {
    assert_eq!(upright("widths: [72 cm], nap: yes"), [true; 4]);
    // Without a nap it saves cloth to turn some, so the search does: the test above could fail.
    let free = upright("widths: [72 cm], nap: no");
    assert_eq!(free.len(), 4);
    assert!(
        free.contains(&false),
        "nothing was turned on cloth without a nap"
    );
}

/// Two squares of 50 cm side by side on 112 cm take 50 cm; cloth that shrinks by 5 % takes
/// 50 cm / 0.95, which is 52.63 cm.
#[test]
fn an_amount_that_is_too_small_is_told() {
    for (amount, shrinkage, fires) in [
        ("49 cm", "0 %", true),
        ("50 cm", "0 %", false),
        ("52 cm", "5 %", true),
        ("53 cm", "5 %", false),
    ] {
        let facts = format!(
            "title: Napkin\nedition: 1.0.0\nsizes: {{one: One size}}\n\
             fabrics: {{outer: {{name: Cotton, widths: [112 cm], shrinkage: {shrinkage}, amount: {amount}}}}}\n\
             pieces:\n  flag:\n    outline: {{rectangle: [50 cm, 50 cm]}}\n    allowance: {{all: 0 mm}}\n    \
             raw: [all]\n    grain: vertical\n    cut: {{outer: 2}}\nparts: [make.md]\n"
        );
        written(
            &[("booklet.yaml", &facts), ("make.md", CUT_FLAGS)],
            |compiled| {
                let codes: Vec<&str> = compiled
                    .report
                    .findings
                    .iter()
                    .map(|finding| finding.code())
                    .collect();
                assert_eq!(
                    codes.contains(&"amount-too-small"),
                    fires,
                    "{amount}, {shrinkage}: {codes:?}"
                );
            },
        );
    }
}
