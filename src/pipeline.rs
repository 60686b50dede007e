//! The way through the house for one booklet: read, work out, draw, check, report.

use std::collections::BTreeMap;
use std::path::Path;

use rayon::iter::{IntoParallelIterator, IntoParallelRefIterator, ParallelIterator};

use crate::book::{Book, Drawing, Photo, Shared, Supplies, gather, merge, sheet_map};
use crate::checks::{self, Subject};
use crate::cloth::{Bolt, ClothFault, ClothLayout, bolts, cloth_scale, draw_cloth, lay_out};
use crate::construct::{History, play};
use crate::diag::{Finding, Findings, Report, Waiver};
use crate::draw;
use crate::faults::{FILE_UNREADABLE, TYPESETTING_DOUBTFUL, TYPESETTING_FAILED};
use crate::figure::{self, Figures, Studio};
use crate::model::{Draft, Text};
use crate::nest::Effort;
use crate::resolve::{Catalogue, Edition, PieceId, Values, resolve};
use crate::sheets::{SheetPaper, page_map, plan_all_sizes, plan_one_size};
use crate::source::{BookletFolder, Folder, House, Sources, Span};
use crate::syntax::{self, Labels};
use crate::typeset::{Paper, PressFault, Sheaf, lay_out as lay_out_book};

/// A booklet after every stage but the last.
pub struct Compiled<'a> {
    /// Every text that was read.
    pub sources: Sources,
    /// The ids of the sizes; empty when there were no facts.
    pub sizes: Vec<String>,
    /// The booklet as written; `None` when there were no facts to work with.
    pub draft: Option<&'a Draft>,
    /// Every size, worked out; empty when there was no draft.
    pub editions: &'a [Edition<'a>],
    /// Every size, played; in the order of the editions.
    pub histories: &'a [History],
    /// The diagrams.
    pub figures: Figures,
    /// The cloth of every size, laid; in the order of the editions.
    pub cloth: Vec<Vec<ClothLayout>>,
    /// Templates and fonts.
    pub house: House,
    /// The words that templates print.
    pub labels: Labels,
    /// Logo and cover, by their names.
    pub pictures: BTreeMap<String, Photo>,
    /// What is wrong.
    pub report: Report,
}

