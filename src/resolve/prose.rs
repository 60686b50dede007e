//! Prose for one size: values worked out, choices made, references led to their end.

use super::handed;
use super::printed::{Aim, Block, FigureUse, Inline, ListItem, Pointer};
use super::references::Ends;
use super::scope::Scope;
use super::shown::{Shown, stitch_figures};
use super::uses::{Told, Uses};
use super::worked::Worked;
use crate::diag::{Finding, Findings, did_you_mean, in_sentence};
use crate::faults::{
    CHOICE_NOT_COVERED, FIGURE_MISPLACED, REFERENCE_BROKEN, REFERENCE_LEFT_OUT, TERM_UNDEFINED, UNIT_MISMATCH,
};
use crate::measure::{Dimension, Exact, ExprKind, Lookup, Names, Unit, in_words};
use crate::model::{
    self, Alignment, Brace, Draft, Expression, Filter, NoticeKind, Reference, ReferenceKind, Show, Step,
};

/// Turns the words of one step, part or fact into those of one size.
pub(super) struct Printer<'a> {
    pub draft: &'a Draft,
    pub ends: &'a Ends,
    /// The place under `parts:` of the part whose words these are; `None` for words of the facts.
    pub part: Option<usize>,
    pub scope: Scope<'a>,
    pub findings: &'a mut Findings,
    pub uses: &'a mut Uses,
}

/// A printer of words of the facts, or of a part by its place.
pub(super) fn printing<'a>(
    draft: &'a Draft,
    (ends, part): (&'a Ends, Option<usize>),
    scope: Scope<'a>,
    told: &'a mut Told,
) -> Printer<'a> {
    Printer { draft, ends, part, scope, findings: &mut told.findings, uses: &mut told.uses }
}

/// Words before a figure that call it a stitch length, and how the words behind one begin that do.
const STITCH_BEFORE: [&str; 5] = ["stitch length of", "stitch length", "stitches of", "stitch of", "stitch length:"];
const STITCH_BEHIND: [&str; 3] = ["stitch", "long stitch", "machine stitch"];

/// Whether the words on both sides of a figure call it a stitch length: "a stitch length of {2.5 mm}",
/// "a {3 mm} stitch".
fn is_called_stitch((before, after): (&str, &str)) -> bool {
    let before = before.trim_end().to_lowercase();
    let after = after.trim_start().to_lowercase();
    STITCH_BEFORE.iter().any(|words| before.ends_with(words))
        || STITCH_BEHIND.iter().any(|words| after.starts_with(words))
}

