//! A step that the compiler draws, as a diagram like any other: dressed, its classes noted, its words
//! measured.

use std::path::Path;
use std::sync::Arc;

use usvg::fontdb;

use super::classes::{CLASSES, SYMBOLS};
use super::draw::{Ruler, Undrawn, draw};
use super::drawing::tag_length;
use super::dress::Wardrobe;
use super::gather::{BoundFigure, with_paper_size};
use super::{inspect, measure_tree, picture};
use crate::diag::{Finding, Findings, did_you_mean};
use crate::measure::Exact;
use crate::model::{Step, Text};
use crate::resolve::{Edition, FigureUse};

/// What a path begins with that no file stands behind.
pub(super) const DRAW: &str = "draw:";

/// Draws what a mention asks for; what cannot be drawn is a finding at the mention.
pub(super) fn drawn(
    mention: &FigureUse,
    edition: &Edition<'_>,
    step: Option<&Step>,
    (wardrobe, database, families): (&Wardrobe, &Arc<fontdb::Database>, &[String]),
    findings: &mut Findings,
) -> Option<BoundFigure> {
    let size = edition.size();
    let what = mention.path.strip_prefix(DRAW)?;
    let outcome = if what != "work" {
        Err(Undrawn {
            message: format!("`{}` is nothing that can be drawn", mention.path),
            hint: did_you_mean(&mention.path, ["draw:work"], "write `draw:work`, or the path of a drawing"),
        })
    } else {
        let step = step.and_then(|step| edition.steps().find(|known| std::ptr::eq(known.step, step)));
        match step {
            Some(step) => {
                let ruler = Ruler::new(wardrobe, database);
                draw(edition, step, &ruler).map(|svg| svg.map(|svg| (svg, step.number, step.step.id.as_ref())))
            }
            None => Err(Undrawn {
                message: "no step's work stands behind this diagram".into(),
                hint: "move it below the heading of a step, or name the file of a drawing".into(),
            }),
        }
    };
    let (text, number, id) = match outcome {
        Ok(drawing) => drawing?,
        Err(undrawn) => {
            let finding = Finding::error("figure-not-drawable", mention.span, undrawn.message).hint(undrawn.hint);
            findings.push(finding.in_size(size, ""));
            return None;
        }
    };
    let document = roxmltree::Document::parse(&text).ok()?;
    let place = Text { text: text.clone(), span: mention.span, verbatim: false };
    let found = inspect::inspect(&document, &place, families, findings);
    let dressed = wardrobe.dress(&text, tag_length(&text));
    let svg = with_paper_size(&dressed, document.root_element(), Exact::from_integer(1));
    let tree = usvg::Tree::from_str(&svg, &picture::options(database)).ok()?;
    measure_tree::words(&tree, &document, &|_| mention.span, size, findings);
    let millimetres = |pixels: f32| f64::from(pixels) * 25.4 / 96.0;
    let name = id.map_or_else(|| format!("step-{number}"), |id| id.text.clone());
    Some(BoundFigure {
        path: Path::new(&mention.path).join(name).to_string_lossy().replace('\\', "/"),
        width: millimetres(tree.size().width()),
        height: millimetres(tree.size().height()),
        classes: CLASSES.iter().map(|class| class.name).filter(|name| found.classes.contains(*name)).collect(),
        symbols: SYMBOLS.iter().map(|(name, _)| *name).filter(|name| found.symbols.contains(*name)).collect(),
        svg,
    })
}
