//! Terms of the trade, one sentence each, by the step that uses them. They come with the judge: the
//! first visit does not wait for them.

use engine::plan::Step;

/// A term and what it means.
pub type Term = (&'static str, &'static str);

const CHART: &[Term] = &[
    (
        "ASA class",
        "How ill a patient is as a whole, from I (healthy) to IV (a constant threat to life).",
    ),
    ("INR", "How much longer this blood takes to clot than ordinary blood."),
    ("HbA1c", "Average blood sugar of the last three months, in percent."),
    (
        "Antiresorptive",
        "A drug that slows the breakdown of bone; in high doses it puts the jaw at risk after surgery.",
    ),
];
const EXAMINATION: &[Term] = &[
    ("Bone sounding", "Under anaesthesia, a probe is pushed through the gum until it meets bone."),
    ("Phenotype", "Whether the gum is thin or thick; a probe shines through thin gum."),
    ("Crest", "The edge of the bone beside a tooth, where it lies nearest to the gum's margin."),
    ("Facial plate", "The wall of bone between the root and the lip or cheek."),
    (
        "Section",
        "A slice through the jaw computed from a cone-beam scan; a plate thinner than about 1 mm blurs away.",
    ),
];
const INTENTION: &[Term] = &[
    (
        "Type 1 to 4",
        "When an implant is placed: today (1), after 4 to 8 weeks (2), 12 to 16 weeks (3), later (4).",
    ),
    (
        "Ridge preservation",
        "A graft in the empty socket so that the ridge shrinks less until an implant is placed.",
    ),
    ("Fallback", "What is done if the operation cannot be finished as planned."),
];
const EXTRACTION: &[Term] = &[
    ("Luxate", "Loosen the root in its socket before it is gripped."),
    ("Debridement", "Scraping out diseased tissue."),
    ("Sectioning", "Cutting the root so that its parts come out singly."),
];
const FLAP: &[Term] = &[
    ("Envelope", "A flap without vertical cuts."),
    ("Vertical release", "A cut from the margin towards the vestibule that lets the flap move."),
    (
        "Periosteal release",
        "A shallow cut through the lining inside the flap, so that it stretches.",
    ),
    ("Keratinised tissue", "The firm band of gum beside the teeth."),
    ("Papilla", "The point of gum between two teeth."),
];
const IMPLANT: &[Term] = &[
    (
        "Palatal, lingual",
        "Towards the palate in the upper jaw and towards the tongue in the lower; the facial side lies opposite.",
    ),
    ("Septum", "The bone between the roots of one tooth."),
    ("Cortex", "The dense outer layer of the jaw."),
    ("Platform", "The top of the implant, where the crown's part is screwed on."),
    ("Facial gap", "The empty space between the implant and the facial wall of the socket."),
    ("Reference crest", "The level that the mid-facial crest would have without any defect."),
    ("Dehiscence", "A part of the wall that is missing from the crest downwards."),
    ("Fenestration", "A window in the wall with bone above it."),
];
const SEATING: &[Term] = &[
    (
        "Seating torque",
        "The force of turning at which the implant comes to its seat, in newton centimetres.",
    ),
    ("Cover screw", "Closes the implant under the gum."),
    ("Healing abutment", "Closes the implant through the gum."),
    ("Provisional", "A crown for the time of healing."),
];
const GRAFT: &[Term] = &[
    ("Particulate graft", "Bone or bone substitute in grains."),
    ("Contour layer", "Graft laid on the outside of the facial wall."),
    ("Membrane", "A sheet that keeps gum out while bone grows."),
    ("Connective tissue graft", "Gum tissue from the palate, to thicken thin gum."),
    ("PTFE", "A plastic that does not resorb; dense PTFE may stay exposed, expanded PTFE may not."),
];
const CLOSURE: &[Term] = &[
    ("Primary closure", "The edges of the flap meet over the site."),
    ("Haemostasis", "The bleeding has stopped."),
    ("Monofilament", "A thread of one strand, which does not draw fluid into the wound."),
];
const REVIEW: &[Term] = &[
    ("Turnover", "Graft being replaced by the patient's own bone."),
    ("Exposure", "A membrane lies bare because the gum over it has parted."),
    ("Paraesthesia", "Numb or tingling skin after a nerve was stretched, pressed or cut."),
];
const RE_ENTRY: &[Term] = &[
    ("Re-entry", "Opening a site again once it has healed."),
    (
        "Resorption",
        "Loss of bone, by which a ridge gets narrower and lower once its tooth is gone.",
    ),
    (
        "Contour graft",
        "Graft laid on the outside of the bone to make the ridge fuller, with the implant already in.",
    ),
    (
        "Augmentation",
        "Building up a ridge that is too narrow or too low, months before an implant goes into it.",
    ),
];
const LATE_PLACEMENT: &[Term] = &[
    ("Platform", "The top of the implant, where the crown's part is screwed on."),
    ("Facial bone", "The bone between the implant and the outside of the ridge."),
    ("Healed crest", "The top of the facial bone as it stands when the site is opened again."),
    ("Submerged", "Healing under closed gum, with a cover screw in the implant."),
    ("Transmucosal", "Healing with a part of the implant standing through the gum."),
];
const UNCOVERING: &[Term] = &[
    ("Uncovering", "Opening the gum over a submerged implant to put a part through it."),
    ("Osseointegration", "Bone grown onto the implant, so that it stands firm without pain."),
    ("Attached tissue", "Gum bound to what lies beneath, which lip and cheek do not move."),
    ("Punch", "A round blade that takes a disc of gum away."),
    (
        "Resonance",
        "The note at which a peg on the implant swings, which is higher the stiffer the implant is held.",
    ),
];
const RESTORATION: &[Term] = &[
    (
        "Impression part",
        "A part screwed to the implant that carries its position to the crown's maker.",
    ),
    ("Seat", "Where two parts meet without a gap when they are fully home."),
    ("Loading", "Letting the implant bear the forces of chewing."),
    ("Turnover", "Graft being replaced by the patient's own bone."),
];
const RECALL: &[Term] = &[
    ("Baseline", "The first depths and film with the crown in, which later ones are held against."),
    ("Mucositis", "Inflamed gum around an implant, with no bone lost to it."),
    ("Peri-implantitis", "Inflammation around an implant that goes on to take its bone."),
    ("Remodelling", "The little bone that the crest gives up in the first year of use."),
];

/// The terms of a step.
#[must_use]
pub const fn terms(step: Step) -> &'static [Term] {
    match step {
        Step::Chart => CHART,
        Step::Examination => EXAMINATION,
        Step::Intention => INTENTION,
        Step::Extraction => EXTRACTION,
        Step::Flap => FLAP,
        Step::Implant => IMPLANT,
        Step::Seating => SEATING,
        Step::Graft => GRAFT,
        Step::Closure => CLOSURE,
        Step::Review => REVIEW,
        Step::ReEntry | Step::ReEntryAgain | Step::LastReEntry => RE_ENTRY,
        Step::LatePlacement => LATE_PLACEMENT,
        Step::Uncovering => UNCOVERING,
        Step::Restoration => RESTORATION,
        Step::Recall => RECALL,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_step_has_terms_and_each_is_told_in_one_sentence() {
        for step in Step::ALL {
            assert!(!terms(*step).is_empty(), "{step:?}");
            for (term, means) in terms(*step) {
                assert!(!term.is_empty() && !term.ends_with('.'), "{step:?}: {term}");
                let sentence = means.strip_suffix('.').unwrap_or_default();
                assert!(sentence.len() > 12 && !sentence.contains(". "), "{term}: {means}");
            }
        }
    }
}