/// Compiles a booklet and hands the result to `then`, while everything it leans on is alive.
pub fn compile<R>(folder: &Folder, booklet: &BookletFolder, then: impl FnOnce(Compiled<'_>) -> R) -> R {
    let mut reading = syntax::read_booklet(folder, booklet);
    let house = house(folder, booklet, &mut reading);
    let labels = syntax::read_labels(&house, &reading.sources, &mut reading.findings);
    let Some(draft) = reading.draft.take() else {
        let report = reading.findings.report(&reading.sources, 0, &[], &checks::unused_waiver);
        return then(Compiled {
            sources: reading.sources,
            sizes: Vec::new(),
            draft: None,
            editions: &[],
            histories: &[],
            figures: Figures::default(),
            cloth: Vec::new(),
            house,
            labels,
            pictures: BTreeMap::new(),
            report,
        });
    };
    let mut findings = reading.findings;
    let mut sources = reading.sources;
    let catalogue = findings.keep(Catalogue::gather(&draft));
    let sizes = 0..draft.facts.sizes.len();
    let sheets: Vec<Values<'_>> = sizes.map(|size| findings.keep(Values::of(&draft, &catalogue, size))).collect();
    let editions: Vec<Edition<'_>> =
        sheets.iter().map(|values| findings.keep(resolve(&draft, &catalogue, values))).collect();
    let histories: Vec<History> = editions.iter().map(|edition| play(edition, None)).collect();
    let studio = Studio::new(&house, &draft.facts.style.accent.text);
    let mut figures = figure::read_all(&editions, folder, &studio, &mut sources, &mut findings);
    draw::draw_steps(&editions, &histories, &studio, &mut figures, &mut findings);
    let pictures = pictures(folder, &draft, &mut findings);
    let letters = figure::letters(&house);
    let laid = lay_cloth(&editions, Effort::Quick);
    let subject = Subject {
        draft: &draft,
        cloth: &laid,
        letters: &letters,
        labels: &labels.own,
        catalogue: &catalogue,
        editions: &editions,
        histories: &histories,
        figures: &figures,
    };
    checks::run_all(&subject, &mut findings);
    let waivers: Vec<Waiver> = draft.waivers.iter().chain(&figures.waivers).cloned().collect();
    let report = findings.report(&sources, draft.facts.sizes.len(), &waivers, &checks::unused_waiver);
    then(Compiled {
        sources,
        sizes: draft.size_ids(),
        draft: Some(&draft),
        editions: &editions,
        histories: &histories,
        figures,
        cloth: laid.into_iter().map(|size| size.into_iter().filter_map(Result::ok).collect()).collect(),
        house,
        labels,
        pictures,
        report,
    })
}

/// Templates and fonts; those of the booklet's own that cannot be used are findings.
fn house(folder: &Folder, booklet: &BookletFolder, reading: &mut syntax::Reading) -> House {
    let (house, faults) = House::of(folder, booklet);
    for fault in faults {
        let span = Span::new(reading.sources.add(fault.path, ""), 0..0);
        reading.findings.push(FILE_UNREADABLE.at(span, fault.message).hint(fault.hint));
    }
    for path in figure::broken_fonts(&house) {
        let span = Span::new(reading.sources.add(path, ""), 0..0);
        let finding = FILE_UNREADABLE.at(span, format!("`{path}` holds no font that can be read"));
        reading.findings.push(finding.hint("save the font anew, or take the file out of the folder `fonts`"));
    }
    for asset in &house.templates {
        if let Some(path) = &asset.own {
            reading.sources.add(path.clone(), asset.text());
        }
    }
    house
}

/// Reads the logo and the cover picture.
fn pictures(folder: &Folder, draft: &Draft, findings: &mut Findings) -> BTreeMap<String, Photo> {
    let style = &draft.facts.style;
    let mut found = BTreeMap::new();
    let wanted: [(&'static str, &Option<Text>); 2] = [("logo", &style.logo), ("cover", &style.cover)];
    for (name, path) in wanted {
        let Some(path) = path else { continue };
        let ending = Path::new(&path.text).extension().and_then(|ending| ending.to_str()).unwrap_or("");
        let ending = ending.to_ascii_lowercase();
        if !matches!(ending.as_str(), "svg" | "png" | "jpg" | "jpeg" | "gif" | "webp") {
            findings.push(
                FILE_UNREADABLE
                    .at(path.span, format!("`{}` is no picture that can be printed", path.text))
                    .hint("save it as SVG, PNG or JPEG"),
            );
            continue;
        }
        match folder.picture(&draft.folder.join(&path.text)) {
            Ok(bytes) => {
                found.insert(name.to_owned(), Photo { ending, bytes });
            }
            Err(fault) => findings
                .push(FILE_UNREADABLE.at(path.span, format!("`{}` {}", path.text, fault.message())).hint(fault.hint())),
        }
    }
    found
}

impl Compiled<'_> {
    /// A fault of the typesetter as a finding at the author's file: the diagram or template it
    /// complains of, or the booklet's title when it names neither.
    pub fn press_finding(
        &self,
        fault: &PressFault,
        origins: &BTreeMap<String, String>,
        size: Option<usize>,
    ) -> Option<Finding> {
        let title = self.draft?.facts.title.span;
        let span = self.press_place(fault, origins).unwrap_or(title);
        let hint = if fault.hint.is_empty() {
            "take out what was changed last and build again; a booklet's own template or picture is the likeliest cause"
        } else {
            &fault.hint
        };
        let finding = TYPESETTING_FAILED.at(span, format!("the page cannot be set: {}", fault.message)).hint(hint);
        Some(match size {
            Some(size) => finding.in_size(size, ""),
            None => finding,
        })
    }

    /// What the typesetter warns of in a file of the booklet's own; `None` for the house's files.
    pub fn press_warning(&self, fault: &PressFault, origins: &BTreeMap<String, String>) -> Option<Finding> {
        let span = self.press_place(fault, origins)?;
        let hint = if fault.hint.is_empty() { "mend it in the booklet's own template" } else { &fault.hint };
        Some(TYPESETTING_DOUBTFUL.at(span, format!("the typesetter warns: {}", fault.message)).hint(hint))
    }

    /// The author's file behind a fault of the typesetter; `None` when there is none.
    fn press_place(&self, fault: &PressFault, origins: &BTreeMap<String, String>) -> Option<Span> {
        let (path, range) = fault.place.as_ref()?;
        if let Some(file) = origins.get(path).and_then(|path| self.sources.by_path(path)) {
            let end = self.sources.file(file).text.find('>').map_or(0, |at| at + 1);
            return Some(Span::new(file, 0..end));
        }
        let own = self.house.templates.iter().find(|asset| format!("/{}", asset.name) == *path)?;
        Some(Span::new(self.sources.by_path(own.own.as_ref()?)?, range.clone()))
    }

    /// A book laid out for a paper, in the words of the house or the booklet's own.
    pub fn sheaf(&self, book: &Book, paper: Paper) -> Sheaf {
        lay_out_book(book, paper, &serde_json::Value::Object(self.labels.words.clone()))
    }

    /// Lays all cloth anew with the effort that a printed layout deserves.
    pub fn lay_cloth_well(&mut self) {
        let laid = lay_cloth(self.editions, Effort::Usual);
        self.cloth = laid.into_iter().map(|size| size.into_iter().filter_map(Result::ok).collect()).collect();
    }

    /// The book of one size; the map of its sheets is that of one paper.
    pub fn book(&self, edition: &Edition<'_>, paper: SheetPaper) -> Book {
        let facts = &edition.draft.facts;
        let studio = Studio::new(&self.house, &facts.style.accent.text);
        let dresser = studio.dresser();
        let overview = draw::overview(edition, dresser);
        let names = |piece: PieceId| facts.pieces[piece].name.text.clone();
        let plan = plan_one_size(edition, paper);
        let map = (!plan.pieces.is_empty()).then(|| page_map(&plan, &names, dresser));
        let numbers = |piece: PieceId| edition.piece_number(piece);
        let laid = self.cloth.get(edition.size()).map_or(&[][..], Vec::as_slice);
        let scale = cloth_scale(laid);
        let cloth = laid
            .iter()
            .map(|layout| {
                let (svg, size) = draw_cloth(layout, scale, &names, &numbers, dresser);
                (layout.clone(), svg, size)
            })
            .collect();
        gather(edition, &Supplies { figures: &self.figures, overview: &overview, pictures: &self.pictures, map, cloth })
    }

    /// The book of all sizes; `None` when there is no size.
    pub fn book_of_all(&self, books: &[Book], paper: SheetPaper) -> Option<Book> {
        let draft = self.draft?;
        let studio = Studio::new(&self.house, &draft.facts.style.accent.text);
        let plan = plan_all_sizes(self.editions, paper);
        let names = |piece: PieceId| draft.facts.pieces[piece].name.text.clone();
        let map = (!plan.pieces.is_empty()).then(|| sheet_map(&page_map(&plan, &names, studio.dresser())));
        let over = |drawings: &[&Drawing]| {
            let texts: Vec<&str> = drawings.iter().map(|drawing| drawing.svg.as_str()).collect();
            let middle = *drawings.get(drawings.len() / 2)?;
            Some(Drawing { svg: figure::lay_over(&texts, &studio)?, ..middle.clone() })
        };
        merge(books, Shared { map, over: &over })
    }
}

/// Lays every size's cloth, side by side: the pieces are plain data, and each layout takes its time.
/// A first look is enough to check; where it needs more than the author states, a longer one decides.
fn lay_cloth(editions: &[Edition<'_>], effort: Effort) -> Vec<Vec<Result<ClothLayout, Box<ClothFault>>>> {
    let bolts: Vec<Vec<Bolt>> = editions.iter().map(bolts).collect();
    let lay = |bolt: &Bolt| {
        let laid = lay_out(bolt, effort);
        let laid = match laid {
            Ok(layout) if effort == Effort::Quick && layout.exceeds_stated() => lay_out(bolt, Effort::Usual),
            laid => laid,
        };
        laid.map_err(|pieces| Box::new(ClothFault { bolt: bolt.clone(), pieces }))
    };
    bolts.into_par_iter().map(|bolts| bolts.par_iter().map(lay).collect()).collect()
}
