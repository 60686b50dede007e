//! `publish`: the folder that a seller uploads, one for each booklet and edition.

use std::collections::BTreeSet;
use std::path::Path;

use super::apart::Bounds;
use super::args::PublishArgs;
use super::jobs::Books;
use super::kept::Kept;
use super::opening::{self, Opening, each_once};
use super::press::{Content, Job, Made, pages, print_jobs};
use super::sets::{ALL, NESTED, Set, sets};
use super::{Outcome, Refusal, editions, jobs, output};
use crate::book::Plain;
use crate::checks::same;
use crate::diag::Findings;
use crate::faults::OUT_OF_RANGE;
use crate::manifest::{self, Manifest, SCHEMA, SCHEMA_NAME};
use crate::model::{Facts, Preview};
use crate::out::{self, NewFile, Origin};
use crate::pipeline::{NamedSet, Workshop};
use crate::publish::{Included, checksums, edition_folder, file_sizes, licence, not_raised, shop_text, text_length};
use crate::source::BookletFolder;
use crate::typeset::{PagePicture, Paper, Press, Sheaf, WantedPage};

/// Dots to the inch of the pictures of pages: an A4 page is some 1,000 dots wide.
const DOTS: f64 = 120.0;

pub(super) fn run(folder: Option<&Path>, args: &PublishArgs, bounds: Bounds) -> Result<Outcome, Refusal> {
    let papers = each_once(args.paper.iter().map(|name| name.paper()));
    let (booklets, strictness) = (args.booklets.as_slice(), &args.strictness);
    let opening = Opening { folder, booklets, strictness, bounds, done: PUBLISHED, memory: None, share: None };
    opening.each(|booklet, workshop| one(booklet, workshop, &papers, args))
}

/// What becomes of a booklet.
const PUBLISHED: &str = "published";

fn one(
    booklet: &BookletFolder,
    workshop: &mut Workshop,
    papers: &[Paper],
    args: &PublishArgs,
) -> Result<Outcome, Refusal> {
    let nothing = |outcome| {
        opening::nothing(&booklet.name, PUBLISHED);
        Ok(outcome)
    };
    workshop.lay_cloth_well();
    let all: Vec<usize> = (0..workshop.sizes.len()).collect();
    let sets = sets(workshop, &all, true, false);
    let Some(manifest) = workshop.manifest(&named(&sets), &of_sheets(papers)) else {
        return nothing(Outcome::Findings);
    };
    let home = args.out.join(&booklet.name);
    let folder = home.join(edition_folder(&manifest.all.edition));
    if let Some(outcome) = refused(&booklet.name, &home, workshop, &manifest) {
        return nothing(outcome);
    }
    let files = match files(booklet, workshop, papers, &sets, &manifest, args)? {
        Ok(files) => files,
        Err(outcome) => return nothing(outcome),
    };
    if folder.symlink_metadata().is_ok() {
        return stands(&booklet.name, &folder, &files);
    }
    out::put_new(&folder, &files)?;
    files.iter().for_each(|file| output::line(&told(&folder, file)));
    Ok(Outcome::Clean)
}

/// A file as it is told: its place and how large it is.
fn told(folder: &Path, file: &NewFile) -> String {
    let size = match file.bytes.len() {
        few @ ..10_000 => format!("{few} bytes"),
        some @ ..1_000_000 => format!("{:.0} kB", some as f64 / 1e3),
        more => format!("{:.1} MB", more as f64 / 1e6),
    };
    format!("{} ({size})", folder.join(&file.path).display())
}

/// The sets as the manifest calls them: as the files of their sheets are called.
pub(super) fn named(sets: &[Set]) -> Vec<NamedSet> {
    sets.iter().map(|set| (set.id.clone().unwrap_or_else(|| NESTED.to_owned()), set.sizes.clone())).collect()
}

fn of_sheets(papers: &[Paper]) -> Vec<crate::sheets::SheetPaper> {
    let printed: BTreeSet<_> = papers.iter().filter(|paper| paper.is_printed()).map(|one| one.of_sheets()).collect();
    printed.into_iter().collect()
}

