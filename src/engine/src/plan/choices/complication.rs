//! Answers to complications that come by chance.

use super::{Alternative, Choice};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

choices! {
    /// What is done about a root tip that was pushed out of sight.
    TipRescue {
        ImageAndRefer = "image-and-refer", "take an image, leave it where it is, tell the patient and refer";
        Dig = "dig", "go after it with an elevator through the socket";
        LeaveUntold = "leave-untold", "leave it, and say nothing";
    }
    /// What is done when the floor of the mouth swells.
    FloorRescue {
        PressAndCall = "press-and-call", "sit the patient up, press the floor of the mouth from both sides, call an ambulance; the airway comes first";
        PressAndWatch = "press-and-watch", "press it from both sides and watch the patient in the chair";
        PackAndSendHome = "pack-and-send-home", "pack the bed, suture, and send the patient home with ice";
    }
    /// What is done about an infected wound.
    InfectionRescue {
        Drain = "drain", "see the patient today: drain, rinse, take out what is loose";
        DrainAndAntibiotic = "drain-and-antibiotic", "the same, and an antibiotic";
        Hospital = "hospital", "drain, start an antibiotic, and send to hospital today";
        AntibioticOnly = "antibiotic-only", "prescribe an antibiotic by telephone";
        Wait = "wait", "wait for the next review";
    }
}
