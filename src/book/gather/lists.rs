//! What to buy, what to cut, how it lies on cloth and on sheets, and what comes of it.

use super::gatherer::{Gatherer, Lists};
use crate::book::amount::{Amount, ExactAmount, Value, Written};
use crate::book::cutting::{CutList, CutRow, Layout, PieceDrawing, PieceDrawings, SheetList, SheetMap};
use crate::book::needs::{FabricNeed, NotionAmount, NotionNeed, WidthNeed};
use crate::book::volume::{Drawing, FinishedRow, MeasureRow};
use crate::cloth::{ClothLayout, LaidPiece, Layers, lies_at_fold};
use crate::construct::thread;
use crate::measure::{Dimension, Exact, NumberStyle, Quantity, System, Unit, convert, show};
use crate::model::{Kind, Notch, NotionFigure, Piece, Show, Sourcing};
use crate::resolve::{self, CutFrom, FabricId, FabricRow, FitRow, NotionId, PieceId};
use crate::sheets::PageMap;

impl Gatherer<'_> {
    pub fn body(&self) -> Vec<MeasureRow> {
        self.edition.body.iter().map(|row| self.measure(row)).collect()
    }

    pub fn finished(&self) -> Vec<FinishedRow> {
        let rows = self.edition.finished.iter().map(|row| {
            let ease = row.ease.as_ref();
            let ease =
                ease.map(|ease| MeasureRow { name: ease.over.clone(), values: vec![Some(Amount::of(&ease.shown))] });
            FinishedRow { measure: self.measure(row), ease }
        });
        rows.collect()
    }

    fn measure(&self, row: &FitRow) -> MeasureRow {
        MeasureRow { name: row.name.clone(), values: vec![Some(Amount::of(&self.edition.figures(&row.worked)))] }
    }

    /// What is made on the way, such as cloth quilted from two others, is not bought.
    pub fn fabrics(&mut self, of: &Lists<'_>) -> Vec<FabricNeed> {
        let edition = of.edition;
        let made = |row: &&FabricRow| edition.draft.facts.fabrics[row.fabric].from.is_some();
        let bought = edition.fabrics.iter().filter(|row| !made(row) || !row.widths.is_empty() || row.amount.is_some());
        bought
            .map(|row| {
                let fabric = &edition.draft.facts.fabrics[row.fabric];
                FabricNeed {
                    id: fabric.id.text.clone(),
                    at: row.fabric.at(),
                    name: fabric.name.text.clone(),
                    note: self.blocks(&row.note, &fabric.id.text),
                    search: search(&fabric.sourcing),
                    instead: self.blocks(&row.instead, &fabric.id.text),
                    widths: widths(row, of),
                }
            })
            .collect()
    }

    pub fn notions(&mut self, of: &Lists<'_>) -> Vec<NotionNeed> {
        let edition = of.edition;
        edition
            .notions
            .iter()
            .map(|row| {
                let notion = &edition.draft.facts.notions[row.notion];
                let figure = |figure: NotionFigure| row.figures.get(&figure).map(Amount::of);
                let mut length = figure(NotionFigure::Length);
                // What the author states about thread goes before what is estimated.
                let open = notion.kind == Kind::Thread && row.figures.is_empty() && row.count.is_none();
                // Thread is for all that may be sewn: a spool holds more than one seam takes.
                let estimate = thread(self.edition).filter(|_| open);
                let estimated = estimate.is_some();
                length = length
                    .or_else(|| estimate.map(|estimate| whole_lengths(estimate.thread, &edition.draft.facts.show)));
                NotionNeed {
                    id: notion.id.text.clone(),
                    at: row.notion.at(),
                    name: notion.name.text.clone(),
                    note: self.blocks(&row.note, &notion.id.text),
                    search: search(&notion.sourcing),
                    instead: self.blocks(&row.instead, &notion.id.text),
                    estimated,
                    amounts: vec![Some(NotionAmount {
                        count: row.count,
                        length,
                        amount: figure(NotionFigure::Amount),
                        width: figure(NotionFigure::Width),
                        size: figure(NotionFigure::Size),
                    })],
                }
            })
            .collect()
    }

    pub fn pieces(&mut self) -> PieceDrawings {
        let edition = self.edition;
        let overview = self.supplies.overview;
        let pieces = overview
            .drawings
            .iter()
            .map(|drawing| {
                let piece = &edition.draft.facts.pieces[drawing.piece];
                let name = format!("pieces/{}", piece.id.text);
                self.draw(&name, &drawing.svg, drawing.size, None);
                PieceDrawing {
                    id: piece.id.text.clone(),
                    at: drawing.piece.at(),
                    number: edition.piece_number(drawing.piece),
                    name: piece.name.text.clone(),
                    size: self.size,
                    sizes: vec![self.size],
                    drawing: name,
                }
            })
            .collect();
        PieceDrawings { scale: overview.scale, pieces }
    }

    pub fn cuts(&mut self, of: &Lists<'_>) -> Vec<CutList> {
        let facts = &self.edition.draft.facts;
        let cloth = FabricId::each(&facts.fabrics).map(|(id, one)| (CutFrom::Fabric(id), id.at(), &one.id, &one.name));
        // What is cut from tape stands behind all cloth.
        let behind = facts.fabrics.len();
        let tape =
            NotionId::each(&facts.notions).map(|(id, one)| (CutFrom::Notion(id), behind + id.at(), &one.id, &one.name));
        let mut lists = Vec::new();
        for (from, at, id, name) in cloth.chain(tape) {
            let rows: Vec<CutRow> =
                of.edition.cuts.iter().filter(|row| row.from == from).map(|row| self.cut(row, of)).collect();
            if !rows.is_empty() {
                lists.push(CutList { id: id.text.clone(), at, name: name.text.clone(), rows });
            }
        }
        lists
    }

    fn cut(&mut self, row: &resolve::CutRow, of: &Lists<'_>) -> CutRow {
        let piece = &self.edition.draft.facts.pieces[row.piece];
        let dimensions = row.dimensions.as_ref();
        let laid_whole = |fabric| !lies_at_fold(self.edition, row.piece, fabric);
        CutRow {
            id: piece.id.text.clone(),
            at: row.piece.at(),
            name: piece.name.text.clone(),
            copies: row.copies.clone(),
            count: row.count,
            by_ruler: piece.by_ruler,
            snips: snips(piece),
            fold: piece.fold.is_some(),
            opened: piece.fold.is_some() && row.fabric().is_some_and(laid_whole),
            single_layer: on_single_layer(row, of),
            mirrored: piece.mirrored,
            dimensions: vec![dimensions.map(|(width, height)| (Amount::of(width), Amount::of(height)))],
            note: self.blocks(&row.note, &piece.id.text),
        }
    }

    pub fn layouts(&mut self) -> Vec<Layout> {
        let supplies = self.supplies;
        let edition = self.edition;
        supplies
            .cloth
            .iter()
            .map(|(layout, svg, size)| {
                let fabric = &edition.draft.facts.fabrics[layout.bolt.fabric];
                let row = edition.fabrics.iter().find(|row| row.fabric == layout.bolt.fabric);
                let drawing = format!("layouts/{}-{}", fabric.id.text, layout.bolt.width_at + 1);
                self.draw(&drawing, svg, *size, None);
                Layout {
                    id: fabric.id.text.clone(),
                    name: fabric.name.text.clone(),
                    size: self.size,
                    width: row.and_then(|row| row.widths.get(layout.bolt.width_at)).map(Amount::of),
                    folded: layout.bolt.folded,
                    single_layer: self.named(layout, |piece| layout.single_layer(piece)),
                    turned_over: self.named(layout, |piece| piece.turned_over && piece.layers == Layers::One),
                    opened: self.named(layout, |piece| piece.opened),
                    // What the author states to buy goes before what is reckoned.
                    buy: match row.and_then(|row| row.amount.as_ref()) {
                        Some(stated) => Some(Amount::of(stated)),
                        None => to_buy(layout, &edition.draft.facts.show),
                    },
                    drawing,
                }
            })
            .collect()
    }

    /// The names of the pieces that something holds for, each once.
    fn named(&self, layout: &ClothLayout, holds: impl Fn(&LaidPiece) -> bool) -> Vec<String> {
        let mut pieces: Vec<PieceId> = layout.pieces.iter().filter(|one| holds(one)).map(|one| one.piece).collect();
        pieces.sort_unstable();
        pieces.dedup();
        pieces.into_iter().map(|piece| self.edition.draft.facts.pieces[piece].name.text.clone()).collect()
    }

    pub fn map(&mut self) -> Option<SheetMap> {
        let map = self.supplies.map.as_ref()?;
        let (entry, drawing) = sheet_map(map);
        self.drawings.insert(entry.drawing.clone(), drawing);
        Some(entry)
    }
}

