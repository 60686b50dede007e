//! Which folder, which booklets, which sizes.

use std::path::{Path, PathBuf};

use super::Refusal;
use crate::diag::did_you_mean;
use crate::model::Size;
use crate::pipeline::Workshop;
use crate::source::{BookletFolder, Folder, find_booklets};

/// The folder that a command works in, and the booklets that it is about.
pub(super) struct Choice {
    pub folder: Folder,
    pub booklets: Vec<BookletFolder>,
}

/// Opens the folder that the arguments name: the given one, `./booklets`, or the current one.
pub(super) fn folder(given: Option<&Path>) -> Result<Folder, Refusal> {
    let path = given.map_or_else(default_folder, Path::to_path_buf);
    open(&path)
}

fn default_folder() -> PathBuf {
    if Path::new("booklets").is_dir() { "booklets".into() } else { ".".into() }
}

fn open(path: &Path) -> Result<Folder, Refusal> {
    Folder::open(path).map_err(|fault| {
        Refusal::new(format!("the folder `{}` {}", path.display(), fault.message()), "name a folder that you may read")
    })
}

/// Finds the booklets that `wanted` names, or all. A path to a folder is taken too: inside the
/// folder given it chooses a booklet, elsewhere it is itself the folder.
pub(super) fn booklets(given: Option<&Path>, wanted: &[String]) -> Result<Choice, Refusal> {
    if let [only] = wanted
        && given.is_none()
        && Path::new(only).is_dir()
    {
        let home = folder(None)?;
        let target = open(Path::new(only))?;
        if !target.root().starts_with(home.root()) {
            return all(target);
        }
        let inside = target.root().strip_prefix(home.root()).unwrap_or(Path::new("")).to_path_buf();
        let mut choice = all(home)?;
        choice.booklets.retain(|booklet| booklet.path.starts_with(&inside));
        return some(choice);
    }
    let choice = all(folder(given)?)?;
    if wanted.is_empty() {
        return Ok(choice);
    }
    let mut chosen = Vec::new();
    for name in wanted {
        let tidy = name.trim_end_matches('/');
        let found: Vec<&BookletFolder> = choice
            .booklets
            .iter()
            .filter(|booklet| {
                booklet.name == tidy || booklet.path == Path::new(tidy) || ends_with(booklet, &choice, tidy)
            })
            .collect();
        if found.is_empty() {
            let names = choice.booklets.iter().map(|booklet| booklet.name.as_str());
            return Err(Refusal::new(
                format!("no booklet in `{}` is called `{name}`", choice.folder.shown().display()),
                did_you_mean(
                    tidy,
                    names.clone(),
                    &format!("its booklets are: {}", names.collect::<Vec<_>>().join(", ")),
                ),
            ));
        }
        chosen.extend(found.into_iter().cloned());
    }
    Ok(Choice { folder: choice.folder, booklets: chosen })
}

/// `booklets/orchard-apron` names a booklet when `booklets` is the folder.
fn ends_with(booklet: &BookletFolder, choice: &Choice, name: &str) -> bool {
    Path::new(name).canonicalize().is_ok_and(|path| path == choice.folder.root().join(&booklet.path))
}

fn all(folder: Folder) -> Result<Choice, Refusal> {
    let (booklets, refused) = find_booklets(&folder);
    if let Some((path, words)) = refused.first() {
        return Err(Refusal::new(
            format!("`{path}` cannot be looked into: {words}"),
            "change its permissions so that you may read it, or move it out of the folder",
        ));
    }
    some(Choice { folder, booklets })
}

fn some(choice: Choice) -> Result<Choice, Refusal> {
    if choice.booklets.is_empty() {
        return Err(Refusal::new(
            format!("there is no booklet in `{}`", choice.folder.shown().display()),
            "a booklet is a folder with a `booklet.yaml`; `notchbook new NAME` makes one",
        ));
    }
    Ok(choice)
}

/// The places in `sizes` of the sizes and views that `wanted` names, or of all.
pub(super) fn sizes(workshop: &Workshop, wanted: &[String], booklet: &str) -> Result<Vec<usize>, Refusal> {
    let ids = &workshop.sizes;
    if wanted.is_empty() {
        return Ok((0..ids.len()).collect());
    }
    let sizes = workshop.draft().map_or(&[][..], |draft| &draft.facts.sizes);
    let mut found = Vec::new();
    for name in wanted {
        let is = |size: &Size| size.id.text == *name || size.view.as_ref().is_some_and(|view| view.id.text == *name);
        let own: Vec<usize> = sizes.iter().enumerate().filter(|(_, size)| is(size)).map(|(at, _)| at).collect();
        if own.is_empty() {
            return Err(Refusal::new(
                format!("`{booklet}` has no size `{name}`"),
                did_you_mean(name, ids.iter().map(String::as_str), &format!("its sizes are: {}", ids.join(", "))),
            ));
        }
        found.extend(own);
    }
    found.sort_unstable();
    found.dedup();
    Ok(found)
}

/// Refuses two booklets of one name, whose files would overwrite each other.
pub(super) fn distinct(booklets: &[BookletFolder]) -> Result<(), Refusal> {
    for (at, booklet) in booklets.iter().enumerate() {
        if let Some(twin) = booklets[..at].iter().find(|twin| twin.name == booklet.name) {
            return Err(Refusal::new(
                format!(
                    "two booklets are called `{}`: `{}` and `{}`",
                    booklet.name,
                    twin.path.display(),
                    booklet.path.display()
                ),
                "give one folder another name, or build them one at a time into different folders with --out",
            ));
        }
    }
    Ok(())
}
