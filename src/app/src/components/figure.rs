//! A figure of the engine as a drawing on the page, with handles for pointer and keys.

use super::words::said;
use crate::store::{Action, Said};
use engine::anatomy::Tooth;
use engine::figures::style::{HATCHINGS, Hatching};
use engine::figures::{Figure, Item, svg};
use engine::plan::Draft;
use engine::rules::{self, Reading};
use yew::prelude::*;

/// What a figure needs.
#[derive(Properties, Clone)]
pub struct FigureProps {
    /// What is drawn.
    pub figure: Figure,
    /// Under which id; figures of one name that stand on a page together need one each, and share
    /// the hatchings that [`hatchings_of_plots`] holds once.
    #[prop_or_default]
    pub id: Option<AttrValue>,
    /// The choices that its handles move; none for a picture that stands still.
    #[prop_or_default]
    pub draft: Option<Draft>,
    /// What draws its handles: it comes with the judge, before there is anything to take hold of.
    #[prop_or_default]
    pub handles: Option<Handles>,
    /// The tooth, where there are handles: it names the sides.
    #[prop_or_default]
    pub tooth: Option<Tooth>,
    /// What is said beside it of the last thing that was done to it.
    #[prop_or_default]
    pub said: Option<Said>,
    /// Told what is done with a handle, and while it is dragged.
    #[prop_or_default]
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
    }
}

/// A figure.
#[component]
pub fn Drawing(props: &FigureProps) -> Html {
    let figure = &props.figure;
    let id = props.id.clone().unwrap_or(AttrValue::Static(figure.name));
    let (title, says) = (format!("{id}-title"), format!("{id}-says"));
    let held = props.draft.is_some() && props.handles.is_some();
    let movable = held && !figure.handles.is_empty();
    let hatchings = props
        .id
        .is_none()
        .then(|| html! { <defs>{ for HATCHINGS.iter().map(|one| pattern(figure, one)) }</defs> });
    html! {
        <figure class={classes!("figure", format!("figure-{}", figure.name))}>
            <figcaption id={title.clone()}>{ &figure.title }</figcaption>
            <svg viewBox={svg::view_box(figure)} role={if movable { "group" } else { "img" }} aria-labelledby={format!("{title} {says}")} class="drawing">
                { hatchings }
                { for figure.items.iter().map(|one| item(figure, one)) }
                { props.handles.map(|handles| handles(props)) }
            </svg>
            if movable { { said(props.said.as_ref()) } }
            <details class="says">
                <summary>{ "In words" }</summary>
                <p id={says}>{ &figure.says }</p>
            </details>
        </figure>
    }
}

/// The hatchings of plots, which are drawn under ids of their own: once for the page.
pub fn hatchings_of_plots() -> Html {
    let any =
        rules::all().find_map(|rule| plots::band_plot(rule.bands()?, Reading::Number(0.0), 360.0));
    let patterns = any.iter().flat_map(|plot| HATCHINGS.iter().map(move |one| pattern(plot, one)));
    html! {
        <svg class="drawing visually-hidden" aria-hidden="true" width="0" height="0"><defs>{ for patterns }</defs></svg>
    }
}

fn pattern(figure: &Figure, hatching: &Hatching) -> Html {
    let [wide, tall] = hatching.tile.map(svg::number);
    let ground = (!hatching.under.is_empty()).then(|| {
        html! { <rect class={format!("under-{}", hatching.name)} width={wide.clone()} height={tall.clone()} /> }
    });
    html! {
        <pattern id={svg::hatching_id(figure, hatching)} patternUnits="userSpaceOnUse" width={wide.clone()} height={tall.clone()} patternTransform={svg::hatching_transform(figure, hatching)}>
            { ground }
            <path class={format!("hatch-{}", hatching.name)} d={hatching.path} />
        </pattern>
    }
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
