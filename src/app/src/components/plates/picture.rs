//! A picture of grey pixels with lines and handles over it, in millimetres.

use crate::components::changed::use_changed;
use std::rc::Rc;
use wasm_bindgen::{Clamped, JsCast};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, ImageData};
use yew::prelude::*;

/// What a picture needs.
#[derive(Properties, PartialEq)]
pub struct PictureProps {
    /// Columns and rows.
    pub pixels: [u32; 2],
    /// From one pixel to the next, mm.
    pub pitch: f64,
    /// Grey, row by row, 0 black to 255 white.
    pub grey: Rc<Vec<u8>>,
    /// What it shows, in words.
    pub says: AttrValue,
    /// Length of the scale bar, mm.
    pub bar: u32,
    /// What lies over it, in mm to the right and down of its corner.
    pub children: Html,
}

/// A picture.
#[component]
pub fn Picture(props: &PictureProps) -> Html {
    let canvas = use_node_ref();
    let [columns, rows] = props.pixels;
    {
        let canvas = canvas.clone();
        use_changed((props.grey.clone(), props.pixels), move |(grey, pixels)| {
            paint(&canvas, grey, *pixels);
        });
    }
    let [wide, tall] = props.pixels.map(|count| f64::from(count) * props.pitch);
    let (left, low, bar) = (1.5, tall - 1.5, f64::from(props.bar));
    html! {
        <div class="picture">
            <canvas ref={canvas} width={columns.to_string()} height={rows.to_string()} role="img" aria-label={props.says.clone()} />
            <svg class="over" viewBox={format!("0 0 {wide:.2} {tall:.2}")}>
                <path class="bar" d={format!("M{left} {:.2}V{low:.2}H{:.2}V{:.2}", low - 0.8, left + bar, low - 0.8)} />
                <text class="bar-words" x={format!("{:.2}", left + bar / 2.0)} y={format!("{:.2}", low - 1.2)} text-anchor="middle" font-size="2" aria-hidden="true">{ format!("{} mm", props.bar) }</text>
                { props.children.clone() }
            </svg>
        </div>
    }
}

/// Puts the pixels on the canvas. A canvas that is gone, or that the browser gives no context for,
/// stays empty: the words beside it say what it shows.
fn paint(canvas: &NodeRef, grey: &[u8], [columns, rows]: [u32; 2]) {
    let Some(canvas) = canvas.cast::<HtmlCanvasElement>() else { return };
    let context = canvas.get_context("2d").ok().flatten();
    let Some(context) = context.and_then(|one| one.dyn_into::<CanvasRenderingContext2d>().ok())
    else {
        return;
    };
    let colours: Vec<u8> = grey.iter().flat_map(|grey| [*grey, *grey, *grey, 255]).collect();
    let image = ImageData::new_with_u8_clamped_array_and_sh(Clamped(&colours), columns, rows);
    if let Ok(image) = image {
        let _ = context.put_image_data(&image, 0.0, 0.0);
    }
}
