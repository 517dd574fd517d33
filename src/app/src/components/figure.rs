//! A figure of the engine as a drawing on the page, with handles for pointer and keys.

use super::hatchings::hatchings;
use super::plain::{folded, heading, text, with};
use super::view::keyed;
use super::words::said;
use crate::store::{Action, Said};
use engine::anatomy::Tooth;
use engine::figures::{Figure, Item, svg};
use engine::plan::Draft;
use yew::prelude::*;

/// What a figure needs.
#[derive(Properties, Clone)]
pub struct FigureProps {
    /// What is drawn.
    pub figure: Figure,
    /// Under which id; figures of one name that stand on a page together need one each, and share
    /// the hatchings that [`hatchings_of_plots`](super::hatchings::hatchings_of_plots) holds once.
    pub id: Option<AttrValue>,
    /// The choices that its handles move; none for a picture that stands still.
    pub draft: Option<Draft>,
    /// What draws its handles: it comes with the judge, before there is anything to take hold of.
    pub handles: Option<Handles>,
    /// What lies over the drawing, and can be taken hold of.
    pub over: Html,
    /// The tooth, where there are handles: it names the sides.
    pub tooth: Option<Tooth>,
    /// What is said beside it of the last thing that was done to it.
    pub said: Option<Said>,
    /// Told what is done with a handle, and while it is dragged.
    pub act: Callback<Action>,
}

/// Draws the handles of a figure.
pub type Handles = fn(&FigureProps) -> Html;

impl PartialEq for FigureProps {
    fn eq(&self, other: &Self) -> bool {
        self.figure == other.figure
            && self.draft == other.draft
            && self.id == other.id
            && self.said == other.said
            && self.handles.is_some() == other.handles.is_some()
            && self.over == other.over
    }
}

/// A figure as it is drawn, told from others by its id.
pub fn drawn(props: FigureProps) -> Html {
    let id = props.id.clone().unwrap_or(AttrValue::Static(props.figure.name));
    keyed::<Drawing>(&id, props)
}

/// A picture that stands still.
pub fn still(figure: Figure, id: Option<AttrValue>) -> Html {
    under(figure, id, Html::default())
}

/// A picture under something that can be taken hold of.
pub fn under(figure: Figure, id: Option<AttrValue>, over: Html) -> Html {
    let act = Callback::noop();
    let (draft, handles, tooth, said) = (None, None, None, None);
    drawn(FigureProps { figure, id, draft, handles, over, tooth, said, act })
}

/// A figure.
#[component]
pub fn Drawing(props: &FigureProps) -> Html {
    let figure = &props.figure;
    let id = props.id.clone().unwrap_or(AttrValue::Static(figure.name));
    let (title, says) = (format!("{id}-title"), format!("{id}-says"));
    let held = props.draft.is_some() && props.handles.is_some();
    let movable = held && !figure.handles.is_empty() || props.over != Html::default();
    let hatchings = props.id.is_none().then(|| hatchings(figure));
    let sheet = html! {
        <svg viewBox={svg::view_box(figure)} role={if movable { "group" } else { "img" }} aria-labelledby={format!("{title} {says}")} class="drawing">
            { hatchings }
            { for figure.items.iter().map(|one| item(figure, one)) }
            { props.handles.map(|handles| handles(props)) }
            { props.over.clone() }
        </svg>
    };
    let spoken = if movable { said(props.said.as_ref()) } else { Html::default() };
    let in_words = with("p", &[("id", &says)], vec![text(figure.says.clone())]);
    let parts = vec![
        heading("figcaption", &title, figure.title.clone()),
        sheet,
        spoken,
        folded("says", "In words".to_owned(), vec![in_words]),
    ];
    with("figure", &[("class", &format!("figure figure-{}", figure.name))], parts)
}

fn item(figure: &Figure, item: &Item) -> Html {
    let (class, fill) = (svg::class(item), svg::fill(figure, item));
    match item {
        Item::Path { rings, closed, .. } => {
            html! { <path {class} {fill} d={svg::path_data(rings, *closed)} /> }
        }
        Item::Circle { middle, radius, .. } => html! {
            <circle {class} {fill} cx={svg::number(middle.x)} cy={svg::number(middle.y)} r={svg::number(*radius)} />
        },
        Item::Words { at, anchor, height, text, .. } => {
            let (size, length) = svg::type_of(text, *height);
            html! {
                <text {class} x={svg::number(at.x)} y={svg::number(at.y)} font-size={svg::number(size)} text-anchor={svg::text_anchor(*anchor)}
                    textLength={svg::number(length)} lengthAdjust="spacingAndGlyphs" aria-hidden="true">{ text }</text>
            }
        }
    }
}
