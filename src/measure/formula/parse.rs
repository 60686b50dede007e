//! From tokens to a tree. Multiplication goes before addition, comparison comes last and only once;
//! depth is bounded, so that no text, however bad, can exhaust the stack.

use std::ops::Range;

use super::functions::{FunctionDoc, find_function, function_names};
use super::lex::{Kind, Token, tokens};
use super::tree::{Expr, ExprKind, Formula, Operator};
use crate::measure::problem::{Problem, ProblemKind};
use crate::measure::read::check_length;
use crate::measure::unit::Dimension;

/// Brackets and minus signs that may stand inside one another.
const DEEPEST: usize = 64;

impl Formula {
    /// Reads a formula. Every fault that can be told apart is given; none is given twice.
    pub fn parse(text: &str) -> Result<Formula, Vec<Problem>> {
        let root = whole(text)?;
        Ok(Formula { text: text.to_owned(), root })
    }
}

fn whole(text: &str) -> Result<Expr, Vec<Problem>> {
    check_length(text).map_err(|problem| vec![problem])?;
    let mut problems = Vec::new();
    let tokens = match tokens(text, &mut problems) {
        Ok(tokens) => tokens,
        Err(problem) => {
            problems.push(problem);
            return Err(problems);
        }
    };
    let mut parser = Parser { text, tokens, at: 0, depth: 0, problems };
    match parser.whole() {
        Ok(expr) if parser.problems.is_empty() => Ok(expr),
        Ok(_) => Err(parser.problems),
        Err(problem) => {
            parser.problems.push(problem);
            Err(parser.problems)
        }
    }
}

/// An expression and its characters with the brackets round it, for the range of what holds it.
struct Part {
    expr: Expr,
    outer: Range<usize>,
}

impl Part {
    fn plain(kind: ExprKind, range: Range<usize>) -> Part {
        Part { expr: Expr { kind, range: range.clone() }, outer: range }
    }
}

struct Parser<'a> {
    text: &'a str,
    tokens: Vec<Token>,
    at: usize,
    depth: usize,
    /// Faults that do not keep the rest from being read.
    problems: Vec<Problem>,
}

