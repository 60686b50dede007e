//! What Typst may see: templates, one edition's data, its drawings, the bundled fonts, and no clock,
//! no disk and no network.

use std::collections::BTreeMap;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Binding, Bytes, Datetime, Duration, Value};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Features, Library, LibraryExt, World};

use crate::source::{House, Sum};

/// What every edition of a booklet shares.
pub(super) struct Shop {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    templates: BTreeMap<String, Bytes>,
    /// The checksum of templates and fonts.
    pub sum: Sum,
}

impl Shop {
    pub fn new(house: &House) -> Shop {
        let fonts: Vec<Font> =
            house.fonts.iter().flat_map(|font| Font::iter(Bytes::new(font.bytes.to_vec()))).collect();
        let templates = house
            .templates
            .iter()
            .map(|asset| (format!("/{}", asset.name), Bytes::new(asset.bytes.to_vec())))
            .collect();
        let assets = house.templates.iter().chain(&house.fonts);
        let sum = assets.fold(Sum::new(), |sum, asset| sum.with(&asset.name).with(&asset.bytes));
        Shop {
            library: LazyHash::new(library()),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
            templates,
            sum,
        }
    }
}

/// What templates may call: all but programs of another kind, which would run unseen. Rows of tables may have headers, for
/// which Typst asks to be told.
fn library() -> Library {
    let mut library = Library::builder().with_features(Features::from_iter([Feature::A11yExtras])).build();
    if let Some(Ok(plugin)) = library.global.scope_mut().get_mut("plugin").map(Binding::write) {
        *plugin = Value::None;
    }
    library.std = Binding::detached(library.global.clone());
    library
}

/// The world of one edition on one paper.
pub(super) struct Desk<'a> {
    shop: &'a Shop,
    main: FileId,
    files: BTreeMap<String, Bytes>,
}

impl<'a> Desk<'a> {
    /// Lays out the files for one document, which the template `main` begins.
    pub fn new(shop: &'a Shop, main: &str, files: BTreeMap<String, Vec<u8>>) -> Option<Desk<'a>> {
        let main = VirtualPath::new(main).ok()?;
        Some(Desk {
            shop,
            main: RootedPath::new(VirtualRoot::Project, main).intern(),
            files: files.into_iter().map(|(path, bytes)| (path, Bytes::new(bytes))).collect(),
        })
    }
}

impl World for Desk<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.shop.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.shop.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let bytes = self.file(id)?;
        let text = std::str::from_utf8(&bytes).map_err(|_| FileError::InvalidUtf8)?;
        Ok(Source::new(id, text.to_owned()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let path = id.get().vpath().get_with_slash();
        self.files
            .get(path)
            .or_else(|| self.shop.templates.get(path))
            .cloned()
            .ok_or_else(|| FileError::NotFound(path.into()))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.shop.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}
