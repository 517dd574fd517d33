//! What is decided once the patient comes back.

use super::{Alternative, Choice};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

choices! {
    /// What is done about the healed site.
    HealedAct {
        Place = "place", "place the implant";
        PlaceWithContour = "place-with-contour", "place it with a contour graft under a membrane";
        Wait = "wait", "wait longer, with a date";
        Augment = "augment", "augment the ridge first";
        Refer = "refer", "refer";
    }
    /// What is done about it where waiting is no answer any more.
    LastAct {
        Place = "place", "place the implant";
        PlaceWithContour = "place-with-contour", "place it with a contour graft under a membrane";
        Augment = "augment", "augment the ridge first";
        Refer = "refer", "refer";
    }
    /// What goes on an implant in the healed site.
    LateComponent {
        CoverScrew = "cover-screw", "cover screw";
        HealingAbutment = "healing-abutment", "healing abutment";
    }
    /// How the hold is tested at uncovering.
    HoldTest {
        Tested = "tested", "turned and tapped: firm, painless, a clear note";
        Resonance = "resonance", "resonance, beside turning and tapping";
        Untested = "none", "not tested";
    }
    /// What becomes of the attached tissue at uncovering.
    BandCare {
        Punch = "punch", "punched out over the implant";
        Split = "split", "cut within the band, half to each side";
        Moved = "moved", "the band moved facially as a flap";
        Grafted = "grafted", "soft tissue grafted";
    }
    /// What is examined at recall.
    RecallExam {
        Plaque = "plaque", "plaque and bleeding";
        Probing = "probing", "probing, with the first depths as baseline";
        Film = "film", "film of the crest";
        Contacts = "contacts", "contacts and screw";
    }
}

impl HealedAct {
    /// Whether an implant goes in.
    #[must_use]
    pub const fn places(self) -> bool {
        matches!(self, Self::Place | Self::PlaceWithContour)
    }
}

impl From<LastAct> for HealedAct {
    fn from(act: LastAct) -> Self {
        match act {
            LastAct::Place => Self::Place,
            LastAct::PlaceWithContour => Self::PlaceWithContour,
            LastAct::Augment => Self::Augment,
            LastAct::Refer => Self::Refer,
        }
    }
}
