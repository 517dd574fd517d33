//! Where the first drill enters the fresh socket.

use crate::anatomy::{Jaw, Kind};
use crate::plan::choices::Entry;
use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "first-drill-in-the-wrong-place",
    ledger: "pos-axis",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Start the first drill on the palatal slope of an upper socket of one root, in the septum of a molar, and never through the lingual cortex."
    ),
    why: long!(
        "The socket leads your drill along the root and so to the facial side; the bone that holds the implant lies on the other. Between the roots of a molar it lies in the middle, and a root's socket leads away from it."
    ),
    mend: long!("Start on the palatal slope above, along the socket below, in a molar's septum."),
    scale: Scale::Situations(&[
        when(
            "on-the-slope",
            "the first drill enters on the palatal slope of an upper socket",
            Zone::Ideal,
        ),
        when("along-a-lower-socket", "the first drill enters along the lower socket", Zone::Ideal),
        when("in-the-septum", "the first drill enters in the septum of the molar", Zone::Ideal),
        when("in-a-root-socket", "the first drill enters one root's socket", Zone::Suboptimal),
        when("where-no-septum-stands", "there is no septum to enter", Zone::Compromising),
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
        septum::BY_NAMES,
        says(
            Source::CommonPractice,
            Status::NoSource,
            "first drill at molar sites",
            "It starts in the middle of the septum, often before the sectioned roots are taken out.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.implant.as_ref()?;
    let tooth = j.case.site.tooth;
    let molar = ask::has_septum(j.case);
    let situation = match (tooth.jaw(), done.entry) {
        (Jaw::Maxilla, Entry::ThroughOralCortex) => "through-the-palatal-cortex",
        (Jaw::Mandible, Entry::ThroughOralCortex) => "through-the-lingual-cortex",
        _ if molar && septum::holds_next_to_nothing(j.m) => return None,
        (_, Entry::Septum) if molar => "in-the-septum",
        _ if molar => "in-a-root-socket",
        (_, Entry::Septum) => "where-no-septum-stands",
        // Of two roots close together, or fused, practice names no slope to start on.
        _ if tooth.kind() == Kind::Molar || j.case.site.socket.furcation().is_some() => {
            return None;
        }
        (Jaw::Maxilla, Entry::OralSlope) => "on-the-slope",
        (Jaw::Maxilla, Entry::SocketApex) => "along-an-upper-socket",
        (Jaw::Mandible, Entry::OralSlope) => "on-a-lower-slope",
        (Jaw::Mandible, Entry::SocketApex) => "along-a-lower-socket",
    };
    Some(Reading::Situation(situation))
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
    fn a_molar_is_started_in_its_septum_and_no_other_tooth_is() {
        let molar = |entry: &str| {
            let mut trial = Trial::molar();
            trial.keys(&[("entry", entry)]);
            trial.zone(&RULE)
        };
        assert_eq!(molar("septum"), Some(Zone::Ideal));
        assert_eq!(molar("socket-apex"), Some(Zone::Suboptimal));
        assert_eq!(molar("oral-slope"), Some(Zone::Suboptimal));
        assert_eq!(molar("through-oral-cortex"), Some(Zone::Unsafe));
        assert_eq!(zone(11, "septum"), Some(Zone::Compromising));
    }

    #[test]
    fn going_through_the_lingual_cortex_can_kill() {
        assert_eq!(zone(43, "through-oral-cortex"), Some(Zone::Unsafe));
        assert_eq!(zone(13, "through-oral-cortex"), Some(Zone::Compromising));
    }
}
