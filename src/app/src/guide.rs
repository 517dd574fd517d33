//! What is said beside each step of the guided first case. It tells how to think, never what to tick.

use engine::plan::Step;

/// The note of the first step: it stands there before anything else has come.
pub const CHART: &str = "Read the history under What I know first: it tells you what to ask. Allergies, blood pressure, plaque and bleeding, and views on graft origin belong to every operation; other tests only where the history gives a reason. Drugs and advice are asked once you have the answers.";

/// The note of a step.
#[must_use]
pub const fn note(step: Step) -> &'static str {
    match step {
        Step::Chart => CHART,
        Step::Examination => {
            "Each examination answers some questions and is blind to others. A film shows the root, the apex and the neighbours, and never whether the facial wall is whole. For that, sound the bone or look at a section. Where the margin shows, test how thick the gum is as well. Once you see what they find, say what you hold of the wall, and on what ground."
        }
        Step::Intention => {
            "Now weigh what you saw. If the wall is whole, nothing is infected and there is bone beyond the apex, an implant today is one sound way. Consent names the options, the risks, when you would stop, and what you would do then."
        }
        Step::Extraction => {
            "Keep your instruments off the facial plate. When the root is out you can probe what no examination showed with certainty: do it before you decide to carry on."
        }
        Step::Flap => {
            "A whole wall needs no flap. A defect does, because you cannot cover what you do not see. If you raise one, it must reach well beyond the membrane that you plan."
        }
        Step::Implant => {
            "Watch the section while you move the implant. Keep a gap to the facial wall, bone on the oral side, and the platform 3 to 4 mm below the planned margin. The gap clock shows the same gap all round. How the pilot feels in the bone comes before you say how wide the bed is drilled."
        }
        Step::Seating => {
            "The torque is read only now. Let it decide: firm enough for a healing abutment, or better left under a cover screw."
        }
        Step::Graft => {
            "A gap of more than 2 mm is filled; a narrow one beside a whole wall may be left. Beside one root that seldom takes more than 0.5 cc. A whole wall needs no membrane."
        }
        Step::Closure => {
            "Edges that meet without pull, bleeding that has stopped, a sheet with a number to call."
        }
        Step::Review => "See the patient early for the sutures.",
        Step::ReEntry | Step::ReEntryAgain | Step::LastReEntry | Step::Uncovering => {
            "Waiting longer is never a fault."
        }
        Step::LatePlacement => "Lean on what was found at re-entry.",
        Step::Restoration => {
            "Restore when the graft has had its time. Waiting longer is never a fault."
        }
        Step::Recall => "Book what you will want to have looked at.",
    }
}
