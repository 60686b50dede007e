//! One booklet after its stages, owned.

use std::collections::BTreeMap;

use self_cell::self_cell;

use super::assets;
use super::cloth::lay_cloth;
use super::ways::{Apart, apart, played};
use crate::book::Photo;
use crate::checks::{self, Ran, Subject, Unchecked};
use crate::cloth::{ClothLayout, Laid};
use crate::construct::{History, Played, play};
use crate::diag::{Findings, Report, Waiver};
use crate::draw;
use crate::figure::{self, Figures, Studio};
use crate::model::Draft;
use crate::nest::Effort;
use crate::resolve::{Catalogue, Edition, Values, Without, resolve};
use crate::source::{BookletFolder, Folder, House, Sources};
use crate::syntax::{self, Labels, Needs};

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
    /// Where something is left to the maker, the ways through each size.
    ways: Vec<Vec<Played<'a>>>,
    /// The same with what each choice adds to the lists.
    apart: Vec<Option<Apart<'a>>>,
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
    /// The same with each thing that is left to the maker, by its place in the draft; none where nothing is.
    pub cloth_with: Vec<Vec<(usize, Vec<ClothLayout>)>>,
    /// Templates and fonts.
    pub house: House,
    /// The words that templates print.
    pub labels: Labels,
    /// What work needs at hand, by the words that makers know it by.
    pub needs: Needs,
    /// Logo and cover, by their names.
    pub pictures: BTreeMap<String, Photo>,
    /// What is wrong, as far as was looked.
    pub report: Report,
    /// What no check looked at; empty where none was run.
    pub unchecked: Vec<Unchecked>,
    /// Every check and what it looked at; empty where none was run.
    pub ran: Vec<Ran>,
    bench: Option<Bench>,
}

impl Workshop {
    /// Reads a booklet and takes it as far as is asked.
    pub fn open(folder: &Folder, booklet: &BookletFolder, reach: Reach) -> Workshop {
        let mut reading = syntax::read_booklet(folder, booklet);
        let house = assets::house(folder, booklet, &mut reading);
        let labels = syntax::read_labels(&house, &reading.sources, &mut reading.findings);
        let needs = syntax::read_needs(&house, &reading.sources, &mut reading.findings);
        if let Some(draft) = &mut reading.draft {
            syntax::tell_materials(&mut draft.facts, &needs);
            draft.house = labels.plain();
        }
        let (sources, mut findings) = (reading.sources, reading.findings);
        let mut workshop = Workshop {
            sources,
            sizes: reading.draft.as_ref().map_or_else(Vec::new, Draft::size_ids),
            figures: Figures::default(),
            cloth: Vec::new(),
            cloth_with: Vec::new(),
            house,
            labels,
            needs,
            pictures: BTreeMap::new(),
            report: Report::default(),
            unchecked: Vec::new(),
            ran: Vec::new(),
            bench: reading.draft.map(|draft| bench(draft, reach, &mut findings)),
        };
        if reach >= Reach::Figures {
            workshop.draw(folder, &mut findings);
        }
        if reach >= Reach::Checks {
            let (laid, with) = workshop.lay(Effort::Quick);
            workshop.check(&laid, &with, &mut findings);
            workshop.keep((laid, with));
        }
        findings.extend(syntax::deceiving(&workshop.sources));
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

    /// What a size is listed by: what it needs whatever the maker chooses.
    pub fn always<'w>(&'w self, edition: &'w Edition<'w>) -> &'w Edition<'w> {
        self.apart(edition.size()).map_or(edition, |apart| &apart.always)
    }

    /// A size with each thing that is left to the maker, by its place in the draft.
    pub fn each_offer(&self, size: usize) -> &[(usize, Edition<'_>)] {
        self.apart(size).map_or(&[], |apart| &apart.each)
    }

    fn apart(&self, size: usize) -> Option<&Apart<'_>> {
        self.bench.as_ref()?.borrow_dependent().apart.get(size)?.as_ref()
    }

    /// Lays all cloth anew with the effort that a printed layout deserves.
    pub fn lay_cloth_well(&mut self) {
        let laid = self.lay(Effort::Usual);
        self.keep(laid);
    }

    /// The cloth of every size, and of every size with each thing that is left to the maker.
    fn lay(&self, effort: Effort) -> (Vec<Laid>, Vec<Vec<(usize, Laid)>>) {
        let always: Vec<&Edition<'_>> = self.editions().iter().map(|edition| self.always(edition)).collect();
        let with = |edition: &Edition<'_>| {
            let each = self.each_offer(edition.size());
            let editions: Vec<&Edition<'_>> = each.iter().map(|(_, edition)| edition).collect();
            each.iter().map(|(offer, _)| *offer).zip(lay_cloth(&editions, effort)).collect()
        };
        (lay_cloth(&always, effort), self.editions().iter().map(with).collect())
    }

    fn keep(&mut self, (laid, with): (Vec<Laid>, Vec<Vec<(usize, Laid)>>)) {
        self.cloth = laid.into_iter().map(whole).collect();
        let each = |with: Vec<(usize, Laid)>| with.into_iter().map(|(offer, laid)| (offer, whole(laid))).collect();
        self.cloth_with = with.into_iter().map(each).collect();
    }

    fn draw(&mut self, folder: &Folder, findings: &mut Findings) {
        let Some(bench) = &self.bench else { return };
        let draft = &bench.borrow_owner().draft;
        let Sizes { editions, histories, .. } = bench.borrow_dependent();
        let studio = Studio::new(&self.house, &draft.facts.style.accent.text);
        self.figures = figure::read_all(editions, folder, &studio, &mut self.sources, findings);
        draw::draw_steps(editions, histories, &studio, &mut self.figures, findings);
        let drawn_cover = editions.iter().any(|edition| figure::cover(edition, folder).is_some());
        self.pictures = assets::pictures(folder, draft, &self.house, drawn_cover, &mut self.sources, findings);
    }

    fn check(&mut self, laid: &[Laid], with: &[Vec<(usize, Laid)>], findings: &mut Findings) {
        let Some(bench) = &self.bench else { return };
        let Written { draft, .. } = bench.borrow_owner();
        let Sizes { editions, histories, ways, .. } = bench.borrow_dependent();
        let language = &draft.facts.language.text;
        let vocabulary = syntax::read_vocabulary(&self.house, language, &self.sources, findings);
        let subject = Subject {
            draft,
            vocabulary: &vocabulary,
            cloth: laid,
            letters: &figure::letters(&self.house),
            labels: &self.labels.own,
            needs: &self.needs,
            editions,
            histories,
            ways,
            cloth_with: with,
            figures: &self.figures,
            read: checks::StepWords::default(),
        };
        self.ran = checks::run_all(&subject, findings);
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
        let resolved = both.map(|(values, names)| findings.keep(resolve(draft, names, values, &Without::default())));
        let editions: Vec<Edition<'_>> = resolved.collect();
        if reach == Reach::Values {
            return Sizes { editions, histories: Vec::new(), ways: Vec::new(), apart: Vec::new() };
        }
        let both = || editions.iter().zip(catalogues);
        let histories = editions.iter().map(|edition| play(edition, None)).collect();
        let ways = both().map(|(edition, names)| played(edition, names)).collect();
        let apart = both().map(|(edition, names)| apart(edition, names)).collect();
        Sizes { editions, histories, ways, apart }
    })
}

/// The layouts, without the bolts that are too narrow.
fn whole(laid: Laid) -> Vec<ClothLayout> {
    laid.into_iter().filter_map(Result::ok).collect()
}
