//! The gathering of one size: the head of the book, and what the other files of this folder share.

use std::collections::BTreeMap;

use crate::book::film::Film;
use crate::book::volume::{Book, Caution, Drawing, KeyEntry, PatternView, Photo, Release, Size, Tool, Word};
use crate::cloth::ClothLayout;
use crate::draw::{Overview, Things};
use crate::figure::{self, Figures};
use crate::model::{self, Date, Text, Wearer, by_view, is_for};
use crate::resolve::{Edition, Ids, slug};
use crate::sheets::PageMap;

/// What an edition is gathered with beside its own words.
pub struct Supplies<'a> {
    /// The diagrams.
    pub figures: &'a Figures,
    /// The pieces, drawn to one scale.
    pub overview: &'a Overview,
    /// The thing made up, and at the end of each part.
    pub things: &'a Things,
    /// Logo and cover, by their names.
    pub pictures: &'a BTreeMap<String, Photo>,
    /// The map of its pattern sheets; `None` where there are no pieces.
    pub map: Option<PageMap>,
    /// What the size needs whatever the maker chooses.
    pub always: &'a Edition<'a>,
    /// The size with each thing that is left to the maker, by its place in the draft, and the cloth laid for it.
    pub offers: Vec<(usize, &'a Edition<'a>, &'a [ClothLayout])>,
    /// The cloth laid for what is always needed, each layout with its drawing and the drawing's size in mm.
    pub cloth: Vec<(ClothLayout, String, (f64, f64))>,
}

/// Gathers one edition.
pub fn gather(edition: &Edition<'_>, supplies: &Supplies<'_>) -> Book {
    let mut gatherer = Gatherer {
        edition,
        supplies,
        size: edition.size(),
        ids: Ids::of(edition.draft),
        drawings: BTreeMap::new(),
        pictures_of: BTreeMap::new(),
    };
    gatherer.book()
}

/// What lists are made of: a size with its cloth laid.
pub(in crate::book) struct Lists<'a> {
    pub edition: &'a Edition<'a>,
    pub cloth: Vec<&'a ClothLayout>,
}

impl<'a> Lists<'a> {
    pub fn of(edition: &'a Edition<'a>, cloth: impl Iterator<Item = &'a ClothLayout>) -> Lists<'a> {
        Lists { edition, cloth: cloth.collect() }
    }
}

/// A book in the making.
pub(in crate::book) struct Gatherer<'a> {
    pub edition: &'a Edition<'a>,
    pub supplies: &'a Supplies<'a>,
    pub size: usize,
    pub ids: Ids,
    pub drawings: BTreeMap<String, Drawing>,
    /// How many diagrams each step or part has shown so far.
    pub pictures_of: BTreeMap<String, usize>,
}

