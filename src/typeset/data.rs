//! A book as the data that the templates walk, and the files that they name.

use std::collections::BTreeMap;

use serde_json::{Value as Json, json};

use super::paper::Paper;
use super::prose::{amount, value};
use super::setter::{Setter, path};
use crate::book::{Book, CutList, Layout, MeasureRow, Offer, Part, SeamFact, Step};
use crate::model::{Date, written_moment};

/// Everything that one booklet file is set from.
#[derive(Debug, Clone)]
pub struct Sheaf {
    /// The data of the edition.
    pub data: Json,
    /// Drawings and pictures, by the path at which the templates find them.
    pub files: BTreeMap<String, Vec<u8>>,
    /// Which author's file stands behind such a path.
    pub origins: BTreeMap<String, String>,
    /// What it is printed on.
    pub paper: Paper,
}

impl Sheaf {
    /// The id of its first step.
    pub(super) fn first_step(&self) -> Option<&str> {
        let mut steps = self.data["parts"].as_array()?.iter().filter_map(|part| part["steps"].as_array()).flatten();
        steps.next()?["id"].as_str()
    }

    /// Whether a step is in it, by its id.
    pub fn has_step(&self, id: &str) -> bool {
        let parts = self.data["parts"].as_array().map_or(&[][..], Vec::as_slice);
        let mut steps = parts.iter().filter_map(|part| part["steps"].as_array()).flatten();
        steps.any(|step| step["id"] == id)
    }
}

/// Lays a book out for the templates, on a paper, with the words of the house.
pub fn lay_out(book: &Book, paper: Paper, labels: &Json) -> Sheaf {
    let setter = Setter::new(book);
    let mut files: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    let mut origins = BTreeMap::new();
    for (name, drawing) in &book.drawings {
        files.insert(path(name), drawing.svg.clone().into_bytes());
        if let Some(origin) = &drawing.origin {
            origins.insert(path(name), origin.clone());
        }
    }
    let photo = |name: &Option<String>| {
        let photo = name.as_ref().and_then(|name| book.pictures.get(name))?;
        Some(format!("/booklet/{}.{}", name.as_deref().unwrap_or_default(), photo.ending))
    };
    for (name, photo) in &book.pictures {
        files.insert(format!("/booklet/{name}.{}", photo.ending), photo.bytes.clone());
    }
    let spoken = |date: &Option<String>| date.as_deref().and_then(Date::parse).map(Date::spoken);
    let mut data = json!({
        "paper": paper.described(),
        "labels": labels,
        "title": book.title,
        "designer": book.designer,
        "edition": book.edition,
        "date": spoken(&book.date),
        "date_iso": book.date,
        "language": book.language,
        "skill": book.skill,
        "summary": book.summary.iter().map(|text| json!({ "kind": "text", "text": text })).collect::<Vec<_>>(),
        "contact": book.contact,
        "sizes": book.sizes,
        "size": setter.size(),
        "view": setter.view(),
        "columns": setter.columns(),
        "tables": setter.tables(),
        "style": {
            "accent": book.accent,
            "logo": photo(&book.logo),
            "cover": photo(&book.cover),
            "cover_alt": book.cover_alt,
        },
        "read_first": setter.blocks(&book.read_first),
        "cautions": book.cautions.iter().map(|caution| json!({
            "content": setter.blocks(&caution.content),
            "sizes": setter.only(&caution.sizes),
        })).collect::<Vec<_>>(),
        "child_caution": book.child_caution,
        "allowances": setter.allowances(),
        "key": book.key.iter().map(|entry| json!({ "class": entry.class, "swatch": path(&entry.drawing) })).collect::<Vec<_>>(),
        "body": book.body.iter().map(measure).collect::<Vec<_>>(),
        "finished": book.finished.iter().map(|row| json!({
            "measure": measure(&row.measure),
            "ease": row.ease.as_ref().map(measure),
        })).collect::<Vec<_>>(),
        "fabrics": book.fabrics.iter().map(|fabric| setter.fabric(fabric)).collect::<Vec<_>>(),
        "notions": book.notions.iter().map(|notion| setter.notion(notion)).collect::<Vec<_>>(),
        "tools": book.tools.iter().map(|tool| json!({ "name": tool.name, "sizes": setter.only(&tool.sizes) })).collect::<Vec<_>>(),
        "pieces": setter.pieces(),
        "cuts": book.cuts.iter().map(|list| setter.cuts(list)).collect::<Vec<_>>(),
        "offers": setter.offers(),
        "layouts": book.layouts.iter().map(|layout| setter.layout(layout)).collect::<Vec<_>>(),
        "sheets": setter.map(),
        "parts": book.parts.iter().map(|part| setter.part(part)).collect::<Vec<_>>(),
        "words": book.words.iter().map(|word| json!({
            "id": word.id,
            "word": word.term,
            "meaning": setter.blocks(&word.meaning),
        })).collect::<Vec<_>>(),
        "care": setter.blocks(&book.care),
        "terms": setter.blocks(&book.terms),
        "editions": book.record.iter().map(|release| json!({
            "edition": release.edition,
            "date": spoken(&release.date),
            "changes": setter.blocks(&release.changes),
        })).collect::<Vec<_>>(),
    });
    // The macro takes no more keys at once.
    setter.glance(&mut data);
    data["video"] = setter.film();
    data["help"] = setter.help().into();
    Sheaf { data, files, origins, paper }
}