impl Parser<'_> {
    fn kind(&self) -> Option<Kind> {
        self.tokens.get(self.at).map(|token| token.kind)
    }

    fn take(&mut self, kind: Kind) -> bool {
        let here = self.kind() == Some(kind);
        self.at += usize::from(here);
        here
    }

    fn here(&self) -> Range<usize> {
        match self.tokens.get(self.at) {
            Some(token) => token.range.clone(),
            None => self.before(),
        }
    }

    fn before(&self) -> Range<usize> {
        match self.at.checked_sub(1).and_then(|at| self.tokens.get(at)) {
            Some(token) => token.range.clone(),
            None => 0..self.text.len(),
        }
    }

    fn whole(&mut self) -> Result<Expr, Problem> {
        if self.tokens.is_empty() {
            return Err(Problem::unreadable(
                0..self.text.len(),
                "nothing is written here",
                "write a figure such as 5 cm, a name, or a formula of them",
            ));
        }
        let part = self.comparison()?;
        match self.kind() {
            None => Ok(part.expr),
            Some(_) => Err(self.unexpected()),
        }
    }

    fn comparison(&mut self) -> Result<Part, Problem> {
        let left = self.sum()?;
        let Some(Kind::Compare(op)) = self.kind() else {
            return Ok(left);
        };
        let first_sign = self.here();
        self.at += 1;
        let right = self.sum()?;
        if let Some(Kind::Compare(_)) = self.kind() {
            return Err(Problem::unreadable(
                self.here(),
                "a second comparison in one formula",
                "write two formulas with one comparison each",
            )
            .with_related(first_sign, "the first comparison"));
        }
        let range = left.outer.start..right.outer.end;
        let (left, right) = (Box::new(left.expr), Box::new(right.expr));
        Ok(Part::plain(ExprKind::Compare { op, left, right }, range))
    }

    fn sum(&mut self) -> Result<Part, Problem> {
        self.row(Parser::product, |kind| match kind {
            Kind::Plus => Some(Operator::Add),
            Kind::Minus => Some(Operator::Subtract),
            _ => None,
        })
    }

    fn product(&mut self) -> Result<Part, Problem> {
        self.row(Parser::signed, |kind| match kind {
            Kind::Times => Some(Operator::Multiply),
            Kind::Over => Some(Operator::Divide),
            _ => None,
        })
    }

    /// Operands with signs of one rank between them, taken from the left.
    fn row(
        &mut self,
        operand: fn(&mut Self) -> Result<Part, Problem>,
        operator: fn(Kind) -> Option<Operator>,
    ) -> Result<Part, Problem> {
        let mut left = operand(self)?;
        while let Some(op) = self.kind().and_then(operator) {
            self.at += 1;
            let right = operand(self)?;
            let range = left.outer.start..right.outer.end;
            let (a, b) = (Box::new(left.expr), Box::new(right.expr));
            let kind = ExprKind::Binary { op, left: a, right: b };
            left = Part::plain(kind, range);
        }
        Ok(left)
    }

    fn signed(&mut self) -> Result<Part, Problem> {
        let sign = self.here();
        if !self.take(Kind::Minus) {
            return self.operand();
        }
        // A temperature below 0 is a figure, not a sum: nothing is reckoned with temperatures.
        if let Some(Kind::Figure(measure)) = self.kind()
            && measure.first.quantity.dimension == Dimension::Temperature
        {
            let range = sign.start..self.here().end;
            self.at += 1;
            let below = measure.negated().ok_or_else(|| Problem::overflow(range.clone()))?;
            return Ok(Part::plain(ExprKind::Literal(below), range));
        }
        let inner = self.deeper(sign.clone(), Parser::signed)?;
        let range = sign.start..inner.outer.end;
        Ok(Part::plain(ExprKind::Negate(Box::new(inner.expr)), range))
    }

    /// Reads something that stands inside something else, unless it stands too deep.
    fn deeper<T>(
        &mut self,
        from: Range<usize>,
        read: impl FnOnce(&mut Self) -> Result<T, Problem>,
    ) -> Result<T, Problem> {
        if self.depth == DEEPEST {
            return Err(Problem::new(
                ProblemKind::OutOfRange,
                from,
                format!("more than {DEEPEST} brackets or minus signs stand inside one another"),
                "give parts of the formula names of their own",
            ));
        }
        self.depth += 1;
        let read = read(self);
        self.depth -= 1;
        read
    }

    fn operand(&mut self) -> Result<Part, Problem> {
        let range = self.here();
        match self.kind() {
            Some(Kind::Figure(measure)) => {
                self.at += 1;
                Ok(Part::plain(ExprKind::Literal(measure), range))
            }
            Some(Kind::Name) => {
                self.at += 1;
                if self.take(Kind::Open) {
                    return self.call(range);
                }
                let name = self.text[range.clone()].to_owned();
                Ok(Part::plain(ExprKind::Name(name), range))
            }
            Some(Kind::Open) => {
                self.at += 1;
                let mut part = self.deeper(range.clone(), Parser::comparison)?;
                let close = self.close(Kind::Close, range.clone())?;
                part.outer = range.start..close;
                Ok(part)
            }
            Some(Kind::OpenList) => {
                self.problems.push(Problem::unreadable(
                    range,
                    "a list stands where one value is wanted",
                    "lists are only given to a function, as in stock(x, [20 cm, 25 cm])",
                ));
                self.list()
            }
            Some(_) => {
                Err(Problem::unreadable(range, "a value is missing before this", "write a figure or a name here"))
            }
            None => Err(Problem::unreadable(
                range,
                "nothing follows this",
                "write a figure or a name after it, or leave it out",
            )),
        }
    }

    fn call(&mut self, name: Range<usize>) -> Result<Part, Problem> {
        let open = self.before();
        let args = self.deeper(open.clone(), |parser| parser.values(Kind::Close, true))?;
        let end = self.close(Kind::Close, open)?;
        let function = self.text[name.clone()].to_owned();
        match find_function(&function) {
            None => self.problems.push(Problem::new(
                ProblemKind::UnknownFunction(function.clone()),
                name.clone(),
                format!("there is no function “{function}”"),
                format!("the functions are {}; to multiply, write {function} * (…)", function_names()),
            )),
            Some(known) => self.check_count(known, &name, args.len(), end),
        }
        let range = name.start..end;
        Ok(Part::plain(ExprKind::Call { function, args }, range))
    }

    fn check_count(&mut self, known: &FunctionDoc, name: &Range<usize>, given: usize, end: usize) {
        if given >= known.least && known.most.is_none_or(|most| given <= most) {
            return;
        }
        let wanted = match known.most {
            Some(most) => most.to_string(),
            None => format!("{} or more", known.least),
        };
        self.problems.push(Problem::new(
            ProblemKind::WrongArguments,
            name.start..end,
            format!(
                "{} is given {given} {} and takes {wanted}",
                known.name,
                if given == 1 { "value" } else { "values" }
            ),
            format!("write {}: {}", known.signature, known.meaning),
        ));
    }

    fn list(&mut self) -> Result<Part, Problem> {
        let open = self.here();
        self.at += 1;
        let values = self.deeper(open.clone(), |parser| parser.values(Kind::CloseList, false))?;
        let end = self.close(Kind::CloseList, open.clone())?;
        Ok(Part::plain(ExprKind::List(values), open.start..end))
    }

    /// Values with commas between them, up to the closing bracket.
    fn values(&mut self, close: Kind, lists: bool) -> Result<Vec<Expr>, Problem> {
        let mut values = Vec::new();
        if self.kind() == Some(close) {
            return Ok(values);
        }
        loop {
            let part = match self.kind() {
                Some(Kind::OpenList) if lists => self.list()?,
                _ => self.comparison()?,
            };
            values.push(part.expr);
            if !self.take(Kind::Comma) {
                return Ok(values);
            }
        }
    }

    /// Takes the closing bracket and gives its end.
    fn close(&mut self, kind: Kind, open: Range<usize>) -> Result<usize, Problem> {
        if self.take(kind) {
            return Ok(self.before().end);
        }
        if self.at < self.tokens.len() {
            return Err(self.unexpected().with_related(open, "inside this bracket"));
        }
        let sign = if kind == Kind::Close { ")" } else { "]" };
        Err(Problem::unreadable(open, "this bracket is never closed", format!("put the {sign} where it belongs")))
    }

    /// The token here cannot follow what has been read.
    fn unexpected(&self) -> Problem {
        let range = self.here();
        let (message, hint) = match self.kind() {
            Some(Kind::Figure(_) | Kind::Name | Kind::Open) => {
                ("two values stand side by side", "put a sign between them: 5 ft + 6 in, 2 * seam")
            }
            Some(Kind::Close | Kind::CloseList) => {
                ("this bracket does not match one that is open", "take it out, or put the one it belongs to in front")
            }
            Some(Kind::Comma) => {
                ("a comma that separates nothing", "commas stand between the values of a function or a list")
            }
            _ => ("this cannot stand here", "check the formula up to here"),
        };
        Problem::unreadable(range, message, hint)
    }
}
