//! The long text of each rule: fetched when it is first wanted, shown as text, never as markup.

use crate::components::changed::{use_changed, use_worked};
use crate::components::hold::use_held;
use crate::components::plain::{self, said, together};
use crate::effects;
use crate::judging::Judging;
pub use engine::debrief::LongText;
use engine::debrief::read_long;
use engine::rules::Rule;
use std::rc::Rc;
use yew::prelude::*;

/// The long texts by rule.
#[derive(Debug, Clone, PartialEq)]
pub enum Prose {
    /// Not here yet.
    Coming,
    /// Could not be fetched.
    Trouble(String),
    /// Here.
    Here(Rc<Vec<(String, LongText)>>),
}

impl Prose {
    /// What is said of this rule, once it is here.
    #[must_use]
    pub fn of(&self, id: &str) -> Option<&LongText> {
        match self {
            Self::Here(texts) => texts.iter().find(|(rule, _)| rule == id).map(|(_, long)| long),
            Self::Coming | Self::Trouble(_) => None,
        }
    }

    /// What a rule asks, in one sentence; until the texts are here, or where they cannot be fetched,
    /// the fault that it is named for.
    #[must_use]
    pub fn statement(&self, rule: &Rule) -> String {
        match self.of(rule.id) {
            Some(long) => long.statement.clone(),
            None => rule.id.replace('-', " "),
        }
    }
}

/// Reads the texts as they were fetched.
///
/// # Errors
/// A sentence, where they are damaged.
pub fn read(text: &str) -> Result<Prose, String> {
    match read_long(text) {
        Some(texts) => Ok(Prose::Here(Rc::new(texts))),
        None => Err("the long texts cannot be read: they did not come whole".to_owned()),
    }
}

/// Fetches the texts once for the whole room, when `wanted` first says so; who reads them comes with
/// the judge.
#[hook]
pub fn use_prose(wanted: bool, judging: Option<Judging>) -> Prose {
    let fetched = use_held(|| None::<Result<String, String>>);
    {
        let fetched = fetched.clone();
        use_changed(wanted, move |wanted| {
            if *wanted && fetched.is_none() {
                wasm_bindgen_futures::spawn_local(async move {
                    fetched.set(Some(effects::fetch_text("prose").await));
                });
            }
        });
    }
    let read = use_worked((fetched, judging), |(fetched, judging)| {
        let read = match (&**fetched, judging) {
            (Some(Ok(text)), Some(judging)) => (judging.prose)(text),
            (Some(Err(why)), _) => Err(why.clone()),
            _ => Ok(Prose::Coming),
        };
        read.unwrap_or_else(Prose::Trouble)
    });
    (*read).clone()
}

/// Our own small Markdown: `## heading` lines, paragraphs parted by empty lines, `- ` list items.
pub fn html(text: &str) -> Html {
    let blocks = text.split("\n\n").map(str::trim).filter(|block| !block.is_empty());
    together(blocks.map(block).collect())
}

fn block(block: &str) -> Html {
    let (head, rest) = match block.strip_prefix("## ") {
        Some(rest) => {
            let (head, rest) = rest.split_once('\n').unwrap_or((rest, ""));
            (Some(head.to_owned()), rest)
        }
        None => (None, block),
    };
    let heading = head.map(|head| said("h2", "", head)).unwrap_or_default();
    let items: Vec<&str> = rest.lines().filter_map(|line| line.trim().strip_prefix("- ")).collect();
    let body = if rest.trim().is_empty() {
        Html::default()
    } else if items.is_empty() {
        said("p", "", rest.replace('\n', " "))
    } else {
        plain::items("", items.into_iter().map(str::to_owned).collect())
    };
    together(vec![heading, body])
}
