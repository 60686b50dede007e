//! A book on its way to the templates, and where they find its drawings.

use serde_json::{Value as Json, json};

use crate::book::{Block, Book, PatternView};

/// Where the templates find a drawing of the book.
pub(super) fn path(drawing: &str) -> String {
    format!("/{drawing}.svg")
}

/// A book on its way to the templates.
#[derive(Clone)]
pub(super) struct Setter<'a> {
    pub book: &'a Book,
    /// The sizes that what is set now is for, where it is for some alone: a table, or a chapter of one thing.
    within: Option<Vec<usize>>,
}

impl<'a> Setter<'a> {
    pub fn new(book: &'a Book) -> Setter<'a> {
        Setter { book, within: None }
    }

    /// The same for what is for some sizes alone; only where they are all of one thing, so that its name need not stand
    /// with each of them again.
    pub fn within(&self, sizes: &[usize]) -> Setter<'a> {
        let own: Vec<usize> = self.shown().into_iter().filter(|size| sizes.contains(size)).collect();
        let of_one = self.book.views.iter().any(|view| own.iter().all(|size| view.sizes.contains(size)));
        match of_one && !own.is_empty() {
            true => Setter { book: self.book, within: Some(own) },
            false => self.clone(),
        }
    }

    /// The sizes that are shown here.
    pub fn shown(&self) -> Vec<usize> {
        self.within.clone().unwrap_or_else(|| self.book.shown.clone())
    }

    /// Whether something that is for some sizes is for any that is shown here.
    pub fn shows(&self, size: usize) -> bool {
        self.within.as_ref().is_none_or(|within| within.contains(&size))
    }

    /// The names of sizes; empty where they are all that is shown here.
    pub fn names(&self, sizes: &[usize]) -> Vec<String> {
        if self.shown().iter().all(|size| sizes.contains(size)) { Vec::new() } else { self.spoken(sizes) }
    }

    /// The names of sizes as makers know them: all of a thing by its name, and where several things are shown here, a
    /// size with the name of its own behind it.
    pub fn spoken(&self, sizes: &[usize]) -> Vec<String> {
        let name = |size: &usize| self.book.sizes.get(*size).map(|size| size.name.clone());
        if self.book.views.is_empty() {
            return sizes.iter().filter_map(name).collect();
        }
        let shown = self.shown();
        let several =
            self.book.views.iter().filter(|view| view.sizes.iter().any(|size| shown.contains(size))).count() > 1;
        let of_view = |view: &PatternView| -> Vec<String> {
            let own: Vec<usize> = view.sizes.iter().copied().filter(|size| sizes.contains(size)).collect();
            match own.len() == view.sizes.len() {
                true => vec![view.name.clone()],
                false if several => own.iter().filter_map(name).map(|name| format!("{name} ({})", view.name)).collect(),
                false => own.iter().filter_map(name).collect(),
            }
        };
        self.book.views.iter().flat_map(of_view).collect()
    }

    /// The thing that a book is of where it shows no other; `None` where there is one alone, or it shows several.
    pub fn view(&self) -> Option<&PatternView> {
        match self.book.shown_by_view().as_slice() {
            [(view, _)] => *view,
            _ => None,
        }
    }

    /// What the tables stand for, in their order: for each thing shown its name, `null` where there is one alone,
    /// and the columns of its sizes.
    pub fn tables(&self) -> Vec<Json> {
        let views = self.book.shown_by_view();
        let several = views.len() > 1;
        let column = |size: &usize| self.book.shown.iter().position(|shown| shown == size);
        let table = |(at, (view, sizes)): (usize, &(Option<&PatternView>, Vec<usize>))| {
            let name = view.filter(|_| several).map(|view| view.name.as_str());
            let columns: Vec<usize> = sizes.iter().filter_map(column).collect();
            json!({ "at": at, "name": name, "columns": columns })
        };
        views.iter().enumerate().map(table).collect()
    }

    /// A note in each of the tables: what it says of that table's sizes.
    pub fn notes(&self, note: &[Block]) -> Vec<Json> {
        self.book.shown_by_view().iter().map(|(_, sizes)| self.within(sizes).blocks(note)).collect()
    }

    /// Which of the tables' things have what is for some sizes.
    pub fn tables_of(&self, sizes: &[usize]) -> Vec<usize> {
        let views = self.book.shown_by_view();
        let has = |(_, own): &(Option<&PatternView>, Vec<usize>)| own.iter().any(|size| sizes.contains(size));
        views.iter().enumerate().filter(|(_, view)| has(view)).map(|(at, _)| at).collect()
    }
}
