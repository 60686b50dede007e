//! What the work of a step says: what is done to what, its figures in every size, and the allowance of each edge.

use super::evidence::Evidence;
use super::origin::{Tracer, merged};
use super::row::{Origin, Row};
use super::sentences::groups;
use super::sheet::{Done, EdgeRow, WorkRow};
use crate::book::{DoneTo, PlaceFact, SeamFact, Value};
use crate::model::{Expression, Far, Step, Thread, Work};
use crate::resolve::{Edition, EditionPart, EditionStep, EditionWork, Scope, Touched, Worked};

/// A step in one size, with what the book tells of its work.
#[derive(Clone, Copy)]
pub(super) struct InSize<'b> {
    pub edition: &'b Edition<'b>,
    pub part: &'b EditionPart<'b>,
    pub step: &'b EditionStep<'b>,
    pub seam: &'b [SeamFact],
}

impl<'b> InSize<'b> {
    /// Where its words look names up.
    pub fn scope(&self) -> Scope<'b> {
        Scope {
            values: &self.edition.values,
            params: self.part.part.params.of(self.edition.size()),
            folder: &self.part.part.folder,
            step: Some(self.step.step),
        }
    }
}

/// A figure of a fact of work: the key of its word, where the book tells it, and its formula.
type Figure = (&'static str, fn(&SeamFact) -> &Option<Value>, fn(&Work) -> &Option<Expression>);

const FIGURES: [Figure; 9] = [
    ("errata_allowance", |fact| &fact.allowance, |work| &work.allowance),
    ("errata_stitch", |fact| &fact.stitch, |work| &work.stitch),
    ("errata_leave", |fact| &fact.leave, |work| &work.leave),
    ("errata_ease", |fact| &fact.ease, |work| &work.ease),
    ("errata_gather", |fact| &fact.gather, |work| &work.gather),
    ("errata_apart", |fact| &fact.gap, |work| &work.gap),
    ("errata_up", |fact| &fact.up, |work| &work.up),
    ("errata_lap", |fact| &fact.lap, |work| &work.lap),
    ("errata_count", |fact| &fact.count, |work| &work.count),
];

/// The facts of a step's work, each in every size.
pub(super) fn work(evidence: &Evidence<'_>, step: &Step, sized: &[Option<InSize<'_>>]) -> Vec<WorkRow> {
    step.works.iter().enumerate().map(|(at, work)| one(evidence, work, at, sized)).collect()
}

fn one<'b>(evidence: &Evidence<'_>, work: &Work, at: usize, sized: &[Option<InSize<'b>>]) -> WorkRow {
    let fact = |own: &Option<InSize<'b>>| own.and_then(|own| own.seam.get(at));
    let done: Vec<Option<Done>> = sized.iter().map(|own| fact(own).map(|fact| done(evidence, fact))).collect();
    let done = groups(&done)
        .into_iter()
        .filter_map(|sizes| Some(Done { sizes: evidence.sizes(&sizes), ..done[*sizes.first()?].clone()? }))
        .collect();
    let mut rows = Vec::new();
    for (key, figure, formula) in FIGURES {
        let cell = |own: &Option<InSize<'b>>| evidence.value(figure(fact(own)?).as_ref()?);
        let cells: Vec<Option<String>> = sized.iter().map(cell).collect();
        if cells.iter().any(Option::is_some) {
            // What no formula says, marks on the pieces do.
            let from = match formula(work) {
                Some(formula) => origins(evidence, Some(formula), sized),
                None => vec![Origin { how: "reckoned", text: String::new(), place: evidence.place(work.verb_span) }],
            };
            rows.push(Row::new(evidence.word(key), cells, from));
        }
    }
    let places = [("seam_from", 0), ("seam_to", 1), ("seam_leave_at", 2)];
    for (key, role) in places {
        let written = [&work.part[0], &work.part[1], &work.leave_at][role];
        let Some(written) = written else { continue };
        let named = key.trim_start_matches("seam_");
        let cell = |own: &Option<InSize<'b>>| {
            let place = fact(own)?.places.iter().find(|place| place.role == named)?;
            Some(placed(evidence, place))
        };
        let from = match &written.far {
            Far::Along(formula) => origins(evidence, Some(formula), sized),
            _ => {
                vec![Origin { how: "work", text: written.text.text.clone(), place: evidence.place(written.text.span) }]
            }
        };
        rows.push(Row::new(evidence.word(key), sized.iter().map(cell).collect(), from));
    }
    WorkRow { done, place: evidence.place(work.verb_span), rows }
}

