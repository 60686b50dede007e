//! What a check is called, how grave its findings are, and the page that explains it.

use super::level::Level;

/// What a check looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// `booklet.yaml`: values, formulas, sizes.
    Facts,
    /// Prose, references, headings.
    Words,
    /// What the steps do.
    Work,
    /// Diagrams.
    Figures,
    /// The page and the sheets.
    Print,
    /// Waivers themselves.
    Waivers,
}

impl Group {
    /// All groups, in the order of the reference page.
    pub const ALL: &'static [Group] =
        &[Group::Facts, Group::Words, Group::Work, Group::Figures, Group::Print, Group::Waivers];

    /// Its name in the reference page.
    pub fn name(self) -> &'static str {
        match self {
            Group::Facts => "Facts",
            Group::Words => "Words",
            Group::Work => "Work",
            Group::Figures => "Figures",
            Group::Print => "Print",
            Group::Waivers => "Waivers",
        }
    }
}

/// In which files the findings of a check stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Home {
    /// In words, work and diagrams.
    Words,
    /// In `booklet.yaml`.
    Facts,
    /// In either.
    Anywhere,
}

/// One check; two are the same when their names are.
#[derive(Debug, Clone, Copy)]
pub struct Check {
    /// Its name in kebab-case: the fault, so that it reads well after "waive".
    pub code: &'static str,
    /// What it looks at.
    pub group: Group,
    /// Whether its findings stop the build.
    pub level: Level,
    /// Whether an author may waive it.
    pub waivable: bool,
    /// In which files its findings stand, and so its waivers.
    pub home: Home,
    /// Whether a value is broken that the steps are played with, so that a play would find faults that
    /// are none.
    pub breaking: bool,
    /// Whether a part of the booklet could not be read, so that what stands there would be missed.
    pub unread: bool,
    /// The file that opens with its page.
    source: &'static str,
}

impl Check {
    /// A check whose findings stop the build, and cannot be waived. `source` is the text of the file
    /// whose first comment is the page.
    pub const fn error(code: &'static str, group: Group, source: &'static str) -> Check {
        Check {
            code,
            group,
            level: Level::Error,
            waivable: false,
            home: Home::Anywhere,
            breaking: false,
            unread: false,
            source,
        }
    }

    /// A check whose findings do not stop the build by themselves.
    pub const fn warning(code: &'static str, group: Group, source: &'static str) -> Check {
        Check { level: Level::Warning, ..Check::error(code, group, source) }
    }

    /// The same, which an author may waive.
    pub const fn waivable(self) -> Check {
        Check { waivable: true, ..self }
    }

    /// The same, which an author may waive where its findings always stand.
    pub const fn waivable_in(self, home: Home) -> Check {
        Check { waivable: true, home, ..self }
    }

    /// The same, after which the steps are not played.
    pub const fn breaking(self) -> Check {
        Check { breaking: true, ..self }
    }

    /// The same, which tells of text that could not be read.
    pub const fn unread(self) -> Check {
        Check { unread: true, ..self }
    }

    /// The page that explains it.
    pub fn page(&self) -> Page {
        Page::of(self.source)
    }

    /// The page with its name, its level and how it is waived: what `explain` prints.
    pub fn explanation(&self) -> String {
        let stops = match self.level {
            Level::Error => "An error: it stops the build.",
            Level::Warning => "A warning: the build goes on, unless `--deny warnings` is given.",
        };
        let waived = if self.waivable {
            let words = format!("\n- in words and diagrams: `<!-- waive {}: the reason -->`", self.code);
            let facts = format!(
                "\n- in booklet.yaml, under `waive:`: `{{check: {}, at: the.key, because: the reason}}`",
                self.code
            );
            let (words, facts) = match self.home {
                Home::Words => (words.as_str(), ""),
                Home::Facts => ("", facts.as_str()),
                Home::Anywhere => (words.as_str(), facts.as_str()),
            };
            format!(" Where it is meant, waive it and say why:\n{words}{facts}")
        } else {
            " It cannot be waived.".to_owned()
        };
        format!("# {}\n\n{}\n\n{stops}{waived}\n", self.code, self.page().text.trim_end())
    }
}

impl PartialEq for Check {
    fn eq(&self, other: &Check) -> bool {
        self.code == other.code
    }
}

impl Eq for Check {}

/// The page of a check or a verb in Markdown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// The first sentence.
    pub summary: String,
    /// The whole text.
    pub text: String,
}

impl Page {
    /// Reads the `//!` lines at the top of a source file.
    pub(crate) fn of(source: &str) -> Page {
        let lines: Vec<&str> = source
            .lines()
            .map_while(|line| line.strip_prefix("//!"))
            .map(|line| line.strip_prefix(' ').unwrap_or(line))
            .collect();
        let summary = lines.iter().take_while(|line| !line.is_empty()).copied().collect::<Vec<_>>().join(" ");
        Page { summary, text: lines.join("\n") }
    }
}
