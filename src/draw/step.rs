//! One step drawn: what it is about, whether that can be drawn truly, and at which scale.

use std::collections::BTreeSet;

use super::desk::{Desk, Undrawn};
use super::fits::{Drawn, SCALES};
use super::page::{ABOVE, BESIDE, Page};
use super::past::{Held, Past, Seam, copies, held, millimetres};
use super::{alone, bag, cloth, corner, cutting, frames, handled, hoop, laid, lap, layers};
use super::{lens, opened, pile, placed, rows, single, strips};
use crate::diag::listed;
use crate::figure::Ruler;
use crate::model::Verb;
use crate::resolve::{CopyId, Edition, EditionStep, EditionWork, Meant, Touched};

/// The verb that a drawing is about, if a step has several: the first of these.
const LEADING: [Verb; 39] = [
    Verb::Box,
    Verb::Sew,
    Verb::Cut,
    Verb::Quilt,
    Verb::Fuse,
    Verb::Bind,
    Verb::Hem,
    Verb::Dart,
    Verb::Tuck,
    Verb::Pleat,
    Verb::Gather,
    Verb::Topstitch,
    Verb::Edgestitch,
    Verb::Applique,
    Verb::Boxstitch,
    Verb::Attach,
    Verb::Lap,
    Verb::Baste,
    Verb::Understitch,
    Verb::Staystitch,
    Verb::Easestitch,
    Verb::Fold,
    Verb::Put,
    Verb::Turn,
    Verb::Pin,
    Verb::Close,
    Verb::Finish,
    Verb::Trim,
    Verb::Grade,
    Verb::Clip,
    Verb::Slash,
    Verb::Buttonhole,
    Verb::Button,
    Verb::Fasten,
    Verb::Insert,
    Verb::Stuff,
    Verb::Mark,
    Verb::Open,
    Verb::Press,
];

/// How much larger it is at least above them, so that it stands there.
const BETTER: f64 = 1.2;
/// How many times smaller a step may be drawn so that its lens has room.
const FOR_LENS: f64 = 1.7;
/// How many times smaller a step may be drawn so that each of its works has a frame.
const SMALLER: u32 = 3;

/// Draws a step.
///
/// # Errors
/// When the facts of the step name nothing that can be drawn, or something that cannot be drawn truly.
pub(super) fn draw<'a>(
    edition: &'a Edition<'_>,
    step: &'a EditionStep<'_>,
    ruler: &'a Ruler<'a>,
) -> Result<String, Undrawn> {
    let past = Past::of(edition, step);
    let cloths = cloth::sort(edition);
    let mut desk = Desk { edition, step, past, cloths, ruler, sheet: BESIDE };
    desk.is_shaped()?;
    let verb = desk.leading()?;
    if let Err(undrawn) = desk.is_drawable(verb) {
        let apart = frames::draw(&desk, &frames::apart(&desk), u32::MAX);
        return apart.map(|drawn| drawn.svg).ok_or(undrawn);
    }
    let narrow = desk.largest(verb)?;
    let best = match narrow {
        Some(drawn) if drawn.is_legible() => Some(drawn),
        narrow => {
            desk.sheet = ABOVE;
            let wide = desk.largest(verb)?;
            match (narrow, wide) {
                (Some(narrow), Some(wide)) if wide.reach < narrow.reach * BETTER => Some(narrow),
                (narrow, wide) => wide.or(narrow),
            }
        }
    };
    let most = best.as_ref().map_or(u32::MAX, |best| best.scale * SMALLER);
    if let Some(drawn) = frames::draw(&desk, &frames::split(&desk, verb), most).or(best) {
        return Ok(drawn.svg);
    }
    Err(Undrawn {
        message: format!("one drawing has no room for all that this `{}` names: {}", verb.word(), desk.all_drawn(verb)),
        hint: "split the step so that each names fewer, or draw this diagram by hand and name its file here".into(),
        follows: false,
    })
}

