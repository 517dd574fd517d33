//! Answers to what an act brought, and to what came by chance.

use super::{Alternative, Choice};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

choices! {
    /// What is done once the torque has been read.
    SeatingAct {
        Leave = "leave", "leave it seated";
        RemoveAndGraft = "remove-and-graft", "remove it, graft and return";
        RemoveAndHeal = "remove-and-heal", "remove it and let heal";
        SeatWider = "seat-wider", "seat one that is 0.5 mm wider in its place, once";
        SeatLonger = "seat-longer", "seat one that is 2 mm longer in its place, once";
    }
    /// What becomes of a piece that broke off the facial plate.
    PlateRescue {
        Keep = "keep", "press it back and keep it";
        Remove = "remove", "take it out";
        Leave = "leave", "leave it as it lies";
    }
    /// What is done about a torn lining of the sinus.
    LiningRescue {
        Patch = "patch", "collagen patch";
        SutureAndPatch = "suture-and-patch", "suture and a larger patch";
        Stop = "stop", "stop and refer";
        CarryOn = "carry-on", "carry on";
    }
    /// What is done once the torque of a second implant has been read.
    SecondAct {
        Leave = "leave", "leave it seated";
        RemoveAndGraft = "remove-and-graft", "remove it, graft and return";
        RemoveAndHeal = "remove-and-heal", "remove it and let heal";
    }
    /// What is done when it bleeds again.
    BleedRescue {
        Press = "press", "press for 20 minutes without a break; pack and suture what still bleeds";
        Rinse = "rinse", "have the patient rinse";
        SendHome = "send-home", "send the patient home with gauze";
    }
    /// What is done about a lip that stays numb.
    NerveRescue {
        SameDay = "same-day", "image today, back the implant off or take it out, refer";
        Drugs = "drugs", "steroids and vitamins, see in a week";
        Wait = "wait", "wait for the next review";
    }
    /// What is done about a membrane that lies bare.
    ExposureRescue {
        RinseAndKeep = "rinse-and-keep", "chlorhexidine; keep and watch it";
        Remove = "remove", "take it out and clean the wound";
        CoverAgain = "cover-again", "sew the gum over it again";
    }
}
