//! Pages laid on sheets that are printed on both sides, folded in half and put in one another: the order that no
//! printer's window does reliably.

use lopdf::{Dictionary, Document, Object, ObjectId, SaveOptions, Stream, dictionary};

/// How far each sheet pushes the one that lies in it out of the fold, in millimetres: the thickness of paper of 80 g/m²
/// (common practice, no source).
const THICKNESS: f64 = 0.1;
const POINTS_TO_MM: f64 = 72.0 / 25.4;

/// The pages on each side of each sheet, left and right, from 1; `None` is blank. Blanks are at the end alone.
///
/// Sides come in the order of printing: front and back of the outermost sheet, then those of the next.
pub fn sides(pages: usize) -> Vec<[Option<usize>; 2]> {
    let all = pages.div_ceil(4) * 4;
    let page = |number: usize| (number <= pages).then_some(number);
    let side = |at: usize| match at % 2 {
        0 => [page(all - at), page(at + 1)],
        _ => [page(at + 1), page(all - at)],
    };
    (0..all / 2).map(side).collect()
}

/// Lays the pages of a document on sheets of `sheet` (width and height in millimetres), two on a side, to be turned over
/// the short edge. Links and tags do not outlive it, since they belong to pages that are no more.
pub fn fold(pdf: &[u8], sheet: (f64, f64)) -> Result<Vec<u8>, String> {
    let mut document = Document::load_mem(pdf).map_err(|error| error.to_string())?;
    let (width, height) = (sheet.0 * POINTS_TO_MM, sheet.1 * POINTS_TO_MM);
    let pages: Vec<ObjectId> = document.get_pages().into_values().collect();
    let forms =
        pages.iter().map(|page| form(&mut document, *page, width / 2.0, height)).collect::<Result<Vec<_>, _>>()?;
    let tree = document.new_object_id();
    let mut kids = Vec::new();
    for (at, side) in sides(forms.len()).into_iter().enumerate() {
        // The sheets further in lie further out at the edge, so that their pages move to the fold.
        let creep = (at / 2) as f64 * THICKNESS * POINTS_TO_MM;
        let places = [(side[0], creep), (side[1], width / 2.0 - creep)];
        let mut drawn = String::new();
        let mut named = Dictionary::new();
        for (page, x) in places.into_iter().filter_map(|(page, x)| Some((page?, x))) {
            drawn.push_str(&format!("q 1 0 0 1 {x:.4} 0 cm /P{page} Do Q\n"));
            named.set(format!("P{page}"), Object::Reference(forms[page - 1]));
        }
        let contents = document.add_object(Stream::new(Dictionary::new(), drawn.into_bytes()));
        kids.push(Object::Reference(document.add_object(dictionary! {
            "Type" => "Page",
            "Parent" => tree,
            "MediaBox" => vec![Object::Real(0.0), Object::Real(0.0), Object::Real(width as f32), Object::Real(height as f32)],
            "Resources" => dictionary! { "XObject" => named },
            "Contents" => contents,
        })));
    }
    let count = i64::try_from(kids.len()).unwrap_or(i64::MAX);
    document.set_object(tree, dictionary! { "Type" => "Pages", "Kids" => kids, "Count" => count });
    let catalog = document.catalog_mut().map_err(|error| error.to_string())?;
    for gone in ["Outlines", "PageLabels", "Dests", "Names", "OpenAction", "StructTreeRoot", "MarkInfo", "PageMode"] {
        catalog.remove(gone.as_bytes());
    }
    catalog.set("Pages", tree);
    let mut preferences = catalog.get(b"ViewerPreferences").and_then(Object::as_dict).cloned().unwrap_or_default();
    preferences.set("Duplex", Object::Name(b"DuplexFlipShortEdge".to_vec()));
    catalog.set("ViewerPreferences", preferences);
    document.prune_objects();
    let mut bytes = Vec::new();
    let options = SaveOptions::builder().use_object_streams(true).use_xref_streams(true).build();
    document.save_with_options(&mut bytes, options).map_err(|error| error.to_string())?;
    Ok(bytes)
}

/// A page as a drawing that can be put on another.
fn form(document: &mut Document, page: ObjectId, width: f64, height: f64) -> Result<ObjectId, String> {
    let content = document.get_page_content(page);
    let mut at = document.get_dictionary(page).map_err(|error| error.to_string())?;
    let resources = loop {
        match (at.get(b"Resources"), at.get(b"Parent").and_then(Object::as_reference)) {
            (Ok(resources), _) => break resources.clone(),
            (_, Ok(parent)) => at = document.get_dictionary(parent).map_err(|error| error.to_string())?,
            _ => break Object::Dictionary(Dictionary::new()),
        }
    };
    let mut stream = Stream::new(
        dictionary! {
            "Type" => "XObject",
            "Subtype" => "Form",
            "BBox" => vec![Object::Real(0.0), Object::Real(0.0), Object::Real(width as f32), Object::Real(height as f32)],
            "Resources" => resources,
        },
        content,
    );
    stream.compress().map_err(|error| error.to_string())?;
    Ok(document.add_object(stream))
}
