//! The edition of one size, whole.

use std::collections::BTreeSet;

use super::bought::NotionRow;
use super::cast::{Cast, CopyId};
use super::fit::{self, FitRow};
use super::glossary::glossary;
use super::help::{Answer, answers};
use super::ids::{EdgeId, FabricId, PieceId};
use super::lists::{CutRow, FabricRow, Lister};
use super::names::Catalogue;
use super::printed::{Block, FigureUse, Inline};
use super::prose::printing;
use super::references::Ends;
use super::scope::Scope;
use super::sewn::{self, SewnRow};
use super::shown::{Shown, width_figures};
use super::target::Resolver;
use super::uses::{Told, Uses};
use super::values::Values;
use super::within::Inside;
use super::without::{Without, rivals};
use super::worked::Worked;
use super::works::EditionWork;
use crate::diag::{Findings, in_sentence};
use crate::faults::VALUE_UNREADABLE;
use crate::geometry::Edge;
use crate::measure::Outcome;
use crate::model::{self, Draft, Expectation, Part, Step, is_for, spoken_sizes};

/// One size, worked out.
pub struct Edition<'a> {
    /// The booklet as written.
    pub draft: &'a Draft,
    /// Its names.
    pub catalogue: &'a Catalogue,
    /// What it leaves out; nothing where the booklet is whole.
    pub without: Without,
    /// Every copy of its pieces.
    pub cast: Cast,
    /// The values.
    pub values: Values<'a>,
    /// What stands before and after the steps.
    pub front: FrontMatter,
    /// The parts that this size has.
    pub parts: Vec<EditionPart<'a>>,
    /// The body's measurements.
    pub body: Vec<FitRow>,
    /// The finished measurements.
    pub finished: Vec<FitRow>,
    /// Those that say what they measure.
    pub sewn: Vec<SewnRow>,
    /// What must hold, and whether it does; `None` where that could not be worked out.
    pub expectations: Vec<(&'a Expectation, Option<bool>)>,
    /// Fabrics to buy.
    pub fabrics: Vec<FabricRow>,
    /// Notions to buy.
    pub notions: Vec<NotionRow>,
    /// Pieces to cut.
    pub cuts: Vec<CutRow>,
    /// What its formulas name and print, those of diagrams left out.
    pub uses: Uses,
}

/// Prose of the facts.
#[derive(Debug, Clone, Default)]
#[allow(missing_docs, reason = "named as in the facts")]
pub struct FrontMatter {
    pub time: Vec<Block>,
    pub read_first: Vec<Block>,
    pub cautions: Vec<(usize, Vec<Block>)>,
    pub care: Vec<Block>,
    pub terms: Vec<Block>,
    pub words: Vec<(usize, String, Vec<Block>)>,
    pub editions: Vec<(String, Option<String>, Vec<Block>)>,
    pub help: Vec<Answer>,
}

/// A part of one size.
pub struct EditionPart<'a> {
    /// As written.
    pub part: &'a Part,
    /// The heading.
    pub title: Vec<Inline>,
    /// The words before the first step.
    pub intro: Vec<Block>,
    /// The steps that this size has.
    pub steps: Vec<EditionStep<'a>>,
}

/// A step of one size.
pub struct EditionStep<'a> {
    /// As written.
    pub step: &'a Step,
    /// Its number, through the whole booklet.
    pub number: usize,
    /// The heading.
    pub title: Vec<Inline>,
    /// The words, with every diagram but the first.
    pub body: Vec<Block>,
    /// The first diagram.
    pub figure: Option<FigureUse>,
    /// What is done.
    pub works: Vec<EditionWork<'a>>,
}

impl<'a> Edition<'a> {
    /// The size, by its place in `sizes`.
    pub fn size(&self) -> usize {
        self.values.size()
    }

