//! What the typesetter cannot write into a PDF: that a printer must not scale the page.

use lopdf::{Dictionary, Document, Object, SaveOptions};

/// Sets `/PrintScaling /None` (ISO 32000-1, 12.2) and writes the file anew; the same bytes for the
/// same file.
pub(super) fn finish(pdf: &[u8]) -> Result<Vec<u8>, String> {
    let mut document = Document::load_mem(pdf).map_err(|error| error.to_string())?;
    if let Some(fault) = document.objects.values().find_map(leads_out) {
        return Err(fault);
    }
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

/// What an object, or one that lies in it, would do that a page may not: run something, or open anything but a web page
/// or a letter (ISO 32000-1, 12.6.4).
fn leads_out(object: &Object) -> Option<String> {
    match object {
        Object::Dictionary(dictionary) => action(dictionary),
        Object::Stream(stream) => action(&stream.dict),
        Object::Array(items) => items.iter().find_map(leads_out),
        _ => None,
    }
}

fn action(dictionary: &Dictionary) -> Option<String> {
    let does = dictionary.get(b"S").and_then(Object::as_name).unwrap_or_default();
    match does {
        b"URI" => {
            let address = dictionary.get(b"URI").and_then(Object::as_str).unwrap_or_default();
            let address = String::from_utf8_lossy(address);
            let known =
                ["https://", "http://", "mailto:"].iter().any(|scheme| address.to_lowercase().starts_with(scheme));
            if !known {
                return Some(format!("a link leads to `{address}`, and only web pages and mail may be linked to"));
            }
        }
        b"JavaScript" | b"Launch" | b"GoToR" | b"GoToE" | b"SubmitForm" | b"ImportData" | b"Rendition" => {
            return Some(format!("a link would do `{}`, which no page may", String::from_utf8_lossy(does)));
        }
        _ => {}
    }
    dictionary.iter().find_map(|(_, value)| leads_out(value))
}
