//! Parts, steps and their seam facts.

use super::done::done_to;
use super::gatherer::Gatherer;
use crate::book::amount::{Amount, Value};
use crate::book::seam::{PlaceFact, SeamFact};
use crate::book::volume::{AllowanceUse, Part, Step};
use crate::diag::in_sentence;
use crate::measure::{Dimension, Exact, NumberStyle, Unit, round_to, show};
use crate::model::{Far, Thread, Together, is_for};
use crate::resolve::{Edition, EditionPart, EditionStep, EditionWork, Filler, Placed, Worked};

impl Gatherer<'_> {
    /// The parts of the size, with their places as written.
    pub fn parts(&mut self) -> Vec<Part> {
        let edition = self.edition;
        edition.parts.iter().enumerate().map(|(nth, part)| self.part(part, nth)).collect()
    }

    fn part(&mut self, part: &EditionPart<'_>, nth: usize) -> Part {
        let at = self.part_at(part);
        let id = self.ids.part(at).to_owned();
        Part {
            at,
            title: self.inlines(&part.title, &id),
            intro: self.blocks(&part.intro, &id),
            watch: part.part.watch.or_else(|| part.part.steps.first()?.watch).map(|time| time.seconds),
            offer: self.offer_called(part.part.offer),
            steps: part.steps.iter().map(|step| self.step(part, at, step)).collect(),
            sizes: self.written_for(&[part.part.sizes.as_ref()]),
            state: self.state(nth, &id),
            id,
        }
    }

    /// The id of what is left to the maker, by its place in the draft.
    fn offer_called(&self, offer: Option<usize>) -> Option<String> {
        offer.map(|offer| self.edition.draft.offers[offer].id.text.clone())
    }

    /// The sizes that every one of some limits lets through.
    pub fn written_for(&self, limits: &[Option<&Vec<usize>>]) -> Vec<usize> {
        let all = 0..self.edition.draft.facts.sizes.len();
        all.filter(|size| limits.iter().all(|limit| is_for(*limit, *size))).collect()
    }

    fn part_at(&self, part: &EditionPart<'_>) -> usize {
        self.edition.draft.parts.iter().position(|known| std::ptr::eq(known, part.part)).unwrap_or(0)
    }

    fn step_id(&self, part: &EditionPart<'_>, part_at: usize, step: &EditionStep<'_>) -> (usize, String) {
        let at = part.part.steps.iter().position(|known| std::ptr::eq(known, step.step)).unwrap_or(0);
        (at, self.ids.step(part_at, at).to_owned())
    }

    fn step(&mut self, part: &EditionPart<'_>, part_at: usize, step: &EditionStep<'_>) -> Step {
        let (at, id) = self.step_id(part, part_at, step);
        Step {
            at,
            number: step.number,
            watch: step.step.watch.map(|time| time.seconds),
            title: self.inlines(&step.title, &id),
            figure: step.figure.as_ref().and_then(|figure| self.picture(figure, &id)),
            body: self.blocks(&step.body, &id),
            offer: self.offer_called(step.step.offer),
            seam: step.works.iter().map(|work| self.seam(work, &id)).collect(),
            sizes: self.written_for(&[part.part.sizes.as_ref(), step.step.sizes.as_ref()]),
            id,
        }
    }

    /// What is told of one work below the words of its step. Every fact is told: a line that stood there for some
    /// verbs alone would let a maker think that nothing else is to be done.
    fn seam(&mut self, work: &EditionWork<'_>, owner: &str) -> SeamFact {
        let note = self.blocks(&work.note, owner);
        let draft = self.edition.draft;
        let value = |worked: &Option<crate::resolve::Worked>| {
            worked.as_ref().map(|worked| Value::of(&self.edition.figures(worked)))
        };
        SeamFact {
            verb: work.verb.word().to_owned(),
            what: done_to(work, self.edition),
            caught: work.spoken_caught(),
            words: work.work.words.iter().map(|words| words.text.clone()).collect(),
            allowance: work.allowance_figures(draft).as_ref().map(Value::of),
            stitch: work.stitch_figures(draft).as_ref().map(Value::of),
            by_hand: work.work.by_hand && (work.verb.stitches() || work.verb.counts()) && work.work.finish.is_none(),
            together: match work.work.with {
                Some(Together::RightSides) => "together_right".to_owned(),
                Some(Together::WrongSides) => "together_wrong".to_owned(),
                None => String::new(),
            },
            ends_in: work.work.ends_in,
            around: work.work.around.map_or(String::new(), |around| format!("seam_{}", around.word())),
            leave: value(&work.leave),
            ease: value(&work.ease),
            gather: value(&work.gather),
            count: work.count.map(|count| Value::of(&self.edition.figures(&Worked::count(count)))),
            lap: value(&work.lap),
            up: value(&work.up),
            gap: value(&work.gap),
            finish: work.work.finish.map_or_else(String::new, |finish| finish.word().to_owned()),
            leave_for: self.filler(work),
            places: places(work, self.edition),
            note,
            sizes: Vec::new(),
        }
    }

    /// What the gap of a seam is for.
    fn filler(&self, work: &EditionWork<'_>) -> String {
        match work.leave_for {
            Some(Filler::Notion(notion)) => in_sentence(&self.edition.draft.facts.notions[notion].name.text),
            Some(Filler::Slit) => "slit".to_owned(),
            None => String::new(),
        }
    }

    /// The seam allowances in use, narrowest first, each with the steps that use it.
    pub fn allowances(&self) -> Vec<AllowanceUse> {
        let mut found: Vec<(Exact, AllowanceUse)> = Vec::new();
        for part in &self.edition.parts {
            let part_at = self.part_at(part);
            for step in &part.steps {
                let (_, id) = self.step_id(part, part_at, step);
                for work in &step.works {
                    // Stitching that is only laid beside an edge has a distance, and no allowance.
                    let beside = work.verb.thread() == Thread::Row;
                    let Some(worked) = work.allowance.filter(|_| work.verb.stitches() && !beside) else { continue };
                    let value = Amount::of(&self.edition.figures(&worked));
                    let at = found.iter().position(|(_, known)| known.value == value).unwrap_or_else(|| {
                        let fresh = AllowanceUse { value, steps: Vec::new(), sizes: vec![self.size] };
                        found.push((worked.quantity.value, fresh));
                        found.len() - 1
                    });
                    if !found[at].1.steps.contains(&id) {
                        found[at].1.steps.push(id.clone());
                    }
                }
            }
        }
        found.sort_by_key(|(length, _)| *length);
        found.into_iter().map(|(_, entry)| entry).collect()
    }
}

