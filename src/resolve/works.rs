//! Work facts of one size: lengths worked out, names led to what they stand for.

use super::absent::absent;
use super::counted::{count, told_by_marks, without_notion};
use super::ids::{NotionId, PieceId};
use super::names::NameKind;
use super::printed::Block;
use super::scope::Scope;
use super::shown::{Shown, stitch_figures};
use super::target::{Meant, Resolver, Target, Touched};
use super::uses::{Told, Uses};
use super::within::Inside;
use super::without::Without;
use super::worked::Worked;
use crate::diag::{Finding, Findings, did_you_mean};
use crate::faults::{OUT_OF_RANGE, UNIT_MISMATCH, UNKNOWN_NAME, WORK_UNREADABLE};
use crate::measure::{Dimension, Exact, ExprKind};
use crate::model::{Draft, Expression, Far, Name, Place, Text, Touch, Verb, Work};

/// A work fact of one size.
#[derive(Debug, Clone)]
pub struct EditionWork<'a> {
    /// The fact as written.
    pub work: &'a Work,
    /// What is done.
    pub verb: Verb,
    /// What it is done to, parameters filled in, in the author's order.
    pub targets: Vec<Target>,
    /// What its stitches catch beside, parameters filled in.
    pub caught: Vec<Target>,
    /// How far from the edge.
    pub allowance: Option<Worked>,
    /// How long a stitch.
    pub stitch: Option<Worked>,
    /// How long a gap is left.
    pub leave: Option<Worked>,
    /// How much is eased in.
    pub ease: Option<Worked>,
    /// How long a gathered edge becomes.
    pub gather: Option<Worked>,
    /// How far layers lie over each other.
    pub lap: Option<Worked>,
    /// How far apart lines of quilting are.
    pub gap: Option<Worked>,
    /// How far up a corner is boxed that was not cut out.
    pub up: Option<Worked>,
    /// Where a gap begins.
    pub leave_at: Option<Placed<'a>>,
    /// What closes a gap; `None` for one to turn through.
    pub leave_for: Option<Filler>,
    /// Where on its edge the work begins and ends; `None` for the end of the edge.
    pub part: [Option<Placed<'a>>; 2],
    /// How many buttons, holes or fasteners; `None` where it does not say.
    pub count: Option<u32>,
    /// More to print.
    pub note: Vec<Block>,
}

/// A place on an edge, its distance worked out.
#[derive(Debug, Clone, Copy)]
pub struct Placed<'a> {
    /// As written.
    pub place: &'a Place,
    /// The length or the share; `None` for a place without a figure, and where it could not be worked out.
    pub along: Option<Worked>,
    /// The mark that is the place: of which piece, and which of its marks.
    pub mark: Option<(PieceId, usize)>,
    /// The edge that is named alone: the place is the end at that edge.
    pub beside: Option<&'a str>,
}

/// What a gap is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Filler {
    /// A notion that is sewn in.
    Notion(NotionId),
    /// Nothing: it stays, as a slit.
    Slit,
}