impl Printer<'_> {
    fn size(&self) -> usize {
        self.scope.values.size()
    }

    pub fn blocks(&mut self, blocks: &[model::Block]) -> Vec<Block> {
        let mut printed = Vec::new();
        for block in blocks {
            self.block(block, &mut printed);
        }
        printed
    }

    fn block(&mut self, block: &model::Block, printed: &mut Vec<Block>) {
        match block {
            model::Block::Paragraph(content) => {
                let content = self.inlines(content);
                printed.push(Block::Paragraph { content });
            }
            model::Block::Heading(level, content, _) => {
                let content = self.inlines(content);
                printed.push(Block::Heading { level: *level, content });
            }
            model::Block::List(start, items) => self.list(*start, items, printed),
            model::Block::Quote(content) => {
                let content = self.blocks(content);
                printed.push(Block::Quote { content });
            }
            model::Block::Notice(kind, content) => {
                let content = self.blocks(content);
                printed.push(Block::Notice { notice: notice(*kind), content });
            }
            model::Block::Code(text) => printed.push(Block::Code { text: text.text.clone() }),
            model::Block::Rule => printed.push(Block::Rule),
            model::Block::Table(table) => {
                let align = table.columns.iter().map(|column| alignment(*column)).collect();
                let header = table.header.iter().map(|cell| self.inlines(cell)).collect();
                let rows = table.rows.iter().map(|row| row.iter().map(|cell| self.inlines(cell)).collect()).collect();
                printed.push(Block::Table { align, header, rows });
            }
            model::Block::Figure(figure) => {
                let alt = self.inlines(&figure.alt);
                let path = self.draft.figure_path(&figure.path.text, self.size());
                // A diagram that the compiler draws belongs to its step, not to a folder.
                let drawn = path.starts_with("draw:");
                let path = match drawn {
                    true => path,
                    false => self.scope.folder.join(path).to_string_lossy().replace('\\', "/"),
                };
                let key = self.figure_key(&path, drawn);
                printed.push(Block::Figure(FigureUse { path, key, alt, span: figure.span }));
            }
        }
    }

    /// What tells a diagram from the same one elsewhere: the parameters of its part, and the step where
    /// its formulas may name the step's own facts.
    fn figure_key(&self, path: &str, drawn: bool) -> String {
        let params: Vec<String> =
            self.scope.params.iter().map(|param| format!("{}={}", param.name.text, param.text.text)).collect();
        let step = self.scope.step.filter(|step| drawn || has_facts(step));
        let place = step.and_then(|step| self.draft.steps().position(|(_, known)| std::ptr::eq(known, step)));
        format!("{path}{}?{}", place.map_or(String::new(), |place| format!("#{place}")), params.join("&"))
    }

    /// A list whose items are boxes to tick is a list of tasks; a mixed one is split.
    fn list(&mut self, start: Option<u64>, items: &[model::ListItem], printed: &mut Vec<Block>) {
        let mut at = 0;
        while at < items.len() {
            let task = items[at].task;
            let run = items[at..].iter().take_while(|item| item.task == task).count();
            let contents: Vec<Vec<Block>> = items[at..at + run].iter().map(|item| self.blocks(&item.content)).collect();
            printed.push(match task {
                true => Block::Tasks { items: contents.into_iter().map(|content| ListItem { content }).collect() },
                false => {
                    Block::List { ordered: start.is_some(), start: start.unwrap_or(1) + at as u64, items: contents }
                }
            });
            at += run;
        }
    }

    pub fn inlines(&mut self, content: &[model::Inline]) -> Vec<Inline> {
        let mut printed = Vec::new();
        for (at, inline) in content.iter().enumerate() {
            match inline {
                model::Inline::Text(text) => printed.push(Inline::Text { text: text.text.clone() }),
                model::Inline::Strong(inner) => {
                    let content = self.inlines(inner);
                    printed.push(Inline::Strong { content });
                }
                model::Inline::Emphasis(inner) => {
                    let content = self.inlines(inner);
                    printed.push(Inline::Emphasis { content });
                }
                model::Inline::Code(text) => printed.push(Inline::Code { text: text.text.clone() }),
                model::Inline::Break => printed.push(Inline::Break),
                model::Inline::Brace(brace) => {
                    let words = |at: Option<usize>| match at.and_then(|at| content.get(at)) {
                        Some(model::Inline::Text(text)) => text.text.as_str(),
                        _ => "",
                    };
                    self.brace(brace, (words(at.checked_sub(1)), words(Some(at + 1))), &mut printed);
                }
                model::Inline::Reference(reference) => {
                    let several = self.counts_several(content, at);
                    let inline = self.reference(reference, several);
                    printed.push(inline);
                }
                model::Inline::Link(url, inner) => {
                    let content = self.inlines(inner);
                    printed.push(Inline::Link { url: url.text.clone(), content });
                }
                model::Inline::Footnote(blocks) => {
                    let content = self.blocks(blocks);
                    printed.push(Inline::Footnote { content });
                }
                model::Inline::Figure(figure) => {
                    self.findings.push(
                        FIGURE_MISPLACED
                            .at(figure.span, "a diagram cannot stand inside a line here")
                            .hint("give it a paragraph of its own"),
                    );
                }
            }
        }
        printed
    }

    /// `beside` is what stands before the braces and behind them.
    fn brace(&mut self, brace: &Brace, beside: (&str, &str), printed: &mut Vec<Inline>) {
        match brace {
            Brace::Print { value, filter, .. } => {
                let (show, told) = (&self.draft.facts.show, (&mut *self.findings, &mut *self.uses));
                printed.extend(match say(&self.scope, value, filter.as_ref(), Some(beside), show, told) {
                    Some(Said::Figures(value)) => Some(Inline::Value { value }),
                    Some(Said::Words(text)) => Some(Inline::Text { text }),
                    None => None,
                });
            }
            Brace::Choice { branches, span } => {
                let size = self.size();
                let branch = branches.iter().enumerate().find(|(_, branch)| match &branch.sizes {
                    None => true,
                    Some(sizes) => sizes.contains(&size),
                });
                match branch {
                    Some((at, branch)) => {
                        let content = self.inlines(&branch.content);
                        printed.push(Inline::Choice { branch: at, content });
                    }
                    None => self.findings.push(
                        CHOICE_NOT_COVERED
                            .at(*span, "this choice says nothing for some sizes")
                            .hint("add a branch for each size that is left, or end with `else: …`")
                            .in_size(size, ""),
                    ),
                }
            }
            Brace::Broken => {}
        }
    }

    /// Whether a count of several stands right before what is at a place in a line.
    fn counts_several(&self, content: &[model::Inline], at: usize) -> bool {
        let blank =
            |inline: &&model::Inline| matches!(inline, model::Inline::Text(text) if text.text.trim().is_empty());
        let before = content[..at].iter().rev().find(|inline| !blank(inline));
        let Some(model::Inline::Brace(Brace::Print { value, .. })) = before else { return false };
        let worked = self.scope.work_out(value, &mut Findings::default()).map(|worked| worked.quantity);
        worked.is_some_and(|count| count.dimension == Dimension::Count && count.value != Exact::ONE)
    }

    fn reference(&mut self, reference: &Reference, several: bool) -> Inline {
        let given = self.inlines(&reference.content);
        // A shared part refers to what it was handed by the name that it calls it.
        let handed = self.scope.params.iter().find(|param| param.name.text == reference.target);
        let named = matches!(reference.kind, ReferenceKind::Piece | ReferenceKind::Notion | ReferenceKind::Fabric);
        handed.filter(|_| named).iter().for_each(|param| self.uses.take(param));
        let wanted = handed.filter(|_| named).map_or(reference.target.as_str(), |param| param.text.text.trim());
        let target = self.ends.find(reference.kind, wanted, self.draft, self.part);
        Inline::Reference(match target {
            Ok((aim, id, name)) => {
                let notions = &self.draft.facts.notions;
                let notion = notions.iter().find(|notion| several && aim == Aim::Notion && notion.id.text == id);
                let plural = notion.and_then(|notion| notion.plural.as_ref()).map(|plural| in_sentence(&plural.text));
                Pointer { to: Some(aim), id, content: given, name: plural.unwrap_or(name) }
            }
            Err(left_out) => {
                let finding = self.nowhere(reference, left_out);
                self.findings.push(finding);
                let id = reference.target.clone();
                Pointer { to: None, id: id.clone(), content: given, name: id }
            }
        })
    }

    fn nowhere(&self, reference: &Reference, left_out: bool) -> Finding {
        let target = &reference.target;
        if left_out {
            return REFERENCE_LEFT_OUT
                .at(reference.span, format!("`{target}` is left out in a size that is sent there"))
                .hint("put the mention into a choice by size, or let the step stand in every size")
                .in_size(self.size(), "");
        }
        let names = self.ends.names(reference.kind, self.draft);
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        if reference.kind == ReferenceKind::Term {
            return TERM_UNDEFINED.at(reference.span, format!("the term `{target}` is not explained")).hint(
                did_you_mean(target, names, &format!("add it to `words:` in booklet.yaml: `{target}: what it means`")),
            );
        }
        let what = match reference.kind {
            ReferenceKind::Step => "no part and no step has the id",
            ReferenceKind::Piece => "no piece is called",
            ReferenceKind::Notion => "no notion is called",
            ReferenceKind::Fabric => "no fabric is called",
            ReferenceKind::Figure => "no step with a diagram has the id",
            ReferenceKind::Term => "no term is",
        };
        let otherwise = match reference.kind {
            ReferenceKind::Step => "write an id that stands in a heading's braces, such as `{#zip-first}`",
            ReferenceKind::Figure => "name the id of a step that shows a diagram",
            _ => "add it to booklet.yaml, or name one that stands there",
        };
        REFERENCE_BROKEN.at(reference.span, format!("{what} `{target}`")).hint(did_you_mean(target, names, otherwise))
    }
}

