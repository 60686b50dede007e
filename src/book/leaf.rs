//! A page of plain words with headings and lists, as Markdown and as text.

/// The page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Leaf {
    lines: Vec<Line>,
}

/// A line of a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Line {
    /// What the page is called.
    Title(String),
    /// The heading of what follows.
    Heading(String),
    /// A paragraph.
    Words(String),
    /// An item of a list.
    Item(String),
    /// What is said of the item above.
    Below(String),
}

impl Leaf {
    /// What it is called.
    pub fn title(&mut self, words: impl Into<String>) {
        self.lines.push(Line::Title(words.into()));
    }

    /// The heading of what follows.
    pub fn heading(&mut self, words: impl Into<String>) {
        self.lines.push(Line::Heading(words.into()));
    }

    /// A paragraph.
    pub fn words(&mut self, words: impl Into<String>) {
        self.lines.push(Line::Words(words.into()));
    }

    /// An item of a list.
    pub fn item(&mut self, words: impl Into<String>) {
        self.lines.push(Line::Item(words.into()));
    }

    /// What is said of the item above.
    pub fn below(&mut self, words: impl Into<String>) {
        self.lines.push(Line::Below(words.into()));
    }

    /// Its lines, in their order.
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// As CommonMark; what an author wrote is never taken for markup.
    pub fn markdown(&self) -> String {
        self.set(|line| match line {
            Line::Title(words) => format!("# {}", escaped(words)),
            Line::Heading(words) => format!("## {}", escaped(words)),
            Line::Words(words) => escaped(words),
            Line::Item(words) => format!("- {}", escaped(words)),
            Line::Below(words) => format!("  - {}", escaped(words)),
        })
    }

    /// As plain text: the title underlined, headings in capitals.
    pub fn text(&self) -> String {
        self.set(|line| match line {
            Line::Title(words) => format!("{}\n{}", one_line(words), "=".repeat(one_line(words).chars().count())),
            Line::Heading(words) => one_line(words).to_uppercase(),
            Line::Words(words) => one_line(words),
            Line::Item(words) => format!("- {}", one_line(words)),
            Line::Below(words) => format!("  - {}", one_line(words)),
        })
    }

    fn set(&self, show: impl Fn(&Line) -> String) -> String {
        let mut out = String::new();
        for (at, line) in self.lines.iter().enumerate() {
            let listed = |line: &Line| matches!(line, Line::Item(_) | Line::Below(_));
            let list = listed(line) && at > 0 && listed(&self.lines[at - 1]);
            if at > 0 && !list {
                out.push('\n');
            }
            out.push_str(&show(line));
            out.push('\n');
        }
        out
    }
}

/// Words without ends of lines, so that none can pass for a line of ours.
fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Words in which no sign is markup (CommonMark 0.31, 2.4): signs that could begin some are given a backslash.
fn escaped(words: &str) -> String {
    let words = one_line(words);
    let mut out = String::with_capacity(words.len());
    for (at, letter) in words.char_indices() {
        let marks = matches!(letter, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '&' | '|' | '~' | '!');
        let begins = at == 0 && matches!(letter, '#' | '+' | '-' | '=');
        if marks || begins {
            out.push('\\');
        }
        out.push(letter);
    }
    // A number and a dot at the beginning would open a list.
    let digits = out.bytes().take_while(u8::is_ascii_digit).count();
    if digits > 0 && out[digits..].starts_with(['.', ')']) {
        out.insert(digits, '\\');
    }
    out
}
