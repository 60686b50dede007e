//! One booklet after its stages, owned.

use std::collections::BTreeMap;

use self_cell::self_cell;

use super::assets;
use super::cloth::{Laid, lay_cloth};
use crate::book::Photo;
use crate::checks::{self, Subject, Unchecked};
use crate::cloth::ClothLayout;
use crate::construct::{History, play};
use crate::diag::{Findings, Report, Waiver};
use crate::draw;
use crate::figure::{self, Figures, Studio};
use crate::model::Draft;
use crate::nest::Effort;
use crate::resolve::{Catalogue, Edition, Values, resolve};
use crate::source::{BookletFolder, Folder, House, Sources};
use crate::syntax::{self, Labels};

/// How far a booklet is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reach {
    /// Every value worked out; nothing is played, drawn or laid.
    Values,
    /// Every diagram drawn as well; nothing is laid, and no check is run.
    Figures,
    /// All of it, checked.
    Checks,
}

/// What every size leans on.
struct Written {
    draft: Draft,
    /// The names, for each size.
    catalogues: Vec<Catalogue>,
}

/// Every size, worked out and played.
struct Sizes<'a> {
    editions: Vec<Edition<'a>>,
    histories: Vec<History>,
}

self_cell!(
    /// A booklet as written with its sizes, which lean on it.
    struct Bench {
        owner: Written,
        #[covariant]
        dependent: Sizes,
    }
);

/// A booklet after its stages.
pub struct Workshop {
    /// Every text that was read.
    pub sources: Sources,
    /// The ids of the sizes; empty when there were no facts.
    pub sizes: Vec<String>,
    /// The diagrams; none where they were not asked for.
    pub figures: Figures,
    /// The cloth of every size, laid; in the order of the editions. Empty where it was not asked for.
    pub cloth: Vec<Vec<ClothLayout>>,
    /// Templates and fonts.
    pub house: House,
    /// The words that templates print.
    pub labels: Labels,
    /// Logo and cover, by their names.
    pub pictures: BTreeMap<String, Photo>,
    /// What is wrong, as far as was looked.
    pub report: Report,
    /// What no check looked at; empty where none was run.
    pub unchecked: Vec<Unchecked>,
    bench: Option<Bench>,
}

impl Workshop {
    /// Reads a booklet and takes it as far as is asked.
    pub fn open(folder: &Folder, booklet: &BookletFolder, reach: Reach) -> Workshop {
        let mut reading = syntax::read_booklet(folder, booklet);
        let house = assets::house(folder, booklet, &mut reading);
        let labels = syntax::read_labels(&house, &reading.sources, &mut reading.findings);
        let (sources, mut findings) = (reading.sources, reading.findings);
        let mut workshop = Workshop {
            sources,
            sizes: reading.draft.as_ref().map_or_else(Vec::new, Draft::size_ids),
            figures: Figures::default(),
            cloth: Vec::new(),
            house,
            labels,
            pictures: BTreeMap::new(),
            report: Report::default(),
            unchecked: Vec::new(),
            bench: reading.draft.map(|draft| bench(draft, reach, &mut findings)),
        };
        if reach >= Reach::Figures {
            workshop.draw(folder, &mut findings);
        }
        let laid = if reach >= Reach::Checks { lay_cloth(workshop.editions(), Effort::Quick) } else { Vec::new() };
        if reach >= Reach::Checks {
            workshop.check(&laid, &mut findings);
        }
        workshop.cloth = whole(laid);
        workshop.report(findings, reach);
        workshop
    }

    /// The booklet as written; `None` when there were no facts to work with.
    pub fn draft(&self) -> Option<&Draft> {
        self.bench.as_ref().map(|bench| &bench.borrow_owner().draft)
    }

    /// Every size, worked out; empty when there were no facts.
    pub fn editions(&self) -> &[Edition<'_>] {
        self.bench.as_ref().map_or(&[], |bench| &bench.borrow_dependent().editions)
    }

    /// Every size, played; in the order of the editions. Empty where only values were asked for.
    pub fn histories(&self) -> &[History] {
        self.bench.as_ref().map_or(&[], |bench| &bench.borrow_dependent().histories)
    }

    /// Lays all cloth anew with the effort that a printed layout deserves.
    pub fn lay_cloth_well(&mut self) {
        self.cloth = whole(lay_cloth(self.editions(), Effort::Usual));
    }

    fn draw(&mut self, folder: &Folder, findings: &mut Findings) {
        let Some(bench) = &self.bench else { return };
        let draft = &bench.borrow_owner().draft;
        let Sizes { editions, histories } = bench.borrow_dependent();
        let studio = Studio::new(&self.house, &draft.facts.style.accent.text);
        self.figures = figure::read_all(editions, folder, &studio, &mut self.sources, findings);
        draw::draw_steps(editions, histories, &studio, &mut self.figures, findings);
        self.pictures = assets::pictures(folder, draft, findings);
    }

    fn check(&mut self, laid: &[Laid], findings: &mut Findings) {
        let Some(bench) = &self.bench else { return };
        let Written { draft, .. } = bench.borrow_owner();
        let Sizes { editions, histories } = bench.borrow_dependent();
        let language = &draft.facts.language.text;
        let vocabulary = syntax::read_vocabulary(&self.house, language, &self.sources, findings);
        let subject = Subject {
            draft,
            vocabulary: &vocabulary,
            cloth: laid,
            letters: &figure::letters(&self.house),
            labels: &self.labels.own,
            editions,
            histories,
            figures: &self.figures,
        };
        checks::run_all(&subject, findings);
        self.unchecked = checks::unchecked(&subject);
    }

    fn report(&mut self, findings: Findings, reach: Reach) {
        let own = self.draft().map_or(&[][..], |draft| &draft.waivers);
        let waivers: Vec<Waiver> = own.iter().chain(&self.figures.waivers).cloned().collect();
        // A waiver of a check that was not run is not without use.
        let unused = |waiver: &Waiver| checks::unused_waiver(waiver).filter(|_| reach == Reach::Checks);
        self.report = findings.report(&self.sources, self.sizes.len(), &waivers, &unused);
    }
}

/// Works every size out, and plays it where more than values are asked for.
fn bench(draft: Draft, reach: Reach, findings: &mut Findings) -> Bench {
    let catalogues = findings.keep(Catalogue::gather(&draft));
    Bench::new(Written { draft, catalogues }, |Written { draft, catalogues }| {
        let sizes = catalogues.iter().enumerate();
        let values: Vec<Values<'_>> =
            sizes.map(|(size, names)| findings.keep(Values::of(draft, names, size))).collect();
        let both = values.into_iter().zip(catalogues);
        let resolved = both.map(|(values, names)| findings.keep(resolve(draft, names, values)));
        let editions: Vec<Edition<'_>> = resolved.collect();
        let histories = match reach {
            Reach::Values => Vec::new(),
            Reach::Figures | Reach::Checks => editions.iter().map(|edition| play(edition, None)).collect(),
        };
        Sizes { editions, histories }
    })
}

/// The layouts, without the bolts that are too narrow.
fn whole(laid: Vec<Laid>) -> Vec<Vec<ClothLayout>> {
    laid.into_iter().map(|size| size.into_iter().filter_map(Result::ok).collect()).collect()
}