impl<'a, 'e> Desk<'a, 'e> {
    /// The step as large as the sheet holds it; `None` when it does not at all.
    ///
    /// Of several drawings side by side and below each other, the larger is taken; pieces to cut lose
    /// their measurements only where they would not fit with them at all.
    fn largest(&self, verb: Verb) -> Result<Option<Drawn>, Undrawn> {
        let mut trials: Vec<(u32, bool)> = SCALES.iter().flat_map(|scale| [(*scale, true), (*scale, false)]).collect();
        if verb == Verb::Cut {
            trials.sort_by_key(|(_, measured)| !measured);
        }
        let mut bare: Option<Drawn> = None;
        for (scale, way) in trials {
            if bare.as_ref().is_some_and(|bare| f64::from(scale) > f64::from(bare.scale) * FOR_LENS) {
                break;
            }
            let Some(page) = self.page(verb, f64::from(scale), way)? else {
                return Err(Undrawn {
                    message: format!(
                        "the edges that this `{}` names on {} do not meet as flat pieces",
                        verb.word(),
                        self.all_drawn(verb)
                    ),
                    hint: "draw this diagram by hand and name its file here".into(),
                    follows: false,
                });
            };
            let reach = page.reach();
            let lenses = lens::with(self, verb, &page, f64::from(scale));
            let Some(plain) = page.finish(scale, self.sheet) else { continue };
            let plain = Drawn { svg: plain, scale, reach };
            if lenses.is_empty() {
                return Ok(bare.or(Some(plain)));
            }
            if let Some(svg) = lenses.into_iter().find_map(|page| page.finish(scale, self.sheet)) {
                return Ok(Some(Drawn { svg, ..plain }));
            }
            // The drawing fills the sheet: a little smaller, it leaves room for its lens.
            bare.get_or_insert(plain);
        }
        Ok(bare)
    }

    fn leading(&self) -> Result<Verb, Undrawn> {
        if self.step.works.is_empty() {
            return Err(Undrawn {
                message: "this step has no work block to draw from".into(),
                hint: "add a `work` block that names what is done to which pieces, or draw this diagram by hand and name its file here".into(),
                follows: false,
            });
        }
        let has = |verb: &Verb| {
            self.step.works.iter().filter(|work| work.verb == *verb).any(|work| {
                let found = held(work, self.edition);
                let zip = matches!(verb, Verb::Open | Verb::Close)
                    && found.iter().any(|target| matches!(target, Held::Notion(_)));
                zip || alone::zip(self.edition, work).is_some() || !copies(&found).is_empty()
            })
        };
        LEADING.into_iter().find(has).ok_or_else(|| Undrawn {
            message: "the work of this step names no piece that can be drawn".into(),
            hint: "name the pieces or their edges in the work block, such as `sew: [front.top, back.top]`, or draw this diagram by hand and name its file here".into(),
            follows: false,
        })
    }

    /// Whether what a verb names lies as it can be drawn, at places that the facts tell.
    pub fn is_drawable(&self, verb: Verb) -> Result<(), Undrawn> {
        self.is_flat(verb)?;
        self.has_right_sides_together(verb)?;
        self.is_placed(verb)
    }

    /// Pieces are drawn right sides together alone.
    fn has_right_sides_together(&self, verb: Verb) -> Result<(), Undrawn> {
        match self.step.works.iter().any(|work| work.verb == verb && verb == Verb::Sew && work.work.wrong_sides) {
            true => Err(Undrawn {
                message: "pieces that lie wrong sides together are not drawn".into(),
                hint: "draw this diagram by hand and name its file here".into(),
                follows: false,
            }),
            false => Ok(()),
        }
    }

    /// A piece without an outline cannot be drawn; why it has none is told by itself.
    fn is_shaped(&self) -> Result<(), Undrawn> {
        let edition = self.edition;
        let targets = || self.step.works.iter().flat_map(|work| work.named());
        let named = targets().filter(|target| !matches!(target.meant, Meant::NoCopies(_)));
        let named = named.filter_map(|target| target.piece(&edition.cast));
        let all = targets().filter(|target| target.meant == Meant::All).flat_map(|_| edition.cast.copies());
        let mut pieces = named.chain(all.map(|(_, member)| member.piece));
        match pieces.find(|piece| edition.values.shape(*piece).is_none()) {
            None => Ok(()),
            Some(piece) => Err(Undrawn {
                message: format!("the outline of `{}` is not known here", edition.draft.facts.pieces[piece].id.text),
                hint: "mend the piece's outline first".into(),
                follows: true,
            }),
        }
    }

    /// The copies that the leading verb's facts name.
    fn drawn(&self, verb: Verb) -> BTreeSet<CopyId> {
        let works = self.step.works.iter().filter(|work| work.verb == verb);
        works.flat_map(|work| copies(&handled::drawn_of(work, self.edition))).collect()
    }

