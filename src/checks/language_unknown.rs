//! The booklet's language is no language tag that readers know.
//!
//! ## Why it matters
//! A reader that speaks the booklet aloud, and the hyphens at the ends of its lines, go by this tag. With a tag that is
//! none, it is read as gibberish.
//!
//! ## Wrong
//! ```yaml
//! language: en-UK
//! ```
//!
//! ## Right
//! ```yaml
//! language: en-GB
//! ```
//!
//! ## Limits
//! A tag is a language of two or three letters, and may go on with a region: `en-GB`, `de`, `fr-CA` (RFC 5646, from
//! memory). Languages of two letters and regions are those of ISO 639-1 and ISO 3166-1 as the package iso-codes 4.15.0
//! lists them; those of three letters are taken on trust.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("language-unknown", Group::Facts, include_str!("language_unknown.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at the tag.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let language = &subject.draft.facts.language;
    if let Some((fault, hint)) = fault(&language.text) {
        findings.push(CHECK.at(language.span, format!("`{}` is no language tag: {fault}", language.text)).hint(hint));
    }
}

/// What is wrong with a tag, and what to write.
fn fault(tag: &str) -> Option<(String, String)> {
    let usual = || "write a language and, if you like, a region, such as `en-GB`".to_owned();
    if tag.contains('_') {
        return Some(("its parts are joined by a hyphen".to_owned(), format!("write `{}`", tag.replace('_', "-"))));
    }
    let mut parts = tag.split('-');
    let language = parts.next().unwrap_or("").to_lowercase();
    if let Some((_, short)) = LONG.iter().find(|(long, _)| *long == language) {
        return Some((format!("`{language}` is written `{short}`"), format!("write `{short}`")));
    }
    let known = LANGUAGES.split(' ').any(|known| known == language);
    let three = language.len() == 3 && language.chars().all(|letter| letter.is_ascii_alphabetic());
    if !known && !three {
        return Some((format!("no language is called `{language}`"), usual()));
    }
    for part in parts {
        let region = part.to_uppercase();
        match part.len() {
            1 => return None,
            2 if region == "UK" => {
                return Some(("the region is called `GB`".to_owned(), format!("write `{language}-GB`")));
            }
            2 if !REGIONS.split(' ').any(|known| known == region) => {
                return Some((format!("no region is called `{part}`"), usual()));
            }
            2..=8 if part.chars().all(|letter| letter.is_ascii_alphanumeric()) => {}
            _ => return Some((format!("`{part}` is no part of a tag"), usual())),
        }
    }
    None
}

/// What authors write for a language, and its tag.
#[rustfmt::skip]
const LONG: &[(&str, &str)] = &[
    ("eng", "en"), ("english", "en"), ("british", "en-GB"), ("american", "en-US"),
    ("ger", "de"), ("deu", "de"), ("german", "de"), ("deutsch", "de"), ("fre", "fr"), ("fra", "fr"), ("french", "fr"),
    ("dut", "nl"), ("nld", "nl"), ("dutch", "nl"), ("spa", "es"), ("spanish", "es"), ("ita", "it"), ("italian", "it"),
    ("dan", "da"), ("danish", "da"), ("swe", "sv"), ("swedish", "sv"), ("gb", "en-GB"), ("us", "en-US"),
];

/// ISO 639-1.
const LANGUAGES: &str = "aa ab ae af ak am an ar as av ay az ba be bg bh bi bm bn bo br bs ca ce ch co cr cs cu cv cy da de dv dz ee el \
    en eo es et eu fa ff fi fj fo fr fy ga gd gl gn gu gv ha he hi ho hr ht hu hy hz ia id ie ig ii ik io is it iu \
    ja jv ka kg ki kj kk kl km kn ko kr ks ku kv kw ky la lb lg li ln lo lt lu lv mg mh mi mk ml mn mr ms mt my na \
    nb nd ne ng nl nn no nr nv ny oc oj om or os pa pi pl ps pt qu rm rn ro ru rw sa sc sd se sg si sk sl sm sn so \
    sq sr ss st su sv sw ta te tg th ti tk tl tn to tr ts tt tw ty ug uk ur uz ve vi vo wa wo xh yi yo za zh zu";

/// ISO 3166-1.
const REGIONS: &str = "AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ \
    CA CC CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET FI FJ FK FM FO \
    FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE \
    JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO \
    MP MQ MR MS MT MU MV MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW \
    PY QA RE RO RS RU RW SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM \
    TN TO TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW";
