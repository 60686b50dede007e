//! One tube lies in another with other sides together than are meant.
//!
//! ## Why it matters
//! A lining that was not turned, or was turned once too often, is sewn in with its seams showing, and is only seen once the
//! bag is turned out. Then the seam round the rim is unpicked.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [20 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   sleeve: {outline: {rectangle: [20 cm, 12 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Draw the cuff over the sleeve {#cuff}
//!
//! ```work
//! - cut: [cuff, sleeve]
//! - {sew: [cuff.left, cuff.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [sleeve.left, sleeve.right], allowance: seam, stitch: 2.5 mm}
//! - {put: cuff, over: sleeve, with: right sides together}
//! ```
//!
//! Sew both to tubes and put the cuff over the sleeve.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [20 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   sleeve: {outline: {rectangle: [20 cm, 12 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Draw the cuff over the sleeve {#cuff}
//!
//! ```work
//! - cut: [cuff, sleeve]
//! - {sew: [cuff.left, cuff.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [sleeve.left, sleeve.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [sleeve, right side out]
//! - {put: cuff, over: sleeve, with: right sides together}
//! ```
//!
//! Sew both to tubes, turn the sleeve right side out, and put the cuff over it.
//! ````
//!
//! ## Limits
//! Looks at `put` with a `with:`, and at the next seams between the two. Which side is out is told by the seams, after which
//! a tube is wrong side out, and by `turn`, whose plain words say `right side out` or `wrong side out`; without them it turns
//! over what was. A seam where a right side lies on a wrong one is left alone.

use super::judge::Judge;
use crate::construct::{Fault, History, OnEachOther};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Together;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("sides-put-wrong", Group::Work, include_str!("sides_put_wrong.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let finding = match fault {
            Fault::PutTheOtherWay { wanted, why, put } => {
                let lies = match why.lies {
                    Some(lies) => format!("the {} sides lie on each other here, not the {}", side(lies), side(*wanted)),
                    None => format!("a right side lies on a wrong one here, not the {} sides together", side(*wanted)),
                };
                CHECK.at(put.verb, lies).hint(hint(*wanted, why))
            }
            Fault::SewnTheOtherWay { wanted, put, sewn } => {
                let finding = CHECK.at(sewn.verb, format!("the {} sides do not lie on each other here", side(*wanted)));
                let hint = "turn one of the two before it is put in, or say under `with:` of this seam which sides are together";
                finding.hint(hint).note(put.verb, "put together here")
            }
            _ => continue,
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}

fn side(together: Together) -> &'static str {
    match together {
        Together::RightSides => "right",
        Together::WrongSides => "wrong",
    }
}

/// Which of the two is turned.
fn hint(wanted: Together, why: &OnEachOther) -> String {
    let inner_out = wanted == Together::RightSides;
    let way = |out: bool| if out { "right side out" } else { "wrong side out" };
    let turns = [(&why.inner, inner_out), (&why.outer, !inner_out)];
    let wrong: Vec<String> = turns
        .into_iter()
        .filter(|((_, is), out)| is != out)
        .map(|((name, _), out)| format!("`- turn: [{name}, {}]`", way(out)))
        .collect();
    format!("add {} before it, or say `with:` as it lies", wrong.join(" and "))
}
