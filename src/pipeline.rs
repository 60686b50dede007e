//! The way through the house for one booklet: read, work out, draw, check, report.

use std::collections::BTreeMap;
use std::path::Path;

use crate::checks::{self, Subject};
use crate::construct::{History, play};
use crate::diag::{Finding, Findings, Report, Waiver};
use crate::figure::{self, Figures};
use crate::model::{Draft, Text};
use crate::resolve::{Catalogue, Edition, Sheet, resolve};
use crate::source::{BookletFolder, Folder, House, Sources, Span};
use crate::syntax;

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
    /// Templates and fonts.
    pub house: House,
    /// Logo and cover, by the names that the templates' data gives them: path and bytes.
    pub pictures: BTreeMap<&'static str, (String, Vec<u8>)>,
    /// What is wrong.
    pub report: Report,
}

/// Compiles a booklet and hands the result to `then`, while everything it leans on is alive.
pub fn compile<R>(folder: &Folder, booklet: &BookletFolder, then: impl FnOnce(Compiled<'_>) -> R) -> R {
    let mut reading = syntax::read_booklet(folder, booklet);
    let house = House::of(folder, booklet);
    for asset in house.templates.iter().filter(|asset| asset.own.is_some()) {
        reading.sources.add(asset.own.clone().unwrap_or_default(), asset.text());
    }
    let Some(draft) = reading.draft.take() else {
        let report = reading.findings.report(&reading.sources, 0, &[], &checks::waivable);
        return then(Compiled {
            sources: reading.sources,
            sizes: Vec::new(),
            draft: None,
            editions: &[],
            histories: &[],
            figures: Figures::default(),
            house,
            pictures: BTreeMap::new(),
            report,
        });
    };
    let mut findings = reading.findings;
    let mut sources = reading.sources;
    let catalogue = Catalogue::gather(&draft, &mut findings);
    let sheets: Vec<Sheet<'_>> =
        (0..draft.facts.sizes.len()).map(|size| Sheet::new(&draft, &catalogue, size, &mut findings)).collect();
    let editions: Vec<Edition<'_>> =
        sheets.iter().map(|sheet| resolve(&draft, &catalogue, sheet, &mut findings)).collect();
    let figures = figure::draw_all(&editions, folder, &house, &mut sources, &mut findings);
    let pictures = pictures(folder, &draft, &mut findings);
    let histories: Vec<History> = editions.iter().map(|edition| play(edition, None)).collect();
    let subject = Subject {
        draft: &draft,
        catalogue: &catalogue,
        editions: &editions,
        histories: &histories,
        figures: &figures,
    };
    checks::run_all(&subject, &mut findings);
    let waivers: Vec<Waiver> = draft.waivers.iter().chain(&figures.waivers).cloned().collect();
    let report = findings.report(&sources, draft.facts.sizes.len(), &waivers, &checks::waivable);
    then(Compiled {
        sources,
        sizes: draft.size_ids(),
        draft: Some(&draft),
        editions: &editions,
        histories: &histories,
        figures,
        house,
        pictures,
        report,
    })
}

/// Reads the logo and the cover picture.
fn pictures(folder: &Folder, draft: &Draft, findings: &mut Findings) -> BTreeMap<&'static str, (String, Vec<u8>)> {
    let style = &draft.facts.style;
    let mut found = BTreeMap::new();
    let wanted: [(&'static str, &Option<Text>); 2] = [("logo", &style.logo), ("cover", &style.cover)];
    for (name, path) in wanted {
        let Some(path) = path else { continue };
        let ending = Path::new(&path.text).extension().and_then(|ending| ending.to_str()).unwrap_or("");
        let ending = ending.to_ascii_lowercase();
        if !matches!(ending.as_str(), "svg" | "png" | "jpg" | "jpeg" | "gif" | "webp") {
            findings.push(
                Finding::error("file-unreadable", path.span, format!("`{}` is no picture that can be printed", path.text))
                    .hint("save it as SVG, PNG or JPEG"),
            );
            continue;
        }
        match folder.picture(&draft.folder.join(&path.text)) {
            Ok(bytes) => {
                found.insert(name, (format!("/booklet/{name}.{ending}"), bytes));
            }
            Err(fault) => findings.push(
                Finding::error("file-unreadable", path.span, format!("`{}` {}", path.text, fault.message()))
                    .hint(fault.hint()),
            ),
        }
    }
    found
}

impl Compiled<'_> {
    /// A fault of the typesetter as a finding at the author's file: the diagram or template it
    /// complains of, or the booklet's title when it names neither.
    pub fn press_finding(
        &self,
        fault: &crate::typeset::PressFault,
        origins: &BTreeMap<String, String>,
        size: usize,
    ) -> Option<Finding> {
        let draft = self.draft?;
        let mut span = draft.facts.title.span;
        if let Some((path, range)) = &fault.place {
            let own = self.house.templates.iter().find(|asset| format!("/{}", asset.name) == *path);
            if let Some(file) = origins.get(path).and_then(|path| self.sources.by_path(path)) {
                let end = self.sources.file(file).text.find('>').map_or(0, |at| at + 1);
                span = Span::new(file, 0..end);
            } else if let Some(own) = own.and_then(|asset| asset.own.as_ref())
                && let Some(file) = self.sources.by_path(own)
            {
                span = Span::new(file, range.clone());
            }
        }
        let hint = if fault.hint.is_empty() {
            "take out what was changed last and build again; a booklet's own template or picture is the likeliest cause"
        } else {
            &fault.hint
        };
        Some(
            Finding::error("typesetting-failed", span, format!("the page cannot be set: {}", fault.message))
                .hint(hint)
                .in_size(size, ""),
        )
    }

    /// The sheaf for one size: what the templates are given.
    pub fn sheaf(&self, edition: &Edition<'_>) -> crate::typeset::Sheaf {
        let labels = serde_json::from_str(self.house.template("labels-en.json")).unwrap_or_default();
        crate::typeset::edition_data(edition, &self.histories[edition.size()], &self.figures, &labels, self.pictures.clone())
    }
}
