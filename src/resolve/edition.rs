//! The edition of one size, whole.

use super::lists::{CutRow, FabricRow, Lister, NotionRow};
use super::names::Catalogue;
use super::printed::{Block, FigureUse, Inline};
use super::prose::Printer;
use super::scope::Scope;
use super::shown::Shown;
use super::values::{Values, Worked};
use super::works::EditionWork;
use crate::diag::{Findings, in_sentence};
use crate::faults::VALUE_UNREADABLE;
use crate::measure::Outcome;
use crate::model::{self, Draft, Expectation, Part, ReferenceKind, Step, is_for};

/// One size, worked out.
pub struct Edition<'a> {
    /// The booklet as written.
    pub draft: &'a Draft,
    /// Its names.
    pub catalogue: &'a Catalogue,
    /// The values.
    pub values: &'a Values<'a>,
    /// What stands before and after the steps.
    pub front: FrontMatter,
    /// The parts that this size has.
    pub parts: Vec<EditionPart<'a>>,
    /// The finished measurements: name and value.
    pub finished: Vec<(String, Worked)>,
    /// What must hold, and whether it does; `None` where that could not be worked out.
    pub expectations: Vec<(&'a Expectation, Option<bool>)>,
    /// Fabrics to buy.
    pub fabrics: Vec<FabricRow>,
    /// Notions to buy.
    pub notions: Vec<NotionRow>,
    /// Pieces to cut.
    pub cuts: Vec<CutRow>,
}

/// Prose of the facts.
#[derive(Debug, Clone, Default)]
#[allow(missing_docs, reason = "named as in the facts")]
pub struct FrontMatter {
    pub read_first: Vec<Block>,
    pub cautions: Vec<Vec<Block>>,
    pub care: Vec<Block>,
    pub terms: Vec<Block>,
    pub words: Vec<(String, Vec<Block>)>,
    pub editions: Vec<(String, Option<String>, Vec<Block>)>,
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

    /// A piece's number on the page and on the sheets, from 1; pieces of other sizes are not counted.
    pub fn piece_number(&self, piece: usize) -> usize {
        let before = self.draft.facts.pieces.iter().take(piece);
        1 + before.filter(|other| is_for(other.sizes.as_ref(), self.size())).count()
    }

    /// Every step, in order.
    pub fn steps(&self) -> impl Iterator<Item = &EditionStep<'a>> {
        self.parts.iter().flat_map(|part| &part.steps)
    }

    /// Every diagram that this size mentions, with the names that its formulas may use.
    pub fn figure_uses(&self) -> Vec<(&FigureUse, Scope<'_>)> {
        let mut uses = Vec::new();
        for part in &self.parts {
            let scope =
                |step| Scope { values: self.values, params: &part.part.params, folder: &part.part.folder, step };
            Block::each_figure(&part.intro, &mut |figure| uses.push((figure, scope(None))));
            for step in &part.steps {
                uses.extend(step.figure.iter().map(|figure| (figure, scope(Some(step.step)))));
                Block::each_figure(&step.body, &mut |figure| uses.push((figure, scope(Some(step.step)))));
            }
        }
        uses
    }

    /// The value as the booklet prints it.
    pub fn figures(&self, worked: &Worked) -> Shown {
        Shown::of(worked, &self.draft.facts.show)
    }
}

impl Draft {
    /// A figure's path in one size: `{size}` filled in.
    pub fn figure_path(&self, path: &str, size: usize) -> String {
        let id = self.facts.sizes.get(size).map_or("", |size| size.id.text.as_str());
        path.replace("{size}", id)
    }
}

/// Where references of one size lead.
pub(super) struct Targets {
    size: usize,
    steps: Vec<(String, Option<usize>, bool)>,
    parts: Vec<(String, bool, String)>,
}

impl Targets {
    fn gather(draft: &Draft, size: usize) -> Targets {
        let mut targets = Targets { size, steps: Vec::new(), parts: Vec::new() };
        let mut number = 0;
        for part in &draft.parts {
            let part_here = is_for(part.sizes.as_ref(), size);
            if let Some(id) = &part.id {
                targets.parts.push((id.text.clone(), part_here, crate::syntax::plain_inline(&part.title)));
            }
            for step in &part.steps {
                let here = part_here && is_for(step.sizes.as_ref(), size);
                number += usize::from(here);
                let mut figure = false;
                step.body.iter().for_each(|block| block.each_figure(&mut |_| figure = true));
                if let Some(id) = &step.id {
                    targets.steps.push((id.text.clone(), here.then_some(number), figure));
                }
            }
        }
        targets
    }

