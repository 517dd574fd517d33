//! The long text of each rule: fetched when it is first wanted, shown as text, never as markup.

use crate::effects;
use crate::judging::judging;
use engine::rules::Rule;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::rc::Rc;
use yew::prelude::*;

/// What is said of a rule at length.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct LongText {
    /// What the rule asks, in one sentence.
    pub statement: String,
    /// Why.
    pub why: String,
    /// What mends a fault.
    pub mend: String,
    /// The whole text.
    pub text: String,
    /// Who says what, one a line.
    pub sources: Vec<String>,
    /// Where sources differ.
    pub differ: String,
    /// Both sides, where there are two; empty where there are none.
    pub positions: [String; 2],
}

/// The long texts by rule.
#[derive(Debug, Clone, PartialEq)]
pub enum Prose {
    /// Not here yet.
    Coming,
    /// Could not be fetched.
    Trouble(String),
    /// Here.
    Here(Rc<BTreeMap<String, LongText>>),
}

impl Prose {
    /// What is said of this rule, once it is here.
    #[must_use]
    pub fn of(&self, id: &str) -> Option<&LongText> {
        match self {
            Self::Here(texts) => texts.get(id),
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

/// Reads the texts.
///
/// # Errors
/// A sentence that says why they cannot be read.
pub fn read(text: &str) -> Result<Prose, String> {
    serde_json::from_str(text)
        .map(|texts| Prose::Here(Rc::new(texts)))
        .map_err(|fault| format!("the long texts cannot be read: {fault}"))
}

/// Fetches the texts once for the whole room, when `wanted` first says so.
#[hook]
pub fn use_prose(wanted: bool) -> Prose {
    let prose = use_state(|| Prose::Coming);
    {
        let prose = prose.clone();
        use_effect_with(wanted, move |wanted| {
            if !*wanted || *prose != Prose::Coming {
                return;
            }
            wasm_bindgen_futures::spawn_local(async move {
                // Who reads them comes with the judge, whose rules they are of.
                let read = match (effects::fetch_text("prose").await, judging().await) {
                    (Ok(text), Ok(judging)) => (judging.prose)(&text),
                    (Ok(_), Err(fault)) => Err(fault.to_string()),
                    (Err(why), _) => Err(why),
                };
                prose.set(read.unwrap_or_else(Prose::Trouble));
            });
        });
    }
    (*prose).clone()
}

/// Our own small Markdown: `## heading` lines, paragraphs parted by empty lines, `- ` list items.
pub fn html(text: &str) -> Html {
    let blocks = text.split("\n\n").map(str::trim).filter(|block| !block.is_empty());
    html! { <>{ for blocks.map(block) }</> }
}

fn block(block: &str) -> Html {
    let (head, rest) = match block.strip_prefix("## ") {
        Some(rest) => {
            let (head, rest) = rest.split_once('\n').unwrap_or((rest, ""));
            (Some(head.to_owned()), rest)
        }
        None => (None, block),
    };
    let heading = head.map(|head| html! { <h2>{ head }</h2> });
    let items: Vec<&str> = rest.lines().filter_map(|line| line.trim().strip_prefix("- ")).collect();
    let body = if rest.trim().is_empty() {
        Html::default()
    } else if items.is_empty() {
        html! { <p>{ rest.replace('\n', " ") }</p> }
    } else {
        html! { <ul>{ for items.into_iter().map(|item| html! { <li>{ item.to_owned() }</li> }) }</ul> }
    };
    html! { <>{ heading }{ body }</> }
}
