//! The cloth of all sizes, laid side by side.

use rayon::iter::{IntoParallelIterator, IntoParallelRefIterator, ParallelIterator};

use crate::cloth::{Bolt, ClothFault, Laid, bolts, lay_out, lay_within_stated};
use crate::nest::Effort;
use crate::resolve::Edition;

/// Lays every size's cloth, side by side: the pieces are plain data, and each layout takes its time.
/// A first look is enough to check: that the pieces go on, and that what the author states is enough.
pub(super) fn lay_cloth(editions: &[&Edition<'_>], effort: Effort) -> Vec<Laid> {
    let bolts: Vec<Vec<Bolt>> = editions.iter().map(|edition| bolts(edition)).collect();
    let lay = |bolt: &Bolt| {
        let laid = if effort == Effort::Quick { lay_within_stated(bolt) } else { lay_out(bolt, effort) };
        laid.map_err(|pieces| Box::new(ClothFault { bolt: bolt.clone(), pieces }))
    };
    bolts.into_par_iter().map(|bolts| bolts.par_iter().map(lay).collect()).collect()
}
