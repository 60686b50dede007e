//! The play: each step's work in its order.

use std::collections::{BTreeMap, BTreeSet};

use super::end;
use super::fault::{Fault, Moment, RawOf};
use super::history::History;
use super::player::{Player, edges};
use crate::model::{Kind, Verb};
use crate::resolve::{CopyId, EdgeId, Edition, EditionStep, EditionWork, FabricId, Meant, PieceId, Touched, ZipEdge};

/// Plays all steps of one size, or those up to a number, after which the ending is not judged.
pub fn play(edition: &Edition<'_>, until: Option<usize>) -> History {
    let mut player = Player::new(edition);
    for step in edition.steps().take_while(|step| until.is_none_or(|last| step.number <= last)) {
        for (at, work) in step.works.iter().enumerate() {
            let moment = moment(step, at);
            player.work(work, moment);
        }
    }
    if until.is_none() {
        player.uncut();
        end::judge(&mut player);
    }
    History { faults: player.faults, state: player.state }
}

fn moment(step: &EditionStep<'_>, at: usize) -> Moment {
    let verb = step.works.get(at).map_or(step.step.span, |work| work.work.verb_span);
    Moment { step: step.number, work: at, verb, heading: step.step.span }
}

impl Player<'_> {
    fn work(&mut self, work: &EditionWork<'_>, moment: Moment) {
        self.tell_edges(work);
        let targets: Vec<Touched> = work.touched().collect();
        if work.verb == Verb::Cut {
            self.cut(&targets, moment);
            return;
        }
        let touched: BTreeSet<CopyId> = targets
            .iter()
            .filter_map(|target| match target {
                Touched::Copy(copy) | Touched::Edge(copy, _) => Some(*copy),
                _ => None,
            })
            .collect();
        for copy in &touched {
            if self.state.copies[*copy].cut.is_none() {
                self.early.entry(*copy).or_insert(moment);
            }
        }
        match work.verb {
            Verb::Fuse | Verb::Quilt => self.layer(work.verb, &touched, moment),
            Verb::Sew => self.sew(work, &targets, moment),
            Verb::Box => self.box_corners(work, &targets, moment),
            Verb::Hem | Verb::Bind => {
                self.check_allowance(work, &edges(&targets), moment);
                self.finish(work.verb, &targets, moment);
            }
            Verb::Fold => self.fold(&targets, moment),
            Verb::Gather => self.each_edge(&targets, |edge| edge.gathered = true),
            Verb::Topstitch => self.topstitch(&targets, moment),
            Verb::Press => self.press(&touched),
            Verb::Pin => self.pin(&targets, moment),
            Verb::Turn => self.turn(&touched, moment),
            Verb::Open | Verb::Close => self.open_or_close(work.verb, &targets, moment),
            Verb::Cut | Verb::Mark | Verb::Baste | Verb::Trim | Verb::Clip | Verb::Attach => {}
        }
    }

    /// Names of edges that do not exist are faults, once each; they count as unknown.
    fn tell_edges(&mut self, work: &EditionWork<'_>) {
        let facts = &self.edition.draft.facts;
        for target in &work.targets {
            let (of, id, edge, known) = match &target.meant {
                Meant::NoSuchEdge { owner, edge, known } => {
                    let piece = owner.piece(&self.edition.cast);
                    (RawOf::Piece(piece), &facts.pieces[piece].id, edge, known.clone())
                }
                Meant::NoSuchZipEdge(zip, edge) => {
                    let known = ZipEdge::ALL.iter().map(|(word, _)| (*word).to_owned()).collect();
                    (RawOf::Zip(*zip), &facts.notions[*zip].id, edge, known)
                }
                _ => continue,
            };
            if self.no_such.insert((of, edge.clone())) {
                let (name, owner, edge) = (target.name.clone(), id.text.clone(), edge.clone());
                self.faults.push(Fault::NoSuchEdge { name, owner, edge, known });
            }
        }
    }

    fn cut(&mut self, targets: &[Touched], moment: Moment) {
        let copies = targets.iter().filter_map(|target| match target {
            Touched::Copy(copy) => Some(*copy),
            _ => None,
        });
        let mut unmade: BTreeSet<(PieceId, FabricId)> = BTreeSet::new();
        for copy in copies {
            let state = &mut self.state.copies[copy];
            if state.cut.is_none() {
                state.cut = Some(moment);
            }
            let member = &self.edition.cast[copy];
            if let Some(fabric) = member.fabric.filter(|fabric| !self.is_made(*fabric)) {
                unmade.insert((member.piece, fabric));
            }
        }
        for (piece, fabric) in unmade {
            let made = self.will_be_made(fabric);
            self.faults.push(Fault::ClothNotMade { piece, fabric, cut: moment, made });
        }
        self.late(moment);
    }

    /// Whether a cloth is bought, or the piece that it is made from is quilted.
    fn is_made(&self, fabric: FabricId) -> bool {
        match self.source_of(fabric) {
            None => true,
            Some(piece) => self.edition.cast.of_piece(piece).any(|copy| self.state.copies[copy].quilted.is_some()),
        }
    }

    fn source_of(&self, fabric: FabricId) -> Option<PieceId> {
        let facts = &self.edition.draft.facts;
        let from = facts.fabrics[fabric].from.as_ref()?;
        PieceId::each(&facts.pieces).find(|(_, piece)| piece.id.text == from.text).map(|(id, _)| id)
    }

    /// The step that makes a cloth, looked for in the whole booklet.
    fn will_be_made(&self, fabric: FabricId) -> Option<Moment> {
        let piece = self.source_of(fabric)?;
        let copies: BTreeSet<CopyId> = self.edition.cast.of_piece(piece).collect();
        for step in self.edition.steps() {
            for (at, work) in step.works.iter().enumerate().filter(|(_, work)| work.verb == Verb::Quilt) {
                if work.touched().any(|target| matches!(target, Touched::Copy(copy) if copies.contains(&copy))) {
                    return Some(moment(step, at));
                }
            }
        }
        None
    }

    /// Copies that this cut comes too late for: one fault, at the first use.
    fn late(&mut self, cut: Moment) {
        let late: Vec<(CopyId, Moment)> = self
            .early
            .iter()
            .filter(|(copy, _)| self.state.copies[**copy].cut == Some(cut))
            .map(|(copy, used)| (*copy, *used))
            .collect();
        self.early.retain(|copy, _| self.state.copies[*copy].cut != Some(cut));
        let Some(used) = late.iter().map(|(_, used)| *used).min() else { return };
        let copies = late.iter().map(|(copy, _)| self.edition.cast[*copy].name.clone()).collect();
        self.faults.push(Fault::UsedBeforeCut { copies: unique(copies), used, cut });
    }

    /// Copies that are used and never cut, though others of their piece are.
    fn uncut(&mut self) {
        let mut by_piece: BTreeMap<PieceId, Vec<(CopyId, Moment)>> = BTreeMap::new();
        for (copy, used) in std::mem::take(&mut self.early) {
            by_piece.entry(self.edition.cast[copy].piece).or_default().push((copy, used));
        }
        for (piece, missing) in by_piece {
            let cut = self.edition.cast.of_piece(piece).filter_map(|copy| self.state.copies[copy].cut).min();
            let used = missing.iter().map(|(_, used)| *used).min();
            // A piece of which nothing is cut at all is another check's.
            let (Some(cut), Some(used)) = (cut, used) else { continue };
            let missing = unique(missing.iter().map(|(copy, _)| self.edition.cast[*copy].name.clone()).collect());
            self.faults.push(Fault::CutTooFew { missing, piece, cut, used });
        }
    }

    fn layer(&mut self, verb: Verb, touched: &BTreeSet<CopyId>, moment: Moment) {
        for copy in touched {
            let state = &self.state.copies[*copy];
            // What is quilted together was fused for it before: only the fusing can come too late.
            if let (Verb::Fuse, Some(earlier)) = (verb, state.worked) {
                let copy_name = self.edition.cast[*copy].name.clone();
                self.faults.push(Fault::FusedTooLate { copy: copy_name, fused: moment, earlier });
            }
            let state = &mut self.state.copies[*copy];
            state.layered = true;
            if verb == Verb::Quilt {
                state.quilted.get_or_insert(moment);
                state.worked.get_or_insert(moment);
            }
        }
    }

    fn finish(&mut self, verb: Verb, targets: &[Touched], moment: Moment) {
        let word = if verb == Verb::Hem { "hemmed" } else { "bound" };
        for (copy, edge) in self.edges_of(targets) {
            self.handle(copy, moment);
            self.state.edge(copy, edge).finished.get_or_insert((moment, word));
        }
    }

    fn fold(&mut self, targets: &[Touched], moment: Moment) {
        for (copy, edge) in self.edges_of(targets) {
            self.handle(copy, moment);
            self.state.edge(copy, edge).folded.get_or_insert(moment);
        }
    }

    fn topstitch(&mut self, targets: &[Touched], moment: Moment) {
        for target in targets {
            // A stitch holds what is folded already.
            for (copy, edge) in self.edges_of(&[*target]) {
                let edge = self.state.edge(copy, edge);
                edge.held |= edge.folded.is_some();
            }
            let Touched::Edge(copy, edge) = target else { continue };
            let name = self.edition.edge_name(*copy, *edge);
            let pressed = self.state.known_edge(*copy, *edge).and_then(|known| known.seams.last()).map(|seam| {
                let seam = &self.state.seams[*seam];
                (seam.pressed, seam.sewn)
            });
            if let Some((false, sewn)) = pressed {
                self.faults.push(Fault::NotPressed { edge: name, stitched: moment, sewn });
            }
            self.state.edge(*copy, *edge).topstitched.get_or_insert(moment);
        }
    }

    fn press(&mut self, touched: &BTreeSet<CopyId>) {
        for seam in &mut self.state.seams {
            seam.pressed |= seam.members.iter().any(|member| match member {
                Touched::Copy(copy) | Touched::Edge(copy, _) => touched.contains(copy),
                _ => false,
            });
        }
    }

    fn pin(&mut self, targets: &[Touched], moment: Moment) {
        let edges = edges(targets);
        let [first, second] = edges.as_slice() else { return };
        let seams = |edge: &(CopyId, EdgeId)| -> Vec<usize> {
            self.state.known_edge(edge.0, edge.1).map(|edge| edge.seams.clone()).unwrap_or_default()
        };
        let other = seams(second);
        if let Some(seam) = seams(first).into_iter().find(|seam| other.contains(seam)) {
            let edges = (self.edition.edge_name(first.0, first.1), self.edition.edge_name(second.0, second.1));
            let sewn = self.state.seams[seam].sewn;
            self.faults.push(Fault::PinnedTooLate { edges, pinned: moment, sewn });
        }
    }

    fn open_or_close(&mut self, verb: Verb, targets: &[Touched], moment: Moment) {
        for target in targets {
            match target {
                Touched::Notion(notion) | Touched::ZipEdge(notion, _) => {
                    if verb == Verb::Close {
                        self.state.open_zips.remove(notion);
                    } else if self.edition.draft.facts.notions[*notion].kind == Kind::Zip {
                        self.state.open_zips.insert(*notion);
                    }
                }
                Touched::Copy(_) | Touched::Edge(..) if verb == Verb::Close => self.close_gaps(target, moment),
                _ => {}
            }
        }
    }

    fn close_gaps(&mut self, target: &Touched, moment: Moment) {
        for seam in &mut self.state.seams {
            let holds = seam.members.iter().any(|member| match (member, target) {
                (Touched::Edge(copy, _), Touched::Copy(wanted)) => copy == wanted,
                (member, target) => member == target,
            });
            if holds && let Some(None) = seam.gap {
                seam.gap = Some(Some(moment));
            }
        }
    }
}

fn unique(names: Vec<String>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    names.into_iter().filter(|name| seen.insert(name.clone())).collect()
}
