//! The formulas that a step's drawing may hold, each with what it prints and how long it is.

use super::past::millimetres;
use crate::diag::Findings;
use crate::figure::{escape, numbers};
use crate::model::{BySize, Outline, Text};
use crate::resolve::{Edition, EditionStep, PieceId, Said, Scope, Uses, say};
use crate::syntax::parse_expression;

/// Names of a step's own figures.
const OWN: &[&str] = &["allowance", "leave", "ease", "gather"];

/// One formula.
struct Known {
    formula: String,
    /// In both systems, in the first, in the second; the last is empty where there is one system alone.
    prints: [String; 3],
    /// In mm of cloth; `None` for what is no length.
    length: Option<f64>,
    /// Whether it is a side of a piece that the step names.
    of_piece: bool,
}

/// All that may stand in a drawing, what is nearest to its step first.
pub(super) struct Formulas<'a, 'e> {
    known: Vec<Known>,
    edition: &'a Edition<'e>,
    scope: &'a Scope<'a>,
}

impl<'a, 'e> Formulas<'a, 'e> {
    pub fn of(edition: &'a Edition<'e>, scope: &'a Scope<'a>, step: &EditionStep<'_>) -> Formulas<'a, 'e> {
        let mut formulas = Formulas { known: Vec::new(), edition, scope };
        OWN.iter().for_each(|name| formulas.add(name, false));
        for work in &step.step.works {
            let stated = [&work.allowance, &work.leave, &work.ease, &work.gather, &work.lap, &work.gap, &work.up];
            stated.into_iter().flatten().for_each(|stated| formulas.add(&stated.source.text, false));
        }
        formulas.pieces(step);
        let facts = &edition.draft.facts;
        facts.measurements.iter().for_each(|measurement| formulas.add(&measurement.name.text, false));
        for notion in &facts.notions {
            for figure in notion.figures.keys() {
                formulas.add(&format!("{}.{}", notion.id.text, figure.word()), false);
            }
        }
        formulas
    }

    /// The sides of the pieces that a step names, and of all where it names all.
    fn pieces(&mut self, step: &EditionStep<'_>) {
        let cast = &self.edition.cast;
        let named = step.works.iter().flat_map(|work| work.named()).filter_map(|target| target.piece(cast));
        let mut pieces: Vec<PieceId> = named.collect();
        pieces.extend(cast.copies().map(|(_, member)| member.piece));
        let mut seen = Vec::new();
        for piece in pieces {
            if !seen.contains(&piece) {
                seen.push(piece);
            }
        }
        let facts = &self.edition.draft.facts;
        for piece in seen {
            let piece = &facts.pieces[piece];
            let plain = |formula: &BySize| formula.get(self.edition.size()).map(|formula| formula.source.text.clone());
            if let Some(Outline::Rectangle { width, height, corners_out }) = &piece.outline {
                let corners = corners_out.iter().flat_map(|(_, across, down)| [across, down]);
                let sides: Vec<String> = [width, height].into_iter().chain(corners).filter_map(plain).collect();
                sides.iter().for_each(|side| self.add(side, true));
            }
            for side in ["width", "height"] {
                self.add(&format!("{}.{side}", piece.id.text), true);
            }
        }
    }

    /// Takes a formula up, if it can be worked out where the drawing stands.
    fn add(&mut self, formula: &str, of_piece: bool) {
        if self.known.iter().any(|known| known.formula == formula && known.of_piece >= of_piece) {
            return;
        }
        let found =
            self.tried(formula).map(|(prints, length)| Known { formula: formula.into(), prints, length, of_piece });
        self.known.extend(found);
    }

    /// What a formula prints and how long it is; `None` where it means nothing here.
    fn tried(&self, formula: &str) -> Option<([String; 3], Option<f64>)> {
        let facts = &self.edition.draft.facts;
        // What a formula that does not fit would be blamed for, nobody has written.
        let mut unheard = Findings::default();
        let source = Text { text: formula.to_owned(), span: facts.title.span, verbatim: false };
        let expression = parse_expression(&source, &mut unheard)?;
        let worked = self.scope.work_out(&expression, &mut unheard)?;
        let mut uses = Uses::default();
        let said = say(self.scope, &expression, None, None, &facts.show, (&mut unheard, &mut uses))?;
        let Said::Figures(figures) = said else { return None };
        let second = figures.second.as_ref().map(numbers::one).unwrap_or_default();
        Some(([numbers::spoken(&figures), numbers::one(&figures.first), second], millimetres(worked)))
    }

