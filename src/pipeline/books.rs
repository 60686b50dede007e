//! Books made from a finished workshop: one size, or all of them.

use super::workshop::Workshop;
use crate::book::{Book, Drawing, Shared, Supplies, gather, merge, sheet_map};
use crate::cloth::{ClothLayout, ClothWords, cloth_scale, draw_cloth};
use crate::draw;
use crate::figure::{self, Studio};
use crate::measure::{Dimension, Exact, Quantity};
use crate::resolve::{Edition, PieceId, Worked};
use crate::sheets::{SheetPaper, page_map, plan_one_size, plan_sizes};
use crate::typeset::{Paper, Sheaf, lay_out};

impl Workshop {
    /// A book laid out for a paper, in the words of the house or the booklet's own.
    pub fn sheaf(&self, book: &Book, paper: Paper) -> Sheaf {
        lay_out(book, paper, &serde_json::Value::Object(self.labels.words.clone()))
    }

    /// The book of one size; the map of its sheets is that of one paper.
    pub fn book(&self, edition: &Edition<'_>, paper: SheetPaper) -> Book {
        let facts = &edition.draft.facts;
        let studio = Studio::new(&self.house, &facts.style.accent.text);
        let dresser = studio.dresser();
        let overview = draw::overview(edition, dresser);
        let things = draw::Things::of(edition, &studio);
        let names = |piece: PieceId| facts.pieces[piece].name.text.clone();
        let plan = plan_one_size(edition, paper);
        let map = (!plan.pieces.is_empty()).then(|| page_map(&plan, &names, &facts.sizes, dresser));
        let numbers = |piece: PieceId| edition.piece_number(piece);
        let laid = self.cloth.get(edition.size()).map_or(&[][..], Vec::as_slice);
        let scale = cloth_scale(laid);
        let cloth = laid
            .iter()
            .map(|layout| {
                let (width, length) = cloth_sizes(edition, layout);
                let fabric = &facts.fabrics[layout.bolt.fabric];
                let (nap, grain) = (fabric.nap, !fabric.grainless);
                let words = ClothWords { width: &width, length: &length, nap, grain };
                let (svg, size) = draw_cloth(layout, scale, words, &names, &numbers, dresser);
                (layout.clone(), svg, size)
            })
            .collect();
        let laid_with = self.cloth_with.get(edition.size()).map_or(&[][..], Vec::as_slice);
        let each = self.each_offer(edition.size()).iter().zip(laid_with);
        let offers = each.map(|((offer, with), (_, laid))| (*offer, with, laid.as_slice())).collect();
        let (figures, pictures, always) = (&self.figures, &self.pictures, self.always(edition));
        gather(
            edition,
            &Supplies { figures, overview: &overview, things: &things, pictures, map, always, offers, cloth },
        )
    }

    /// The book of all the sizes of some books of one size each; `None` when there is none.
    pub fn book_of_all(&self, books: &[Book], paper: SheetPaper) -> Option<Book> {
        let draft = self.draft()?;
        let studio = Studio::new(&self.house, &draft.facts.style.accent.text);
        let shown = |edition: &&Edition<'_>| books.iter().any(|book| book.shown.contains(&edition.size()));
        let editions: Vec<&Edition<'_>> = self.editions().iter().filter(shown).collect();
        let plan = plan_sizes(&editions, paper);
        let names = |piece: PieceId| draft.facts.pieces[piece].name.text.clone();
        let map = || sheet_map(&page_map(&plan, &names, &draft.facts.sizes, studio.dresser()));
        let map = (!plan.pieces.is_empty()).then(map);
        let over = |drawings: &[&Drawing]| {
            let texts: Vec<&str> = drawings.iter().map(|drawing| drawing.svg.as_str()).collect();
            let middle = *drawings.get(drawings.len() / 2)?;
            let laid = figure::lay_over(&texts, middle.origin.is_some(), &studio)?;
            Some((Drawing { svg: laid.svg, ..middle.clone() }, laid.notes))
        };
        merge(books, Shared { map, over: &over })
    }
}

/// The width of a cloth and the length that its pieces take, to the next centimetre, as makers read them.
fn cloth_sizes(edition: &Edition<'_>, layout: &ClothLayout) -> (String, String) {
    let row = edition.fabrics.iter().find(|row| row.fabric == layout.bolt.fabric);
    let width = row.and_then(|row| row.widths.get(layout.bolt.width_at)).map(figure::numbers::spoken);
    let whole = Exact::from_integer((layout.length / 10.0).ceil() as i64 * 10);
    let quantity = Quantity { value: whole, dimension: Dimension::Length };
    let length = edition.figures(&Worked { quantity, stated: None });
    (width.unwrap_or_default(), figure::numbers::spoken(&length))
}
