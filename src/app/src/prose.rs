//! The long text of each rule: fetched when it is first wanted, shown as text, never as markup.

use crate::effects;
use std::collections::BTreeMap;
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
    Here(Rc<BTreeMap<String, String>>),
}

/// Fetches the texts once for the component that asks.
#[hook]
pub fn use_prose() -> Prose {
    let prose = use_state(|| Prose::Coming);
    {
        let prose = prose.clone();
        use_effect_with((), move |()| {
            wasm_bindgen_futures::spawn_local(async move {
                let read = effects::fetch_text("prose").await.and_then(|text| {
                    serde_json::from_str(&text)
                        .map_err(|fault| format!("the long texts cannot be read: {fault}"))
                });
                prose.set(match read {
                    Ok(texts) => Prose::Here(Rc::new(texts)),
                    Err(why) => Prose::Trouble(why),
                });
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