/// Tells what keeps the edition from being published beside earlier ones.
fn refused(name: &str, home: &Path, workshop: &mut Workshop, manifest: &Manifest) -> Option<Outcome> {
    let mut findings = Findings::default();
    let earlier = editions::earlier(home, name, &mut workshop.sources, &mut findings);
    let edition = workshop.draft().map(|draft| draft.facts.edition.span)?;
    findings.extend(not_raised(edition, manifest, &earlier));
    stop(workshop, findings)
}

/// Tells findings, and says whether they stop.
fn stop(workshop: &Workshop, findings: Findings) -> Option<Outcome> {
    let report = output::found_since(workshop, findings);
    (report.errors() > 0).then_some(Outcome::Findings)
}

/// What a folder that stands already comes to: nothing to do where it holds the very same.
fn stands(name: &str, folder: &Path, files: &[NewFile]) -> Result<Outcome, Refusal> {
    if out::holds(folder, files)? {
        output::line(&format!("{name}: `{}` is this edition already, byte for byte", folder.display()));
        return Ok(Outcome::Clean);
    }
    Err(Refusal::new(
        format!("`{}` stands already, and a published edition is never replaced", folder.display()),
        "what it says is the same, so it need not be; to have it anew, move it elsewhere or name another folder with --out",
    ))
}

/// All files of the edition; the outcome instead where findings stop it.
fn files(
    booklet: &BookletFolder,
    workshop: &Workshop,
    papers: &[Paper],
    sets: &[Set],
    manifest: &Manifest,
    args: &PublishArgs,
) -> Result<Result<Vec<NewFile>, Outcome>, Refusal> {
    let Some(facts) = workshop.draft().map(|draft| &draft.facts) else { return Ok(Err(Outcome::Findings)) };
    let plain = Plain { book: &manifest.all, house: &manifest.words };
    let all: Vec<usize> = (0..workshop.sizes.len()).collect();
    let books = Books::gather(workshop, papers, &all);
    let mut wanted = jobs::booklets(&booklet.name, workshop, papers, sets, &books);
    wanted.iter_mut().for_each(|job| job.path = format!("booklets/{}", job.path));
    wanted.extend(jobs::pattern_sheets(booklet, workshop, papers, sets)?);
    let screen = jobs::screen(booklet, workshop, papers, &books);
    wanted.extend(screen.into_iter().map(|job| Job { path: format!("{}/{}", beside(&job), job.path), ..job }));
    let text = shop_text(&plain, &included(&plain, &wanted));
    let kept = Kept::new(&args.cache, &args.out);
    let (outcome, printed) = print_jobs(&booklet.name, workshop, wanted, &kept, &args.strictness);
    kept.settle();
    if outcome != Outcome::Clean {
        return Ok(Err(outcome));
    }
    let shown = match previews(workshop, facts, &printed) {
        Ok(shown) => shown,
        Err(findings) => return Ok(Err(stop(workshop, findings).unwrap_or(Outcome::Findings))),
    };
    let mut files: Vec<NewFile> = Vec::new();
    let mut add = |path: String, bytes: Vec<u8>| {
        let origin = Origin { kind: "published".into(), of: ALL.into() };
        files.push(NewFile { path, bytes, origin });
    };
    printed.into_iter().for_each(|(job, result)| add(job.path, result.bytes));
    for (at, picture) in shown.into_iter().enumerate() {
        add(format!("preview/{}-page-{}.png", at + 1, picture.page), picture.png);
    }
    for (name, photo) in &workshop.pictures {
        add(format!("preview/{name}.{}", photo.ending), photo.bytes.clone());
    }
    add("shop-text.md".into(), text.markdown().into_bytes());
    add("shop-text.txt".into(), text.text().into_bytes());
    match licence(&plain) {
        Some(page) => {
            add("licence.md".into(), page.markdown().into_bytes());
            add("licence.txt".into(), page.text().into_bytes());
        }
        None => output::line(&format!("{}: without `terms:` there is no page of the terms of use", booklet.name)),
    }
    let record = manifest::write(manifest).map_err(|fault| Refusal::new(fault.fact, fault.act))?;
    add(editions::MANIFEST.into(), record.into_bytes());
    add(SCHEMA_NAME.into(), SCHEMA.as_bytes().to_vec());
    let sums = checksums(files.iter().map(|file| (file.path.as_str(), file.bytes.as_slice())));
    let origin = Origin { kind: "published".into(), of: ALL.into() };
    files.push(NewFile { path: "checksums.txt".into(), bytes: sums.into_bytes(), origin });
    let mut findings = file_sizes(facts, files.iter().map(|file| (file.path.as_str(), file.bytes.len())));
    findings.extend(text_length(facts, &text.text()));
    Ok(match stop(workshop, findings) {
        Some(outcome) => Err(outcome),
        None => Ok(files),
    })
}