fn search(sourcing: &Sourcing) -> Vec<String> {
    sourcing.search.iter().map(|line| line.text.clone()).collect()
}

/// The length to buy, for each width of a fabric; the author's own amount goes before what is
/// reckoned from the layouts.
fn widths(row: &FabricRow, of: &Lists<'_>) -> Vec<WidthNeed> {
    let show = &of.edition.draft.facts.show;
    let stated = row.amount.as_ref().map(Amount::of);
    if row.widths.is_empty() {
        return vec![WidthNeed { width: None, amounts: vec![stated] }];
    }
    let layout = |width_at: usize| {
        let mut laid = of.cloth.iter().copied();
        laid.find(|layout| layout.bolt.fabric == row.fabric && layout.bolt.width_at == width_at)
    };
    row.widths
        .iter()
        .enumerate()
        .map(|(at, width)| WidthNeed {
            width: Some(Value::of(width)),
            amounts: vec![stated.clone().or_else(|| to_buy(layout(at)?, show))],
        })
        .collect()
}

/// How many copies of a row are cut from a single layer of folded cloth, whatever its width.
fn on_single_layer(row: &resolve::CutRow, of: &Lists<'_>) -> usize {
    let layouts = of.cloth.iter().copied();
    let singles = |layout: &ClothLayout| {
        let pieces = layout.pieces.iter().filter(|one| one.piece == row.piece);
        pieces.filter(|one| layout.single_layer(one)).count()
    };
    layouts.filter(|layout| Some(layout.bolt.fabric) == row.fabric()).map(singles).min().unwrap_or(0)
}