/// What braces print.
#[derive(Debug, Clone)]
pub enum Said {
    /// A value.
    Figures(Shown),
    /// Words: a count written out, or what a shared part was handed.
    Words(String),
}

/// What a value in braces prints, in prose and in diagrams alike; `None` where it cannot be worked out
/// or not be printed so, which is a finding. `beside` is what stands before
/// the braces and behind them in running words.
pub fn say(
    scope: &Scope<'_>,
    value: &Expression,
    filter: Option<&Filter>,
    beside: Option<(&str, &str)>,
    show: &Show,
    (findings, uses): (&mut Findings, &mut Uses),
) -> Option<Said> {
    if let Some(words) = handed_words(scope, value) {
        uses.read(value, scope);
        return match filter {
            None => {
                let param = scope.param_of(value)?;
                Some(Said::Words(handed::spoken(scope.values, param, words, findings)?))
            }
            Some(filter) => {
                let fault = UNIT_MISMATCH.at(filter.span, "words have no figures to be printed in another way");
                findings
                    .push(fault.hint("take the bar and what stands behind it out").in_size(scope.values.size(), ""));
                None
            }
        };
    }
    let worked = scope.work_out(value, findings);
    let called = beside.is_some_and(is_called_stitch);
    let stitch = worked.is_some_and(|worked| called && is_stitch_length(value, &worked));
    uses.print(value, filter.is_none() && !stitch, scope);
    let worked = worked?;
    let figures = match stitch {
        true => stitch_figures(&worked, show),
        false => scope.figures(value, worked, show),
    };
    let Some(filter) = filter else { return Some(Said::Figures(figures)) };
    let (message, hint) = match filter.name.as_str() {
        "first" => return Some(Said::Figures(Shown { second: None, ..figures })),
        "second" => {
            let first = figures.second.unwrap_or(figures.first);
            return Some(Said::Figures(Shown { exact: figures.exact, first, second: None }));
        }
        "words" => {
            let count = worked.quantity;
            if let Some(text) = in_words(count.value).filter(|_| count.dimension == Dimension::Count) {
                return Some(Said::Words(text));
            }
            let message = format!("only a whole number from 0 to 999 can be written in words, not {figures}");
            (message, "take `| words` out")
        }
        unit => {
            let unit = Unit::parse(unit)?;
            if let Some(value) = Shown::in_unit(&worked, unit, show) {
                return Some(Said::Figures(value));
            }
            let message = format!("{} cannot be printed in {}", worked.quantity.dimension.name(), unit.symbol());
            (message, "name a unit of the same sort, or take the bar and the unit out")
        }
    };
    findings.push(UNIT_MISMATCH.at(filter.span, message).hint(hint).in_size(scope.values.size(), ""));
    None
}

