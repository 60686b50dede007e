//! The chapters of the manual.

/// What the words of a chapter are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Chapter {
    /// Verbs of work.
    Verbs,
    /// Keys of `booklet.yaml` and of work.
    Keys,
    /// Kinds of notions.
    Notions,
    /// Functions of formulas, those of the trade too.
    Functions,
    /// Units of figures.
    Units,
    /// Classes and symbols of diagrams.
    Diagrams,
    /// Checks.
    Checks,
}

impl Chapter {
    /// All chapters, in their order.
    pub const ALL: &'static [Chapter] = &[
        Chapter::Verbs,
        Chapter::Keys,
        Chapter::Notions,
        Chapter::Functions,
        Chapter::Units,
        Chapter::Diagrams,
        Chapter::Checks,
    ];

    /// The word by which `explain` lists it, and the name of its reference page.
    pub fn name(self) -> &'static str {
        match self {
            Chapter::Verbs => "verbs",
            Chapter::Keys => "keys",
            Chapter::Notions => "kinds",
            Chapter::Functions => "functions",
            Chapter::Units => "units",
            Chapter::Diagrams => "diagrams",
            Chapter::Checks => "checks",
        }
    }

    /// Its heading.
    pub fn title(self) -> &'static str {
        match self {
            Chapter::Verbs => "Verbs of work",
            Chapter::Keys => "Keys",
            Chapter::Notions => "Kinds of notions",
            Chapter::Functions => "Functions of formulas",
            Chapter::Units => "Units",
            Chapter::Diagrams => "Classes and symbols of diagrams",
            Chapter::Checks => "Checks",
        }
    }

    /// What stands below its heading.
    pub fn intro(self) -> &'static str {
        match self {
            Chapter::Verbs => {
                "What a step does, said in its `work` block: a verb, a colon, and what it is done to. The booklet \
                 prints it as a line below the words, and the steps are sewn through in every size."
            }
            Chapter::Keys => "What may stand before a colon: in `booklet.yaml`, and below a verb of work.",
            Chapter::Notions => "What may stand behind `kind:` of a notion.",
            Chapter::Functions => {
                "A formula has `+ - * /`, brackets, and these functions. Each example is one that holds. Put a \
                 formula that holds `[` or `{` in double quotes."
            }
            Chapter::Units => {
                "A figure is a number and a unit: `5 mm`, `1 1/2 in`, `¾ in`, `2 yd`. Everything is reckoned \
                 exactly; only what is printed is rounded."
            }
            Chapter::Diagrams => {
                "Classes carry the meaning of what is drawn, the house colours them, and the key to the diagrams is \
                 made from those in use. Symbols are drawn with `<use href=\"#…\">`."
            }
            Chapter::Checks => {
                "What is looked for. The name stands in brackets in a finding. An error stops the build; a warning \
                 does not, unless `--deny warnings` is given."
            }
        }
    }
}