/// The folder of what is for a screen.
fn beside(job: &Job) -> &'static str {
    match job.content {
        Content::Words(_) => "video",
        Content::Booklet(_) | Content::Sheets(..) | Content::Page(_) => "page",
    }
}

/// What the folder holds, by its names on the page.
fn included(plain: &Plain<'_>, jobs: &[Job]) -> Included {
    let mut included = Included::default();
    for job in jobs {
        let of = &job.origin.of;
        let (into, paper, whole) = match &job.content {
            Content::Booklet(_) => (&mut included.booklets, job.origin.kind.strip_prefix("booklet "), "shop_all"),
            Content::Sheets(..) => (&mut included.sheets, job.origin.kind.strip_prefix("sheets "), "errata_nested"),
            Content::Page(_) => {
                included.page = true;
                continue;
            }
            Content::Words(_) => continue,
        };
        let size = plain.book.sizes.iter().position(|size| size.id == *of);
        let view = plain.book.views.iter().find(|view| view.id == *of);
        let set = match (size, view) {
            (Some(size), _) => plain.size(size),
            (None, Some(view)) => view.name.clone(),
            (None, None) => plain.word(whole, &[]),
        };
        let paper = plain.word(&format!("paper_{}", paper.unwrap_or_default()), &[]);
        for (list, name) in [(&mut into.0, paper), (&mut into.1, set)] {
            if !list.contains(&name) {
                list.push(name);
            }
        }
    }
    included
}

/// The pages that the shop shows, out of the booklet of all sizes, or the last that there is.
fn previews(workshop: &Workshop, facts: &Facts, printed: &[(Job, Made)]) -> Result<Vec<PagePicture>, Findings> {
    let sheaves: Vec<(&Job, &Sheaf, usize)> = printed
        .iter()
        .filter_map(|(job, result)| match &job.content {
            Content::Booklet(sheaf) => Some((job, &**sheaf, result.pages?)),
            Content::Sheets(..) | Content::Page(_) | Content::Words(_) => None,
        })
        .collect();
    let whole = sheaves.iter().find(|(job, ..)| job.origin.of == ALL).or(sheaves.first());
    let Some((job, sheaf, count)) = whole else { return Ok(Vec::new()) };
    let mut findings = Findings::default();
    let mut wanted: Vec<WantedPage> = Vec::new();
    for preview in &facts.shop.preview {
        let (page, span) = match preview {
            Preview::Page(page, span) => (WantedPage::Number(*page), *span),
            Preview::Step(id) => (WantedPage::Step(id.text.clone()), id.span),
        };
        let fact = match &page {
            WantedPage::Number(page) if page > count => format!("`{}` has no page {page}", job.path),
            WantedPage::Step(id) if !sheaf.has_step(id) => format!("`{}` has no step `{id}`", job.path),
            _ => {
                wanted.push(page);
                continue;
            }
        };
        findings.push(OUT_OF_RANGE.at(span, fact).hint(format!("choose one that it has: it has {}", pages(*count))));
    }
    match Press::new(&workshop.house).pictures(sheaf, &wanted, DOTS) {
        Ok(shown) if !findings.has_errors() => Ok(shown),
        Ok(_) => Err(findings),
        Err(faults) => {
            findings.extend(faults.iter().filter_map(|fault| workshop.press_finding(fault, &sheaf.origins, job.size)));
            Err(findings)
        }
    }
}

/// Whether two editions are one by their numbers.
pub(super) fn is_same(one: &Manifest, other: &Manifest) -> bool {
    same(&one.all.edition, &other.all.edition)
}