impl<'a> EditionWork<'a> {
    /// Works a fact out; unknown names and faulty lengths are findings.
    pub(super) fn new(
        work: &'a Work,
        resolver: &Resolver<'_>,
        scope: &Scope<'_>,
        without: &Without,
        told: &mut Told,
    ) -> EditionWork<'a> {
        let places = || work.part.iter().chain([&work.leave_at]).flatten();
        let along = places().filter_map(|place| match &place.far {
            Far::Along(formula) if mark(place, resolver).is_none() => Some(formula),
            _ => None,
        });
        let printed = [&work.allowance, &work.leave, &work.ease, &work.gather, &work.lap, &work.up, &work.gap];
        let outside = Scope { step: None, ..*scope };
        printed.into_iter().flatten().chain(along).for_each(|formula| told.uses.print(formula, true, &outside));
        work.stitch.iter().for_each(|formula| told.uses.read(formula, &outside));
        let count = work.count.as_ref().and_then(|formula| count(formula, &outside, told));
        let findings = &mut told.findings;
        let uses = &mut told.uses;
        let mut led = |names: &[Touch]| -> Vec<Target> {
            let names = touches(names, scope, findings, uses);
            // What is left out is not cut either.
            let stays = |touch: &&Touch| work.verb != Verb::Cut || !without.leaves(&touch.name);
            names.iter().filter(stays).map(|touch| resolver.target(touch, work.verb)).collect()
        };
        let (targets, caught) = (led(&work.touches), led(&work.caught));
        let leave_for = work.leave_for.as_ref().and_then(|name| filler(name, resolver, findings));
        let named = || targets.iter().chain(&caught);
        for target in named().filter(|target| target.meant == Meant::Unknown) {
            findings.push(unknown(&target.name, resolver));
        }
        findings.extend(named().filter_map(|target| no_such_inside(target, resolver)));
        findings.extend(named().filter_map(|target| absent(target, resolver, without)));
        let pieces = &resolver.draft.facts.pieces;
        let tape = |target: &Target| target.piece(resolver.cast).is_some_and(|piece| pieces[piece].tape.is_some());
        let bare = |target: &Target| target.notion().is_none() && target.meant != Meant::Unknown && !tape(target);
        if work.verb.takes_notion() && targets.iter().all(bare) {
            findings.push(without_notion(work));
        }
        if work.verb == Verb::Slash && targets.iter().all(|target| is_seen(target) && !is_mark(target)) {
            findings.push(without_line(work));
        }
        let count = told_by_marks(work, count, &targets, resolver, findings);
        for words in &work.words {
            check_words(words, resolver, scope, findings);
        }
        let mut length = |formula: &Option<Expression>| scope.work_out_fact(formula.as_ref()?, findings);
        let stitch = length(&work.stitch);
        let (allowance, leave, ease, gather) =
            (length(&work.allowance), length(&work.leave), length(&work.ease), length(&work.gather));
        let (lap, up, gap) = (length(&work.lap), length(&work.up), length(&work.gap));
        let mut placed = |place: &'a Option<Place>| {
            place.as_ref().map(|place| {
                let mark = mark(place, resolver);
                let beside = resolver.beside(place, &targets);
                let along = match &place.far {
                    Far::Along(formula) if mark.is_none() && beside.is_none() => scope.work_out_fact(formula, findings),
                    _ => None,
                };
                Placed { place, along, mark, beside }
            })
        };
        let (leave_at, part) = (placed(&work.leave_at), [placed(&work.part[0]), placed(&work.part[1])]);
        let mut sane = |key: &str, formula: &Option<Expression>, worked: Option<Worked>, most: i64| {
            let (formula, worked) = (formula.as_ref()?, worked?);
            match fault(key, formula, worked, most, scope.values.size()) {
                Some(finding) => {
                    findings.push(finding);
                    None
                }
                None => Some(worked),
            }
        };
        EditionWork {
            work,
            verb: work.verb,
            targets,
            caught,
            allowance: sane("allowance", &work.allowance, allowance, 150),
            stitch: sane("stitch", &work.stitch, stitch, 12),
            leave: sane("leave", &work.leave, leave, 3000),
            ease: sane("ease", &work.ease, ease, 3000),
            gather: sane("gather", &work.gather, gather, 100_000),
            lap: sane("by", &work.lap, lap, 1000),
            up: sane("up", &work.up, up, 1000),
            gap: sane("gap", &work.gap, gap, 1000),
            leave_at,
            leave_for,
            part,
            count,
            note: Vec::new(),
        }
    }

    /// The seam facts as printed: allowance and stitch.
    pub fn allowance_figures(&self, draft: &Draft) -> Option<Shown> {
        self.allowance.map(|worked| Shown::of(&worked, &draft.facts.show))
    }

    /// The stitch length as printed.
    pub fn stitch_figures(&self, draft: &Draft) -> Option<Shown> {
        self.stitch.map(|worked| stitch_figures(&worked, &draft.facts.show))
    }

    /// The copies, edges and notions that it touches, in the author's order.
    pub fn touched(&self) -> impl Iterator<Item = Touched> {
        self.targets.iter().flat_map(|target| target.touched.iter().copied())
    }

    /// Everything that it names: what it is done to, and what it catches.
    pub fn named(&self) -> impl Iterator<Item = &Target> {
        self.targets.iter().chain(&self.caught)
    }

    /// What it catches, by the names on the page, each once.
    pub fn spoken_caught(&self) -> Vec<String> {
        let mut names: Vec<String> = Vec::new();
        for target in self.caught.iter().filter(|target| !target.spoken.is_empty()) {
            if !names.contains(&target.spoken) {
                names.push(target.spoken.clone());
            }
        }
        names
    }

    /// What it touches, side by side: edges in a row are one side, every other name is one by itself.
    pub fn sides(&self) -> Vec<Vec<&Target>> {
        let mut sides: Vec<Vec<&Target>> = Vec::new();
        for target in &self.targets {
            let beside = sides.last_mut().filter(|side| target.row.is_some() && side[0].row == target.row);
            match beside {
                Some(side) => side.push(target),
                None => sides.push(vec![target]),
            }
        }
        sides
    }
}