impl Gatherer<'_> {
    /// Puts a drawing among those of the book.
    pub fn draw(&mut self, name: &str, svg: &str, size: (f64, f64), origin: Option<String>) {
        let drawing = Drawing::new(svg.to_owned(), size, origin);
        self.drawings.insert(name.to_owned(), drawing);
    }

    fn book(&mut self) -> Book {
        let edition = self.edition;
        let facts = &edition.draft.facts;
        let words = |text: &Option<Text>| text.as_ref().map(|text| text.text.clone());
        let front = &edition.front;
        let picture = |name: &str| self.supplies.pictures.contains_key(name).then(|| name.to_owned());
        let (logo, cover) = (picture("logo"), picture("cover"));
        let wearer = edition.size_facts().wearer;
        let key = self.key();
        let parts = self.parts();
        let allowances = self.allowances();
        let supplies = self.supplies;
        let always = Lists::of(supplies.always, supplies.cloth.iter().map(|(layout, ..)| layout));
        let (fabrics, notions, cuts) = (self.fabrics(&always), self.notions(&always), self.cuts(&always));
        let film = self.film();
        let (pieces, layouts, map) = (self.pieces(), self.layouts(), self.map());
        let (things, cover_drawn) = (self.made_up(), self.cover());
        Book {
            title: facts.title.text.clone(),
            designer: words(&facts.designer).unwrap_or_default(),
            edition: facts.edition.text.clone(),
            date: date(facts.date.as_ref().map(|date| date.text.as_str())),
            language: facts.language.text.clone(),
            skill: words(&facts.skill),
            time: self.blocks(&front.time, "time"),
            summary: words(&facts.summary),
            contact: words(&facts.contact),
            sizes: facts
                .sizes
                .iter()
                .map(|size| Size {
                    id: size.id.text.clone(),
                    name: size.name.clone(),
                    child: size.wearer == Wearer::Child,
                })
                .collect(),
            views: views(&facts.sizes),
            shown: vec![self.size],
            accent: facts.style.accent.text.clone(),
            logo,
            cover,
            cover_alt: words(&facts.style.cover_alt),
            cover_drawn,
            read_first: self.blocks(&front.read_first, "read-first"),
            cautions: front
                .cautions
                .iter()
                .map(|(at, caution)| Caution {
                    at: *at,
                    content: self.blocks(caution, "cautions"),
                    sizes: self.written_for(&[facts.cautions[*at].sizes.as_ref()]),
                })
                .collect(),
            child_caution: wearer == Wearer::Child,
            allowances,
            key,
            body: self.body(),
            finished: self.finished(),
            fabrics,
            notions,
            tools: self.tools(),
            things,
            pieces,
            cuts,
            offers: self.offers(),
            layouts,
            map,
            parts,
            help: self.help(),
            words: front
                .words
                .iter()
                .map(|(at, term, meaning)| Word {
                    id: slug(term, "term"),
                    at: *at,
                    term: term.clone(),
                    meaning: self.blocks(meaning, "words"),
                })
                .collect(),
            care: self.blocks(&front.care, "care"),
            terms: self.blocks(&front.terms, "terms"),
            record: front
                .editions
                .iter()
                .map(|(edition, written, changes)| Release {
                    edition: edition.clone(),
                    date: date(written.as_deref()),
                    changes: self.blocks(changes, "record"),
                })
                .collect(),
            film,
            drawings: std::mem::take(&mut self.drawings),
            pictures: self.supplies.pictures.clone(),
        }
    }

    fn film(&mut self) -> Option<Film> {
        let edition = self.edition;
        let video = edition.draft.facts.video.as_ref()?;
        let code = figure::code(&video.url.text).map(|(svg, side)| {
            let name = "video/code".to_owned();
            self.draw(&name, &svg, (side, side), None);
            name
        });
        let opening = video.opening.as_ref().map(|opening| opening.text.clone());
        Some(Film { url: video.url.text.clone(), opening, code })
    }

    fn tools(&self) -> Vec<Tool> {
        let tools = self.edition.draft.facts.tools.iter().enumerate();
        tools
            .filter(|(_, tool)| is_for(tool.sizes.as_ref(), self.size))
            .map(|(at, tool)| Tool {
                name: tool.name.text.clone(),
                at,
                sizes: self.written_for(&[tool.sizes.as_ref()]),
            })
            .collect()
    }

    fn key(&mut self) -> Vec<KeyEntry> {
        figure::key(self.supplies.figures, self.size)
            .into_iter()
            .map(|entry| {
                let drawing = format!("key/{}", entry.class);
                self.draw(&drawing, &entry.swatch, (12.0, 8.0), None);
                KeyEntry { class: entry.class.to_owned(), drawing }
            })
            .collect()
    }
}

/// The things that the pattern is for.
fn views(sizes: &[model::Size]) -> Vec<PatternView> {
    let named = |own: Vec<usize>| {
        let view = sizes[own[0]].view.as_ref()?;
        Some(PatternView { id: view.id.text.clone(), name: view.name.text.clone(), sizes: own })
    };
    by_view(sizes).into_iter().filter_map(named).collect()
}

/// A date as written, where it is one.
fn date(written: Option<&str>) -> Option<String> {
    written.filter(|written| Date::parse(written).is_some()).map(str::to_owned)
}
