//! Plots: series against axes, drawn with plotters on a backend of our own that yields the engine's
//! drawing primitives.
//!
//! A plot is a [`Figure`](engine::figures::Figure) like any other, so page, print and export draw it
//! with the same inks. Its plane is counted in CSS pixels of the width for which it is laid out, and
//! its axes carry the units. Widths of words come from the engine's fixed table: no font is loaded
//! and no browser is asked, so a plot is the same everywhere.

mod backend;
mod bands;
mod calibration;
mod fans;
mod gaps;
mod holds;
mod map;
mod mastery;
mod missed;
mod mix;
mod pen;
mod times;

pub use bands::band_plot;
pub use calibration::calibration_plot;
pub use fans::fan_plot;
pub use gaps::gap_plot;
pub use holds::holds_plot;
pub use map::map_plot;
pub use mastery::mastery_plot;
pub use missed::missed_plot;
pub use mix::mix_plot;
pub use times::time_plot;
