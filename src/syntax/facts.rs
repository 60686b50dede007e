//! `booklet.yaml` as [`Facts`].

use serde::Deserialize;

use super::expression::parse_expression;
use super::fields::{self, Fields};
use super::reader::Room;
use super::yaml::{Node, Value};
use super::{cut, fit, handed, measures, notions, pieces, sheets, shop, sizes, things, video, views};
use crate::diag::Findings;
use crate::faults::{ALT_MISSING, VALUE_UNREADABLE};
use crate::measure::{Exact, System};
use crate::model::{Expectation, Facts, Handed, Measurement, Name, Show, ShowPlaces, Size, Style, Text};

/// The keys of `booklet.yaml`.
pub(super) const KEYS: &[&str] = &[
    "title",
    "designer",
    "edition",
    "date",
    "language",
    "skill",
    "time",
    "summary",
    "read_first",
    "sizes",
    "views",
    "booklets",
    "show",
    "measurements",
    "expect",
    "body",
    "finished",
    "style",
    "finishing",
    "terms",
    "care",
    "contact",
    "cautions",
    "words",
    "fabrics",
    "notions",
    "tools",
    "pieces",
    "sheets",
    "video",
    "parts",
    "help",
    "shop",
    "editions",
    "waive",
];

/// The keys of an expectation.
pub(super) const EXPECTATION: &[&str] = &["that", "for", "because"];

/// The keys of `show:`.
pub(super) const SHOW: &[&str] = &["first", "second", "metric_step", "imperial_step", "tolerance"];

/// The keys of `style:`.
pub(super) const STYLE: &[&str] = &["accent", "logo", "cover", "cover_alt"];

/// The keys of a shared part.
pub(super) const PART: &[&str] = &["file", "for", "with"];

/// Reads the facts; `None` when there are no sizes to work with, which is a finding.
pub(super) fn read<'a>(root: &'a Node, findings: &mut Findings) -> Option<(Facts, Fields<'a>)> {
    let record = Fields::open_needing(&["title", "edition", "sizes", "parts"], root, "a booklet", KEYS, findings)?;
    let title = record.need_text("title", "Harbour Bag", findings);
    let edition = record.need_text("edition", "1.0.0", findings);
    let sizes_node = record.need("sizes", "{small: Small, large: Large}", findings)?;
    let mut all = sizes::read(sizes_node, findings);
    if all.is_empty() {
        return None;
    }
    if let Some(node) = record.get("views") {
        views::read(node, &mut all, findings);
    }
    let blank = Text { text: String::new(), span: root.span, verbatim: false };
    let style_blank = blank.clone();
    let read = |key: &str| record.get(key);
    let (notions, from_notions) = read("notions").map(|node| notions::read(node, &all, findings)).unwrap_or_default();
    let mut pieces = read("pieces").map(|node| pieces::read(node, &all, findings)).unwrap_or_default();
    pieces.extend(from_notions);
    let measurements = read("measurements").map(|node| measurements(node, &all, findings)).unwrap_or_default();
    let names: Vec<Name> = measurements.iter().map(|row| row.name.clone()).collect();
    cut::reckon(&mut pieces, &names, findings);
    let facts = Facts {
        title: title.unwrap_or_else(|| blank.clone()),
        edition: edition.unwrap_or_else(|| blank.clone()),
        designer: record.text("designer", findings),
        date: things::date(&record, findings),
        language: record.text("language", findings).unwrap_or_else(|| Text { text: "en-GB".into(), ..blank }),
        skill: record.text("skill", findings),
        time: things::prose(&record, "time", &all, Room::Cell, findings),
        summary: record.text("summary", findings),
        read_first: things::prose(&record, "read_first", &all, Room::Page, findings),
        cautions: things::cautions(read("cautions"), &all, findings),
        care: things::prose(&record, "care", &all, Room::Page, findings),
        terms: things::prose(&record, "terms", &all, Room::Page, findings),
        contact: record.text("contact", findings),
        booklets: views::booklets(read("booklets"), &all, findings),
        show: show(read("show"), findings),
        style: style(read("style"), style_blank, findings),
        finishing_required: finishing(&record, findings),
        measurements,
        expect: read("expect").map(|node| expectations(node, &all, findings)).unwrap_or_default(),
        body: read("body").map(|node| fit::body(node, &all, findings)).unwrap_or_default(),
        finished: read("finished").map(|node| fit::finished(node, &all, findings)).unwrap_or_default(),
        words: read("words").map(|node| things::words(node, &all, findings)).unwrap_or_default(),
        fabrics: read("fabrics").map(|node| things::fabrics(node, &all, findings)).unwrap_or_default(),
        notions,
        lists_at: [record.key_span("notions"), record.key_span("tools")],
        tools: read("tools").map(|node| things::tools(node, &all, findings)).unwrap_or_default(),
        pieces,
        sheets: sheets::read(read("sheets"), findings),
        shop: shop::read(read("shop"), findings),
        video: video::read(read("video"), findings),
        editions: read("editions").map(|node| things::editions(node, &all, findings)).unwrap_or_default(),
        sizes: all,
    };
    Some((facts, record))
}

fn finishing(record: &Fields<'_>, findings: &mut Findings) -> bool {
    let Some(text) = record.text("finishing", findings) else { return false };
    if text.text != "required" {
        findings.push(
            VALUE_UNREADABLE
                .at(text.span, format!("`{}` says nothing about the finishing of edges", text.text))
                .hint("write `finishing: required`, or take the line out"),
        );
    }
    text.text == "required"
}

