//! Where the first drill enters the fresh socket.

use crate::anatomy::{Jaw, Kind};
use crate::plan::choices::Entry;
use crate::rules::prelude::*;

/// Start the first drill on the palatal slope of an upper socket, and never through the lingual cortex.
pub(super) static RULE: Rule = Rule {
    id: "first-drill-in-the-wrong-place",
    ledger: "pos-axis",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Start the first drill on the palatal slope of an upper socket, and never through the lingual cortex."
    ),
    why: long!(
        "The socket leads your drill along the root and so to the facial side; the bone that holds the implant lies on the other."
    ),
    mend: long!(
        "Start on the palatal slope in the upper jaw, inside its cortex; in the lower jaw start along the socket."
    ),
    scale: Scale::Situations(&[
        when(
            "on-the-slope",
            "the first drill enters on the palatal slope of an upper socket",
            Zone::Ideal,
        ),
        when("along-a-lower-socket", "the first drill enters along the lower socket", Zone::Ideal),
        when(
            "along-an-upper-socket",
            "the first drill follows an upper socket to its apex",
            Zone::Suboptimal,
        ),
        when(
            "on-a-lower-slope",
            "the first drill enters on the lingual slope of a lower socket",
            Zone::Compromising,
        ),
        when(
            "through-the-palatal-cortex",
            "the first drill goes through the palatal cortex",
            Zone::Compromising,
        ),
        when(
            "through-the-lingual-cortex",
            "the first drill goes through the lingual cortex",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Entry],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "survey of the angle between root and bone, BMC Oral Health 2021",
            "Root and bone part by 15 degrees at upper central and 19 degrees at upper lateral incisors on average.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Law 2017, haematoma of the floor of the mouth, J Oral Maxillofac Surg",
            "The lingual cortex had been perforated in 84 % of 25 cases.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "first drill in upper front and premolar sockets",
            "It starts on the palatal slope of the socket, not at its apex, and stays inside the palatal cortex; never so in the lower jaw.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.implant.as_ref()?;
    let tooth = j.case.site.tooth;
    // Of several roots, practice names no slope to start on.
    if tooth.kind() == Kind::Molar || j.case.site.socket.furcation().is_some() {
        return None;
    }
    Some(Reading::Situation(match (tooth.jaw(), done.entry) {
        (Jaw::Maxilla, Entry::OralSlope) => "on-the-slope",
        (Jaw::Maxilla, Entry::SocketApex) => "along-an-upper-socket",
        (Jaw::Maxilla, Entry::ThroughOralCortex) => "through-the-palatal-cortex",
        (Jaw::Mandible, Entry::OralSlope) => "on-a-lower-slope",
        (Jaw::Mandible, Entry::SocketApex) => "along-a-lower-socket",
        (Jaw::Mandible, Entry::ThroughOralCortex) => "through-the-lingual-cortex",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tooth;
    use crate::rules::trial::Trial;

    fn zone(tooth: u8, entry: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.tooth = Tooth::new(tooth).unwrap();
        trial.keys(&[("entry", entry), ("sensation-check", "yes")]);
        trial.zone(&RULE)
    }

    #[test]
    fn the_palatal_slope_is_for_the_upper_jaw_only() {
        assert_eq!(zone(11, "oral-slope"), Some(Zone::Ideal));
        assert_eq!(zone(11, "socket-apex"), Some(Zone::Suboptimal));
        assert_eq!(zone(41, "oral-slope"), Some(Zone::Compromising));
        assert_eq!(zone(41, "socket-apex"), Some(Zone::Ideal));
    }

    #[test]
    fn going_through_the_lingual_cortex_can_kill() {
        assert_eq!(zone(43, "through-oral-cortex"), Some(Zone::Unsafe));
        assert_eq!(zone(13, "through-oral-cortex"), Some(Zone::Compromising));
    }
}