    /// The size as written.
    pub fn size_facts(&self) -> &'a model::Size {
        &self.draft.facts.sizes[self.size()]
    }

    /// The size as commands tell it: with the thing that it is a size of, where the pattern is for several.
    pub fn size_name(&self) -> String {
        spoken_sizes(&self.draft.facts.sizes, &[self.size()])
    }

    /// A piece's number on the page and on the sheets, from 1; pieces of other sizes are not counted, but in a pattern
    /// for several things, whose pieces are numbered through (common practice, no source).
    pub fn piece_number(&self, piece: PieceId) -> usize {
        if self.size_facts().view.is_some() {
            return piece.at() + 1;
        }
        let before = self.draft.facts.pieces.iter().take(piece.at());
        1 + before.filter(|other| is_for(other.sizes.as_ref(), self.size())).count()
    }

    /// What a copy is called on the page: by its own name, or by its piece's where copies are only counted.
    pub fn copy_name(&self, copy: CopyId) -> String {
        let member = &self.cast[copy];
        match member.named {
            true => self.draft.facts.pieces[member.piece].copy_called(&member.name),
            false => in_sentence(&self.draft.facts.pieces[member.piece].name.text),
        }
    }

    /// The edge of a copy as authors write it: `lining_front.top`.
    pub fn edge_name(&self, copy: CopyId, edge: EdgeId) -> String {
        format!("{}.{}", self.cast[copy].name, self.edge_word(copy, edge))
    }

    /// A dart, a pleat or a mark of a copy as authors write it: `front.bust`.
    pub fn inside_name(&self, copy: CopyId, inside: Inside) -> String {
        let piece = &self.draft.facts.pieces[self.cast[copy].piece];
        format!("{}.{}", self.cast[copy].name, inside.called(piece).0.text)
    }

    /// The edge's own name.
    pub fn edge_word(&self, copy: CopyId, edge: EdgeId) -> String {
        self.edge(copy, edge).map_or(String::new(), |edge| edge.name.clone())
    }

    /// The name of the drawn edge that it is, or is a half of: what the facts of the piece call it.
    pub fn drawn_word(&self, copy: CopyId, edge: EdgeId) -> String {
        self.edge(copy, edge).map_or(String::new(), |edge| edge.drawn.clone())
    }

    /// The edge of a copy, of one cut on the fold as it is opened; `None` where the outline could not be worked
    /// out.
    pub fn edge(&self, copy: CopyId, edge: EdgeId) -> Option<&Edge> {
        self.values.whole(self.cast[copy].piece)?.edges().get(edge.at())
    }

    /// The edges of a copy, the line of a fold left out; none where its outline could not be worked out.
    pub fn edges_of(&self, copy: CopyId) -> Vec<EdgeId> {
        let edges = self.values.whole(self.cast[copy].piece).map_or(&[][..], |shape| shape.edges());
        EdgeId::each(edges).filter(|(_, edge)| !edge.on_fold).map(|(edge, _)| edge).collect()
    }

    /// What is left to the maker in this size, by its places in the draft.
    pub fn offered(&self) -> BTreeSet<usize> {
        self.steps().filter_map(|step| step.step.offer).collect()
    }

    /// The steps that lead to the one of that number, or to the end: of each choice one way alone, that of the step
    /// itself or the first.
    pub fn steps_to(&self, last: Option<usize>) -> impl Iterator<Item = &EditionStep<'a>> {
        let taken = self.steps().find(|step| Some(step.number) == last).and_then(|step| step.step.offer);
        let out = rivals(&self.draft.offers, &self.offered(), taken);
        let goes = move |step: &&EditionStep<'_>| step.step.offer.is_none_or(|offer| !out.contains(&offer));
        self.steps().filter(goes).take_while(move |step| last.is_none_or(|last| step.number <= last))
    }

    /// Every step, in order.
    pub fn steps(&self) -> impl Iterator<Item = &EditionStep<'a>> {
        self.parts.iter().flat_map(|part| &part.steps)
    }

    /// Every diagram that this size mentions, with the names that its formulas may use.
    pub fn figure_uses(&self) -> Vec<(&FigureUse, Scope<'_>)> {
        let mut uses = Vec::new();
        for part in &self.parts {
            let scope = |step| Scope {
                values: &self.values,
                params: part.part.params.of(self.size()),
                folder: &part.part.folder,
                step,
            };
            Block::each_figure(&part.intro, &mut |figure| uses.push((figure, scope(None))));
            for step in &part.steps {
                uses.extend(step.figure.iter().map(|figure| (figure, scope(Some(step.step)))));
                Block::each_figure(&step.body, &mut |figure| uses.push((figure, scope(Some(step.step)))));
            }
        }
        uses
    }

    /// The width of a cloth as the booklet prints it wherever it names it: which fabric and which of
    /// its widths, by their places in the facts.
    pub fn cloth_width(&self, fabric: FabricId, width_at: usize) -> Option<Shown> {
        let width = self.draft.facts.fabrics[fabric].widths.get(width_at)?;
        Some(width_figures(&self.values.quiet(width)?, &self.draft.facts.show))
    }

    /// The value as the booklet prints it.
    pub fn figures(&self, worked: &Worked) -> Shown {
        Shown::of(worked, &self.draft.facts.show)
    }
}

impl Draft {
    /// A figure's path in one size: `{size}` filled in, and `{view}`, which is the size's own name where the pattern is
    /// for one thing.
    pub fn figure_path(&self, path: &str, size: usize) -> String {
        let Some(size) = self.facts.sizes.get(size) else { return path.to_owned() };
        let view = size.view.as_ref().map_or(&size.id, |view| &view.id);
        path.replace("{size}", &size.id.text).replace("{view}", &view.text)
    }
}