    /// Whether all of them lie folded up or are turned out, so that nothing is opened out beside them.
    fn is_whole(&self, verb: Verb) -> bool {
        let whole = |copy: &CopyId| self.past.is_folded(*copy) || self.past.turned.contains_key(copy);
        self.drawn(verb).iter().all(whole)
    }

    /// The same in words.
    fn all_drawn(&self, verb: Verb) -> String {
        let mut names: Vec<String> = self.drawn(verb).into_iter().map(|copy| self.name(copy)).collect();
        names.dedup();
        listed(&names)
    }

    /// Cut outlines are true only while the pieces lie flat and are not folded up.
    fn is_flat(&self, verb: Verb) -> Result<(), Undrawn> {
        if verb == Verb::Cut {
            return Ok(());
        }
        let named = self.drawn(verb);
        let changed = self.past.changed.iter().filter(|(copy, ..)| named.contains(copy)).copied();
        let boxed = self.past.boxed.iter().filter(|(copy, _)| named.contains(copy) && !bag::draws(verb));
        let boxed = boxed.map(|(copy, step)| (*copy, *step, "boxed"));
        match changed.chain(boxed).min_by_key(|(_, step, _)| *step) {
            None => Ok(()),
            Some((copy, step, how)) => Err(Undrawn {
                message: format!(
                    "{} was {how} in step {step} and no longer has the outline that was cut",
                    self.name(copy)
                ),
                hint: "draw this diagram by hand and name its file here".into(),
                follows: false,
            }),
        }
    }

    /// A whole piece beside an edge of another, or a notion that is no zip, has no place that the facts
    /// tell.
    fn is_placed(&self, verb: Verb) -> Result<(), Undrawn> {
        let joins =
            matches!(verb, Verb::Sew | Verb::Topstitch | Verb::Edgestitch | Verb::Attach | Verb::Pin | Verb::Baste);
        let facts: Vec<&EditionWork<'_>> = self.step.works.iter().filter(|work| work.verb == verb).collect();
        if facts.iter().any(|work| placed::lies_on_mark(self, work)) {
            return match placed::is_placed(self, verb) {
                true => Ok(()),
                false => Err(Undrawn {
                    message: format!("this step names more than one drawing can show: {}", self.all_drawn(verb)),
                    hint: "split the step: what is laid on a mark by itself, and the edges by themselves".into(),
                    follows: false,
                }),
            };
        }
        if facts.iter().any(|work| rows::names_mark(work)) {
            return match rows::is_marked(self, verb) {
                true => Ok(()),
                false => Err(Undrawn {
                    message: format!("this step names more than one drawing can show: {}", self.all_drawn(verb)),
                    hint: "split the step: what is stitched along marks by itself, and the edges by themselves".into(),
                    follows: false,
                }),
            };
        }
        if laid::are_laid(self, verb) {
            return Ok(());
        }
        for work in facts.into_iter().filter(|_| joins) {
            let found = held(work, self.edition);
            let whole = found.iter().find_map(|target| match target {
                Held::Copy(copy) => Some(self.name(*copy)),
                Held::Notion(notion) => Some(self.edition.draft.facts.notions[*notion].id.text.replace('_', " ")),
                _ => None,
            });
            let edges = found.iter().any(|target| matches!(target, Held::Edge(..)));
            if edges && strips::is_laid(self, work) {
                continue;
            }
            if let Some(whole) = whole.filter(|_| edges) {
                return Err(Undrawn::unclear(format!("nothing says how {whole} lies, and where")));
            }
        }
        rows::are_told(self, verb)
    }