    /// The braces for what begins with a figure, and how many bytes they stand for; where no formula prints it, the
    /// figure itself in braces or, if that would print something else, as it stands. `label` is all that is said there:
    /// where its lines break, a figure and its other one stand apart.
    pub fn brace(&self, rest: &str, figure: usize, label: &str, told: &mut Vec<usize>) -> (usize, String) {
        let pair = rest[figure..].strip_prefix(" (").and_then(|second| Some(&second[..figure_at(second, Some('('))?]));
        let last = told.last().copied();
        let order = last.into_iter().chain(0..self.known.len());
        let prints = |known: &Known| match pair {
            Some(_) => begins(rest, &known.prints, &[0]),
            None if label.contains(&known.prints[0]) => begins(rest, &known.prints, &[0, 1, 2]),
            None => None,
        };
        for (at, known) in order.map(|at| (at, &self.known[at])) {
            if let Some((long, filter)) = prints(known) {
                told.push(at);
                return (long, format!("{{{}{filter}}}", escape(&known.formula)));
            }
        }
        let one = plain(&rest[..figure]);
        let both = pair.map(|second| format!("{one} ({})", plain(second)));
        for literal in both.into_iter().chain([one]) {
            let tried = self.tried(&literal).and_then(|(prints, _)| begins(rest, &prints, &[0, 1]));
            if let Some((long, filter)) = tried {
                return (long, format!("{{{literal}{filter}}}"));
            }
        }
        (figure, rest[..figure].to_owned())
    }

    /// The formulas of some labels with their lengths, in mm on paper.
    pub fn lengths(&self, told: &[usize], scale: f64) -> Vec<(&str, f64)> {
        let known = told.iter().map(|at| &self.known[*at]);
        known.filter_map(|known| Some((known.formula.as_str(), known.length? / scale))).collect()
    }

    /// The sides of pieces, in mm on paper.
    pub fn of_pieces(&self, scale: f64) -> Vec<(&str, f64)> {
        let sides = self.known.iter().filter(|known| known.of_piece);
        sides.filter_map(|known| Some((known.formula.as_str(), known.length? / scale))).collect()
    }
}

/// How many bytes at the start of some words are one of the printed figures that are asked for, and the filter that
/// prints it.
fn begins(rest: &str, prints: &[String; 3], asked: &[usize]) -> Option<(usize, &'static str)> {
    let filters = ["", " | first", " | second"];
    let ends = |long: usize| !rest[long..].chars().next().is_some_and(char::is_alphanumeric);
    let fits = |at: &&usize| {
        let printed = &prints[**at];
        !printed.is_empty() && rest.starts_with(printed.as_str()) && ends(printed.len())
    };
    asked.iter().find(fits).map(|at| (prints[*at].len(), filters[*at]))
}

/// `7⅞ in` as it is typed: `7 7/8 in`.
fn plain(figure: &str) -> String {
    let signs = [
        ("½", "1/2"),
        ("¼", "1/4"),
        ("¾", "3/4"),
        ("⅛", "1/8"),
        ("⅜", "3/8"),
        ("⅝", "5/8"),
        ("⅞", "7/8"),
        ("⅓", "1/3"),
        ("⅔", "2/3"),
    ];
    let typed = signs
        .iter()
        .fold(figure.replace('\u{a0}', " "), |typed, (sign, letters)| typed.replace(sign, &format!(" {letters}")));
    let raised = |letter: char| "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().position(|sign| sign == letter);
    let lowered = |letter: char| "₀₁₂₃₄₅₆₇₈₉".chars().position(|sign| sign == letter);
    let mut out = String::new();
    let mut over = false;
    for letter in typed.chars() {
        if raised(letter).is_some() && !over {
            out.push(' ');
        }
        over = raised(letter).is_some();
        match raised(letter).or(lowered(letter)) {
            Some(digit) => out.push_str(&digit.to_string()),
            None if letter == '⁄' => out.push('/'),
            None => out.push(letter),
        }
    }
    out.trim().to_owned()
}

/// How many bytes at the start of some words are a number with its unit, which a no-break space joins; `None` where
/// none begins there.
pub(super) fn figure_at(rest: &str, before: Option<char>) -> Option<usize> {
    let is_number = |letter: char| letter.is_ascii_digit() || ".⁄/½¼¾⅛⅜⅝⅞⅓⅔⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉".contains(letter);
    if before.is_some_and(|letter| letter.is_alphanumeric() || is_number(letter)) {
        return None;
    }
    let number = rest.find(|letter: char| !is_number(letter))?;
    let unit = rest[number..].strip_prefix('\u{a0}').filter(|_| number > 0)?;
    let long = unit.find(|letter: char| !letter.is_alphabetic()).unwrap_or(unit.len());
    (long > 0).then_some(number + '\u{a0}'.len_utf8() + long)
}
