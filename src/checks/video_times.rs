//! The times of a video do not make chapters, or a part has none.
//!
//! ## Why it matters
//! Who watches and sews looks for her step by its time. A time that is missing, out of order or past the end leads nowhere, and
//! chapters that do not begin at 0:00, or lie closer than ten seconds, are not shown as such by players.
//!
//! ## Wrong
//! ```md
//! ## Look at it {#look-at-it watch=10:05}
//!
//! Look at the pouch.
//! ```
//!
//! ## Right
//! ```md
//! ## Look at it {#look-at-it}
//!
//! Look at the pouch.
//! ```
//!
//! ## Limits
//! A video without any time is an address alone, and enough. A part's time is its own, or that of its first step. Ten seconds are common practice, no source. Steps are held to the order
//! too, but not to the ten seconds. Whether the video shows at a time what the step says cannot be known.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group};
use crate::model::{Moment, Part, written_moment};

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::error("video-times", Group::Facts, include_str!("video_times.rs")).waivable(), run);

/// The least time between two chapters, in seconds.
const APART: u32 = 10;

/// Holds the times against the video, and against each other.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let draft = subject.draft;
    let times = |part: &Part| -> Vec<Moment> {
        part.watch.into_iter().chain(part.steps.iter().filter_map(|step| step.watch)).collect()
    };
    let Some(video) = &draft.facts.video else {
        let stray = draft.parts.iter().flat_map(times);
        findings.extend(stray.map(|time| {
            CHECK
                .at(time.span, "the booklet has no video to watch")
                .hint("say where it is, `video: {url: https://video.example/pouch}`, or take `watch=` out")
        }));
        return;
    };
    // An address alone is enough; with one time, every part has its own.
    if draft.parts.iter().all(|part| times(part).is_empty()) {
        return;
    }
    // Where a chapter before began; the opening is one.
    let mut chapter = video.opening.as_ref().map(|_| 0);
    let mut last = 0;
    for part in &draft.parts {
        let begins = part.watch.or_else(|| part.steps.first().and_then(|step| step.watch));
        match (begins, chapter) {
            (None, _) => findings.push(
                CHECK
                    .at(part.span, "this part does not say when the video shows it")
                    .hint("write its time behind the heading: `{#zip watch=10:05}`"),
            ),
            (Some(time), None) if time.seconds > 0 => findings.push(
                CHECK
                    .at(time.span, format!("the first chapter begins at {}", written_moment(time.seconds)))
                    .hint("begin it at `watch=0:00`, or say under `video:` what comes before: `opening: Hello`"),
            ),
            (Some(time), Some(before)) if time.seconds < before + APART => findings.push(
                CHECK
                    .at(
                        time.span,
                        format!(
                            "this part is shown at {}, and the chapter before it at {}",
                            written_moment(time.seconds),
                            written_moment(before)
                        ),
                    )
                    .hint("write the times in the order of the parts, and at least 10 seconds apart"),
            ),
            _ => {}
        }
        chapter = begins.map(|time| time.seconds).or(chapter);
        for time in times(part) {
            if let Some(end) = video.length.filter(|end| time.seconds >= end.seconds) {
                let message = format!("{} lies past the end of the video", written_moment(time.seconds));
                findings.push(
                    CHECK.at(time.span, message).hint("mend the time, or the `length`").note(end.span, "its length"),
                );
            } else if time.seconds < last && begins != Some(time) {
                let message = format!("{} comes before the step above it", written_moment(time.seconds));
                findings.push(CHECK.at(time.span, message).hint("write the times in the order of the steps"));
            }
            last = last.max(time.seconds);
        }
    }
}
