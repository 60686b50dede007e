//! A manifest made from what a booklet came to.

use std::collections::BTreeMap;

use super::record::{
    EdgeRecord, LineRecord, Manifest, NamedValue, OutlineRecord, PictureRecord, PieceRecord, SheetRecord, SheetsRecord,
    ShownRecord,
};
use super::text::FORMAT;
use crate::book::{Book, ExactAmount, HouseWords};
use crate::diag::Findings;
use crate::draw::Plan;
use crate::figure::svg_data;
use crate::measure::{Dimension, Quantity};
use crate::model::Facts;
use crate::resolve::{Edition, PieceId};
use crate::sheets::{SheetPlan, lines_of, shown};
use crate::source::sha256;

/// What an edition is issued with.
pub struct Issued<'a> {
    /// What commands and files call the booklet.
    pub booklet: &'a str,
    /// The words that the templates print.
    pub words: HouseWords,
    /// The book of all sizes, and that of each.
    pub all: Book,
    /// In the order of the sizes.
    pub sizes: Vec<Book>,
    /// Each set of pattern sheets: what files call it, and its plan.
    pub sheets: Vec<(String, SheetPlan)>,
}

/// Gathers the manifest of all sizes of a booklet.
pub fn gather(editions: &[Edition<'_>], issued: Issued<'_>) -> Manifest {
    let facts = editions.first().map(|edition| &edition.draft.facts);
    let pictures = issued.all.pictures.iter().map(|(name, photo)| {
        let (bytes, sha256) = (photo.bytes.len(), sha256(&photo.bytes));
        (name.clone(), PictureRecord { ending: photo.ending.clone(), bytes, sha256 })
    });
    let pictures = pictures.collect();
    // Their files lie beside the manifest: what is read back has none, and is the same edition.
    let bare = |book: Book| Book { pictures: BTreeMap::new(), ..book };
    let id = |piece: PieceId| facts.map_or_else(String::new, |facts| facts.pieces[piece].id.text.clone());
    Manifest {
        format: FORMAT,
        booklet: issued.booklet.to_owned(),
        words: issued.words,
        values: facts.map(|facts| values(facts, editions)).unwrap_or_default(),
        pieces: facts.map(|facts| pieces(facts, editions)).unwrap_or_default(),
        sheets: issued.sheets.iter().map(|(of, plan)| sheets(of, plan, &id)).collect(),
        pictures,
        sizes: issued.sizes.into_iter().map(bare).collect(),
        all: bare(issued.all),
    }
}

fn values(facts: &Facts, editions: &[Edition<'_>]) -> Vec<NamedValue> {
    let mut found = Vec::new();
    for measurement in &facts.measurements {
        let name = &measurement.name.text;
        let each = editions.iter().map(|edition| edition.values.get(name));
        let each = each.map(|worked| worked.map(|worked| ExactAmount::of(worked.quantity))).collect();
        found.push(NamedValue { name: name.clone(), each });
    }
    for notion in &facts.notions {
        for (figure, value) in &notion.figures {
            let of = |edition: &Edition<'_>| {
                // What is wrong with it has been told.
                let mut unheard = Findings::default();
                let worked = edition.values.work_out(value.get(edition.size())?, &edition.values, &mut unheard)?;
                Some(ExactAmount::of(worked.quantity))
            };
            let name = format!("{}.{}", notion.id.text, figure.word());
            found.push(NamedValue { name, each: editions.iter().map(of).collect() });
        }
    }
    found
}

fn pieces(facts: &Facts, editions: &[Edition<'_>]) -> Vec<PieceRecord> {
    let record = |(id, piece): (PieceId, &crate::model::Piece)| PieceRecord {
        id: piece.id.text.clone(),
        name: piece.name.text.clone(),
        outlines: editions.iter().map(|edition| outline(edition, id)).collect(),
    };
    PieceId::each(&facts.pieces).map(record).collect()
}

fn outline(edition: &Edition<'_>, piece: PieceId) -> Option<OutlineRecord> {
    let (shape, plan) = (edition.values.shape(piece)?, Plan::of(edition, piece)?);
    let home = kurbo::Affine::translate((-plan.origin.0, -plan.origin.1));
    let facts = &edition.draft.facts.pieces[piece];
    let edge = |edge: &crate::geometry::Edge| {
        let allowance = Quantity { value: edge.allowance, dimension: Dimension::Length };
        EdgeRecord {
            id: edge.name.clone(),
            name: facts.edge_called(&edge.name).unwrap_or_else(|| edge.name.replace('_', " ")),
            allowance: ExactAmount::of(allowance),
            cut: svg_data(&(home * edge.cut.clone())),
        }
    };
    let line = |(class, path): (&str, kurbo::BezPath)| LineRecord { class: class.to_owned(), path: svg_data(&path) };
    Some(OutlineRecord {
        edges: shape.edges().iter().map(edge).collect(),
        lines: lines_of(&plan).into_iter().map(line).collect(),
    })
}

fn sheets(of: &str, plan: &SheetPlan, id: &dyn Fn(PieceId) -> String) -> SheetsRecord {
    let pages = shown(plan).into_iter().map(|sheet| SheetRecord {
        name: sheet.name,
        shows: sheet
            .shows
            .into_iter()
            .map(|one| ShownRecord { piece: id(one.piece), size: one.size, lines: sha256(one.lines.as_bytes()) })
            .collect(),
    });
    SheetsRecord {
        of: of.to_owned(),
        paper: plan.paper.name().to_owned(),
        sizes: plan.sizes.clone(),
        pages: pages.collect(),
    }
}