fn is_seen(target: &Target) -> bool {
    !target.touched.contains(&Touched::Unknown)
}

fn is_mark(target: &Target) -> bool {
    matches!(&target.meant, Meant::Inside(_, all) if all.iter().any(|one| matches!(one, Inside::Mark(_))))
}

/// A slit whose line is not marked.
fn without_line(work: &Work) -> Finding {
    WORK_UNREADABLE
        .at(work.verb_span, "this `slash` names no line that is marked")
        .hint("mark it on its piece: `marks: {slit: {line: [[10 cm, 0 cm], [10 cm, 8 cm]]}}`, and name it: `- slash: sleeve.slit`")
        .everywhere()
}

/// The mark that a place names: `front.stop`.
fn mark(place: &Place, resolver: &Resolver<'_>) -> Option<(PieceId, usize)> {
    let Far::Along(Expression { formula, .. }) = &place.far else { return None };
    let ExprKind::Name(name) = &formula.root.kind else { return None };
    let (owner, word) = name.split_once('.').filter(|_| place.from.is_none())?;
    let piece = resolver.catalogue.get(owner)?.piece()?;
    let marks = &resolver.draft.facts.pieces[piece].marks;
    marks.iter().position(|mark| mark.name.text == word).map(|at| (piece, at))
}

/// What is wrong with a length of a work fact: no length at all, or none that a maker could mean.
fn fault(key: &str, formula: &Expression, worked: Worked, most: i64, size: usize) -> Option<Finding> {
    let quantity = worked.quantity;
    let text = formula.formula.text.trim();
    let finding = if quantity.dimension != Dimension::Length {
        UNIT_MISMATCH
            .at(formula.span(), format!("`{key}` is a length, not {}", quantity.dimension.name()))
            .hint(format!("give it a unit, such as `{key}: {text} cm`, or name a measurement"))
    } else if quantity.value < Exact::from_integer(0) || quantity.value > Exact::from_integer(most) {
        let usual = if key == "stitch" { "2.5 mm" } else { "1 cm" };
        OUT_OF_RANGE
            .at(formula.span(), format!("`{text}` cannot be meant as `{key}`"))
            .hint(format!("see whether the unit is right: `{key}: {usual}` is usual"))
    } else {
        return None;
    };
    Some(finding.in_size(size, ""))
}

/// Parameters of a shared part stand for what was handed over: one name, or several with commas.
fn touches(of: &[Touch], scope: &Scope<'_>, findings: &mut Findings, uses: &mut Uses) -> Vec<Touch> {
    let mut names = Vec::new();
    for touch in of {
        let (name, row) = (&touch.name, touch.row);
        let edge = name.text.split_once('.').map(|(_, edge)| edge);
        let owner = name.text.split('.').next().unwrap_or("");
        match scope.params.iter().find(|param| param.name.text == owner) {
            Some(param) => {
                uses.take(param);
                for word in param.text.text.split(',').map(str::trim).filter(|word| !word.is_empty()) {
                    if word.contains(' ') {
                        findings.push(
                            UNKNOWN_NAME
                                .at(param.text.span, format!("`{word}` is no piece, edge or notion"))
                                .hint("hand over names, with commas between them")
                                .note(name.span, "used here as a name"),
                        );
                        continue;
                    }
                    let at = param.text.text.find(word).unwrap_or(0);
                    let span = param.text.at(at..at + word.len());
                    let name = match edge {
                        // An edge is the part's own word, so that a slip in it is told there.
                        Some(edge) => Name { text: format!("{word}.{edge}"), span: name.span },
                        None => Name { text: word.to_owned(), span },
                    };
                    names.push(Touch { name, row });
                }
            }
            None => names.push(touch.clone()),
        }
    }
    names
}

