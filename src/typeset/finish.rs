//! What the typesetter cannot write into a PDF: that a printer must not scale the page.

use lopdf::{Dictionary, Document, Object, SaveOptions};

/// Sets `/PrintScaling /None` (ISO 32000-1, 12.2) and writes the file anew; the same bytes for the
/// same file.
pub(super) fn finish(pdf: &[u8]) -> Result<Vec<u8>, String> {
    let mut document = Document::load_mem(pdf).map_err(|error| error.to_string())?;
    let mut preferences = Dictionary::new();
    {
        let catalog = document.catalog().map_err(|error| error.to_string())?;
        if let Ok(known) = catalog.get(b"ViewerPreferences") {
            let known = match known {
                Object::Reference(id) => document.get_dictionary(*id),
                other => other.as_dict(),
            };
            if let Ok(known) = known {
                preferences = known.clone();
            }
        }
    }
    preferences.set("PrintScaling", Object::Name(b"None".to_vec()));
    document
        .catalog_mut()
        .map_err(|error| error.to_string())?
        .set("ViewerPreferences", Object::Dictionary(preferences));
    let mut bytes = Vec::with_capacity(pdf.len());
    let options = SaveOptions::builder().use_object_streams(true).use_xref_streams(true).build();
    document.save_with_options(&mut bytes, options).map_err(|error| error.to_string())?;
    Ok(bytes)
}