fn measurements(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Measurement> {
    fields::named(node, "measurements", findings)
        .into_iter()
        .map(|(key, node)| {
            let value = measures::by_view(node, &format!("`{}`", key.text), sizes, findings);
            let name = fields::name(key, findings);
            // A name whose value cannot be read stays known, so that its users are not blamed.
            let (value, only) = value.unwrap_or_else(|| (crate::model::BySize::Each(vec![None; sizes.len()]), None));
            Measurement { name, value, sizes: only }
        })
        .collect()
}

fn expectations(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<Expectation> {
    let mut found = Vec::new();
    for item in fields::list(node) {
        let Some(record) = Fields::open_needing(&["that"], item, "an expectation", EXPECTATION, findings) else {
            continue;
        };
        let Some(that) = record.need_text("that", "zip_length >= opening", findings) else { continue };
        if let Some(that) = parse_expression(&that, findings) {
            let because = record.text("because", findings);
            found.push(Expectation { that, because, sizes: sizes::only_for(&record, sizes, findings) });
        }
    }
    found
}

/// The record `show:`, before its lengths are read.
#[derive(Deserialize)]
struct ShowRecord {
    #[serde(default)]
    first: SystemWord,
    second: Option<SystemWord>,
    metric_step: Option<String>,
    imperial_step: Option<String>,
    tolerance: Option<String>,
}

#[derive(Deserialize, Default, Clone, Copy, PartialEq)]
#[serde(rename_all = "lowercase")]
enum SystemWord {
    #[default]
    Metric,
    Imperial,
    None,
}

impl SystemWord {
    fn system(self) -> Option<System> {
        match self {
            SystemWord::Metric => Some(System::Metric),
            SystemWord::Imperial => Some(System::Imperial),
            SystemWord::None => None,
        }
    }
}

fn show(node: Option<&Node>, findings: &mut Findings) -> Show {
    let eighth = Exact::of::<254, 80>();
    let mut show = Show {
        first: System::Metric,
        second: Some(System::Imperial),
        metric_step: Exact::from_integer(1),
        imperial_step: eighth,
        tolerance: eighth,
        places: ShowPlaces::default(),
    };
    let Some(node) = node else { return show };
    let Some(fields) = Fields::open(node, "`show`", SHOW, findings) else { return show };
    let place = |key: &str| fields.get(key).map(|node| node.span);
    show.places = ShowPlaces {
        metric_step: place("metric_step"),
        imperial_step: place("imperial_step"),
        tolerance: place("tolerance"),
    };
    let Some(record) = fields::record::<ShowRecord>(node, "`show`", findings) else { return show };
    show.first = record.first.system().unwrap_or(System::Metric);
    let other = match show.first {
        System::Metric => System::Imperial,
        System::Imperial => System::Metric,
    };
    show.second = match record.second {
        None => Some(other),
        Some(word) => word.system().filter(|system| *system != show.first),
    };
    let mut length = |key: &str, written: Option<String>, into: &mut Exact| {
        if let Some(written) = written {
            measures::plain_length(node, key, &written, into, findings);
        }
    };
    length("metric_step", record.metric_step, &mut show.metric_step);
    length("imperial_step", record.imperial_step, &mut show.imperial_step);
    length("tolerance", record.tolerance, &mut show.tolerance);
    show
}

fn style(node: Option<&Node>, blank: Text, findings: &mut Findings) -> Style {
    let mut style =
        Style { accent: Text { text: "#1f5f6b".into(), ..blank }, logo: None, cover: None, cover_alt: None };
    let Some(node) = node else { return style };
    let Some(record) = Fields::open(node, "`style`", STYLE, findings) else { return style };
    if let Some(accent) = record.text("accent", findings) {
        let hex = accent.text.strip_prefix('#').unwrap_or("");
        if hex.len() == 6 && hex.chars().all(|letter| letter.is_ascii_hexdigit()) {
            style.accent = accent;
        } else {
            findings.push(
                VALUE_UNREADABLE
                    .at(accent.span, format!("`{}` is no colour", accent.text))
                    .hint("write it as `\"#1f5f6b\"`: six digits or letters a–f after `#`, in quotes"),
            );
        }
    }
    style.logo = record.text("logo", findings);
    style.cover = record.text("cover", findings);
    style.cover_alt = record.text("cover_alt", findings);
    if let (Some(cover), None) = (&style.cover, &style.cover_alt) {
        findings.push(
            ALT_MISSING
                .at(cover.span, "the cover picture has no words for those who cannot see it")
                .hint("add `cover_alt: what the picture shows`"),
        );
    }
    style
}

/// Reads a part's parameters and file out of the list `parts:`.
pub(super) struct PartEntry {
    /// The file, from the booklet's folder.
    pub file: Text,
    /// The sizes that have it; `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// What is handed to it.
    pub params: Handed,
}

/// Reads the list `parts:`.
pub(super) fn parts(node: &Node, sizes: &[Size], findings: &mut Findings) -> Vec<PartEntry> {
    let mut entries = Vec::new();
    for item in fields::list(node) {
        match &item.value {
            Value::Map(_) => {
                let Some(record) = Fields::open_needing(&["file"], item, "a shared part", PART, findings) else {
                    continue;
                };
                let Some(file) = record.need_text("file", "../_shared/hem.md", findings) else { continue };
                let only = sizes::only_for(&record, sizes, findings);
                let with = record.get("with");
                let params = with.map(|with| handed::read(with, only.as_ref(), sizes, findings)).unwrap_or_default();
                entries.push(PartEntry { file, sizes: only, params });
            }
            _ => {
                if let Some(file) = fields::text(item, "a part", findings) {
                    entries.push(PartEntry { file, sizes: None, params: Handed::default() });
                }
            }
        }
    }
    entries
}
