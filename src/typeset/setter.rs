//! A book on its way to the templates, and where they find its drawings.

use serde_json::{Value as Json, json};

use crate::book::{Book, PatternView};

/// Where the templates find a drawing of the book.
pub(super) fn path(drawing: &str) -> String {
    format!("/{drawing}.svg")
}

/// A book on its way to the templates.
pub(super) struct Setter<'a> {
    pub book: &'a Book,
}

impl Setter<'_> {
    /// The names of sizes; empty where they are all that the book shows.
    pub fn names(&self, sizes: &[usize]) -> Vec<String> {
        if sizes == self.book.shown { Vec::new() } else { self.spoken(sizes) }
    }

    /// The names of sizes as makers know them: all of a thing by its name, and where the book shows several things,
    /// a size with the name of its own behind it.
    pub fn spoken(&self, sizes: &[usize]) -> Vec<String> {
        let name = |size: &usize| self.book.sizes.get(*size).map(|size| size.name.clone());
        let several = self.book.shown_by_view().len() > 1;
        if self.book.views.is_empty() {
            return sizes.iter().filter_map(name).collect();
        }
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
        let table = |(view, sizes): &(Option<&PatternView>, Vec<usize>)| {
            let name = view.filter(|_| several).map(|view| view.name.as_str());
            let columns: Vec<usize> = sizes.iter().filter_map(column).collect();
            json!({ "name": name, "columns": columns })
        };
        views.iter().map(table).collect()
    }

    /// Which of the tables' things have what is for some sizes.
    pub fn tables_of(&self, sizes: &[usize]) -> Vec<usize> {
        let views = self.book.shown_by_view();
        let has = |(_, own): &(Option<&PatternView>, Vec<usize>)| own.iter().any(|size| sizes.contains(size));
        views.iter().enumerate().filter(|(_, view)| has(view)).map(|(at, _)| at).collect()
    }
}
