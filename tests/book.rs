//! The book between the checks and the outputs: nothing that an author asks for is missing in it, in
//! one size or in all of them, and things of several sizes meet by what they are.

#[path = "book/all_sizes.rs"]
mod all_sizes;
#[path = "outside/bench.rs"]
mod bench;
#[path = "book/bought.rs"]
mod bought;
#[path = "support/caddies.rs"]
mod caddies;
#[path = "book/fit.rs"]
mod fit;
#[path = "book/layouts.rs"]
mod layouts;
#[path = "book/offers.rs"]
mod offers;
#[path = "book/pictures.rs"]
mod pictures;
#[path = "outside/reader.rs"]
#[allow(dead_code, reason = "other tests read more of a PDF")]
mod reader;
#[path = "book/shelf.rs"]
mod shelf;
#[path = "book/sides.rs"]
mod sides;
#[path = "book/views.rs"]
mod views;
#[path = "book/workshop.rs"]
mod workshop;