    /// The drawing at a scale; `way` says whether parts of it stand side by side, or are measured.
    pub fn page(&self, verb: Verb, scale: f64, way: bool) -> Result<Option<Page<'a>>, Undrawn> {
        Ok(match verb {
            _ if bag::draws(verb) && bag::is_boxed(self, verb) => bag::draw(self, verb, scale)?,
            _ if layers::are_one(self, verb) => layers::draw(self, verb, scale, way),
            _ if placed::is_placed(self, verb) => placed::draw(self, verb, scale, way),
            _ if rows::is_marked(self, verb) => rows::draw(self, verb, scale, way)?,
            _ if alone::is_zip(self, verb) => alone::draw_zip(self, verb, scale),
            _ if alone::is_on_whole(self, verb) => alone::draw_on_whole(self, verb, scale, way),
            _ if laid::are_laid(self, verb) => laid::draw(self, verb, scale, way),
            _ if hoop::is_hoop(self, verb) => Some(hoop::draw(self, verb, scale, way)),
            Verb::Cut => cutting::draw(self, scale, way),
            Verb::Fuse | Verb::Quilt => layers::draw(self, verb, scale, way),
            Verb::Box => corner::draw(self, scale),
            Verb::Sew if strips::are_laid(self) => strips::draw(self, scale, way)?,
            Verb::Sew => pile::draw(self, &self.past.now, scale, way),
            Verb::Topstitch | Verb::Edgestitch | Verb::Press if self.is_whole(verb) => {
                single::draw(self, verb, scale, way)?
            }
            Verb::Topstitch | Verb::Edgestitch | Verb::Understitch | Verb::Press => {
                opened::draw(self, verb, scale, way)
            }
            Verb::Attach if self.is_on_marks(verb) => single::draw(self, verb, scale, way)?,
            Verb::Pin | Verb::Attach | Verb::Baste => match self.held(verb) {
                seams if !seams.is_empty() => pile::draw(self, &seams, scale, way),
                _ if verb == Verb::Pin && !self.sewn_next().is_empty() => {
                    pile::draw(self, &self.sewn_next(), scale, way)
                }
                _ if verb == Verb::Baste => single::draw(self, verb, scale, way)?,
                _ => return Err(Undrawn::unclear("nothing says which edges meet")),
            },
            Verb::Lap => lap::draw(self, scale, way)?,
            Verb::Put => return Err(Undrawn::unclear("what lies in something else is not drawn")),
            _ => single::draw(self, verb, scale, way)?,
        })
    }

    /// Whether every fact of a verb names marks where a notion goes.
    fn is_on_marks(&self, verb: Verb) -> bool {
        let marked = |work: &EditionWork<'_>| {
            let mark = work.touched().any(|touched| matches!(touched, Touched::Inside(..)));
            mark && work.touched().all(|touched| matches!(touched, Touched::Inside(..) | Touched::Notion(_)))
        };
        self.step.works.iter().filter(|work| work.verb == verb).all(marked)
    }

    /// Whole pieces that are pinned are pinned where the next step sews them.
    fn sewn_next(&self) -> Vec<Seam> {
        let named = self.drawn(Verb::Pin);
        let mut after = self.edition.steps().filter(|step| step.number > self.step.number);
        let Some(next) = after.find(|step| step.works.iter().any(|work| work.verb == Verb::Sew)) else {
            return Vec::new();
        };
        let pinned = self.step.works.iter().position(|work| work.verb == Verb::Pin).unwrap_or(0);
        let mut seams = Past::of(self.edition, next).now;
        seams.retain(|seam| copies(&seam.members).iter().all(|copy| named.contains(copy)));
        seams.iter_mut().for_each(|seam| (seam.work, seam.gap) = (pinned, None));
        seams
    }

    /// The seams that pinning, attaching or basting holds for now: facts that name edges of two things.
    fn held(&self, verb: Verb) -> Vec<Seam> {
        let mut seams = Vec::new();
        for (at, work) in self.step.works.iter().enumerate().filter(|(_, work)| work.verb == verb) {
            let members = held(work, self.edition);
            // The largest lies beneath, so that what is held to it does not turn it.
            let mut members = members;
            let area = |member: &Held| match member {
                Held::Copy(copy) | Held::Edge(copy, _) => {
                    self.edition.values.whole(self.edition.cast[*copy].piece).map_or(0.0, |shape| {
                        let (wide, high) = shape.box_size();
                        wide * high
                    })
                }
                _ => 0.0,
            };
            members.sort_by(|one, other| area(other).total_cmp(&area(one)));
            let edges = members.iter().all(|member| matches!(member, Held::Edge(..) | Held::ZipEdge(..)));
            if edges && copies(&members).len() > 1 {
                let allowance = work.allowance.and_then(millimetres);
                seams.push(Seam {
                    members,
                    between: Vec::new(),
                    allowance,
                    gap: None,
                    work: at,
                    step: self.step.number,
                });
            }
        }
        seams
    }
}
