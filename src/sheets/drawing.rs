//! Sheets as drawings, one a page, in mm at true size.

use kurbo::{Affine, Point, Rect};

use super::crowd::Crowd;
use super::face::{Face, face, is_beam};
use super::frame;
use super::gauge::{self, Sort, Told};
use super::joints::{Joint, joints};
use super::labels::{self, Words};
use super::list;
use super::names::{Names, names};
use super::plan::{SheetPlan, tile_name};
use super::sheet::{Drawn, Sheet};
use super::strokes::{folds, marks, strokes};
use super::words::house;
use crate::model::{HouseWords, by_view, spoken_sizes};
use crate::resolve::Edition;

/// One page.
#[derive(Debug, Clone)]
pub struct Page {
    /// The drawing, as large as the page.
    pub svg: String,
    /// Its name: row and column.
    pub name: String,
    /// What it shows, in words, for those who cannot see it.
    pub alt: String,
    /// What is said beside the drawing and can be read out: its name first, then the test to print and the key of
    /// lines.
    pub notes: Vec<Note>,
}

/// Words of a page that are no part of its drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The left end of the base line, in mm from the page's upper left corner.
    pub at: (f64, f64),
    /// The words.
    pub text: String,
    /// The height of the type, in mm.
    pub size: f64,
    /// What they are.
    pub sort: NoteSort,
}

/// What the words of a page are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoteSort {
    /// The page's own name.
    Name,
    /// A heading below it.
    Heading,
    /// A line of prose.
    Prose,
}

/// All pages of one plan.
#[derive(Debug, Clone)]
pub struct SheetSet {
    /// Width and height of each page, in mm.
    pub size: (f64, f64),
    /// The pages, the one with the gauge first.
    pub pages: Vec<Page>,
}

/// The longest page that readers open, in mm: 14,400 points of 1/72 in (ISO 32000-1, annex C).
pub(super) const LONGEST: f64 = 14_400.0 / 72.0 * 25.4;

/// Draws every sheet of a plan; `None` when a page would be longer than readers open.
pub fn draw_sheets(plan: &SheetPlan, editions: &[&Edition<'_>], title: &str, edition: &str) -> Option<SheetSet> {
    let (width, height) = plan.paper.size();
    let margin = plan.paper.margin(&plan.settings);
    let height = height.unwrap_or(frame::window(plan, (0, 0)).height() + 2.0 * margin);
    if height > LONGEST {
        return None;
    }
    let nests = plan.sizes.len() > 1;
    let drawn: Vec<Drawn<'_>> = plan
        .pieces
        .iter()
        .map(|piece| Drawn { piece, nested: nests && !piece.once, strokes: strokes(piece), folds: folds(piece) })
        .collect();
    let crowd = Crowd::of(plan);
    let house = house(editions);
    let told = gauge::words(plan.paper, plan.tiles.len(), &gauge::key_lines(&plan.key, house), house);
    let all = All {
        plan,
        editions,
        house,
        drawn,
        words: all_words(plan, editions, &told),
        told,
        joints: joints(plan, &crowd),
        crowd,
        views: editions.first().map_or_else(Vec::new, |edition| by_view(&edition.draft.facts.sizes)),
        title,
        edition,
    };
    let page = |(at, tile): (usize, &(usize, usize))| all.page(at, *tile, (width, height), margin);
    let pages = plan.tiles.iter().enumerate().map(page).collect();
    Some(SheetSet { size: (width, height), pages })
}

/// What all pages are drawn from.
struct All<'a> {
    plan: &'a SheetPlan,
    editions: &'a [&'a Edition<'a>],
    house: &'a HouseWords,
    drawn: Vec<Drawn<'a>>,
    words: Vec<Words>,
    told: Vec<Told>,
    crowd: Crowd,
    joints: Vec<Joint>,
    /// The sizes of each thing.
    views: Vec<Vec<usize>>,
    title: &'a str,
    edition: &'a str,
}

