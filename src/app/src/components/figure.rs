//! A figure of the engine as a drawing on the page, with handles for pointer and keys.

use crate::drag::{self, Drag};
use engine::figures::style::{HATCHINGS, Hatching};
use engine::figures::{Figure, Handle, Item, svg};
use engine::plan::Draft;
use engine::session::Event;
use web_sys::{KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// Half the width of what a finger can take hold of, CSS pixels.
const REACH: f64 = 14.0;
/// Radius of the knob, CSS pixels.
const KNOB: f64 = 5.0;

/// What a figure needs.
#[derive(Properties, Clone)]
pub struct FigureProps {
    /// What is drawn.
    pub figure: Figure,
    /// Under which id; figures of one name that stand on a page together need one each, and share
    /// the hatchings that [`Hatchings`] holds once.
    #[prop_or_default]
    pub id: Option<AttrValue>,
    /// The choices that its handles move; none for a picture that stands still.
    #[prop_or_default]
    pub draft: Option<Draft>,
    /// Told while a handle is dragged.
    #[prop_or_default]
    pub on_try: Callback<Option<Event>>,
    /// Told when it is let go or moved by keys.
    #[prop_or_default]
    pub on_do: Callback<Event>,
}

impl PartialEq for FigureProps {
    fn eq(&self, other: &Self) -> bool {
        self.figure == other.figure && self.draft == other.draft && self.id == other.id
    }
}

/// A figure.
#[component]
pub fn Drawing(props: &FigureProps) -> Html {
    let figure = &props.figure;
    let id = props.id.clone().unwrap_or(AttrValue::Static(figure.name));
    let (title, says) = (format!("{id}-title"), format!("{id}-says"));
    let movable = props.draft.is_some() && !figure.handles.is_empty();
    let handles = props.draft.iter().flat_map(|draft| {
        let views = figure.handles.iter().enumerate();
        views.map(|(place, handle)| handle_view(place, handle, draft, props))
    });
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
                { for handles }
            </svg>
            <details class="says">
                <summary>{ "In words" }</summary>
                <p id={says}>{ &figure.says }</p>
            </details>
        </figure>
    }
}

/// The hatchings of figures that are drawn under an id of their own, once for the page.
#[component]
pub fn Hatchings(props: &FigureProps) -> Html {
    let figure = &props.figure;
    html! {
        <svg class="visually-hidden" aria-hidden="true" width="0" height="0">
            <defs>{ for HATCHINGS.iter().map(|one| pattern(figure, one)) }</defs>
        </svg>
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

fn handle_view(place: usize, handle: &Handle, draft: &Draft, props: &FigureProps) -> Html {
    let key = {
        let (handle, draft, on_do) = (handle.clone(), draft.clone(), props.on_do.clone());
        Callback::from(move |event: KeyboardEvent| {
            if let Some(steps) = drag::steps_of_key(&event.key(), event.shift_key()) {
                event.prevent_default();
                for event in drag::moved_by_steps(&handle, &draft, steps) {
                    on_do.emit(event);
                }
            }
        })
    };
    let down = {
        let (handle, draft) = (handle.clone(), draft.clone());
        let (on_try, on_do) = (props.on_try.clone(), props.on_do.clone());
        let width = props.figure.window.width();
        Callback::from(move |event: PointerEvent| {
            event.prevent_default();
            Drag::begin(
                &event,
                width,
                handle.clone(),
                draft.clone(),
                on_try.clone(),
                on_do.clone(),
            );
        })
    };
    let (cx, cy) = (svg::number(handle.at.x), svg::number(handle.at.y));
    let radius = |pixels: f64| svg::number(pixels * props.figure.pixel);
    html! {
        <g key={place} class="handle" role="slider" tabindex="0" aria-label={handle.label.clone()}
            aria-valuenow={drag::value_now(handle, draft).to_string()} aria-valuetext={drag::value_in_words(handle, draft)}
            onkeydown={key} onpointerdown={down}>
            <circle cx={cx.clone()} cy={cy.clone()} r={radius(REACH)} class="handle-reach" />
            <circle {cx} {cy} r={radius(KNOB)} class="handle-knob" />
        </g>
    }
}
