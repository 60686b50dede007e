//! The classes and symbols of the house, with the words of the key to the diagrams.

/// What a class is in the key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Class {
    /// The class as written in a drawing.
    pub name: &'static str,
    /// What it means, for the key; empty where it needs no entry.
    pub meaning: &'static str,
    /// How its sample in the key is drawn: the inside of a drawing of 12 × 8 mm.
    pub sample: &'static str,
}

const AREA: &str = r#"<rect class="CLASS" x="0.4" y="0.4" width="11.2" height="7.2"/>"#;
const BAND: &str = r#"<rect class="CLASS" x="0.4" y="1.4" width="11.2" height="5.2"/>"#;
const LINE: &str = r#"<path class="CLASS" d="M0.6 4 H11.4"/>"#;

/// All classes that carry meaning, in the order of the key.
pub const CLASSES: &[Class] = &[
    Class { name: "right-side", meaning: "Outer fabric, right side", sample: AREA },
    Class { name: "wrong-side", meaning: "Outer fabric, wrong side", sample: AREA },
    Class { name: "lining", meaning: "Lining, right side", sample: AREA },
    Class { name: "lining-wrong", meaning: "Lining, wrong side", sample: AREA },
    Class { name: "wadding", meaning: "Wadding", sample: AREA },
    Class { name: "interfacing", meaning: "Interfacing", sample: AREA },
    Class { name: "felt", meaning: "Felt", sample: AREA },
    Class { name: "foam", meaning: "Foam", sample: AREA },
    Class { name: "fur", meaning: "Fur or pile, right side", sample: AREA },
    Class { name: "leather", meaning: "Leather or vinyl, right side", sample: AREA },
    Class { name: "binding", meaning: "Binding", sample: BAND },
    Class { name: "webbing", meaning: "Webbing or tape", sample: BAND },
    Class { name: "elastic", meaning: "Elastic", sample: BAND },
    Class { name: "hook-loop", meaning: "Hook and loop", sample: BAND },
    Class {
        name: "zip",
        meaning: "Zip",
        sample: r#"<rect class="zip" x="0.4" y="1.6" width="11.2" height="4.8"/><line class="zip" x1="0.4" y1="4" x2="11.6" y2="4"/>"#,
    },
    Class { name: "stitch", meaning: "The seam of this step", sample: LINE },
    Class { name: "stitched", meaning: "A seam sewn before", sample: LINE },
    Class { name: "cut-line", meaning: "Cut here", sample: LINE },
    Class { name: "fold", meaning: "Fold", sample: LINE },
    Class { name: "mark", meaning: "Chalk line", sample: LINE },
    Class {
        name: "notch",
        meaning: "Notch",
        sample: r#"<path class="context" d="M0.6 6 H11.4"/><path class="notch" d="M6 6 l1.2 -2.2 h-2.4 Z"/>"#,
    },
    Class { name: "pin", meaning: "Pin", sample: r#"<path class="pin" d="M2.5 4 H9.5"/>"# },
    Class { name: "arrow", meaning: "Move this way", sample: r#"<path class="arrow" d="M1.5 4 H10"/>"# },
    Class { name: "dimension", meaning: "Measure here", sample: r#"<path class="dimension" d="M1 4 H11"/>"# },
    Class {
        name: "lens",
        meaning: "The same, larger",
        sample: r#"<circle class="lens" cx="2.2" cy="4" r="1.1"/><path class="context" d="M3.3 4 H5"/><circle class="lens" cx="8" cy="4" r="3"/>"#,
    },
    Class { name: "context", meaning: "What lies behind", sample: AREA },
    Class { name: "label", meaning: "", sample: "" },
];

/// All symbols, with their meaning in the key.
pub const SYMBOLS: &[(&str, &str)] = &[
    ("iron", "Press with an iron"),
    ("scissors", "Cut with scissors"),
    ("pin", "Pin"),
    ("clip", "Hold with clips"),
    ("needle", "Sew by hand"),
    ("fold-arrow", "Fold over"),
    ("turn-arrow", "Turn over or right side out"),
    ("zip-slider", "Slider of the zip"),
    ("grain", "Straight grain"),
    ("nap", "The pile runs this way"),
];

/// The class by its name.
pub(super) fn class(name: &str) -> Option<&'static Class> {
    CLASSES.iter().find(|class| class.name == name)
}