impl All<'_> {
    fn page(&self, at: usize, tile: (usize, usize), size: (f64, f64), margin: f64) -> Page {
        let plan = self.plan;
        let seen = frame::window(plan, tile);
        let face = face(plan.paper);
        let place = Affine::translate((margin - seen.x0, margin - seen.y0));
        let sheet =
            Sheet { plan, area: plan.tile(tile.0, tile.1), seen, place, views: &self.views, face, house: self.house };
        let mut crowd = self.crowd.within(seen.inflate(1.0, 1.0));
        let mut words: Vec<Words> = self.words.iter().filter_map(|words| sheet.settled(words)).collect();
        words.iter().for_each(|words| crowd.room(labels::room(words)));
        let name = frame::name(plan, tile);
        crowd.room(labels::room(&name));
        crowd.room(Rect::new(seen.x0, seen.y1 - face.foot.1, seen.x1, seen.y1));
        let frame = frame::frame(plan, tile, (&self.joints, self.house), &crowd);
        crowd.path(&frame.marks);
        let framed: Vec<Words> = frame.words.iter().filter_map(|words| sheet.settled(words)).collect();
        framed.iter().for_each(|words| crowd.room(labels::room(words)));
        words.extend(framed);
        let names = self.names(seen, face, &mut crowd);
        words.extend(names.words.iter().cloned());
        let foot = foot(plan, tile, at, (self.title, self.edition), self.editions);
        let mut notes = Vec::new();
        if !is_beam(plan.paper) {
            let at = place * name.at;
            notes.push(Note { at: (at.x, at.y), text: name.text, size: name.size, sort: NoteSort::Name });
        }
        if at == 0 {
            notes.extend(self.told.iter().filter_map(|told| note(told, plan, place, face)));
        }
        // A beam has no sheets to name: its first heading is the page's.
        if let Some(first) = notes.first_mut() {
            first.sort = NoteSort::Name;
        }
        Page {
            svg: sheet.draw(size, &self.drawn, &frame, (&words, &names), sheet.foot(&foot, &crowd), at == 0),
            name: tile_name(tile),
            alt: self.alt(at, tile),
            notes,
        }
    }

    /// The names of the sizes beside their lines.
    fn names(&self, seen: Rect, face: &Face, crowd: &mut Crowd) -> Names {
        let mut all = Names::default();
        let Some(facts) = self.editions.first().map(|edition| &edition.draft.facts) else { return all };
        for drawn in self.drawn.iter().filter(|drawn| drawn.nested && drawn.piece.bounds.overlaps(seen)) {
            let bounds = drawn.piece.bounds;
            let small = list::is_listed(self.plan.paper, (bounds.width(), bounds.height()), drawn.strokes.len());
            if let Some(beside) = drawn.piece.beside.filter(|_| small) {
                all.add(list::list((drawn.piece, &drawn.strokes), beside, &facts.sizes, face, crowd));
                continue;
            }
            let words = (facts.sizes.as_slice(), self.house);
            all.add(names(drawn.piece, (drawn.strokes.as_slice(), true), words, (seen, face), crowd));
            let marks = marks(drawn.piece);
            all.add(names(drawn.piece, (marks.as_slice(), false), words, (seen, face), crowd));
        }
        all
    }

    /// What a sheet shows, in words.
    fn alt(&self, at: usize, tile: (usize, usize)) -> String {
        let Some(facts) = self.editions.first().map(|edition| &edition.draft.facts) else { return String::new() };
        let here = self.plan.pieces_on(tile);
        let names: Vec<String> =
            here.map(|piece| format!("{} {}", piece.number, facts.pieces[piece.piece].name.text)).collect();
        let shown = if names.is_empty() { self.house.say("sheet_no_piece") } else { names.join(", ") };
        match is_beam(self.plan.paper) {
            true => self.house.fill("sheet_alt_beam", &[("pieces", &shown)]),
            false => {
                let (at, all) = ((at + 1).to_string(), self.plan.tiles.len().to_string());
                let places = [("name", tile_name(tile)), ("n", at), ("count", all), ("pieces", shown)];
                self.house.fill("sheet_alt", &places.each_ref().map(|(name, words)| (*name, words.as_str())))
            }
        }
    }
}

/// Words of the gauge as a note; none for a mark on the drawing.
fn note(told: &Told, plan: &SheetPlan, place: Affine, face: &Face) -> Option<Note> {
    let at = place * Point::new(plan.gauge.x0 + told.at.0, plan.gauge.y0 + told.at.1);
    let sort = match told.sort {
        Sort::Heading => NoteSort::Heading,
        Sort::Prose => NoteSort::Prose,
        Sort::Mark => return None,
    };
    Some(Note { at: (at.x, at.y), text: told.text.clone(), size: face.gauge, sort })
}

/// All words on the pieces, and the marks of the gauge.
fn all_words(plan: &SheetPlan, editions: &[&Edition<'_>], told: &[Told]) -> Vec<Words> {
    let mut words: Vec<Words> = plan.pieces.iter().flat_map(|piece| labels::words(plan, piece, editions)).collect();
    for one in told.iter().filter(|told| told.sort == Sort::Mark) {
        let at = Point::new(plan.gauge.x0 + one.at.0, plan.gauge.y0 + one.at.1);
        words.push(Words { at, text: one.text.clone(), size: face(plan.paper).gauge, strong: false, block: None });
    }
    words
}

/// The line at the foot: which sheet of what.
fn foot(
    plan: &SheetPlan,
    tile: (usize, usize),
    at: usize,
    (title, edition): (&str, &str),
    editions: &[&Edition<'_>],
) -> String {
    let house = house(editions);
    let sizes = sizes_at(plan, tile, editions);
    let own = [("title", title), ("sizes", sizes.as_str()), ("edition", edition)];
    if is_beam(plan.paper) {
        return house.fill("sheet_foot_beam", &own);
    }
    let (name, row, column) = (tile_name(tile), tile_name((tile.0, 0)), (tile.1 + 1).to_string());
    let row = row.trim_end_matches('1');
    let place = match plan.tiles.len() {
        1 => house.say("sheet_place_one"),
        _ => house.fill("sheet_place", &[("name", &name), ("row", row), ("column", &column)]),
    };
    let (page, all) = ((at + 1).to_string(), plan.tiles.len().to_string());
    let more = [("place", place.as_str()), ("n", page.as_str()), ("count", all.as_str())];
    house.fill("sheet_foot", &[own, more].concat())
}

/// The sizes that need a sheet, thing by thing.
fn sizes_at(plan: &SheetPlan, tile: (usize, usize), editions: &[&Edition<'_>]) -> String {
    let Some(facts) = editions.first().map(|edition| &edition.draft.facts) else { return String::new() };
    let shown: Vec<usize> = editions.iter().map(|edition| edition.size()).collect();
    let mut needed = Vec::new();
    for view in by_view(&facts.sizes) {
        let own: Vec<usize> = view.into_iter().filter(|size| shown.contains(size)).collect();
        if plan.sheets_of(&own).contains(&tile_name(tile)) {
            needed.extend(own);
        }
    }
    spoken_sizes(&facts.sizes, if needed.is_empty() { &shown } else { &needed })
}
