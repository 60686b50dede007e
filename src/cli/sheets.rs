//! `sheets`: the true-scale pattern sheets, for each size and of all sizes nested.

use std::path::Path;

use serde_json::json;

use super::apart::Bounds;
use super::args::SheetsArgs;
use super::kept::Kept;
use super::opening::{Opening, each_once};
use super::press::{Content, Job, print_all};
use super::sets::{NESTED, Set, sets};
use super::{Outcome, Refusal, choose, output};
use crate::model::{Piece, is_for, spoken_sizes};
use crate::out::Origin;
use crate::pipeline::Workshop;
use crate::resolve::{Edition, PieceId};
use crate::sheets::{SheetPaper, SheetPlan, draw_sheets, plan_sizes, plan_with_all, sheet_lists};
use crate::source::BookletFolder;

pub(super) fn run(folder: Option<&Path>, args: &SheetsArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let papers = each_once(args.paper.iter().map(|name| name.paper()));
    let (booklets, strictness) = (args.booklets.as_slice(), &args.strictness);
    let opening = Opening { folder, booklets, strictness, bounds, done: "built", memory: None, share: None };
    opening.each(|booklet, workshop| one(booklet, workshop, &papers, args))
}

fn one(
    booklet: &BookletFolder,
    workshop: &Workshop,
    papers: &[SheetPaper],
    args: &SheetsArgs,
) -> Result<Outcome, Refusal> {
    let named: Vec<String> = args.size.iter().filter(|size| *size != NESTED).cloned().collect();
    let mut sets = match named.is_empty() && !args.size.is_empty() {
        true => Vec::new(),
        false => {
            let sizes = choose::sizes(workshop, &named, &booklet.name)?;
            sets(workshop, &sizes, args.size.is_empty(), false)
        }
    };
    if workshop.sizes.len() > 1 && args.size.iter().any(|size| size == NESTED) {
        sets.push(Set { id: None, sizes: (0..workshop.sizes.len()).collect() });
    }
    let mut jobs = Vec::new();
    let mut notes = Vec::new();
    for paper in papers {
        for set in &sets {
            jobs.extend(job(booklet, workshop, set, *paper, &mut notes)?);
        }
    }
    let kept = Kept::new(&args.cache, &args.out);
    let worked = print_all(&booklet.name, workshop, jobs, &args.out, &kept, &args.strictness)?;
    kept.settle();
    notes.iter().for_each(|note| output::line(note));
    Ok(worked.outcome)
}

/// The file for one set; nothing where the booklet has no pieces.
pub(super) fn job(
    booklet: &BookletFolder,
    workshop: &Workshop,
    set: &Set,
    paper: SheetPaper,
    notes: &mut Vec<String>,
) -> Result<Option<Job>, Refusal> {
    let Some(draft) = workshop.draft() else { return Ok(None) };
    let editions = set.editions(workshop);
    let plan = plan_sizes(&editions, paper);
    if plan.pieces.is_empty() && plan.too_large.is_empty() {
        return Ok(None);
    }
    let facts = &draft.facts;
    let size = set.id.clone().unwrap_or_else(|| NESTED.to_owned());
    let paper = plan.paper.name();
    let pieces = |piece: &PieceId| facts.pieces[*piece].name.text.clone();
    if !plan.too_large.is_empty() {
        let names: Vec<String> = plan.too_large.iter().map(pieces).collect();
        return Err(Refusal::new(
            format!("`{}`, {size}: {} is too wide for the paper `{paper}`", booklet.name, names.join(", ")),
            "print on tiles instead: `--paper a4`, `letter` or `a0`",
        ));
    }
    let Some(sheets) = draw_sheets(&plan, &editions, &facts.title.text, &facts.edition.text) else {
        return Err(Refusal::new(
            format!("`{}`, {size}: the page on `{paper}` would be longer than readers open", booklet.name),
            "print on tiles instead: `--paper a4`, `letter` or `a0`",
        ));
    };
    if plan.paper.size().1.is_some() {
        notes.push(format!(
            "{} {size} {paper}: {} sheets; a plain grid would take {}",
            booklet.name,
            plan.tiles.len(),
            plan.naive
        ));
    }
    notes.extend(saved(workshop, &plan, &editions));
    let lists = sheet_lists(&plan, &facts.sizes);
    notes.extend(lists.iter().map(|(view, list)| format!("  {view}: {}", list.join(", "))));
    let all = set.id.is_none();
    let shown = if all { "all sizes".to_owned() } else { spoken_sizes(&facts.sizes, &set.sizes) };
    let title = format!("{}, {shown}: pattern sheets", facts.title.text);
    let about = json!({
        "title": title,
        "designer": facts.designer.as_ref().map_or("", |text| &text.text),
        "language": facts.language.text,
        "date_iso": facts.date.as_ref().map(|date| date.text.clone()),
    });
    let name = format!("{}-{size}-sheets-{paper}.pdf", booklet.name);
    Ok(Some(Job {
        path: format!("sheets/{name}"),
        origin: Origin { kind: format!("sheets {paper}"), of: size },
        size: set.only(),
        content: Content::Sheets(sheets, about),
    }))
}

/// What is cut with a ruler, and how many sheets that saves; `None` where there is no such piece, or the paper has no
/// sheets to count.
fn saved(workshop: &Workshop, plan: &SheetPlan, editions: &[&Edition<'_>]) -> Option<String> {
    let here = |piece: &&Piece| piece.by_ruler && plan.sizes.iter().any(|size| is_for(piece.sizes.as_ref(), *size));
    let names: Vec<String> =
        workshop.draft()?.facts.pieces.iter().filter(here).map(|one| one.name.text.clone()).collect();
    if names.is_empty() || plan.paper.size().1.is_none() {
        return None;
    }
    let more = plan_with_all(editions, plan.paper).tiles.len().saturating_sub(plan.tiles.len());
    let saves = match more {
        0 => "no sheet".to_owned(),
        1 => "1 sheet".to_owned(),
        more => format!("{more} sheets"),
    };
    Some(format!("  cut with a ruler, which saves {saves}: {}", names.join(", ")))
}