    /// The label that a reference leads to and its usual words; `Err(true)` when the target is left
    /// out in this size, `Err(false)` when there is none at all.
    pub fn find(&self, kind: ReferenceKind, id: &str, draft: &Draft) -> Result<(String, String), bool> {
        let facts = &draft.facts;
        match kind {
            ReferenceKind::Step => {
                if let Some((_, number, _)) = self.steps.iter().find(|(known, ..)| known == id) {
                    let number = number.ok_or(true)?;
                    return Ok((format!("step-{id}"), format!("step\u{a0}{number}")));
                }
                let (_, here, title) = self.parts.iter().find(|(known, ..)| known == id).ok_or(false)?;
                if *here { Ok((format!("part-{id}"), format!("“{title}”"))) } else { Err(true) }
            }
            ReferenceKind::Figure => {
                let step = self.steps.iter().find(|(known, _, figure)| known == id && *figure);
                let (_, number, _) = step.ok_or(false)?;
                let number = number.ok_or(true)?;
                Ok((format!("figure-{id}"), format!("the diagram of step\u{a0}{number}")))
            }
            ReferenceKind::Piece => {
                let piece =
                    facts.pieces.iter().find(|piece| piece.id.text == id || piece.copies().any(|copy| copy.text == id));
                let piece = piece.ok_or(false)?;
                left_out(piece.sizes.as_ref(), self.size)?;
                let name = if piece.id.text == id { in_sentence(&piece.name.text) } else { id.replace('_', " ") };
                Ok((format!("piece-{}", piece.id.text), name))
            }
            ReferenceKind::Notion => {
                let notion = facts.notions.iter().find(|notion| notion.id.text == id).ok_or(false)?;
                left_out(notion.sizes.as_ref(), self.size)?;
                Ok((format!("notion-{id}"), in_sentence(&notion.name.text)))
            }
            ReferenceKind::Fabric => {
                let fabric = facts.fabrics.iter().find(|fabric| fabric.id.text == id).ok_or(false)?;
                left_out(fabric.sizes.as_ref(), self.size)?;
                Ok((format!("fabric-{id}"), in_sentence(&fabric.name.text)))
            }
            ReferenceKind::Term => {
                let word = facts.words.iter().find(|word| word.term.text == id).ok_or(false)?;
                Ok((format!("term-{}", label(id)), word.term.text.clone()))
            }
        }
    }

    /// The ids that a reference of a kind could have named.
    pub fn names(&self, kind: ReferenceKind, draft: &Draft) -> Vec<String> {
        let facts = &draft.facts;
        match kind {
            ReferenceKind::Step => {
                let steps = self.steps.iter().map(|(id, ..)| id.clone());
                steps.chain(self.parts.iter().map(|(id, ..)| id.clone())).collect()
            }
            ReferenceKind::Figure => {
                self.steps.iter().filter(|(_, _, figure)| *figure).map(|(id, ..)| id.clone()).collect()
            }
            ReferenceKind::Piece => {
                let copies = facts.pieces.iter().flat_map(|piece| piece.copies());
                facts.pieces.iter().map(|piece| &piece.id).chain(copies).map(|name| name.text.clone()).collect()
            }
            ReferenceKind::Notion => facts.notions.iter().map(|notion| notion.id.text.clone()).collect(),
            ReferenceKind::Fabric => facts.fabrics.iter().map(|fabric| fabric.id.text.clone()).collect(),
            ReferenceKind::Term => facts.words.iter().map(|word| word.term.text.clone()).collect(),
        }
    }
}

/// `Err(true)` when something is not for a size.
fn left_out(sizes: Option<&Vec<usize>>, size: usize) -> Result<(), bool> {
    if is_for(sizes, size) { Ok(()) } else { Err(true) }
}

/// A term as part of a label on the page.
fn label(term: &str) -> String {
    term.chars().map(|letter| if letter.is_alphanumeric() { letter } else { '-' }).collect()
}

/// Works one size out; what cannot be worked out is a finding in that size.
pub fn resolve<'a>(
    draft: &'a Draft,
    catalogue: &'a Catalogue,
    values: &'a Values<'a>,
    findings: &mut Findings,
) -> Edition<'a> {
    let targets = Targets::gather(draft, values.size());
    let front = front(draft, &targets, values, findings);
    let mut number = 0;
    let mut parts = Vec::new();
    for part in draft.parts.iter().filter(|part| is_for(part.sizes.as_ref(), targets.size)) {
        let mut steps = Vec::new();
        let scope = |step: Option<&'a Step>| Scope { values, params: &part.params, folder: &part.folder, step };
        let mut printer = Printer { draft, targets: &targets, scope: scope(None), findings };
        let title = printer.inlines(&part.title);
        let intro = printer.blocks(&part.intro);
        for step in part.steps.iter().filter(|step| is_for(step.sizes.as_ref(), targets.size)) {
            number += 1;
            let works = step
                .works
                .iter()
                .map(|work| EditionWork::new(work, draft, catalogue, &scope(Some(step)), findings))
                .collect();
            let mut printer = Printer { draft, targets: &targets, scope: scope(Some(step)), findings };
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
    let finished = facts
        .finished
        .iter()
        .filter_map(|row| Some((row.name.text.clone(), values.by_size(&row.value, findings)?)))
        .collect();
    let expectations =
        facts.expect.iter().map(|expectation| (expectation, holds(expectation, values, findings))).collect();
    let lister = Lister { draft, targets: &targets, values };
    let (fabrics, notions, cuts) = (lister.fabrics(findings), lister.notions(findings), lister.cuts(findings));
    Edition { draft, catalogue, values, front, parts, finished, expectations, fabrics, notions, cuts }
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

fn front(draft: &Draft, targets: &Targets, values: &Values<'_>, findings: &mut Findings) -> FrontMatter {
    let facts = &draft.facts;
    let mut printer = Printer { draft, targets, scope: Scope::plain(values), findings };
    FrontMatter {
        read_first: printer.blocks(&facts.read_first),
        cautions: facts.cautions.iter().map(|caution| printer.blocks(caution)).collect(),
        care: printer.blocks(&facts.care),
        terms: printer.blocks(&facts.terms),
        words: facts.words.iter().map(|word| (word.term.text.clone(), printer.blocks(&word.meaning))).collect(),
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
