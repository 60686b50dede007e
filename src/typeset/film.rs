//! The video on its way to the templates.

use serde_json::{Value as Json, json};

use super::setter::{Setter, path};
use crate::model::written_moment;

impl Setter<'_> {
    /// The video with the times of the parts; `null` where there is none.
    pub fn film(&self) -> Json {
        let Some(film) = &self.book.film else { return Json::Null };
        let parts = self.book.parts.iter().enumerate().filter_map(|(at, part)| {
            let time = written_moment(part.watch?);
            Some(json!({
                "time": time,
                "url": self.watched(part.watch?),
                "id": part.id,
                "number": at + 1,
                "title": self.inlines(&part.title),
            }))
        });
        let code = film.code.as_ref().and_then(|name| Some((name, self.book.drawings.get(name)?)));
        json!({
            "url": film.url,
            "opening": film.opening,
            "code": code.map(|(name, drawing)| json!({ "path": path(name), "width": drawing.width, "height": drawing.height })),
            "parts": parts.collect::<Vec<_>>(),
        })
    }

    /// The address of the video at a time (W3C Media Fragments URI 1.0, 4.2.1).
    pub fn watched(&self, seconds: u32) -> Option<String> {
        let film = self.book.film.as_ref()?;
        Some(if film.url.contains('#') { film.url.clone() } else { format!("{}#t={seconds}", film.url) })
    }
}
