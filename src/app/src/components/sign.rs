//! The sign of a verdict.

use super::plain::shape;
use engine::rules::Zone;
use yew::prelude::*;

/// A sign that differs in shape, so that colour never carries the verdict alone.
const fn sign(zone: Zone) -> &'static str {
    match zone {
        Zone::Ideal => "●",
        Zone::Acceptable => "◐",
        Zone::Debated => "◇",
        Zone::Suboptimal => "△",
        Zone::Compromising => "▲",
        Zone::Unsafe => "■",
    }
}

/// The sign as it stands before words that say the same.
pub fn signed(zone: Zone) -> Html {
    shape(sign(zone))
}