/// Where the figure of a fact comes from, over all sizes.
fn origins(evidence: &Evidence<'_>, formula: Option<&Expression>, sized: &[Option<InSize<'_>>]) -> Vec<Origin> {
    let Some(formula) = formula else { return Vec::new() };
    merged(sized.iter().flatten().map(|own| {
        // The facts of a step are no names in its own work.
        let scope = Scope { step: None, ..own.scope() };
        Tracer { evidence, edition: own.edition, scope: &scope }.printed("work", formula, formula.span())
    }))
}

/// What is done to what, without figures.
fn done(evidence: &Evidence<'_>, fact: &SeamFact) -> Done {
    let plain = evidence.plain();
    let named = |done: &DoneTo| {
        let name = match done.name.as_str() {
            "all" => evidence.word("all_pieces"),
            name => name.to_owned(),
        };
        let parts = if done.parts.is_empty() { String::new() } else { format!(": {}", plain.listed(&done.parts)) };
        let marks = match done.marks.as_slice() {
            [] => String::new(),
            marks => {
                let key = if done.several { "seam_at_marks" } else { "seam_at_mark" };
                format!(" {}", plain.word(key, &[("name", &plain.listed(marks))]))
            }
        };
        format!("{name}{parts}{marks}")
    };
    let what = fact.what.iter().map(|side| side.iter().map(named).collect::<Vec<_>>().join(", ")).collect();
    let mut how: Vec<String> = fact.words.clone();
    how.extend([&fact.together, &fact.around].into_iter().filter(|key| !key.is_empty()).map(|key| evidence.word(key)));
    how.extend(fact.ends_in.then(|| evidence.word("ends_in")));
    how.extend(fact.by_hand.then(|| evidence.word("by_hand")));
    if !fact.finish.is_empty() {
        how.push(evidence.word(&format!("finish_{}", fact.finish)));
    }
    match fact.leave_for.as_str() {
        "" => {}
        "slit" => how.push(evidence.word("seam_slit")),
        name => how.push(format!("{} {name}", evidence.word("seam_for"))),
    }
    if !fact.caught.is_empty() {
        how.push(format!("{} {}", evidence.word("seam_catch"), fact.caught.join(", ")));
    }
    Done { sizes: Vec::new(), verb: format!("verb_{}", fact.verb), what, how }
}

/// A place on an edge in words.
fn placed(evidence: &Evidence<'_>, place: &PlaceFact) -> String {
    let plain = evidence.plain();
    let far = place.far.as_ref().and_then(|far| evidence.value(far));
    let mut words = match (far, place.point.split_once(' ')) {
        (Some(far), _) => far,
        (None, Some(("mark", name))) => plain.word("place_mark", &[("name", name)]),
        (None, Some(("edge", name))) => plain.word("place_edge", &[("name", name)]),
        (None, Some((_, number))) => plain.word("place_notch", &[("n", number)]),
        (None, None) => evidence.word(&format!("place_{}", place.point)),
    };
    if !place.from.is_empty() {
        let end = match place.from.as_str() {
            end @ ("start" | "end") => evidence.word(&format!("place_{end}")),
            edge => plain.word("place_edge", &[("name", edge)]),
        };
        words.push_str(&format!(" {} {end}", evidence.word("place_from")));
    }
    words
}

