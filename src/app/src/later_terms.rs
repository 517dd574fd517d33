//! Terms of the steps after the day of the operation.

use crate::terms::Term;
use engine::plan::Step;

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

/// The terms of a step after the day of the operation.
#[must_use]
pub const fn later_terms(step: Step) -> &'static [Term] {
    match step {
        Step::Review => REVIEW,
        Step::ReEntry | Step::ReEntryAgain | Step::LastReEntry => RE_ENTRY,
        Step::LatePlacement => LATE_PLACEMENT,
        Step::Uncovering => UNCOVERING,
        Step::Restoration => RESTORATION,
        Step::Recall => RECALL,
        _ => &[],
    }
}
