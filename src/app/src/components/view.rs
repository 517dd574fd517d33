//! One component in which every view with hooks stands: a component of its own costs the framework's
//! whole round of creating, comparing and drawing anew.

use super::changed::{On, on};
use std::any::Any;
use std::fmt;
use yew::functional::{FunctionProvider, Hook, HookContext};
use yew::prelude::*;
use yew::virtual_dom::Key;

/// Draws a view of the properties that it is given.
type Draw = fn(&mut HookContext, &dyn Any) -> Html;

/// A view, and what it is drawn of.
#[derive(Properties, Clone)]
pub struct ViewedProps {
    of: On,
    draw: Draw,
}

impl PartialEq for ViewedProps {
    /// Views of another kind never come here: their key is another.
    fn eq(&self, other: &Self) -> bool {
        self.of == other.of
    }
}

impl fmt::Debug for ViewedProps {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("ViewedProps")
    }
}

impl Hook for ViewedProps {
    type Output = Html;

    fn run(self, ctx: &mut HookContext) -> Html {
        (self.draw)(ctx, &*self.of.thing)
    }
}

fn use_viewed(props: &ViewedProps) -> ViewedProps {
    props.clone()
}

/// Where a view stands.
#[component]
pub fn Viewed(props: &ViewedProps) -> Html {
    use_viewed(props)
}

/// A view of these properties.
pub fn view<V: FunctionProvider>(props: V::Properties) -> Html
where
    V::Properties: 'static,
{
    keyed::<V>("", props)
}

/// A view that is another whenever its key is.
pub fn keyed<V: FunctionProvider>(key: &str, props: V::Properties) -> Html
where
    V::Properties: 'static,
{
    let draw = |ctx: &mut HookContext, props: &dyn Any| {
        let drawn = props.downcast_ref().map(|props| V::run(ctx, props));
        drawn.and_then(Result::ok).unwrap_or_default()
    };
    viewed(key, ViewedProps { of: on(props), draw })
}

fn viewed(key: &str, props: ViewedProps) -> Html {
    // Where it is drawn parts the kinds of view, for the framework sees one component in all.
    let key = Key::from(format!("{}-{key}", props.draw as usize));
    html! { <Viewed {key} ..props /> }
}