/// The seam allowance of a step, edge by edge: how far in it is sewn, and with how much the edge was cut.
pub(super) fn edges<'b>(evidence: &Evidence<'_>, step: &Step, sized: &[Option<InSize<'b>>]) -> Vec<EdgeRow> {
    let mut rows = Vec::new();
    for (at, work) in step.works.iter().enumerate().filter(|(_, work)| work.verb.stitches()) {
        let own = |own: &Option<InSize<'b>>| own.map(|own| (own, &own.step.works[at]));
        let mut names: Vec<(String, String)> = Vec::new();
        for (own, work) in sized.iter().filter_map(own) {
            for named in touched(&own, work) {
                if !names.contains(&named.name) {
                    names.push(named.name);
                }
            }
        }
        let from = origins(evidence, work.allowance.as_ref(), sized);
        for name in names {
            let find = |own: &Option<InSize<'b>>| {
                let own = (*own)?;
                let work = &own.step.works[at];
                let edge = touched(&own, work).into_iter().find(|edge| edge.name == name)?;
                Some((own, work, edge))
            };
            let found: Vec<_> = sized.iter().map(find).collect();
            let figure =
                |own: &InSize<'_>, worked: &Worked| own.edition.figures(worked).to_string().replace('\u{a0}', " ");
            let sewn: Vec<Option<String>> = found
                .iter()
                .map(|one| one.as_ref().and_then(|(own, work, _)| Some(figure(own, &work.allowance?))))
                .collect();
            let cut: Vec<Option<String>> = found
                .iter()
                .map(|one| one.as_ref().and_then(|(own, _, edge)| Some(figure(own, &edge.cut?.0))))
                .collect();
            let cut_from = merged(found.iter().flatten().filter_map(|(own, _, edge)| {
                let (_, formula) = edge.cut?;
                let scope = Scope::plain(&own.edition.values);
                Some(Tracer { evidence, edition: own.edition, scope: &scope }.printed("piece", formula, formula.span()))
            }));
            // A row of stitches keeps a distance of its own.
            let apart = work.verb.joins_at_allowance()
                && sewn.iter().zip(&cut).any(|(sewn, cut)| sewn.is_some() && cut.is_some() && sewn != cut);
            let differ = |cells: &[Option<String>]| {
                let mut stated = cells.iter().flatten();
                stated.next().is_some_and(|first| stated.any(|other| other != first))
            };
            let own_distance = work.verb.thread() == Thread::Row;
            let differs = differ(&sewn) || (!own_distance && differ(&cut));
            let row = |key: &str, cells: Vec<Option<String>>, from| {
                cells.iter().any(Option::is_some).then(|| Row::new(evidence.word(key), cells, from))
            };
            let Some(sewn) = row("proof_sewn", sewn, from.clone()) else { continue };
            let fresh = EdgeRow {
                piece: name.0,
                edges: vec![name.1],
                verb: format!("verb_{}", work.verb.word()),
                sewn,
                cut: row("proof_cut", cut, cut_from).filter(|_| !own_distance),
                apart,
                differs,
            };
            take(&mut rows, fresh);
        }
    }
    rows
}

/// Takes in an edge, beside those of its piece that are sewn and cut alike.
fn take(rows: &mut Vec<EdgeRow>, fresh: EdgeRow) {
    let alike = |known: &EdgeRow| EdgeRow { edges: Vec::new(), ..known.clone() };
    match rows.iter_mut().find(|known| alike(known) == alike(&fresh)) {
        Some(known) => known.edges.extend(fresh.edges.into_iter().filter(|edge| !edge.is_empty())),
        None => {
            rows.push(EdgeRow { edges: fresh.edges.into_iter().filter(|edge| !edge.is_empty()).collect(), ..fresh })
        }
    }
}

/// An edge that a work touches in one size.
struct Edge<'b> {
    /// The piece and the edge, in words.
    name: (String, String),
    /// The allowance that it is cut with, and its formula; `None` where the piece states none.
    cut: Option<(Worked, &'b Expression)>,
}

fn touched<'b>(own: &InSize<'b>, work: &'b EditionWork<'b>) -> Vec<Edge<'b>> {
    let edition = own.edition;
    let mut found = Vec::new();
    for target in &work.targets {
        for touched in &target.touched {
            match touched {
                Touched::Edge(copy, edge) => {
                    let piece = &edition.draft.facts.pieces[edition.cast[*copy].piece];
                    let drawn = edition.drawn_word(*copy, *edge);
                    let stated = piece.allowance.iter().rev().find(|(name, _)| name.text == drawn);
                    let stated = stated.or_else(|| piece.allowance.iter().find(|(name, _)| name.text == "all"));
                    let cut = stated.and_then(|(_, formula)| Some((edition.values.quiet(formula)?, formula)));
                    let word = edition.edge_word(*copy, *edge);
                    let edge = piece.edge_called(&word).unwrap_or_else(|| word.replace('_', " "));
                    found.push(Edge { name: (edition.copy_name(*copy), edge), cut });
                }
                Touched::Copy(_) | Touched::Inside(..) | Touched::Notion(_) | Touched::ZipEdge(..) => {
                    let (piece, edge) = (target.owner.clone(), target.part.clone());
                    found.push(Edge { name: (piece, edge), cut: None });
                }
                Touched::Unknown => {}
            }
        }
    }
    found
}
