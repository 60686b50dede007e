//! What stands on a piece: name, number, size, what to cut, how wide the allowances are.

use kurbo::{BezPath, Point, Rect, Shape as _};

use super::face::{Face, face, width};
use super::plan::{PlacedPiece, SheetPlan};
use super::{inside, window};
use crate::cloth::lies_at_fold;
use crate::draw::{Detail, Plan};
use crate::figure::numbers::one as set_figure;
use crate::measure::{Exact, Quantity};
use crate::model::{HouseWords, Kind, Verb, brief_sizes, by_view, is_for, spoken_sizes};
use crate::resolve::{Edition, FabricId, NotionId, PieceId, Shown, Touched, Worked};

/// Words at a place: the left end of their base line, in mm.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Words {
    pub at: Point,
    pub text: String,
    /// The height of the type, in mm.
    pub size: f64,
    pub strong: bool,
    /// The room of the block that they are a line of: it stands on one sheet, whole.
    pub block: Option<Rect>,
}

/// The lines that name a piece.
fn block(number: usize, piece: PieceId, outlines: &[(usize, Plan)], editions: &[&Edition<'_>]) -> Vec<String> {
    let Some(first) = editions.first() else { return Vec::new() };
    let (facts, house) = (&first.draft.facts, &first.draft.house);
    let shown: Vec<usize> = outlines.iter().map(|(size, _)| *size).collect();
    // All sizes by their names would be a long line; the key and the foot of each sheet have them.
    let all = shown.len() > 2 && shown.len() == editions.len() && by_view(&facts.sizes).len() == 1;
    let sizes = if all { house.say("sheet_all_sizes") } else { spoken_sizes(&facts.sizes, &shown) };
    let mut lines = vec![format!("{number}  {}", facts.pieces[piece].name.text), sizes];
    // What is cut in each thing, once where it is the same in all.
    let mut told: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
    for edition in editions.iter().filter(|edition| shown.contains(&edition.size())) {
        let own = cut_lines(piece, edition);
        match told.iter_mut().find(|(_, known)| *known == own) {
            Some((sizes, _)) => sizes.push(edition.size()),
            None => told.push((vec![edition.size()], own)),
        }
    }
    let several = told.len() > 1;
    for (sizes, own) in told {
        let of = brief_sizes(&facts.sizes, &sizes);
        lines.extend(own.into_iter().map(|line| if several { format!("{of}: {line}") } else { line }));
    }
    lines.push(house.say("sheet_true_size"));
    lines
}

/// What is cut of a piece in one size, and for which copies.
fn cut_lines(piece: PieceId, edition: &Edition<'_>) -> Vec<String> {
    let facts = &edition.draft.facts;
    let house = &edition.draft.house;
    let own = &facts.pieces[piece];
    let mut lines = Vec::new();
    for cut in own.cut_in(edition.size()) {
        let named = FabricId::each(&facts.fabrics).find(|(_, fabric)| fabric.id.text == cut.fabric.text);
        let fabric = named.map_or(cut.fabric.text.as_str(), |(_, fabric)| fabric.name.text.as_str());
        let way = match own.fold {
            None => "sheet_cut",
            Some(_) if named.is_some_and(|(id, _)| !lies_at_fold(edition, piece, id)) => "sheet_cut_opened",
            Some(_) => "sheet_cut_fold",
        };
        let count = edition.values.pieces_cut(&cut.copies).unwrap_or(0);
        let line = house.fill(way, &[("n", &count.to_string()), ("fabric", &fabric.to_lowercase())]);
        lines.push(match (own.mirrored, count / 2) {
            (false, _) | (true, 0) => line,
            (true, over) => house.fill("sheet_cut_over", &[("cut", &line), ("n", &over.to_string())]),
        });
    }
    // The line shows it as it is trimmed: cut by it, there would be too little cloth.
    if let Some(larger) = own.cut_larger.as_ref().and_then(|larger| edition.values.quiet(larger)) {
        lines.push(house.fill("sheet_larger", &[("length", &set_figure(&edition.figures(&larger).first))]));
        lines.push(house.say("sheet_trim"));
    }
    let names: Vec<String> = own.copies_in(edition.size()).map(|name| own.copy_called(&name.text)).collect();
    if !names.is_empty() && names.len() <= 2 {
        let names = names.join(&format!(" {} ", house.say("and")));
        lines.push(house.fill("sheet_for", &[("names", &names)]));
    }
    lines
}

/// All words on a piece: its name block, its allowances, the zip where one goes.
pub(super) fn words(plan: &SheetPlan, piece: &PlacedPiece, editions: &[&Edition<'_>]) -> Vec<Words> {
    let Some(edition) = editions.iter().find(|edition| piece.outlines.iter().any(|(size, _)| *size == edition.size()))
    else {
        return Vec::new();
    };
    let Some(smallest) = piece.smallest() else { return Vec::new() };
    let lines = block(piece.number, piece.piece, &piece.outlines, editions);
    let face = face(plan.paper);
    let mut found = match piece.beside {
        Some(room) => set(&lines, room, face.beside),
        None => place_block(plan, smallest, &lines),
    };
    found.extend(names(smallest, face, &edition.draft.house));
    if plan.sizes.len() == 1 {
        found.extend(edges(piece, edition, face));
    }
    found
}

/// The names of darts, pleats and marks, and what the bracket at a fold says.
fn names(plan: &Plan, face: &Face, house: &HouseWords) -> Vec<Words> {
    let word =
        |at: Point, text: &str| Words { at, text: text.to_owned(), size: face.small, strong: false, block: None };
    let on_fold = house.say("sheet_on_fold");
    let mut found: Vec<Words> = inside::bracket(plan).map(|(_, at)| word(at, &on_fold)).into_iter().collect();
    for detail in &plan.details {
        let Detail::Name(at, name) = detail else { continue };
        // Which edge is up stands beside its arrow, however the piece is turned.
        if let Some(arrow) = up(plan).filter(|_| name == "TOP") {
            let level = (arrow.p1 - arrow.p0).x.abs() > (arrow.p1 - arrow.p0).y.abs();
            let foot = Point::new(arrow.p0.x.min(arrow.p1.x), arrow.p0.y.max(arrow.p1.y));
            let at = if level { foot + kurbo::Vec2::new(0.0, face.block[0] + 1.0) } else { *at };
            found.push(Words { at, text: name.clone(), size: face.block[0], strong: true, block: None });
            continue;
        }
        // Names of small darts and pleats side by side would lie on each other.
        let free = |by: &f64| {
            let taken = room(&word(Point::new(at.x, at.y + by), name));
            found.iter().all(|other| !room(other).overlaps(taken))
        };
        let step = face.small * 1.36;
        let by = [0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0].map(|by| by * step).into_iter().find(free).unwrap_or(0.0);
        found.push(word(Point::new(at.x, at.y + by), name));
    }
    found
}

/// The arrow to the edge that is up.
fn up(plan: &Plan) -> Option<kurbo::Line> {
    plan.details.iter().find_map(|detail| match detail {
        Detail::Up(line) => Some(*line),
        _ => None,
    })
}

/// The box that words take up.
pub(super) fn room(words: &Words) -> Rect {
    Rect::new(
        words.at.x,
        words.at.y - words.size,
        words.at.x + width(&words.text, words.size),
        words.at.y + words.size * 0.25,
    )
}

fn area(path: &BezPath) -> f64 {
    path.area().abs()
}

/// The room that the words need beside a piece too small to hold them; `None` where they fit inside.
pub(super) fn room_beside(
    editions: &[&Edition<'_>],
    face: &Face,
    piece: PieceId,
    outlines: &[(usize, Plan)],
) -> Option<(f64, f64)> {
    let lines = block(10, piece, outlines, editions);
    let (_, smallest) = outlines.iter().min_by(|one, two| area(&one.1.cutting).total_cmp(&area(&two.1.cutting)))?;
    let room = |size: f64| {
        let wide = lines.iter().map(|line| width(line, size)).fold(0.0, f64::max);
        (wide, size * 1.35 * lines.len() as f64)
    };
    let (wide, high) = room(face.block[2]);
    // Clear of both stitching lines and of a grain line through the middle.
    let inner = smallest.stitching.bounding_box();
    let fits = inner.width() > wide + 3.0 && inner.height() > 2.0 * high + 6.0
        || inner.width() > 2.0 * wide + 6.0 && inner.height() > high + 3.0;
    (!fits).then(|| room(face.beside))
}

/// The block of lines where it lies wholly on the piece, off the joints and clear of the grain line;
/// in smaller type where there is no such place, and across all where nothing helps.
fn place_block(plan: &SheetPlan, piece: &Plan, lines: &[String]) -> Vec<Words> {
    let outline = &piece.cutting;
    let bounds = outline.bounding_box();
    let mut fallback = None;
    // Smaller type rather than words on a joint or on the grain line.
    let sizes = face(plan.paper).block;
    for (avoid_all, size) in sizes.map(|size| (true, size)).into_iter().chain(sizes.map(|size| (false, size))) {
        let wide = lines.iter().map(|line| width(line, size)).fold(0.0, f64::max);
        let high = size * 1.35 * lines.len() as f64;
        let mut best: Option<(f64, Rect)> = None;
        let steps = |from: f64, to: f64| (0..=40).map(move |at| from + (to - from) * f64::from(at) / 40.0);
        for x in steps(bounds.x0 + 1.0, (bounds.x1 - wide - 1.0).max(bounds.x0 + 1.0)) {
            for y in steps(bounds.y0 + 1.0, (bounds.y1 - high - 1.0).max(bounds.y0 + 1.0)) {
                let rect = Rect::new(x, y, x + wide, y + high);
                if !holds(outline, rect) || (avoid_all && disturbed(plan, rect, piece)) {
                    continue;
                }
                let away = rect.center().distance(bounds.center());
                if best.is_none_or(|(known, _)| away < known) {
                    best = Some((away, rect));
                }
            }
        }
        if let Some((_, rect)) = best {
            return set(lines, rect, size);
        }
        fallback = Some(Rect::new(bounds.x0 + 1.5, bounds.y0 + 1.5, bounds.x0 + wide, bounds.y0 + high));
    }
    fallback.map(|rect| set(lines, rect, face(plan.paper).block[2])).unwrap_or_default()
}

fn holds(outline: &BezPath, rect: Rect) -> bool {
    let (x0, y0, x1, y1) = (rect.x0, rect.y0, rect.x1, rect.y1);
    let middle = rect.center();
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1), (middle.x, y0), (middle.x, y1), (x0, middle.y), (x1, middle.y)]
        .into_iter()
        .all(|(x, y)| outline.contains(Point::new(x, y)))
}

fn disturbed(plan: &SheetPlan, rect: Rect, piece: &Plan) -> bool {
    let crosses = |from: f64, to: f64, step: f64| {
        let half = crate::measure::to_f64(plan.settings.overlap) / 2.0;
        step.is_finite() && ((from - half) / step).floor() != ((to + half) / step).floor()
    };
    let on_joint = crosses(rect.x0, rect.x1, plan.step.0) || crosses(rect.y0, rect.y1, plan.step.1);
    let near = rect.inflate(2.0, 2.0);
    let on_grain = piece.grain.is_some_and(|grain| window::clip(grain.p0, grain.p1, near).is_some());
    let inner = piece.details.iter().filter_map(inside::stroke).map(|(_, path)| path);
    let mut crossed = false;
    for path in inner.chain(inside::bracket(piece).map(|(bracket, _)| bracket)) {
        window::segments(&path, &mut |from, to| crossed |= window::clip(from, to, near).is_some());
    }
    on_joint || on_grain || crossed
}

fn set(lines: &[String], rect: Rect, size: f64) -> Vec<Words> {
    let wide = lines.iter().map(|line| width(line, size)).fold(0.0, f64::max);
    let high = size * (1.3 + 1.35 * lines.len().saturating_sub(1) as f64);
    let whole = Rect::new(rect.x0, rect.y0, rect.x0 + wide, rect.y0 + high);
    lines
        .iter()
        .enumerate()
        .map(|(at, line)| Words {
            at: Point::new(rect.x0, rect.y0 + size * (1.0 + 1.35 * at as f64)),
            text: line.clone(),
            size,
            strong: at == 0,
            block: Some(whole),
        })
        .collect()
}

/// The allowance of each edge that is long enough to write it on, and the zip that is sewn there.
fn edges(piece: &PlacedPiece, edition: &Edition<'_>, face: &Face) -> Vec<Words> {
    let Some(shape) = edition.values.shape(piece.piece) else { return Vec::new() };
    let Some((_, plan)) = piece.outlines.first() else { return Vec::new() };
    // The words lie level: a stretch of the edge is found on the drawn lines again by its share.
    let bounds = shape.cutting().bounds();
    let mut found = Vec::new();
    for edge in shape.edges() {
        if edge.cut_length < 24.0 * face.small || edge.allowance <= Exact::from_integer(0) {
            continue;
        }
        let quantity = Quantity { value: edge.allowance, dimension: crate::measure::Dimension::Length };
        let length = set_figure(&edition.figures(&Worked { quantity, stated: None }).first);
        let mut text = edition.draft.house.fill("sheet_allowance", &[("length", &length)]);
        if let Some(zip) = zip_at(piece.piece, &edge.name, edition) {
            text = format!("{text}, {zip}");
        }
        let Some(at) = shape.point_at(&edge.name, crate::geometry::Along::Fraction(Exact::of::<1, 4>())) else {
            continue;
        };
        let inward = kurbo::Vec2::new(at.inward[0], at.inward[1]);
        let seam = Point::new(at.stitching[0], at.stitching[1]) + inward * (face.small + 0.7);
        // From the author's drawing to the plan: the piece may be turned by a quarter.
        let local = (seam.x - bounds.x0, seam.y - bounds.y0);
        let home = plan.cutting.bounding_box();
        let point = if piece.turned {
            Point::new(home.x1 - local.1, home.y0 + local.0)
        } else {
            Point::new(home.x0 + local.0, home.y0 + local.1)
        };
        let turned_inward = if piece.turned { kurbo::Vec2::new(-inward.y, inward.x) } else { inward };
        let size = face.small;
        let wide = width(&text, size);
        let shift = match (turned_inward.x, turned_inward.y) {
            (x, _) if x < -0.7 => -wide,
            (x, _) if x > 0.7 => 0.0,
            _ => -wide / 2.0,
        };
        let drop = if turned_inward.y > 0.7 { size } else { 0.0 };
        found.push(Words { at: Point::new(point.x + shift, point.y + drop), text, size, strong: false, block: None });
    }
    found
}

/// "zip 40 cm", where a work fact sews a zip to this edge.
fn zip_at(piece: PieceId, edge: &str, edition: &Edition<'_>) -> Option<String> {
    let facts = &edition.draft.facts;
    for work in edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Sew) {
        let here = work.touched().any(|touched| {
            matches!(touched, Touched::Edge(copy, named)
                if edition.cast[copy].piece == piece && edition.drawn_word(copy, named) == edge)
        });
        if !here {
            continue;
        }
        for (at, notion) in NotionId::each(&facts.notions) {
            let named = work.targets.iter().any(|target| target.notion() == Some(at));
            if !named || notion.kind != Kind::Zip || !is_for(notion.sizes.as_ref(), edition.size()) {
                continue;
            }
            let row = edition.notions.iter().find(|row| row.notion == at)?;
            let house = &edition.draft.house;
            let long = |value: &Shown| house.fill("sheet_zip_long", &[("length", &set_figure(&value.first))]);
            return Some(row.long().map_or_else(|| house.say("sheet_zip"), long));
        }
    }
    None
}
