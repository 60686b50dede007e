//! Values that leave the family: one row of values held against its own steps, and against those of all other rows.

use super::rows::Row;
use crate::measure::Dimension;

/// What is odd about a row, at the size (by its place in the group) that it shows at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Odd {
    /// The value is that of the size before.
    Stalls(usize),
    /// The value lies far from where the others would have it, or falls where they grow.
    Jumps(usize),
}

/// What no other row has to agree about: steps that differ by less are a matter of rounding, in mm.
const LEAST: f64 = 5.0;

/// Looks along a row; `others` are the values of the other rows over the same sizes, `least` what is a matter of rounding.
pub(super) fn odd(row: &Row, sizes: &[usize], others: &[Vec<f64>]) -> Option<Odd> {
    let values = row.over(sizes)?;
    let steps = steps(&values);
    let least = if row.dimension == Dimension::Length { LEAST } else { 0.0 };
    if values.len() < 3 || steps.iter().all(|step| *step == 0.0) {
        return None;
    }
    if steps.iter().any(|step| *step < 0.0) {
        return falls(&values, &steps, others, least).map(Odd::Jumps);
    }
    let still: Vec<usize> = (0..steps.len()).filter(|at| steps[*at] == 0.0).collect();
    match still.as_slice() {
        // What is bought comes in the lengths that shops sell.
        _ if row.bought => None,
        [] => off_own_steps(&values, &steps, others)
            .or_else(|| off_the_others(&values, others))
            .or_else(|| off_even_steps(&values, &steps, others))
            .map(Odd::Jumps),
        [at] => {
            // Rows that stand still as well tell nothing of the family.
            let graded: Vec<Vec<f64>> = others.iter().filter(|other| grows(other)).cloned().collect();
            let all_grow = !graded.is_empty();
            let whole = graded.len() == others.len();
            let far = steps.iter().copied().fold(0.0, f64::max) >= FAR;
            // Two that stand still together are made so.
            let most = |all: &[f64]| self::steps(all).into_iter().fold(0.0, f64::max);
            let with_it = |other: &Vec<f64>| other[at + 1] == other[*at] && most(other) >= most(&values) / 2.0;
            if others.iter().any(with_it) {
                return None;
            }
            let alike = (whole && others.len() >= 3) || (grows_like(&values, *at, &graded) && (whole || far));
            let regular = off_own_steps(&values, &steps, others).is_some_and(|size| size == *at || size == at + 1);
            let doubled = || twice_the_others(&steps, *at);
            ((all_grow && alike) || regular || (all_grow && doubled())).then_some(Odd::Stalls(at + 1))
        }
        // A row that rises here and there is made so.
        _ => None,
    }
}

/// Whether a row grows from each size to the next.
pub(super) fn grows(all: &[f64]) -> bool {
    all.windows(2).all(|two| two[1] > two[0])
}

/// How far a row has to step elsewhere, in mm, for standing still to be odd where other rows do so too.
const FAR: f64 = 15.0;

/// Whether a row that stands still once grows elsewhere at half the rate of the others, or faster: it follows the size.
fn grows_like(values: &[f64], still: usize, others: &[Vec<f64>]) -> bool {
    let rate = |all: &[f64]| -> f64 {
        (0..all.len() - 1).filter(|at| *at != still).map(|at| all[at + 1] / all[at] - 1.0).fold(0.0, f64::max)
    };
    let rates: Vec<f64> = others.iter().map(|other| rate(other)).collect();
    let smallest = rates.iter().copied().fold(f64::MAX, f64::min);
    rate(values) >= smallest / 2.0 && rate(values) >= 0.1
}

/// Whether the step after or before one of nothing is as long as two of the others.
fn twice_the_others(steps: &[f64], still: usize) -> bool {
    let beside =
        [still.checked_sub(1), Some(still + 1)].into_iter().flatten().filter_map(|at| Some((at, *steps.get(at)?)));
    let rest = |own: usize| -> Vec<f64> {
        steps.iter().enumerate().filter(|(at, _)| *at != still && *at != own).map(|(_, step)| *step).collect()
    };
    beside.into_iter().any(|(at, step)| {
        let usual = median(&rest(at));
        usual > 0.0 && (step / usual - 2.0).abs() <= 0.25
    })
}

/// A value that lies above both its neighbours, or below what came before at the end, where all others grow throughout.
fn falls(values: &[f64], steps: &[f64], others: &[Vec<f64>], least: f64) -> Option<usize> {
    let fallen: Vec<usize> = (0..steps.len()).filter(|at| steps[*at] < 0.0).collect();
    let [at] = fallen.as_slice() else { return None };
    let far = -steps[*at] > least && -steps[*at] > values[at + 1] * 0.05;
    if others.is_empty() || !others.iter().all(|other| grows(other)) || !far || steps.len() < 2 {
        return None;
    }
    // Without the one or the other the row would rise: the one that lies farther from its neighbours slipped.
    let rises_without = |left: usize| {
        let rest: Vec<f64> = values.iter().enumerate().filter(|(at, _)| *at != left).map(|(_, value)| *value).collect();
        grows(&rest)
    };
    match (rises_without(*at), rises_without(at + 1)) {
        (true, false) => Some(*at),
        (false, true) => Some(at + 1),
        (true, true) => Some(if at + 2 == values.len() { at + 1 } else { *at }),
        (false, false) => None,
    }
}

