//! The key `video:`, and the times at headings.

use super::fields::{Fields, text};
use super::yaml::Node;
use crate::diag::Findings;
use crate::faults::VALUE_UNREADABLE;
use crate::model::{Moment, Text, Video, read_moment};

/// The keys of a video.
pub(super) const KEYS: &[&str] = &["url", "length", "opening"];

/// Reads the video; `None` where its address is missing, which is a finding.
pub(super) fn read(node: Option<&Node>, findings: &mut Findings) -> Option<Video> {
    let record = Fields::open_needing(&["url"], node?, "`video`", KEYS, findings)?;
    let url = record.need_text("url", "https://video.example/pouch", findings)?;
    if !url.text.starts_with("https://") && !url.text.starts_with("http://") {
        findings.push(
            VALUE_UNREADABLE
                .at(url.span, format!("`{}` is no address of a video", url.text))
                .hint("write the whole address: `url: https://video.example/pouch`"),
        );
        return None;
    }
    let length = record.get("length").and_then(|node| text(node, "`length`", findings));
    let length = length.and_then(|length| moment(&length, findings));
    Some(Video { url, length, opening: record.text("opening", findings) })
}

fn moment(text: &Text, findings: &mut Findings) -> Option<Moment> {
    let found = read_moment(&text.text);
    if found.is_none() {
        findings.push(
            VALUE_UNREADABLE
                .at(text.span, format!("`{}` is no time in a video", text.text))
                .hint("write minutes and seconds, `24:10`, or hours before them, `1:02:30`"),
        );
    }
    found.map(|seconds| Moment { seconds, span: text.span })
}