/// The edges of a piece cut with a ruler that have a notch, as the page names them.
fn snips(piece: &Piece) -> Vec<String> {
    let named = |notch: &Notch| {
        let edge = &notch.edge.text;
        piece.edge_called(edge).unwrap_or_else(|| edge.replace('_', " "))
    };
    if piece.by_ruler { piece.notches.iter().map(named).collect() } else { Vec::new() }
}

/// A map of sheets as an entry of the book, and its drawing.
pub fn sheet_map(map: &PageMap) -> (SheetMap, Drawing) {
    let entry = SheetMap {
        drawing: "sheets/map".to_owned(),
        sheets: map.sheets.clone(),
        rows: map.grid.0,
        columns: map.grid.1,
        naive: map.naive,
        lists: map.lists.iter().cloned().map(|(name, sheets)| SheetList { name, sheets }).collect(),
    };
    (entry, Drawing::new(map.svg.clone(), map.size, None))
}

/// A length of cloth as shops cut it: tenths of a metre, eighths of a yard. `None` where it could not be
/// held, which a check tells.
fn to_buy(layout: &ClothLayout, settings: &Show) -> Option<Amount> {
    let length = |value: Exact| Quantity { value, dimension: Dimension::Length };
    let figure = |value: Exact, unit: Unit, style: NumberStyle| {
        let shown = show(convert(length(value), unit)?, unit, style);
        Some(Written { number: shown.number, unit: shown.unit.to_owned() })
    };
    let (metres, yards) = layout.buy?;
    let metric = figure(metres, Unit::M, NumberStyle::Decimal)?;
    let imperial = figure(yards, Unit::Yd, NumberStyle::Fraction)?;
    Some(in_order(ExactAmount::of(length(metres)), metric, imperial, settings))
}

/// Thread in whole metres and whole yards (1 yd = 0.9144 m, exactly).
fn whole_lengths(metres: f64, settings: &Show) -> Amount {
    let figure = |number: f64, unit: &str| Written { number: format!("{number:.0}"), unit: unit.to_owned() };
    let whole = Exact::from_integer(metres.round() as i64 * 1000);
    let exact = ExactAmount::of(Quantity { value: whole, dimension: Dimension::Length });
    in_order(exact, figure(metres, "m"), figure((metres / 0.9144).ceil(), "yd"), settings)
}

/// Both figures in the order of the booklet's systems, or the one that it shows alone.
fn in_order(exact: ExactAmount, metric: Written, imperial: Written, settings: &Show) -> Amount {
    let (first, second) = match settings.first {
        System::Metric => (metric, imperial),
        System::Imperial => (imperial, metric),
    };
    Amount { exact, first, second: settings.second.map(|_| second) }
}