/// Where a seam begins and ends, and where its gap lies.
fn places(work: &EditionWork<'_>, edition: &Edition<'_>) -> Vec<PlaceFact> {
    let [from, to] = &work.part;
    let all = [("from", from), ("to", to), ("leave_at", &work.leave_at)];
    let told = all.into_iter().filter_map(|(role, placed)| Some((role, placed.as_ref()?)));
    let fact = |(role, placed): (&str, &Placed<'_>)| {
        let from = counted_from(placed, work, edition);
        // Nothing from an edge is at that edge.
        let nowhere = placed.along.is_some_and(|along| along.quantity.value.is_zero());
        let at = match from.as_str() {
            "start" | "end" => from.clone(),
            edge => format!("edge {edge}"),
        };
        match nowhere && !from.is_empty() {
            true => PlaceFact { role: role.to_owned(), far: None, point: at, from: String::new() },
            false => PlaceFact {
                role: role.to_owned(),
                far: placed.along.as_ref().map(|along| far(along, edition)),
                point: point(role, placed, work, edition),
                from,
            },
        }
    };
    told.map(fact).collect()
}

/// How far along, as one measures it: a share of the edge is a fraction, or hundredths where no tape folds to it.
fn far(along: &Worked, edition: &Edition<'_>) -> Value {
    let mut shown = edition.figures(along);
    let share = along.quantity.value;
    if along.quantity.dimension == Dimension::Count {
        let folded = share.denom() <= FINEST_SHARE;
        let hundredths = share.checked_mul(Exact::from_integer(100)).and_then(|share| round_to(share, Exact::ONE));
        shown.first.number = match hundredths.filter(|_| !folded) {
            Some(share) => show(share, Unit::Percent, NumberStyle::Decimal).to_string(),
            None => show(share, Unit::Count, NumberStyle::Fraction).number,
        };
    }
    Value::of(&shown)
}

/// The smallest share that one folds an edge or a tape to (common practice, no source).
const FINEST_SHARE: i128 = 8;

/// What a place is counted from, by its name on the page; `start` and `end` are keys of words. A distance is always
/// counted from somewhere.
fn counted_from(placed: &Placed<'_>, work: &EditionWork<'_>, edition: &Edition<'_>) -> String {
    match placed.place.from.as_ref().map(|from| from.text.as_str()) {
        None if placed.along.is_some() && placed.mark.is_none() => "start".to_owned(),
        None => String::new(),
        Some(end @ ("start" | "end")) => end.to_owned(),
        Some(edge) => edge_called(edge, work, edition),
    }
}

/// The name on the page of an edge of the piece that a fact names first.
fn edge_called(edge: &str, work: &EditionWork<'_>, edition: &Edition<'_>) -> String {
    let piece = work.targets.first().and_then(|target| target.piece(&edition.cast));
    let called = piece.and_then(|piece| edition.draft.facts.pieces[piece].edge_called(edge));
    called.unwrap_or_else(|| format!("{} edge", edge.replace('_', " ")))
}

/// The key of the word that says how far along a place lies; a notch with its number behind, a mark or an edge with
/// its name.
fn point(role: &str, placed: &Placed<'_>, work: &EditionWork<'_>, edition: &Edition<'_>) -> String {
    match placed.place.far {
        // A gap at the centre does not begin there: it lies in the middle.
        Far::Centre if role == "leave_at" => "middle".to_owned(),
        Far::Here => "start".to_owned(),
        Far::There => "end".to_owned(),
        Far::Centre => "centre".to_owned(),
        Far::Notch(number) => format!("notch {number}"),
        Far::Along(_) if placed.mark.is_some() => {
            let name = placed.place.text.text.rsplit('.').next().unwrap_or_default();
            format!("mark {}", name.trim().replace('_', " "))
        }
        Far::Along(_) => {
            placed.beside.map_or_else(String::new, |edge| format!("edge {}", edge_called(edge, work, edition)))
        }
    }
}