/// Of three values, one of whose steps is far longer than the other, where every other row takes even steps.
fn off_even_steps(values: &[f64], steps: &[f64], others: &[Vec<f64>]) -> Option<usize> {
    let even = |other: &Vec<f64>| {
        let own = self::steps(other);
        own[0].max(own[1]) <= own[0].min(own[1]) * 2.0
    };
    let [first, second] = *steps else { return None };
    let graded: Vec<&Vec<f64>> = others.iter().filter(|other| grows(other)).collect();
    let uneven = first.max(second) >= first.min(second) * EVEN && (first - second).abs() >= LEAST;
    if values.len() != 3 || graded.is_empty() || !graded.into_iter().all(even) || !uneven {
        return None;
    }
    // A longer first step says that the middle or the first value slipped, a longer second one the middle or the last: the
    // one that leaves a step as the others have it.
    Some(if second > first { 2 } else { 1 })
}

/// How many times the other step a step is far longer.
const EVEN: f64 = 2.5;

fn steps(values: &[f64]) -> Vec<f64> {
    values.windows(2).map(|two| two[1] - two[0]).collect()
}

fn median(of: &[f64]) -> f64 {
    let mut sorted = of.to_vec();
    sorted.sort_by(f64::total_cmp);
    match sorted.len() {
        0 => 0.0,
        count if count % 2 == 1 => sorted[count / 2],
        count => (sorted[count / 2 - 1] + sorted[count / 2]) / 2.0,
    }
}

/// Whether some steps, two at the least, are as good as equal.
fn uniform(steps: &[f64]) -> bool {
    let (least, most) =
        steps.iter().fold((f64::MAX, 0.0_f64), |(least, most), step| (least.min(*step), most.max(*step)));
    steps.len() >= 2 && most > 0.0 && most - least <= most * 0.25
}

/// One value between two others, or one step, that all other steps of the row speak against.
fn off_own_steps(values: &[f64], steps: &[f64], others: &[Vec<f64>]) -> Option<usize> {
    let without = |left: &dyn Fn(usize) -> bool| -> Vec<f64> {
        steps.iter().enumerate().filter(|(at, _)| !left(*at)).map(|(_, step)| *step).collect()
    };
    let inner = (1..values.len() - 1).find(|at| {
        let rest = without(&|step| step + 1 == *at || step == *at);
        let usual = median(&rest);
        let apart = (values[*at] - (values[at - 1] + values[at + 1]) / 2.0).abs();
        let spans_two = (values[at + 1] - values[at - 1] - 2.0 * usual).abs() <= usual * 0.5;
        uniform(&rest) && spans_two && apart > usual * 0.45 && apart >= LEAST
    });
    let step = || {
        (0..steps.len()).find(|at| {
            let rest = without(&|step| step == *at);
            let usual = median(&rest);
            let far = steps[*at] > usual * 2.2 || steps[*at] < usual * 0.25;
            uniform(&rest) && far && (steps[*at] - usual).abs() >= LEAST && !shared(*at, others)
        })
    };
    inner.or_else(|| step().map(|at| at + 1))
}

/// Whether the other rows take an unusual step there too.
fn shared(at: usize, others: &[Vec<f64>]) -> bool {
    let share = |other: &Vec<f64>| {
        let all = steps(other);
        let rest: Vec<f64> = all.iter().enumerate().filter(|(step, _)| *step != at).map(|(_, step)| *step).collect();
        let usual = median(&rest);
        (usual > 0.0).then(|| all[at] / usual)
    };
    let shares: Vec<f64> = others.iter().filter_map(share).collect();
    let usual = median(&shares);
    !shares.is_empty() && !(0.5..=1.6).contains(&usual)
}

/// Where the other rows, three at the least, share their growth out alike over the sizes, and this one does not.
fn off_the_others(values: &[f64], others: &[Vec<f64>]) -> Option<usize> {
    let part = |all: &Vec<f64>| {
        let whole = all[all.len() - 1] - all[0];
        (whole > 0.0).then(|| all.iter().map(|value| (value - all[0]) / whole).collect::<Vec<f64>>())
    };
    let parts: Vec<Vec<f64>> = others.iter().map(part).collect::<Option<_>>()?;
    if parts.len() < 3 {
        return None;
    }
    let own = part(&values.to_vec())?;
    let whole = values[values.len() - 1] - values[0];
    let far = (1..values.len() - 1).find(|at| {
        let here: Vec<f64> = parts.iter().map(|part| part[*at]).collect();
        let spread = here.iter().fold(0.0_f64, |most, one| most.max((one - median(&here)).abs()));
        let apart = (own[*at] - median(&here)).abs();
        spread <= 0.12 && apart > 0.25 && apart * whole >= LEAST
    })?;
    // Of three values the last may as well be the wrong one: where the first step is like those of the others.
    let growth = |all: &[f64]| all[far] / all[0];
    let like = |one: f64| {
        others.iter().map(|other| growth(other)).fold(f64::MAX, |least, other| least.min((other - one).abs()))
    };
    let last = values.len() - 1;
    Some(if far + 1 == last && like(growth(values)) < 0.05 { last } else { far })
}