/// What a gap is for: a notion, or a slit that stays.
fn filler(name: &Name, resolver: &Resolver<'_>, findings: &mut Findings) -> Option<Filler> {
    if name.text == "slit" {
        return Some(Filler::Slit);
    }
    if let Some(NameKind::Notion(notion)) = resolver.catalogue.get(&name.text) {
        return Some(Filler::Notion(notion));
    }
    let notions: Vec<&str> = resolver.draft.facts.notions.iter().map(|notion| notion.id.text.as_str()).collect();
    let known = notions.iter().copied().chain(["slit"]);
    findings.push(
        UNKNOWN_NAME
            .at(name.span, format!("no notion is called `{}`", name.text))
            .hint(did_you_mean(
                &name.text,
                known,
                "name the notion that is sewn into the opening, or write `for: slit`",
            ))
            .everywhere(),
    );
    None
}

/// `back right` is two words, and most likely meant as the edge `back.right`.
fn check_words(words: &Text, resolver: &Resolver<'_>, scope: &Scope<'_>, findings: &mut Findings) {
    if let Some(at) = words.text.find('{') {
        let end = words.text[at..].find('}').map_or(words.text.len(), |end| at + end + 1);
        let finding = WORK_UNREADABLE
            .at(words.at(at..end), "plain words are printed as they stand, and braces in them are not worked out");
        findings.push(
            finding
                .hint("write the sentence under `note:`, where braces are worked out, or say it without a figure")
                .everywhere(),
        );
    }
    let Some((owner, edge)) = words.text.split_once(' ') else { return };
    let Some(piece) = resolver.catalogue.get(owner).and_then(|kind| kind.piece()) else { return };
    let edge = edge.trim();
    let known = scope.values.whole(piece).is_some_and(|shape| shape.edge(edge).is_some());
    if known {
        let piece = &resolver.draft.facts.pieces[piece].id.text;
        findings.push(
            UNKNOWN_NAME
                .at(
                    words.span,
                    format!("`{}` is read as plain words, but `{edge}` is an edge of `{piece}`", words.text),
                )
                .hint(format!("join them with a dot: `{owner}.{edge}`")),
        );
    }
}

/// A dart, a pleat or a tuck that the piece does not have.
fn no_such_inside(target: &Target, resolver: &Resolver<'_>) -> Option<Finding> {
    let Meant::NoSuchInside { owner, sort, name, known } = &target.meant else { return None };
    let piece = &resolver.draft.facts.pieces[owner.piece(resolver.cast)].id.text;
    let list = if *sort == "dart" { "darts" } else { "pleats" };
    let otherwise = match known.as_slice() {
        [] => format!("describe it under `{list}:` of the piece, or name another piece"),
        known => format!("its {sort}s are: {}", known.join(", ")),
    };
    let message = match name.as_str() {
        "" => format!("`{piece}` has no {sort}"),
        name => format!("`{piece}` has no {sort} `{name}`"),
    };
    let hint = did_you_mean(name, known.iter().map(String::as_str), &otherwise);
    Some(UNKNOWN_NAME.at(target.name.span, message).hint(hint).everywhere())
}

/// A name that stands for nothing that is sewn.
fn unknown(name: &Name, resolver: &Resolver<'_>) -> Finding {
    let catalogue = resolver.catalogue;
    let owner = name.text.split('.').next().unwrap_or("");
    let stands_for = catalogue.get(owner);
    let names: Vec<&str> =
        catalogue.all().filter(|name| !matches!(catalogue.get(name), Some(NameKind::Measurement(_)))).collect();
    let message = match stands_for {
        Some(kind) => format!("`{owner}` is {}, not a piece or a notion", kind.word()),
        None => format!("no piece, copy or notion is called `{owner}`"),
    };
    let end = name.span.start as usize + owner.len();
    let span = crate::source::Span::new(name.span.file, name.span.start as usize..end.min(name.span.end as usize));
    let pieces = resolver.draft.facts.pieces.iter().map(|piece| piece.id.text.as_str()).collect::<Vec<_>>().join(", ");
    UNKNOWN_NAME.at(span, message)
        .hint(did_you_mean(
            owner,
            names,
            &format!("the pieces are: {pieces}; a copy's name stands under its piece's `cut:`; plain words have a space between them"),
        ))
        .everywhere()
}