/// Whether a typed figure can be a stitch length: 1 to 6 mm in one system, which is what household
/// machines sew (common practice, no source).
fn is_stitch_length(expression: &Expression, worked: &Worked) -> bool {
    let typed = expression.formula.as_measure().is_some_and(|measure| measure.other.is_none());
    let sewn = Exact::ONE..=Exact::from_integer(6);
    typed && worked.quantity.dimension == Dimension::Length && sewn.contains(&worked.quantity.value)
}

/// What a shared part was handed, where it is words or the name of a piece or an edge, and no figure.
pub fn handed_words<'s>(scope: &Scope<'s>, value: &Expression) -> Option<&'s str> {
    let param = scope.param_of(value)?;
    let figure = match param.expression.as_ref().map(|expression| &expression.formula.root.kind) {
        None => false,
        Some(ExprKind::Name(name)) => scope.values.value(name) != Lookup::Unknown,
        Some(_) => true,
    };
    (!figure).then_some(param.text.text.as_str())
}

/// Whether a step states figures of its own.
fn has_facts(step: &Step) -> bool {
    step.works.iter().any(|work| {
        [&work.allowance, &work.stitch, &work.leave, &work.ease, &work.gather].into_iter().any(Option::is_some)
    })
}

fn notice(kind: NoticeKind) -> &'static str {
    match kind {
        NoticeKind::Note => "note",
        NoticeKind::Tip => "tip",
        NoticeKind::Important => "important",
        NoticeKind::Warning => "warning",
        NoticeKind::Caution => "caution",
    }
}

fn alignment(alignment: Alignment) -> &'static str {
    match alignment {
        Alignment::None => "none",
        Alignment::Left => "left",
        Alignment::Center => "center",
        Alignment::Right => "right",
    }
}