/// Works one size out; what cannot be worked out is a finding in that size, handed back beside it. What is left out
/// has no steps in it and no pieces; all others keep their numbers.
pub fn resolve<'a>(
    draft: &'a Draft,
    catalogue: &'a Catalogue,
    worked: Values<'a>,
    without: &Without,
) -> (Edition<'a>, Findings) {
    let values = &worked;
    let mut told = Told { findings: Findings::default(), uses: Uses::of_facts(&draft.facts) };
    let ends = Ends::gather(draft, values.size());
    let cast = Cast::of(draft, values, without);
    let resolver = Resolver { draft, catalogue, values, cast: &cast };
    let front = front(draft, &ends, values, &mut told);
    let mut number = 0;
    let mut parts = Vec::new();
    for (at, part) in draft.parts.iter().enumerate().filter(|(_, part)| is_for(part.sizes.as_ref(), values.size())) {
        let mut steps = Vec::new();
        let scope = |step: Option<&'a Step>| Scope {
            values,
            params: part.params.of(values.size()),
            folder: &part.folder,
            step,
        };
        let mut printer = printing(draft, (&ends, Some(at)), scope(None), &mut told);
        let title = printer.inlines(&part.title);
        let intro = printer.blocks(&part.intro);
        for step in part.steps.iter().filter(|step| is_for(step.sizes.as_ref(), values.size())) {
            number += 1;
            if without.skips(step) {
                continue;
            }
            let works = step
                .works
                .iter()
                .map(|work| {
                    let worked = EditionWork::new(work, &resolver, &scope(Some(step)), without, &mut told);
                    let note = printing(draft, (&ends, Some(at)), scope(Some(step)), &mut told).blocks(&work.note);
                    EditionWork { note, ..worked }
                })
                .collect();
            let mut printer = printing(draft, (&ends, Some(at)), scope(Some(step)), &mut told);
            let title = printer.inlines(&step.title);
            let mut body = printer.blocks(&step.body);
            let first = body.iter().position(|block| matches!(block, Block::Figure(_)));
            let figure = match first.map(|at| body.remove(at)) {
                Some(Block::Figure(figure)) => Some(figure),
                _ => None,
            };
            steps.push(EditionStep { step, number, title, body, figure, works });
        }
        parts.push(EditionPart { part, title, intro, steps });
    }
    let facts = &draft.facts;
    let (body, finished) = fit::rows(draft, values, &mut told);
    let expectations = facts
        .expect
        .iter()
        .filter(|expectation| is_for(expectation.sizes.as_ref(), values.size()))
        .map(|expectation| (expectation, holds(expectation, values, &mut told.findings)))
        .collect();
    let sewn = sewn::rows(draft, catalogue, values, &cast, &mut told.findings);
    let lister = Lister { draft, ends: &ends, values, without };
    let (fabrics, notions, cuts) = (lister.fabrics(&mut told), lister.notions(&mut told), lister.cuts(&mut told));
    let edition = Edition {
        draft,
        catalogue,
        without: without.clone(),
        cast,
        values: worked,
        front,
        parts,
        body,
        finished,
        sewn,
        expectations,
        fabrics,
        notions,
        cuts,
        uses: told.uses,
    };
    (edition, told.findings)
}

fn holds(expectation: &Expectation, values: &Values<'_>, findings: &mut Findings) -> Option<bool> {
    match values.outcome(&expectation.that, values, findings)? {
        Outcome::Truth(truth) => Some(truth),
        _ => {
            findings.push(
                VALUE_UNREADABLE
                    .at(expectation.that.span(), "an expectation compares two figures")
                    .hint("write a comparison, such as `zip.length >= opening`")
                    .in_size(values.size(), ""),
            );
            None
        }
    }
}

fn front(draft: &Draft, ends: &Ends, values: &Values<'_>, told: &mut Told) -> FrontMatter {
    let facts = &draft.facts;
    let help = answers(draft, ends, values, told);
    let mut printer = printing(draft, (ends, None), Scope::plain(values), told);
    FrontMatter {
        help,
        time: printer.blocks(&facts.time),
        read_first: printer.blocks(&facts.read_first),
        cautions: facts
            .cautions
            .iter()
            .enumerate()
            .filter(|(_, caution)| is_for(caution.sizes.as_ref(), values.size()))
            .map(|(at, caution)| (at, printer.blocks(&caution.content)))
            .collect(),
        care: printer.blocks(&facts.care),
        terms: printer.blocks(&facts.terms),
        words: glossary(draft, values.size())
            .into_iter()
            .map(|(at, word)| (at, word.term.text.clone(), printer.blocks(&word.meaning)))
            .collect(),
        editions: facts
            .editions
            .iter()
            .map(|edition| {
                let date = edition.date.as_ref().map(|date| date.text.clone());
                (edition.edition.text.clone(), date, printer.blocks(&edition.changes))
            })
            .collect(),
    }
}
