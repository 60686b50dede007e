//! The templates of the page, ready to print.

use minijinja::{AutoEscape, Environment, UndefinedBehavior};
use serde_json::{Map, Value as Json};

use super::fault::PageFault;
use super::words::teach;
use crate::source::House;

/// The templates with the words of the house.
pub(super) struct Press<'a> {
    environment: Environment<'a>,
}

impl<'a> Press<'a> {
    /// Lays out the templates; a booklet's own go first.
    pub fn new(house: &'a House, labels: &Map<String, Json>) -> Result<Press<'a>, PageFault> {
        let mut environment = Environment::new();
        // Whatever an author writes is words.
        environment.set_auto_escape_callback(|_| AutoEscape::Html);
        environment.set_undefined_behavior(UndefinedBehavior::Chainable);
        teach(&mut environment, labels);
        for asset in house.templates.iter().filter(|asset| asset.name.ends_with(".html")) {
            environment.add_template(&asset.name, asset.text()).map_err(|error| PageFault::of(&error))?;
        }
        Ok(Press { environment })
    }

    /// Prints a template.
    pub fn print(&self, template: &str, context: minijinja::Value) -> Result<String, PageFault> {
        let template = self.environment.get_template(template).map_err(|error| PageFault::of(&error))?;
        template.render(context).map_err(|error| PageFault::of(&error))
    }
}