fn measure(row: &MeasureRow) -> Json {
    let values = row.values.iter().map(|one| one.as_ref().map(amount));
    json!({ "name": row.name, "values": values.collect::<Vec<_>>() })
}

impl Setter<'_> {
    /// The names of the sizes that an author keeps a step to; empty where every size has it.
    pub fn only(&self, sizes: &[usize]) -> Vec<String> {
        // In the booklet of one thing, what it has whole needs no word of it.
        let whole = !self.book.views.is_empty() && self.shown().iter().all(|size| sizes.contains(size));
        let all = whole || sizes.len() == self.book.sizes.len();
        if all { Vec::new() } else { self.spoken(sizes) }
    }

    /// The size that a booklet is for; `null` for all of them.
    fn size(&self) -> Json {
        match self.book.shown.as_slice() {
            [only] => self
                .book
                .sizes
                .get(*only)
                .map_or(Json::Null, |size| json!({ "id": size.id, "name": size.name, "index": only })),
            _ => Json::Null,
        }
    }

    fn columns(&self) -> Vec<Json> {
        let own = self.book.shown.len() == 1;
        let shown = self.book.shown.iter().filter_map(|size| self.book.sizes.get(*size));
        shown.map(|size| json!({ "id": size.id, "name": size.name, "own": own })).collect()
    }

    fn allowances(&self) -> Vec<Json> {
        let steps: Vec<&Step> = self.book.parts.iter().flat_map(|part| &part.steps).collect();
        let number = |id: &String| {
            let step = steps.iter().find(|step| step.id == *id);
            step.map(|step| json!({ "id": id, "number": step.number }))
        };
        let uses = self.book.allowances.iter();
        uses.map(|entry| {
            json!({
                "value": amount(&entry.value),
                "steps": entry.steps.iter().filter_map(number).collect::<Vec<_>>(),
                "sizes": self.names(&entry.sizes),
            })
        })
        .collect()
    }

    fn pieces(&self) -> Json {
        let drawings = self.book.pieces.pieces.iter().map(|piece| {
            let drawing = self.book.drawings.get(&piece.drawing);
            json!({
                "id": piece.id,
                "number": piece.number,
                "name": piece.name,
                "path": path(&piece.drawing),
                "width": drawing.map_or(0.0, |drawing| drawing.width),
                "height": drawing.map_or(0.0, |drawing| drawing.height),
                "size": self.names(&[piece.size]),
                "tables": self.tables_of(&piece.sizes),
            })
        });
        let drawings: Vec<Json> = drawings.collect();
        json!({ "drawings": drawings, "scale": format!("1:{}", self.book.pieces.scale) })
    }

    fn cuts(&self, list: &CutList) -> Json {
        let rows = list.rows.iter().map(|row| {
            let dimensions = row
                .dimensions
                .iter()
                .map(|pair| pair.as_ref().map(|(width, height)| json!([amount(width), amount(height)])));
            json!({
                "id": row.id,
                "number": self.book.pieces.pieces.iter().find(|piece| piece.id == row.id).map(|piece| piece.number),
                "name": row.name,
                "copies": row.copies,
                "count": row.count,
                "by_ruler": row.by_ruler,
                "snips": row.snips,
                "fold": row.fold,
                "opened": row.opened,
                "single_layer": row.single_layer,
                "mirrored": row.mirrored,
                "dimensions": dimensions.collect::<Vec<_>>(),
                "notes": self.notes(&row.note),
            })
        });
        json!({ "id": list.id, "name": list.name, "rows": rows.collect::<Vec<_>>() })
    }

    /// What is left to the maker and needs more than the lists hold.
    fn offers(&self) -> Vec<Json> {
        let adds = |offer: &&Offer| !offer.fabrics.is_empty() || !offer.notions.is_empty() || !offer.cuts.is_empty();
        let offers = self.book.offers.iter().filter(adds).map(|offer| {
            json!({
                "stake": self.stake(&offer.id, Some(&offer.id)),
                "title": self.offered_by(&offer.id).map(|title| self.inlines(title)),
                "fabrics": offer.fabrics.iter().map(|fabric| self.fabric(fabric)).collect::<Vec<_>>(),
                "notions": offer.notions.iter().map(|notion| self.notion(notion)).collect::<Vec<_>>(),
                "cuts": offer.cuts.iter().map(|list| self.cuts(list)).collect::<Vec<_>>(),
            })
        });
        offers.collect()
    }

    fn layout(&self, layout: &Layout) -> Json {
        let drawing = self.book.drawings.get(&layout.drawing);
        json!({
            "id": layout.id,
            "fabric": layout.name,
            "size": self.names(&[layout.size]).first(),
            "width": layout.width.as_ref().map(amount),
            "folded": layout.folded,
            "single_layer": layout.single_layer,
            "turned_over": layout.turned_over,
            "opened": layout.opened,
            "buy": layout.buy.as_ref().map(amount),
            "path": path(&layout.drawing),
            "drawn_width": drawing.map_or(0.0, |drawing| drawing.width),
            "drawn_height": drawing.map_or(0.0, |drawing| drawing.height),
        })
    }

    fn map(&self) -> Json {
        let Some(map) = &self.book.map else { return Json::Null };
        let drawing = self.book.drawings.get(&map.drawing);
        json!({
            "path": path(&map.drawing),
            "width": drawing.map_or(0.0, |drawing| drawing.width),
            "height": drawing.map_or(0.0, |drawing| drawing.height),
            "sheets": map.sheets,
            "rows": map.rows,
            "columns": map.columns,
            "lists": map.lists,
        })
    }

    fn part(&self, part: &Part) -> Json {
        let own = self.within(&part.sizes);
        json!({
            "id": part.id,
            "title": own.inlines(&part.title),
            "state": part.state.iter().map(|thing| self.thing(thing)).collect::<Vec<_>>(),
            "intro": own.blocks(&part.intro),
            "watch": part.watch.filter(|_| self.book.film.is_some()).map(written_moment),
            "steps": part.steps.iter().map(|step| own.step(step, part)).collect::<Vec<_>>(),
            "stake": self.stake(&part.id, part.offer.as_deref()),
            "sizes": self.only(&part.sizes),
            "tables": self.tables_of(&part.sizes),
        })
    }

    fn step(&self, step: &Step, part: &Part) -> Json {
        // What a part of one thing says of itself, its steps need not say again.
        let told = !self.book.views.is_empty() && step.sizes == part.sizes;
        let own = self.within(&step.sizes);
        let stake = if part.offer.is_some() { Json::Null } else { self.stake(&step.id, step.offer.as_deref()) };
        json!({
            "id": step.id,
            "number": step.number,
            "watch": step.watch.filter(|_| self.book.film.is_some()).map(|at| json!({ "time": written_moment(at), "url": self.watched(at) })),
            "title": own.inlines(&step.title),
            "body": own.blocks(&step.body),
            "stake": stake,
            "figure": step.figure.as_ref().map(|picture| own.picture(picture)),
            "seam": step.seam.iter().map(|fact| own.seam(fact)).collect::<Vec<_>>(),
            "sizes": if told { Vec::new() } else { self.only(&step.sizes) },
        })
    }

    fn seam(&self, fact: &SeamFact) -> Json {
        json!({
            "verb": fact.verb,
            "what": fact.what.iter().map(|side| side.iter().map(|done| json!({
                "name": done.name,
                "parts": done.parts,
                "sides": done.sides,
                "marks": done.marks,
                "several": done.several,
            })).collect::<Vec<_>>()).collect::<Vec<_>>(),
            "caught": fact.caught,
            "words": fact.words,
            "allowance": fact.allowance.as_ref().map(value),
            "stitch": fact.stitch.as_ref().map(value),
            "by_hand": fact.by_hand,
            "together": fact.together,
            "ends_in": fact.ends_in,
            "around": fact.around,
            "leave": fact.leave.as_ref().map(value),
            "ease": fact.ease.as_ref().map(value),
            "gather": fact.gather.as_ref().map(value),
            "lap": fact.lap.as_ref().map(value),
            "gap": fact.gap.as_ref().map(value),
            "up": fact.up.as_ref().map(value),
            "finish": fact.finish,
            "leave_for": fact.leave_for,
            "places": fact.places.iter().map(|place| json!({
                "role": place.role,
                "far": place.far.as_ref().map(value),
                "point": place.point,
                "from": place.from,
            })).collect::<Vec<_>>(),
            "count": fact.count.as_ref().map(value),
            "note": self.blocks(&fact.note),
            "sizes": self.names(&fact.sizes),
        })
    }
}
