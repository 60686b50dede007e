//! Pages as pictures, painted from the frames that the PDF is written from.

use std::num::NonZeroUsize;

use typst::foundations::Label;
use typst::introspection::Introspector as _;
use typst::layout::{Frame, FrameItem};
use typst::utils::PicoStr;
use typst_layout::PagedDocument;
use typst_render::{RenderOptions, render};

use super::data::Sheaf;
use super::fault::PressFault;
use super::press::Press;

/// A page that is wanted as a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WantedPage {
    /// By its number, from 1.
    Number(usize),
    /// That on which a step begins, by the step's id.
    Step(String),
}

/// A page as a picture.
#[derive(Debug, Clone)]
pub struct PagePicture {
    /// Its number, from 1.
    pub page: usize,
    /// The picture, as PNG.
    pub png: Vec<u8>,
}

impl Press {
    /// Paints pages of a booklet, `dots` to the inch, each once, in the order asked for; where none is asked for, the
    /// cover and the two pages of steps on which the most is drawn.
    ///
    /// # Errors
    /// What the typesetter complains of, a page that there is not, and one that cannot be written as a picture.
    pub fn pictures(
        &self,
        sheaf: &Sheaf,
        wanted: &[WantedPage],
        dots: f64,
    ) -> Result<Vec<PagePicture>, Vec<PressFault>> {
        let document = self.document(sheaf)?;
        let options = RenderOptions { pixel_per_pt: (dots / 72.0).into(), ..RenderOptions::default() };
        let fault = |words: String| vec![PressFault::plain(words)];
        let page = |number: usize| {
            let page = number.checked_sub(1).and_then(|at| document.pages().get(at));
            let page = page.ok_or_else(|| fault(format!("there is no page {number} to show")))?;
            let png = render(page, &options).encode_png();
            let png = png.map_err(|error| fault(format!("page {number} cannot be written as a picture: {error}")))?;
            Ok(PagePicture { page: number, png })
        };
        if wanted.is_empty() {
            let first = sheaf.first_step().and_then(|id| page_of(&document, &format!("step-{id}")));
            return best(&document, first.unwrap_or(2)).into_iter().map(page).collect();
        }
        let mut numbers: Vec<usize> = Vec::new();
        for one in wanted {
            let number = match one {
                WantedPage::Number(number) => *number,
                WantedPage::Step(id) => page_of(&document, &format!("step-{id}"))
                    .ok_or_else(|| fault(format!("no page shows the step `{id}`")))?,
            };
            if !numbers.contains(&number) {
                numbers.push(number);
            }
        }
        numbers.into_iter().map(page).collect()
    }
}

/// The page of a label; `None` where there is no such label.
fn page_of(document: &PagedDocument, label: &str) -> Option<usize> {
    let label = Label::new(PicoStr::intern(label))?;
    let content = document.introspector().query_label(label).ok()?;
    document.introspector().page(content.location()?).map(NonZeroUsize::get)
}

/// The cover, and the two pages from `first` on on which the most is drawn, the earlier of two that are alike.
fn best(document: &PagedDocument, first: usize) -> Vec<usize> {
    let numbered = document.pages().iter().zip(1..).skip(first.max(2) - 1);
    let mut pages: Vec<(f64, usize)> = numbered.map(|(page, number)| (drawn(&page.frame), number)).collect();
    pages.sort_by(|one, other| other.0.total_cmp(&one.0).then(one.1.cmp(&other.1)));
    let mut best: Vec<usize> = pages.into_iter().take(2).map(|(_, number)| number).collect();
    best.sort_unstable();
    best.insert(0, 1);
    best
}

/// How much of a frame is drawings, in square points.
fn drawn(frame: &Frame) -> f64 {
    let item = |item: &FrameItem| match item {
        FrameItem::Group(group) => {
            let across = (group.transform.sx.get() * group.transform.sy.get()).abs();
            drawn(&group.frame) * if across > 0.0 { across } else { 1.0 }
        }
        FrameItem::Image(_, size, _) => size.x.to_pt() * size.y.to_pt(),
        _ => 0.0,
    };
    frame.items().map(|(_, one)| item(one)).sum()
}
